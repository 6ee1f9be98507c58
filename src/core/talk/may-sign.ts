// Who of the crew fits a signature that is asked now, by initials and name, as the engine would admit them. Nobody who does not
// fit is named: a list of refusals is read by those it refuses as one more thing to get round.
import type { Person } from '../definition/crew.ts'
import { disposable } from '../job/admit-disposition.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { doersOf, pointOf } from '../job/point.ts'
import type { State } from '../job/state.ts'
import { barredFromRelease } from '../job/stop-causes.ts'
import { list } from '../lib/wording.ts'

/** More would push the question off a small screen. */
const MOST_NAMED = 6

export function maySignPoint({ crew }: Definitions, state: State, placed: PlacedStep): Person[] {
  const roles: readonly string[] = pointOf(placed)?.roles ?? []
  const doers = doersOf(state, placed)
  return crew.crew.filter(({ id, role }) => roles.includes(role) && !doers.has(id))
}

/** Leads who may lift the STOP that is open; empty where nobody may. */
export function mayRelease({ crew }: Definitions, state: State): Person[] {
  const barred = barredFromRelease(state)
  return barred.everybody ? [] : crew.crew.filter(({ id, role }) => role === 'lead' && !barred.people.has(id))
}

/** Leads who may decide on the verdict or finding that is asked about: none of whom measured it. Empty where nobody may. */
export function mayDecide(
  defs: Definitions,
  state: State,
  about: { readonly step: string; readonly choice: string },
): Person[] {
  const asked = disposable(defs, state, about)
  return asked.ok
    ? defs.crew.crew.filter(({ id, role }) => role === 'lead' && !asked.value.doers.has(id))
    : []
}

/** `ML M. Lind or KH K. Haas`. */
export function peopleText(people: readonly Person[]): string {
  const named = people.slice(0, MOST_NAMED).map(({ id, name }) => `${id} ${name}`)
  const more = people.length - MOST_NAMED
  return list([...named, ...(more > 0 ? [`${more} more of the crew file`] : [])], 'or')
}
