// Readings on the sheet: the figure in both systems, repeats with their spread, doubts and corrections in the open.

import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { placeResult, placesOf } from '../job/places.ts'
import { type State, standing } from '../job/state.ts'
import { bareWorked, placeName, placeNumber, readingText, workedText } from '../talk/names.ts'
import { type Block, type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

type ReadingEntry = Extract<
  Entry,
  {
    type:
      | 'reading.taken'
      | 'reading.doubted'
      | 'reading.late'
      | 'reading.corrected'
      | 'reading.not-applicable'
      | 'doubt.settled'
      | 'late.settled'
      | 'reading.dropped'
  }
>

export function readingBlock(
  defs: Definitions,
  state: State,
  entry: ReadingEntry,
  right: string,
): Block | null {
  switch (entry.type) {
    case 'reading.taken':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: takenRows(defs, state, entry),
      }
    case 'reading.doubted':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: [
          row(`${entry.typed.trim()} doubted: it is ${entry.why}. It counts for nothing yet.`, 'caution'),
          ...(entry.shown === undefined ? [] : [row(`  shown: ${entry.shown}`)]),
        ],
      }
    case 'reading.late':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: [
          row(
            `${entry.typed.trim()} was keyed after the hold point fell: kept, and counts for nothing until confirmed.`,
            'caution',
          ),
        ],
      }
    case 'reading.corrected':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: [
          row(`Corrected: ${readingText(defs, entry)} for the reading before`, 'strong'),
          row(`  because ${entry.why}; the first value stays in the log`),
          ...(entry.voids.length === 0
            ? []
            : [
                row(
                  `  void with it: ${entry.voids.map((id) => stepById(defs, id).step.title).join('; ')}`,
                  'caution',
                ),
              ]),
        ],
      }
    case 'reading.not-applicable':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: [
          row(`${placeName(defs, entry.step, entry.place)}: n/a, ${entry.why}`, 'caution'),
          ...(entry.person === undefined
            ? []
            : [row(`  signed by ${entry.person}, lead${bySign(entry.signed)}`)]),
        ],
      }
    case 'doubt.settled':
      return {
        margin: '',
        right,
        rows: [
          row(
            entry.choice === 'kept'
              ? `  kept: ${entry.why ?? ''}`
              : entry.choice === 'again'
                ? '  to be measured again'
                : '  mistyped, to be keyed again in full',
          ),
        ],
      }
    case 'reading.dropped':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right: '',
        rows: [
          row(
            'The reading that waited is not used: the job stands at another step. It is measured anew where it is asked again.',
            'caution',
          ),
        ],
      }
    case 'late.settled':
      return {
        margin: '',
        right,
        rows: [
          row(
            entry.kept ? '  confirmed: taken before the hold point fell' : '  not used: to be measured again',
          ),
        ],
      }
  }
}

function takenRows(
  defs: Definitions,
  state: State,
  entry: Extract<ReadingEntry, { type: 'reading.taken' }>,
): Row[] {
  const placed = asKind(stepById(defs, entry.step), 'read')
  const place = placesOf(placed).find((p) => p.key === entry.place)
  const upTo = standing(state, entry.place).filter((r) => r.seq <= entry.seq)
  const figure = `${readingText(defs, entry)}   ${entry.instrument}`
  if (upTo.length <= 1 || place === undefined)
    return [row(placeName(defs, entry.step, entry.place)), row(`  ${figure}`, 'strong')]
  const result = placeResult(placed, place, state)
  const spread =
    placed.step.quantity === 'length' && result.spread !== null
      ? `   spread ${bareWorked(defs, entry, result.spread)}`
      : ''
  const rows = [row(`  again ${readingText(defs, entry)}${spread}`, 'strong')]
  if (result.state === 'more') rows.push(row('  too far apart: once more', 'caution'))
  if (result.state === 'unsettled')
    rows.push(
      row('  the repeats do not agree: this place has no figure, and what rests on it is HOLD', 'caution'),
    )
  if (
    result.state === 'settled' &&
    result.si !== null &&
    upTo.length > 2 &&
    placed.step.quantity === 'length'
  ) {
    rows.push(row(`  counts as ${workedText(defs, entry, result.si)}, the middle of ${upTo.length}`))
  }
  return rows
}
