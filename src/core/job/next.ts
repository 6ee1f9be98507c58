// What the job asks for now. Derived from state alone; expiry is an entry, so nothing here looks at a clock.
// Rule one: no step that exposes people to a hazard is presented unless a gate holding it back is open.
import type { Instrument } from '../definition/instruments.ts'
import type { Seat, StepOf } from '../definition/procedure.ts'
import { oncePerPair } from '../lib/once.ts'
import { list } from '../lib/wording.ts'
import { asKind, type Definitions, hazardName, type PlacedStep } from './definitions.ts'
import { holdsGate, holdsStep, isWaitedFor } from './elsewhere.ts'
import {
  type GateStep,
  gateState,
  gatesBefore,
  gatesOf,
  type Item,
  missingItem,
  seatOf,
  unheld,
} from './gate.ts'
import { asksOff, holdsOff } from './lock-off.ts'
import { type Nonconformance, openFindings, undecided } from './nonconformance.ts'
import { type OpenWord, openWords } from './open-words.ts'
import { nextOnSheet, type SheetPrompt } from './paper-next.ts'
import { openPlace, type Place } from './places.ts'
import { pendingPoint } from './point.ts'
import { holdsUpClosing, type Thing } from './register.ts'
import { ruleWords } from './rule-words.ts'
import { openStop, type Pending, type State, type StopState, waitsForPlate } from './state.ts'
import { unexplainedStop } from './stop-causes.ts'
import { valuesForRules } from './values.ts'

export type Prompt =
  | { readonly kind: 'closed' }
  | { readonly kind: 'stop-cause'; readonly stop: StopState }
  | { readonly kind: 'stopped'; readonly stop: StopState }
  | { readonly kind: 'sign-on' }
  | { readonly kind: 'tag' }
  /** `elsewhere`: another job on the machine holds it. */
  | { readonly kind: 'held'; readonly step: PlacedStep; readonly why: string; readonly elsewhere?: true }
  | { readonly kind: 'clear'; readonly gate: GateStep; readonly before: PlacedStep }
  | {
      readonly kind: 'pick'
      readonly seat: Seat
      readonly step: PlacedStep
      readonly options: readonly Instrument[]
    }
  | { readonly kind: 'evidence'; readonly gate: GateStep; readonly item: Item; readonly before: PlacedStep }
  | { readonly kind: 'doubt'; readonly step: PlacedStep; readonly doubt: NonNullable<State['doubt']> }
  | { readonly kind: 'late'; readonly step: PlacedStep; readonly late: Pending }
  | { readonly kind: 'tell' | 'confirm' | 'observe' | 'decide'; readonly step: PlacedStep }
  | { readonly kind: 'judge'; readonly step: PlacedStep }
  /** The step is done, and its inspection point is still to be signed: on the spot, or from the records at the end. */
  | { readonly kind: 'point' | 'review'; readonly step: PlacedStep }
  | { readonly kind: 'read'; readonly step: PlacedStep; readonly place: Place; readonly instrument: string }
  /** No lead has decided yet on what was found: all is done, or a gate asks for it. */
  | { readonly kind: 'findings'; readonly open: readonly Nonconformance[]; readonly gate?: GateStep }
  /** A lead has not signed yet for what they said by radio, and all is done, or a gate asks for it. */
  | { readonly kind: 'countersign'; readonly open: readonly OpenWord[]; readonly gate?: GateStep }
  /** Everything is done, and things that were placed are not accounted for. */
  | { readonly kind: 'open-things'; readonly things: readonly Thing[] }
  | { readonly kind: 'finish' }
  /** Of a job that is keyed from paper, and of no other. */
  | SheetPrompt

/** Asked of people who stand at the machine: at a desk none of it is, before somebody took the job up there and read its plate. */
const AT_MACHINE: readonly Prompt['kind'][] = [
  ...(['pick', 'evidence', 'doubt', 'late', 'tell', 'confirm', 'observe', 'read', 'point'] as const),
]

