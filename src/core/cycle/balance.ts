// Balances the gas through all stages: with the first suction and last discharge pressure held by the plant, finds the
// pressures between stages at which each stage passes on just what the next one draws.
import { ok, type Result, refuse } from '../lib/result.ts'
import { fallingRoot } from './falling-root.ts'
import { GREATEST_RATIO } from './guard.ts'

export interface BalanceStage {
  /** mol/s drawn at this suction pressure (Pa) and this ratio; falls as the ratio rises, never below 0. */
  readonly draws: (suctionPa: number, ratio: number) => number
}

export interface BalanceGap {
  readonly drop: number
  readonly passedOn: number
}

export interface StagePressures {
  readonly suctionPa: number
  readonly dischargePa: number
  readonly ratio: number
  readonly molPerS: number
}

/**
 * Two nested searches. For a trial flow, each stage's ratio follows from what it must draw, and with it
 * the next suction; the last discharge so found falls as the trial flow rises, so one flow fits the plant's pressure.
 * Both searches cannot miss: the functions only ever fall.
 * Source: continuity of mass; the search closes a bracket (falling-root.ts).
 * Refuses: `no-flow` where even next to no flow does not reach the discharge pressure; `no-balance` where the
 * stages can
 * only pass the gas if one of them does not raise its pressure.
 */
export function balance(
  stages: readonly BalanceStage[],
  gaps: readonly BalanceGap[],
  suctionPa: number,
  dischargePa: number,
): Result<readonly StagePressures[]> {
  const only = stages.length === 1 ? stages[0] : undefined
  if (only !== undefined) return single(only, suctionPa, dischargePa)
  const first = stages[0]
  if (first === undefined) return refuse('no-stage', 'There is no stage to balance.')
  const most = first.draws(suctionPa, 1)
  // More than any stage can draw counts as reaching no pressure at all.
  const over = (molPerS: number) => {
    const reached = through(stages, gaps, suctionPa, molPerS)
    return (reached === null ? 0 : last(reached).dischargePa) - dischargePa
  }
  if (!(over(0) >= 0)) return noFlow()
  if (!(over(most) < 0))
    return refuse('no-balance', 'The discharge pressure is not above what the stages reach of themselves.')
  const { low } = fallingRoot(over, 0, most)
  return settled(through(stages, gaps, suctionPa, low), dischargePa, low)
}

function single(
  stage: BalanceStage,
  suctionPa: number,
  dischargePa: number,
): Result<readonly StagePressures[]> {
  const ratio = dischargePa / suctionPa
  if (!(ratio >= 1 && ratio <= GREATEST_RATIO))
    return refuse('no-balance', 'The stage would not raise the pressure, or by more than 50 times.')
  const molPerS = stage.draws(suctionPa, ratio)
  if (!(molPerS > 0)) return noFlow()
  return ok([{ suctionPa, dischargePa, ratio, molPerS }])
}

function noFlow() {
  return refuse('no-flow', 'At these pressures and this clearance the machine draws no gas.')
}

function settled(
  found: readonly StagePressures[] | null,
  dischargePa: number,
  molPerS: number,
): Result<readonly StagePressures[]> {
  if (found === null || !(molPerS > 0)) return noFlow()
  // The halving stops at a step where a stage runs out of ratio rather than where the pressures meet.
  if (Math.abs(last(found).dischargePa / dischargePa - 1) > 1e-6)
    return refuse(
      'no-balance',
      'The stages only balance if one of them does not raise its pressure: check the record.',
    )
  return ok(found)
}

function last(found: readonly StagePressures[]): StagePressures {
  const end = found.at(-1)
  if (end === undefined) throw new Error('a balance of no stages')
  return end
}

/** Every stage's pressures at this flow into the first, or null where a stage cannot draw that much. */
function through(
  stages: readonly BalanceStage[],
  gaps: readonly BalanceGap[],
  suctionPa: number,
  intoFirst: number,
): readonly StagePressures[] | null {
  const found: StagePressures[] = []
  let suction = suctionPa
  let molPerS = intoFirst
  for (const [i, stage] of stages.entries()) {
    const ratio = ratioFor(stage, suction, molPerS)
    if (ratio === null) return null
    found.push({ suctionPa: suction, dischargePa: suction * ratio, ratio, molPerS })
    const gap = gaps[i]
    suction *= ratio * (1 - (gap?.drop ?? 0))
    molPerS *= gap?.passedOn ?? 1
  }
  return found
}

/** The ratio at which a stage draws `molPerS`; the greatest one allowed if it would draw more even there. */
function ratioFor(stage: BalanceStage, suctionPa: number, molPerS: number): number | null {
  if (stage.draws(suctionPa, 1) < molPerS) return null
  const spare = (ratio: number) => stage.draws(suctionPa, ratio) - molPerS
  return spare(GREATEST_RATIO) >= 0 ? GREATEST_RATIO : fallingRoot(spare, 1, GREATEST_RATIO).low
}
