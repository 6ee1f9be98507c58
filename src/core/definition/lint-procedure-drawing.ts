// Cross-checks of what a reading is drawn on: whether the picture has the places and the lines that the step reads.
import { axesOf, type DrawingKind, goesOn } from '../drawing/kinds.ts'
import { quote } from '../lib/wording.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import type { StepOf } from './procedure.ts'

type Read = StepOf<'read'>

/** Findings of the drawing of one reading; `base` is its path. */
export function lintDrawing(read: Read, base: Path): Finding[] {
  const { drawing } = read
  return drawing === 'none' ? [] : [...lintAxesDrawn(read, drawing, base), ...lintPlaces(read, drawing, base)]
}

function lintAxesDrawn(read: Read, drawing: DrawingKind, base: Path): Finding[] {
  const has = (read.axes ?? []).length > 0
  const path = [...base, 'drawing']
  if (axesOf(drawing) === 'must' && !has) {
    const message = `${quote(read.id)} is drawn as a bore and has no axes.`
    return [finding(path, 'no-axes', message, 'list the axes, or write drawing: bore_wall or drawing: none')]
  }
  if (axesOf(drawing) === 'no' && has) {
    const message = `${quote(read.id)} has axes, and a drawing of ${drawing} shows none.`
    return [finding(path, 'axes-not-drawn', message, 'draw what is measured across, or write drawing: none')]
  }
  return []
}

/** Only the bore goes on beyond its ring travel; every other part ends at 0 and 1, and has no counterbore. */
function lintPlaces(read: Read, drawing: DrawingKind, base: Path): Finding[] {
  if (goesOn(drawing)) return []
  return read.stations.flatMap((station, n): Finding[] => {
    const path = [...base, 'stations', n]
    if (station.in_counterbore === true) {
      const message = `${quote(station.id)} lies in the counterbore, and a drawing of ${drawing} has none.`
      return [
        finding(
          [...path, 'in_counterbore'],
          'not-on-it',
          message,
          'write drawing: bore or drawing: bore_wall',
        ),
      ]
    }
    if (station.at >= 0 && station.at <= 1) return []
    const message = `${quote(station.id)} is at ${station.at}, and what is drawn ends at 0 and 1.`
    return [
      finding([...path, 'at'], 'not-on-it', message, 'move it onto what is drawn, or write drawing: none'),
    ]
  })
}
