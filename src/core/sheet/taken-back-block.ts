// What no longer stands, by name: an instrument's readings, a branch that was left, a finding or an n/a put right.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { allOf, labelsOf } from '../job/seen.ts'
import type { State } from '../job/state.ts'
import { readLines, TAKEN_FOR_IT } from '../talk/doubt.ts'
import { instrumentName, placeName, placeNumber } from '../talk/names.ts'
import { type Block, type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'
import { voidRows } from './entry-words.ts'

type TakingBack = Extract<
  Entry,
  { type: 'instrument.doubted' | 'branch.left' | 'finding.corrected' | 'not-applicable.taken-back' }
>

export function takenBackBlock(
  defs: Definitions,
  state: State,
  entry: TakingBack,
  margin: string,
  right: string,
): Block {
  switch (entry.type) {
    case 'instrument.doubted':
      return { margin, right, rows: doubtedRows(defs, state, entry) }
    case 'branch.left':
      return {
        margin,
        right,
        rows: [
          row(
            entry.test === undefined
              ? 'Not needed any more, as its condition is not met.'
              : `Done anew: ${entry.test}. What it begins with fell, was read anew, or was by another machine record.`,
            'caution',
          ),
          ...voidRows(defs, entry.voids),
        ],
      }
    case 'finding.corrected': {
      const { step } = asKind(stepById(defs, entry.step), 'observe')
      return {
        margin,
        right,
        rows: [
          row(`Corrected: ${step.title}: ${labelsOf(defs, entry.step, allOf(entry))}`, 'strong'),
          ...(entry.note === undefined ? [] : [row(`  ${entry.note}`)]),
          row(`  in place of: ${labelsOf(defs, entry.step, [entry.was, ...(entry.was_also ?? [])])}`),
          row(`  because ${entry.why}; the first answer stays in the log`),
          ...voidRows(defs, entry.voids),
        ],
      }
    }
    case 'not-applicable.taken-back':
      return {
        margin: placeNumber(defs, entry.step, entry.place),
        right,
        rows: [
          row(`${placeName(defs, entry.step, entry.place)}: n/a taken back, to be measured`, 'strong'),
          row(`  because ${entry.why}`),
          ...voidRows(defs, entry.voids),
        ],
      }
  }
}

function doubtedRows(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'instrument.doubted' }>,
): Row[] {
  const read = readLines(defs, state, entry.readings)
  const warm = readLines(defs, state, entry.temperatures ?? [])
  const signed =
    entry.person === undefined
      ? []
      : [
          // Added to a closed job, perhaps months later: the time beside it would be taken for that of the day of the job.
          row(
            `  Signed by ${entry.person}${bySign(entry.signed)} on ${entry.at.slice(0, 10)}, after the job was closed`,
          ),
        ]
  return [
    row(`OUT OF CALIBRATION: ${instrumentName(defs, entry.instrument)}`, 'caution'),
    row(`  ${entry.why.trimEnd().replace(/[.]+$/, '')}; so says: ${entry.says}`),
    ...signed,
    row(read.length === 0 ? '  It had read nothing that stood.' : '  Nothing it read stands any more:'),
    ...read.map((line) => row(`  ${line}`)),
    ...(warm.length === 0 ? [] : [row(`  ${TAKEN_FOR_IT}`), ...warm.map((line) => row(`  ${line}`))]),
    ...voidRows(defs, entry.voids),
    ...(state.adopted?.void === true
      ? [
          row(
            `  The baseline that ${state.adopted.person} adopted from it falls: take its figures out of the machine record.`,
            'caution',
          ),
        ]
      : []),
    ...(state.fellFrom === null
      ? []
      : [row(`The job was closed with ${state.fellFrom}; it is now ${state.closed}.`, 'caution')]),
  ]
}
