// The entry that a part of a question means: by a time of day, by the sort of entry that a word of it names, or by the words they share.
import type { Entry } from '../job/entries.ts'
import { entryLine, type OnRecord, toldOf } from './asked-entries.ts'
import { heardIn, heldIn, wordsAsked } from './asked-words.ts'
import { movesOf } from './look.ts'
import { isEvent, nearestTo } from './nearest.ts'

/** Words that name a sort of entry by themselves; the rest of the words then tell which of that sort. */
const SORTS: readonly (readonly [RegExp, (entry: Entry) => boolean, isAlways?: true])[] = [
  [/\b(?:notes?|noted|wrote)\b/, ({ type }) => type === 'note.written'],
  [/\b(?:released?|let go|lifted)\b/, ({ type }) => type === 'stop.released', true],
  [/\bstop(?:ped)?\b/, ({ type }) => type === 'stop.raised', true],
  [/\bcorrect(?:ed|ion)\b/, ({ type }) => type === 'reading.corrected'],
  [/\b(?:judged|verdict)\b/, ({ type }) => type === 'verdict.given'],
  [/\b(?:decided|decision|concession)\b/, ({ type }) => type === 'disposition.set'],
  [/\b(?:lapsed?|ran out|run out|expired)\b/, (e) => e.type === 'gate.closed' && e.cause === 'lapsed'],
  [/\b(?:fell|fall)\b/, ({ type }) => type === 'gate.closed'],
  [/\b(?:all out|all clear|came out|keyed clear)\b/, ({ type }) => type === 'people.clear', true],
  [/\b(?:dropped|out of calibration)\b/, ({ type }) => type === 'instrument.doubted'],
  [/\b(?:measured|read|measuring)\b/, ({ type }) => type === 'reading.taken'],
  [/\bclosed?\b/, ({ type }) => type === 'job.closed', true],
]

const TIME = /\b(\d{1,2})[:.](\d{2})\b/

/** `10:45` of a text, as it stands in the entries; null where it names no time of day. */
export function timeIn(text: string): string | null {
  const [, hour = '', minute = ''] = TIME.exec(text) ?? []
  return Number(hour) < 24 && Number(minute) < 60 && minute !== ''
    ? `${hour.padStart(2, '0')}:${minute}`
    : null
}

export const clockIn = ({ at }: Pick<Entry, 'at'>) => at.slice(11, 16)

/** The first entry at a time of day, or the first after it, behind `after`. */
function atTime({ entries }: OnRecord, time: string, after: number): Entry | null {
  const later = entries.filter(({ seq }) => seq > after)
  const at = later.find((e) => clockIn(e) === time)
  if (at !== undefined) return at
  return later.find((e, i) => clockIn(e) > time && clockIn(later[i - 1] ?? e) <= time) ?? null
}

/**
 * The first entry behind `after` that the words mean. Null: none is named by a time or a sort, and none has half of what the words weigh,
 * as one that has a common word of them alone is another thing.
 */
export function anchorOf(record: OnRecord, words: string, after: number): Entry | null {
  const time = timeIn(words)
  if (time !== null) return atTime(record, time, after)
  // Off, out and in tell a part that was taken off from the same part: in a question about time they are its point.
  const way = words.match(/\b(?:off|out|in)\b/g) ?? []
  return bySort(record, words, after) ?? byWords(record, [...spelled(record, words), ...way], after)
}

/** With slips put right by the words of the log. */
const spelled = (record: OnRecord, words: string) => heardIn(record, wordsAsked(words)).words

function bySort(record: OnRecord, words: string, after: number): Entry | null {
  const sort = SORTS.find(([pattern]) => pattern.test(words))
  if (sort === undefined) return null
  const rest = spelled(record, words.replace(sort[0], ' ')).filter((word) => !/^key/.test(word))
  const is = sort[1]
  const later = movesOf(record.entries).filter(({ entry }) => entry.seq > after && is(entry))
  const scored = later.map((move) => ({ entry: move.entry, score: heldIn(toldOf(record, move) ?? '', rest) }))
  const most = Math.max(0, ...scored.map(({ score }) => score))
  // Of several notes or verdicts one about another thing is not the one that is meant; of a STOP there is seldom another.
  if (most === 0 && rest.length > 0 && !sort[2]) return null
  return scored.find(({ score }) => score === most)?.entry ?? null
}

function byWords(record: OnRecord, words: readonly string[], after: number): Entry | null {
  const { near, weights, missing } = nearestTo(record, words)
  // A word that no entry has weighs as the rarest: what is left of a question without it is another question.
  const rarest = Math.log(1 + record.entries.length)
  const whole = [...weights.values()].reduce((sum, weight) => sum + weight, missing.length * rarest)
  const [best] = near.filter(({ move: { entry } }) => entry.seq > after && isEvent(entry))
  return best === undefined || best.weight <= whole / 2 ? null : best.move.entry
}

export const lineOf = (record: OnRecord, entry: Entry): string => {
  const move = movesOf(record.entries).find((one) => one.entry.seq === entry.seq)
  return entryLine(record, entry, (move === undefined ? null : toldOf(record, move)) ?? entry.type)
}
