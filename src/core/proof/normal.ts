// The normal form of a state: one state that stands for many, from which everything can happen that can from any of them.
// - Answers to steps behind the current one are forgotten. That they had been given already is a move of its own
//   (`hadBefore`), so that a job that goes back and forward again is among what is searched.
// - Of a shut gate only the lines before the first that is missing are kept.
// - Under STOP nobody is at the keys, and of several STOPs there is one that is explained and one that is not.
// - While nobody works, all answers are forgotten. Gates are never forgotten.
// - While a gate is looked at, so are the answers since the first step that is to it like the current one: behind the same
//   hazards, letting in the same, told or measured as this one is.
// - A place that is done with, in whatever way, has readings that agree: from those a correction can do the most.
// - Every seat holds its instrument, but for one that is being asked for. That one is put back is a move of its own.
// - What only the sheet shows (wording, struck evidence, findings, who has been there) is dropped.

import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { gatesOf, itemsOf } from '../job/gate.ts'
import { applicability, type Current, current, next, type Prompt, waitsElsewhere } from '../job/next.ts'
import { openWords } from '../job/open-words.ts'
import { openPlace, type Place, placeResult, placesOf } from '../job/places.ts'
import { holdsUpClosing, type Thing } from '../job/register.ts'
import { EMPTY_GATE, openStop, type Reading, type State, type StopState, standing } from '../job/state.ts'
import { isReleasable, openStops } from '../job/stop-causes.ts'
import { oncePer } from '../lib/once.ts'
import { isPlain, readLike, workLike } from './like.ts'
import { made, placedThing, seatsOf } from './made.ts'
import { decidedOver } from './over.ts'

export function normal(defs: Definitions, full: State): State {
  const state = upToCurrent(defs, withoutDropped(defs, full))
  if (isAtGate(defs, state)) return atFirstOfItsKind(defs, state)
  if (isAtRead(defs, state)) return atFirstRead(defs, state)
  return isAtWork(defs, state) ? atFirstWork(defs, state) : state
}

/** As the engine leaves it: a reading that waits at a step the job does not stand at is dropped (settle.ts). */
function withoutDropped(defs: Definitions, state: State): State {
  return waitsElsewhere(defs, state) === null ? state : { ...state, doubt: null, late: null }
}

/** Something is told, seen or looked at while a gate is looked at. */
export function isAtWork(defs: Definitions, state: State): boolean {
  if (
    gatesOf(defs).length === 0 ||
    state.closed !== null ||
    state.cutShort ||
    isPaused(state) ||
    state.doubt !== null ||
    state.late !== null
  )
    return false
  const at = current(defs, state)
  return (
    at !== null && at.state === 'do' && isPlain(at.placed) && next(defs, state).kind === at.placed.step.kind
  )
}

/** The same at the first such step behind the same hazards, that lets in the same: what came after that is forgotten. */
function atFirstWork(defs: Definitions, state: State): State {
  const at = current(defs, state)?.placed
  if (at === undefined) return state
  const like = workLike(defs, at)
  const first = defs.steps.find((s) => isPlain(s) && workLike(defs, s) === like)
  return first === undefined || first === at ? state : forgotten(defs, state, defs.steps.indexOf(first))
}

/** Something is measured while a gate is looked at. */
export function isAtRead(defs: Definitions, state: State): boolean {
  if (gatesOf(defs).length === 0 || state.closed !== null || isPaused(state)) return false
  const at = current(defs, state)
  // A reading that time cut short is asked for no more, and may still be called out.
  const isCalledOut = next(defs, state).kind === 'clear'
  return at?.placed.step.kind === 'read' && at.state === 'do' && isCalledOut === state.cutShort
}

