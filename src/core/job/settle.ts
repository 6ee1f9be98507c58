// What the job does by itself once an entry is in: open a complete gate, judge, close. One thing at a time, until quiet.
import type { Instant } from '../lib/instant.ts'
import type { Engine } from './admit.ts'
import { waitsForCall, waitsForNaming } from './admit-practice.ts'
import { coursesOf, leftText, wholeOf } from './as-left.ts'
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { holdsGate, type Others } from './elsewhere.ts'
import type { Body } from './entries.ts'
import { gateState, gatesOf, missingItem } from './gate.ts'
import { judgeStep } from './judge-step.ts'
import { staleNow } from './lapse.ts'
import { next, waitsElsewhere } from './next.ts'
import { outcomeOf } from './outcome.ts'
import { standFallen, testFallen } from './over-time.ts'
import { testChanged } from './paper-test.ts'
import { openStop, type State } from './state.ts'
import { closedByFinding, closedByPeople } from './voiding.ts'
import { branchLeft } from './voids.ts'
import { waitLeft } from './wait-left.ts'

export function settle(
  { defs, version, judge = judgeStep }: Engine,
  state: State,
  others: Others,
  now: Instant,
): readonly Body[] {
  if (openStop(state) !== null || state.left || state.doer === null) return []
  if (state.paper !== null) return settleSheet(defs, state, judge, version)
  const short = closedByPeople(defs, state)
  if (short.length > 0) return short
  const undecided = closedByFinding(defs, state)
  if (undecided.length > 0) return undecided
  // A start that was read anew: what was waited for and read after the old one stands for nothing.
  const anew = standFallen(defs, state) ?? testFallen(defs, state)
  if (anew !== null) return [anew]
  const unwatched = waitLeft(defs, state)
  if (unwatched !== null) return [unwatched]
  for (const gate of gatesOf(defs)) {
    const { status, mustClear } = gateState(state, gate.id)
    if (status === 'open' || mustClear || missingItem(defs, state, gate) !== null) continue
    // What lapses with time has to stand now, the oldest of it too.
    if (staleNow(defs, state, gate, now).length > 0) continue
    // Nor while another job on the machine lets in what it holds, is under STOP, or cannot be read.
    if (holdsGate(defs, state, gate.step.holds) !== null) continue
    return [{ type: 'gate.opened', step: gate.id, ...lookedAt(others) }]
  }
  // What was keyed at a step is worth something only while the job stays there: it is settled at that step, behind its gates.
  const waits = waitsElsewhere(defs, state)
  if (waits !== null) return [{ type: 'reading.dropped', step: waits.step, place: waits.place }]
  const left = branchLeft(defs, state)
  if (left.length > 0) return [{ type: 'branch.left', voids: left }]
  const prompt = next(defs, state)
  if (prompt.kind === 'judge')
    return waitsForCall(state, prompt.step.id) ? [] : [given(defs, state, prompt.step, judge, version)]
  return prompt.kind === 'finish' && !waitsForNaming(state) ? [closing(defs, state)] : []
}

/** Of a sheet keyed in: what was left by its own rule, the verdicts, and the close. There is nothing to open. */
function settleSheet(
  defs: Definitions,
  state: State,
  judge: typeof judgeStep,
  version: string,
): readonly Body[] {
  const left = branchLeft(defs, state)
  if (left.length > 0) return [{ type: 'branch.left', voids: left }]
  const anew = testChanged(defs, state)
  if (anew !== null) return [anew]
  const prompt = next(defs, state)
  if (prompt.kind === 'judge') return [given(defs, state, prompt.step, judge, version)]
  return prompt.kind === 'finish' ? [closing(defs, state)] : []
}

function given(
  defs: Definitions,
  state: State,
  step: PlacedStep,
  judge: typeof judgeStep,
  version: string,
): Body {
  return {
    type: 'verdict.given',
    step: step.id,
    verdict: judge(defs, state, asKind(step, 'judge'), version),
  }
}

function closing(defs: Definitions, state: State): Body {
  const whole = wholeOf(coursesOf(defs, state))
  const left = whole?.changed === true ? { as_left: leftText(whole) } : {}
  return { type: 'job.closed', outcome: outcomeOf(defs, state), ...left }
}

/** What was read of other open jobs when the gate opened: on record with it. */
function lookedAt(others: Others): { looked?: { job: string; upTo: number; head: string }[] } {
  const open = others.filter((one) => one.closed === null)
  return open.length === 0 ? {} : { looked: open.map(({ job, upTo, head }) => ({ job, upTo, head })) }
}
