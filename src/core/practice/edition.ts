// The edition of what practice draws from: a seed is the same machine only within one. It is kept with each session.
import type { Definitions } from '../job/definitions.ts'
import type { PracticeState } from '../job/practice.ts'
import { fnv1a } from './chance.ts'
import { FAULTS, isFault } from './faults.ts'

/**
 * A check over machines of every procedure as they are built, sound and with each fault, so that an older figure on record is never held
 * against another machine. It takes seconds to work out: `edition.test.ts` does, and fails with the new one as soon as it is another.
 */
const BUILT = 'b0bad6cc'

/** All of a fault that decides what a seed draws. */
const drawn = FAULTS.map(({ id, level, shows, procedures, at, isAlone = false }) =>
  [id, level, shows, procedures.join(' '), at.join(' '), isAlone].join('|'),
)

/** As `91c03b5e.4f0c22ab`: how machines are built, and what the list of faults draws. */
export const EDITION = `${BUILT}.${(fnv1a(drawn.join('\n')) >>> 0).toString(16).padStart(8, '0')}`

/** `other-list`: the seed draws other faults now. `other-build`: a machine with the same faults is another one now, too. */
export type Age = 'same' | 'other-list' | 'other-build'

/** How the edition of a session stands to today's; one of before there were editions may have been any. */
export function ageOf({ scenario }: Definitions, practice: PracticeState): Age {
  const { edition, hidden } = practice
  if (edition?.split('.')[0] !== BUILT) return 'other-build'
  // One that is in no list any more: nobody can say what it made of the machine.
  if (hidden?.every(isFault) === false) return 'other-build'
  return edition === EDITION || scenario?.faults?.every(isFault) === true ? 'same' : 'other-list'
}

/** Why a session cannot be worked on; null: it can, or is over. What was seen on its machine would be seen on another from here on. */
export function whyOver(defs: Definitions, practice: PracticeState): string | null {
  if (practice.named !== null || ageOf(defs, practice) === 'same') return null
  return `This session was opened with ${editionTold(practice.edition ?? null)} of what can be hidden; today it is ${EDITION}, and its seed draws another machine.`
}

export function editionTold(edition: string | null): string {
  return edition === null ? 'no edition on record' : `edition ${edition}`
}
