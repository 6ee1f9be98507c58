// What must hold of every job at every moment, read off its ENTRIES and the definitions alone. Nothing here calls the
// engine's own idea of an open gate, of age or of what counts: a fault there would otherwise excuse itself.
// Each check returns sentences; an empty list is good.
import type { Definitions, PlacedStep } from '../../../src/core/job/definitions.ts'
import type { Body, Entry } from '../../../src/core/job/entries.ts'
import type { GateStep } from '../../../src/core/job/gate.ts'
import { next, type Prompt } from '../../../src/core/job/next.ts'
import type { State } from '../../../src/core/job/state.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'
import { oncePer } from '../../../src/core/lib/once.ts'
import { findingPassedBy, testAmiss } from './invariants-over-time.ts'
import { peopleAmiss, peopleIn, radioAmiss } from './invariants-people.ts'
import {
  doubtedInstruments,
  doubtedInstrumentUsed,
  pastAPoint,
  verdictOnNothing,
} from './invariants-quality.ts'
import { fallsWithLine } from './invariants-taken-back.ts'

export interface Moment {
  readonly defs: Definitions
  readonly entries: readonly Entry[]
  readonly state: State
  /** The clock now, after time has acted. */
  readonly nowMs: number
}

/** After any of these nothing that was proved before stands. */
const FALLS: readonly Body['type'][] = [
  'stop.raised',
  'job.left',
  'job.taken-up',
  'clock.moved',
  'job.handed-over',
  'record.taken-in',
]

// --- 1. Nobody is sent to a hazard unless a gate holding it back is proved, now. ------------------------------------

export function hazardWithoutGate({ defs, entries, state, nowMs }: Moment): string[] {
  const step = presented(next(defs, state))
  if (step === null) return []
  return unproved(defs, entries, step, nowMs).map(
    (hazard) => `${step.id} is asked, and ${hazard} is not held`,
  )
}

/** The step whose doing the prompt asks for. Being held, stopped, signed on or called out exposes nobody. */
export function presented(prompt: Prompt): PlacedStep | null {
  switch (prompt.kind) {
    case 'closed':
    case 'finish':
    case 'stop-cause':
    case 'stopped':
    case 'sign-on':
    case 'tag':
    case 'open-things':
    case 'held':
    case 'clear':
    case 'findings':
    case 'countersign':
    case 'sheet':
    case 'sheet-doubt':
    case 'sheet-sign':
    // Records are read where they are kept.
    case 'review':
      return null
    case 'evidence':
      return prompt.gate
    default:
      return prompt.step
  }
}

function unproved(defs: Definitions, entries: readonly Entry[], placed: PlacedStep, nowMs: number): string[] {
  const gates = defs.steps.filter((s): s is GateStep => s.step.kind === 'gate' && s.id !== placed.id)
  return (placed.step.exposes ?? []).filter(
    (hazard) => !gates.some((g) => g.step.holds.includes(hazard) && isProved(defs, entries, g, nowMs)),
  )
}

/** Opened since everything last fell, on a whole set of evidence that is sound, given since then, and not stale. */
export function isProved(
  defs: Definitions,
  entries: readonly Entry[],
  gate: GateStep,
  nowMs: number,
): boolean {
  const last = (test: (e: Entry) => boolean, to = entries.length) => entries.slice(0, to).findLastIndex(test)
  const opens = (e: Entry) => e.type === 'gate.opened' && e.step === gate.id
  const opened = last(opens)
  const fell = last((e) => FALLS.includes(e.type))
  const shut = last((e) => e.type === 'gate.closed' && e.step === gate.id)
  if (opened < 0 || opened < fell || opened < shut) return false
  // Whoever came onto the job was not there when the gas was tested and people were counted clear: that and its witness are
  // from after, or there is none.
  const cameOn = last((e) => e.type === 'person.came-on')
  const rests = (item: string) => {
    const kind = gate.step.evidence.find((e) => e.id === item)?.kind
    return kind === 'gas' || kind === 'words' || kind === 'witness'
  }
  const restsOnPeople = gate.step.evidence.some((e) => e.kind === 'gas' || e.kind === 'words')
  if (restsOnPeople && opened < cameOn) return false
  if (!calledOut(entries, gate, last(opens, opened), opened)) return false
  if (entries.some((_e, n) => n > opened && letsIn(defs, entries, gate, n).length > 0)) return false
  const given = new Map<string, GivenEntry>()
  const begun = new Map<string, Begun>()
  const bad = doubtedInstruments(entries)
  const dropShownAfter = (n: number) => {
    const falls = fallsWithLine(defs, entries, gate, n)
    for (const kept of [given, begun]) for (const [item, one] of kept) if (falls(item, one)) kept.delete(item)
  }
  for (const [n, e] of entries.slice(0, opened).entries()) {
    if (n <= fell) continue
    if (e.type === 'wait.begun' && e.step === gate.id) begun.set(e.item, e)
    const isOld = restsOnPeople && e.seq < cameOn && e.type === 'evidence.given' && rests(e.item)
    if (e.type === 'evidence.given' && e.step === gate.id && !isOld) given.set(e.item, e)
    if (e.type === 'gate.closed' && e.step === gate.id) {
      for (const item of e.items) given.delete(item)
      for (const item of begun.keys()) if (!given.has(item)) begun.delete(item)
    }
    dropLetIn(gate, given, letsIn(defs, entries, gate, n))
    dropShownAfter(n)
  }
  for (let n = opened + 1; n < entries.length; n += 1) dropShownAfter(n)
  // Whoever goes takes their own lock along, and hangs it anew on coming back.
  for (const e of entries) {
    if (e.type !== 'person.signed-off') continue
    for (const [item, one] of given) if (item.endsWith(`.${e.person}`) && one.seq < e.seq) given.delete(item)
  }
  // What was found out of calibration has proved nothing, whenever that was found.
  if ([...given.values()].some((e) => bad.has(e.instrument ?? ''))) return false
  return isWhole(defs, gate, given, begun, peopleIn(entries), nowMs)
}

