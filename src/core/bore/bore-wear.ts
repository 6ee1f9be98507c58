// How much the bore has grown, and how much room is left to bore it out. The counterbore is never a datum here.

import { ok, type Result, refuse } from '../lib/result.ts'
import type { BoreForm } from './bore-form.ts'
import type { BoreReading } from './bore-readings.ts'

const DATUMS = ['unswept strip', 'as-bored record', 'as-left record'] as const

/**
 * What wear is measured from: a strip at bore diameter that no ring sweeps, or a record of the bore as it was left.
 * A counterbore is larger by design, so a wear figure from it would be too small: it cannot be named here.
 */
export interface BoreDatum {
  readonly from: (typeof DATUMS)[number]
  /** Size on each axis, metres, where the datum was read by axis. */
  readonly byAxisM?: Readonly<Record<string, number>> | undefined
  /** One size for every axis, metres. */
  readonly singleM?: number | undefined
}

export interface AxisWear {
  readonly axis: string
  /** Largest reading on the axis less the datum, metres, signed; null when there is nothing to take it from. */
  readonly wearM: number | null
  readonly station: string | null
  /** Why there is no figure. */
  readonly why: string | null
}

export interface WearFromDatum {
  readonly from: BoreDatum['from'] | null
  readonly perAxis: readonly AxisWear[]
}

/** Largest reading less nominal, metres, signed. @throws when either is not finite: both are checked before. */
export function wearFromNominal(form: BoreForm, nominalM: number): number {
  const wear = form.largest.valueM - nominalM
  if (!Number.isFinite(wear)) throw new Error('wear from nominal needs two finite sizes')
  return wear
}

/** Wear on each axis from the datum of the same axis, or from its single size. Without a datum: null and why. */
export function wearFromDatum(
  readings: readonly BoreReading[],
  axes: readonly string[],
  datum: BoreDatum | null | undefined,
): WearFromDatum {
  return { from: datum?.from ?? null, perAxis: axes.map((axis) => axisWear(readings, axis, datum)) }
}

function axisWear(
  readings: readonly BoreReading[],
  axis: string,
  datum: BoreDatum | null | undefined,
): AxisWear {
  const none = (why: string): AxisWear => ({ axis, wearM: null, station: null, why })
  if (datum === null || datum === undefined)
    return none('no unswept strip was read and no size as bored is on record')
  if (!DATUMS.includes(datum.from)) return none('the datum named is not one that wear may be measured from')
  const { byAxisM, singleM } = datum
  const size = byAxisM !== undefined && Object.hasOwn(byAxisM, axis) ? byAxisM[axis] : singleM
  if (size === undefined) return none(`the ${datum.from} has no size for ${axis}`)
  if (!(Number.isFinite(size) && size > 0))
    return none(`the ${datum.from} size for ${axis} is not a size above zero`)
  const onAxis = readings.filter((reading) => reading.axis === axis)
  const [first, ...rest] = onAxis
  if (first === undefined || !onAxis.every(({ valueM }) => Number.isFinite(valueM)))
    return none(`no sound reading on ${axis}`)
  const largest = rest.reduce((most, reading) => (reading.valueM > most.valueM ? reading : most), first)
  return { axis, wearM: largest.valueM - size, station: largest.station, why: null }
}

export interface ReboreRoom {
  /** What is left on diameter to the bound, metres; zero when the bore is there already. */
  readonly roomM: number
  readonly boundBy: 'counterbore' | 'greatest bore of the book'
}

/**
 * Room on diameter for boring out: up to the counterbore, or to the greatest bore the machine's book allows when that
 * is less. Bloch & Hoefner 1996, p. 260: in a solid cylinder the counterbore is what normally limits it.
 * Refuses: sizes that are not sound; a counterbore smaller than the bore (one of the two is wrong).
 */
export function reboreRoom(sizes: {
  readonly largestM: number
  readonly counterboreM: number | null | undefined
  readonly maxBoreM?: number | null | undefined
}): Result<ReboreRoom> {
  const { largestM, counterboreM, maxBoreM } = sizes
  if (counterboreM === null || counterboreM === undefined)
    return refuse(
      'counterbore-unknown',
      'The counterbore is not on record: read it before speaking of boring out.',
    )
  const given = [largestM, counterboreM, ...(maxBoreM === null || maxBoreM === undefined ? [] : [maxBoreM])]
  if (!given.every((size) => Number.isFinite(size) && size > 0))
    return refuse('rebore-size-unsound', 'A size that bounds boring out is not above zero: correct it.')
  if (counterboreM < largestM)
    return refuse('counterbore-below-bore', 'The counterbore is smaller than the bore: read both again.')
  if (maxBoreM !== null && maxBoreM !== undefined && maxBoreM < counterboreM)
    return ok({ roomM: Math.max(0, maxBoreM - largestM), boundBy: 'greatest bore of the book' })
  return ok({ roomM: counterboreM - largestM, boundBy: 'counterbore' })
}
