// What stands as left, of what was read as left: a reading that was judged, reworked on and read again tells of the part before
// that work. It is as found then, and never what was left.
import type { Change } from '../job/changes.ts'

export function asLeft(changes: readonly Change[], before: ReadonlySet<string>): Change[] {
  return changes.map((change) => {
    const { found, left, held } = change
    if (left === null || !before.has(left.step.id)) return change
    const ofFound = found === null ? held.left : held.found
    return { ...change, found: found ?? left, left: null, held: { found: ofFound, left: null } }
  })
}
