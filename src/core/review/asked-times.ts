// Questions by the clock, at a review: what was keyed at a time, how long from one thing to another, which of two was first, and how often
// people were called out. By the clock of the log alone, each with its entry.
import type { Entry } from '../job/entries.ts'
import { readStamp } from '../lib/instant.ts'
import type { Block } from '../sheet/block.ts'
import { anchorOf, clockIn, lineOf, timeIn } from './anchor.ts'
import { heading, linesWhere, type OnRecord, said } from './asked-entries.ts'
import { wordsTold } from './asked-words.ts'
import { count, times } from './look.ts'

const BY_CLOCK = 'By the clock of the log: when something was keyed, and not when it was done.'
const MOST = 20

/** Every entry of that minute; where none is of it, the one before and the one after. Null: no time is named. */
export function atTimeTold(record: OnRecord, asked: string): Block[] | null {
  const time = timeIn(asked)
  if (time === null) return null
  const { entries } = record
  const at = entries.filter((e) => clockIn(e) === time)
  if (at.length > 0) {
    const seqs = new Set(at.map(({ seq }) => seq))
    const lines = linesWhere(record, ({ entry }) => seqs.has(entry.seq))
    return [
      heading(`At ${time}: ${count(at.length, 'entry', 'entries')}`),
      said(
        ...lines.slice(0, MOST),
        ...(lines.length > MOST ? [`and ${lines.length - MOST} more.`] : []),
        BY_CLOCK,
      ),
    ]
  }
  const before = entries.findLast((e, i) => clockIn(e) < time && clockIn(entries[i + 1] ?? e) >= time)
  const next = before === undefined ? undefined : entries[before.seq + 1]
  return [
    heading(`At ${time} nothing was keyed`),
    said(...[before, next].flatMap((e) => (e === undefined ? [] : [lineOf(record, e)])), BY_CLOCK),
  ]
}

/** From the first thing that a question names to the next: `how long from the stop till they measured again`. Null: it names no two. */
export function howLongBetweenTold(record: OnRecord, asked: string): Block[] | null {
  const [, one = '', other = ''] =
    /\b(?:from|between|after) (.+?),? (?:till|til|until|untill|to|and|before|did|was|were) (.+?)\??$/.exec(
      asked,
    ) ??
    /\bhow long (?:did|was|were|had) (.+?) (?:before|till|til|until) (.+?)\??$/.exec(asked) ??
    []
  const first = one === '' ? null : anchorOf(record, one, -1)
  const last = first === null ? null : anchorOf(record, other, first.seq)
  if (first === null || last === null) return wordsTold(record, asked)
  return [
    heading(`${spanText(first, last)} from one to the other of these, as they were found by their words`),
    said(lineOf(record, first), lineOf(record, last), BY_CLOCK),
  ]
}

function spanText(first: Entry, last: Entry): string {
  const [from, to] = [readStamp(first.at), readStamp(last.at)]
  if (from === null || to === null || to.ms < from.ms) return 'No time that can be read lies'
  const minutes = Math.floor((to.ms - from.ms) / 60_000)
  if (minutes < 1) return 'Less than a minute'
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`
}

/** `was the note about the drop keyed before or after the verdict`. Null: it names no two that are in the log. */
export function beforeOrAfterTold(record: OnRecord, asked: string): Block[] | null {
  const [, one = '', other = ''] =
    /^(.+?),? (?:keyed |read |done |made |taken )?(?:before or after|after or before) (.+?)\??$/.exec(
      asked,
    ) ?? []
  const found = [one, other].map((words) => (words === '' ? null : anchorOf(record, words, -1)))
  const [a, b] = found
  if (a == null || b == null || a.seq === b.seq) return null
  return [
    heading('In the order of the log, as they were found by their words'),
    said(...[a, b].toSorted((x, y) => x.seq - y.seq).map((e) => lineOf(record, e)), BY_CLOCK),
  ]
}

/** How often people were keyed clear, and what called them. */
export function calledOutTold(record: OnRecord): Block[] {
  const clear = record.entries.filter(({ type }) => type === 'people.clear')
  const lines = linesWhere(
    record,
    ({ entry, before, after }) =>
      entry.type === 'people.clear' ||
      entry.type === 'stop.raised' ||
      (entry.type === 'gate.closed' && entry.cause !== 'opening' && before !== after),
  )
  return [
    heading(
      clear.length === 0
        ? 'No entry tells that people were out and clear after a hold point fell'
        : `Keyed out and clear ${times(clear.length)}; what hold points fell by, and each keying`,
    ),
    said(...lines, 'Who was in, the log does not see.'),
  ]
}