export function next(defs: Definitions, state: State): Prompt {
  const prompt = nextAnywhere(defs, state)
  return state.atDesk && state.plateAgain && AT_MACHINE.includes(prompt.kind) ? { kind: 'tag' } : prompt
}

function nextAnywhere(defs: Definitions, state: State): Prompt {
  if (state.closed !== null) return { kind: 'closed' }
  const stop = openStop(state)
  if (stop !== null) {
    const unexplained = unexplainedStop(state)
    return unexplained === null ? { kind: 'stopped', stop } : { kind: 'stop-cause', stop: unexplained }
  }
  if (state.doer === null) return { kind: 'sign-on' }
  if (state.paper !== null)
    return nextOnSheet(defs, state, state.paper, (placed) => applicability(defs, state, placed))
  if (!state.machineNamed) return { kind: 'tag' }
  // Taken up again, perhaps at another machine: that people are out is said of one that was looked at.
  if (waitsForPlate(state)) return { kind: 'tag' }
  const at = current(defs, state)
  const out = calledOut(defs, state)
  if (out !== null) return { kind: 'clear', gate: out, before: at?.placed ?? out }
  if (at === null) {
    const things = holdsUpClosing(defs, state)
    if (things.length > 0) return { kind: 'open-things', things }
    const findings = openFindings(defs, state)
    if (findings.length > 0) return { kind: 'findings', open: findings }
    const open = openWords(state)
    return open.length === 0 ? { kind: 'finish' } : { kind: 'countersign', open }
  }
  if (at.state === 'hold') return { kind: 'held', step: at.placed, why: at.why }
  if (at.state === 'review') return { kind: 'review', step: at.placed }
  if (at.state === 'point')
    // Who inspects looks where the work was done, so the same gates stand before it.
    return barrier(defs, state, at.placed, at.placed, [at.placed.id]) ?? { kind: 'point', step: at.placed }
  return present(defs, state, at.placed)
}

/**
 * A gate whose people are called out now, whatever is asked next: another job on the machine made it fall, or waits until
 * nobody is in.
 */
function calledOut(defs: Definitions, state: State): GateStep | null {
  const isMeant = (gate: GateStep) => {
    const { mustClear, cause } = gateState(state, gate.id)
    return mustClear && (cause === 'elsewhere' || isWaitedFor(defs, state, gate.step.holds))
  }
  return gatesOf(defs).find(isMeant) ?? null
}

/**
 * What stands between people and a step, or null once every gate it needs is open. Evidence is gathered at the machine
 * too, so a gate that exposes people waits for the gates before it. Coming out waits for nothing.
 */
function barrier(
  defs: Definitions,
  state: State,
  placed: PlacedStep,
  before: PlacedStep,
  waiting: readonly string[],
): Prompt | null {
  const bare = unheld(defs, placed)
  if (bare.length > 0)
    return {
      kind: 'held',
      step: placed,
      why: `no hold point keeps people from ${list(bare.map((id) => hazardName(defs, id)))} here`,
    }
  for (const gate of gatesBefore(defs, placed)) {
    const { status, mustClear } = gateState(state, gate.id)
    if (status === 'open') continue
    if (mustClear) return { kind: 'clear', gate, before }
    if (waiting.includes(gate.id))
      return { kind: 'held', step: placed, why: `${placed.id} and ${gate.id} each wait for the other` }
    return barrier(defs, state, gate, before, [...waiting, gate.id]) ?? atGate(defs, state, gate, before)
  }
  return null
}

