// What a job leaves behind, as the list of jobs tells it: what is on by its record, and findings nobody has decided on.
import { openedOf } from '../app/replay.ts'
import { definitionsFrom } from '../authoring/definitions.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { bundlesOf } from '../core/job/editions.ts'
import type { Entry } from '../core/job/entries.ts'
import { hanging, hangsText } from '../core/job/locks-on.ts'
import { nonconformances } from '../core/job/nonconformance.ts'
import { openThings } from '../core/job/register.ts'
import type { State } from '../core/job/state.ts'
import { machineIdIn } from '../node/definition-files.ts'

/** Most jobs of a folder share their files, and reading these is what takes time. */
const known = new Map<string, Definitions | null>()

/** Those that count at the end of the log. Null where this version takes its files no more. */
export function definitionsIn(entries: readonly Entry[]): Definitions | null {
  const bundles = bundlesOf(entries)
  const { files } = bundles.at(-1) ?? bundles[0]
  // By their texts: the hash beside a text is whatever the log says it is.
  const key = files.map(({ role, name, text }) => [role, name, text].join('\0')).join('\0')
  const found = known.get(key)
  if (found !== undefined) return found
  const read = definitionsFrom(files, 'kept')
  const defs = read.ok ? read.defs : null
  known.set(key, defs)
  return defs
}

/** The tag in the machine record of a log; null where it cannot be read. */
export function machineIn(entries: readonly Entry[]): string | null {
  const text = openedOf(entries).files.find(({ role }) => role === 'machine')?.text
  return text === undefined ? null : (machineIdIn(text)?.machine ?? null)
}

/** A line for what is on, one for what was placed, one for findings; none where there is nothing of it. */
export function leftLines(entries: readonly Entry[], state: State): string[] {
  const defs = definitionsIn(entries)
  if (defs === null)
    return ['What it leaves on the machine is not known: its files are not taken by this version.']
  const on = [...new Set(hanging(defs, state).on.map(hangsText))]
  const things = openThings(state).length
  const found = nonconformances(defs, state).filter(({ stands }) => stands)
  const undecided = found.filter(({ decided }) => decided === null).length
  return [
    ...(on.length === 0 ? [] : [`STILL ON by the record: ${on.join(', ')}`]),
    ...(things === 0 ? [] : [`Placed and not accounted for: ${things}`]),
    ...(found.length === 0
      ? []
      : [
          `Nonconformances that stand: ${found.length}${undecided === 0 ? ', all decided' : `, ${undecided} NOT DECIDED`}`,
        ]),
  ]
}
