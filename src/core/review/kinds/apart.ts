// Places where the readings asked for lay too far apart, so that they were read once more: what each of them was.
import { asKind } from '../../job/definitions.ts'
import { applicability } from '../../job/next.ts'
import { placeResult, placesOf } from '../../job/places.ts'
import type { Reading } from '../../job/state.ts'
import { alikeWithin } from '../../talk/alike-within.ts'
import { placeFigure, placeName, placeNumber } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, count, type Look } from '../look.ts'

export function readApart(look: Look): Found[] {
  const { defs, state } = look
  return defs.steps.flatMap((placed): Found[] => {
    if (placed.step.kind !== 'read' || applicability(defs, state, placed) !== 'do') return []
    const read = asKind(placed, 'read')
    const { at_least: least, within } = read.step.repeats
    return placesOf(read).flatMap((place): Found[] => {
      const result = placeResult(read, place, state)
      const { readings } = result
      // One that never agreed is missing a figure: that is told as such.
      if (result.state !== 'settled' || readings.length <= least) return []
      const figures = readings.map((r) => r.typed.trim()).join(', ')
      return [
        {
          kind: 'apart',
          what: `Read once more, ${figures}: ${placeNumber(defs, placed.id, place.key)} ${placeName(defs, placed.id, place.key)}`,
          sentences: [
            `${apartText(readings, least, alikeWithin(defs, within))}, so it was read ${count(readings.length - least, 'time')} more.`,
            `It counts as ${placeFigure(defs, read, result) ?? '?'}, the median: none is dropped.`,
            ...readings.map(
              (r) =>
                `${r.typed.trim()} with ${r.instrument}, ${byWhom(look, { at: r.at, ...(r.by === null ? {} : { by: r.by }) })}.`,
            ),
          ],
          entries: readings.map((r) => r.seq),
          open: false,
        },
      ]
    })
  })
}

/** As they stand; where one of them was put right since, its own item has what it was. */
function apartText(readings: readonly Reading[], least: number, within: string): string {
  return readings.some(({ corrects }) => corrects !== null)
    ? `The first ${count(least, 'reading')} lay more than ${within} apart as they were keyed, and one was put right since`
    : `The first ${count(least, 'reading')} lay more than ${within} apart`
}
