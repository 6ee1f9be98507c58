// What searching gate by gate takes for granted is looked at on the whole procedure: a step is presented only while every
// gate that holds any of its hazards is open. In each place that a job can stand at, with every gate in every condition.
import type { Engine } from '../job/admit.ts'
import { gatesOf } from '../job/gate.ts'
import { current, next } from '../job/next.ts'
import { EMPTY_GATE, type GateState, type State } from '../job/state.ts'
import { answered } from './before.ts'
import type { Breach } from './explore.ts'
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
  const gates = gatesOf(engine.defs)
  const many = CONDITIONS.length ** gates.length
  if (many > MOST_CONDITIONS) return { is: 'bounded', bound: `${MOST_CONDITIONS} conditions of its gates` }
  for (const place of places(engine, fresh)) {
    for (let n = 0; n < many; n++) {
      const conditions = gates.map(
        (_, g) => CONDITIONS[Math.floor(n / CONDITIONS.length ** g) % CONDITIONS.length],
      )
      const breach = presentedThere(engine, { ...place, gates: asGates(engine, conditions) })
      if (breach !== null) return { is: 'breached', breach }
    }
  }
  return { is: 'sound' }
}

function asGates(engine: Engine, conditions: readonly (GateState | undefined)[]): State['gates'] {
  return Object.fromEntries(gatesOf(engine.defs).map((gate, g) => [gate.id, conditions[g] ?? EMPTY_GATE]))
}

/** One state for each step that the job can stand at, on every way that its answers can lead. */
function places(engine: Engine, fresh: State): State[] {
  const { defs } = engine
  const doer = defs.crew.crew.find((p) => p.role !== 'trainee')?.id ?? ''
  const open = asGates(
    engine,
    gatesOf(defs).map(() => CONDITIONS.at(-1)),
  )
  const seen = new Set<string>()
  const found: State[] = []
  let last: State[] = [{ ...fresh, doer, people: [doer], machineNamed: true, gates: open }]
  while (last.length > 0) {
    const ahead: State[] = []
    for (const state of last) {
      const at = current(defs, state)
      // By step, and by what was answered before: two ways to one step may differ in what comes after.
      const key = `${at?.placed.id ?? ''} ${JSON.stringify([state.done, Object.keys(state.readings)])}`
      if (seen.has(key)) continue
      seen.add(key)
      found.push(state)
      if (at !== null && at.state === 'do') ahead.push(...answered(engine, state, at.placed))
    }
    last = ahead
  }
  return found
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
