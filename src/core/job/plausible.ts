// Is a reading believable at all? Outside its window it is doubted: asked about, never corrected by the program.
import { DIFFERENCE_OF, type ReadQuantity, reachOf } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import { writtenFact } from '../rules/machine-facts.ts'
import { decimalsOf, differenceUnit, formatQuantity } from '../units/index.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { gaugeById } from './seats.ts'

/** Floating noise, SI of whatever is read: a reading on the edge of its window is inside it. */
export const NOISE = 1e-9

/** Times what it is held against, from where how far off it is says nothing any more: our own figure. */
const FAR = 10

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/**
 * Why the reading is doubted, as a clause about the figure, or null when it lies in its window and on the scale of its instrument. A size
 * that no part here has is a slip more likely than another gauge, so of gauges set on a standard the window comes first.
 */
export function implausible(defs: Definitions, placed: ReadStep, reading: ReadingAt): string | null {
  const offScale = beyondItsScale(defs, reading)
  const isGauge = gaugeById(defs, reading.instrument) !== null
  return isGauge
    ? (outsideWindow(defs, placed, reading) ?? offScale)
    : (offScale ?? outsideWindow(defs, placed, reading))
}

function outsideWindow(defs: Definitions, placed: ReadStep, reading: ReadingAt): string | null {
  const { plausible, quantity } = placed.step
  if (plausible.from === 'range') {
    if (reading.si >= plausible.least.si - NOISE && reading.si <= plausible.most.si + NOISE) return null
    return `outside ${plausible.least.text} to ${plausible.most.text}`
  }
  const reference = referenceFor(defs, plausible, reading)
  if (reference === null) return 'without anything on record to compare it with'
  const off = reading.si - reference.si
  if (off >= -plausible.below.si - NOISE && off <= plausible.above.si + NOISE) return null
  // A figure that is no size of this part at all is not told to the last place.
  if (quantity === 'length' && reference.si > 0 && Math.abs(off) > FAR * reference.si)
    return `more than ${FAR} times ${reference.name}`
  const size = sizeOf(defs, quantity, Math.abs(off), reading)
  return `${size} ${off < 0 ? 'under' : 'over'} ${reference.name}`
}

/**
 * Why a reading that was believed when it was keyed is not by the record as it is now, or null: another record was taken in since.
 * One that was kept in spite of a doubt stands by the word of whoever kept it.
 */
export function nowDoubted(
  defs: Definitions,
  placed: ReadStep,
  reading: ReadingAt & { readonly keptBecause: string | null },
): string | null {
  return reading.keptBecause === null ? implausible(defs, placed, reading) : null
}

/** A difference in the unit the reading was keyed in; of degrees and pressures, in the unit of their difference. */
export function sizeOf(defs: Definitions, quantity: ReadQuantity, si: number, reading: ReadingAt): string {
  const kind = DIFFERENCE_OF[quantity]
  return withoutDelta(
    formatQuantity({ kind, si }, differenceUnit(reading.unit, kind), decimalsIn(defs, reading)),
  )
}

/** `60.9 degF` of `60.9 delta-degF`: where people read that two figures are apart, the sign of a difference is no word. */
export function withoutDelta(text: string): string {
  return text.replace('delta-', '')
}

/** What an instrument cannot show was not read on it. Of a gauge the register states what it spans with the rods or anvils it comes with. */
export function beyondItsScale(
  defs: Definitions,
  reading: Pick<ReadingAt, 'instrument' | 'si'>,
): string | null {
  const instrument = instrumentById(defs, reading.instrument)
  if (instrument === undefined || instrument.kind === 'gas_meter') return null
  const { from, to } = instrument.range
  const reach = reachOf(instrument)
  if (reading.si >= reach.from - NOISE && reading.si <= reach.to + NOISE) return null
  return `beyond what ${instrument.id} reads, ${from.text} to ${to.text}`
}

function referenceFor(
  defs: Definitions,
  plausible: Exclude<ReadStep['step']['plausible'], { from: 'range' }>,
  reading: ReadingAt,
): { readonly si: number; readonly name: string } | null {
  const { bore } = defs.machine
  if (plausible.from === 'nominal') return { si: bore.nominal.si, name: `nominal ${bore.nominal.text}` }
  if (plausible.from === 'counterbore') {
    return bore.counterbore === undefined
      ? null
      : { si: bore.counterbore.si, name: `the counterbore on record, ${bore.counterbore.text}` }
  }
  if (plausible.from === 'record') {
    const written = writtenFact(defs.machine, plausible.of)
    const name = `the ${plausible.of.replaceAll('_', ' ')} on record, ${written?.text ?? ''}`
    return written === undefined ? null : { si: written.si, name }
  }
  const gauge = gaugeById(defs, reading.instrument)
  return gauge === null
    ? null
    : { si: gauge.set_check.size.si, name: `the standard, ${gauge.set_check.size.text}` }
}

/** Decimals that the instrument's resolution gives in the unit keyed. */
export function decimalsIn(defs: Definitions, reading: Pick<ReadingAt, 'instrument' | 'unit'>): number {
  const instrument = instrumentById(defs, reading.instrument)
  if (instrument === undefined || instrument.kind === 'gas_meter') return 4
  const { resolution } = instrument
  if (resolution.unit === reading.unit || resolution.kind !== 'length') return decimalsOf(resolution.value)
  return reading.unit === 'mm' ? 3 : 4
}
