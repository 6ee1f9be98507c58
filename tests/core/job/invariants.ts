// What must hold of every job at every moment, read off its ENTRIES and the definitions alone. Nothing here calls the
// engine's own idea of an open gate, of age or of what counts: a fault there would otherwise excuse itself.
// Each check returns sentences; an empty list is good.
import type { Definitions, PlacedStep } from '../../../src/core/job/definitions.ts'
import type { Body, Entry } from '../../../src/core/job/entries.ts'
import type { GateStep } from '../../../src/core/job/gate.ts'
import { next, type Prompt } from '../../../src/core/job/next.ts'
import type { State } from '../../../src/core/job/state.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'

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
function presented(prompt: Prompt): PlacedStep | null {
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
    case 'countersign':
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
  // Whoever came onto the job was not there when the gas was tested: test and witness are from after that, or none.
  const cameOn = last((e) => e.type === 'person.came-on')
  const rests = (item: string) => {
    const kind = gate.step.evidence.find((e) => e.id === item)?.kind
    return kind === 'gas' || kind === 'witness'
  }
  const hasGas = gate.step.evidence.some((e) => e.kind === 'gas')
  if (hasGas && opened < cameOn) return false
  if (!calledOut(entries, gate, last(opens, opened), opened)) return false
  if (entries.some((_e, n) => n > opened && letsIn(defs, entries, gate, n).length > 0)) return false
  const given = new Map<string, GivenEntry>()
  const begun = new Map<string, Begun>()
  const bad = doubtedInstruments(entries)
  for (const [n, e] of entries.slice(0, opened).entries()) {
    if (n <= fell) continue
    if (e.type === 'wait.begun' && e.step === gate.id) begun.set(e.item, e)
    const isOld = hasGas && e.seq < cameOn && e.type === 'evidence.given' && rests(e.item)
    if (e.type === 'evidence.given' && e.step === gate.id && !isOld) given.set(e.item, e)
    if (e.type === 'gate.closed' && e.step === gate.id) {
      for (const item of e.items) given.delete(item)
      for (const item of begun.keys()) if (!given.has(item)) begun.delete(item)
    }
    dropLetIn(gate, given, letsIn(defs, entries, gate, n))
  }
  // What was found out of calibration has proved nothing, whenever that was found.
  if ([...given.values()].some((e) => bad.has(e.instrument ?? ''))) return false
  return isWhole(defs, gate, given, begun, peopleIn(entries), nowMs)
}

type GivenEntry = Extract<Entry, { type: 'evidence.given' }>
type Begun = Extract<Entry, { type: 'wait.begun' }>

/** Everybody on the job after these entries. */
function peopleIn(entries: readonly Entry[]): readonly string[] {
  const on = new Set<string>()
  for (const e of entries) {
    if (e.type === 'person.signed-on' || e.type === 'person.came-on') on.add(e.person)
    if (e.type === 'person.signed-off') on.delete(e.person)
    if (e.type === 'job.handed-over') on.add(e.to).delete(e.from)
    if (e.type === 'job.left' || e.type === 'job.taken-up') on.clear()
  }
  return [...on]
}

/**
 * Hazards of the gate that the work just put on record lets in again. A reading counts as one that does so where its step
 * has one place, read once: that is how the procedures of these tests use it.
 */