type GivenEntry = Extract<Entry, { type: 'evidence.given' }>
type Begun = Extract<Entry, { type: 'wait.begun' }>

/**
 * Hazards of the gate that the work just put on record lets in again. A reading counts as one that does so where its step
 * has one place, read once: that is how the procedures of these tests use it.
 */
function letsIn(defs: Definitions, entries: readonly Entry[], gate: GateStep, n: number): readonly string[] {
  const e = entries[n]
  if (e === undefined) return []
  const DONE: readonly Body['type'][] = [
    ...(['step.done', 'step.confirmed', 'step.objected', 'finding.observed'] as const),
    ...(['reading.taken', 'reading.not-applicable'] as const),
  ]
  const keeps = (e.type === 'late.settled' && e.kept) || (e.type === 'doubt.settled' && e.choice === 'kept')
  const id = keeps
    ? entries
        .slice(0, n)
        .flatMap((other) =>
          other.type === 'reading.late' || other.type === 'reading.doubted' ? [other.step] : [],
        )
        .pop()
    : DONE.includes(e.type) && 'step' in e
      ? e.step
      : undefined
  const step = id === undefined || id === null ? undefined : stepsById(defs).get(id)?.step
  const opens = step !== undefined && 'lets_in' in step ? (step.lets_in ?? []) : []
  return opens.filter((hazard) => gate.step.holds.includes(hazard))
}

const stepsById = oncePer((defs: Definitions) => new Map(defs.steps.map((s) => [s.id, s])))

/** What proved a hazard that was let in proves nothing any more. */
function dropLetIn(gate: GateStep, given: Map<string, GivenEntry>, hazards: readonly string[]): void {
  if (hazards.length === 0) return
  for (const key of given.keys()) {
    const evidence = gate.step.evidence.find((one) => one.id === key.split('.')[0])
    const against = evidence === undefined || evidence.kind === 'witness' ? gate.step.holds : evidence.against
    if ((against ?? gate.step.holds).some((hazard) => hazards.includes(hazard))) given.delete(key)
  }
}

/** Whoever was let in is called out, in words, before any evidence is taken anew. */
function calledOut(entries: readonly Entry[], gate: GateStep, before: number, opened: number): boolean {
  if (before < 0) return true
  const between = entries.slice(before + 1, opened)
  const out = between.findIndex((e) => e.type === 'people.clear' && e.step === gate.id)
  const anew = between.findIndex((e) => e.type === 'evidence.given' && e.step === gate.id)
  return out >= 0 && (anew < 0 || out < anew)
}

type Given = ReadonlyMap<string, GivenEntry>

