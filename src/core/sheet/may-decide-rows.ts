// Who may sign what is decided, in the words of a witness's line: named before a choice is keyed, so that nobody keys for a lead who
// may not.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { mayDecide, peopleText } from '../talk/may-sign.ts'
import { offersAt } from '../talk/offered.ts'
import { type Row, row } from './block.ts'

/** At a decide step: whichever choice is open, the same leads sign. */
export function mayDecideRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  const open = offersAt(state, placed).find(({ barred }) => barred === null)
  return open === undefined ? [] : mayDecideRow(defs, state, { step: placed.id, choice: open.choice })
}

export function mayDecideRow(
  defs: Definitions,
  state: State,
  about: { readonly step: string; readonly choice: string },
): Row[] {
  const people = mayDecide(defs, state, about)
  return [
    people.length === 0
      ? row('Nobody of the crew file may decide: it takes a lead who neither measured nor keyed.', 'caution')
      : row(`May decide: ${peopleText(people)}`),
  ]
}
