// What voids evidence besides time: a new opening, somebody who came onto the job, an instrument found unfit.

import type { Evidence } from '../definition/evidence.ts'
import { list } from '../lib/wording.ts'
import { type Definitions, hazardName, instrumentById, type PlacedStep } from './definitions.ts'
import type { Body, CloseCause } from './entries.ts'
import {
  evidenceByKey,
  type GateStep,
  gateState,
  gatesOf,
  hangs,
  itemsOf,
  missingItem,
  provesAt,
  provingAny,
  wantsAnother,
} from './gate.ts'
import { fallsWith } from './lapse.ts'
import { isComplete } from './next.ts'
import { undecided } from './nonconformance.ts'
import { thingText } from './register.ts'
import type { State } from './state.ts'

type Closed = Extract<Body, { type: 'gate.closed' }>

function closed(gate: GateStep, cause: CloseCause, items: readonly string[], why: string): Closed {
  return { type: 'gate.closed', step: gate.id, cause, items, why }
}

/**
 * Gates that shut because a step was just done that lets a hazard in again: what proves that hazard falls, the rest of
 * the gate stands. Compared before and after, so that it does not matter by which entry the step came to its end. Who
 * says that it did not go as it should has begun it at least, and may have let the hazard in.
 */
export function closedByOpening(
  defs: Definitions,
  before: State,
  after: State,
  bodies: readonly Body[],
): Body[] {
  const done = lettingIn(defs, before, after, bodies)
  const letIn = new Set(done.flatMap(({ step }) => ('lets_in' in step ? (step.lets_in ?? []) : [])))
  if (letIn.size === 0) return []
  const names = [...letIn].map((id) => hazardName(defs, id))
  const why = `${list(done.map(({ step }) => step.title))} can let in ${list(names)}`
  return gatesOf(defs).flatMap((gate): Body[] => {
    if (!gate.step.holds.some((hazard) => letIn.has(hazard))) return []
    const { status } = gateState(after, gate.id)
    const items = fallsWith(defs, after, gate, provingAny(after, gate, letIn))
    return status === 'open' || items.length > 0 ? [closed(gate, 'opening', items, why)] : []
  })
}

/** Steps that let a hazard in and just came to their end, or were begun at least. */
export function lettingIn(
  defs: Definitions,
  before: State,
  after: State,
  bodies: readonly Body[],
): PlacedStep[] {
  const objected = (id: string) => bodies.some((body) => body.type === 'step.objected' && body.step === id)
  return defs.steps.filter((placed) => {
    const { step } = placed
    return (
      'lets_in' in step &&
      step.lets_in !== undefined &&
      (objected(placed.id) || (!isComplete(before, placed) && isComplete(after, placed)))
    )
  })
}

/** Words that nothing temporary is left in fall once something is placed again, with whoever vouched for them. */
export function closedByPlacing(defs: Definitions, before: State, after: State): Body[] {
  const placed = after.things.at(-1)
  if (placed === undefined || after.things.length === before.things.length) return []
  return gatesOf(defs).flatMap((gate): Body[] => {
    const said = Object.keys(gateState(after, gate.id).given).filter((key) => {
      const evidence = evidenceByKey(gate, key)
      return evidence?.kind === 'words' && evidence.register === 'clear'
    })
    if (said.length === 0) return []
    const why = `${thingText(placed)} was placed since`
    return [closed(gate, 'opening', fallsWith(defs, after, gate, said), why)]
  })
}

/** Words that every finding is decided fall once one is not, or was decided anew and put on hold. */
export function closedByFinding(defs: Definitions, state: State): Body[] {
  const said = gatesOf(defs).flatMap((gate) => {
    const keys = findingWords(state, gate)
    return keys.length === 0 ? [] : [{ gate, keys }]
  })
  const [open] = said.length === 0 || defs.loose === true ? [] : undecided(defs, state)
  if (open === undefined) return []
  const why = `no lead has decided on ${open.name}, so that it can go on`
  return said.map(({ gate, keys }) => closed(gate, 'again', fallsWith(defs, state, gate, keys), why))
}

/** Keys of the words at the gate that say so and stand. */
export function findingWords(state: State, gate: GateStep): string[] {
  return Object.keys(gateState(state, gate.id).given).filter((key) => {
    const evidence = evidenceByKey(gate, key)
    return evidence?.kind === 'words' && evidence.findings === 'decided'
  })
}

/** Open gates that somebody who came onto the job has not answered for: only what is missing is asked, and the witness. */
export function closedByPeople(defs: Definitions, state: State): Body[] {
  return gatesOf(defs).flatMap((gate): Body[] => {
    const missing = missingItem(defs, state, gate)
    if (gateState(state, gate.id).status !== 'open' || missing === null) return []
    const { given } = gateState(state, gate.id)
    const late = itemsOf(defs, state, gate).flatMap((i) =>
      given[i.key] === undefined ? (i.person ?? []) : [],
    )
    const why = wantsAnother(missing)
      ? 'one person alone is left on the job'
      : `${late.length === 0 ? 'somebody' : list([...new Set(late)])} came onto the job`
    return [closed(gate, 'people', fallsWith(defs, state, gate, []), why)]
  })
}

