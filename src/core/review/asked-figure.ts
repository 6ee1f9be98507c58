// A figure that a lead names: where it was keyed, and who spoke of it. One that was only spoken of is said to be no reading.
import type { Entry } from '../job/entries.ts'
import type { Block } from '../sheet/block.ts'
import { placeNumber } from '../talk/names.ts'
import { heading, linesWhere, type OnRecord, said, wordsIn } from './asked-entries.ts'
import { placeTold } from './asked-readings.ts'
import { figuresIn, isReadAs } from './figures-in.ts'

const isSaidOf = (entry: Entry, figure: string) =>
  figuresIn(wordsIn(entry)).some((one) => Number(one) === Number(figure))

/** Where it was keyed, by the numbers of the places: what was read beside it is told with it. */
function placesOf({ defs, entries }: OnRecord, figure: string): string[] {
  const places = entries.flatMap((e) => (isReadAs(e, figure) ? [placeNumber(defs, e.step, e.place)] : []))
  return [...new Set(places)]
}

/** Null: no figure is named, or the log has none of them. */
export function figureTold(record: OnRecord, asked: string): Block[] | null {
  const told = figuresIn(asked).flatMap((figure): Block[] => {
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
