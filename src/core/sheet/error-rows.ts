// Where the measuring error of a verdict comes from, said beside it: the place whose repeats are most of it, and, where the verdict
// is too close to call, whatever else makes most of it.
import { type Definitions, instrumentById, stepById } from '../job/definitions.ts'
import { type MainError, mainError } from '../job/main-error.ts'
import { withoutDelta } from '../job/plausible.ts'
import { dominantRepeats, MOST } from '../job/repeats-error.ts'
import type { State } from '../job/state.ts'
import { APART_K } from '../job/temperature-gap.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { placeNumber, spreadText } from '../talk/names.ts'
import { differenceUnit, formatQuantity } from '../units/index.ts'
import { type Row, row } from './block.ts'

/** `Most of the measuring error is from 7.3: its repeats lie 0.0047 in apart.` Nothing where no one place makes most of it. */
export function errorRows(defs: Definitions, state: State, judgeId: string, record: VerdictRecord): Row[] {
  const judge = stepById(defs, judgeId)
  const wide = dominantRepeats(defs, state, judge, record)
  const main = mainError(defs, state, judge, record)
  const rows: Row[] = []
  if (wide !== null) {
    const where = placeNumber(defs, wide.read.id, wide.place.key)
    const apart = spreadText(defs, state, wide.place.key, wide.spread)
    const says = `Most of the measuring error at ${where} is its own: its repeats lie ${apart} apart. If one was a slip: correct.`
    rows.push(row(says, 'caution'))
  }
  if (main !== null && !(wide !== null && main.from === 'repeats'))
    rows.push(row(mainText(defs, main), 'caution'))
  return rows
}

/** What makes most of it, and what could be done about that. */
export function mainText(defs: Definitions, main: MainError): string {
  const most = main.share > MOST ? 'Most' : 'The largest part'
  return `Too close to call: ${most.toLowerCase()} of the measuring error is ${sourceText(defs, main)}.${gapText(defs, main)}`
}

function sourceText(defs: Definitions, { from, instrument, of, part, body }: MainError): string {
  switch (from) {
    case 'instrument':
      return `the error of ${instrument} by its certificate${certificateText(defs, instrument)}`
    case 'resolution':
      return `the step that ${instrument} reads in`
    case 'repeats':
      return 'how far repeats of one place lie apart'
    case 'part temperature':
      return `the temperature of the ${of}${driftText(defs, part)}`
    case 'instrument temperature':
      return `the temperature of ${instrument}${driftText(defs, body)}`
    case 'expansion of the part':
      return `how well the expansion of the ${of} is known`
    case 'expansion of the instrument':
      return `how well the expansion of ${instrument} is known`
  }
}

function certificateText(defs: Definitions, id: string): string {
  const one = instrumentById(defs, id)
  if (one === undefined || one.kind === 'gas_meter' || one.uncertainty === undefined) return ''
  return `, U ${one.uncertainty.expanded.text}`
}

/** Whether it moved between before and after, or the thermometer cannot tell it any better. */
function driftText(defs: Definitions, one: MainError['part']): string {
  if (one === null) return ''
  return one.driftK / 2 / Math.sqrt(3) > one.thermometerU
    ? `: before and after lie ${degrees(defs, one.driftK)} apart. If one was a slip: correct`
    : `, which the thermometer tells to ${degrees(defs, 2 * one.thermometerU)}`
}

/** Part and instrument far apart: said where the error has to do with how warm they were. */
function gapText(defs: Definitions, { from, of, instrument, part, body }: MainError): string {
  if (part === null || body === null || !/temperature|expansion/.test(from)) return ''
  const apart = Math.abs(part.celsius - body.celsius)
  return apart <= APART_K ? '' : ` The ${of} and ${instrument} lie ${degrees(defs, apart)} apart.`
}

function degrees(defs: Definitions, kelvin: number): string {
  const unit = differenceUnit(defs.machine.shop_units.temperature, 'temperature-difference')
  return withoutDelta(formatQuantity({ kind: 'temperature-difference', si: kelvin }, unit, 1))
}