/** Words said of the instrument of a seat fall when another is picked: nobody has said them of that one. */
export function closedByPick(
  defs: Definitions,
  before: State,
  after: State,
  bodies: readonly Body[],
): Body[] {
  const picked = bodies.find((body) => body.type === 'instrument.picked')
  const seat = defs.seats.find((one) => one.id === picked?.seat)
  const isAnother = before.picked.some((id) => {
    const kind = instrumentById(defs, id)?.kind
    return kind !== undefined && seat?.kinds.includes(kind) === true && id !== picked?.instrument
  })
  if (picked === undefined || seat === undefined || !isAnother) return []
  return gatesOf(defs).flatMap((gate): Body[] => {
    const said = Object.keys(gateState(after, gate.id).given).filter((key) => {
      const evidence = evidenceByKey(gate, key)
      return evidence?.kind === 'words' && evidence.seat === seat.id
    })
    if (said.length === 0) return []
    const why = `${picked.instrument} was picked after this was said`
    return [closed(gate, 'again', fallsWith(defs, after, gate, said), why)]
  })
}

/** Keys of the evidence at this gate that stands on readings of this instrument. */
export function itemsMeasuredWith(state: State, gate: GateStep, instrument: string): string[] {
  const { given } = gateState(state, gate.id)
  return Object.keys(given).filter((key) => given[key]?.instrument === instrument)
}

/** The waits about the same hazard that were watched after these values were read: they say nothing without them. */
export function waitsAfter(state: State, gate: GateStep, keys: readonly string[]): string[] {
  const { given, begun } = gateState(state, gate.id)
  const values = keys.flatMap((key) => {
    const evidence = evidenceByKey(gate, key)
    const at = given[key]?.seq
    return evidence?.kind === 'measured' && at !== undefined
      ? [{ hazards: provesAt(gate, evidence), at }]
      : []
  })
  return Object.keys(begun).filter((key) => {
    const evidence = evidenceByKey(gate, key)
    if (evidence?.kind !== 'wait') return false
    const hazards = provesAt(gate, evidence)
    return values.some(
      (value) => (begun[key]?.seq ?? 0) > value.at && value.hazards.some((h) => hazards.includes(h)),
    )
  })
}

/** A line of evidence that is taken back, and where it stands. */
export interface TakenBack {
  readonly gate: GateStep
  readonly evidence: Evidence | null
  readonly seq: number
}

/** What proves nothing without the line before it: under which lock it was tried, or whether gas had come back, nobody knows. */
function needs(line: Evidence | null): readonly Evidence['kind'][] {
  if (hangs(line)) return ['words', 'gas', 'measured', 'wait']
  switch (line?.kind) {
    case 'words':
      // Words about the record tell nothing of the machine.
      return line.register === undefined && line.findings === undefined
        ? ['words', 'gas', 'measured', 'wait']
        : []
    case 'wait':
      return ['words', 'gas', 'measured', 'wait']
    case 'measured':
      // What another gauge reads elsewhere is its own.
      return ['words', 'gas', 'wait']
    default:
      return []
  }
}

/**
 * What was shown at this gate since that line was, and proves nothing without it: whatever was tried, read or watched against what a
 * number that hangs on the machine holds back, or against what words, a wait or a value told of that was not so; with words said of an
 * instrument, also whatever was read with one of that seat.
 */
export function shownAfter(defs: Definitions, state: State, gate: GateStep, taken: TakenBack): string[] {
  const { given, begun } = gateState(state, gate.id)
  const { evidence: line } = taken
  const kinds = needs(line)
  // A moment that is not known is after it.
  const isSince = (key: string) => !((given[key]?.seq ?? begun[key]?.seq ?? Number.NaN) < taken.seq)
  const against = new Set(line === null || kinds.length === 0 ? [] : provesAt(taken.gate, line))
  const proving = provingAny(state, gate, against).filter((key) => {
    const kind = evidenceByKey(gate, key)?.kind
    return kind === undefined || kinds.includes(kind)
  })
  const seat = defs.seats.find((one) => line?.kind === 'words' && one.id === line.seat)
  const read = Object.keys(given).filter((key) => {
    const kind = instrumentById(defs, given[key]?.instrument ?? '')?.kind
    return kind !== undefined && seat?.kinds.includes(kind) === true
  })
  return [...new Set([...proving, ...read])].filter(isSince)
}

/**
 * What an instrument found unfit voids: whatever it measured, in every gate, the waits that were watched from there, and the
 * witness.
 */
export function voidMeasuredWith(defs: Definitions, state: State, instrument: string, why: string): Body[] {
  return gatesOf(defs).flatMap((gate): Body[] => {
    const measured = itemsMeasuredWith(state, gate, instrument)
    if (measured.length === 0) return []
    const items = fallsWith(defs, state, gate, [...measured, ...waitsAfter(state, gate, measured)])
    return [closed(gate, 'instrument', items, `${instrument} may not be used: ${why}`)]
  })
}
