// An account of each gate, kept from the ENTRIES alone and without the engine's help, so that a fault in what the engine
// takes for an open gate cannot excuse itself. The rules that are held against it are in invariants.ts.
import { type Evidence, INSPECTED_WORDS } from '../definition/evidence.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Body, Entry } from '../job/entries.ts'
import type { GateStep } from '../job/gate.ts'
import { dayEndsMs, dayOf, readStamp } from '../lib/instant.ts'
import { assertNever } from '../lib/result.ts'
import {
  isInside,
  only,
  without,
  withoutHeldTo,
  withoutInstrument,
  withoutPerson,
  withoutShownAfter,
  withoutWaits,
} from './account-falls.ts'

type Given = Extract<Entry, { type: 'evidence.given' }>
type Begun = Extract<Entry, { type: 'wait.begun' }>

/** One gate, as its entries tell it. */
export interface Account {
  /** Evidence given since it last fell, by item. */
  readonly given: ReadonlyMap<string, Given>
  /** Waits begun since they last fell, by item. */
  readonly begun: ReadonlyMap<string, Begun>
  /** Opened since everything last fell, on evidence that was whole then. */
  readonly opened: boolean
  /** People were let in since they were last called out in words. */
  readonly letIn: boolean
}

export interface Watch {
  readonly gates: ReadonlyMap<string, Account>
  /** What stands of all STOPs that are not released. */
  readonly stop: StopSeen | null
  /** Everybody who came onto the job. */
  readonly people: readonly string[]
}

export interface StopSeen {
  /** Who raised one of them or was named as having called it: none of these releases it. */
  readonly barred: readonly string[]
  /** One has a cause that is never released. */
  readonly lasts: boolean
  /** How many were raised by nobody who was signed on, with no caller who signed for it: of these nobody can be told apart. */
  readonly nameless: number
}

/** Never released, whatever is said: listed here once more, apart from the engine's own list. */
const LASTING: readonly string[] = ['moved', 'safeguard', 'wrong-place', 'hurt']

export const NOTHING_SEEN: Watch = { gates: new Map(), stop: null, people: [] }
const EMPTY: Account = { given: new Map(), begun: new Map(), opened: false, letIn: false }

/** After any of these nothing that was proved before stands. */
const FALLS: readonly Body['type'][] = [
  'stop.raised',
  'job.left',
  'job.taken-up',
  'job.handed-over',
  'clock.moved',
]

/** The account after one more entry. `opens`: the hazards that this entry lets in again. */
export function watched(defs: Definitions, watch: Watch, entry: Entry, opens: readonly string[] = []): Watch {
  const after = entered(defs, watch, entry)
  const hazards = [...opens, ...letInBy(defs, entry)]
  if (hazards.length === 0) return after
  const gates = defs.steps.flatMap((s) => {
    const account = after.gates.get(s.id)
    return s.step.kind === 'gate' && account !== undefined
      ? [[s.id, without(s as GateStep, account, hazards)] as const]
      : []
  })
  return { ...after, gates: new Map([...after.gates, ...gates]) }
}

function entered(defs: Definitions, watch: Watch, entry: Entry): Watch {
  if (FALLS.includes(entry.type)) {
    const gates = [...watch.gates].map(([id, g]) => [id, { ...EMPTY, letIn: g.letIn }] as const)
    const stop = entry.type === 'stop.raised' ? raised(watch.stop, entry.by) : watch.stop
    return { gates: new Map(gates), stop, people: peopleAfter(watch.people, entry) }
  }
  if (entry.type === 'stop.explained') {
    const lasts = watch.stop?.lasts === true || LASTING.includes(entry.cause ?? '')
    const stop = barring(watch.stop, entry.called_by)
    const isNamed = entry.called_by !== undefined && entry.signed !== undefined
    return {
      ...watch,
      stop: { ...stop, lasts, nameless: Math.max(0, stop.nameless - (isNamed ? 1 : 0)) },
    }
  }
  if (entry.type === 'instrument.doubted') {
    const gates = [...watch.gates].map(([id, g]) => [id, withoutInstrument(g, entry.instrument)] as const)
    return { ...watch, gates: new Map(gates) }
  }
  if (entry.type === 'stop.released') return { ...watch, stop: null }
  const people = peopleAfter(watch.people, entry)
  if (people !== watch.people)
    return entry.type === 'person.signed-off'
      ? { ...watch, people, gates: withoutPerson(defs, watch.gates, entry.person) }
      : { ...watch, people }
  if (!('step' in entry) || entry.step === null) return watch
  const gate = defs.steps.find((s): s is GateStep => s.id === entry.step && s.step.kind === 'gate')
  if (gate === undefined) return watch
  const gates =
    entry.type === 'gate.closed'
      ? withoutShownAfter(defs, withoutHeldTo(defs, watch.gates, entry), entry)
      : watch.gates
  const after = accountAfter(defs, watch, gate, gates.get(gate.id) ?? EMPTY, entry)
  return { ...watch, gates: new Map([...gates, [gate.id, after]]) }
}

