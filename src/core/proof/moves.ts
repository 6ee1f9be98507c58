// Every move that is open in a state: each answer at once, after each gas test that can lapse has lapsed, and with a clock
// that went back; what was not asked for; a STOP, the job left, the program killed, the clock moved; second thoughts.

import { lastReopenable } from '../job/admit-change.ts'
import { gateBeingAsked } from '../job/admit-gate.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { gatesOf, itemsOf } from '../job/gate.ts'
import type { Input } from '../job/input.ts'
import { current, type Prompt } from '../job/next.ts'
import { peopleOnJob } from '../job/people-on.ts'
import { placesOf } from '../job/places.ts'
import { pointOf } from '../job/point.ts'
import { openStop, type State, standing } from '../job/state.ts'
import { wouldVoid } from '../job/voids.ts'
import { assertNever } from '../lib/result.ts'
import { turns, type Watch } from './account.ts'
import { type Answer, answersAt, people, WHY } from './answers.ts'
import { readingsFor } from './figures.ts'
import { endsOfEachSort, readLike, workLike } from './like.ts'
import { seatsOf } from './made.ts'

export interface Move {
  readonly says: string
  readonly input: Input
  /** Milliseconds since the state was reached; below zero, the clock was set back. */
  readonly after: number
}

const AT_ONCE = 1
/** Set back by less than the engine minds. */
const NUDGED = -1000
const HOUR = 3_600_000

/** Prompts whose answer opens a gate or is worth something only while one is open. */
export const AT_THE_MOMENT: ReadonlySet<Prompt['kind']> = new Set([
  'evidence',
  'clear',
  'read',
  'late',
  'doubt',
])

/** `withUnasked`: also what was not asked for; once for each prompt is enough, as it is the prompt that it is held against. */
export function movesFrom(
  defs: Definitions,
  state: State,
  watch: Watch,
  prompt: Prompt,
  now: number,
  withUnasked: boolean,
): Move[] {
  const lapses = [...new Set(turns(defs, watch))].map((at) => Math.max(AT_ONCE, at - now))
  const asked = state.left ? [] : answersAt(defs, state, prompt)
  const pause: Answer = { says: '', input: { do: 'tick' } }
  const moves: Move[] = []
  const at = (after: number, says: string, answers: readonly Answer[]) => {
    for (const a of answers)
      moves.push({ says: [says, a.says].filter((t) => t !== '').join(' '), input: a.input, after })
  }
  at(AT_ONCE, '', [
    ...asked,
    ...breaks(state),
    ...asides(defs, state, withUnasked),
    ...secondThoughts(defs, state),
    ...(withUnasked ? unasked(defs, state, prompt) : []),
  ])
  // Time passes before an answer is looked at (admit.ts; tests/core/proof/honest.test.ts holds every random job to it), so
  // elsewhere than at a gate and at a reading, which may come late, an answer after a pause is the pause and the answer.
  const inOneBreath = AT_THE_MOMENT.has(prompt.kind) ? asked : []
  for (const lapse of lapses) at(lapse, '(time passes)', [pause, ...inOneBreath])
  at(NUDGED, '(the clock is a second behind)', [pause, ...inOneBreath])
  at(-HOUR, '(the clock goes back an hour)', [pause, ...inOneBreath])
  return moves
}

/** What can come at any prompt and makes what was proved fall. */
function breaks(state: State): Answer[] {
  return [
    { says: 'stop', input: { do: 'stop' } },
    { says: 'leave', input: { do: 'leave' } },
    { says: state.left ? '(taken up)' : '(killed, and taken up)', input: { do: 'take-up' } },
    { says: '(the clock jumps)', input: { do: 'clock-moved', seconds: 3600 } },
  ]
}

/** What else can come at any prompt. */
function asides(defs: Definitions, state: State, withUnasked: boolean): Answer[] {
  const all = people(defs, state)
  // What changes nothing that is told apart is tried once at each prompt; what is placed holds up the end alone.
  const idle: Answer[] = [
    { says: 'note', input: { do: 'note', text: WHY } },
    { says: '(a wrong PIN)', input: { do: 'pin-missed', person: all[0] ?? '' } },
  ]
  const placed: Answer = { says: 'placed', input: { do: 'place', what: WHY, where: WHY, number: null } }
  return [
    ...(withUnasked ? idle : []),
    ...(withUnasked || current(defs, state) === null ? [placed] : []),
    ...all.flatMap((person) => comings(state, person, withUnasked)),
  ]
}

/** Somebody comes onto the job, goes, or takes over; with `withUnasked` also who is there already, or is not there. */
function comings(state: State, person: string, withUnasked: boolean): Answer[] {
  const { doer } = state
  if (doer === null) return []
  const isOn = peopleOnJob(state).includes(person)
  const over = { do: 'hand-over', from: doer, fromProved: true, person, proved: true } as const
  const on: Answer = { says: `${person} comes on`, input: { do: 'come-on', person, proved: true } }
  const off: Answer = { says: `${person} signs off`, input: { do: 'sign-off', person, proved: true } }
  const next: Answer = { says: `${doer} hands over to ${person}`, input: over }
  return [
    ...(withUnasked || !isOn ? [on] : []),
    ...(withUnasked || isOn ? [off] : []),
    ...(withUnasked || person !== doer ? [next] : []),
  ]
}

