// The temperature of a measuring instrument is read before that is picked, in some procedures: which one it is, by its number, so that nobody
// warms up the wrong one.

import type { StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { refusedNow } from '../job/admit-people.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { instrumentName } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** Of a gauge whose temperature is read here for a judgement: which it is, or may be; empty for any other step. */
export function whichGaugeRows(defs: Definitions, state: State, placed: PlacedStep): Row[] {
  const sized = sizedBy(defs, placed)
  if (sized === null) return []
  const seat = sized.step.with
  const placedSeat = defs.seats.find(({ id }) => id === seat || id === placed.scope + (seat ?? ''))
  if (placedSeat === undefined) return []
  const picked = instrumentById(defs, state.seats[placedSeat.id] ?? '')
  if (picked !== undefined) return [row(`The gauge is ${instrumentName(defs, picked.id)}.`)]
  const fit = defs.instruments.instruments.filter(
    (one) => placedSeat.kinds.includes(one.kind) && refusedNow(defs, state, placedSeat.id, one) === null,
  )
  const [only, ...more] = fit.map(({ id }) => id)
  if (only === undefined)
    return [row(`No gauge of the register may be used for ${placedSeat.for}.`, 'caution')]
  return more.length === 0
    ? [row(`The gauge is ${instrumentName(defs, only)}: no other may be used here.`)]
    : [
        row(
          `The gauge is the one that you will pick on sheet ${pickedAt(defs, sized).number}: ${list([only, ...more], 'or')}.`,
        ),
      ]
}

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/** The sizes that a judgement brings to 20 degC by the temperature read at this step. */
function sizedBy(defs: Definitions, placed: PlacedStep): ReadStep | null {
  for (const judge of defs.steps) {
    if (judge.step.kind !== 'judge' || judge.scope !== placed.scope) continue
    const id = instrumentTemperatures(judge.step).find(({ at }) =>
      at.some((one) => judge.scope + one === placed.id),
    )
    if (id !== undefined) return asKind(stepById(defs, judge.scope + id.of), 'read')
  }
  return null
}

function instrumentTemperatures(
  step: StepOf<'judge'>,
): { readonly of: string; readonly at: readonly string[] }[] {
  if (step.compute === 'bore_form')
    return [{ of: step.inputs.diameters, at: step.inputs.instrument_temperature }]
  if (step.compute !== 'figures') return []
  return at20Of(step).flatMap(({ readings, instrument }) =>
    readings.slice(0, 1).map((of) => ({ of, at: instrument })),
  )
}

/** The first sheet that reads with it: there it is picked. */
function pickedAt(defs: Definitions, { scope, step }: ReadStep): PlacedStep {
  const first = defs.steps.find(
    (one) => one.scope === scope && one.step.kind === 'read' && one.step.with === step.with,
  )
  return first ?? stepById(defs, scope + step.id)
}
