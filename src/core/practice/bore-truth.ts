// How large a hidden bore is at a place, and what it is to be judged as: by the function that judges every real one.
import { type BoreVerdict, judgeBore } from '../bore/bore-judge.ts'
import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import type { BoreReading } from '../bore/bore-readings.ts'
import type { Limit } from '../metrology/limit.ts'
import { expandedOfDifference } from '../metrology/uncertainty.ts'
import type { BoreTruth } from './machine.ts'

export interface BorePlace {
  readonly station: string
  /** Share of ring travel from its head end: 0 to 1 within it. */
  readonly at: number
  readonly inCounterbore: boolean
  readonly axis: string
  /** Clock positions of the two ends of the axis, seen from the head end. */
  readonly from: number
  readonly to: number
}

/**
 * Diameter at 20 degC, metres: as made, and both walls' wear. Where no ring runs nothing is worn, but where the strip is gone. One
 * side's wear falls off with the square of the cosine of the angle from that side, and is gone at a right angle to it (invented for
 * practice, after the crescent that a heavy piston wears into the bottom).
 */
export function diameterAt(bore: BoreTruth, place: BorePlace): number {
  if (place.inCounterbore) return bore.counterboreM
  if (!isSwept(bore, place.at)) return bore.madeM
  const s = Math.min(1, Math.max(0, place.at))
  const middle = 1 - (2 * s - 1) ** 2
  const round =
    bore.evenM + bore.middleM * middle + bore.endsM * (1 - middle) + bore.headM * (1 - s) + bore.crankM * s
  const walls = [place.from, place.to].map(
    (clock) =>
      bore.bottomM * facing(clock, 6) + bore.topM * facing(clock, 12) + bore.sideM * facing(clock, 3),
  )
  return bore.madeM + round + walls.reduce((sum, wall) => sum + wall, 0)
}

/** The rings run here: within their travel, and past an end of it where no strip is left. */
function isSwept({ strip }: BoreTruth, at: number): boolean {
  if (at < 0) return strip !== 'head end'
  return at <= 1 || strip === 'gone'
}

/** 1 where a clock position faces another, 0 from a right angle to it on. */
function facing(clock: number, towards: number): number {
  const cosine = Math.cos(((clock - towards) * Math.PI) / 6)
  return cosine > 0 ? cosine ** 2 : 0
}

export function trueReadings(bore: BoreTruth, places: readonly BorePlace[]): BoreReading[] {
  return places.map((place) => ({
    station: place.station,
    at: place.at,
    axis: place.axis,
    valueM: diameterAt(bore, place),
  }))
}

/** What a bore is judged with while a machine is made: nobody has measured it yet. */
export interface BoreJudging {
  readonly nominalM: number
  readonly places: readonly BorePlace[]
  readonly limits: Readonly<Partial<Record<BoreCharacteristic, Limit>>>
  /** Expanded uncertainty of one reading, k = 2, metres. */
  readonly readingU: number
  readonly resolutionM: number
  readonly lined: boolean
}

/** The verdict on a bore as it is in truth, were it measured with that uncertainty and without any error. */
export function verdictOfTruth(bore: BoreTruth, judging: BoreJudging): BoreVerdict {
  const { nominalM, places, limits, readingU, resolutionM, lined } = judging
  return judgeBore({
    readings: trueReadings(bore, places),
    missing: [],
    nominalM,
    limits,
    readingU,
    differenceU: expandedOfDifference(readingU),
    k: 2,
    resolutionM,
    counterboreM: bore.counterboreM,
    lined,
    setCheck: { before: SOUND_CHECK, after: SOUND_CHECK },
    temperaturesKnown: true,
  })
}

const SOUND_CHECK = { deviationM: 0, allowedM: 1e-6 }

/** The least of the limits on differences of diameters, metres. */
export function tightestOf({ limits, nominalM }: BoreJudging): number {
  const all = [limits['out-of-round'], limits.taper, limits.spread].flatMap((limit) => limit?.value ?? [])
  return all.length === 0 ? nominalM * 0.0005 : Math.min(...all)
}
