// Moves of the search that nobody makes: what a state in normal form leaves open. That an answer had been given before the
// job went back, that a seat is empty, that figures make a rule true. Each leads to a state that a real job may be in.
import type { Engine } from '../job/admit.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import type { Body, Entry } from '../job/entries.ts'
import { fold } from '../job/fold.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { judgeStep } from '../job/judge-step.ts'
import { fallsWith } from '../job/lapse.ts'
import { seatInUse } from '../job/mispick.ts'
import { current, isComplete, next } from '../job/next.ts'
import { peopleOnJob } from '../job/people-on.ts'
import { openPlace } from '../job/places.ts'
import { pendingPoint } from '../job/point.ts'
import { stampEntry } from '../job/stamp.ts'
import { type DispositionState, type State, standing } from '../job/state.ts'
import { openStops } from '../job/stop-causes.ts'
import { withWord } from '../job/verdict-record.ts'
import { voidMeasuredWith } from '../job/voiding.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import { NOTHING_SEEN } from './account.ts'
import { mayBeLeftOut } from './free.ts'
import { made, placedThing } from './made.ts'
import { isAtGate, isAtRead, isAtWork, isCounted, isPaused, normal, upToCurrent } from './normal.ts'
import { outlineOf } from './outline.ts'
import { wordClasses } from './words.ts'

export interface Had {
  readonly says: string
  readonly state: State
  /** Entries that led there, for the account. */
  readonly entries?: readonly Entry[]
  /** Who raised the STOP, where that is what was left open. */
  readonly stopBy?: string | null
}

/** States in which the current step had been answered before; none while nobody works. */
export function hadBefore(engine: Engine, state: State): Had[] {
  const { defs } = engine
  if (isPaused(state)) return raisedByOthers(defs, state)
  const isForgotten = isAtGate(defs, state) || isAtRead(defs, state) || isAtWork(defs, state)
  return isForgotten ? allTheWay(engine, state) : oneStep(engine, state)
}

function oneStep(engine: Engine, state: State): Had[] {
  const { defs } = engine
  const at = current(defs, state)
  if (at === null && state.things.length === 0)
    return [
      {
        says: '(something that was placed is not accounted for)',
        state: { ...state, things: [placedThing(state)] },
      },
    ]
  if (at === null || at.state === 'hold') return []
  // While a reading waits to be settled the job stays where it is.
  if (state.late !== null || state.doubt !== null) return []
  if (at.state === 'point' || at.state === 'review') {
    return [
      {
        says: `(${at.placed.id}: signed before)`,
        state: { ...state, points: { ...state.points, [at.placed.id]: SIGNED } },
      },
    ]
  }
  return [
    ...answered(engine, state, at.placed).map((had) => ({
      says: `(${at.placed.id}: as before)`,
      state: had,
    })),
    ...leftPending(defs, state, at.placed),
  ]
}

/** What has been done in a job, without its gates and people. */
type Work = Pick<
  State,
  | 'seats'
  | 'done'
  | 'readings'
  | 'notApplicable'
  | 'verdicts'
  | 'dispositions'
  | 'doubt'
  | 'late'
  | 'points'
  | 'things'
>

/**
 * The last step behind that had been left out is to be done after all. Several of them are so one after the other, as what
 * comes behind the one that is done now is forgotten.
 */
export function afterAll(defs: Definitions, state: State): Had[] {
  if (isPaused(state) || state.closed !== null) return []
  const at = current(defs, state)
  const until =
    at === null || at.state === 'review'
      ? defs.steps.length
      : defs.steps.indexOf(at.placed) + (at.state === 'point' ? 1 : 0)
  const last = defs.steps.slice(0, until).findLast(mayBeLeftOut)
  if (last === undefined) return []
  const without = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).filter(([id]) => id !== last.id))
  const readings = Object.entries(state.readings).filter(([, list]) => list[0]?.step !== last.id)
  return [
    {
      says: `(${last.id}: to be done after all)`,
      state: {
        ...state,
        done: without(state.done),
        verdicts: without(state.verdicts),
        dispositions: without(state.dispositions),
        points: without(state.points),
        readings: Object.fromEntries(readings),
      },
    },
  ]
}

/** The state with the step answered in some way, and signed where it is a point of inspection. */
export function asAnswered(defs: Definitions, state: State, placed: PlacedStep): State {
  let after = state
  while (!isComplete(after, placed)) {
    const options = answered({ defs, version: 'proof' }, after, placed)
    // Of a reading, the one with as many repeats as the place needs.
    const next = placed.step.kind === 'read' ? options[2] : options[0]
    if (next === undefined) throw new Error(`${placed.id} cannot be answered`)
    after = next
  }
  if (pendingPoint(after, placed) === null) return after
  return { ...after, points: { ...after.points, [placed.id]: SIGNED } }
}

