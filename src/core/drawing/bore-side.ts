// The bore from the side, cut lengthwise, head end left: where along the bore the instrument goes now.

import { type BoreLayout, layOutBore } from './bore-layout.ts'
import { type Canvas, canvas, drawing, INSTRUMENT, type Signs, signs } from './canvas.ts'
import { hereIn, inWords, isAnywhere } from './here.ts'
import { type MarkedRow, markOf, writeHere, writeNames, writeValues } from './marks.ts'
import type { Drawing, DrawnStation, DrawOptions } from './types.ts'

export interface BoreSide {
  readonly stations: readonly DrawnStation[]
  /** Id of the station being measured; null for a sketch of what was: no instrument is drawn. */
  readonly here: string | null
  readonly hasCounterbore?: boolean
}

interface Scene {
  readonly stations: readonly DrawnStation[]
  readonly here: number
  readonly layout: BoreLayout
  readonly sign: Signs
  readonly paper: Canvas
  readonly columns: number
}

/**
 * Side view, at most 7 lines, or 5 when `height` is under 7. Between the double (or `=`) walls the rings travel; `#` from
 * wall to wall under the word HERE is the instrument; `x` is filled in, `o` is to come. Not to scale.
 *
 * Fewer than 24 columns, fewer than 5 lines, a station without a finite place, or more stations than the width can
 * hold: one line of words instead. Throws when no station has the id `here`, which is a bug of the caller.
 */
export function drawBoreSide(side: BoreSide, options: DrawOptions): Drawing {
  const { here, current } = hereIn(side.stations, side.here)
  const width = Math.floor(options.width)
  const height = options.height ?? 7
  const layout = height < 5 ? undefined : layOutBore(side.stations, side.hasCounterbore === true, width)
  if (layout === undefined) return inWords(current, width)

  const columns = layout.wallRight + 4
  const paper = canvas(7, columns)
  const scene: Scene = { stations: side.stations, here, layout, sign: signs(options.ascii), paper, columns }
  drawWalls(scene)
  drawStations(scene)
  const tall = height >= 7
  if (tall) drawTravel(scene)
  const named = drawNames(scene, tall)
  if (isAnywhere(here)) drawHere(scene, named)
  if (tall) writeValues(paper, 6, markedRow(scene), { first: 0, last: columns - 1 })
  const lines = paper.lines()
  return drawing(lines.slice(0, !tall ? 5 : lines[6] === '' ? 6 : 7))
}

function drawWalls({ layout, sign, paper }: Scene): void {
  const { wallLeft, wallRight, stepLeft, stepRight, travelFrom, travelTo } = layout
  for (const row of [1, 3]) {
    paper.run(row, stepLeft, stepRight, sign.wall)
    paper.run(row, travelFrom, travelTo, sign.swept)
  }
  const left = { top: sign.topLeft, low: sign.lowLeft, topIn: sign.topRight, lowIn: sign.lowRight }
  const right = { top: sign.topRight, low: sign.lowRight, topIn: sign.topLeft, lowIn: sign.lowLeft }
  drawWallEnd(paper, sign, { wall: wallLeft, step: stepLeft, corner: left })
  drawWallEnd(paper, sign, { wall: wallRight, step: stepRight, corner: right })
  paper.put(2, 0, 'HE')
  paper.put(2, wallLeft, sign.upright)
  paper.put(2, wallRight, sign.upright)
  paper.put(2, wallRight + 2, 'CE')
}

interface WallEnd {
  /** Column where the picture of the bore ends, and where the counterbore steps in; the same without a counterbore. */
  readonly wall: number
  readonly step: number
  /** Corners at the end of the wall, and at the step, where they turn the other way. */
  readonly corner: Readonly<Record<'top' | 'low' | 'topIn' | 'lowIn', string>>
}

/** One end of the bore; the other is its mirror image. */
function drawWallEnd(paper: Canvas, sign: Signs, { wall, step, corner }: WallEnd): void {
  if (step === wall) {
    paper.put(1, wall, corner.top)
    paper.put(3, wall, corner.low)
    return
  }
  for (const row of [1, 3]) paper.put(row, wall, sign.upright)
  for (const row of [0, 4]) paper.run(row, Math.min(wall, step), Math.max(wall, step), sign.wall)
  paper.put(0, wall, corner.top)
  paper.put(4, wall, corner.low)
  paper.put(0, step, corner.topIn)
  paper.put(1, step, corner.low)
  paper.put(3, step, corner.top)
  paper.put(4, step, corner.lowIn)
}

function drawStations({ stations, here, layout, sign, paper }: Scene): void {
  stations.forEach((station, i) => {
    const column = layout.columns[i] as number
    paper.put(2, column, i === here ? INSTRUMENT : markOf(station))
  })
  if (!isAnywhere(here)) return
  const column = layout.columns[here] as number
  for (const row of [1, 3]) {
    // The wall stands back on both sides, so that the instrument is seen to go through it.
    for (const beside of [column - 1, column + 1]) {
      const there = paper.at(row, beside)
      if (there === sign.wall || there === sign.swept) paper.put(row, beside, ' ')
    }
    paper.put(row, column, INSTRUMENT)
  }
  const clear = [-2, -1, 1, 2].every((step) => paper.at(2, column + step) === ' ')
  if (clear) {
    paper.put(2, column - 1, '>')
    paper.put(2, column + 1, '<')
  }
}

function drawTravel({ layout, sign, paper }: Scene): void {
  const { travelFrom, travelTo } = layout
  paper.run(4, travelFrom, travelTo, sign.wall)
  paper.put(4, travelFrom, sign.spanFrom)
  paper.put(4, travelTo, sign.spanTo)
  const room = travelTo - travelFrom - 1
  const text = [' ring travel ', 'ring travel', ' rings ', 'rings'].find((words) => words.length <= room)
  if (text !== undefined) paper.put(4, travelFrom + 1 + Math.floor((room - text.length) / 2), text)
}

function drawNames(scene: Scene, tall: boolean): boolean {
  const { layout, paper, columns } = scene
  // In the low form the names share their row with the foot of the steps.
  const stepped = !tall && layout.stepLeft !== layout.wallLeft
  const first = stepped ? layout.stepLeft + 2 : 0
  const last = stepped ? layout.stepRight - 2 : columns - 1
  return writeNames(paper, 4 + (tall ? 1 : 0), markedRow(scene), { first, last })
}

/** HERE over the bore, between the steps when the station is; of a counterbore between its own corners, which it leaves whole. */
function drawHere(scene: Scene, named: boolean): void {
  writeHere(scene.paper, 0, markedRow(scene), { ...overStation(scene), named })
}

/** Columns over the part of the bore that the station is in. */
function overStation({ here, layout, columns }: Scene): { readonly first: number; readonly last: number } {
  const column = layout.columns[here] as number
  const { stepLeft, stepRight, wallLeft, wallRight } = layout
  if (stepLeft === wallLeft) return { first: 0, last: columns - 1 }
  if (column < stepLeft) return { first: wallLeft + 1, last: stepLeft - 1 }
  if (column > stepRight) return { first: stepRight + 1, last: wallRight - 1 }
  return { first: stepLeft + 1, last: stepRight - 1 }
}

function markedRow({ stations, here, layout }: Scene): MarkedRow {
  return { stations, here, columns: layout.columns, middle: middleOf(layout) }
}

function middleOf(layout: BoreLayout): number {
  return (layout.wallLeft + layout.wallRight) / 2
}
