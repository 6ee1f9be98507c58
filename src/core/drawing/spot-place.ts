// One place on a part, large, with the places of the step listed next to it: which is measured now, and what the others came to.

import { beside, canvas, drawing, INSTRUMENT } from './canvas.ts'
import { hereIn, inWords } from './here.ts'
import { markOf } from './marks.ts'
import { SPOT_ART, type SpotArt } from './spot-art.ts'
import { inSigns } from './twin.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'
import { plain, wrap } from './words.ts'

export type SpotKind = keyof typeof SPOT_ART

export interface SpotPlace {
  readonly kind: SpotKind
  readonly stations: readonly DrawnStation[]
  /** Id of the station being measured. */
  readonly here: string
}

const GAP = 2
/** Narrower than this the list would stand in crumbs. */
const LEAST_LIST = 12
const MOST_WIDTH = 66

/** Kinds with a second place, which is where stations past half-way go. */
export function hasTwoSpots(kind: SpotKind): boolean {
  return SPOT_ART[kind].marks.some((line) => line.includes('2'))
}

/**
 * The picture with the list to its right, or under it where it is narrow. Where the list has too few lines, the station
 * being measured stays on it and the rest is counted. With no room for the picture and one line of the list: one line of
 * words instead. Throws when no station has the id `here`, which is a bug of the caller.
 */
export function drawSpot(place: SpotPlace, options: DrawOptions): Drawing {
  const { here, current } = hereIn(place.stations, place.here)
  const width = Math.min(MOST_WIDTH, Math.max(0, Math.floor(options.width)))
  const height = options.height ?? Number.POSITIVE_INFINITY
  const picture = drawing(inSigns(withMarks(place, here), options.ascii))
  const [rows, next] = [picture.lines.length, width - picture.width - GAP]
  if (next >= LEAST_LIST && rows <= height) {
    const most = Math.min(height, Math.max(rows, place.stations.length))
    return beside(picture, drawing(listOf(place, here, next, most)), GAP)
  }
  if (picture.width <= width && rows < height)
    return drawing([...picture.lines, ...listOf(place, here, width, height - rows)])
  return inWords(current, width)
}

function withMarks({ kind, stations }: SpotPlace, here: number): string[] {
  const { art, marks }: SpotArt = SPOT_ART[kind]
  const paper = canvas(art.length, Math.max(...[...art, ...marks].map((line) => line.length)))
  art.forEach((line, row) => {
    paper.put(row, 0, line)
  })
  const two = hasTwoSpots(kind)
  const spotOf = (station: DrawnStation | undefined): number => (two && (station?.at ?? 0) > 0.5 ? 2 : 1)
  const signOf = (spot: number): string | undefined => {
    if (spotOf(stations[here]) === spot) return INSTRUMENT
    const others = stations.filter((station) => spotOf(station) === spot)
    const open = others.find((station) => station.value === undefined)
    return others[0] === undefined ? undefined : markOf(open ?? others[0])
  }
  marks.forEach((line, row) => {
    for (const [column, cell] of [...line].entries()) {
      const spot = '1278'.indexOf(cell) < 0 ? 0 : Number(cell) > 2 ? Number(cell) - 6 : Number(cell)
      const sign = spot === 0 ? undefined : signOf(spot)
      const isWhole = sign === INSTRUMENT || Number(cell) === spot
      if (sign !== undefined && isWhole) paper.put(row, column, sign)
    }
  })
  return paper.lines()
}

/** A line for each station; the one being measured tells its place in full, on as many lines as there are. */
function listOf({ stations }: SpotPlace, here: number, width: number, most: number): string[] {
  const place = stations[here]
  const current = wrap(`${INSTRUMENT} HERE ${plain(place?.words ?? place?.label ?? '')}`.trimEnd(), width)
  const spare = Math.max(1, most - (stations.length - 1))
  const lines = stations.map((station, i) =>
    i === here ? current.slice(0, spare) : [lineOf(station).slice(0, width)],
  )
  if (lines.flat().length <= most) return lines.flat()
  if (most < 2) return current.slice(0, 1)
  // The first of the others, in order, as far as there is room; then how many more there are.
  const others = stations.map((_, i) => i).filter((i) => i !== here)
  const kept = new Set([here, ...others.slice(0, most - 2)])
  const more = `+${stations.length - kept.size} more`.slice(0, width)
  return [...lines.flatMap((line, i) => (kept.has(i) ? line.slice(0, 1) : [])), more]
}

function lineOf(station: DrawnStation): string {
  const value = station.value === undefined ? '' : plain(station.value)
  return `${markOf(station)} ${plain(station.label)} ${value}`.trimEnd()
}
