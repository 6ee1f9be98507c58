// Whether a reading as keyed is doubted, why, and what is shown with the doubt. Nothing here changes or picks a figure.
import type { StepOf } from '../definition/procedure.ts'
import { companion } from '../units/index.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { againstLast, type LastLeft } from './last-left.ts'
import { likely, likelySentence } from './likely.ts'
import { type Far, farFromOthers } from './neighbours.ts'
import { implausible, sizeOf } from './plausible.ts'
import { type State, standing } from './state.ts'
import { type UnitSlip, unitSlip } from './unit-slip.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

interface Doubt {
  /** A clause about the figure, short enough for the smallest screen: `9.053 is ...`. */
  readonly why: string
  /** What it is held against, and what the figure may have been meant to be, in sentences; left out where nothing is. */
  readonly shown?: string
}

interface Reason {
  readonly why: string
  readonly more: string | null
  /** Likely a slip of the fingers, so that what would fit is worth showing. */
  readonly isSlip: boolean
}

/**
 * Null for a reading that is believed. One outside its window is doubted always; one in another unit than those it
 * belongs with, far from its neighbours, or against what the last overhaul left, only as the first of its place: a repeat is held
 * against the first, by `repeats`.
 */
export function doubtOf(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): Doubt | null {
  const reason = reasonOf(defs, state, placed, reading)
  if (reason === null) return null
  const written = { kind: placed.step.quantity, decimalComma: defs.machine.decimal_comma ?? false }
  const fits = (si: number) => reasonOf(defs, state, placed, { ...reading, si }) === null
  const meant = reason.isSlip ? likelySentence(reading, likely(reading, written, fits)) : null
  const shown = [reason.more, meant].filter((one) => one !== null).join(' ')
  return shown === '' ? { why: reason.why } : { why: reason.why, shown }
}

function reasonOf(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): Reason | null {
  const outside = implausible(defs, placed, reading)
  if (outside !== null) return { why: outside, more: null, isSlip: true }
  if (standing(state, reading.place).length > 0) return null
  const size = (si: number) => sizeOf(defs, placed.step.quantity, Math.abs(si), reading)
  const slip = unitSlip(defs, state, placed, reading)
  if (slip !== null) return slipReason(slip, size)
  const far = farFromOthers(state, placed, reading.place, reading.si)
  if (far !== null) return farReason(far, size)
  const last = againstLast(defs, placed, reading)
  return last === null ? null : lastReason(last, size)
}

/** Which of the two is the slip nobody here can say: of the one that stands it is said how it is put right. */
function slipReason({ other, apart, whose }: UnitSlip, size: (si: number) => string): Reason {
  const { step, reading } = other
  const why = `${size(apart)} ${apart < 0 ? 'under' : 'over'} sheet ${step.number}, ${step.step.title}`
  if (whose === 'this') return { why, more: null, isSlip: true }
  const typed = reading.typed.trim()
  const more = `There ${typed} ${reading.unit} stands; ${typed} ${companion(reading.unit) ?? ''} would fit. If the slip is there: 1, then correct.`
  return { why, more, isSlip: false }
}

function farReason({ beyond, spread, others }: Far, size: (si: number) => string): Reason {
  const side = beyond > 0 ? 'over the most' : 'under the least'
  const more = `It is ${size(beyond)} ${side} of the other ${others} places, which lie within ${size(spread)}.`
  return { why: 'far from its neighbours', more, isSlip: true }
}

/** A figure so near to the one on record is no slip of the fingers: what would fit is left to whoever measures again. */
function lastReason(last: LastLeft, size: (si: number) => string): Reason {
  const { si, on, change } = last
  if (last.is === 'same')
    return { why: 'the very figure of last time', more: `${size(si)} was left on ${on}.`, isSlip: false }
  const way = change < 0 ? 'smaller' : 'larger'
  const more = `${size(si)} was left on ${on}: this is ${size(change)} ${way}, and wear makes it ${last.wears}.`
  return { why: 'less worn than last time', more, isSlip: false }
}