/** Every line of the gate, each looked at from what is on record of it alone. */
function isWhole(
  defs: Definitions,
  gate: GateStep,
  given: Given,
  begun: ReadonlyMap<string, Begun>,
  people: readonly string[],
  nowMs: number,
): boolean {
  const doers = new Set([...given.values(), ...begun.values()].map((e) => e.by))
  const points = defs.machine.site.isolation_points.map((p) => p.id)
  const isSound = (wanted: GateStep['step']['evidence'][number]): boolean => {
    const e = given.get(wanted.id)
    switch (wanted.kind) {
      case 'locks':
        return areOthers(
          defs.machine.site.isolation_points
            .filter(
              (p) => wanted.taken_off === undefined || (p.comes_off ?? 'before_gas') === wanted.taken_off,
            )
            .map((p) => given.get(`${wanted.id}.${p.id}`)?.shown),
        )
      case 'numbers': {
        if (wanted.per === 'once') return /\d/.test(e?.shown ?? '')
        if (wanted.per === 'person' && people.length < (wanted.at_least ?? 0)) return false
        const of = wanted.per === 'person' ? people : points
        const numbers = of.map((one) => given.get(`${wanted.id}.${one}`)?.shown)
        return wanted.of === 'permit' ? numbers.every((n) => /\d/.test(n ?? '')) : areOthers(numbers)
      }
      case 'words':
        return e?.shown === wanted.words && isYoung(e, wanted.life?.si ?? Infinity, nowMs)
      case 'witness': {
        const person = defs.crew.crew.find((p) => p.id === e?.person)
        return person !== undefined && !doers.has(person.id) && wanted.roles.some((r) => r === person.role)
      }
      case 'gas':
        return isSoundGas(defs, wanted, given, nowMs)
      case 'measured':
        return isSoundMeasured(defs, wanted, e, nowMs)
      case 'wait': {
        const from = readStamp(begun.get(wanted.id)?.at ?? '')?.ms ?? Number.NaN
        const to = readStamp(e?.at ?? '')?.ms ?? Number.NaN
        return e?.shown === wanted.words && to - from >= wanted.lasts.si * 1000
      }
      case 'lift': {
        const part = (name: string) => given.get(`${wanted.id}.${name}`)
        const load = part('load')?.reading?.si ?? Number.NaN
        const rating = part('rating')?.reading?.si ?? Number.NaN
        const days = ['load', 'rating', 'sling', 'inspected'].map((name) => part(name)?.at.slice(0, 10))
        // The jobs of these tests run in UTC.
        const today = new Date(nowMs).toISOString().slice(0, 10)
        return (
          load > 0 &&
          load <= rating &&
          part('inspected')?.shown === (wanted.words ?? 'INSPECTED TODAY') &&
          days.every((day) => day === today)
        )
      }
    }
  }
  return gate.step.evidence.every(isSound)
}

/** All there, and no two of them one thing. */
function areOthers(numbers: readonly (string | undefined)[]): boolean {
  const plain = numbers.map((n) => n?.replaceAll('-', ''))
  return plain.every((n) => n !== undefined && n !== '') && new Set(plain).size === plain.length
}

function isYoung(e: GivenEntry | undefined, lifeSeconds: number, nowMs: number): boolean {
  const at = readStamp(e?.at ?? '')?.ms ?? Number.NaN
  return nowMs - at < lifeSeconds * 1000
}

type Wanted<K extends GateStep['step']['evidence'][number]['kind']> = Extract<
  GateStep['step']['evidence'][number],
  { kind: K }
>

function isSoundGas(defs: Definitions, wanted: Wanted<'gas'>, given: Given, nowMs: number): boolean {
  const e = given.get(wanted.id)
  const { gas } = defs.machine.site
  const limit = gas.limits.find((l) => l.id === wanted.limit)
  const meter = defs.instruments.instruments.find((i) => i.id === e?.instrument)
  if (limit === undefined || meter?.kind !== 'gas_meter') return false
  const oxygen = given.get(wanted.oxygen ?? '')?.reading?.si ?? Number.NaN
  const seen = limit.gas !== 'flammable' || oxygen >= meter.needs_oxygen.at_least.si
  return isInside(limit, e?.reading?.si ?? Number.NaN) && seen && isYoung(e, gas.life.si, nowMs)
}

function isSoundMeasured(
  defs: Definitions,
  wanted: Wanted<'measured'>,
  e: GivenEntry | undefined,
  nowMs: number,
): boolean {
  const si = e?.reading?.si ?? Number.NaN
  const instrument = defs.instruments.instruments.find((i) => i.id === e?.instrument)
  if (instrument === undefined || instrument.kind === 'gas_meter') return false
  // Inside by a step of the instrument at least, and on its scale; binary noise apart.
  const step = instrument.resolution.si * 0.999_999
  const isOnScale = si >= instrument.range.from.si && si <= instrument.range.to.si
  const isWellInside = isInside(wanted, si - step) && isInside(wanted, si + step)
  return isOnScale && isWellInside && isYoung(e, wanted.life.si, nowMs)
}

