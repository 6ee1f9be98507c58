// Rider bands: clearance in the bore by both published rules, and clearance in their groove.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

const IN = 0.0254
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

export const PISTON_MATERIALS = ['iron', 'aluminium'] as const
export type PistonMaterial = (typeof PISTON_MATERIALS)[number]

interface RiderRule {
  readonly ratio: Readonly<Record<PistonMaterial, readonly [number, number]>>
  /** Added to the product, metres. */
  readonly plusM: number
  readonly isMinimum: boolean
  readonly source: string
}

export const RIDER_RULES = {
  'handbook-p228': {
    ratio: { iron: [0.00125, 0.0015], aluminium: [0.002, 0.002] },
    plusM: 0,
    isMinimum: true,
    source: `${BH}, p. 228 (least clearance in the middle of the piston, beside the rings)`,
  },
  'handbook-p269': {
    ratio: { iron: [0.0015, 0.0015], aluminium: [0.0025, 0.0025] },
    plusM: 0.005 * IN,
    isMinimum: false,
    source: `${BH}, p. 269`,
  },
} as const satisfies Record<string, RiderRule>
export type RiderRuleName = keyof typeof RIDER_RULES

/**
 * Clearance on diameter between rider and bore = k x bore + constant, metres; k by the material of the PISTON, whose
 * growth the band follows. The two rules differ and are kept apart.
 * Refuses: a bore not above zero; a rule or material not offered.
 *
 * @example 10 in, iron: 0.0125 to 0.015 in by p. 228, 0.020 in by p. 269
 */
export function riderClearance(input: {
  readonly boreM: number | null | undefined
  readonly pistonMaterial: PistonMaterial
  readonly rule: RiderRuleName
}): Result<{ leastM: number; mostM: number; isMinimum: boolean; source: string }> {
  const fault = refuseUnsound({ bore: input.boreM })
  if (fault !== null) return fault
  if (!Object.hasOwn(RIDER_RULES, input.rule)) return notOffered('rider rule', Object.keys(RIDER_RULES))
  if (!PISTON_MATERIALS.includes(input.pistonMaterial)) return notOffered('piston material', PISTON_MATERIALS)
  const rule: RiderRule = RIDER_RULES[input.rule]
  const [least, most] = rule.ratio[input.pistonMaterial]
  const boreM = input.boreM as number
  const mostM = most * boreM + rule.plusM
  return (
    refuseOverflow(mostM) ??
    ok({ leastM: least * boreM + rule.plusM, mostM, isMinimum: rule.isMinimum, source: rule.source })
  )
}

export const RIDER_MATERIALS = ['iron', 'bronze', 'ptfe', 'carbon'] as const
export type RiderMaterial = (typeof RIDER_MATERIALS)[number]

/** Bloch & Hoefner 1996, table 4-5 p. 275, least values: side per width of the band, end per bore. */
const GROOVE: Readonly<Record<RiderMaterial, { side: number; floorM: number; end: number }>> = {
  iron: { side: 0.001, floorM: 0.002 * IN, end: 0.015 },
  bronze: { side: 0.001, floorM: 0.002 * IN, end: 0.015 },
  ptfe: { side: 0.012, floorM: 0, end: 0.035 },
  carbon: { side: 0.001, floorM: 0, end: 0.015 },
}
export const RIDER_GROOVE_SOURCE = `${BH}, table 4-5 p. 275 (least values)`

/**
 * Least side clearance of a rider in its groove and least end clearance, metres (table 4-5, p. 275).
 * Refuses: a size missing or not above zero; a material not offered.
 *
 * @example PTFE band 2 in wide, 10 in bore: side 0.024 in, end 0.350 in
 */
export function riderGroove(input: {
  readonly boreM: number | null | undefined
  readonly widthM: number | null | undefined
  readonly material: RiderMaterial
}): Result<{ sideM: number; endM: number }> {
  const fault = refuseUnsound({ bore: input.boreM, 'width of the rider': input.widthM })
  if (fault !== null) return fault
  if (!RIDER_MATERIALS.includes(input.material)) return notOffered('rider material', RIDER_MATERIALS)
  const { side, floorM, end } = GROOVE[input.material]
  const sideM = Math.max(floorM, side * (input.widthM as number))
  const endM = end * (input.boreM as number)
  return refuseOverflow(sideM, endM) ?? ok({ sideM, endM })
}

function notOffered(what: string, offered: readonly string[]) {
  return refuse('not-offered', `There is no ${what} by that name: choose one of ${offered.join(', ')}.`)
}
