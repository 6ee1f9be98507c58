// Where no instrument of the list may be used there is nothing to pick: what is to be done instead, and nobody is asked for a number.
import { refusedNow } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'

const LEAVE_IT =
  'This job keeps the register it was opened with. Leave it; once a fit one stands in the register, open the job anew.'
const NAME_IT = 'In practice name first what was hidden, by the word fault; that counts.'

/** Null: one of them may be used. */
export function noneFits(
  defs: Definitions,
  state: State,
  { seat, options }: Extract<Prompt, { kind: 'pick' }>,
): string | null {
  if (options.some((one) => refusedNow(defs, state, seat.id, one) === null)) return null
  return `None of these may be used. ${leaveIt(state)}`
}

/** What is left to do where no instrument of the register may be used. */
export function leaveIt({ practice }: State): string {
  return practice === null || practice.named !== null ? LEAVE_IT : `${LEAVE_IT} ${NAME_IT}`
}
