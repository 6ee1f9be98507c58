// The word `where`: which sheet of how many, in which part, what is done and what stands open, and how old the evidence of
// each hold point is. It never calls any of it good, and goes on no record.
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesOf, itemsOf } from '../job/gate.ts'
import { agedName } from '../job/item-label.ts'
import { lapsesOf } from '../job/lapse.ts'
import { applicability, current, isComplete, next } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import { minutesLeftAt, roughTime } from '../job/usual-times.ts'
import { clockOf, type Instant, minutesBetween } from '../lib/instant.ts'
import { anotherLines } from './another-instrument.ts'
import { mendLines, takenLines } from './last-taken.ts'
import { NOTHING_OPEN, openItems } from './open-items.ts'
import { standingOf } from './standing.ts'
import type { StandingAsked } from './standing-asked.ts'

/** Open items that are named; of the rest it is said how many there are. */
const MOST_NAMED = 3

/** `about`: only that, where it was asked for by itself. */
export function whereLines(
  defs: Definitions,
  state: State,
  now: Instant,
  about: StandingAsked = 'all',
): string[] {
  const stop = openStop(state) === null ? [] : ['STOP is open: nothing goes on until it is released.']
  const gates = gatesOf(defs)
  if (about === 'people') return [...stop, peopleLine(state)]
  if (about === 'lapse') {
    const lapsing = gates.filter((gate) => lapsesOf(defs, state, gate).length > 0)
    return [
      ...stop,
      ...(lapsing.length === 0
        ? ['No gas test stands now, so none lapses.']
        : lapsing.flatMap((gate) => gateLine(defs, state, gate, now))),
    ]
  }
  if (about === 'practice') return PRACTICE
  if (about === 'mend') return mendLines(defs, state)
  if (about === 'instrument') return anotherLines(defs, state)
  if (about === 'taken') return [...stop, ...takenLines(defs, state)]
  if (about === 'finished') return [...stop, ...finishedLines(defs, state)]
  return [
    ...stop,
    ...placeLines(defs, state),
    doneLine(defs, state),
    ...timeLines(defs, state),
    peopleLine(state),
    ...openLines(defs, state),
    ...gateLines(defs, state, now),
  ]
}

/** Hold points with nothing shown are counted where there are several: a long job has dozens of them still to come. */
function gateLines(defs: Definitions, state: State, now: Instant): string[] {
  const gates = gatesOf(defs)
  const isBare = (gate: GateStep) => {
    const { status, given } = gateState(state, gate.id)
    return status === 'never' && Object.keys(given).length === 0
  }
  const bare = gates.filter(isBare)
  const [first] = bare
  const rest = bare.length < 2 || first === undefined ? [] : bare
  return [
    ...gates.filter((gate) => !rest.includes(gate)).flatMap((gate) => gateLine(defs, state, gate, now)),
    ...(rest.length === 0
      ? []
      : [`Hold points with nothing shown yet: ${rest.length}, the first is ${first?.number}.`]),
  ]
}

const PRACTICE = [
  'Practice is a job of its own: leave this one with leave, which keeps it, and start the program without a command.',
  'There 3 is practice of the example job, PRACTICE on every line; a trainee may sign on. Nothing of it counts for a machine.',
]

function finishedLines(defs: Definitions, state: State): string[] {
  if (state.closed !== null) return [`Yes: this job is ${standingOf(state)}.`]
  const at = current(defs, state)
  const asked =
    at === null
      ? 'its sheets are done, and it is not closed'
      : `sheet ${at.placed.number} of ${defs.steps.length} is asked, ${at.placed.step.title}`
  return [`Not yet: ${asked}.`, doneLine(defs, state), ...timeLines(defs, state), ...openLines(defs, state)]
}

export function peopleLine({ people }: State): string {
  return people.length === 0 ? 'Nobody is signed on.' : `Signed on: ${people.join(', ')}.`
}

