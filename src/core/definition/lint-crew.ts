// Cross-checks of the crew list: initials sign every entry, so no two people may share them, nor the key of a PIN.
import { quote } from '../lib/wording.ts'
import type { Crew } from './crew.ts'
import { type Finding, finding, repeatedIds } from './lint-common.ts'

/** All findings of one crew list. */
export function lintCrew(crew: Crew): Finding[] {
  const sharedKeys = crew.crew.flatMap((person, at): Finding[] => {
    const first = crew.crew.slice(0, at).find((other) => other.pin === person.pin)
    if (person.pin === undefined || first === undefined) return []
    const message = `${quote(person.id)} has the very key of ${quote(first.id)}, so one PIN would sign for both.`
    return [finding(['crew', at, 'pin'], 'repeated-key', message, 'make one for each with: barover pin')]
  })
  return [...repeatedIds(['crew'], crew.crew, 'person'), ...sharedKeys]
}
