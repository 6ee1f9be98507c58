// A gauge read on its setting standard, and how far off it was read there, by the register of instruments.
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { NOISE } from './plausible.ts'
import { gaugeById } from './seats.ts'

export function isSetCheck({ step }: PlacedStep): boolean {
  return step.kind === 'read' && step.plausible.from === 'standard'
}

/** A check with the same seat stands before it in the same part: what was measured between the two is there already. */
export function isCheckAfter(defs: Definitions, placed: PlacedStep): boolean {
  return checkBefore(defs, placed) !== undefined
}

/** The last check with the same seat that stands before it in the same part. */
export function checkBefore(defs: Definitions, placed: PlacedStep): PlacedStep | undefined {
  const seat = asKind(placed, 'read').step.with
  return defs.steps.findLast(
    (one) =>
      one.number < placed.number &&
      one.scope === placed.scope &&
      isSetCheck(one) &&
      asKind(one, 'read').step.with === seat,
  )
}

export interface OffStandard {
  /** SI, with its sign. */
  readonly off: number
  /** How far off it may be, as the register has it. */
  readonly within: string
}

/** Null within what the register allows, and where no standard is measured. */
export function offStandard(
  defs: Definitions,
  placed: PlacedStep,
  { instrument, si }: Pick<ReadingAt, 'instrument' | 'si'>,
): OffStandard | null {
  const gauge = isSetCheck(placed) ? gaugeById(defs, instrument) : null
  if (gauge === null) return null
  const { size, within } = gauge.set_check
  const off = si - size.si
  return Math.abs(off) <= within.si + NOISE ? null : { off, within: within.text }
}
