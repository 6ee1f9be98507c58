// What a gate asks for, what is missing, and when what was given lapses.
import type { Evidence, StepOf } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { EMPTY_GATE, type GateState, type State } from './state.ts'

export type GateStep = PlacedStep & { readonly step: StepOf<'gate'> }

/** One thing to be shown. Locks come to one item per isolation point. */
export interface Item {
  readonly key: string
  readonly evidence: Evidence
  readonly point: { readonly id: string; readonly name: string } | null
}

export function itemsOf(defs: Definitions, gate: GateStep): Item[] {
  return gate.step.evidence.flatMap((evidence): Item[] =>
    evidence.kind === 'locks'
      ? defs.machine.site.isolation_points.map((point) => ({
          key: `${evidence.id}.${point.id}`,
          evidence,
          point,
        }))
      : [{ key: evidence.id, evidence, point: null }],
  )
}

export function gateState(state: State, id: string): GateState {
  return state.gates[id] ?? EMPTY_GATE
}

export function missingItem(defs: Definitions, state: State, gate: GateStep): Item | null {
  const { given } = gateState(state, gate.id)
  return itemsOf(defs, gate).find((item) => given[item.key] === undefined) ?? null
}

/** How long gas evidence stands, in ms. Not finite or not above zero: it never stands. */
export function gasLifeMs(defs: Definitions): number {
  const ms = defs.machine.site.gas.life.si * 1000
  return Number.isFinite(ms) && ms > 0 ? ms : 0
}

/** Gas evidence given so far at this gate, in the order it is asked. */
function gasItems(defs: Definitions, gate: GateStep): Item[] {
  return itemsOf(defs, gate).filter((item) => item.evidence.kind === 'gas')
}

/** The moment the oldest gas evidence of the gate lapses; null when it has none. */
export function lapsesAt(defs: Definitions, state: State, gate: GateStep): number | null {
  const { given } = gateState(state, gate.id)
  const times = gasItems(defs, gate).flatMap((item) => {
    const g = given[item.key]
    return g === undefined ? [] : [g.atMs + gasLifeMs(defs)]
  })
  return times.length === 0 ? null : Math.min(...times)
}

/** When the first gas test of the gate was taken; null when there is none. */
export function oldestGasMs(defs: Definitions, state: State, gate: GateStep): number | null {
  const lapse = lapsesAt(defs, state, gate)
  return lapse === null ? null : lapse - gasLifeMs(defs)
}

/**
 * What falls when gas evidence does: all gas items (they are taken in an order, oxygen first) and the witness, who
 * vouched for them.
 */
export function fallsWithGas(defs: Definitions, state: State, gate: GateStep): string[] {
  const { given } = gateState(state, gate.id)
  return itemsOf(defs, gate)
    .filter((item) => item.evidence.kind === 'gas' || item.evidence.kind === 'witness')
    .map((item) => item.key)
    .filter((key) => given[key] !== undefined)
}

export function gatesOf(defs: Definitions): GateStep[] {
  return defs.steps.filter((s): s is GateStep => s.step.kind === 'gate')
}

/** Gates that hold back any hazard the step exposes people to. */
export function gatesBefore(defs: Definitions, placed: PlacedStep): GateStep[] {
  const exposes = placed.step.exposes ?? []
  return gatesOf(defs).filter(
    (gate) => gate.id !== placed.id && gate.step.holds.some((h) => exposes.includes(h)),
  )
}

/** Hazards a step exposes people to that no other step, a gate, holds back: such a step is never presented. */
export function unheld(defs: Definitions, placed: PlacedStep): string[] {
  const others = gatesOf(defs).filter((gate) => gate.id !== placed.id)
  return (placed.step.exposes ?? []).filter((h) => !others.some((gate) => gate.step.holds.includes(h)))
}
