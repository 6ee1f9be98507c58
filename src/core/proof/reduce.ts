// A job made small enough to be searched to the end, and the way from any state of the whole job to one of the small.
// What is left out, no rule of the engine looks at by name or number: a third lock is asked like the second, a fourth place
// is measured like the second. That each step of the whole job is a step of the small one is tested on random jobs.
import type { Crew } from '../definition/crew.ts'
import type { Evidence } from '../definition/evidence.ts'
import type { Instrument } from '../definition/instruments.ts'
import type { Step, StepOf } from '../definition/procedure.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { type GateStep, gatesOf, type Item, itemsFor } from '../job/gate.ts'
import { applicability } from '../job/next.ts'
import { peopleOnJob } from '../job/people-on.ts'
import { type Place, placeResult, placesOf } from '../job/places.ts'
import type { GateState, Pending, Reading, State } from '../job/state.ts'
import type { Watch } from './account.ts'
import { asAnswered } from './before.ts'
import { withoutFinding } from './findings.ts'
import { freed, mayBeLeftOut } from './free.ts'
import { made } from './made.ts'
import { keptPeople } from './normal.ts'
import { NO_SLICE, quietDone, quietened, quietFor, type Slice } from './quiet.ts'

/** Lock points kept: two, so that one lock can be tried at both. */
const MOST_POINTS = 2
/** Words kept of each run of them: the first and the last. */
const MOST_WORDS = 2
/** Places kept of each read step: the first and the last. */
const MOST_PLACES = 2
/** Readings of a place: one, two that agree or not, and one that settles it or not. */
const MOST_REPEATS = 3
/** People of each role: three on the job, somebody who gave something before, and always one more. */
const MOST_PEOPLE = 5

const FOREVER = '9999-12-31'
const A_KEY = `$scrypt$ln=14,r=8,p=1$${'A'.repeat(22)}$${'A'.repeat(43)}`

/** Steps of which the work itself is looked at together; it must not be less than a step and what that is about. */
const WORK_AT_ONCE = 30

/**
 * One small job for each gate, and some without any, where the work itself is looked at, so many steps at a time. A step is
 * only ever presented when all gates that hold any of its hazards are open, and no gate looks at another: so what the whole
 * job does at one gate, it does with that gate alone in the procedure, where more can happen, as nothing waits for the others.
 */
export function slices(whole: Definitions): Definitions[] {
  const gates = whole.steps.filter((s) => s.step.kind === 'gate')
  const work = whole.steps.filter((s) => s.step.kind !== 'gate').map((s) => s.id)
  const parts = Array.from({ length: Math.max(1, Math.ceil(work.length / WORK_AT_ONCE)) }, (_, n) =>
    work.slice(n * WORK_AT_ONCE, (n + 1) * WORK_AT_ONCE),
  )
  return [
    ...gates.map((gate) => reduced(whole, { gate: gate.id, work: [] })),
    ...parts.map((ids) => reduced(whole, { gate: null, work: ids })),
  ]
}

/** Which slice of which job a small one is. */
const SLICES = new WeakMap<Definitions, Slice>()

/** The definitions to search, with one of the gates or none; hazards and seats are all there, and every step it sees. */
function reduced(whole: Definitions, slice: Slice): Definitions {
  const small = smallJob(whole, slice)
  SLICES.set(small, slice)
  return small
}

function smallJob(whole: Definitions, slice: Slice): Definitions {
  const { machine } = whole
  const { gate: gateId } = slice
  const held = new Set(whole.steps.flatMap((s) => (s.step.kind === 'gate' ? s.step.holds : [])))
  const gate = whole.steps.find((s) => s.id === gateId)
  const own = new Set(gate?.step.kind === 'gate' ? gate.step.holds : [])
  // What no gate holds stays: the engine has to hold such a step itself.
  const looksAt = (hazard: string) => own.has(hazard) || !held.has(hazard)
  const quiet = quietFor(whole, slice)
  return {
    ...whole,
    loose: true,
    steps: whole.steps
      .filter((placed) => placed.step.kind !== 'gate' || placed.id === gateId)
      .flatMap((placed) => quietened(whole, quiet, placed) ?? [])
      .map((placed) => freed({ ...placed, step: smallStep(placed.step, looksAt, gateId !== null) })),
    machine: {
      ...machine,
      decimal_comma: false,
      site: { ...machine.site, isolation_points: ends(machine.site.isolation_points, MOST_POINTS) },
    },
    instruments: { instruments: keptInstruments(whole) },
    crew: { crew: anybody(whole.crew) },
  }
}

