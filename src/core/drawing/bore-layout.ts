// Where everything on the side view of a bore goes: walls, counterbore steps, ring travel, stations, in columns.
import { type Settling, settle, sideOf } from './settle.ts'
import type { DrawnStation } from './types.ts'

/** Bore shown beyond ring travel at each end, as a share of the travel, when no station lies farther out. Not to scale. */
const BEYOND = 0.12

export const LEAST_WIDTH = 24
export const MOST_WIDTH = 66

export interface BoreLayout {
  readonly wallLeft: number
  readonly wallRight: number
  /** Columns of the step between counterbore and bore; equal to the walls when there is no counterbore. */
  readonly stepLeft: number
  readonly stepRight: number
  readonly travelFrom: number
  readonly travelTo: number
  /** Column of each station, by its place in the list given. */
  readonly columns: readonly number[]
}

interface Place {
  readonly index: number
  readonly at: number
}

/** Columns for a bore drawn `width` wide, or undefined when the stations do not fit or one has no place on it. */
export function layOutBore(
  stations: readonly DrawnStation[],
  hasCounterbore: boolean,
  width: number,
): BoreLayout | undefined {
  if (width < LEAST_WIDTH || !stations.every(hasPlace)) return undefined
  const places = stations
    .map((station, index) => ({ index, at: station.at, apart: station.inCounterbore === true }))
    .sort((a, b) => a.at - b.at || a.index - b.index)
  const headEnd = places.filter((place) => place.apart && place.at < 0)
  const crankEnd = places.filter((place) => place.apart && place.at > 1)
  const inBore = places.filter((place) => !headEnd.includes(place) && !crankEnd.includes(place))
  const stepped = hasCounterbore || headEnd.length + crankEnd.length > 0
  for (const unit of [3, 2, 1]) {
    const frame = frameOf(width, stepped, headEnd.length, crankEnd.length, unit)
    const found = bore(inBore, frame.stepLeft, frame.stepRight)
    if (found === undefined) continue
    const columns: number[] = []
    for (const [index, column] of found.columns) columns[index] = column
    headEnd.forEach((place, i) => {
      columns[place.index] = frame.wallLeft + unit * (i + 1)
    })
    crankEnd.forEach((place, i) => {
      columns[place.index] = frame.stepRight + unit * (i + 1)
    })
    return { ...frame, travelFrom: found.from, travelTo: found.to, columns }
  }
  return undefined
}

/** A number, not absurdly far from the bore, and not a counterbore inside ring travel, which can't be. */
function hasPlace({ at, inCounterbore }: DrawnStation): boolean {
  return at >= -10 && at <= 11 && !(inCounterbore === true && at >= 0 && at <= 1)
}

function frameOf(width: number, stepped: boolean, headEnd: number, crankEnd: number, unit: number) {
  const plainStep = width < 32 ? 2 : width < 48 ? 3 : 5
  const step = (places: number): number =>
    stepped ? Math.max(plainStep, places === 0 ? 0 : unit * (places + 1)) : 0
  // Three columns at each side for HE and CE and a space.
  const wallLeft = 3
  const stepLeft = wallLeft + step(headEnd)
  let wallRight = Math.min(width, MOST_WIDTH) - 4
  // An odd number of columns inside, so that the centre of the stroke has a column of its own.
  if ((wallRight - step(crankEnd) - stepLeft) % 2 !== 0) wallRight -= 1
  return { wallLeft, wallRight, stepLeft, stepRight: wallRight - step(crankEnd) }
}

interface Bore {
  readonly from: number
  readonly to: number
  readonly columns: ReadonlyMap<number, number>
}

/** Spreads the stations and the two limits of ring travel between the steps; tries for air, then without. */
function bore(places: readonly Place[], stepLeft: number, stepRight: number): Bore | undefined {
  for (const [air, apart] of [
    [2, 4],
    [2, 2],
    [1, 2],
    [1, 1],
  ] as const) {
    const found = spread(places, stepLeft + air, stepRight - air, apart)
    if (found !== undefined) return found
  }
  return undefined
}

function spread(places: readonly Place[], first: number, last: number, apart: number): Bore | undefined {
  const low = Math.min(-BEYOND, ...places.map((place) => place.at))
  const high = Math.max(1 + BEYOND, ...places.map((place) => place.at))
  const middle = (first + last) / 2
  const things: (Settling & { index: number | 'from' | 'to' })[] = []
  const add = (index: number | 'from' | 'to', at: number, gap: number): void => {
    const want = first + ((at - low) / (high - low)) * (last - first)
    things.push({ index, want, gap, min: first, max: last, side: sideOf(want, middle) })
  }
  const outHeadEnd = places.filter((place) => place.at < 0)
  const within = places.filter((place) => place.at >= 0 && place.at <= 1)
  const outCrankEnd = places.filter((place) => place.at > 1)
  for (const place of outHeadEnd) add(place.index, place.at, apart)
  // A station may stand on the limit itself, so the limit keeps no distance from what lies within.
  add('from', 0, 1)
  within.forEach((place, i) => {
    add(place.index, place.at, i === 0 ? 0 : apart)
  })
  add('to', 1, within.length > 0 ? 0 : 1)
  outCrankEnd.forEach((place, i) => {
    add(place.index, place.at, i === 0 ? 1 : apart)
  })
  const columns = settle(things)
  if (columns === undefined) return undefined
  const found = new Map<number | 'from' | 'to', number>()
  things.forEach((thing, i) => {
    found.set(thing.index, columns[i] as number)
  })
  return {
    from: found.get('from') as number,
    to: found.get('to') as number,
    columns: new Map([...found].filter((entry): entry is [number, number] => typeof entry[0] === 'number')),
  }
}