/** The same at the first step where as much is read behind the same hazards: what came after that is forgotten. */
function atFirstRead(defs: Definitions, state: State): State {
  const at = current(defs, state)?.placed
  if (at?.step.kind !== 'read') return state
  const read = asKind(at, 'read')
  const like = readLike(defs, at)
  const first = defs.steps.find(
    (s) => s.step.kind === 'read' && seatsOf(defs)[s.step.with] !== undefined && readLike(defs, s) === like,
  )
  const place = openPlace(read, state)
  if (first === undefined || first === at || place === null) return state
  const to = asKind(first, 'read')
  const [there] = placesOf(to)
  if (there === undefined) return state
  const back = forgotten(defs, state, defs.steps.indexOf(first))
  const list = standing(state, place.key)
  const isApart = list.length >= read.step.repeats.at_least
  const readings = list.map((_, n) => {
    const one = made(defs, state, first, there, n)
    return n > 0 && isApart ? { ...one, si: one.si + 3 * n * to.step.repeats.within.si } : one
  })
  const one = made(defs, state, first, there, 9)
  const pending = { ...one, si: one.si + 3 * to.step.repeats.within.si }
  const seats = { ...seatsOf(defs) }
  if (next(defs, state).kind === 'pick') delete seats[to.step.with]
  return {
    ...back,
    seats,
    readings: { ...back.readings, [there.key]: readings },
    doubt: state.doubt === null ? null : { ...pending, why: '' },
    late: state.late === null ? null : pending,
  }
}

/** A gate is asked for again, or its people are called out, and no reading was cut short by that. */
export function isAtGate(defs: Definitions, state: State): boolean {
  if (state.closed !== null || state.cutShort) return false
  const prompt = next(defs, state)
  const isAsked =
    prompt.kind === 'evidence' ||
    prompt.kind === 'clear' ||
    (prompt.kind === 'pick' && prompt.step.step.kind === 'gate')
  return isAsked && current(defs, state)?.placed.step.kind !== 'gate'
}

/** The same gate asked for before the first step that exposes to the same: what came after that is forgotten. */
function atFirstOfItsKind(defs: Definitions, state: State): State {
  const at = current(defs, state)?.placed
  const exposes = (at?.step.exposes ?? []).join()
  const index = defs.steps.findIndex(
    (s) =>
      s.step.kind !== 'gate' &&
      s.step.when === undefined &&
      s.inside.every((part) => part.step.when === undefined) &&
      (s.step.exposes ?? []).join() === exposes,
  )
  if (index < 0) return state
  const back = forgotten(defs, state, index)
  return saysTheSame(next(defs, state), next(defs, back)) ? back : state
}

/** Without anything from the step at `index` on. */
function forgotten(defs: Definitions, state: State, index: number): State {
  const ids = new Set(defs.steps.slice(0, index).map((s) => s.id))
  const only = <T>(record: Readonly<Record<string, T>>) =>
    Object.fromEntries(Object.entries(record).filter(([id]) => ids.has(id)))
  const readings = Object.entries(state.readings).filter(([, list]) => ids.has(list[0]?.step ?? ''))
  return {
    ...state,
    done: only(state.done),
    verdicts: only(state.verdicts),
    dispositions: only(state.dispositions),
    points: only(state.points),
    things: [],
    readings: Object.fromEntries(readings),
    doubt: null,
    late: null,
  }
}

function saysTheSame(a: Prompt, b: Prompt): boolean {
  if (a.kind === 'evidence' && b.kind === 'evidence') return a.gate === b.gate && a.item.key === b.item.key
  if (a.kind === 'clear' && b.kind === 'clear') return a.gate === b.gate
  return a.kind === 'pick' && b.kind === 'pick' && a.step === b.step && a.seat === b.seat
}

