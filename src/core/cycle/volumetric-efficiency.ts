// Volumetric efficiency in its published forms. They disagree by several per cent, so each has a name, and a figure
// always carries the name of the form it came from. All are on SUCTION conditions; see capacity.ts for free air.
import { ok, type Result, refuse } from '../lib/result.ts'
import { GREATEST_CLEARANCE } from './clearance.ts'
import {
  compressibilityFault,
  exponentFault,
  firstFault,
  type MaybeNumber,
  ratioFault,
  within,
} from './guard.ts'

export const VE_FORMS = ['ideal', '97-less-loss', '100-less-loss', '96-less-ratio'] as const
export type VeForm = (typeof VE_FORMS)[number]

export const VE_FORMULA: Readonly<Record<VeForm, string>> = {
  ideal: 'VE = 1 - C (Zs/Zd r^(1/k) - 1)',
  '97-less-loss': 'VE = 0.97 - L - C (Zs/Zd r^(1/k) - 1)',
  '100-less-loss': 'VE = 1 - L - C (Zs/Zd r^(1/k) - 1)',
  '96-less-ratio': 'VE = 0.96 - r/100 - C (Zs/Zd r^(1/k) - 1)',
}

export const VE_SOURCE: Readonly<Record<VeForm, string>> = {
  ideal: 'ideal cycle: P. K. Nag, Engineering Thermodynamics, ch. 18 (compressors)',
  '97-less-loss': 'E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook, p. 271',
  '100-less-loss':
    'Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 396 (A-10)',
  '96-less-ratio': 'GPSA Engineering Data Book, section 13 (from memory, not seen)',
}

export interface VeInputs {
  readonly form: VeForm
  /** Clearance over swept volume of this end, with any pocket. */
  readonly clearance: number
  /** Discharge over suction pressure, both absolute. */
  readonly ratio: number
  /** Exponent of re-expansion. */
  readonly k: number
  /** 1 for an ideal gas, said and not assumed. */
  readonly zSuction: number
  readonly zDischarge: number
  /** Leakage and friction loss L, a fraction; only in the forms that have one. */
  readonly loss?: MaybeNumber
}

/** True for the forms with a loss read from a chart or table. */
export function hasLoss(form: VeForm): boolean {
  return form === '97-less-loss' || form === '100-less-loss'
}

/** The form's plain value, which is zero or below where the end draws nothing. Inputs are not looked at. */
export function veUnguarded({ form, clearance, ratio, k, zSuction, zDischarge, loss }: VeInputs): number {
  const swallowed = clearance * ((zSuction / zDischarge) * ratio ** (1 / k) - 1)
  if (form === 'ideal') return 1 - swallowed
  if (form === '96-less-ratio') return 0.96 - ratio / 100 - swallowed
  return (form === '97-less-loss' ? 0.97 : 1) - (loss ?? Number.NaN) - swallowed
}

/** Refuses an L that the form needs and does not have, or has and does not know. */
export function lossFault(form: VeForm, loss: MaybeNumber) {
  if (hasLoss(form)) return within(`loss L of the ${form} form`, loss, 0, 0.5)
  if (loss === null || loss === undefined) return null
  return {
    code: 'loss-not-in-form',
    say: `The ${form} form has no loss L: leave it out, or name a form that has one.`,
  }
}

/**
 * Volumetric efficiency on suction conditions, a fraction, by the named form (VE_FORMULA, VE_SOURCE).
 * C 0 to 5, r 1 to 50, k 1 to 2, Z 0.1 to 3, L 0 to 0.5. Ideal gas: Zs = Zd = 1.
 * Refuses: an input missing or out of range; a loss where the form has none; `no-flow` where it comes to zero or less
 * (the gas left in the clearance fills the whole stroke).
 *
 * @example ideal, C 0.05, r 8, n 1.25: 0.786
 */
export function volumetricEfficiency(inputs: VeInputs): Result<number> {
  const { form, clearance, ratio, k, zSuction, zDischarge, loss } = inputs
  const fault = firstFault(
    within('clearance over swept volume', clearance, 0, GREATEST_CLEARANCE),
    ratioFault(ratio),
    exponentFault(k),
    compressibilityFault('suction', zSuction),
    compressibilityFault('discharge', zDischarge),
    lossFault(form, loss),
  )
  if (fault !== null) return fault
  const efficiency = veUnguarded(inputs)
  if (efficiency > 0) return ok(efficiency)
  return refuse(
    'no-flow',
    'The gas left in the clearance fills the whole stroke: this end draws nothing at this ratio and clearance.',
  )
}
