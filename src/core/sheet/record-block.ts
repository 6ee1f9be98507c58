// A changed machine record on the sheet: every field with the old and the new, and what fell with it, by name.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { TakeIn } from '../job/entries-by-lead.ts'
import { changedText, takenInLines } from '../job/record-words.ts'
import type { State } from '../job/state.ts'
import { voidName } from '../talk/heard.ts'
import { type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

export function recordRows(defs: Definitions, entry: Extract<Entry, { type: 'record.taken-in' }>): Row[] {
  return [
    row('MACHINE RECORD CHANGED: from here on the new one counts.', 'caution'),
    row(`  Edition ${defs.machine.edition}, signed by ${entry.person}${bySign(entry.signed)}`),
    row(`  because ${entry.why}`),
    ...entry.changed.map((one) => row(`  ${changedText(one)}`)),
    ...fallenLines(defs, entry).map((line) => row(`  ${line}`, 'caution')),
  ]
}

/** What no longer stands, a line for each sort of it; said before it is signed, too. */
export function fallenLines(defs: Definitions, taken: Omit<TakeIn, 'changed'>): string[] {
  const { gates, voids, undecided, anew, tests, dropped } = taken
  const titles = (ids: readonly string[]) => ids.map((id) => stepById(defs, id).step.title).join('; ')
  const line = (of: readonly unknown[], text: () => string) => (of.length === 0 ? [] : [text()])
  return [
    ...line(gates, () => `hold points to be proved anew: ${titles(gates)}`),
    ...line(
      voids,
      () => `void, to be judged and decided anew: ${voids.map((id) => voidName(defs, id)).join('; ')}`,
    ),
    ...line(undecided, () => `found, and to be decided anew: ${titles(undecided)}`),
    ...line(anew, () => `answers about the record, to be given or signed anew: ${titles(anew)}`),
    ...line(tests, () => `tests over time, to begin anew: ${tests.join('; ')}`),
    ...line(dropped, () => `waited to be settled, and asked anew: ${dropped.length} of the readings`),
    `${tests.length === 0 ? '' : 'other '}readings stay as they were read; all else they come to is worked out by the new record`,
  ]
}

/** In the last block of a job: by what it was judged. */
export function takenInRows(state: State): Row[] {
  return takenInLines(state).map((line) => row(line, 'caution'))
}
