// One wall of the bore, cut lengthwise, head end left: for what is held on the metal in one place, not across.

import { type BoreLayout, layOutBore } from './bore-layout.ts'
import { type Canvas, canvas, drawing, INSTRUMENT } from './canvas.ts'
import { hereIn, inWords, isAnywhere } from './here.ts'
import { type MarkedRow, markOf, writeHere, writeNames, writeValues } from './marks.ts'
import { inSigns } from './twin.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'

export interface BoreWall {
  readonly stations: readonly DrawnStation[]
  /** Id of the station being measured; null for a sketch of what was: no instrument is drawn. */
  readonly here: string | null
  readonly hasCounterbore?: boolean
}

/**
 * At most 6 lines, or 5 when `height` is under 6, which leaves the figures out. It is any wall: which side of the bore is
 * meant, the words of the step say. Ring travel is drawn double (or `=`). Not to scale.
 *
 * In words alone, and throws, as the side view of the bore does.
 */
export function drawBoreWall(wall: BoreWall, options: DrawOptions): Drawing {
  const { here, current } = hereIn(wall.stations, wall.here)
  const width = Math.floor(options.width)
  const height = options.height ?? 6
  const layout = height < 5 ? undefined : layOutBore(wall.stations, wall.hasCounterbore === true, width)
  if (layout === undefined) return inWords(current, width)

  const paper = canvas(6, layout.wallRight + 4)
  drawWall(paper, layout)
  const { wallLeft, wallRight } = layout
  const marked = {
    stations: wall.stations,
    here,
    columns: layout.columns,
    middle: (wallLeft + wallRight) / 2,
  }
  drawMarks(paper, marked, layout)
  const bounds = { first: 0, last: wallRight + 3 }
  const named = writeNames(paper, 4, marked, bounds)
  if (height >= 6) writeValues(paper, 5, marked, bounds)
  if (isAnywhere(here)) writeHere(paper, 0, marked, { ...bounds, named })
  const lines = paper.lines()
  return drawing(inSigns(lines.slice(0, lines[5] === '' ? 5 : 6), options.ascii))
}

/** The surface on row 1, lower in the counterbore by one row; the metal is below it. */
function drawWall(paper: Canvas, layout: BoreLayout): void {
  const { wallLeft, wallRight, stepLeft, stepRight, travelFrom, travelTo } = layout
  paper.run(1, stepLeft, stepRight, '─')
  paper.run(1, travelFrom, travelTo, '═')
  if (stepLeft !== wallLeft) {
    paper.run(2, wallLeft, stepLeft, '─')
    paper.run(2, stepRight, wallRight, '─')
    paper.put(1, stepLeft, '┌')
    paper.put(2, stepLeft, '┘')
    paper.put(1, stepRight, '┐')
    paper.put(2, stepRight, '└')
  }
  paper.put(1, 0, 'HE')
  paper.put(1, wallRight + 2, 'CE')
  paper.run(3, travelFrom, travelTo, '─')
  paper.put(3, travelFrom, '├')
  paper.put(3, travelTo, '┤')
  const room = travelTo - travelFrom - 1
  const texts = [' wall of the bore, ring travel ', ' ring travel ', ' rings ', 'rings']
  const text = texts.find((words) => words.length <= room)
  if (text !== undefined) paper.put(3, travelFrom + 1 + Math.floor((room - text.length) / 2), text)
}

function drawMarks(paper: Canvas, { stations, here, columns }: MarkedRow, layout: BoreLayout): void {
  const rowOf = (column: number): number => (column < layout.stepLeft || column > layout.stepRight ? 2 : 1)
  stations.forEach((station, i) => {
    const column = columns[i] as number
    paper.put(rowOf(column), column, i === here ? INSTRUMENT : markOf(station))
  })
  if (!isAnywhere(here)) return
  const column = columns[here] as number
  const row = rowOf(column)
  for (const beside of [column - 1, column + 1])
    if (['─', '═'].includes(paper.at(row, beside))) paper.put(row, beside, ' ')
}
