// Temperatures that were taken for what an instrument read: of its own body, before and after, and of the metal behind its
// readings. Another instrument may be as warm as a hand or as cold as its case, and what it reads is not bracketed by them.
import { datumsOf } from '../definition/judge-reads.ts'
import { at20Of } from '../definition/step-judge.ts'
import { oncePer } from '../lib/once.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { type Pending, type State, stands } from './state.ts'

/** Ids of read steps, scope and all. */
interface Bracket {
  /** Sizes and set-checks of one instrument. */
  readonly sizes: readonly string[]
  readonly body: readonly string[]
  readonly part: readonly string[]
}

const bracketsOf = oncePer((defs: Definitions): readonly Bracket[] => defs.steps.flatMap(bracketsIn))

function bracketsIn(placed: PlacedStep): Bracket[] {
  const { step, scope } = placed
  if (step.kind !== 'judge' || step.compute === 'pocket_setting') return []
  const within = (ids: readonly (string | undefined)[]) =>
    ids.flatMap((id) => (id === undefined ? [] : scope + id))
  if (step.compute === 'figures')
    return at20Of(step).map((at) => ({
      sizes: within([...at.readings, at.set_before, at.set_after]),
      body: within(at.instrument),
      part: within(at.part),
    }))
  const { diameters, datum, counterbore, set_before, set_after, ...warm } = step.inputs
  return [
    {
      sizes: within([diameters, ...datumsOf({ datum }), counterbore, set_before, set_after]),
      body: within(warm.instrument_temperature),
      part: within(warm.part_temperature),
    },
  ]
}

/** Seqs of those that stand or wait to be settled, in order, and of which steps. */
export function temperaturesFor(
  defs: Definitions,
  state: State,
  instrument: string,
): { readonly seqs: readonly number[]; readonly steps: readonly string[] } {
  const steps = bracketsOf(defs).flatMap(({ sizes, body, part }) => {
    const of = defs.steps.filter((one) => sizes.includes(one.id))
    const read = of.filter(({ id }) => takenAt(state, id).some((one) => one.instrument === instrument))
    if (read.length === 0 && !of.some((one) => liesReady(state, one, instrument))) return []
    const from = Math.min(...read.map(({ number }) => number))
    return [
      ...body,
      ...defs.steps.flatMap(({ id, number }) => (part.includes(id) && number > from ? [id] : [])),
    ]
  })
  const taken = [...new Set(steps)].flatMap((step) => takenAt(state, step))
  return {
    seqs: taken.map(({ seq }) => seq).sort((a, b) => a - b),
    steps: [...new Set(taken.map(({ step }) => step))],
  }
}

/** What was read at a step and stands, or waits to be settled. */
function takenAt(state: State, step: string): readonly Pending[] {
  const waiting = [state.doubt, state.late].filter((one): one is NonNullable<typeof one> => one !== null)
  return [...Object.values(state.readings).flat().filter(stands), ...waiting].filter(
    (one) => one.step === step,
  )
}

/** Picked for a step at which nothing was read yet. */
function liesReady(state: State, { id, step }: PlacedStep, instrument: string): boolean {
  return step.kind === 'read' && state.seats[step.with] === instrument && takenAt(state, id).length === 0
}