const SIGNED = { seq: 0, how: 'signed', person: null, void: false } as const

/** Work that the answers forgotten could have come to, by the prompt that they were forgotten at. */
const worked = new WeakMap<Definitions, Map<string, readonly (Work & { readonly says: string })[]>>()

/** Every state that the answers forgotten while a gate is looked at could have led to: one for each that is told apart. */
function allTheWay(engine: Engine, state: State): Had[] {
  const { defs } = engine
  const prompt = next(defs, state)
  const gates = Object.values(state.gates).map((g) => `${g.status}${g.mustClear}`)
  const outline = outlineOf(defs, { ...state, gates: {} }, NOTHING_SEEN)
  const key = [prompt.kind, ...gates, outline].join(' ')
  let known = worked.get(defs)
  if (known === undefined) {
    known = new Map()
    worked.set(defs, known)
  }
  let all = known.get(key)
  if (all === undefined) {
    all = walkAhead(engine, state)
    known.set(key, all)
  }
  return all.map(({ says, ...work }) => ({ says, state: { ...state, ...work } }))
}

function walkAhead(engine: Engine, state: State): (Work & { readonly says: string })[] {
  const { defs } = engine
  const passed = new Set<string>()
  const found = new Map<string, Work & { readonly says: string }>()
  let last: State[] = [state]
  while (last.length > 0) {
    const ahead: State[] = []
    for (const from of last) {
      for (const had of oneStep(engine, from)) {
        const to = upToCurrent(defs, had.state)
        const line = outlineOf(defs, to, NOTHING_SEEN)
        if (passed.has(line)) continue
        passed.add(line)
        ahead.push(to)
        const { seats, done, readings, notApplicable, verdicts, dispositions, doubt, late, points, things } =
          to
        const work = {
          seats,
          done,
          readings,
          notApplicable,
          verdicts,
          dispositions,
          doubt,
          late,
          points,
          things,
        }
        found.set(outlineOf(defs, normal(defs, to), NOTHING_SEEN), { ...work, says: had.says })
      }
    }
    last = ahead
  }
  return [...found.values()]
}

/** Somebody else is on the job, and gave the numbers that each person gives. */
export function oneMore(defs: Definitions, state: State, now: number): Had[] {
  if (isPaused(state) || !isCounted(defs) || peopleOnJob(state).length > 1) return []
  const person = defs.crew.crew.find((p) => p.role === 'mechanic' && p.id !== state.doer)?.id
  if (person === undefined) return []
  const given = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((evidence): Body[] =>
      evidence.kind === 'numbers' && evidence.per === 'person'
        ? [{ type: 'evidence.given', step: gate.id, item: `${evidence.id}.${person}`, shown: 'X-77' }]
        : [],
    ),
  )
  const entries: Entry[] = []
  let after = state
  for (const body of [{ type: 'person.came-on', person } as const, ...given]) {
    const entry = stampEntry(after, body, { ms: now, offsetMin: 0 })
    entries.push(entry)
    after = fold(after, entry)
  }
  return [{ says: `(${person} has been on the job)`, state: after, entries }]
}

/** Somebody was at the keys all through a STOP that was released. */
function atTheKeys(defs: Definitions, state: State): Had[] {
  if (state.left) return []
  // The job may end with the plate, as it may with a sign-on.
  if (state.doer !== null)
    return state.plateAgain ? [{ says: '(the plate was read)', state: { ...state, plateAgain: false } }] : []
  const person = state.people.at(-1) ?? defs.crew.crew[0]?.id ?? null
  return [{ says: '(somebody is at the keys)', state: { ...state, doer: person } }]
}

/** A STOP that was raised by a lead, or by nobody who had signed on, instead. */
function raisedByOthers(defs: Definitions, state: State): Had[] {
  const [stop, ...others] = openStops(state)
  if (stop === undefined) return atTheKeys(defs, state)
  const another = { ...stop, seq: -2, cause: null, why: null, calledBy: [], callerUnknown: false }
  const more: Had[] =
    others.length > 0 || stop.cause === null
      ? []
      : [{ says: '(another STOP is not explained)', state: { ...state, stops: [stop, another] } }]
  const one = (role: string) => defs.crew.crew.find((p) => p.role === role)?.id ?? null
  const raised = [one('lead'), one('mechanic'), null].map((by) => ({
    says: `(raised by ${by ?? 'nobody who had signed on'})`,
    state: { ...state, stops: [{ ...stop, by }, ...others] },
    stopBy: by,
  }))
  return [...more, ...raised]
}

/** A reading of the current step that was waiting to be settled when work was broken off. */
function leftPending(defs: Definitions, state: State, placed: PlacedStep): Had[] {
  if (placed.step.kind !== 'read') return []
  const read = asKind(placed, 'read')
  const place = openPlace(read, state)
  if (place === null) return []
  const one = made(defs, state, placed, place, 9)
  const off = { ...one, si: one.si + 3 * read.step.repeats.within.si }
  return [
    { says: '(a doubt waits)', state: { ...state, doubt: { ...off, why: '' } } },
    { says: '(a late reading waits)', state: { ...state, late: off } },
  ]
}

