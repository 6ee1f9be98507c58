// Which of the sizes that can be had a worn bore can be cut to: large enough to clean up, small enough to be allowed.

import { ok, type Result, refuse } from '../lib/result.ts'
import { reboreRoom } from './bore-wear.ts'
import { refuseUnsound } from './sound.ts'

export interface OversizeInput {
  readonly nominalM: number | null | undefined
  /** Largest reading of the worn bore, metres. */
  readonly largestM: number | null | undefined
  /** Least cut on diameter beyond the largest reading that leaves no worn skin, metres; zero when the shop says so. */
  readonly cleanUpM: number | null | undefined
  /** What can be had over nominal, metres on diameter; each above zero. */
  readonly oversizesM: readonly number[]
  readonly counterboreM: number | null | undefined
  readonly maxBoreM?: number | null | undefined
}

export interface Oversize {
  readonly oversizeM: number
  readonly finishM: number
  /** Cut on diameter from the largest reading, metres. */
  readonly cutM: number
  /** What is left to the bound on diameter after the cut, metres. */
  readonly leftM: number
  readonly boundBy: 'counterbore' | 'greatest bore of the book'
}

/** Floating noise, metres. */
const NOISE_M = 1e-9

/**
 * The SMALLEST listed oversize whose finished bore is at least the largest reading plus the clean-up cut, and within
 * the counterbore or the greatest bore of the book. A bore is cut to size and honed last; a hone corrects no form.
 * Sources: Bloch & Hoefner 1996, p. 258-260 (bore first, hone last; the counterbore bounds a solid cylinder). That the
 * smallest size is taken, so that most metal is left for the next time: common practice, no source.
 * Refuses: a figure missing or unsound; no counterbore on record; none of the sizes fits (`no-oversize-fits`).
 *
 * @example nominal 9.500, largest 9.516, clean-up 0.004, sizes 0.010, 0.020, 0.030, counterbore 9.750: 0.020 in
 */
export function oversizeAvailable(input: OversizeInput): Result<Oversize> {
  const { nominalM, largestM, cleanUpM, oversizesM } = input
  const fault =
    refuseUnsound({ 'nominal bore': nominalM, 'largest reading': largestM }) ??
    refuseUnsound({ 'clean-up cut': cleanUpM }, 'zero or more') ??
    refuseUnsound(Object.fromEntries(oversizesM.map((size, i) => [`oversize number ${i + 1}`, size])))
  if (fault !== null) return fault
  if (oversizesM.length === 0)
    return refuse(
      'no-oversize-listed',
      'No oversize is listed: ask what sizes of piston and rings can be had.',
    )
  const room = reboreRoom({ ...input, largestM: largestM as number })
  if (!room.ok) return room
  const needM = (largestM as number) + (cleanUpM as number)
  const boundM = (largestM as number) + room.value.roomM
  const fits = [...oversizesM]
    .sort((a, b) => a - b)
    .map((oversizeM) => ({ oversizeM, finishM: (nominalM as number) + oversizeM }))
    .find(({ finishM }) => finishM >= needM - NOISE_M && finishM <= boundM + NOISE_M)
  if (fits === undefined)
    return refuse(
      'no-oversize-fits',
      `No size on the list both cleans up the bore and stays within the ${room.value.boundBy}: ask the lead about lining or renewing.`,
    )
  return ok({
    ...fits,
    cutM: fits.finishM - (largestM as number),
    leftM: Math.max(0, boundM - fits.finishM),
    boundBy: room.value.boundBy,
  })
}
