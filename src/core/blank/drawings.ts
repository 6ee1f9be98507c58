// The drawings of the screen on paper: the very ones, in box signs.
import { drawFigure, type FigureKind } from '../drawing/figures.ts'
import { drawPlace } from '../drawing/place.ts'
import type { DrawnStation } from '../drawing/types.ts'
import type { Definitions } from '../job/definitions.ts'
import type { placesOf } from '../job/places.ts'
import { type BlankPiece, together, words } from './blank.ts'

type ReadStep = Parameters<typeof placesOf>[0]

const COLUMNS = 66

/** Instruments that are set from one side of a part to the other. All else touches it in one place. */
const ACROSS = ['inside_micrometer', 'bore_gauge', 'outside_micrometer']

export function figurePieces(kind: FigureKind | 'readings' | undefined): BlankPiece[] {
  // On paper the readings stand where they were written.
  if (kind === 'readings') return []
  if (kind === undefined) return []
  const { lines } = drawFigure(kind, { ascii: false, width: COLUMNS })
  return lines.length === 0 ? [] : [{ is: 'drawing', lines }]
}

/** A drawing for each line across it, with the first place marked as the one and the others as to come. */
export function placeDrawings(defs: Definitions, { step }: ReadStep): BlankPiece[] {
  const { drawing: kind, stations, axes } = step
  const [first] = stations
  if (kind === 'none' || first === undefined) return []
  const kinds: readonly string[] = defs.seats.find(({ id }) => id === step.with)?.kinds ?? []
  const drawn = (axes ?? [null]).flatMap((axis): BlankPiece[] => {
    const { lines } = drawPlace(
      {
        kind,
        stations: stations.map(drawnStation),
        here: first.id,
        across: kinds.length > 0 && kinds.every((one) => ACROSS.includes(one)),
        ...(axis === null ? {} : { axis, axes: axes ?? [] }),
        hasCounterbore: defs.machine.bore.counterbore !== undefined,
      },
      { ascii: false, width: COLUMNS },
    )
    return lines.length === 0 ? [] : [{ is: 'drawing', lines }]
  })
  if (drawn.length === 0) return []
  const legend =
    stations.length === 1
      ? '# the instrument.'
      : '# the instrument, at the first place; o the other places, in the order of the boxes.'
  return [together(...drawn, words(legend, 'faint'))]
}

function drawnStation({ id, label, short, at, in_counterbore: isIn }: ReadStep['step']['stations'][number]) {
  const station: DrawnStation = {
    id,
    label: short ?? label,
    words: label,
    at,
    ...(isIn === true ? { inCounterbore: true } : {}),
  }
  return station
}