function decided(placed: PlacedStep, choice: string): DispositionState {
  const about = placed.scope + asKind(placed, 'decide').step.about
  return {
    seq: 0,
    about,
    choice,
    why: '',
    person: '',
    void: false,
    radio: null,
    countersigned: false,
    authority: null,
    valid: null,
  }
}

export function answered(engine: Engine, state: State, placed: PlacedStep): State[] {
  const { defs } = engine
  const { id, step } = placed
  switch (step.kind) {
    case 'tell':
    case 'confirm':
    case 'observe':
      return wordClasses(defs, placed).examples.map((word) => ({
        ...state,
        done: { ...state.done, [id]: word },
      }))
    case 'judge':
      return wordClasses(defs, placed).examples.map((word) => ({
        ...state,
        verdicts: {
          ...state.verdicts,
          [id]: {
            seq: 0,
            verdict: judgedAs(word as VerdictWord)(defs, state, asKind(placed, 'judge'), ''),
            on: [],
            void: false,
          },
        },
      }))
    case 'decide':
      return wordClasses(defs, placed).examples.map((choice) => ({
        ...state,
        dispositions: { ...state.dispositions, [id]: decided(placed, choice) },
      }))
    case 'read':
      return readBefore(defs, state, placed)
    case 'gate':
    case 'part':
      // Whether a gate stands is never left open.
      return []
  }
}

/** One reading more, two that do not agree, and, where a place stands for several, the next of them. */
function readBefore(defs: Definitions, state: State, placed: PlacedStep): State[] {
  const read = asKind(placed, 'read')
  const place = openPlace(read, state)
  if (place === null) return []
  const list = standing(state, place.key)
  const like = (n: number) => made(defs, state, placed, place, n)
  const off = { ...like(1), si: like(1).si + 3 * read.step.repeats.within.si }
  const { at_least } = read.step.repeats
  const options = [
    [],
    Array.from({ length: Math.min(list.length + 1, at_least) }, (_, n) => like(n)),
    Array.from({ length: at_least }, (_, n) => like(n)),
    ...(read.step.repeats.at_most > 2 ? [[like(0), off]] : []),
  ]
  return options.map((readings) => ({ ...state, readings: { ...state.readings, [place.key]: readings } }))
}

/** The seat that the prompt makes use of, emptied: an instrument is found unfit and put back. */
export function putBack(defs: Definitions, state: State): Had[] {
  const seat = seatInUse(next(defs, state))
  if (seat === null || state.seats[seat] === undefined) return []
  const { [seat]: _gone, ...seats } = state.seats
  return [{ says: `(the ${seat} is put back)`, state: { ...state, seats } }]
}

/** An instrument is found unfit, at this gate or at another: what it measured falls, by the engine's own rule. */
export function foundUnfit(defs: Definitions, state: State, now: number): Had[] {
  if (isPaused(state)) return []
  const given = gatesOf(defs).flatMap((gate) => Object.values(gateState(state, gate.id).given))
  const used = new Set(given.flatMap((e) => e.instrument ?? []))
  return [...used].map((id) => {
    const entries: Entry[] = []
    let after = state
    for (const body of voidMeasuredWith(defs, state, id, 'so')) {
      const entry = stampEntry(after, body, { ms: now, offsetMin: 0 })
      entries.push(entry)
      after = fold(after, entry)
    }
    return { says: `(${id} is found unfit)`, state: after, entries }
  })
}

/**
 * A line of the gate that is left out, being like one that is kept, fell by its age or was found wrong: the rest stands,
 * but for the witness.
 */
export function likeFell(defs: Definitions, state: State, now: number): Had[] {
  if (isPaused(state)) return []
  return gatesOf(defs).flatMap((gate) => {
    if (!gate.step.evidence.some((e) => e.kind === 'measured' || e.kind === 'words')) return []
    return (['lapsed', 'failed'] as const).map((cause) => {
      const items = fallsWith(defs, state, gate, [])
      const body = { type: 'gate.closed', step: gate.id, cause, items } as const
      const entry = stampEntry(state, body, { ms: now, offsetMin: 0 })
      return { says: `(another line of ${gate.id} fell)`, state: fold(state, entry), entries: [entry] }
    })
  })
}

/** The judge of the engine with its word replaced: sizes are not searched, so any verdict may fall. */
export function judgedAs(
  word: VerdictWord,
  judge: NonNullable<Engine['judge']> = judgeStep,
): NonNullable<Engine['judge']> {
  return (defs, state, placed, version) => withWord(judge(defs, state, placed, version), word)
}
