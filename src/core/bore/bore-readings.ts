// The readings of one bore laid out by station and axis. A bore that is not whole is refused, never filled in.

import { ok, type Result, refuse } from '../lib/result.ts'

/** One combined reading (not one repeat), reduced to 20 C. */
export interface BoreReading {
  readonly station: string
  /** Distance of the station along the bore, metres, all from the same end. */
  readonly at: number
  readonly axis: string
  readonly valueM: number
  /** Expanded uncertainty of this one, metres, where it is not the one that counts for all. */
  readonly expandedU?: number | undefined
}

/** A place in the bore. */
export interface Place {
  readonly station: string
  readonly axis: string
}

export interface Station {
  readonly station: string
  readonly at: number
}

export interface BoreGrid {
  /** In order along the bore. */
  readonly stations: readonly Station[]
  /** In the order they were first read. */
  readonly axes: readonly string[]
  readonly readings: readonly BoreReading[]
}

/**
 * Checks that every station has every axis exactly once.
 * Refuses: a size or distance that is not sound; a place read twice; one station at two distances or two stations at
 * one; fewer than two stations or two axes; a place missing (code `bore-incomplete`, the places named).
 */
export function boreGrid(readings: readonly BoreReading[]): Result<BoreGrid> {
  const distances = new Map<string, number>()
  const axes = new Set<string>()
  const places = new Set<string>()
  for (const reading of readings) {
    const { station, axis, at, valueM } = reading
    const place = placeKey(reading)
    if (!(Number.isFinite(valueM) && valueM > 0))
      return refuse(
        'bore-size-unsound',
        `The reading at ${station}, ${axis} is not a size above zero: read it again.`,
      )
    if (!Number.isFinite(at))
      return refuse('bore-station-unsound', `Station ${station} has no distance along the bore: add it.`)
    if (places.has(place))
      return refuse('bore-place-twice', `Station ${station}, ${axis} is there twice: say which one stands.`)
    if ((distances.get(station) ?? at) !== at)
      return refuse(
        'bore-station-moved',
        `Station ${station} is given at two distances: say which one is right.`,
      )
    places.add(place)
    axes.add(axis)
    distances.set(station, at)
  }
  return whole(readings, distances, [...axes], places)
}

function whole(
  readings: readonly BoreReading[],
  distances: ReadonlyMap<string, number>,
  axes: readonly string[],
  places: ReadonlySet<string>,
): Result<BoreGrid> {
  const stations = [...distances].map(([station, at]) => ({ station, at })).sort((a, b) => a.at - b.at)
  if (stations.length < 2 || axes.length < 2)
    return refuse(
      'bore-too-few',
      'A bore needs readings at two stations and on two axes at the least: read the rest.',
    )
  if (new Set(distances.values()).size < stations.length)
    return refuse(
      'bore-stations-together',
      'Two stations are given at one distance along the bore: correct one.',
    )
  const missing = stations.flatMap(({ station }) =>
    axes.filter((axis) => !places.has(placeKey({ station, axis }))).map((axis) => `${station}, ${axis}`),
  )
  if (missing.length > 0)
    return refuse('bore-incomplete', `Not every station has every axis, missing: ${missing.join('; ')}.`)
  return ok({ stations, axes, readings })
}

function placeKey({ station, axis }: Place): string {
  return JSON.stringify([station, axis])
}

/** The reading at a place that boreGrid found to be there. */
export function readingAt(grid: BoreGrid, station: string, axis: string): BoreReading {
  const found = grid.readings.find((reading) => reading.station === station && reading.axis === axis)
  if (found === undefined) throw new Error(`no reading at ${station}, ${axis} in a grid that is whole`)
  return found
}

/** The greatest and the least of some readings; the first in order where several tie. */
export function extremes(readings: readonly BoreReading[]): { most: BoreReading; least: BoreReading } {
  const [first, ...rest] = readings
  if (first === undefined) throw new Error('extremes of no readings')
  let most = first
  let least = first
  for (const reading of rest) {
    if (reading.valueM > most.valueM) most = reading
    if (reading.valueM < least.valueM) least = reading
  }
  return { most, least }
}

/** The errors that count for every reading that carries none of its own, metres; missing where none is stated. */
export interface CommonU {
  readonly readingU?: number | null | undefined
  readonly differenceU?: number | null | undefined
}

/** U of the difference of two readings: the common one, or of their own two, root sum of squares (JCGM 100:2008 5.1.2). */
export function differenceUOf(a: BoreReading, b: BoreReading, common: CommonU): number | null | undefined {
  if (a.expandedU === undefined && b.expandedU === undefined) return common.differenceU
  const [uA, uB] = [a.expandedU ?? common.readingU, b.expandedU ?? common.readingU]
  return typeof uA === 'number' && typeof uB === 'number' ? Math.hypot(uA, uB) : null
}
