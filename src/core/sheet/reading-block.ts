// Readings on the sheet: the figure in both systems, repeats with their spread, doubts and corrections in the open.

import { findReading } from '../job/admit-change.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { placeResult, placesOf } from '../job/places.ts'
import { NOISE } from '../job/plausible.ts'
import { countsInError } from '../job/repeats-error.ts'
import { type State, standing } from '../job/state.ts'
import {
  bareReading,
  bareWorked,
  placeName,
  placeNumber,
  readingText,
  repeatName,
  spreadText,
  workedText,
} from '../talk/names.ts'
import { type Block, type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'
import { offStandardRows } from './standard-rows.ts'

type ReadStep = Parameters<typeof placeResult>[0]

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

/** Letters. More are three rows and over of a narrow sheet. */
const LONG_REASON = 60

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
          ...(entry.shown === undefined ? [] : [row(`  ${entry.shown}`)]),
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
          row(correctedText(defs, state, entry), 'strong'),
          row(`  because ${entry.why}; the first value stays in the log`),
          ...(entry.doubt === undefined
            ? []
            : [row(`  doubted, and kept for that reason: it is ${entry.doubt}`, 'caution')]),
          ...openedAgain(defs, state, entry),
          ...(entry.voids.length === 0
            ? []
            : [
                row(
                  `  void with it: ${entry.voids.map((id) => stepById(defs, id).step.title).join('; ')}`,
                  'caution',
                ),
              ]),
          // Under a long reason the first row may stand above the screen.
          ...(entry.why.length > LONG_REASON ? [row(`  now ${readingText(defs, entry)}`, 'strong')] : []),
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
                : entry.choice === 'unreadable'
                  ? '  it cannot be read on the sheet'
                  : '  mistyped, to be keyed again in full',
          ),
          ...keptFigure(defs, state, entry),
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

/** Under a long reason the figure that it is of would stand above the screen; and of a gauge that stays off its standard it is said what that comes to. */
function keptFigure(
  defs: Definitions,
  state: State,
  { seq, choice, why = '' }: Extract<ReadingEntry, { type: 'doubt.settled' }>,
): Row[] {
  if (choice !== 'kept') return []
  const before = Object.values(state.readings)
    .flat()
    .filter((one) => one.seq < seq)
  const [last] = before.sort((a, b) => b.seq - a.seq)
  if (last === undefined) return []
  const figure = why.length <= LONG_REASON ? [] : [row(`  ${readingText(defs, last)}`, 'strong')]
  return [...figure, ...offStandardRows(defs, state, last)]
}

/** `Corrected: was 22.0 degF, now 72.0 degF   22.2 degC`, with which of several readings of the place it is. */
function correctedText(
  defs: Definitions,
  state: State,
  entry: Extract<ReadingEntry, { type: 'reading.corrected' }>,
): string {
  const old = findReading(state, entry.of)
  const was = old === null ? '' : `was ${bareReading(defs, old)} ${old.unit}, `
  const which = repeatName(state, entry)
  return `Corrected${which === null ? '' : `, ${which}`}: ${was}now ${readingText(defs, entry)}`
}

/** What a correction leaves of a place whose repeats do not agree with it any more: why the job goes back, or what stays open. */
function openedAgain(
  defs: Definitions,
  state: State,
  entry: Extract<ReadingEntry, { type: 'reading.corrected' }>,
): Row[] {
  const placed = asKind(stepById(defs, entry.step), 'read')
  const place = placesOf(placed).find((p) => p.key === entry.place)
  if (place === undefined) return []
  const { state: is, spread, readings } = placeResult(placed, place, state)
  if (is === 'unsettled') return [row(`  ${noFigure(readings.length)}`, 'caution')]
  if (is !== 'more') return []
  const where = placeNumber(defs, entry.step, entry.place)
  const wanted = placed.step.repeats.at_least
  // What is too few cannot disagree.
  if (readings.length < wanted)
    return [
      row(
        `  Back to ${where}: ${readings.length} ${readings.length === 1 ? 'reading stands' : 'readings stand'} there, and ${wanted} are wanted. It is measured once more, afresh`,
      ),
    ]
  const apart = spread === null ? '' : `, ${spreadText(defs, state, entry.place, spread)} apart`
  return [
    row(
      `  Back to ${where}: its readings do not agree now${apart}. It is measured once more, afresh`,
      'caution',
    ),
  ]
}

function noFigure(readings: number): string {
  return `the repeats do not agree: this place has no figure, and what rests on it is HOLD. No more than ${readings} are taken; if one was a slip, correct it`
}

/** Repeats further apart than they may be count in a verdict, and it is said while whoever read them still stands there. */
function countsRows(defs: Definitions, state: State, placed: ReadStep, place: string, spread: number): Row[] {
  if (spread <= placed.step.repeats.within.si + NOISE || !countsInError(defs, placed)) return []
  const apart = spreadText(defs, state, place, spread)
  return [row(`  the ${apart} between them count as measuring error`, 'caution')]
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
  const off = offStandardRows(defs, state, entry)
  if (upTo.length <= 1 || place === undefined)
    return [row(placeName(defs, entry.step, entry.place)), row(`  ${figure}`, 'strong'), ...off]
  const result = placeResult(placed, place, state)
  const spread =
    placed.step.quantity === 'length' && result.spread !== null
      ? `   spread ${bareWorked(defs, entry, result.spread)}`
      : ''
  // What two come to is said beside them, and of more in a line of its own.
  const mean =
    upTo.length === 2 && result.state === 'settled' && result.si !== null && placed.step.quantity === 'length'
      ? `   mean ${bareWorked(defs, entry, result.si)}`
      : ''
  const rows = [row(`  again ${readingText(defs, entry)}${spread}${mean}`, 'strong')]
  if (result.state === 'more')
    rows.push(
      row('  too far apart: measured once more, afresh; a slip is put right by the word correct', 'caution'),
    )
  if (result.state === 'unsettled') rows.push(row(`  ${noFigure(upTo.length)}`, 'caution'))
  if (
    result.state === 'settled' &&
    result.si !== null &&
    upTo.length > 2 &&
    placed.step.quantity === 'length'
  ) {
    rows.push(row(`  counts as ${workedText(defs, entry, result.si)}, the middle of ${upTo.length}`))
  }
  if (result.state === 'settled' && result.spread !== null)
    rows.push(...countsRows(defs, state, placed, entry.place, result.spread))
  return [...rows, ...off]
}
