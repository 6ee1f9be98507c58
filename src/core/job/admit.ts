// admit: may this be added to the job now, and what entries does it make? Every rule is here or in admit-*.ts.
// Pure: time comes in as an argument. Time passes first: what has lapsed falls before the input is looked at;
// then what other jobs on the machine did.
import { type Instant, stamp } from '../lib/instant.ts'
import { assertNever, ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import {
  admitCorrectedFinding,
  admitCorrection,
  admitReopening,
  admitTakenBackEvidence,
  admitTakenBackNotApplicable,
} from './admit-change.ts'
import { admitComingOn, admitHandOver, admitSigningOff } from './admit-crew.ts'
import { barredAtDesk } from './admit-desk.ts'
import { admitDeviation } from './admit-deviation.ts'
import { admitDisposition } from './admit-disposition.ts'
import { newsFrom } from './admit-elsewhere.ts'
import { admitFile } from './admit-file.ts'
import { admitAskAgain, admitClear, admitEvidence } from './admit-gate.ts'
import { admitDoubtAfterClose, admitDoubtedInstrument } from './admit-instrument.ts'
import { admitNotApplicable } from './admit-not-applicable.ts'
import { admitSheetDoubt, admitSheetRow, admitSheetSign } from './admit-paper.ts'
import { admitSheetCorrect } from './admit-paper-change.ts'
import { admitFittedPin, admitMissedPin, admitPick, admitSignOn, admitTag } from './admit-people.ts'
import { admitPoint } from './admit-point.ts'
import { admitPractice } from './admit-practice.ts'
import { admitCountersign, admitRadio } from './admit-radio.ts'
import { admitLate, admitReading, admitSettledDoubt, admitSettledLate } from './admit-reading.ts'
import { admitTakeIn } from './admit-record.ts'
import { admitAccount, admitHandOn, admitPlaced } from './admit-register.ts'
import { admitStep } from './admit-step.ts'
import { admitRelease, admitStopCause, admitStopStands } from './admit-stop.ts'
import { admitAdopt, admitRemark } from './adopt.ts'
import type { Definitions } from './definitions.ts'
import { NO_OTHERS, type Others } from './elsewhere.ts'
import type { Body, Entry } from './entries.ts'
import { fold } from './fold.ts'
import { gatesOf } from './gate.ts'
import type { Input } from './input.ts'
import { staleWhy } from './item-label.ts'
import type { judgeStep } from './judge-step.ts'
import { fallsWith, staleNow } from './lapse.ts'
import { admitMispick } from './mispick.ts'
import { next } from './next.ts'
import { mayCome, strays } from './paper-allowed.ts'
import { questionsNow } from './questions.ts'
import { words } from './refusals.ts'
import { settle } from './settle.ts'
import { stampEntry } from './stamp.ts'
import { openStop, PLATE_FIRST, type State, waitsForPlate } from './state.ts'
import { closedByOpening, closedByPick, closedByPlacing } from './voiding.ts'

export interface Admitted {
  readonly entries: readonly Entry[]
  /** State after the entries. */
  readonly state: State
  /** The input itself was not taken, though time may have made entries. */
  readonly refusal: Refusal | null
}

export interface Engine {
  readonly defs: Definitions
  readonly version: string
  /** How a judge step comes to its verdict; the program's own unless said. For the search over every verdict. */
  readonly judge?: typeof judgeStep
}

/**
 * Whoever left sees no prompt; a STOP is heard all the same, and a copy under way still goes on record. A lead who takes a
 * changed record in keys a PIN, which may be wrong.
 */
const WHILE_LEFT: ReadonlySet<Input['do']> = new Set([
  'take-up',
  'stop',
  'leave',
  'tick',
  'clock-moved',
  'attach',
  'pin-missed',
])

/** Clocks are nudged by a second or two in ordinary keeping of time; more than this backwards voids what rests on it. */
const BACKWARD_SLACK_MS = 2000

/** `found`: other jobs on the machine, as a look just now found them; without a look nothing is admitted at all. */
export function admit(engine: Engine, before: State, input: Input, now: Instant, found: Others): Admitted {
  // What is keyed from a sheet was done before: no other job holds it, and it waits for none.
  const others = before.paper === null ? found : NO_OTHERS
  const entries: Entry[] = []
  let state = before
  const add = (bodies: readonly Body[]) => {
    for (const body of bodies) {
      const stray = strays(state.paper !== null, body)
      if (stray !== null) throw new Error(`${body.type}: ${stray}`)
      const entry = stampEntry(state, body, now)
      entries.push(entry)
      state = fold(state, entry)
    }
    return state
  }
  if (state.closed !== null) {
    const late = afterClose(engine.defs, state, input, now)
    if (late.ok) add(late.value)
    return { entries, state, refusal: late.ok ? null : late.error }
  }
  add(overtaken(engine.defs, state, now))
  if (!mayCome(state.paper !== null, input))
    return { entries, state, refusal: NOT_HERE[state.paper === null ? 'live' : 'paper'] }
  if (input.do === 'take-in') {
    // Nothing follows from it here: whatever comes next is worked out by the new record, and this engine has the old one.
    const atThisMoment = { ...state, lastAt: stamp(now) }
    const taken = admitTakeIn(engine.defs, atThisMoment, input)
    if (taken.ok) add(taken.value)
    return { entries, state, refusal: taken.ok ? null : taken.error }
  }
  // Then what others did. Whoever takes the job up sees it once all of its own has fallen.
  if (!state.left) newsFrom(engine.defs, state, others, add)
  // What is fit for use is asked of this moment, not of the last entry: a prompt may have waited overnight.
  const handled = handle(engine, before, { ...state, lastAt: stamp(now) }, input)
  if (handled.ok) {
    const untouched = state
    add(handled.value)
    add(closedByOpening(engine.defs, untouched, state, handled.value))
    add(closedByPlacing(engine.defs, untouched, state))
    add(closedByPick(engine.defs, untouched, state, handled.value))
    add(questionsNow(engine.defs, untouched, state, handled.value))
  }
  if (before.left && !state.left) newsFrom(engine.defs, state, others, add)
  if (state.closed === null) {
    const more = () => settle(engine, state, others, now)
    for (let bodies = more(); bodies.length > 0; bodies = more()) add(bodies)
  }
  return { entries, state, refusal: handled.ok ? null : handled.error }
}

const NOT_HERE = {
  paper: {
    code: 'from-paper',
    say: 'This job is keyed from a paper sheet: nothing live comes into it, and no hold point of it opens.',
  },
  live: { code: 'not-from-paper', say: 'This job is live: nothing from a sheet comes into it.' },
} as const

/** A closed job takes nothing more but what takes its readings away or is said of it, and the PINs keyed for that. */
function afterClose(defs: Definitions, before: State, input: Input, now: Instant): Result<readonly Body[]> {
  if (!isLate(input)) return refuse('closed', 'This job is closed; a new one starts from the beginning.')
  if (!(now.ms >= before.lastMs))
    return refuse('clock', 'The clock here stands before the last line of this job: put the clock right.')
  const state = { ...before, lastAt: stamp(now) }
  switch (input.do) {
    case 'doubt-instrument':
      return admitDoubtAfterClose(defs, state, input)
    case 'adopt':
      return admitAdopt(defs, state, input)
    case 'remark':
      return admitRemark(defs, state, input)
    case 'pin-missed':
      return admitMissedPin(defs, state, input.person)
    case 'pin-fitted':
      return admitFittedPin(defs, state, input.person)
  }
}

const AFTER_CLOSE = ['doubt-instrument', 'adopt', 'remark', 'pin-missed', 'pin-fitted'] as const
type Late = Extract<Input, { do: (typeof AFTER_CLOSE)[number] }>

function isLate(input: Input): input is Late {
  return AFTER_CLOSE.some((one) => one === input.do)
}

/** Why an input would not be taken as things stand, or null. Nothing is taken. */
export function wouldRefuse(
  defs: Definitions,
  state: State,
  input: Exclude<Input, { do: 'take-in' }>,
): Refusal | null {
  if (!mayCome(state.paper !== null, input)) return NOT_HERE[state.paper === null ? 'live' : 'paper']
  const handled = handle({ defs, version: '' }, state, state, input)
  return handled.ok ? null : handled.error
}

/** What time has done since the last entry: a clock set back, evidence past its life or of another day. */
function overtaken(defs: Definitions, state: State, now: Instant): Body[] {
  if (now.ms < state.lastMs - BACKWARD_SLACK_MS) {
    return [{ type: 'clock.moved', seconds: Math.round((now.ms - state.lastMs) / 1000) }]
  }
  return gatesOf(defs).flatMap((gate): Body[] => {
    const stale = staleNow(defs, state, gate, now)
    if (stale.length === 0) return []
    const items = fallsWith(
      defs,
      state,
      gate,
      stale.map((lapse) => lapse.key),
    )
    return [{ type: 'gate.closed', step: gate.id, cause: 'lapsed', items, ...staleWhy(stale) }]
  })
}

function handle(
  engine: Engine,
  before: State,
  state: State,
  input: Exclude<Input, { do: 'take-in' }>,
): Result<readonly Body[]> {
  const { defs } = engine
  if (state.left && !WHILE_LEFT.has(input.do)) return refuse('left', 'This job was left: take it up first.')
  const barred = barredAtDesk(defs, state, input)
  if (barred !== null) return { ok: false, error: barred }
  switch (input.do) {
    case 'stop':
      // One called while another is open goes on record too: it may be for something else, and of somebody else.
      return ok([{ type: 'stop.raised', step: currentStep(defs, before) }])
    case 'note':
      return map(words(input.text, 'A note'), (text) => [
        { type: 'note.written', text, step: currentStep(defs, state) },
      ])
    case 'practice':
      return admitPractice(defs, state, input.what)
    case 'attach':
      return admitFile(state, input, currentStep(defs, state))
    case 'place':
      return admitPlaced(input, currentStep(defs, state))
    case 'account':
      return admitAccount(defs, state, input)
    case 'leave':
      return ok([{ type: 'job.left' }])
    case 'take-up':
      return ok([{ type: 'job.taken-up', ...(input.desk === true ? { desk: true as const } : {}) }])
    case 'tick':
      return ok([])
    case 'pin-missed':
      return admitMissedPin(defs, state, input.person)
    case 'pin-fitted':
      return admitFittedPin(defs, state, input.person)
    case 'clock-moved':
      return ok([{ type: 'clock.moved', seconds: input.seconds }])
    case 'explain-stop':
      return admitStopCause(defs, state, input)
    case 'release-stop':
      return admitRelease(defs, state, input)
    case 'close-stopped':
      return admitStopStands(defs, state, input)
    case 'doubt-instrument':
      return admitDoubtedInstrument(defs, state, input)
    case 'adopt':
    case 'remark':
      return refuse('open', 'This job is still open: that is for one that is closed. A note is taken here.')
    default:
      return openStop(state) === null ? handleWork(engine, before, state, input) : stopped()
  }
}

/** They change what was said before, and may end the job with it. */
const CHANGES: readonly Input['do'][] = [
  ...(['correct', 'correct-finding', 'take-back-not-applicable', 'take-back-evidence', 'reopen'] as const),
]

function handleWork(
  { defs }: Engine,
  before: State,
  state: State,
  input: Exclude<
    Input,
    {
      do:
        | 'stop'
        | 'note'
        | 'practice'
        | 'attach'
        | 'place'
        | 'account'
        | 'leave'
        | 'take-up'
        | 'tick'
        | 'pin-missed'
        | 'pin-fitted'
        | 'clock-moved'
        | 'explain-stop'
        | 'release-stop'
        | 'close-stopped'
        | 'doubt-instrument'
        | 'adopt'
        | 'remark'
        | 'take-in'
    }
  >,
): Result<readonly Body[]> {
  if (state.doer !== null && waitsForPlate(state) && CHANGES.includes(input.do))
    return refuse('plate-first', `${PLATE_FIRST} Nothing was changed.`)
  switch (input.do) {
    case 'sign-on':
      return admitSignOn(defs, state, input)
    case 'come-on':
      return admitComingOn(defs, state, input)
    case 'sign-off':
      return admitSigningOff(state, defs, input)
    case 'hand-over':
      return admitHandOver(defs, state, input)
    case 'name-machine':
      return admitTag(defs, state, input)
    case 'pick':
      return admitPick(defs, state, input)
    case 'put-back':
      return admitMispick(defs, state, input)
    case 'done':
    case 'confirm':
    case 'object':
    case 'observe':
      return admitStep(defs, state, input)
    case 'evidence':
      return admitEvidence(defs, state, input)
    case 'ask-again':
      return admitAskAgain(defs, state, input)
    case 'clear':
      return admitClear(defs, state, input)
    case 'read':
      // Asked for before the gate fell, keyed after: it is kept, marked, and counts for nothing until confirmed.
      return admitLate(defs, before, state, input) ?? admitReading(defs, state, input)
    case 'settle-doubt':
      return admitSettledDoubt(defs, state, input)
    case 'settle-late':
      return admitSettledLate(defs, state, input)
    case 'not-applicable':
      return admitNotApplicable(defs, state, input)
    case 'correct':
      return admitCorrection(defs, state, input)
    case 'correct-finding':
      return admitCorrectedFinding(defs, state, input)
    case 'take-back-not-applicable':
      return admitTakenBackNotApplicable(defs, state, input)
    case 'take-back-evidence':
      return admitTakenBackEvidence(defs, state, input)
    case 'reopen':
      return admitReopening(defs, state, input)
    case 'hand-on':
      return admitHandOn(defs, state, input)
    case 'dispose':
      return admitDisposition(defs, state, input)
    case 'radio':
      return admitRadio(defs, state, input)
    case 'countersign':
      return admitCountersign(defs, state, input)
    case 'sign-point':
    case 'give-notice':
    case 'not-attended':
      return admitPoint(defs, state, input)
    case 'permit-deviation':
      return admitDeviation(defs, state, input)
    case 'sheet-row':
      return admitSheetRow(defs, state, input)
    case 'sheet-doubt':
      return admitSheetDoubt(defs, state, input)
    case 'sheet-correct':
      return admitSheetCorrect(defs, state, input)
    case 'sheet-sign':
      return admitSheetSign(defs, state, input)
    default:
      return assertNever(input)
  }
}

function currentStep(defs: Definitions, state: State): string | null {
  const prompt = next(defs, state)
  if ('step' in prompt) return prompt.step.id
  return 'gate' in prompt ? prompt.gate.id : null
}

function map<T>(result: Result<T>, make: (value: T) => readonly Body[]): Result<readonly Body[]> {
  return result.ok ? ok(make(result.value)) : result
}

function stopped(): Result<never> {
  return refuse('stopped', 'The job is under STOP: nothing goes on until a lead releases it.')
}
