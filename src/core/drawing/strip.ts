// The lowest picture there is, for a screen that has no room for another: the part in one line from end to end, with the places on it
// and the one being measured marked, and the clock positions behind it; under it names and figures where there is room.
import { layOutAlong } from './along-layout.ts'
import { type AlongKind, frameOf } from './along-part.ts'
import { ALONG_PARTS } from './along-parts.ts'
import { layOutBore } from './bore-layout.ts'
import { type Canvas, canvas, drawing, INSTRUMENT } from './canvas.ts'
import { axisText } from './clock.ts'
import { hereIn } from './here.ts'
import { isAlong, isSpot } from './kinds.ts'
import { type MarkedRow, markOf, writeNames, writeValues } from './marks.ts'
import type { DrawnPlace } from './place.ts'
import { SPOT_LINES } from './spot-lines.ts'
import { inSigns } from './twin.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'
import { plain } from './words.ts'

/** The most lines of a strip: the part, the names, the figures. */
export const STRIP_TALL = 3
const MOST_WIDTH = 66
const GAP = 2

/** What is drawn in one line, and where its stations stand in it. */
interface Strip {
  readonly columns: readonly number[]
  readonly last: number
  readonly paint: (paper: Canvas) => void
}

/**
 * At most `height` lines, of up to three. `#` is the instrument, `x` filled in, `o` to come, as in every picture. No lines where not
 * even one has room, or a station has no place on the part. Throws when no station has the id `here`, which is a bug of the caller.
 */
export function drawStrip(place: DrawnPlace & { readonly here: string }, options: DrawOptions): Drawing {
  const { here, current } = hereIn(place.stations, place.here)
  const width = Math.min(MOST_WIDTH, Math.floor(options.width))
  const height = Math.min(STRIP_TALL, options.height ?? STRIP_TALL)
  const lines = isSpot(place.kind)
    ? spotLines(SPOT_LINES[place.kind], place.stations, current, width, height)
    : alongLines(place, here, width, height)
  return drawing(inSigns(lines, options.ascii))
}

function alongLines(place: DrawnPlace, here: number, width: number, height: number): string[] {
  const clock = clockOf(place)
  // As wide for each line across, so that the part stays where it is from one to the next.
  const widest = Math.max(0, ...(place.axes ?? []).map((axis) => clockOf({ axis }).length), clock.length)
  const beside = widest === 0 ? 0 : widest + 1
  // The clock positions stand behind the part, or under it where they would leave it no room.
  const narrow = stripOf(place, width - beside)
  const isBeside = narrow !== undefined
  const strip = narrow ?? stripOf(place, width)
  if (strip === undefined || height < 1) return []
  const { columns, last } = strip
  const paper = canvas(3, width)
  strip.paint(paper)
  place.stations.forEach((station, i) => {
    paper.put(0, columns[i] as number, i === here ? INSTRUMENT : markOf(station))
  })
  if (isBeside && clock !== '') paper.put(0, last + 2, clock)
  const marked: MarkedRow = { stations: place.stations, here, columns, middle: last / 2 }
  const bounds = { first: 0, last }
  writeNames(paper, 1, marked, bounds)
  writeValues(paper, 2, marked, bounds)
  const [part = '', names = '', figures = ''] = paper.lines()
  const under = isBeside || clock === '' ? [] : [clock]
  // The title names the place: of the two it is the figures that stand nowhere else on the screen.
  const rest = [...under, ...(height > under.length + 2 || figures === '' ? [names] : []), figures]
  return [part, ...rest.filter((line) => line !== '').slice(0, height - 1)]
}

/** `12-6`, seen from the head end as in every picture; nothing where no line across is measured. */
function clockOf({ axis }: Pick<DrawnPlace, 'axis'>): string {
  const text = axis === undefined ? '' : (axisText(axis) ?? plain(axis.label))
  return text.replace(" o'clock", '').replace(' to ', '-')
}

function stripOf(place: DrawnPlace, width: number): Strip | undefined {
  return isAlong(place.kind) ? alongStrip(place.kind, place.stations, width) : boreStrip(place, width)
}

/** The walls at both ends, ring travel drawn double between its two limits, the steps to the counterbores. */
function boreStrip({ stations, hasCounterbore }: DrawnPlace, width: number): Strip | undefined {
  const layout = layOutBore(stations, hasCounterbore === true, width)
  if (layout === undefined) return undefined
  const { wallLeft, wallRight, stepLeft, stepRight, travelFrom, travelTo, columns } = layout
  const paint = (paper: Canvas): void => {
    paper.put(0, 0, 'HE')
    paper.run(0, wallLeft, wallRight, '─')
    paper.run(0, travelFrom, travelTo, '═')
    for (const step of [stepLeft, stepRight]) paper.put(0, step, '┴')
    paper.put(0, wallLeft, '│')
    paper.put(0, wallRight, '│')
    paper.put(0, wallRight + 2, 'CE')
  }
  return { columns, last: wallRight + 3, paint }
}

/** The middle row of the part as it is drawn from the side. */
function alongStrip(kind: AlongKind, stations: readonly DrawnStation[], width: number): Strip | undefined {
  const part = ALONG_PARTS[kind]
  const layout = layOutAlong(stations, part.landmarks, frameOf(part, width))
  if (layout === undefined) return undefined
  const paint = (paper: Canvas): void => {
    const whole = canvas(6, width)
    part.paint(whole, layout)
    paper.put(0, 0, whole.lines()[2] ?? '')
    const [left, right] = part.ends
    paper.put(0, 0, left)
    paper.put(0, width - right.length, right)
  }
  return { columns: layout.columns, last: width - 1, paint }
}

/** One place on a part: its line, and which of the places of the step it is. */
function spotLines(
  line: string,
  stations: readonly DrawnStation[],
  current: DrawnStation,
  width: number,
  height: number,
): string[] {
  if (line.length > width || height < 1) return []
  const name = plain(current.label)
  const isOne = stations.length < 2 || name === ''
  const isBeside = !isOne && line.length + GAP + name.length <= width
  const others = stations
    .filter((one) => one !== current)
    .map((one) => [markOf(one), plain(one.label), plain(one.value ?? '')].filter((w) => w !== '').join(' '))
  const told = isOne || isBeside ? others : [`${INSTRUMENT} ${name}`, ...others]
  const rows: string[] = []
  for (const one of told) {
    const last = rows.at(-1)
    if (last !== undefined && last.length + GAP + one.length <= width)
      rows[rows.length - 1] = `${last}  ${one}`
    else if (one.length <= width) rows.push(one)
  }
  return [isBeside ? `${line}  ${name}` : line, ...rows.slice(0, height - 1)]
}