function present(defs: Definitions, state: State, placed: PlacedStep): Prompt {
  const shut = barrier(defs, state, placed, placed, [placed.id])
  if (shut !== null) return shut
  // One that waits at another step is dropped before anything is asked (settle.ts).
  if (state.late?.step === placed.id) return { kind: 'late', step: placed, late: state.late }
  if (state.doubt?.step === placed.id) return { kind: 'doubt', step: placed, doubt: state.doubt }
  const { step } = placed
  const others = holdsStep(defs, state, placed)
  if (others !== null) return { kind: 'held', step: placed, why: others, elsewhere: true }
  if (step.kind === 'gate') return atGate(defs, state, asKind(placed, 'gate'), placed)
  if (step.kind === 'part') throw new Error(`part ${placed.id} was not flattened`)
  if (step.kind !== 'read') return { kind: step.kind, step: placed }
  const instrument = state.seats[step.with]
  if (instrument === undefined) return pick(defs, placed, step.with)
  const place = openPlace(asKind(placed, 'read'), state)
  if (place === null) throw new Error(`read step ${placed.id} is complete but current`)
  return { kind: 'read', step: placed, place, instrument }
}

function atGate(defs: Definitions, state: State, gate: GateStep, before: PlacedStep): Prompt {
  if (gateState(state, gate.id).mustClear) return { kind: 'clear', gate, before }
  const others = holdsGate(defs, state, gate.step.holds)
  if (others !== null) return { kind: 'held', step: gate, why: others, elsewhere: true }
  const item = missingItem(defs, state, gate)
  // With nothing missing the engine opens the gate by itself; until that entry is on record it stays shut.
  if (item === null)
    return { kind: 'held', step: gate, why: 'the gate is complete but not yet on record as open' }
  const resting = asksOff(item.evidence) ? holdsOff(defs, state, gate) : null
  if (resting !== null) return { kind: 'held', step: gate, why: resting, elsewhere: true }
  const open = openAt(defs, state, gate, item)
  if (open !== null) return open
  // Words said of a meter too: nobody can say that it answered before it is told which one it is.
  const seat = seatOf(item.evidence)
  if (seat !== null && state.seats[seat] === undefined) return pick(defs, gate, seat)
  return { kind: 'evidence', gate, item, before }
}

/** What a lead has to say first, where the line that is asked for says that every finding is decided. */
function openAt(defs: Definitions, state: State, gate: GateStep, { evidence }: Item): Prompt | null {
  if (evidence.kind !== 'words' || evidence.findings !== 'decided' || defs.loose === true) return null
  const open = undecided(defs, state)
  if (open.length === 0) return null
  const spoken = openWords(state).filter(
    (word) => word.choice !== 'hold' && open.some((one) => isAbout(state, word, one)),
  )
  return spoken.length === open.length
    ? { kind: 'countersign', open: spoken, gate }
    : {
        kind: 'findings',
        open: open.filter((one) => !spoken.some((word) => isAbout(state, word, one))),
        gate,
      }
}

function isAbout(state: State, word: OpenWord, { step }: Nonconformance): boolean {
  return state.dispositions[word.step]?.about === step
}

function pick(defs: Definitions, step: PlacedStep, seatId: string): Prompt {
  const seat = defs.seats.find((s) => s.id === seatId)
  if (seat === undefined)
    return { kind: 'held', step, why: `the procedure has no seat ${seatId} for an instrument` }
  const options = defs.instruments.instruments.filter((i) => seat.kinds.includes(i.kind))
  if (options.length === 0)
    return { kind: 'held', step, why: `the register has no instrument for: ${seat.for}` }
  return { kind: 'pick', seat, step, options }
}

/**
 * The reading that was asked for when time closed its gate, and nothing was done since: it may still be called out.
 * Null when no reading was cut short.
 */
export function readingCutShort(defs: Definitions, state: State): Extract<Prompt, { kind: 'read' }> | null {
  const prompt = next(defs, state)
  if (prompt.kind !== 'clear' || !state.cutShort || state.late !== null || state.doubt !== null) return null
  const { before } = prompt
  if (before.step.kind !== 'read') return null
  const instrument = state.seats[before.step.with]
  const place = openPlace(asKind(before, 'read'), state)
  return instrument === undefined || place === null ? null : { kind: 'read', step: before, place, instrument }
}