/** The first and the last few of a list, `most` in all. */
function ends<T>(list: readonly T[], most: number): T[] {
  return list.length <= most ? [...list] : [...list.slice(0, most - 1), ...list.slice(-1)]
}

/** The people of the file are interchangeable within a role, so others stand for them: as many as could matter. */
function anybody({ crew }: Crew): Crew['crew'] {
  const roles = [
    ['mechanic', 'M'],
    ['lead', 'L'],
    ['trainee', 'T'],
  ] as const
  return roles.flatMap(([role, letter]) => {
    const many = Math.max(MOST_PEOPLE, crew.filter((p) => p.role === role).length)
    return Array.from({ length: many }, (_, n) => {
      const id = `${letter}${n + 1}`
      return { id, name: id, role, pin: A_KEY }
    })
  })
}

/** One instrument of each sort, calibrated for ever: that it is found unfit is a move of the search at any moment. */
function keptInstruments(defs: Definitions): Instrument[] {
  const kept = new Map<string, Instrument>()
  for (const one of defs.instruments.instruments) {
    const sort = one.kind === 'gas_meter' && one.reads_in_inert !== undefined ? 'inert' : one.kind
    const known = kept.get(sort)
    if (known === undefined || suits(defs, one) > suits(defs, known)) kept.set(sort, one)
  }
  return [...kept.values()].map((one) => ({
    ...one,
    calibration: { ...one.calibration, due: FOREVER },
  }))
}

/** The one that can do the most: more can happen with it than with any other. */
function suits(defs: Definitions, one: Instrument): number {
  switch (one.kind) {
    case 'inside_micrometer':
    case 'bore_gauge': {
      const { si } = defs.machine.bore.nominal
      const isOnScale = one.range.from.si <= si && si <= one.range.to.si
      return (isOnScale ? 2 : 0) + (one.uncertainty === undefined ? 0 : 1) - one.resolution.si
    }
    case 'gas_meter': {
      const basis = defs.machine.site.gas.lel_basis
      const same = one.lel_basis.gas === basis.gas && one.lel_basis.lower_limit.si === basis.lower_limit.si
      return (same ? 2 : 0) - one.needs_oxygen.at_least.si
    }
    default:
      return (one.uncertainty === undefined ? -1e9 : 0) - one.resolution.si
  }
}

function smallStep(step: Step, looksAt: (hazard: string) => boolean, atGate: boolean): Step {
  const exposes = step.exposes?.filter(looksAt).sort()
  const one = exposes === undefined ? step : { ...step, exposes }
  if (one.kind === 'gate') return { ...one, evidence: fewer(one.evidence) }
  return one.kind === 'read' ? smallRead(one, atGate) : withoutFinding(one)
}

/** Of each run of words that prove the same the first and the last, of measured values that do so the last. */
function fewer(evidence: readonly Evidence[]): Evidence[] {
  const runs: Evidence[][] = []
  for (const one of evidence) {
    const run = runs[runs.length - 1]
    if (isLike(one, run?.[0])) run?.push(one)
    else runs.push([one])
  }
  return runs.flatMap((run) => (run[0]?.kind === 'measured' ? run.slice(-1) : ends(run, MOST_WORDS)))
}

/** Evidence that proves the same, is asked in the same way and goes stale alike. */
function isLike(one: Evidence, other: Evidence | undefined): boolean {
  if (one.kind === 'words' && other?.kind === 'words')
    return one.life?.si === other.life?.si && one.against?.join() === other.against?.join()
  if (one.kind !== 'measured' || other?.kind !== 'measured') return false
  return (
    one.life.si === other.life.si &&
    one.with === other.with &&
    one.quantity === other.quantity &&
    one.against?.join() === other.against?.join()
  )
}

