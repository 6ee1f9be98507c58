// A figure that a lead names: where it was keyed, and who spoke of it. One that was only spoken of is said to be no reading.
import type { Entry } from '../job/entries.ts'
import type { Block } from '../sheet/block.ts'
import { placeNumber } from '../talk/names.ts'
import { heading, linesWhere, type OnRecord, said, wordsIn } from './asked-entries.ts'
import { placeTold } from './asked-readings.ts'

/** Whole numbers are of anything. */
const FIGURE = /(?<![\w.])\d+\.\d+(?![\w.]*\d)/g

const isReadAs = (entry: Entry, figure: string) =>
  (entry.type === 'reading.taken' ||
    entry.type === 'reading.doubted' ||
    entry.type === 'reading.late' ||
    entry.type === 'reading.corrected') &&
  Number(entry.typed) === Number(figure)

const isSaidOf = (entry: Entry, figure: string) =>
  (wordsIn(entry).match(FIGURE) ?? []).some((one) => Number(one) === Number(figure))

/** Where it was keyed, by the numbers of the places: what was read beside it is told with it. */
function placesOf({ defs, entries }: OnRecord, figure: string): string[] {
  const places = entries.flatMap((e) =>
    isReadAs(e, figure) && 'place' in e && e.step !== null ? [placeNumber(defs, e.step, e.place)] : [],
  )
  return [...new Set(places)]
}

/** Null: no figure is named, or the log has none of them. */
export function figureTold(record: OnRecord, asked: string): Block[] | null {
  const told = [...new Set(asked.match(FIGURE) ?? [])].flatMap((figure): Block[] => {
    const read = linesWhere(record, ({ entry }) => isReadAs(entry, figure))
    const spoken = linesWhere(record, ({ entry }) => isSaidOf(entry, figure))
    if (read.length + spoken.length === 0) return []
    const places = placesOf(record, figure).flatMap((place) => placeTold(record, place) ?? [])
    return [
      heading(
        read.length === 0
          ? `${figure} was keyed as no reading; it stands in what was said`
          : `${figure} as it was keyed`,
      ),
      said(...(places.length > 0 ? [] : read), ...spoken),
      ...places,
    ]
  })
  return told.length === 0 ? null : told
}
