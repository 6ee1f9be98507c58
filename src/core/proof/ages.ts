// Ages that a state may have instead. An outline keeps in which order things lapse, not when: so that every order is
// walked, what lives long may be older than it came to be in the walk, and it may be a minute to midnight.
import type { Definitions } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import { type Lapse, lapsesOf } from '../job/lapse.ts'
import type { GateState, State } from '../job/state.ts'
import { dayEndsMs, readStamp, stamp } from '../lib/instant.ts'
import type { Account, Watch } from './account.ts'

export interface Aged {
  readonly says: string
  readonly state: State
  readonly watch: Watch
  readonly now: number
}

const MINUTE = 60_000

export function aged(defs: Definitions, state: State, watch: Watch, now: number): Aged[] {
  const lapses = gatesOf(defs).flatMap((gate) => lapsesOf(defs, state, gate))
  const first = Math.min(...lapses.map((lapse) => lapse.atMs))
  const later = lapses.filter((lapse) => lapse.atMs > first && lapse.evidence.kind !== 'gas')
  const days = later.some((lapse) => lapse.evidence.kind === 'lift')
  return [
    ...later
      .filter((lapse) => lapse.evidence.kind !== 'lift')
      .map((lapse) => older(lapse, state, watch, now)),
    ...(days ? [atMidnight(state, watch, now)] : []),
  ]
}

/** The same, with one thing given so long ago that it lapses within a minute. */
function older(lapse: Lapse, state: State, watch: Watch, now: number): Aged {
  const move = (key: string, ms: number) => (key === lapse.key ? ms - (lapse.atMs - now - MINUTE) : ms)
  return { says: `(${lapse.key} was given long before)`, ...moved(state, watch, move), now }
}

/** The same job a few hours later in the day, everything in it too: what is of the day lapses within a minute. */
function atMidnight(state: State, watch: Watch, now: number): Aged {
  const by = dayEndsMs({ ms: now, offsetMin: 0 }) - MINUTE - now
  const to = moved(state, watch, (_key, ms) => ms + by)
  return {
    says: '(it is a minute to midnight)',
    state: { ...to.state, lastMs: to.state.lastMs + by, lastAt: stamp({ ms: now + by, offsetMin: 0 }) },
    watch: to.watch,
    now: now + by,
  }
}

type Move = (key: string, ms: number) => number

function moved(state: State, watch: Watch, move: Move): { readonly state: State; readonly watch: Watch } {
  const gates = Object.entries(state.gates).map(([id, g]): [string, GateState] => [
    id,
    { ...g, given: mapped(g.given, move), begun: mapped(g.begun, move) },
  ])
  const accounts = [...watch.gates].map(([id, a]): [string, Account] => [
    id,
    {
      ...a,
      given: new Map([...a.given].map(([key, e]) => [key, { ...e, at: at(key, e.at, move) }])),
      begun: new Map([...a.begun].map(([key, e]) => [key, { ...e, at: at(key, e.at, move) }])),
    },
  ])
  return {
    state: { ...state, gates: Object.fromEntries(gates) },
    watch: { ...watch, gates: new Map(accounts) },
  }
}

function mapped<T extends { readonly at: string; readonly atMs: number }>(
  record: Readonly<Record<string, T>>,
  move: Move,
): Record<string, T> {
  return Object.fromEntries(
    Object.entries(record).map(([key, one]) => [
      key,
      { ...one, at: at(key, one.at, move), atMs: move(key, one.atMs) },
    ]),
  )
}

function at(key: string, text: string, move: Move): string {
  const ms = readStamp(text)?.ms
  return ms === undefined ? text : stamp({ ms: move(key, ms), offsetMin: 0 })
}
