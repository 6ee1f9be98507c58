// The readings of a bore profile in order along the bore: the figure to write, and whole steps above the smallest.
import { formatNumber } from '../units/index.ts'
import type { DrawnStation } from './types.ts'
import { plain } from './words.ts'

export interface ProfileRow {
  readonly axisLabel: string
  readonly values: readonly (number | undefined)[]
  /** What is written for a place without a reading that none is to come of. */
  readonly instead?: readonly (string | undefined)[]
}

/** No reading yet. */
export const NO_READING = '-'

export interface Cells {
  /** Station names from the head end to the crank end. */
  readonly stations: readonly string[]
  readonly rows: readonly {
    readonly label: string
    /** The reading at its resolution, or what stands in its place. */
    readonly figures: readonly string[]
    /** Units of the last decimal above the smallest reading of all rows; undefined where there is no reading. */
    readonly steps: readonly (number | undefined)[]
  }[]
  /** Largest number of steps; 0 when all readings are equal. */
  readonly spread: number
  /** The smallest reading and one unit of the last decimal, as written; empty when there is no reading. */
  readonly smallest: string
  readonly step: string
  readonly unit: string
}

/**
 * Steps are differences of the readings as written, so that two figures that read alike are never drawn apart. A reading
 * that is not finite counts as none. Stations in the counterbore are left out: it is larger by design, not worn.
 */
export function profileCells(profile: {
  readonly stations: readonly DrawnStation[]
  readonly rows: readonly ProfileRow[]
  readonly unit: string
  readonly decimals: number
}): Cells {
  const { decimals } = profile
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 10) throw new Error(`${decimals} decimals`)
  const order = profile.stations
    .map((station, index) => ({ index, at: station.at, apart: station.inCounterbore === true }))
    .filter((place) => !place.apart)
    .sort((a, b) => a.at - b.at || a.index - b.index)
  const written = (value: number): string => formatNumber(value, decimals)
  const whole = (value: number | undefined): number | undefined => {
    if (value === undefined || !Number.isFinite(value)) return undefined
    const steps = Math.round(Number(written(value)) * 10 ** decimals)
    return Number.isSafeInteger(steps) ? steps : undefined
  }
  const counted = profile.rows.map((row) => order.map(({ index }) => whole(row.values[index])))
  const have = counted.flat().filter((one): one is number => one !== undefined)
  const smallest = Math.min(...have)
  return {
    stations: order.map(({ index }) => plain(profile.stations[index]?.label ?? '')),
    rows: profile.rows.map((row, r) => ({
      label: plain(row.axisLabel),
      figures: order.map(({ index }, i) =>
        counted[r]?.[i] === undefined
          ? plain(row.instead?.[index] ?? NO_READING)
          : written(row.values[index] as number),
      ),
      steps: (counted[r] ?? []).map((one) => (one === undefined ? undefined : one - smallest)),
    })),
    spread: have.length === 0 ? 0 : Math.max(...have) - smallest,
    smallest: have.length === 0 ? '' : written(smallest / 10 ** decimals),
    step: formatNumber(10 ** -decimals, decimals),
    unit: plain(profile.unit),
  }
}
