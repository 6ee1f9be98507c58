// What the record can tell of people behind a hold point when it fell: which step was at hand, whether work went on, whether
// anybody keyed clear, and whether there was anything left to be done behind it.
import type { PlacedStep } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type GateStep, gateState, gatesBefore } from '../job/gate.ts'
import { lapsedAt } from '../job/lapsed-at.ts'
import { applicability, isComplete, next } from '../job/next.ts'
import { readStamp } from '../lib/instant.ts'
import { type Look, type Move, stateAtClose } from './look.ts'

/**
 * `worked`: something was answered behind it before it was proved again. `not-clear`: people may have been in, and nobody
 * keyed clear. `proved`: clear was keyed. `after`: nobody keyed clear, and nothing was done behind it any more.
 */
export type FallClass = 'worked' | 'not-clear' | 'proved' | 'after'

export interface Fall {
  readonly move: Move
  readonly is: FallClass
  /** The step that was asked when it fell, where that is one behind this hold point. */
  readonly atHand: PlacedStep | null
  /** Answers behind it between its fall and the next time it was proved. */
  readonly worked: readonly Entry[]
  readonly clear: Entry | null
  readonly again: Entry | null
  /** The last answer behind it before it fell. */
  readonly last: Entry | null
}

/** Entries that say that something was done or read at a step. What only puts one right is none: it is keyed, at a desk too. */
export const WORK: readonly Entry['type'][] = [
  'step.done',
  'step.confirmed',
  'step.objected',
  'reading.taken',
  'finding.observed',
]

export function isFall(gate: GateStep, { before, after }: Move): boolean {
  return gateState(before, gate.id).status === 'open' && gateState(after, gate.id).status !== 'open'
}

export function fallOf(look: Look, gate: GateStep, move: Move): Fall {
  const { seq } = move.entry
  const later = look.moves.filter(({ entry }) => entry.seq > seq)
  const nextFall = later.find((one) => isFall(gate, one))?.entry.seq ?? Number.POSITIVE_INFINITY
  const until = later.filter(({ entry }) => entry.seq < nextFall).map(({ entry }) => entry)
  const of = (type: 'people.clear' | 'gate.opened') =>
    until.find((entry) => entry.type === type && entry.step === gate.id) ?? null
  const clear = of('people.clear')
  const again = of('gate.opened')
  const worked = [
    ...betweenLapseAndNote(look, gate, move),
    ...until.filter(
      (entry) => entry.seq < (again?.seq ?? Number.POSITIVE_INFINITY) && isWorkBehind(look, gate, entry),
    ),
  ]
  const last = look.entries.findLast((entry) => entry.seq < seq && isWorkBehind(look, gate, entry)) ?? null
  const atHand = atHandBehind(look, gate, move)
  const base = { move, atHand, worked, clear, again, last }
  if (worked.length > 0) return { ...base, is: 'worked' }
  if (clear !== null || again !== null) return { ...base, is: 'proved' }
  const isOver = atHand === null && !isLeftToDo(look, gate)
  return { ...base, is: isOver ? 'after' : 'not-clear' }
}

/** Answered after it was past its life and before anybody noted that: time acts first in the engine, so only a log from elsewhere has it. */
function betweenLapseAndNote(look: Look, gate: GateStep, { entry, after }: Move): Entry[] {
  const lapsed = lapsedAt(look.defsAt(entry), after, entry)
  if (lapsed === null) return []
  const opened = look.entries.findLast(
    (one) => one.type === 'gate.opened' && one.step === gate.id && one.seq < entry.seq,
  )
  return look.entries.filter(
    (one) =>
      one.seq > (opened?.seq ?? 0) &&
      one.seq < entry.seq &&
      !((readStamp(one.at)?.ms ?? Number.POSITIVE_INFINITY) < lapsed.ms) &&
      isWorkBehind(look, gate, one),
  )
}

/** Answered after the evidence of the hold point had fallen: the engine asks nothing there, so only a log from elsewhere has it. */
function isWorkBehind({ defs }: Look, gate: GateStep, entry: Entry): boolean {
  if (!WORK.includes(entry.type) || !('step' in entry) || entry.step === null) return false
  const placed = defs.steps.find(({ id }) => id === entry.step)
  return placed !== undefined && gatesBefore(defs, placed).includes(gate)
}

function atHandBehind({ defsAt }: Look, gate: GateStep, { before }: Move): PlacedStep | null {
  const defs = defsAt(before)
  const prompt = next(defs, before)
  if (!('step' in prompt) || prompt.kind === 'held' || prompt.kind === 'pick') return null
  return gatesBefore(defs, prompt.step).some(({ id }) => id === gate.id) ? prompt.step : null
}

/** A step behind it waited to be done when the job was left: what fell after the close nobody went in for. */
function isLeftToDo(look: Look, gate: GateStep): boolean {
  const { defs } = look
  const state = stateAtClose(look)
  return defs.steps.some(
    (placed) =>
      placed.step.kind !== 'gate' &&
      gatesBefore(defs, placed).includes(gate) &&
      applicability(defs, state, placed) !== 'skip' &&
      !isComplete(state, placed),
  )
}
