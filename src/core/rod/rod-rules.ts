// Published limits of a rod as named rules. They contradict one another (a rod may be reused at 0.005 in under size, yet
// standard packing rings fit only to 0.002 in), so the lead names one; none is averaged and none is chosen here.

import { refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

const IN = 0.0254
const PSI = 6894.757293168
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

/** Metres; straightness as the whole movement of the indicator (TIR) between centres or in V-blocks. */
export const ROD_LIMITS = {
  'rod-straightness': { valueM: 0.001 * IN, beyond: 'REPLACE', source: `${BH}, p. 290` },
  'rod-out-of-round': { valueM: 0.001 * IN, beyond: 'REWORK', source: `${BH}, p. 290` },
  'rod-taper': { valueM: 0.001 * IN, beyond: 'REWORK', source: `${BH}, p. 290` },
} as const

interface UndersizeRule {
  readonly says: string
  /** Metres, or per metre of rod diameter where `perDiameter`. */
  readonly least: number
  readonly most: number
  readonly perDiameter: boolean
  /** Pressure range the book prints it for, gauge. */
  readonly fromPa?: number
  readonly toPa?: number
  readonly source: string
}

export const UNDERSIZE_RULES = {
  'reuse-p290': rule('reused as it is, if round and straight', 0.005, 'p. 290; form fig. 6-4 p. 350'),
  'standard-packing-p186': rule('standard packing rings on an undersize rod', 0.002, 'p. 186'),
  'piston-fit-p291': rule('at the piston fit, before it is built up', 0.002, 'p. 291'),
  'regrind-medium-pressure-p292': {
    says: 'reground, standard packing, medium pressure',
    least: 0.002,
    most: 0.003,
    perDiameter: true,
    toPa: 1000 * PSI,
    source: `${BH}, p. 292`,
  },
  'regrind-above-1000-psi-p292': {
    says: 'reground, standard packing, above 1000 psi: 0.003 in in all',
    least: 0.003 * IN,
    most: 0.003 * IN,
    perDiameter: false,
    fromPa: 1000 * PSI,
    source: `${BH}, p. 292`,
  },
  'regrind-125-psi-air-p292': {
    says: 'reground, air at 125 psi',
    least: 0.02 * IN,
    most: 0.02 * IN,
    perDiameter: false,
    toPa: 125 * PSI,
    source: `${BH}, p. 292`,
  },
} as const satisfies Record<string, UndersizeRule>
export type UndersizeRuleName = keyof typeof UNDERSIZE_RULES

function rule(says: string, inches: number, page: string): UndersizeRule {
  return { says, least: inches * IN, most: inches * IN, perDiameter: false, source: `${BH}, ${page}` }
}

/**
 * How far under size a rod may be, metres on diameter, under the named rule: one figure, or a least and a most where the
 * book prints a band. A rule printed for a pressure refuses another pressure.
 * Refuses: a diameter not above zero; a rule not offered; no pressure where the rule has a range; pressure outside it.
 *
 * @example 3 in rod, medium pressure: 0.006 to 0.009 in; above 1000 psi: 0.003 in
 */
export function undersizeAllowed(input: {
  readonly diameterM: number | null | undefined
  readonly rule: UndersizeRuleName
  readonly pressurePa?: number | null | undefined
}): Result<{ leastM: number; mostM: number; says: string; source: string }> {
  const fault = refuseUnsound({ 'rod diameter': input.diameterM })
  if (fault !== null) return fault
  if (!Object.hasOwn(UNDERSIZE_RULES, input.rule))
    return refuse(
      'not-offered',
      `There is no such rule: choose one of ${Object.keys(UNDERSIZE_RULES).join(', ')}.`,
    )
  const found: UndersizeRule = UNDERSIZE_RULES[input.rule]
  if (found.fromPa !== undefined || found.toPa !== undefined) {
    const unsound = refuseUnsound({ 'pressure at the packing': input.pressurePa }, 'zero or more')
    if (unsound !== null) return unsound
    const pressure = input.pressurePa as number
    if (pressure < (found.fromPa ?? 0) - 1 || pressure > (found.toPa ?? Number.POSITIVE_INFINITY) + 1)
      return refuse(
        'pressure-outside-rule',
        'The book prints this rule for another pressure: name the rule that fits.',
      )
  }
  const scale = found.perDiameter ? (input.diameterM as number) : 1
  return ok({
    leastM: found.least * scale,
    mostM: found.most * scale,
    says: found.says,
    source: found.source,
  })
}

/** What the book says of a bent rod, and where it contradicts itself; shown, never decided here. */
export const BENT_ROD =
  'A bent rod is scrapped and never straightened (p. 291), or straightened only if it was never coated or plated (p. 294): the book says both. The lead decides.'
