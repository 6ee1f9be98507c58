// What stands as left, of what was read as left: a reading that was judged, reworked on and read again tells of the part before
// that work. It is as found then, and never what was left.
import { CHANGES_IT, coursesOf } from '../job/as-left.ts'
import type { Change } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { refersTo } from '../job/values.ts'

/** Steps read before the part was worked on: their judge had it reworked or renewed, or looked at it again afterwards. */
export function readBeforeWork(defs: Definitions, state: State): ReadonlySet<string> {
  return new Set(
    coursesOf(defs, state)
      .filter(({ decided }) => decided !== null && CHANGES_IT.includes(decided.choice))
      .flatMap(({ judge }) => refersTo(defs, judge)),
  )
}

export function asLeft(changes: readonly Change[], before: ReadonlySet<string>): Change[] {
  return changes.map((change) => {
    const { found, left } = change
    if (left === null || !before.has(left.step.id)) return change
    return { ...change, found: found ?? left, left: null }
  })
}
