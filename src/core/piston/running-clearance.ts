// Clearance of a piston in its bore: what the published rules ask for, and what two measured sizes give.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { type BoreRow, rowFor } from '../rings/bore-table.ts'
import { PISTON_MATERIALS, type PistonMaterial } from '../rings/rider.ts'
import type { BandInput } from '../rings/ring-judge.ts'
import { judgeTwoSided, type TwoSidedJudgement } from '../rings/two-sided.ts'

const IN = 0.0254
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'

/** Per inch of bore: oil-lubricated cylinder, no rider band (p. 227 and 268). */
const WITHOUT_RIDER: Readonly<Record<PistonMaterial, number>> = { iron: 0.00125, aluminium: 0.003 }

/**
 * Table 4-3 p. 269: oil-free cylinder, or with rider bands. The lower edge of the first row is not legible in the copy
 * that was read, so that row is used only for a bore of 5 in whose row is named; smaller bores are refused.
 */
const WITH_RIDER: readonly BoreRow<number>[] = [
  { fromIn: 5, toIn: 5, value: 0.125 },
  { fromIn: 5, toIn: 8, value: 0.156 },
  { fromIn: 8, toIn: 12, value: 0.188 },
  { fromIn: 12, toIn: 16, value: 0.219 },
]

export const RUNNING_CLEARANCE_RULES = {
  'lubricated-no-rider': `${BH}, p. 227 and 268`,
  'rider-or-oil-free': `${BH}, table 4-3 p. 269`,
} as const
export type RunningClearanceRule = keyof typeof RUNNING_CLEARANCE_RULES

export interface RunningClearanceInput {
  readonly boreM: number | null | undefined
  readonly material: PistonMaterial
  readonly rule: RunningClearanceRule
  /** Which row, for a bore on an edge that two rows of table 4-3 share. */
  readonly onEdge?: 'row-below' | 'row-above' | undefined
}

/**
 * Clearance on diameter, metres. Without a rider: 0.00125 x bore for iron, 0.003 x bore for aluminium, cylinder
 * lubricated. With a rider or oil-free: table 4-3, whatever the material. A row must be named on a shared edge.
 * Refuses: a bore missing, not above zero, below 5 in or above 16 in (table); an edge with no row named.
 *
 * @example 20 in, lubricated, no rider: iron 0.025 in, aluminium 0.060 in; 10 in with rider: 0.188 in
 */
export function runningClearance(
  input: RunningClearanceInput,
): Result<{ clearanceM: number; source: string }> {
  const { boreM, material, rule } = input
  const fault = refuseUnsound({ bore: boreM })
  if (fault !== null) return fault
  const source = Object.hasOwn(RUNNING_CLEARANCE_RULES, rule) ? RUNNING_CLEARANCE_RULES[rule] : ''
  if (rule === 'lubricated-no-rider') {
    if (!PISTON_MATERIALS.includes(material)) return notOffered('piston material', PISTON_MATERIALS)
    const clearanceM = WITHOUT_RIDER[material] * (boreM as number)
    return refuseOverflow(clearanceM) ?? ok({ clearanceM, source })
  }
  if (rule !== 'rider-or-oil-free') return notOffered('clearance rule', Object.keys(RUNNING_CLEARANCE_RULES))
  const row = tableRow(boreM as number, input.onEdge)
  return row.ok ? ok({ clearanceM: row.value.value * IN, source }) : row
}

function tableRow(boreM: number, onEdge: RunningClearanceInput['onEdge']): Result<BoreRow<number>> {
  const row = rowFor(boreM, WITH_RIDER, 'table 4-3')
  if (row.ok || row.error.code !== 'bore-on-edge' || onEdge === undefined) return row
  const isEdge = (edgeIn: number) => Math.abs(boreM / IN - edgeIn) < 1e-6
  const named = WITH_RIDER.find(({ fromIn, toIn }) =>
    onEdge === 'row-below' ? isEdge(toIn) : isEdge(fromIn ?? 0) && toIn !== fromIn,
  )
  return named === undefined ? row : ok(named)
}

function notOffered(what: string, offered: readonly string[]) {
  return refuse('not-offered', `There is no ${what} by that name: choose one of ${offered.join(', ')}.`)
}

/**
 * Measured clearance = smallest bore less largest piston, metres on diameter, both reduced to 20 C.
 * Source: definition. Refuses: a size missing or not above zero; a piston larger than the bore (one size is wrong).
 *
 * @example bore 9.502 in, piston 9.490 in: 0.012 in
 */
export function measuredClearance(sizes: {
  readonly smallestBoreM: number | null | undefined
  readonly largestPistonM: number | null | undefined
}): Result<number> {
  const { smallestBoreM, largestPistonM } = sizes
  const fault = refuseUnsound({ 'smallest bore': smallestBoreM, 'largest piston size': largestPistonM })
  if (fault !== null) return fault
  const clearanceM = (smallestBoreM as number) - (largestPistonM as number)
  if (clearanceM < -1e-9)
    return refuse('piston-larger-than-bore', 'The piston measures larger than the bore: measure both again.')
  return ok(Math.max(0, clearanceM))
}

/** Clearance judged on both sides: a piston that is too tight seizes, one that is too loose lets metal touch. */
export function judgePistonClearance(input: BandInput): TwoSidedJudgement {
  return judgeTwoSided({
    ...input,
    characteristic: 'piston-clearance',
    tooSmall: 'the piston is too tight in the bore: it will seize when it grows hot',
    tooLarge: 'the piston is too loose in the bore: it can knock and rest on metal',
  })
}