interface Bounds {
  readonly at_least?: { readonly si: number } | undefined
  readonly at_most?: { readonly si: number } | undefined
}

function isInside({ at_least: least, at_most: most }: Bounds, si: number): boolean {
  return si >= (least?.si ?? Number.NEGATIVE_INFINITY) && si <= (most?.si ?? Infinity)
}

// --- 2. No reading counts that was keyed while its gate was shut, unless confirmed behind a proved one. -------------

export function readingsThatShouldNotCount({ defs, entries, state }: Moment): string[] {
  const counted = Object.values(state.readings)
    .flat()
    .filter((r) => r.correctedBy === null && r.voidBy === null)
  return counted.flatMap(({ seq, step }) =>
    mayCount(defs, entries, seq) ? [] : [`reading ${seq} of ${step} counts, and should not`],
  )
}

function mayCount(defs: Definitions, entries: readonly Entry[], seq: number): boolean {
  const e = entries[seq]
  if (e === undefined || e.seq !== seq) return false
  // As it was just before: the reading itself may let in a hazard again.
  const heldAt = (n: number, stepId: string) => {
    const placed = defs.steps.find((s) => s.id === stepId)
    const at = readStamp(entries[n]?.at ?? '')?.ms
    return (
      placed !== undefined && at !== undefined && unproved(defs, entries.slice(0, n), placed, at).length === 0
    )
  }
  const settled = (type: 'doubt.settled' | 'late.settled') =>
    entries.findIndex((other, n) => n > seq && other.type === type)
  switch (e.type) {
    case 'reading.taken':
      return heldAt(seq, e.step)
    case 'reading.doubted': {
      const n = settled('doubt.settled')
      const s = entries[n]
      return s?.type === 'doubt.settled' && s.choice === 'kept' && (s.why ?? '') !== '' && heldAt(n, e.step)
    }
    case 'reading.late': {
      const n = settled('late.settled')
      const s = entries[n]
      return s?.type === 'late.settled' && s.kept && heldAt(n, e.step)
    }
    case 'reading.corrected':
      // A correction is made on paper: it sends nobody in. It may only replace a reading that counted.
      return e.why !== '' && mayCount(defs, entries, e.of)
    default:
      return false
  }
}

// --- 3. No witness is the doer, nobody witnesses what they gave themselves, no trainee at a gate. -------------------

export function selfWitness({ defs, entries }: Moment): string[] {
  return entries.flatMap((e) => {
    if (e.type !== 'evidence.given' || e.person === undefined) return []
    const role = defs.crew.crew.find((p) => p.id === e.person)?.role
    return e.person === e.by || e.by === undefined || role === undefined || role === 'trainee'
      ? [`${e.person} witnessed what ${e.by ?? 'nobody'} did, entry ${e.seq}`]
      : []
  })
}

// --- 4. Under STOP nothing goes on record but a note, a file, things placed or accounted for, what is said of it, its end, leaving, and the clock. -----

const UNDER_STOP: readonly Body['type'][] = [
  'thing.placed',
  'thing.seen',
  'thing.accounted',
  'note.written',
  'file.attached',
  'stop.raised',
  'stop.explained',
  'stop.released',
  'stop.stands',
  'job.closed',
  'job.left',
  'job.taken-up',
  'clock.moved',
  'instrument.doubted',
  // It takes away as well: nothing goes on by it before the STOP is released.
  'record.taken-in',
  // What others do is put on record under STOP too; it lets nothing go on.
  'elsewhere.seen',
  'elsewhere.gone',
]

/** Never released, whatever is said: listed here once more, apart from the engine's own list. */
const LASTING = ['moved', 'safeguard', 'wrong-place', 'hurt']

export function workUnderStop({ defs, entries, state }: Moment): string[] {
  let open: Entry[] = []
  const found: string[] = []
  for (const [n, e] of entries.entries()) {
    if (open.length > 0 && !UNDER_STOP.includes(e.type)) found.push(`${e.type} under STOP, entry ${e.seq}`)
    if (e.type === 'stop.released')
      found.push(...open.flatMap((stop) => wrongRelease(defs, entries.slice(0, n), stop, e.person)))
    if (e.type === 'stop.raised') open = [...open, e]
    if (e.type === 'stop.released') open = []
    if (e.type === 'job.closed' && open.length > 0) {
      const by = entries[n - 1]
      const signed =
        by?.type === 'stop.stands' && defs.crew.crew.some((p) => p.id === by.person && p.role === 'lead')
      if (!signed || e.outcome !== 'STOP') found.push(`closed under STOP as ${e.outcome}, entry ${e.seq}`)
    }
  }
  const { kind } = next(defs, state)
  if (open.length > 0 && kind !== 'stop-cause' && kind !== 'stopped' && kind !== 'closed')
    found.push(`${kind} is asked under STOP`)
  return found
}