/** Where a gate is looked at, each place is read as often as any: that a reading settled it sooner is left open there. */
function smallRead(step: StepOf<'read'>, atGate: boolean): StepOf<'read'> {
  const { stations, axes, repeats } = step
  const least = atGate ? 2 : Math.min(repeats.at_least, 2)
  const most = atGate ? MOST_REPEATS : Math.min(repeats.at_most, MOST_REPEATS)
  const small = { ...repeats, at_least: least, at_most: most }
  // The very last place is always kept, so that the step is complete when, and only when, the whole one is.
  const last = stations.slice(-1)
  if (axes === undefined) return { ...step, repeats: small, stations: ends(stations, MOST_PLACES) }
  return axes.length > 1
    ? { ...step, repeats: small, stations: last, axes: ends(axes, MOST_PLACES) }
    : { ...step, repeats: small, stations: ends(stations, MOST_PLACES) }
}

/** The state of the small job that a state of the whole job comes to. */
export function projected(whole: Definitions, small: Definitions, state: State): State {
  const people = renamer(whole, small)
  const named = (id: string | null) => (id === null ? null : people(id))
  const quiet = quietFor(whole, SLICES.get(small) ?? NO_SLICE)
  const moved = <T extends Pending | null>(p: T): T | null =>
    p === null || quiet.ids.has(p.step)
      ? null
      : ({ ...p, place: keptPlace(whole, small, p), by: named(p.by) } as T)
  const like: State = {
    ...state,
    doer: named(state.doer),
    people: state.people.map(people),
    everOn: [],
    gates: Object.fromEntries(
      gatesOf(small).flatMap((gate) => {
        const g = state.gates[gate.id]
        return g === undefined ? [] : [[gate.id, keptGate(whole, small, state, gate, g, named)]]
      }),
    ),
    done: { ...without(state.done, quiet.ids), ...quietDone(whole, quiet, state) },
    readings: projectedReadings(whole, small, state),
    // What a lead decides where a gate asks for it is about the findings that are left out here.
    dispositions: Object.fromEntries(
      Object.entries(state.dispositions).filter(([id]) =>
        whole.steps.some((one) => one.id === id && one.step.kind === 'decide'),
      ),
    ),
    notApplicable: {},
    doubt: moved(state.doubt),
    late: moved(state.late),
    stops: state.stops.map((s) => ({
      ...s,
      by: named(s.by),
      releasedBy: named(s.releasedBy),
      on: s.on.map(people),
      calledBy: s.calledBy.map(people),
    })),
  }
  // What a rule left out is in the small job as if it had been answered before.
  const leftOut = (placed: PlacedStep) => mayBeLeftOut(placed) && !quiet.ids.has(placed.id)
  return small.steps.filter(leftOut).reduce((s, placed) => {
    const own = whole.steps.find((one) => one.id === placed.id)
    return own === undefined || applicability(whole, state, own) !== 'skip' ? s : asAnswered(small, s, placed)
  }, like)
}

function without<T>(record: Readonly<Record<string, T>>, ids: ReadonlySet<string>): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([id]) => !ids.has(id)))
}

function keptGate(
  whole: Definitions,
  small: Definitions,
  state: State,
  gate: GateStep,
  g: GateState,
  named: (id: string | null) => string | null,
): GateState {
  const kept = keptKeys(whole, small, state, gate)
  const only = <T extends { readonly by: string | null }>(record: Readonly<Record<string, T>>) =>
    Object.fromEntries(
      Object.entries(record).flatMap(([key, one]) => {
        const to = kept.get(key)
        return to === undefined ? [] : [[to, { ...one, by: named(one.by) }]]
      }),
    )
  const given = Object.entries(only(g.given)).map(([key, e]) => [key, { ...e, person: named(e.person) }])
  return { ...g, given: Object.fromEntries(given), begun: only(g.begun) }
}

