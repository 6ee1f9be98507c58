// Which instrument the sheet names for a step, and whether its figures can be taken as read with it. Nobody can measure again, so one
// that may not be used gives no value: what stands there is kept as words.
import { READS } from '../definition/instruments.ts'
import { unfitness } from './admit-people.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import { type PaperState, rowOf } from './paper.ts'
import { FRONT } from './paper-rows.ts'
import { unsuited } from './seats.ts'
import type { State } from './state.ts'

export type SheetInstrument =
  | { readonly ok: true; readonly id: string }
  /** A clause. */
  | { readonly ok: false; readonly why: string }

/** The number in the box of the step; where that is blank, the one on the front. */
function numberOnSheet(paper: PaperState, placed: PlacedStep): string | null {
  const { step } = asKind(placed, 'read')
  return rowOf(paper, placed.id, 'instrument')?.text ?? rowOf(paper, null, `seat.${step.with}`)?.text ?? null
}

/** Its calibration is held against the day on the sheet. */
export function sheetInstrument(
  defs: Definitions,
  state: State,
  paper: PaperState,
  placed: PlacedStep,
): SheetInstrument {
  const { step } = asKind(placed, 'read')
  const no = (why: string): SheetInstrument => ({ ok: false, why })
  const number = numberOnSheet(paper, placed)
  if (number === null) return no('the sheet names no instrument')
  const found = defs.instruments.instruments.find(
    ({ id }) => id.toUpperCase() === number.trim().toUpperCase(),
  )
  const instrument = found === undefined ? undefined : instrumentById(defs, found.id)
  if (instrument === undefined) return no(`${number} is not in the register`)
  const seat = defs.seats.find(({ id }) => id === step.with)
  if (
    instrument.kind === 'gas_meter' ||
    !READS[step.quantity].includes(instrument.kind) ||
    seat?.kinds.includes(instrument.kind) !== true
  )
    return no(`${instrument.id} does not measure this`)
  if (state.doubted[instrument.id] !== undefined) return no(`${instrument.id} was found out of calibration`)
  const day = rowOf(paper, null, FRONT.day)?.text ?? null
  if (day === null)
    return no(`no day on the sheet, so nobody knows whether ${instrument.id} was in calibration`)
  const unfit = unsuited(defs, step.with, instrument) ?? unfitness(defs, instrument, atNoon(day))
  return unfit === null ? { ok: true, id: instrument.id } : no(`${instrument.id}: ${unfit}`)
}

/** A moment of that day, to ask calibrations by. */
export function atNoon(day: string): string {
  return `${day} 12:00`
}