/** Why this person may not have released this STOP, as sentences; read off all that was said of it before. */
function wrongRelease(defs: Definitions, before: readonly Entry[], stop: Entry, person: string): string[] {
  const said = before.filter((e) => e.type === 'stop.explained' && e.of === stop.seq)
  const causes = said.flatMap((e) => (e.type === 'stop.explained' ? [e.cause ?? 'none'] : []))
  const named = said.flatMap((e) => (e.type === 'stop.explained' ? [e.called_by ?? null] : []))
  const earlier = before.filter((e) => e.seq < stop.seq)
  const signedOn = earlier.some(
    (e) =>
      ((e.type === 'person.signed-on' || e.type === 'person.came-on') && e.person === person) ||
      (e.type === 'job.handed-over' && e.to === person),
  )
  const wrong: [boolean, string][] = [
    [defs.crew.crew.find((p) => p.id === person)?.role !== 'lead', 'is no lead'],
    [causes.length === 0 || causes.includes('none'), 'and its cause is not answered'],
    [causes.some((c) => LASTING.includes(c)), 'and its cause is never released'],
    [stop.by === person, 'who raised it'],
    [named.includes(person), 'who called it'],
    [named[0] === null && signedOn, 'who was on the job, and its caller is not known'],
    [named[0] === null && stop.by === undefined, 'and nobody knows whose it is'],
  ]
  return wrong.flatMap(([isSo, why]) => (isSo ? [`STOP ${stop.seq} released by ${person}, ${why}`] : []))
}

// 5 to 7 are in invariants-quality.ts.

// --- 8. What was placed is accounted for by two different people, and no job ends over it without a word. ------------

export function thingsForgotten({ defs, entries }: Moment): string[] {
  interface Open {
    seen: string | null
    readonly step: string | null
    readonly place: string | null
    isHandedOn: boolean
  }
  const open = new Map<number, Open>()
  const roleOf = (id: string) => defs.crew.crew.find((p) => p.id === id)?.role
  const found: string[] = []
  for (const e of entries) {
    if (e.type === 'thing.placed')
      open.set(e.seq, { seen: null, step: e.step, place: e.place ?? null, isHandedOn: false })
    // Gone back to, or done anew: it is in again, whoever saw it out before.
    if (e.type === 'step.reopened' || e.type === 'step.done' || e.type === 'step.confirmed') {
      const steps = [e.step, ...('voids' in e ? e.voids : [])]
      for (const thing of open.values())
        if (thing.place !== null && steps.includes(thing.step ?? '')) thing.seen = null
    }
    if (e.type === 'thing.seen') {
      const thing = open.get(e.of)
      if (thing === undefined || roleOf(e.person) === undefined) found.push(`nobody saw thing ${e.of}`)
      else thing.seen = e.person
    }
    if (e.type === 'thing.accounted') {
      const thing = open.get(e.of)
      const [first, second] = e.people
      const isSo = thing !== undefined && thing.seen === first && second === e.person && first !== second
      if (!isSo || roleOf(e.person) === undefined) found.push(`thing ${e.of} accounted for by ${e.people}`)
      open.delete(e.of)
    }
    if (e.type === 'things.handed-on') {
      if (roleOf(e.person) !== 'lead' || e.person === e.by) found.push(`handed on by ${e.person}`)
      for (const of of e.of) {
        const thing = open.get(of)
        if (thing !== undefined) thing.isHandedOn = true
      }
    }
    if (e.type === 'job.closed' && e.outcome !== 'STOP')
      for (const [seq, { place, isHandedOn }] of open)
        if (!isHandedOn && !(defs.procedure.leaves ?? []).includes(place ?? '-'))
          found.push(`closed over thing ${seq}`)
  }
  return found
}

/** Everything above. The second is the slow one and looks back over the whole job, so it can be left to the end. */
export function violations(moment: Moment, wholeJob = true): string[] {
  return [
    ...hazardWithoutGate(moment),
    ...selfWitness(moment),
    ...peopleAmiss(moment),
    ...radioAmiss(moment),
    ...workUnderStop(moment),
    ...verdictOnNothing(moment),
    ...thingsForgotten(moment),
    ...doubtedInstrumentUsed(moment),
    ...pastAPoint(moment),
    ...testAmiss(moment),
    ...findingPassedBy(moment),
    ...(wholeJob ? readingsThatShouldNotCount(moment) : []),
  ]
}
