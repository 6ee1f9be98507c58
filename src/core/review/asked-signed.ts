// Who signed for one thing, asked at a review: the signatures at whatever the words of the question name, and none of the rest.

import type { Block } from '../sheet/block.ts'
import { heading, linesWhere, type OnRecord, said } from './asked-entries.ts'
import { asAsked, heldIn, wordsAsked } from './asked-words.ts'
import { wholeText } from './whole-text.ts'

const OF_SIGNING = /^(?:sign|decid|witness|accept|approv|job|pin|initial)/
const MOST = 14

/** Null: nothing is named, or nothing signed has its words. */
export function signedOfTold(record: OnRecord, asked: string): Block[] | null {
  const words = wordsAsked(asked).filter((word) => !OF_SIGNING.test(word))
  if (words.length === 0) return null
  const counted = new Map<number, number>()
  linesWhere(record, (move) => {
    const { entry } = move
    if ('signed' in entry && entry.signed !== undefined && entry.type !== 'person.signed-on')
      counted.set(entry.seq, heldIn(wholeText(record, move), words))
    return false
  })
  const most = Math.max(0, ...counted.values())
  if (most === 0) return null
  const lines = linesWhere(record, ({ entry }) => counted.get(entry.seq) === most)
  return [
    heading(`Signed, with these words: ${asAsked(asked, words)}`),
    said(
      ...lines.slice(0, MOST),
      ...(lines.length > MOST ? [`and ${lines.length - MOST} more: barover report, signatures.`] : []),
      'All who signed: who signed.',
    ),
  ]
}
