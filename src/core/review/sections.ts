// What stands behind the exceptions under numbers of its own: as found and as left, what was left out, what was measured with.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { type Row, row, type SheetStyle } from '../sheet/block.ts'
import { changesInFull, changesInWords } from './changes-rows.ts'
import { leftOutRows } from './left-out.ts'
import { measuringRows } from './measuring.ts'
import type { Review } from './review.ts'

export interface Section {
  readonly number: number
  /** As the one line of a screen says it. */
  readonly name: string
  readonly rows: (defs: Definitions, state: State, style: SheetStyle) => Row[]
}

export const FOUND_AND_LEFT = 'found and left'

/** Those that have something to tell, numbered behind the exceptions. */
export function sectionsOf({ exceptions, changes, leftOut, measuredWith, usual }: Review): Section[] {
  const all: Omit<Section, 'number'>[] = [
    ...(changes.length === 0
      ? []
      : [
          {
            name: FOUND_AND_LEFT,
            rows: (defs: Definitions, _state: State, style: SheetStyle) => changesRows(defs, changes, style),
          },
        ]),
    ...(leftOut === 0 ? [] : [{ name: 'left out', rows: leftOutRows }]),
    ...(measuredWith === 0
      ? []
      : [
          {
            name: 'instruments',
            rows: measuringRows,
          },
        ]),
    { name: 'as usual', rows: () => [row('As usual', 'strong'), row(`  ${usual.join('; ')}.`)] },
  ]
  return all.map((one, i) => ({ ...one, number: exceptions.length + 1 + i }))
}

/** Columns for the eye, and below them only what they do not hold; for the ear the same in words. */
function changesRows(defs: Definitions, changes: Review['changes'], style: SheetStyle): Row[] {
  return [
    row('As found, as left and the last overhaul', 'strong'),
    row(
      'As read, not brought to 20 degC: no verdict rests on it. Changes are from unrounded means. Hours: left to the limit, the early end, to plan by.',
    ),
    ...(style.linear === true ? changesInWords(defs, changes) : changesInFull(defs, changes)),
  ]
}
