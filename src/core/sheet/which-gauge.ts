// The temperature of a measuring instrument is read before that is picked, in some procedures: which one it is, by its number, so that nobody
// warms up the wrong one.
import { refusedNow } from '../job/admit-people.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { instrumentName } from '../talk/names.ts'
import { type Row, row } from './block.ts'

const OF_GAUGE = 'measuring instrument'

/** Of the gauge with which the next size behind the step is read; empty for any other step. */
export function whichGaugeRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  if (placed.step.kind !== 'read' || placed.step.of !== OF_GAUGE) return []
  const own = placed.step.with
  const after = defs.steps.slice(defs.steps.indexOf(placed) + 1).find(({ step, scope }) => {
    return scope === placed.scope && step.kind === 'read' && step.with !== own && step.quantity === 'length'
  })
  const seat = after === undefined ? undefined : asKind(after, 'read').step.with
  const placedSeat = defs.seats.find(({ id }) => id === seat || id === placed.scope + (seat ?? ''))
  if (after === undefined || placedSeat === undefined) return []
  const picked = instrumentById(defs, state.seats[placedSeat.id] ?? '')
  if (picked !== undefined) return [row(`The gauge is ${instrumentName(defs, picked.id)}.`)]
  const fit = defs.instruments.instruments.filter(
    (one) => placedSeat.kinds.includes(one.kind) && refusedNow(defs, state, placedSeat.id, one) === null,
  )
  const [only, ...more] = fit.map(({ id }) => id)
  if (only === undefined) return []
  return more.length === 0
    ? [row(`The gauge is ${instrumentName(defs, only)}: no other may be used here.`)]
    : [
        row(
          `The gauge is the one that you will pick on sheet ${after.number}: ${list([only, ...more], 'or')}.`,
        ),
      ]
}
