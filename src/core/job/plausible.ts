// Is a reading believable at all? Outside its window it is doubted: asked about, never corrected by the program.
import type { StepOf } from '../definition/procedure.ts'
import { decimalsOf, formatQuantity } from '../units/index.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { gaugeById } from './seats.ts'

/** Floating noise, in metres or kelvins: a reading on the edge of its window is inside it. */
const NOISE = 1e-9

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/** Why the reading is doubted, as a clause about the figure, or null when it lies in its window. */
export function implausible(defs: Definitions, placed: ReadStep, reading: ReadingAt): string | null {
  const { plausible } = placed.step
  if (plausible.from === 'range') {
    if (reading.si >= plausible.least.si - NOISE && reading.si <= plausible.most.si + NOISE) return null
    return `outside ${plausible.least.text} to ${plausible.most.text}`
  }
  const reference = referenceFor(defs, plausible.from, reading)
  if (reference === null) return 'without anything on record to compare it with'
  const off = reading.si - reference.si
  if (off >= -plausible.below.si - NOISE && off <= plausible.above.si + NOISE) return null
  const decimals = decimalsIn(defs, reading)
  const size = formatQuantity({ kind: 'length', si: Math.abs(off) }, reading.unit, decimals)
  return `${size} ${off < 0 ? 'under' : 'over'} ${reference.name}`
}

function referenceFor(
  defs: Definitions,
  from: 'nominal' | 'counterbore' | 'standard',
  reading: ReadingAt,
): { readonly si: number; readonly name: string } | null {
  const { bore } = defs.machine
  if (from === 'nominal') return { si: bore.nominal.si, name: `nominal ${bore.nominal.text}` }
  if (from === 'counterbore') {
    return bore.counterbore === undefined
      ? null
      : { si: bore.counterbore.si, name: `the counterbore on record, ${bore.counterbore.text}` }
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
  if (instrument.kind === 'contact_thermometer' || instrument.kind === 'pressure_gauge')
    return decimalsOf(instrument.resolution.value)
  if (instrument.resolution.unit === reading.unit) return decimalsOf(instrument.resolution.value)
  return reading.unit === 'mm' ? 3 : 4
}
