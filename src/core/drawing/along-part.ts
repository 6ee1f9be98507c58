// A part from the side, head end left: where along it the instrument goes now.

import { layOutAlong } from './along-layout.ts'
import { ALONG_PARTS, type AlongPart, type Reach } from './along-parts.ts'
import { type Canvas, canvas, drawing, INSTRUMENT } from './canvas.ts'
import { hereIn, inWords, isAnywhere } from './here.ts'
import { type MarkedRow, markOf, writeHere, writeNames, writeValues } from './marks.ts'
import { inSigns } from './twin.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'

export type AlongKind = keyof typeof ALONG_PARTS

export interface AlongPlace {
  readonly kind: AlongKind
  readonly stations: readonly DrawnStation[]
  /** Id of the station being measured; null for a sketch of what was: no instrument is drawn. */
  readonly here: string | null
  /** The instrument goes from one side of the part to the other, as a micrometer does; a dial only touches it. */
  readonly across: boolean
}

export const LEAST_WIDTH = 24
const MOST_WIDTH = 66
/** Row of the marks for each way the instrument is drawn. */
const MARK_ROW: Readonly<Record<Reach, number>> = { across: 2, top: 1, foot: 3, middle: 2 }

/**
 * At most 6 lines, or 5 when `height` is under 6, which leaves the figures out. `#` under the word HERE is the
 * instrument: in three rows across the part, or in one where it touches; `x` is filled in, `o` is to come. Not to scale.
 *
 * Fewer than 24 columns, fewer than 5 lines, a station outside 0 to 1, or more stations than the width can hold: one
 * line of words instead. Throws when no station has the id `here`, which is a bug of the caller.
 */
export function drawAlong(place: AlongPlace, options: DrawOptions): Drawing {
  const { here, current } = hereIn(place.stations, place.here)
  const part: AlongPart = ALONG_PARTS[place.kind]
  const width = Math.min(MOST_WIDTH, Math.floor(options.width))
  const height = options.height ?? 6
  const [left, right] = part.ends
  const layout = height < 5 ? undefined : layOutAlong(place.stations, part.landmarks, frameOf(part, width))
  if (layout === undefined) return inWords(current, options.width)

  const paper = canvas(6, width)
  part.paint(paper, layout)
  paper.put(2, 0, left)
  paper.put(2, width - right.length, right)
  const { stations } = place
  const marked = { stations, here, columns: layout.columns, middle: (layout.first + layout.last) / 2 }
  const reach = place.across && part.spans ? 'across' : part.touched
  drawMarks(paper, marked, reach)
  drawCaption(paper, part, reach)
  const bounds = { first: 0, last: width - 1 }
  const named = writeNames(paper, 4, marked, bounds)
  if (height >= 6) writeValues(paper, 5, marked, bounds)
  if (isAnywhere(here)) drawHere(paper, marked, reach, named)
  return drawing(inSigns(trimmed(paper.lines()), options.ascii))
}

/** Columns of the part itself between the signs of its ends; none to stand on where it would have less than it can be drawn in. */
export function frameOf({ ends: [left, right], tail = 0 }: AlongPart, width: number) {
  const first = left.length + 1
  return { first, last: width < LEAST_WIDTH ? first - 1 : width - right.length - 2 - tail }
}

function trimmed(lines: readonly string[]): readonly string[] {
  const from = lines[0] === '' ? 1 : 0
  return lines.slice(from, lines[5] === '' ? 5 : 6)
}

function drawMarks(paper: Canvas, { stations, here, columns }: MarkedRow, reach: Reach): void {
  const row = MARK_ROW[reach]
  stations.forEach((station, i) => {
    paper.put(row, columns[i] as number, i === here ? INSTRUMENT : markOf(station))
  })
  if (!isAnywhere(here)) return
  const column = columns[here] as number
  for (const each of reach === 'across' ? [1, 3] : []) paper.put(each, column, INSTRUMENT)
  // The wall stands back on both sides, so that the instrument is seen at once.
  for (const each of reach === 'across' ? [1, 3] : [row])
    for (const beside of [column - 1, column + 1])
      if (['─', '═'].includes(paper.at(each, beside))) paper.put(each, beside, ' ')
}

/** What is drawn, in the longest free stretch of a wall that has no marks. */
function drawCaption(paper: Canvas, { captions }: AlongPart, reach: Reach): void {
  const row = reach === 'foot' ? 1 : 3
  const line = paper.lines()[row] ?? ''
  const free = [...line.matchAll(/─+/g)].sort((a, b) => b[0].length - a[0].length || a.index - b.index)[0]
  const caption = captions.find((text) => text.length + 4 <= (free?.[0].length ?? 0))
  if (free === undefined || caption === undefined) return
  paper.put(row, free.index + Math.floor((free[0].length - caption.length - 2) / 2), ` ${caption} `)
}

function drawHere(paper: Canvas, marked: MarkedRow, reach: Reach, named: boolean): void {
  const last = paper.lines()[1]?.length ?? 0
  if (reach !== 'foot') {
    writeHere(paper, 0, marked, {
      first: 0,
      last: Math.max(last, (marked.columns[marked.here] ?? 0) + 2),
      named,
    })
    return
  }
  // Inside, right above the mark, where the walls of the part leave room for it.
  const column = marked.columns[marked.here] as number
  const middle = [...(paper.lines()[2] ?? '').padEnd(column + 6)]
  const start = [2, 1, 3, 0].map((back) => column - back).find((from) => isFree(middle, from))
  paper.put(2, start ?? Math.max(0, column - 2), 'HERE')
}

function isFree(row: readonly string[], from: number): boolean {
  return from >= 0 && [0, 1, 2, 3].every((i) => row[from + i] === ' ')
}