function placeLines(defs: Definitions, state: State): string[] {
  const { procedure, machine, steps } = defs
  // Before the plate was read its tag is nowhere on screen, so that it cannot be copied from here.
  const on = state.machineNamed ? ` on ${machine.machine}` : ''
  const whole = `${procedure.title}${on}`
  if (state.closed !== null) return [`This job is closed. ${whole}.`]
  const at = current(defs, state)
  if (at === null) return [`Past the last of ${steps.length} sheets. ${whole}.`]
  const { number, step, inside } = at.placed
  const parts = inside.map((part) => part.step.title)
  return [
    `Sheet ${number} of ${steps.length}, ${step.title}`,
    `In: ${[whole, ...parts].join(' > ')}`,
    ...(state.doer === null ? ['Nobody is at the keyboard: initials come first.'] : []),
    ...(state.doer !== null && (!state.machineNamed || next(defs, state).kind === 'tag')
      ? ['The tag on the plate comes first.']
      : []),
  ]
}

/** How many sheets are done. */
export function doneLine(defs: Definitions, state: State): string {
  const asked = defs.steps.filter((placed) => applicability(defs, state, placed) !== 'skip')
  const done = asked.filter((placed) => isComplete(state, placed)).length
  const out = defs.steps.length - asked.length
  return `Done: ${done} of ${defs.steps.length} sheets${out === 0 ? '' : `; left out by their rules so far: ${out}`}.`
}

/** Rounded, and said to be rough; nothing where nothing is left. */
export function timeLines(defs: Definitions, state: State): string[] {
  if (state.closed !== null || state.paper !== null) return []
  const ways = defs.steps.map((placed) => applicability(defs, state, placed))
  // A hold point that fell is proved anew for what lies behind it, and for nothing once all of that is done.
  const isDone = defs.steps.every(
    (placed, i) => ways[i] === 'skip' || placed.step.kind === 'gate' || isComplete(state, placed),
  )
  if (isDone) return []
  const left = defs.steps.reduce((sum, placed, i) => {
    return ways[i] === 'skip' ? sum : sum + minutesLeftAt(defs, state, placed)
  }, 0)
  if (!(left > 0)) return []
  const perhaps = ways.includes('hold') ? ' if all of it is needed' : ''
  return [`About ${roughTime(left)} of work left${perhaps}. Rough times: common practice, no source.`]
}

function openLines(defs: Definitions, state: State): string[] {
  const items = openItems(defs, state)
  const more = items.length - MOST_NAMED
  return items.length === 0
    ? [NOTHING_OPEN]
    : [
        'Open:',
        ...items.slice(0, MOST_NAMED).map((item) => `  ${item}`),
        ...(more > 0 ? [`  and ${more} more: the word open lists them`] : []),
      ]
}

const STATUS = { never: 'not complete yet', open: 'complete', closed: 'FALLEN, asked again' } as const

export function gateLine(defs: Definitions, state: State, gate: GateStep, now: Instant): string[] {
  const { status, given } = gateState(state, gate.id)
  const shown = Object.keys(given).length
  if (status === 'never' && shown === 0) return [`Hold point ${gate.number}: nothing shown yet.`]
  const items = itemsOf(defs, state, gate)
  const count =
    status === 'open'
      ? ''
      : `, ${items.filter((i) => given[i.key] !== undefined).length} of ${items.length} shown`
  return [`Hold point ${gate.number}: ${STATUS[status]}${count}${evidenceAge(defs, state, gate, now)}.`]
}

/** How old what lapses first is, and when it does; nothing where time alone voids none of it. */
function evidenceAge(defs: Definitions, state: State, gate: GateStep, now: Instant): string {
  const [first] = lapsesOf(defs, state, gate).sort((a, b) => a.atMs - b.atMs || a.givenMs - b.givenMs)
  if (first === undefined) return ''
  const at = Number.isFinite(first.atMs) ? clockOf({ ms: first.atMs, offsetMin: now.offsetMin }) : null
  const age = `${minutesBetween(first.givenMs, now.ms)} min old`
  const lapse = at === null ? 'its day cannot be told' : `${first.atMs <= now.ms ? 'lapsed' : 'lapses'} ${at}`
  return `; ${agedName(first.evidence)} ${age}, ${lapse}`
}
