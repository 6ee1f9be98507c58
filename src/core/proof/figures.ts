// Figures that a gauge or a meter could show: believable, on the edge of a limit, beyond it.

import type { EvidenceOf } from '../definition/evidence.ts'
import type { Instrument, ReadQuantity } from '../definition/instruments.ts'
import type { GasLimit } from '../definition/machine.ts'
import type { StepOf } from '../definition/procedure.ts'
import type { PlacedStep } from '../job/definitions.ts'
import { type Definitions, instrumentById } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/evidence-gas.ts'
import { writtenFact } from '../rules/machine-facts.ts'
import { formatNumber, fromSi, unitsOf, valueIn } from '../units/index.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface Figure {
  readonly typed: string
  readonly value: number
  readonly unit: string
  readonly si: number
}

/** A believable value for the step, in the unit of the instrument that its seat takes. */
export function baselineOf(defs: Definitions, read: ReadStep): Figure {
  return figure(defs, read, middleOf(defs, read))
}

/** Believed against the last overhaul too: on from everything that was left of it, the way wear goes. */
function middleOf(defs: Definitions, read: ReadStep): number {
  const middle = middleOfWindow(defs, read)
  const { of, quantity, repeats } = read.step
  const left = (defs.machine.overhauls ?? [])
    .flatMap((one) => one.left)
    .filter((one) => one.of.trim().toLowerCase() === of.trim().toLowerCase() && one.value.kind === quantity)
  const figures = left.map((one) => one.value.si)
  if (figures.length === 0) return middle
  return left.some((one) => one.wears === 'smaller')
    ? Math.min(middle, Math.min(...figures) - repeats.within.si)
    : Math.max(middle, Math.max(...figures) + repeats.within.si)
}

function middleOfWindow(defs: Definitions, { step }: ReadStep): number {
  const { plausible } = step
  const { bore } = defs.machine
  switch (plausible.from) {
    case 'range':
      return (plausible.least.si + plausible.most.si) / 2
    case 'nominal':
      return bore.nominal.si
    case 'counterbore':
      return bore.counterbore?.si ?? bore.nominal.si
    case 'record':
      return writtenFact(defs.machine, plausible.of)?.si ?? 1
    case 'standard': {
      const gauge = instrumentOf(defs, step.with)
      return gauge !== undefined && 'set_check' in gauge ? gauge.set_check.size.si : bore.nominal.si
    }
  }
}

function instrumentOf(defs: Definitions, seatId: string) {
  const kinds = defs.seats.find((s) => s.id === seatId)?.kinds ?? []
  return defs.instruments.instruments.find((i) => kinds.includes(i.kind))
}

function figure(defs: Definitions, { step }: ReadStep, si: number): Figure {
  const instrument = instrumentOf(defs, step.with)
  const unit = unitOf(instrument, step.quantity)
  const typed = formatNumber(valueIn(fromSi(step.quantity, si), unit), 5)
  return { typed, value: Number(typed), unit, si }
}

function unitOf(instrument: Instrument | undefined, quantity: ReadQuantity): string {
  if (instrument !== undefined && instrument.kind !== 'gas_meter') return instrument.unit
  return { length: 'mm', temperature: 'degC' }[quantity as 'length'] ?? unitsOf(quantity)[0]?.symbol ?? ''
}

/** What can be keyed at a place with this instrument: like the others, apart from them, and not to be believed. */
export function readingsFor(
  defs: Definitions,
  read: ReadStep,
  instrumentId: string,
  last: number | null,
): { readonly alike: string; readonly apart: string; readonly absurd: string } {
  const instrument = instrumentById(defs, instrumentId)
  const unit = unitOf(instrument, read.step.quantity)
  const typed = (si: number) => formatNumber(valueIn(fromSi(read.step.quantity, si), unit), 5)
  const base = middleOf(defs, read)
  const alike = last ?? base
  return {
    alike: typed(alike),
    apart: typed(alike + read.step.repeats.within.si * 3),
    absurd: typed(absurdFor(read, base)),
  }
}

/** Outside every window there is. */
function absurdFor({ step }: ReadStep, base: number): number {
  const { plausible, quantity } = step
  if (quantity === 'temperature') return base + 500
  if (plausible.from === 'range') return plausible.most.si + 10 * (plausible.most.si - plausible.least.si)
  return base * 2
}

/** Inside a gas limit, on each of its edges, just beyond each, and where some meters are blind. */
export function gasFigures(limit: GasLimit): string[] {
  const kind = limit.gas === 'flammable' ? ('lel-fraction' as const) : ('concentration' as const)
  const typed = (si: number) =>
    formatNumber(valueIn(fromSi(kind, si), GAS_UNITS[limit.gas]), 6).replace(/\.?0+$/, '')
  const edges = [limit.at_least, limit.at_most].flatMap((bound) =>
    bound === undefined || bound.kind !== kind ? [] : [bound.si],
  )
  const inside = edges.reduce((sum, si) => sum + si, 0) / Math.max(1, edges.length)
  const all = [inside * 0.9, 0, ...edges.flatMap((si) => [si, si * 1.01, si * 0.99])]
  return [...new Set([...all.map(typed), '0.01', '101'])]
}

/** Inside the limits of a measured value, on each, just beyond each, and a little inside each. */
export function measuredFigures(defs: Definitions, evidence: EvidenceOf<'measured'>): string[] {
  const instrument = instrumentOf(defs, evidence.with)
  if (instrument === undefined || instrument.kind === 'gas_meter') return ['0']
  const typed = (si: number) => formatNumber(valueIn(fromSi(evidence.quantity, si), instrument.unit), 5)
  const edges = [evidence.at_least, evidence.at_most].flatMap((bound) => bound?.si ?? [])
  const step = instrument.resolution.si
  const { from, to } = instrument.range
  const [least = from.si, most = to.si] = edges.length === 2 ? edges : []
  // The best place there is: in the middle of what the limits and the face of the instrument leave.
  const low = Math.max(evidence.at_least?.si ?? from.si, from.si)
  const high = Math.min(evidence.at_most?.si ?? to.si, to.si)
  const all = [
    (low + high) / 2,
    low,
    (least + most) / 2,
    ...edges.flatMap((si) => [si, si + step, si - step, si + 10 * step, si - 10 * step]),
  ]
  return [...new Set(all.map(typed))]
}