function raised(seen: StopSeen | null, by: string | undefined): StopSeen {
  const stop = barring(seen, by)
  return by === undefined ? { ...stop, nameless: stop.nameless + 1 } : stop
}

function barring(stop: StopSeen | null, person: string | undefined): StopSeen {
  const barred = [...(stop?.barred ?? []), ...(person === undefined ? [] : [person])]
  return { barred: [...new Set(barred)], lasts: stop?.lasts ?? false, nameless: stop?.nameless ?? 0 }
}

/** Who is on the job after the entry; the very same list where nobody came or went. */
function peopleAfter(people: readonly string[], entry: Entry): readonly string[] {
  const adding = (id: string) => [...new Set([...people, id])]
  switch (entry.type) {
    case 'person.signed-on':
    case 'person.came-on':
      return adding(entry.person)
    case 'person.signed-off':
      return people.filter((id) => id !== entry.person)
    case 'job.handed-over':
      return adding(entry.to).filter((id) => id !== entry.from)
    case 'job.left':
    case 'job.taken-up':
      return []
    default:
      return people
  }
}

/** Hazards that a step lets in again which is done with this entry. Reading steps come to their end by several. */
function letInBy(defs: Definitions, entry: Entry): readonly string[] {
  const isDone =
    entry.type === 'step.done' || entry.type === 'step.confirmed' || entry.type === 'finding.observed'
  const step = isDone ? defs.steps.find((s) => s.id === entry.step)?.step : undefined
  return step !== undefined && 'lets_in' in step ? (step.lets_in ?? []) : []
}

function accountAfter(
  defs: Definitions,
  watch: Watch,
  gate: GateStep,
  before: Account,
  entry: Entry,
): Account {
  switch (entry.type) {
    case 'evidence.given':
      return { ...before, given: new Map([...before.given, [entry.item, entry]]) }
    case 'wait.begun':
      return { ...before, begun: new Map([...before.begun, [entry.item, entry]]) }
    case 'evidence.failed':
      return withoutWaits(gate, before, entry)
    case 'gate.closed': {
      const given = only(before.given, (item) => !entry.items.includes(item))
      // A wait that was running starts again, whatever fell.
      return { ...before, given, begun: only(before.begun, (item) => given.has(item)), opened: false }
    }
    case 'people.clear':
      return { ...before, letIn: false }
    case 'gate.opened': {
      const at = readStamp(entry.at)?.ms ?? Number.NaN
      const opened = !before.letIn && isWhole(defs, watch, gate, before, at)
      return { ...before, opened, letIn: true }
    }
    default:
      return before
  }
}

/** A gate is proved when it was opened on a whole set of evidence, and every line of it still stands at `now`. */
export function isProved(defs: Definitions, watch: Watch, gate: GateStep, now: number): boolean {
  const account = watch.gates.get(gate.id)
  return account?.opened === true && isWhole(defs, watch, gate, account, now)
}

function isWhole(defs: Definitions, watch: Watch, gate: GateStep, account: Account, now: number): boolean {
  return gate.step.evidence.every((wanted) => stands(defs, watch, account, wanted, now))
}

