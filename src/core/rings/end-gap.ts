// End gap of a new ring by material, joint and bore, and the gap that expansion alone would close. Two books of one
// author disagree, so each rule has a name; the lead names one, and no two are ever averaged.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

export const RING_MATERIALS = ['cast-iron', 'bronze', 'carbon', 'ptfe', 'phenolic'] as const
export type RingMaterial = (typeof RING_MATERIALS)[number]

const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

interface EndGapRule {
  /** Gap over bore, length per length. */
  readonly ratio: Readonly<Partial<Record<RingMaterial, number>>>
  /** True where the book calls the figure a minimum. */
  readonly isMinimum: boolean
  /** Whether the book gives factors for angle-cut joints with this table. */
  readonly takesAngleCuts: boolean
  readonly source: string
}

export const END_GAP_RULES = {
  'handbook-p228': {
    ratio: { 'cast-iron': 0.003, carbon: 0.003, bronze: 0.004, ptfe: 0.024, phenolic: 0.005 },
    isMinimum: false,
    takesAngleCuts: false,
    source: `${BH}, p. 228`,
  },
  'handbook-table-4-4': {
    ratio: { 'cast-iron': 0.002, bronze: 0.003, ptfe: 0.017, carbon: 0.002 },
    isMinimum: true,
    takesAngleCuts: true,
    source: `${BH}, table 4-4 p. 272 and fig. 4-28 p. 273`,
  },
} as const satisfies Record<string, EndGapRule>
export type EndGapRuleName = keyof typeof END_GAP_RULES

/**
 * Factor on the table by joint (Bloch & Hoefner 1996, fig. 4-28 p. 273). The figure prints 0.71 and 0.87 beside two
 * cuts without an angle; by trigonometry 0.71 is 45 degrees and 0.87 is 30, which is our reading of it.
 */
export const JOINT_FACTOR = { butt: 1, step: 1, 'angle-cut-0.71': 0.71, 'angle-cut-0.87': 0.87 } as const
export type RingJoint = keyof typeof JOINT_FACTOR

export interface NewGap {
  readonly gapM: number
  readonly isMinimum: boolean
  readonly source: string
}

/**
 * New end gap = ratio x bore x joint factor, metres.
 * Refuses: a bore not above zero; a rule, material or joint that is not offered; a material the rule has no figure for;
 * an angle cut under a rule whose book gives no factor for it.
 *
 * @example cast iron, 10 in, butt joint: 0.030 in by p. 228, 0.020 in (a minimum) by table 4-4
 */
export function newEndGap(input: {
  readonly boreM: number | null | undefined
  readonly material: RingMaterial
  readonly joint: RingJoint
  readonly rule: EndGapRuleName
}): Result<NewGap> {
  const { boreM, material, joint } = input
  const fault = refuseUnsound({ bore: boreM })
  if (fault !== null) return fault
  if (!Object.hasOwn(END_GAP_RULES, input.rule)) return notOffered('rule', Object.keys(END_GAP_RULES))
  if (!Object.hasOwn(JOINT_FACTOR, joint)) return notOffered('joint', Object.keys(JOINT_FACTOR))
  const rule: EndGapRule = END_GAP_RULES[input.rule]
  const ratio = Object.hasOwn(rule.ratio, material) ? rule.ratio[material] : undefined
  if (ratio === undefined)
    return refuse('material-not-in-rule', `This rule has no figure for ${material}: use the ring maker's.`)
  const factor = JOINT_FACTOR[joint]
  if (factor !== 1 && !rule.takesAngleCuts)
    return refuse(
      'joint-not-in-rule',
      'The factors for angle cuts are printed for table 4-4 only: name that rule.',
    )
  const gapM = ratio * (boreM as number) * factor
  return refuseOverflow(gapM) ?? ok({ gapM, isMinimum: rule.isMinimum, source: rule.source })
}

function notOffered(what: string, offered: readonly string[]) {
  return refuse('not-offered', `There is no ${what} by that name: choose one of ${offered.join(', ')}.`)
}

/**
 * Expansion of ring materials, per K: The Tribology Handbook (M. J. Neale, 2nd ed. 1995; editor and edition from
 * memory), table 17.5. Bronze-filled PTFE is not here: its figure is not legible in the copy that was read.
 */
export const RING_EXPANSION_PER_K = {
  'carbon-filled-ptfe': 55e-6,
  'glass-filled-ptfe': 80e-6,
  'graphite-or-mos2-filled-ptfe': 115e-6,
  'resin-bonded-ptfe': 30e-6,
} as const

/** The book writes S = pi D alpha T and does not say whether T is a temperature or a rise: both readings are offered. */
export const MEANINGS_OF_T = ['t-is-operating-temperature', 't-is-rise-above-fitting'] as const
export type MeaningOfT = (typeof MEANINGS_OF_T)[number]

/**
 * End gap of a non-metallic ring from its own expansion, S = pi D alpha T, metres. The bore's own growth is not counted.
 * Source: The Tribology Handbook, table 17.9, p. B17.7. T by the meaning named: the operating temperature in degrees
 * Celsius as it stands, or its rise above the temperature at fitting. The first is the larger whenever the ring is
 * fitted above 0 C.
 * Refuses: a figure missing or unsound; an expansion above 300e-6 per K; a T that is not above zero.
 *
 * @example D 254 mm, 55e-6 per K, 100 C, T taken as the operating temperature: 4.39 mm
 */
export function thermalEndGap(input: {
  readonly boreM: number | null | undefined
  readonly alphaPerK: number | null | undefined
  readonly operatingC: number | null | undefined
  readonly fittedC?: number | null | undefined
  readonly meaning: MeaningOfT
}): Result<{ gapM: number; T: number }> {
  const { boreM, alphaPerK, operatingC, fittedC, meaning } = input
  const fault =
    refuseUnsound({ bore: boreM, 'expansion of the ring': alphaPerK }) ??
    refuseUnsound({ 'operating temperature': operatingC }, 'any')
  if (fault !== null) return fault
  if ((alphaPerK as number) > 300e-6)
    return refuse('expansion-implausible', 'The expansion is above 300 millionths per K: check the unit.')
  if (!MEANINGS_OF_T.includes(meaning)) return notOffered('meaning of T', MEANINGS_OF_T)
  const isRise = meaning === 't-is-rise-above-fitting'
  const unfit = isRise ? refuseUnsound({ 'temperature at fitting': fittedC }, 'any') : null
  if (unfit !== null) return unfit
  const T = isRise ? (operatingC as number) - (fittedC as number) : (operatingC as number)
  if (T <= 0)
    return refuse('no-rise', 'The ring does not run warmer than it was fitted: this rule says nothing of it.')
  const gapM = Math.PI * (boreM as number) * (alphaPerK as number) * T
  return refuseOverflow(gapM) ?? ok({ gapM, T })
}
