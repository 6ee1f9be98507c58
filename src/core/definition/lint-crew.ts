// Cross-checks of the crew list: initials sign every entry, so no two people may share them.
import type { Crew } from './crew.ts'
import { type Finding, repeatedIds } from './lint-common.ts'

/** All findings of one crew list. */
export function lintCrew(crew: Crew): Finding[] {
  return repeatedIds(['crew'], crew.crew, 'person')
}