/** Whether one line of evidence is there, sound by itself and fresh. */
function stands(
  defs: Definitions,
  { people }: Watch,
  { given, begun }: Account,
  wanted: Evidence,
  now: number,
): boolean {
  const e = given.get(wanted.id)
  const { isolation_points: all } = defs.machine.site
  const points = all.map((p) => p.id)
  const shownAt = (ids: readonly string[]) => ids.map((id) => given.get(`${wanted.id}.${id}`)?.shown)
  switch (wanted.kind) {
    case 'locks': {
      const off = (p: (typeof all)[number]) =>
        wanted.taken_off === undefined || (p.comes_off ?? 'before_gas') === wanted.taken_off
      return areOthers(shownAt(all.filter(off).map((p) => p.id)))
    }
    case 'numbers': {
      if (wanted.per === 'once') return /\d/.test(e?.shown ?? '')
      // Whoever keys is on the job too, also where the search began with somebody at the keys.
      const onJob = new Set([...people, ...[...given.values()].flatMap(({ by }) => by ?? [])])
      if (onJob.size < (wanted.at_least ?? 0)) return false
      const numbers = shownAt(wanted.per === 'person' ? people : points)
      return wanted.of === 'permit' ? numbers.every((n) => /\d/.test(n ?? '')) : areOthers(numbers)
    }
    case 'words':
      return e?.shown === wanted.words && isYoung(e, wanted.life?.si, now)
    case 'witness': {
      const person = defs.crew.crew.find((p) => p.id === e?.person)
      const doers = [...given.values(), ...begun.values()].map((one) => one.by)
      return (
        person !== undefined &&
        !doers.includes(person.id) &&
        wanted.roles.some((role) => role === person.role)
      )
    }
    case 'gas': {
      const { gas } = defs.machine.site
      const limit = gas.limits.find((l) => l.id === wanted.limit)
      const meter = defs.instruments.instruments.find((i) => i.id === e?.instrument)
      if (limit === undefined || meter?.kind !== 'gas_meter') return false
      const oxygen = given.get(wanted.oxygen ?? '')?.reading?.si ?? Number.NaN
      const isSeen = limit.gas !== 'flammable' || oxygen >= meter.needs_oxygen.at_least.si
      return isInside(limit, e?.reading?.si ?? Number.NaN) && isSeen && isYoung(e, gas.life.si, now)
    }
    case 'measured':
      return isInside(wanted, e?.reading?.si ?? Number.NaN) && isYoung(e, wanted.life.si, now)
    case 'wait': {
      const from = msOf(begun.get(wanted.id))
      return e?.shown === wanted.words && msOf(e) - from >= wanted.lasts.si * 1000
    }
    case 'lift': {
      const part = (name: string) => given.get(`${wanted.id}.${name}`)
      const load = part('load')?.reading?.si ?? Number.NaN
      const rating = part('rating')?.reading?.si ?? Number.NaN
      const days = ['load', 'rating', 'sling', 'inspected'].map((name) => part(name)?.at.slice(0, 10))
      const today = dayOf({ ms: now, offsetMin: 0 })
      const isSeen = part('inspected')?.shown === (wanted.words ?? INSPECTED_WORDS)
      return load > 0 && load <= rating && isSeen && days.every((day) => day === today)
    }
    default:
      return assertNever(wanted)
  }
}

function msOf(e: { readonly at: string } | undefined): number {
  return readStamp(e?.at ?? '')?.ms ?? Number.NaN
}

/** Without a life it does not age. */
function isYoung(e: Given | undefined, lifeS: number | undefined, now: number): boolean {
  return lifeS === undefined || now - msOf(e) < lifeS * 1000
}

/** All there, and no two of them one thing. */
function areOthers(numbers: readonly (string | undefined)[]): boolean {
  const plain = numbers.map((n) => n?.replaceAll('-', ''))
  return plain.every((n) => n !== undefined && n !== '') && new Set(plain).size === plain.length
}

/** The moments at which something given is too old or a wait is over: by the account, not by the engine. */
export function turns(defs: Definitions, watch: Watch): number[] {
  return defs.steps.flatMap(({ id, step }) => {
    const account = watch.gates.get(id)
    if (step.kind !== 'gate' || account === undefined) return []
    const oldest = new Map<string, number>()
    const note = (name: string, at: number) =>
      oldest.set(name, Math.min(at, oldest.get(name) ?? Number.POSITIVE_INFINITY))
    for (const [key, e] of account.given) {
      const line = step.evidence.find((one) => one.id === key.split('.')[0])
      if (line?.kind === 'gas') note('gas', msOf(e) + defs.machine.site.gas.life.si * 1000)
      if (line?.kind === 'measured') note(key, msOf(e) + line.life.si * 1000)
      if (line?.kind === 'words' && line.life !== undefined) note(key, msOf(e) + line.life.si * 1000)
      if (line?.kind === 'lift') note('lift', dayEndsMs({ ms: msOf(e), offsetMin: 0 }))
    }
    for (const [key, e] of account.begun) {
      const line = step.evidence.find((one) => one.id === key)
      if (line?.kind === 'wait' && !account.given.has(key)) note(key, msOf(e) + line.lasts.si * 1000)
    }
    return [...oldest.values()]
  })
}
