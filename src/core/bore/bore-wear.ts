// How much the bore has grown, and how much room is left to bore it out. The counterbore is never a datum here.

import { ok, type Result, refuse } from '../lib/result.ts'
import type { BoreForm } from './bore-form.ts'
import type { BoreReading, Place } from './bore-readings.ts'

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
  /** Sizes by place, as an overhaul left them: each place is told from its own. */
  readonly byPlace?: readonly DatumSize[] | undefined
  /** Expanded uncertainty of the sizes by axis or of the single one, metres; left out where none is stated. */
  readonly expandedU?: number | undefined
  /** The day it is of, YYYY-MM-DD, and the record it stands in. */
  readonly since?: string | undefined
  readonly source?: string | undefined
}

export interface DatumSize extends Place {
  readonly valueM: number
  readonly expandedU?: number | undefined
}

export interface AxisWear {
  readonly axis: string
  /** Largest reading on the axis less the datum, metres, signed; null when there is nothing to take it from. */
  readonly wearM: number | null
  readonly station: string | null
  /** Why there is no figure. */
  readonly why: string | null
  /** U of the wear, metres: of its own two sizes. Left out where either has none stated. */
  readonly expandedU?: number
}

export interface WearFromDatum {
  readonly from: BoreDatum['from'] | null
  readonly since?: string
  readonly source?: string
  readonly perAxis: readonly AxisWear[]
}

/** Largest reading less nominal, metres, signed. @throws when either is not finite: both are checked before. */
export function wearFromNominal(form: BoreForm, nominalM: number): number {
  const wear = form.largest.valueM - nominalM
  if (!Number.isFinite(wear)) throw new Error('wear from nominal needs two finite sizes')
  return wear
}

/** What else is known of readings and datum: the U of a reading, and why there is no datum. */
export interface WearAbout {
  readonly readingU?: number | null | undefined
  readonly noDatum?: string | null | undefined
}

/**
 * Wear on each axis from the datum of the same place, of the same axis, or from its single size: the greatest on the axis. Without
 * a datum: null and why.
 */
export function wearFromDatum(
  readings: readonly BoreReading[],
  axes: readonly string[],
  datum: BoreDatum | null | undefined,
  about: WearAbout = {},
): WearFromDatum {
  return {
    from: datum?.from ?? null,
    ...(datum?.since === undefined ? {} : { since: datum.since }),
    ...(datum?.source === undefined ? {} : { source: datum.source }),
    perAxis: axes.map((axis) => axisWear(readings, axis, datum, about)),
  }
}

function axisWear(
  readings: readonly BoreReading[],
  axis: string,
  datum: BoreDatum | null | undefined,
  { readingU, noDatum }: WearAbout,
): AxisWear {
  const none = (why: string): AxisWear => ({ axis, wearM: null, station: null, why })
  if (datum === null || datum === undefined)
    return none(noDatum ?? 'no unswept strip was read and no size as bored is on record')
  if (!DATUMS.includes(datum.from)) return none('the datum named is not one that wear may be measured from')
  const onAxis = readings.filter((reading) => reading.axis === axis)
  const sizes = onAxis.map((reading) => sizeFor(datum, reading))
  if (sizeFor(datum, { station: '', axis }) === null && (sizes.length === 0 || sizes.includes(null)))
    return none(`the ${datum.from} has no size for ${axis}`)
  if (!sizes.every((size) => size === null || (Number.isFinite(size.valueM) && size.valueM > 0)))
    return none(`the ${datum.from} size for ${axis} is not a size above zero`)
  if (onAxis.length === 0 || !onAxis.every(({ valueM }) => Number.isFinite(valueM)))
    return none(`no sound reading on ${axis}`)
  const worn = onAxis.flatMap((reading, n) => {
    const size = sizes[n] ?? null
    return size === null ? [] : [{ reading, size, wearM: reading.valueM - size.valueM }]
  })
  const [first, ...rest] = worn
  if (first === undefined) return none(`the ${datum.from} has no size for ${axis}`)
  const most = rest.reduce((greatest, one) => (one.wearM > greatest.wearM ? one : greatest), first)
  const own = most.reading.expandedU ?? readingU
  const u = most.size.expandedU
  return {
    axis,
    wearM: most.wearM,
    station: most.reading.station,
    why: null,
    ...(typeof own === 'number' && u !== undefined ? { expandedU: Math.hypot(own, u) } : {}),
  }
}

/** The size that a place is told from; null where the datum has none for it. */
function sizeFor(datum: BoreDatum, { station, axis }: Place): Pick<DatumSize, 'valueM' | 'expandedU'> | null {
  const { byPlace, byAxisM, singleM, expandedU } = datum
  if (byPlace !== undefined)
    return byPlace.find((one) => one.station === station && one.axis === axis) ?? null
  const valueM = byAxisM !== undefined && Object.hasOwn(byAxisM, axis) ? byAxisM[axis] : singleM
  return valueM === undefined ? null : { valueM, expandedU }
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
