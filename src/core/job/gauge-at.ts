// The gauge whose temperature is read at a step for a judgement: which it is, or which it may come to be. In some procedures it is read
// before the gauge is picked.
import type { StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { refusedNow } from './admit-people.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from './definitions.ts'
import type { State } from './state.ts'

export interface GaugeAt {
  /** What it is needed for, as the seat says it. */
  readonly for: string
  /** The one that sits there; null: none was picked yet. */
  readonly picked: string | null
  /** Ids of those that may be picked now; of one that sits there, that one. Empty: none of the register may. */
  readonly fit: readonly string[]
  /** The first sheet that reads with it: there it is picked. */
  readonly pickedAt: PlacedStep
}

/** Why no temperature can be read at this step, as a sentence; null: one can. A gauge that nobody may use has none that counts. */
export function noGaugeAt(defs: Definitions, state: State, placed: PlacedStep): string | null {
  const gauge = gaugeAt(defs, state, placed)
  return gauge === null || gauge.fit.length > 0
    ? null
    : `No gauge of the register may be used for ${gauge.for}, so none has a temperature to be read.`
}

/** Null: no temperature of a gauge is read at this step. */
export function gaugeAt(defs: Definitions, state: State, placed: PlacedStep): GaugeAt | null {
  if (placed.step.kind !== 'read' || placed.step.quantity !== 'temperature') return null
  const sized = sizedBy(defs, placed)
  if (sized === null) return null
  const seat = sized.step.with
  const own = defs.seats.find(({ id }) => id === seat || id === placed.scope + (seat ?? ''))
  if (own === undefined) return null
  const picked = instrumentById(defs, state.seats[own.id] ?? '')?.id ?? null
  const fit = defs.instruments.instruments
    .filter((one) => own.kinds.includes(one.kind) && refusedNow(defs, state, own.id, one) === null)
    .map(({ id }) => id)
  return { for: own.for, picked, fit: picked === null ? fit : [picked], pickedAt: pickedAt(defs, sized) }
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
