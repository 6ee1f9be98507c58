// In what order the nuts of a round cover are tightened, and with what torque on each pass.

import { refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

export interface Pass {
  /** Share of the whole torque. */
  readonly share: number
  readonly torqueNm: number
  /** Numbers of the nuts, counted round the cover from 1, in the order they are tightened. */
  readonly order: readonly number[]
  readonly pattern: 'cross' | 'round'
}

/** Common practice, no source: a cross in three passes of 30, 60 and 100 %, then once round at full torque. */
export const USUAL_SHARES = [0.3, 0.6, 1] as const

/**
 * The passes of a cover: the cross order at each share, then one round at the full torque until no nut turns.
 * Common practice, no source; the machine's own book comes first.
 * Refuses: a torque not above zero; fewer than 3 or more than 200 nuts, or not whole; shares that do not rise to 1.
 *
 * @example 8 nuts: 1 5 3 7 2 6 4 8 at 30, 60 and 100 %, then 1 to 8
 */
export function tighteningPasses(input: {
  readonly nuts: number
  readonly torqueNm: number | null | undefined
  readonly shares?: readonly number[] | undefined
}): Result<readonly Pass[]> {
  const { nuts, torqueNm, shares = USUAL_SHARES } = input
  const fault = refuseUnsound({ torque: torqueNm })
  if (fault !== null) return fault
  if (!Number.isInteger(nuts) || nuts < 3 || nuts > 200)
    return refuse('nuts-uncounted', 'The count of nuts is not a whole number from 3 to 200: count them.')
  const rises = shares.every((share, i) => share > (i === 0 ? 0 : (shares[i - 1] as number)))
  if (!rises || shares[shares.length - 1] !== 1)
    return refuse('shares-do-not-rise', 'The shares must rise and end at the whole torque: correct them.')
  const cross = crossOrder(nuts)
  const round = Array.from({ length: nuts }, (_, i) => i + 1)
  const full = torqueNm as number
  return ok([
    ...shares.map((share): Pass => ({ share, torqueNm: share * full, order: cross, pattern: 'cross' })),
    { share: 1, torqueNm: full, order: round, pattern: 'round' },
  ])
}

/**
 * Cross order: even counts by opposite pairs, a quarter turned from pair to pair where the count allows; odd counts by
 * steps of just under half way round, so that each nut comes once. Common practice, no source.
 */
function crossOrder(nuts: number): number[] {
  if (nuts % 2 === 1) return Array.from({ length: nuts }, (_, i) => ((i * ((nuts - 1) / 2)) % nuts) + 1)
  const half = nuts / 2
  const isByFour = nuts % 4 === 0
  const starts = spread(isByFour ? nuts / 4 : half)
  return starts.flatMap((at) => {
    const pair = [at, at + half]
    return isByFour ? [...pair, at + half / 2, at + half + half / 2] : pair
  })
}

/** 1 to n, odd ones first, so that neighbours do not follow one another. */
function spread(n: number): number[] {
  const all = Array.from({ length: n }, (_, i) => i + 1)
  return [...all.filter((at) => at % 2 === 1), ...all.filter((at) => at % 2 === 0)]
}