function letsIn(defs: Definitions, entries: readonly Entry[], gate: GateStep, n: number): readonly string[] {
  const e = entries[n]
  if (e === undefined) return []
  const DONE: readonly Body['type'][] = [
    ...(['step.done', 'step.confirmed', 'finding.observed'] as const),
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
  const step = defs.steps.find((s) => s.id === id)?.step
  const opens = step !== undefined && 'lets_in' in step ? (step.lets_in ?? []) : []
  return opens.filter((hazard) => gate.step.holds.includes(hazard))
}

/** What proved a hazard that was let in proves nothing any more. */
function dropLetIn(gate: GateStep, given: Map<string, GivenEntry>, hazards: readonly string[]): void {
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
        return areOthers(points.map((p) => given.get(`${wanted.id}.${p}`)?.shown))
      case 'numbers': {
        if (wanted.per === 'once') return /\d/.test(e?.shown ?? '')
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

// --- Who is on the job: read off the entries, and each change signed for by somebody who may. ------------------------

export function peopleAmiss({ defs, entries, state }: Moment): string[] {
  const found: string[] = []
  const on = new Set<string>()
  let doer: string | null = null
  const record = entries[0]?.type === 'job.opened' ? entries[0].record : 'REAL'
  const comes = (person: string, n: number) => {
    const role = defs.crew.crew.find((p) => p.id === person)?.role
    if (role === undefined || (role === 'trainee' && record !== 'PRACTICE'))
      found.push(`${person} came on, entry ${n}`)
    on.add(person)
  }
  for (const e of entries) {
    if (e.type === 'person.signed-on') comes(e.person, e.seq)
    if (e.type === 'person.signed-on') doer = e.person
    if (e.type === 'person.came-on') {
      if (doer === null || on.has(e.person)) found.push(`${e.person} came on out of turn, entry ${e.seq}`)
      comes(e.person, e.seq)
    }
    if (e.type === 'person.signed-off') {
      if (e.person === doer || !on.delete(e.person)) found.push(`${e.person} signed off, entry ${e.seq}`)
    }
    if (e.type === 'job.handed-over') {
      if (e.from !== doer || e.to === e.from || e.summary.length === 0)
        found.push(`handed over from ${e.from} to ${e.to}, entry ${e.seq}`)
      comes(e.to, e.seq)
      on.delete(e.from)
      doer = e.to
    }
    if (e.type === 'job.left' || e.type === 'job.taken-up') on.clear()
    if (e.type === 'job.taken-up') doer = null
    found.push(...unsigned(defs, e))
  }
  const same = [...state.people].sort().join() === [...on].sort().join() && state.doer === doer
  return same ? found : [...found, `on the job: ${state.people.join()}, by its entries ${[...on].join()}`]
}

/** A signature of somebody who has a key, given by initials alone. */
function unsigned(defs: Definitions, e: Entry): string[] {
  const signatures =
    e.type === 'job.handed-over'
      ? [
          { person: e.from, signed: e.signedFrom },
          { person: e.to, signed: e.signedTo },
        ]
      : 'signed' in e && 'person' in e
        ? [{ person: e.person, signed: e.signed }]
        : []
  return signatures.flatMap(({ person, signed }) => {
    const hasKey = defs.crew.crew.find((p) => p.id === person)?.pin !== undefined
    return hasKey && signed !== 'pin' ? [`${person} signed without a PIN, entry ${e.seq}`] : []
  })
}

// --- A word by radio: keyed by somebody on the job who did none of it, of a lead who did none either; closes nothing. --

export function radioAmiss({ defs, entries }: Moment): string[] {
  const found: string[] = []
  const open = new Map<string, string>()
  const readersOf = (n: number) =>
    new Set(entries.slice(0, n).flatMap((e) => (e.type.startsWith('reading.') ? [e.by] : [])))
  for (const [n, e] of entries.entries()) {
    if (e.type === 'disposition.set') {
      open.delete(e.step)
      if (e.radio === undefined) continue
      const { by } = e.radio
      const lead = defs.crew.crew.find((p) => p.id === e.person)?.role === 'lead'
      const doneBy = [...readersOf(n), e.by]
      const isOn = peopleIn(entries.slice(0, n)).includes(by)
      if (!lead || !isOn || by === e.person || doneBy.includes(by) || e.choice === 'concession')
        found.push(`by radio from ${e.person}, keyed by ${by}, entry ${e.seq}`)
      open.set(e.step, e.person)
    }
    if (e.type === 'disposition.countersigned') {
      if (open.get(e.step) !== e.person) found.push(`countersigned by ${e.person}, entry ${e.seq}`)
      open.delete(e.step)
    }
    if ('voids' in e) for (const step of e.voids) open.delete(step)
    // Under a STOP that stands the job ends with it open, and says so among what is open.
    if (e.type === 'job.closed' && e.outcome !== 'STOP' && open.size > 0)
      found.push(`closed with the word of ${[...open.values()].join()} open`)
  }
  return found
}

// --- 4. Under STOP nothing goes on record but a note, things placed or accounted for, what is said of it, its end, leaving, and the clock. -----

const UNDER_STOP: readonly Body['type'][] = [
  'thing.placed',
  'thing.seen',
  'thing.accounted',
  'note.written',
  'stop.raised',
  'stop.explained',
  'stop.released',
  'stop.stands',
  'job.closed',
  'job.left',
  'job.taken-up',
  'clock.moved',
  'instrument.doubted',
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
  const signedOn = earlier.some((e) => e.type === 'person.signed-on' && e.person === person)
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

// --- 5. No verdict but HOLD stands on anything missing, not applicable, corrected, left behind or out of calibration. ---

export function verdictOnNothing({ defs, entries, state }: Moment): string[] {
  const counts = countedNow(entries)
  const missing = notApplicableNow(entries)
  return defs.steps.flatMap((placed) => {
    if (placed.step.kind !== 'judge') return []
    const given = entries.findLast((e) => e.type === 'verdict.given' && e.step === placed.id)
    const stood = given !== undefined && !entries.slice(given.seq + 1).some((e) => voids(e, placed.id))
    const live = state.verdicts[placed.id]
    if (stood !== (live !== undefined && !live.void)) return [`${placed.id} stands in one count only`]
    if (!stood || given.type !== 'verdict.given' || given.verdict.result.verdict === 'HOLD') return []
    const { verdict } = given
    const fallen = verdict.readings.filter((seq) => !counts.has(seq))
    const { diameters, set_before, set_after, part_temperature, instrument_temperature } = placed.step.inputs
    const needed = [diameters, set_before, set_after, ...part_temperature, ...instrument_temperature]
    return [
      ...fallen.map(
        (seq) => `${verdict.result.verdict} of ${placed.id} stands on reading ${seq}, which does not`,
      ),
      ...needed.flatMap((short) => {
        const read = defs.steps.find((s) => s.id === placed.scope + short)
        if (read?.step.kind !== 'read') return [`${short} is no reading`]
        const wanted = read.step.stations.length * (read.step.axes?.length ?? 1)
        const places = new Set(
          [...counts.values()].filter((r) => r.step === read.id && !missing.has(r.place)).map((r) => r.place),
        )
        return places.size === wanted
          ? []
          : [`${verdict.result.verdict} with ${places.size} of ${wanted} places of ${read.id}`]
      }),
    ]
  })
}

function voids(e: Entry, step: string): boolean {
  return 'voids' in e && e.voids.includes(step)
}

function doubtedInstruments(entries: readonly Entry[]): Set<string> {
  return new Set(entries.flatMap((e) => (e.type === 'instrument.doubted' ? [e.instrument] : [])))
}

interface Counted {
  readonly step: string
  readonly place: string
  readonly instrument: string
}

/** Readings that count, by seq, told from the entries alone. */
function countedNow(entries: readonly Entry[]): Map<number, Counted> {
  const counted = new Map<number, Counted>()
  let doubt: (Counted & { seq: number }) | null = null
  let late: (Counted & { seq: number }) | null = null
  const drop = (which: (r: Counted) => boolean) => {
    for (const [seq, r] of counted) if (which(r)) counted.delete(seq)
    if (doubt !== null && which(doubt)) doubt = null
    if (late !== null && which(late)) late = null
  }
  for (const e of entries) {
    if (e.type === 'reading.taken' || e.type === 'reading.corrected') counted.set(e.seq, e)
    if (e.type === 'reading.corrected') counted.delete(e.of)
    if (e.type === 'reading.doubted') doubt = e
    if (e.type === 'reading.late') late = e
    if (e.type === 'doubt.settled') {
      if (e.choice === 'kept' && doubt !== null) counted.set(doubt.seq, doubt)
      doubt = null
    }
    if (e.type === 'reading.not-applicable') doubt = null
    if (e.type === 'late.settled') {
      if (e.kept && late !== null) counted.set(late.seq, late)
      late = null
    }
    if (e.type === 'instrument.doubted') drop((r) => r.instrument === e.instrument)
    if (e.type === 'branch.left') drop((r) => e.voids.includes(r.step))
  }
  return counted
}

function notApplicableNow(entries: readonly Entry[]): Set<string> {
  const places = new Map<string, string>()
  for (const e of entries) {
    if (e.type === 'reading.not-applicable') places.set(e.place, e.step)
    if (e.type === 'not-applicable.taken-back') places.delete(e.place)
    if (e.type === 'branch.left')
      for (const [place, step] of places) if (e.voids.includes(step)) places.delete(place)
  }
  return new Set(places.keys())
}

// --- 6. An instrument found out of calibration is not used again, and the state counts what its entries count. --------

export function doubtedInstrumentUsed({ entries, state }: Moment): string[] {
  const found: string[] = []
  const bad = new Set<string>()
  for (const e of entries) {
    if (e.type !== 'instrument.doubted' && 'instrument' in e && bad.has(e.instrument ?? ''))
      found.push(`${e.instrument} is used after it was doubted, entry ${e.seq}`)
    if (e.type === 'instrument.doubted') bad.add(e.instrument)
  }
  const counts = countedNow(entries)
  const live = Object.values(state.readings)
    .flat()
    .filter((r) => r.correctedBy === null && r.voidBy === null)
  if (live.length !== counts.size || !live.every((r) => counts.has(r.seq)))
    found.push(`${live.length} readings count, and ${counts.size} should`)
  return found
}

// --- 7. Nothing goes on past an inspection point, and nobody signs for their own work. --------------------------------

/** Entries that change what a point of their step was signed for. */
const CHANGES: readonly Body['type'][] = [
  ...(['step.done', 'step.confirmed', 'step.reopened', 'finding.observed', 'finding.corrected'] as const),
  ...(['reading.taken', 'reading.corrected', 'doubt.settled', 'not-applicable.taken-back'] as const),
  ...(['verdict.given', 'disposition.set'] as const),
]

export function pastAPoint({ defs, entries, state }: Moment): string[] {
  const prompt = next(defs, state)
  const at = 'step' in prompt && prompt.kind !== 'held' ? prompt.step.number : Number.NEGATIVE_INFINITY
  // A job that ends under a STOP which is never released goes past nothing: it ends there.
  const stands = entries.some((e) => e.type === 'stop.stands')
  const goesOn =
    prompt.kind === 'finish' || prompt.kind === 'open-things' || (prompt.kind === 'closed' && !stands)
  const closedLate = entries.findIndex((e) => e.type === 'job.closed')
  const upTo = closedLate < 0 ? entries : entries.slice(0, closedLate)
  return defs.steps.flatMap((placed) => {
    const { step } = placed
    if (step.kind === 'gate' || step.kind === 'part' || step.point === undefined) return []
    const of = (e: Entry) => 'step' in e && e.step === placed.id
    const changed = upTo.findLastIndex((e) => (of(e) && CHANGES.includes(e.type)) || voids(e, placed.id))
    if (changed < 0) return []
    const passed = goesOn || (step.point.kind !== 'review' && at > placed.number)
    // Nothing was done in it, or its branch was left: there is nothing to inspect.
    if (!passed || voids(upTo[changed] as Entry, placed.id)) return passes(defs, entries, placed)
    const given = upTo.findLastIndex(
      (e) => of(e) && (e.type === 'point.signed' || e.type === 'point.not-attended'),
    )
    return given > changed
      ? passes(defs, entries, placed)
      : [`${placed.id} is passed, and its point is not signed`]
  })
}

function passes(defs: Definitions, entries: readonly Entry[], placed: PlacedStep): string[] {
  const { step } = placed
  const point = step.kind === 'gate' || step.kind === 'part' ? undefined : step.point
  return entries.flatMap((e, n) => {
    if (e.type === 'point.signed' && e.step === placed.id) {
      const role = defs.crew.crew.find((p) => p.id === e.person)?.role
      const did = entries
        .slice(0, n)
        .some((d) => 'step' in d && d.step === e.step && CHANGES.includes(d.type) && d.by === e.person)
      return role === undefined ||
        role === 'trainee' ||
        !point?.roles.some((r) => r === role) ||
        did ||
        e.by === e.person
        ? [`${e.person} signed the point of ${e.step}, entry ${n}`]
        : []
    }
    if (e.type !== 'point.not-attended' || e.step !== placed.id) return []
    const notice = entries[e.notice]
    const moved = entries.slice(e.notice, n).some((d) => d.type === 'clock.moved')
    const ran = (readStamp(e.at)?.ms ?? Number.NaN) - (readStamp(notice?.at ?? '')?.ms ?? Number.NaN)
    return notice?.type === 'point.notice-given' &&
      !moved &&
      point?.kind === 'witness' &&
      ran >= point.notice.si * 1000
      ? []
      : [`${e.step} went on unattended, entry ${n}`]
  })
}

// --- 6. What was placed is accounted for by two different people, and no job ends over it without a word. ------------

export function thingsForgotten({ defs, entries }: Moment): string[] {
  const open = new Map<number, { seen: string | null; place: string | null; isHandedOn: boolean }>()
  const roleOf = (id: string) => defs.crew.crew.find((p) => p.id === id)?.role
  const found: string[] = []
  for (const e of entries) {
    if (e.type === 'thing.placed') open.set(e.seq, { seen: null, place: e.place ?? null, isHandedOn: false })
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
    ...(wholeJob ? readingsThatShouldNotCount(moment) : []),
  ]
}
