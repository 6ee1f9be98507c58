// A size keyed where a temperature is asked: 9.5 for the bore of 9.500 in is a temperature that its window lets through, and so is
// 9.5033, the bore as it was read. It is asked about and never put right.
import type { StepOf } from '../definition/procedure.ts'
import { decimalsOf, formatNumber } from '../units/index.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { ReadingAt } from './entries.ts'
import { gaugeById } from './seats.ts'
import { type State, stands } from './state.ts'

/** More places than this are no thermometer's, and no figure is told apart by them. */
const MOST_DECIMALS = 9

/** A part of a size: wear, an oversize and a liner lie within it. Common practice, no source. */
const NEAR = 1 / 50

/**
 * Which size of this job the figure is, to the places it was keyed with: `the nominal bore, 9.500 in`; or, where it has more places
 * than its thermometer shows, which it is near: `near the nominal bore, 9.500 in`. Null where it is none, where it has no place behind
 * the point to tell by, or where a unit was keyed with it. Common practice, no source.
 */
export function sizeKeyed(
  defs: Definitions,
  state: State,
  { step }: PlacedStep & { readonly step: StepOf<'read'> },
  { typed, value, instrument }: Pick<ReadingAt, 'typed' | 'value' | 'instrument'>,
): string | null {
  if (step.quantity !== 'temperature' || /\p{L}/u.test(typed)) return null
  const places = /\d[.,](\d+)\s*$/.exec(typed.trim())?.[1]?.length ?? 0
  if (places < 1 || places > MOST_DECIMALS || !Number.isFinite(value)) return null
  const keyed = formatNumber(value, places)
  const sizes = sizesOf(defs, state)
  const found = sizes.find((size) => formatNumber(size.value, places) === keyed)
  if (found !== undefined) return `${found.name}, ${found.text}`
  const shown = placesShown(defs, instrument)
  if (shown === null || places <= shown) return null
  const off = (size: Size) => Math.abs(value - size.value) / Math.abs(size.value)
  const [nearest] = [...sizes].sort((a, b) => off(a) - off(b))
  return nearest !== undefined && off(nearest) <= NEAR ? `near ${nearest.name}, ${nearest.text}` : null
}

/** Places behind the point that the thermometer shows; null where its record does not tell. */
function placesShown(defs: Definitions, id: string): number | null {
  const instrument = instrumentById(defs, id)
  if (instrument === undefined || instrument.kind === 'gas_meter') return null
  return decimalsOf(instrument.resolution.value)
}

interface Size {
  readonly name: string
  readonly text: string
  readonly value: number
}

/** The bore, the standards of the gauges that were picked, and the size that was keyed last. */
function sizesOf(defs: Definitions, state: State): readonly Size[] {
  const { nominal, counterbore } = defs.machine.bore
  const standards = state.picked.flatMap((id) => gaugeById(defs, id)?.set_check.size ?? [])
  const last = lastSize(defs, state)
  return [
    { name: 'the nominal bore', ...nominal },
    ...(counterbore === undefined ? [] : [{ name: 'the counterbore', ...counterbore }]),
    ...standards.map((size) => ({ name: 'the size of the standard', ...size })),
    ...(last === null
      ? []
      : [{ name: 'the size keyed last', text: `${last.typed.trim()} ${last.unit}`, value: last.value }]),
  ]
}

function lastSize(defs: Definitions, state: State): ReadingAt | null {
  const lengths = new Set(
    defs.steps.flatMap(({ id, step }) => (step.kind === 'read' && step.quantity === 'length' ? [id] : [])),
  )
  const [last] = Object.values(state.readings)
    .flat()
    .filter((one) => stands(one) && lengths.has(one.step) && !/\p{L}/u.test(one.typed))
    .sort((a, b) => b.seq - a.seq)
  return last ?? null
}