export type Current = {
  readonly state: 'do' | 'hold' | 'point' | 'review'
  readonly placed: PlacedStep
  readonly why: string
} | null

/** The first step, in order, that applies and is not complete. A state never changes, so it is looked for once. */
export const current = oncePerPair((defs: Definitions, state: State): Current => {
  let review: PlacedStep | null = null
  for (const placed of defs.steps) {
    const applies = applicability(defs, state, placed)
    if (applies === 'skip') continue
    if (applies === 'hold')
      return {
        state: 'hold',
        placed,
        why: `it cannot be told yet whether this is needed; it is only if ${ruleWords(defs, heldBy(defs, state, placed))}`,
      }
    if (!isComplete(state, placed)) return { state: 'do', placed, why: '' }
    const point = pendingPoint(state, placed)
    if (point !== null && point.kind !== 'review') return { state: 'point', placed, why: '' }
    if (point !== null) review ??= placed
  }
  // A review may wait until everything else is done, and no longer.
  return review === null ? null : { state: 'review', placed: review, why: '' }
})

/** The step itself, or the part around it, whose rule is not known. */
function heldBy(defs: Definitions, state: State, placed: PlacedStep): PlacedStep {
  return [...placed.inside, placed].find((one) => applicability(defs, state, one) === 'hold') ?? placed
}

/** The reading that waits, where the job stands at another step than its own; else null. */
export function waitsElsewhere(defs: Definitions, state: State): Pending | null {
  const waits = state.late ?? state.doubt
  return waits !== null && current(defs, state)?.placed.id !== waits.step ? waits : null
}

export type Applicability = 'do' | 'skip' | 'hold'

/** What was found out of a state so far. A state never changes, and steps hang on readings that hang on other steps. */
const appliesIn = oncePerPair((_defs: Definitions, _state: State) => new Map<string, Applicability>())

/** Whether a step is done, skipped, or held because what it depends on is unknown. */
export function applicability(defs: Definitions, state: State, placed: PlacedStep): Applicability {
  const seen = appliesIn(defs, state)
  const known = seen.get(placed.id)
  if (known !== undefined) return known
  const found = applies(defs, state, placed)
  seen.set(placed.id, found)
  return found
}

/** First as the part around it, which goes by those around itself. */
function applies(defs: Definitions, state: State, placed: PlacedStep): Applicability {
  const around = placed.inside.at(-1)
  const outer = around === undefined ? 'do' : applicability(defs, state, around)
  if (outer !== 'do' || placed.rule === null || placed.step.when === undefined) return outer
  const isDone = (other: PlacedStep) => applicability(defs, state, other) === 'do'
  const outcome =
    defs.ruled?.(state, placed) ?? placed.rule.evaluate(valuesForRules(defs, state, placed, isDone))
  return outcome === 'unknown' ? placed.step.when.unknown : outcome === 'true' ? 'do' : 'skip'
}

/** Whether nothing goes on after this choice, until there is another verdict or another word of a lead. */
export function waitsFor({ waits_on: waits = [] }: StepOf<'decide'>, choice: string): boolean {
  return waits.some((one) => one === choice)
}

export function isComplete(state: State, placed: PlacedStep): boolean {
  const { step, id } = placed
  switch (step.kind) {
    case 'tell':
    case 'confirm':
    case 'observe':
      return state.done[id] !== undefined
    case 'gate':
      // A gate that closed again is asked when, and only when, a step it guards is next.
      return gateState(state, id).status !== 'never'
    case 'read':
      return openPlace(asKind(placed, 'read'), state) === null
    case 'judge': {
      const verdict = state.verdicts[id]
      return verdict !== undefined && !verdict.void
    }
    case 'decide': {
      const disposition = state.dispositions[id]
      return disposition !== undefined && !disposition.void && !waitsFor(step, disposition.choice)
    }
    case 'part':
      return true
  }
}
