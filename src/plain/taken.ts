// What was taken, in one line, told apart from what is asked by its first word.
import type { Entry } from '../core/job/entries.ts'
import type { Row } from '../core/sheet/block.ts'
import { joined } from '../core/sheet/linear.ts'

/** Entries that are somebody's answer. All others have words of their own: a STOP, a verdict, what fell. */
export const TAKEN: readonly Entry['type'][] = [
  'person.signed-on',
  'person.came-on',
  'person.signed-off',
  'machine.named',
  'instrument.picked',
  'step.done',
  'step.confirmed',
  'step.objected',
  'finding.observed',
  'finding.corrected',
  'evidence.given',
  'wait.begun',
  'people.clear',
  'reading.taken',
  'reading.corrected',
  'reading.not-applicable',
  'paper.row',
  'paper.unread',
  'paper.signed',
  'not-applicable.taken-back',
  'doubt.settled',
  'late.settled',
  'disposition.set',
  'point.signed',
  'point.notice-given',
  'note.written',
  'file.attached',
  'stop.explained',
  'thing.placed',
  'thing.seen',
  'thing.accounted',
]

/** `Taken 7.3: 9.5068 in, 241.473 mm, M-3`: the name of the step is left out where it was the last heading. */
export function takenText(margin: string, rows: readonly string[], title: string): string {
  const [first = '', ...rest] = rows.map((text) => text.replace(/^Done: /, ''))
  const own = first === title ? [] : [first.startsWith(`${title}: `) ? first.slice(title.length + 2) : first]
  return `Taken${margin === '' ? '' : ` ${margin}`}: ${[...own, ...rest].reduce(joined, '')}`
}

/** Each reason once, where a block says it at both its ends; the source under a limit belongs to that one limit. */
export function withoutTwice(rows: readonly Row[]): Row[] {
  const seen = new Set<string>()
  return rows.filter(({ text, tone }) => {
    const bare = text.trim().replace(/^HOLD: /, '')
    if (tone === 'faint') return true
    if (/^and \d+ more, on the sheet$/.test(bare) || seen.has(bare)) return false
    seen.add(bare)
    return true
  })
}