/** The items of the whole gate that are kept, each with the item of the small one that it comes to. */
function keptKeys(
  whole: Definitions,
  small: Definitions,
  state: State,
  gate: GateStep,
): ReadonlyMap<string, string> {
  const people = renamer(whole, small)
  const onJob = peopleOnJob(state)
  const own = whole.steps.find((s): s is GateStep => s.id === gate.id && s.step.kind === 'gate') ?? gate
  const few = new Set(itemsFor(small, gate, keptPeople(onJob, state.doer).map(people)).map((i) => i.key))
  const named = itemsFor(whole, own, onJob).map((item) => [item.key, renamedKey(item, people)] as const)
  return new Map(named.filter(([, to]) => few.has(to)))
}

/** The account of the whole job as the small one would have it. */
export function projectedWatch(whole: Definitions, small: Definitions, state: State, watch: Watch): Watch {
  const gates = gatesOf(small).flatMap((gate) => {
    const account = watch.gates.get(gate.id)
    if (account === undefined) return []
    const kept = keptKeys(whole, small, state, gate)
    const only = <T>(map: ReadonlyMap<string, T>) =>
      new Map([...map].flatMap(([key, one]) => (kept.has(key) ? [[kept.get(key) ?? key, one] as const] : [])))
    return [[gate.id, { ...account, given: only(account.given), begun: only(account.begun) }] as const]
  })
  return { ...watch, gates: new Map(gates) }
}

function renamedKey({ key, evidence, person }: Item, people: (id: string) => string): string {
  return person === null ? key : `${evidence.id}.${people(person)}`
}

/** A kept place stands for itself and for those left out before it: it is done when all of them are. */
function projectedReadings(whole: Definitions, small: Definitions, state: State): State['readings'] {
  const readings: Record<string, readonly Reading[]> = {}
  whole.steps.forEach((placed) => {
    const to = small.steps.find((s) => s.id === placed.id)
    if (placed.step.kind !== 'read' || to?.step.kind !== 'read') return
    const read = asKind(placed, 'read')
    const kept = placesOf(asKind(to, 'read'))
    let group: Place[] = []
    for (const place of placesOf(read)) {
      group.push(place)
      const own = kept.find((k) => k.key === place.key)
      if (own === undefined) continue
      const open = group.find((p) => placeResult(read, p, state).state === 'more')
      const count = open === undefined ? null : placeResult(read, open, state).readings.length
      readings[own.key] = readingsLike(
        small,
        state,
        asKind(to, 'read'),
        own,
        count,
        read.step.repeats.at_least,
      )
      group = []
    }
  })
  return readings
}

/** As many readings at a kept place as say the same: `count` and not settled, or null for done with. */
function readingsLike(
  small: Definitions,
  state: State,
  read: PlacedStep & { readonly step: StepOf<'read'> },
  place: Place,
  count: number | null,
  wanted: number,
): readonly Reading[] {
  const { at_least, within } = read.step.repeats
  if (count === null) return Array.from({ length: at_least }, (_, n) => made(small, state, read, place, n))
  if (count < wanted)
    return Array.from({ length: Math.min(count, at_least - 1) }, (_, n) => made(small, state, read, place, n))
  return [0, 1].map((n) => {
    const one = made(small, state, read, place, n)
    return { ...one, si: one.si + n * 3 * within.si }
  })
}

function renamer(whole: Definitions, small: Definitions): (id: string) => string {
  const names = new Map<string, string>()
  for (const role of ['mechanic', 'lead', 'trainee'] as const) {
    const from = whole.crew.crew.filter((p) => p.role === role)
    const to = small.crew.crew.filter((p) => p.role === role)
    from.forEach((p, n) => {
      names.set(p.id, to[n]?.id ?? p.id)
    })
  }
  return (id) => names.get(id) ?? id
}

/** A place that is left out stands for the next one that is kept: what is measured there comes before that. */
function keptPlace(whole: Definitions, small: Definitions, { step, place }: Pending): string {
  const from = whole.steps.find((s) => s.id === step)
  const to = small.steps.find((s) => s.id === step)
  if (from?.step.kind !== 'read' || to?.step.kind !== 'read') return place
  const all = placesOf(asKind(from, 'read')).map((p) => p.key)
  const kept = placesOf(asKind(to, 'read')).map((p) => p.key)
  return all.slice(Math.max(0, all.indexOf(place))).find((key) => kept.includes(key)) ?? place
}
