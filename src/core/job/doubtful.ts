// Whether a reading as keyed is doubted, why, and what is shown with the doubt. Nothing here changes or picks a figure.
import type { StepOf } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { againstLast, type LastLeft } from './last-left.ts'
import { likely, likelySentence } from './likely.ts'
import { type Far, farFromOthers } from './neighbours.ts'
import { implausible, sizeOf } from './plausible.ts'
import { type State, standing } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface Doubt {
  /** A clause about the figure: `9.053 is ...`. */
  readonly why: string
  /** What the figure may have been meant to be, in a sentence; left out where nothing is shown. */
  readonly shown?: string
}

/**
 * Null for a reading that is believed. One outside its window is doubted always; one far from its neighbours, or against
 * what the last overhaul left, only as the first of its place: a repeat is held against the first, by `repeats`.
 */
export function doubtOf(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): Doubt | null {
  const why = whyDoubted(defs, state, placed, reading)
  if (why === null) return null
  const written = { kind: placed.step.quantity, decimalComma: defs.machine.decimal_comma ?? false }
  const fits = (si: number) => whyDoubted(defs, state, placed, { ...reading, si }) === null
  const shown = likelySentence(reading, likely(reading, written, fits))
  return shown === null ? { why } : { why, shown }
}

function whyDoubted(defs: Definitions, state: State, placed: ReadStep, reading: ReadingAt): string | null {
  const outside = implausible(defs, placed, reading)
  if (outside !== null || standing(state, reading.place).length > 0) return outside
  const size = (si: number) => sizeOf(defs, placed.step.quantity, Math.abs(si), reading)
  const far = farFromOthers(state, placed, reading.place, reading.si)
  if (far !== null) return farText(far, size)
  const last = againstLast(defs, placed, reading)
  return last === null ? null : lastText(last, size)
}

function farText({ beyond, spread, others }: Far, size: (si: number) => string): string {
  const side = beyond > 0 ? 'over the most' : 'under the least'
  return `far from its neighbours: ${size(beyond)} ${side} of the other ${others} places, which lie within ${size(spread)}`
}

function lastText({ is, si, on, change, wears }: LastLeft, size: (si: number) => string): string {
  if (is === 'same') return `the very figure that was left on ${on}, ${size(si)}`
  const way = change < 0 ? 'smaller' : 'larger'
  return `${size(change)} ${way} than what was left on ${on}, ${size(si)}, and wear makes it ${wears ?? ''}`
}
