// Entries of a log that are nearest to a question by the words they share: a word that few entries have tells more than one that many have,
// and words of people more than the name of a sheet. What is near is shown; that it answers is never said.
// Weights: inverse document frequency, K. Sparck Jones, Journal of Documentation 28 (1972), 11-21 (cited from memory).
import type { Entry } from '../job/entries.ts'
import { oncePer } from '../lib/once.ts'
import { type OnRecord, wordsIn } from './asked-entries.ts'
import { formOf, formsIn } from './forms.ts'
import { type Move, movesOf } from './look.ts'
import { wholeText } from './whole-text.ts'

export interface Near {
  readonly move: Move
  readonly score: number
  /** Of its words, as they weigh, without what is added for who said them. */
  readonly weight: number
  readonly has: readonly string[]
}

/** Words that a person chose for what happened, and no sheet. By eye on three logs, no source: it orders what is shown, and decides nothing. */
const OWN_WORDS = 1.3

/** Every entry with its words and their forms: the same for whatever is asked of a record. */
export const readOf = oncePer((record: OnRecord) =>
  movesOf(record.entries).map((move) => {
    const text = wholeText(record, move)
    return { move, text, forms: formsIn(text) }
  }),
)

/** Weight of each word: the rarer among the entries, the more; 0 where none has it. */
function weightsOf(
  texts: readonly ReadonlySet<string>[],
  words: readonly string[],
): ReadonlyMap<string, number> {
  return new Map(
    words.map((word) => {
      const n = texts.filter((forms) => forms.has(formOf(word))).length
      return [word, n === 0 ? 0 : Math.log(1 + texts.length / n)]
    }),
  )
}

export interface Ranked {
  /** Best first; of equals in the order of the log. */
  readonly near: readonly Near[]
  /** Of all words those that no entry has. */
  readonly missing: readonly string[]
  readonly weights: ReadonlyMap<string, number>
}

/** `words` as stems of a question; `isLate`: of equals the later one first. */
export function nearestTo(record: OnRecord, words: readonly string[], isLate = false): Ranked {
  const read = readOf(record)
  const weights = weightsOf(
    read.map(({ forms }) => forms),
    words,
  )
  const all = read.flatMap(({ move, forms }): Near[] => {
    const has = words.filter((word) => forms.has(formOf(word)))
    if (has.length === 0) return []
    const sum = has.reduce((total, word) => total + (weights.get(word) ?? 0), 0)
    return [{ move, has, weight: sum, score: isOwn(move.entry) ? sum * OWN_WORDS : sum }]
  })
  // The long reasons of a fall by a step have every word of harm in them, and tell of no event: they count where nothing else does.
  const events = all.filter(({ move }) => isEvent(move.entry))
  const near = events.length > 0 ? events : all
  return {
    near: near.toSorted(
      (a, b) => b.score - a.score || (a.move.entry.seq - b.move.entry.seq) * (isLate ? -1 : 1),
    ),
    missing: words.filter((word) => weights.get(word) === 0),
    weights,
  }
}

/** What somebody did, found or said; that a hold point fell by a step, or what was taken up to measure with, is beside it. */
export const isEvent = (entry: Entry) =>
  entry.type !== 'job.opened' &&
  entry.type !== 'instrument.picked' &&
  !(entry.type === 'gate.closed' && entry.cause === 'opening')

const isOwn = (entry: Entry) =>
  wordsIn(entry) !== '' ||
  ('why' in entry && entry.why !== undefined) ||
  ('note' in entry && entry.note !== undefined)

/** How much of the weight of a question's words a text has, by the same weights. */
export function weightIn(text: string, { weights }: Ranked): number {
  const forms = formsIn(text)
  return [...weights].reduce((sum, [word, weight]) => (forms.has(formOf(word)) ? sum + weight : sum), 0)
}
