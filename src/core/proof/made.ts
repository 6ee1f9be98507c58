// Things that nobody keyed, for states that stand for many: a reading, something placed, an instrument in its seat.

import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import type { Place } from '../job/places.ts'
import type { Thing } from '../job/register.ts'
import { unsuited } from '../job/seats.ts'
import type { Reading, State } from '../job/state.ts'
import { oncePer } from '../lib/once.ts'
import { baselineOf } from './figures.ts'

/** The instrument that each seat can take, where the register has one. */
export const seatsOf = oncePer(
  (defs: Definitions): Readonly<Record<string, string>> =>
    Object.fromEntries(
      defs.seats.flatMap((seat) => {
        const one = defs.instruments.instruments.find(
          (i) => seat.kinds.includes(i.kind) && unsuited(defs, seat.id, i) === null,
        )
        return one === undefined ? [] : [[seat.id, one.id]]
      }),
    ),
)

/** A reading that nobody keyed. Its number is below zero, apart from those of entries. */
export function made(defs: Definitions, state: State, placed: PlacedStep, place: Place, n: number): Reading {
  const read = asKind(placed, 'read')
  const figure = baselineOf(defs, read)
  return {
    step: placed.id,
    place: place.key,
    instrument: seatsOf(defs)[read.step.with] ?? '',
    ...figure,
    // Numbered apart for each place and repeat.
    seq: -(1 + defs.steps.indexOf(placed) * 1000 + place.number * 10 + n),
    at: state.lastAt,
    by: state.doer,
    keptBecause: null,
    correctedBy: null,
    corrects: null,
    voidBy: null,
  }
}

/** Something that was placed and is not accounted for. */
export function placedThing(state: State): Thing {
  return {
    seq: -1,
    by: state.doer,
    what: 'something',
    where: 'somewhere',
    number: null,
    place: null,
    step: null,
    seenBy: null,
    accountedBy: null,
    handedOnBy: null,
  }
}