/** Without anything that stands behind the current step. */
export function upToCurrent(defs: Definitions, full: State): State {
  if (full.closed !== null) return full
  const state = withPrefixes(defs, isPaused(full) ? withoutWork(full) : full)
  const now = current(defs, state)
  const at = now?.placed ?? null
  const before = behind(defs, now)
  const kept = before.filter((s) => applicability(defs, state, s) === 'do')
  const ids = new Set(kept.map((s) => s.id))
  const only = <T>(record: Readonly<Record<string, T>>, keep: (value: T) => boolean = () => true) =>
    Object.fromEntries(Object.entries(record).filter(([id, value]) => ids.has(id) && keep(value)))
  const trimmed: State = {
    ...withoutLooks(defs, state),
    seats: seatsOf(defs),
    done: only(state.done),
    readings: readingsOf(defs, state, kept, now?.state === 'do' ? at : null),
    notApplicable: {},
    verdicts: decidedOver(
      defs,
      at,
      only(state.verdicts, (v) => !v.void),
    ),
    dispositions: said(only(state.dispositions, (d) => !d.void)),
    // What was placed only ever holds up the end.
    things: now === null ? heldUp(defs, state) : [],
    points: only(state.points, (p) => !p.void),
  }
  // Whether time cut a reading short only matters where one was asked for and people are called out now.
  const cutShort = state.cutShort && at?.step.kind === 'read' && next(defs, trimmed).kind === 'clear'
  return withSeatAsked(defs, state, { ...trimmed, cutShort })
}

/** Whether any evidence is counted by the people on the job. */
export const isCounted = oncePer((defs: Definitions): boolean =>
  gatesOf(defs).some((g) => g.step.evidence.some((e) => e.kind === 'numbers' && e.per === 'person')),
)

/** Who is at the keys and the last of the others on the job: whoever came before is asked for a number like them. */
export function keptPeople(people: readonly string[], doer: string | null): readonly string[] {
  const others = people.filter((id) => id !== doer)
  const kept = doer === null ? others.slice(-2) : others.slice(-1)
  return people.filter((id) => id === doer || kept.includes(id))
}

/** Without what only the sheet shows. Wrong PINs only make signatures wait, so without them more can happen, not less. */
export function withoutLooks(defs: Definitions, state: State): State {
  const gates = Object.entries(state.gates).map(([id, g]) => [
    id,
    { ...g, struck: EMPTY_GATE.struck, replaced: EMPTY_GATE.replaced, cause: null, why: null },
  ])
  return {
    ...state,
    people: isCounted(defs) ? keptPeople(state.people, state.doer) : [],
    pinMisses: {},
    // A number that has to be the one noted lets fewer through, so without what was noted more can happen.
    noted: {},
    findings: {},
    everOn: [],
    picked: Object.values(seatsOf(defs)),
    // That one goes back as picked by mistake is the same move as that one is put back.
    used: Object.values(seatsOf(defs)),
    doubted: {},
    raised: [],
    doneBy: {},
    notices: {},
    deviations: [],
    things: heldUp(defs, state),
    gates: Object.fromEntries(gates),
    stops: fewStops(defs, state),
  }
}

/** One STOP for all that are explained and one for all that are not: the first of each, as strict as the strictest. */
function fewStops(defs: Definitions, state: State): readonly StopState[] {
  const open = openStops(state)
  const isLead = (id: string) => defs.crew.crew.some((p) => p.id === id && p.role === 'lead')
  const merged = (stops: readonly StopState[]): StopState[] => {
    const [first] = stops
    if (first === undefined) return []
    const lasting = stops.find((s) => s.cause !== null && !isReleasable(s.cause))
    return [
      {
        ...first,
        by: open[0]?.by ?? null,
        cause: lasting?.cause ?? first.cause,
        // Only a lead releases, so only a lead has to be kept from it.
        calledBy: first.calledBy.filter(isLead).slice(-1),
        callerUnknown: stops.some((s) => s.callerUnknown),
      },
    ]
  }
  return [...merged(open.filter((s) => s.cause !== null)), ...merged(open.filter((s) => s.cause === null))]
}

/**
 * Of a gate that is shut, what was given behind the first line that is missing is forgotten: that it is given when it is
 * asked leads to the same.
 */
function withPrefixes(defs: Definitions, state: State): State {
  const gates = gatesOf(defs).flatMap((gate) => {
    const g = state.gates[gate.id]
    if (g === undefined || g.status === 'open') return []
    const items = itemsOf(defs, state, gate)
    const missing = items.findIndex((item) => g.given[item.key] === undefined)
    if (missing < 0) return []
    const before = new Set(items.slice(0, missing).map((item) => item.key))
    const asked = items[missing]?.key ?? ''
    const given = Object.entries(g.given).filter(([key]) => before.has(key))
    const begun = Object.entries(g.begun).filter(([key]) => before.has(key) || key === asked)
    return [[gate.id, { ...g, given: Object.fromEntries(given), begun: Object.fromEntries(begun) }] as const]
  })
  return gates.length === 0 ? state : { ...state, gates: { ...state.gates, ...Object.fromEntries(gates) } }
}

