// What goes stale by time alone, when, and what falls with it. The one place for all of it: gas by the life of the site,
// measured values and words by their own life, a lift plan with its day.
import type { Evidence } from '../definition/evidence.ts'
import { dayEndsMs, dayOf, type Instant, readStamp } from '../lib/instant.ts'
import type { Definitions } from './definitions.ts'
import { evidenceByKey, type GateStep, gateState, type Item, itemsOf } from './gate.ts'
import type { State } from './state.ts'

export interface Lapse {
  readonly key: string
  readonly evidence: Evidence
  readonly givenMs: number
  /** The first moment at which it no longer stands. */
  readonly atMs: number
}

/** How long evidence stands by age, in ms; null: its age does not matter. Not finite or not above zero: never. */
export function lifeMs(defs: Definitions, evidence: Evidence): number | null {
  if (evidence.kind === 'gas') return usable(defs.machine.site.gas.life.si)
  if (evidence.kind === 'measured') return usable(evidence.life.si)
  if (evidence.kind === 'words' && evidence.life !== undefined) return usable(evidence.life.si)
  return null
}

function usable(seconds: number): number {
  const ms = seconds * 1000
  return Number.isFinite(ms) && ms > 0 ? ms : 0
}

/** Everything given at the gate that time will void, in the order it was given. */
export function lapsesOf(defs: Definitions, state: State, gate: GateStep): Lapse[] {
  return Object.entries(gateState(state, gate.id).given).flatMap(([key, given]): Lapse[] => {
    const evidence = evidenceByKey(gate, key)
    if (evidence === null) return []
    const life = lifeMs(defs, evidence)
    if (life !== null) return [{ key, evidence, givenMs: given.atMs, atMs: given.atMs + life }]
    if (evidence.kind !== 'lift') return []
    const at = readStamp(given.at)
    const atMs = at === null ? Number.NEGATIVE_INFINITY : dayEndsMs(at)
    return [{ key, evidence, givenMs: given.atMs, atMs }]
  })
}

/** The first moment at which anything given at the gate lapses; null when nothing of it does. */
export function lapsesAt(defs: Definitions, state: State, gate: GateStep): number | null {
  const times = lapsesOf(defs, state, gate).map((lapse) => lapse.atMs)
  return times.length === 0 ? null : Math.min(...times)
}

/** What no longer stands at this moment. */
export function staleNow(defs: Definitions, state: State, gate: GateStep, now: Instant): Lapse[] {
  const { given } = gateState(state, gate.id)
  return lapsesOf(defs, state, gate).filter(({ key, evidence, atMs }) => {
    if (!(now.ms < atMs)) return true
    // The wall clock may have changed its offset since: today is what the calendar says now.
    return evidence.kind === 'lift' && given[key]?.at.slice(0, 10) !== dayOf(now)
  })
}

/**
 * Everything that falls when these items do, in the order it is asked: gas whole, since it is read in an order (oxygen
 * first); a lift plan whole, since it is one sling's; the witness, who vouched for them; and a wait that is running.
 */
export function fallsWith(
  defs: Definitions,
  state: State,
  gate: GateStep,
  keys: readonly string[],
): readonly string[] {
  const { given, begun } = gateState(state, gate.id)
  const felled = keys.flatMap((key) => evidenceByKey(gate, key) ?? [])
  const isGas = felled.some((evidence) => evidence.kind === 'gas')
  const falls = ({ key, evidence }: Item) =>
    keys.includes(key) ||
    evidence.kind === 'witness' ||
    (evidence.kind === 'gas' && isGas) ||
    (evidence.kind === 'lift' && felled.includes(evidence)) ||
    (begun[key] !== undefined && given[key] === undefined)
  const asked = itemsOf(defs, state, gate)
    .filter(falls)
    .map((item) => item.key)
  return [...new Set([...asked, ...keys])].filter(
    (key) => given[key] !== undefined || begun[key] !== undefined,
  )
}
