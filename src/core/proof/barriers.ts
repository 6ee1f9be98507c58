// What searching gate by gate takes for granted is looked at on the whole procedure: a step is presented only while every
// gate that holds any of its hazards is open. In each place that a job can stand at, with every gate that the step waits for,
// or that one of those waits for, in every condition, and all the others alike in each.
import type { Engine } from '../job/admit.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import { next } from '../job/next.ts'
import { EMPTY_GATE, type GateState, type State } from '../job/state.ts'
import { asAnswered } from './before.ts'
import type { Breach } from './explore.ts'
import { hasCondition } from './free.ts'
import { presented } from './invariants.ts'

/** Conditions of all gates together that are tried in one place; more, and nothing is proved. */
const MOST_CONDITIONS = 20_000

const CONDITIONS: readonly GateState[] = [
  EMPTY_GATE,
  { ...EMPTY_GATE, mustClear: true },
  { ...EMPTY_GATE, status: 'closed' },
  { ...EMPTY_GATE, status: 'closed', mustClear: true },
  { ...EMPTY_GATE, status: 'open' },
]

export type Barriers =
  | { readonly is: 'sound' }
  | { readonly is: 'breached'; readonly breach: Breach }
  | { readonly is: 'bounded'; readonly bound: string }

export function barriers(engine: Engine, fresh: State): Barriers {
  for (const { placed, walked, state } of places(engine, fresh)) {
    const waitedFor = gatesBehind(engine.defs, placed)
    const many = CONDITIONS.length ** waitedFor.length
    if (many > MOST_CONDITIONS)
      return { is: 'bounded', bound: `${MOST_CONDITIONS} conditions of the gates before ${placed.id}` }
    for (const others of CONDITIONS) {
      const all = asGates(engine, () => others)
      for (let n = 0; n < many; n++) {
        const own = waitedFor.map(
          (gate, g) =>
            [gate.id, CONDITIONS[Math.floor(n / CONDITIONS.length ** g) % CONDITIONS.length]] as const,
        )
        const conditions = { ...all, ...Object.fromEntries(own.map(([id, c]) => [id, c ?? EMPTY_GATE])) }
        const breach = presentedThere(walked, { ...state, gates: conditions })
        if (breach !== null) return { is: 'breached', breach }
      }
    }
  }
  return { is: 'sound' }
}

/** The step itself if it is a gate, the gates that it waits for, and those that they wait for in turn. */
function gatesBehind(defs: Definitions, placed: PlacedStep): readonly PlacedStep[] {
  const all = new Set<PlacedStep>(placed.step.kind === 'gate' ? [placed] : [])
  const waits = (step: PlacedStep) =>
    gatesOf(defs).filter((gate) => gate.step.holds.some((h) => (step.step.exposes ?? []).includes(h)))
  for (const gate of waits(placed)) all.add(gate)
  for (const one of all) for (const gate of waits(one)) all.add(gate)
  return [...all]
}

function asGates(engine: Engine, condition: () => GateState): State['gates'] {
  return Object.fromEntries(gatesOf(engine.defs).map((gate) => [gate.id, condition()]))
}

/**
 * A job that stands at each step, by whichever way: what rules say is only which step is next, so all that come before it are
 * answered. Everything with a condition is there; or only this step, beside gates that were left out and never asked; or nobody
 * can tell of any. At a point of inspection the step is done and not signed yet.
 */
function* places(
  engine: Engine,
  fresh: State,
): Generator<{ readonly placed: PlacedStep; readonly walked: Engine; readonly state: State }> {
  const { defs } = engine
  const all: Definitions = { ...defs, ruled: () => 'true' }
  const outcomes = defs.steps.some(hasCondition)
    ? (['true', 'false', 'unknown'] as const)
    : (['true'] as const)
  const doer = defs.crew.crew.find((p) => p.role !== 'trainee')?.id ?? ''
  let state: State = { ...fresh, doer, people: [doer], machineNamed: true }
  for (const placed of defs.steps) {
    const isOwn = (p: PlacedStep) => p === placed || placed.inside.includes(p)
    const walks = outcomes.map((outcome): Engine => {
      const ruled = (_: State, p: PlacedStep) => (outcome === 'false' && isOwn(p) ? 'true' : outcome)
      return { ...engine, defs: { ...defs, ruled } }
    })
    for (const walked of walks) yield { placed, walked, state }
    if (placed.step.kind === 'gate') continue
    state = asAnswered(all, state, placed)
    const { [placed.id]: signed, ...points } = state.points
    const unsigned = { ...state, points }
    if (signed !== undefined) for (const walked of walks) yield { placed, walked, state: unsigned }
  }
}

function presentedThere({ defs }: Engine, state: State): Breach | null {
  const step = presented(next(defs, state))
  const exposes = step?.step.exposes ?? []
  const shut = gatesOf(defs).find(
    (gate) =>
      gate.id !== step?.id &&
      gate.step.holds.some((hazard) => exposes.includes(hazard)) &&
      state.gates[gate.id]?.status !== 'open',
  )
  if (step === null || shut === undefined) return null
  return {
    rule: 'hazard',
    say: `${step.id} is asked while ${shut.id}, which holds back a hazard of it, is shut`,
    step: step.id,
    path: gatesOf(defs).map((gate) => ({ says: state.gates[gate.id]?.status ?? '', step: gate.id })),
  }
}