/** The steps that are done: all of them at a review, and at a point the step itself too. */
function behind(defs: Definitions, at: Current): readonly PlacedStep[] {
  if (at === null || at.state === 'review') return defs.steps
  return defs.steps.slice(0, defs.steps.indexOf(at.placed) + (at.state === 'point' ? 1 : 0))
}

/** Nobody works: under STOP, while the job is left, until somebody has signed on and read the plate. Every gate has fallen then. */
export function isPaused(state: State): boolean {
  return (
    openStop(state) !== null || state.left || state.doer === null || !state.machineNamed || state.plateAgain
  )
}

function withoutWork(full: State): State {
  // Under STOP it makes no difference to what may come next who is at the keys, or whether the job was left.
  const state = openStop(full) === null ? full : { ...full, doer: null, left: false }
  const nothing = {
    done: {},
    readings: {},
    notApplicable: {},
    verdicts: {},
    dispositions: {},
    points: {},
    things: [],
  }
  return { ...state, ...nothing, doubt: null, late: null, cutShort: false }
}

function withSeatAsked(defs: Definitions, state: State, trimmed: State): State {
  // Asked of a state that has every answer of `trimmed` and the seats as they are.
  const prompt = next(defs, { ...trimmed, seats: state.seats })
  if (prompt.kind !== 'pick') return trimmed
  const { [prompt.seat.id]: _asked, ...seats } = trimmed.seats
  return { ...trimmed, seats }
}

function readingsOf(
  defs: Definitions,
  state: State,
  kept: readonly PlacedStep[],
  at: PlacedStep | null,
): State['readings'] {
  const readings: Record<string, readonly Reading[]> = {}
  for (const placed of kept) {
    if (placed.step.kind !== 'read') continue
    for (const place of placesOf(asKind(placed, 'read'))) {
      readings[place.key] = agreeing(defs, state, placed, place)
    }
  }
  if (at?.step.kind !== 'read') return readings
  // At the current step, places behind the one that is asked for are forgotten too.
  for (const place of placesOf(asKind(at, 'read'))) {
    if (placeResult(asKind(at, 'read'), place, state).state === 'more') {
      const most = asKind(at, 'read').step.repeats.at_most - 1
      readings[place.key] = standing(state, place.key).slice(0, most)
      break
    }
    readings[place.key] = agreeing(defs, state, at, place)
  }
  return readings
}

/** Just as many readings as the place needs, all the same; their numbers stay, so that a verdict on them is known by them. */
function agreeing(defs: Definitions, state: State, placed: PlacedStep, place: Place): readonly Reading[] {
  const read = asKind(placed, 'read')
  const { at_least } = read.step.repeats
  const list = standing(state, place.key)
  const isSo = placeResult(read, place, state).state === 'settled' && list.length === at_least
  return isSo
    ? list
    : Array.from({ length: at_least }, (_, n) => list[n] ?? made(defs, state, placed, place, n)).map(
        (r, _, all) => ({
          ...r,
          si: all[0]?.si ?? r.si,
          value: all[0]?.value ?? r.value,
          typed: all[0]?.typed ?? r.typed,
        }),
      )
}

/** What keeps the job from closing once all is done: a thing, or a word by radio, which stands for one here. */
function heldUp(defs: Definitions, state: State): readonly Thing[] {
  const things = holdsUpClosing(defs, state).slice(0, 1)
  return things.length === 0 && openWords(state).length > 0 ? [placedThing(state)] : things
}

/** As if the lead had signed for it there and then. */
function said(dispositions: State['dispositions']): State['dispositions'] {
  return Object.fromEntries(Object.entries(dispositions).map(([id, d]) => [id, { ...d, radio: null }]))
}
