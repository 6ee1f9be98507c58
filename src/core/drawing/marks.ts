// The marks of stations on a row of a picture, and the words that go with them: name, figure, and HERE.
import type { Canvas } from './canvas.ts'
import { type Tag, writeTags } from './tags.ts'
import type { DrawnStation } from './types.ts'
import { nameForms, plain } from './words.ts'

/** A place still to be measured, and one that is filled in. */
const OPEN = 'o'
const FILLED = 'x'

export interface MarkedRow {
  readonly stations: readonly DrawnStation[]
  /** Place in the list of the station being measured. */
  readonly here: number
  /** Column of each station, by its place in the list. */
  readonly columns: readonly number[]
  /** The column the row is mirrored on. */
  readonly middle: number
}

/** Columns that may be written on, both included. */
export interface Bounds {
  readonly first: number
  readonly last: number
}

/** The mark of a station that is not the current one. */
export function markOf(station: DrawnStation): string {
  return station.value === undefined ? OPEN : FILLED
}

/** Names under their marks; true when the current station's own name found room. */
export function writeNames(paper: Canvas, row: number, marked: MarkedRow, { first, last }: Bounds): boolean {
  const { stations, here, columns, middle } = marked
  const names = stations.map((station) => plain(station.label))
  const tags: Tag[] = stations.map((station, i) => ({
    id: station.id,
    column: columns[i] as number,
    forms: nameForms(names[i] as string, names),
    rank: i === here ? 0 : 1,
  }))
  const inside = tags.filter((tag) => tag.column >= first && tag.column <= last)
  const written = writeTags(inside, { first, last, middle, marks: columns })
  for (const tag of written) paper.put(row, tag.start, tag.text)
  return written.some((tag) => tag.id === stations[here]?.id)
}

/** Figures under their marks. A figure is written whole or not at all. */
export function writeValues(paper: Canvas, row: number, marked: MarkedRow, bounds: Bounds): void {
  const { stations, here, columns, middle } = marked
  const tags = stations.flatMap((station, i) => {
    const value = station.value === undefined ? '' : plain(station.value)
    return value === ''
      ? []
      : [{ id: station.id, column: columns[i] as number, forms: [value], rank: i === here ? 0 : 1 }]
  })
  for (const tag of writeTags(tags, { ...bounds, middle, marks: columns }))
    paper.put(row, tag.start, tag.text)
}

/** The word HERE over the instrument, with the station's name when that found no room under it. */
export function writeHere(
  paper: Canvas,
  row: number,
  { stations, here, columns, middle }: MarkedRow,
  { first, last, named }: Bounds & { readonly named: boolean },
): void {
  const column = columns[here] as number
  const name = plain(stations[here]?.label ?? '')
  const texts = named || name === '' ? ['HERE'] : [`HERE ${name}`, `${name} HERE`, 'HERE']
  for (const text of texts) {
    const word = text.indexOf('HERE', text.length > 4 && !text.startsWith('HERE ') ? name.length + 1 : 0)
    const want = column - word - (column <= middle ? 2 : 1)
    const start = Math.max(first, Math.min(want, last - text.length + 1))
    if (start + text.length - 1 > last || column < start + word || column > start + word + 3) continue
    paper.put(row, start, text)
    return
  }
  paper.put(row, Math.max(0, Math.min(column - 2, last - 3)), 'HERE')
}
