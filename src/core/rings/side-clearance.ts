// Side clearance of a ring in its groove by the published rules, each under its own name.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { RingMaterial } from './end-gap.ts'

const IN = 0.0254
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

interface SideRule {
  /** Least and greatest clearance over ring width; one figure where the book gives one. */
  readonly ratio: Readonly<Partial<Record<RingMaterial, readonly [number, number]>>>
  /** Never below this, metres. */
  readonly floorM: Readonly<Partial<Record<RingMaterial, number>>>
  readonly kind: 'average' | 'minimum' | 'nominal'
  readonly source: string
}

const FLOOR = 0.002 * IN

export const SIDE_CLEARANCE_RULES = {
  'handbook-p228': {
    ratio: {
      'cast-iron': [0.003, 0.004],
      carbon: [0.003, 0.003],
      bronze: [0.004, 0.004],
      ptfe: [0.01, 0.01],
      phenolic: [0.015, 0.015],
    },
    floorM: {},
    kind: 'average',
    source: `${BH}, p. 228`,
  },
  'handbook-table-4-4': {
    ratio: {
      'cast-iron': [0.006, 0.006],
      bronze: [0.006, 0.006],
      carbon: [0.006, 0.006],
      ptfe: [0.018, 0.018],
    },
    floorM: { 'cast-iron': FLOOR, bronze: FLOOR, carbon: FLOOR },
    kind: 'minimum',
    source: `${BH}, table 4-4 p. 272`,
  },
  'tribology-t17-8': {
    ratio: { ptfe: [0.025, 0.025], phenolic: [0.025, 0.025] },
    floorM: {},
    kind: 'nominal',
    source:
      'The Tribology Handbook (M. J. Neale, 2nd ed. 1995; editor and edition from memory), table 17.8: non-metallic rings, groove H7',
  },
} as const satisfies Record<string, SideRule>
export type SideRuleName = keyof typeof SIDE_CLEARANCE_RULES

/**
 * Side clearance = ratio x axial width of the ring, metres, not below the floor the book prints with it.
 * The go and no-go of a US Navy manual (set 14075, ch. 7), that a ring falls into its groove by its own weight, is a
 * check of the fit and not of a size.
 * Refuses: a width not above zero; a rule not offered; a material the rule has no figure for.
 *
 * @example cast iron 0.25 in wide, table 4-4: 0.0015 in, so the floor of 0.002 in
 */
export function sideClearance(input: {
  readonly widthM: number | null | undefined
  readonly material: RingMaterial
  readonly rule: SideRuleName
}): Result<{ leastM: number; mostM: number; kind: SideRule['kind']; isFloor: boolean; source: string }> {
  const fault = refuseUnsound({ 'width of the ring': input.widthM })
  if (fault !== null) return fault
  if (!Object.hasOwn(SIDE_CLEARANCE_RULES, input.rule))
    return refuse(
      'not-offered',
      `There is no side clearance rule by that name: choose one of ${Object.keys(SIDE_CLEARANCE_RULES).join(', ')}.`,
    )
  const rule: SideRule = SIDE_CLEARANCE_RULES[input.rule]
  const ratio = Object.hasOwn(rule.ratio, input.material) ? rule.ratio[input.material] : undefined
  if (ratio === undefined)
    return refuse(
      'material-not-in-rule',
      `This rule has no figure for ${input.material}: use the ring maker's.`,
    )
  const floorM = rule.floorM[input.material] ?? 0
  const [leastM, mostM] = ratio.map((part) => Math.max(floorM, part * (input.widthM as number)))
  if (leastM === undefined || mostM === undefined) throw new Error('a side rule has two figures')
  const isFloor = ratio[0] * (input.widthM as number) < floorM
  return refuseOverflow(mostM) ?? ok({ leastM, mostM, kind: rule.kind, isFloor, source: rule.source })
}