/** Corrections, going back, and asking evidence again. */
function secondThoughts(defs: Definitions, state: State): Answer[] {
  const answers: Answer[] = []
  const reopen = lastReopenable(defs, state)
  const isAnswered = (s: PlacedStep) => state.done[s.id] !== undefined
  // Where no gate is looked at, the work itself is, and each step of it is a sort of its own.
  const isGated = gatesOf(defs).length > 0
  const sortOf = (s: PlacedStep) => (isGated ? (s.step.kind === 'read' ? readLike : workLike)(defs, s) : s.id)
  const done = endsOfEachSort(defs.steps.filter(isAnswered), sortOf)
  for (const step of done)
    answers.push({
      says: step.id === reopen?.id ? 'back' : `back to ${step.id}`,
      input: { do: 'reopen', step: step.id, why: WHY },
    })
  for (const { step, id } of done) {
    if (step.kind !== 'observe') continue
    for (const { id: condition } of step.conditions)
      answers.push({
        says: `correct ${id} to ${condition}`,
        input: { do: 'correct-finding', step: id, condition, note: WHY, why: WHY },
      })
  }
  for (const g of gatesOf(defs))
    for (const key of Object.keys(state.gates[g.id]?.given ?? {}))
      answers.push({
        says: `${key} was wrong`,
        input: { do: 'take-back-evidence', step: g.id, item: key, why: WHY },
      })
  for (const instrument of endsOfEachSort(state.picked, (id) => (isGated ? fallsWith(defs, state, id) : id)))
    answers.push({
      says: `${instrument} is out of calibration`,
      input: { do: 'doubt-instrument', instrument, why: WHY, says: WHY },
    })
  const gate = gateBeingAsked(defs, state)
  for (const g of gatesOf(defs))
    answers.push({
      says: g.id === gate?.id ? 'again' : `again ${g.id}`,
      input: { do: 'ask-again', step: g.id },
    })
  const reads = defs.steps.filter((s) => s.step.kind === 'read' && hasStanding(state, s))
  for (const placed of endsOfEachSort(reads, sortOf)) answers.push(...corrections(defs, state, placed))
  return answers
}

/** All that falls with the instrument: what is asked, waits, was proved or was read with it. */
function fallsWith(defs: Definitions, state: State, instrument: string): string {
  const asked = current(defs, state)?.placed.step
  const isAsked = asked?.kind === 'read' && seatsOf(defs)[asked.with] === instrument
  const waits = [state.doubt, state.late].some((p) => p?.instrument === instrument)
  const proves = Object.values(state.gates).flatMap(({ given }) =>
    Object.keys(given).filter((key) => given[key]?.instrument === instrument),
  )
  const read = defs.steps.filter((s) => s.step.kind === 'read' && hasStanding(state, s, instrument))
  const sorts = [...new Set(read.map((s) => readLike(defs, s)))]
  return JSON.stringify([isAsked, waits, proves, sorts, wouldVoid(defs, state, ...read.map((s) => s.id))])
}

function hasStanding(state: State, placed: PlacedStep, instrument?: string): boolean {
  return placesOf(asKind(placed, 'read')).some((p) =>
    standing(state, p.key).some((r) => instrument === undefined || r.instrument === instrument),
  )
}

/** One reading of the step corrected to one like the others, and to one apart from them. */
function corrections(defs: Definitions, state: State, placed: PlacedStep): Answer[] {
  const read = asKind(placed, 'read')
  const place = placesOf(read).findLast((p) => standing(state, p.key).length > 0)
  const list = place === undefined ? [] : standing(state, place.key)
  const [first] = list
  if (first === undefined) return []
  const { alike, apart } = readingsFor(defs, read, first.instrument, list.at(-1)?.si ?? first.si)
  return [alike, apart].map((typed, n) => ({
    says: `correct ${placed.id}${n === 0 ? '' : ', apart'}`,
    input: { do: 'correct', of: first.seq, typed, why: WHY },
  }))
}

/** Answers to what is not asked now: of every other step, and of every gate. None may be taken. */
function unasked(defs: Definitions, state: State, prompt: Prompt): Answer[] {
  const here = 'step' in prompt ? prompt.step.id : 'gate' in prompt ? prompt.gate.id : null
  const other = people(defs, state).find((p) => p !== state.doer) ?? ''
  const answers = defs.steps.flatMap((placed): Input[] => {
    const { step, id } = placed
    if (id === here && step.kind === prompt.kind) return []
    switch (step.kind) {
      case 'tell':
        return [{ do: 'done', step: id }]
      case 'confirm':
        return [{ do: 'confirm', step: id }]
      case 'observe':
        return [{ do: 'observe', step: id, condition: step.conditions[0]?.id ?? '', note: WHY }]
      case 'read': {
        const place = placesOf(asKind(placed, 'read'))[0]
        const typed = readingsFor(defs, asKind(placed, 'read'), seatsOf(defs)[step.with] ?? '', null).alike
        return place === undefined ? [] : [{ do: 'read', place: place.key, typed }]
      }
      case 'decide':
        return [
          { do: 'dispose', step: id, choice: step.choices[0] ?? '', person: other, proved: true, why: WHY },
        ]
      case 'gate': {
        const last = itemsOf(defs, state, asKind(placed, 'gate')).at(-1)
        return [
          { do: 'clear', step: id, typed: step.clear_words },
          { do: 'evidence', step: id, item: last?.key ?? '', typed: other, proved: true },
        ]
      }
      case 'judge':
      case 'part':
        return []
      default:
        return assertNever(step)
    }
  })
  if (openStop(state) === null) answers.push({ do: 'release-stop', person: other, proved: true, answer: WHY })
  if (state.doubt === null) answers.push({ do: 'settle-doubt', choice: 'kept', why: WHY })
  if (state.late === null) answers.push({ do: 'settle-late', kept: true })
  for (const placed of defs.steps)
    if (pointOf(placed) !== null && placed.id !== here)
      answers.push({ do: 'sign-point', step: placed.id, person: other, proved: true })
  return answers.map((input) => ({ says: `(unasked) ${input.do}`, input }))
}
