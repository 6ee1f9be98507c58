// No answer says of a word that no entry has it while one has: whatever stands in any entry of a log, as it is told, is found by its words.
import { describe, expect, it } from 'vitest'
import { questionBlocks } from '../../../src/core/review/asked.ts'
import { toldOf } from '../../../src/core/review/asked-entries.ts'
import { movesOf } from '../../../src/core/review/look.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'
import { stopReleased } from '../../helpers/stopped.ts'

/** With words of people in it: a note, a STOP and its release, a lock kept, a correction, a decision. */
const day = new Walk().toGate().keys('L-101', 'L-102', 'note the wheel of the pocket squeaks', 'L-103')
stopReleased(day, 'forklift reversed into the skid', 'driver spoken to, guard rail up')

const judged = new Walk().toVerdict().keys('1', 'KH', 'taper inside, watch it until spring', '')

const STYLE = { width: 80, record: 'EXAMPLE', ascii: true, linear: true } as const

/** Each word with the entry it was first seen in. */
function wordsOf(walk: Walk): Map<string, string> {
  const record = recordOf(walk)
  const found = new Map<string, string>()
  for (const move of movesOf(walk.entries)) {
    const text = toldOf(record, move) ?? ''
    for (const [word] of text.toLowerCase().matchAll(/[\p{L}\d][\p{L}\d-]{2,}/gu))
      if (!found.has(word)) found.set(word, `entry ${move.entry.seq}: ${text}`)
  }
  return found
}

function recordOf(walk: Walk) {
  return { review: reviewed(walk), defs: walk.engine.defs, entries: walk.entries, state: walk.state }
}

describe.each([
  ['left under way', day],
  ['judged', judged],
])('of a job %s', (_name, walk) => {
  const record = recordOf(walk)
  const all = wordsOf(walk)

  it('there are words to ask for', () => {
    expect(all.size).toBeGreaterThan(30)
    expect(walk.entries.length).toBeGreaterThan(10)
  })

  it('each word that is asked for is found, or the question is not taken for one about it', () => {
    const missed = [...all].flatMap(([word, from]) => {
      const [heading] = questionBlocks(record, `what about the ${word}`) ?? []
      const text = heading?.rows[0]?.text ?? ''
      return /^(?:Not found by its words|The log does not tell of [^:]*: no entry)/.test(text)
        ? [`${word}: ${text} | ${from}`]
        : []
    })
    expect(missed).toEqual([])
  })

  it('no word that stands on the sheet of an entry is said to be in none', () => {
    const onSheet = new Set(
      movesOf(walk.entries).flatMap(({ entry, after }) =>
        entryBlocks(record.defs, after, entry, STYLE, 'read-back').flatMap(({ rows }) =>
          rows.flatMap(({ text }) => [...text.toLowerCase().matchAll(/\p{L}{3,}/gu)].map(([word]) => word)),
        ),
      ),
    )
    expect(onSheet.size).toBeGreaterThan(100)
    const untrue = [...onSheet].filter((word) => {
      const text = (questionBlocks(record, `what about the ${word}`) ?? [])
        .flatMap(({ rows }) => rows.map((one) => one.text))
        .join('\n')
      return /^Not found by its words/.test(text) || new RegExp(`In no entry: [^\n]*\\b${word}\\b`).test(text)
    })
    expect(untrue).toEqual([])
  })

  it('a word that no entry has is said to be in none', () => {
    const [heading] = questionBlocks(record, 'what about the zeppelin') ?? []
    expect(heading?.rows[0]?.text).toMatch(/^Not found by its words: no entry has zeppelin in it$/)
  })
})
