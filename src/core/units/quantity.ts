// A number with its kind, held in SI. Kinds never mix here: gauge becomes absolute only with a barometric pressure.
import { ok, type Result, refuse } from '../lib/result.ts'
import { aKind, type QuantityKind } from './kinds.ts'
import { type Unit, unitNamed } from './unit-table.ts'

export interface Quantity {
  readonly kind: QuantityKind
  /** In the SI unit of the kind: m, m2, m3, Pa, K, N, N m, kg, s, m/s, 1/s, rad, W, m3/s, or a plain fraction. */
  readonly si: number
}

function requireUnit(symbol: string): Unit {
  const unit = unitNamed(symbol)
  if (unit === undefined) throw new Error(`unknown unit "${symbol}"`)
  return unit
}

function requireKind(q: Quantity, kind: QuantityKind): void {
  if (q.kind !== kind) throw new Error(`expected ${aKind(kind)}, got ${aKind(q.kind)}`)
}

/** A quantity from a number already in SI. Throws on a number that is not finite: a bug. */
export function fromSi(kind: QuantityKind, si: number): Quantity {
  if (!Number.isFinite(si)) throw new Error(`${aKind(kind)} of ${si} is not a finite number`)
  // Minus zero is a zero with a history nobody measured.
  return { kind, si: si === 0 ? 0 : si }
}

/**
 * `value` in a unit of the table, by exact symbol or alias. Throws on an unknown unit or a number that is not finite.
 * Example: quantity(212, 'degF') is 373.15 K (NIST SP 811 (2008) App. B: K = (degF + 459.67) / 1.8).
 */
export function quantity(value: number, unitSymbol: string): Quantity {
  const unit = requireUnit(unitSymbol)
  return fromSi(unit.kind, (value + (unit.offset ?? 0)) * unit.factor)
}

/** The number of `unitSymbol` in `q`. Throws on an unknown unit and when the unit is of another kind. */
export function valueIn(q: Quantity, unitSymbol: string): number {
  const unit = requireUnit(unitSymbol)
  requireKind(q, unit.kind)
  const value = fromSi(q.kind, q.si).si / unit.factor - (unit.offset ?? 0)
  if (!Number.isFinite(value)) throw new Error(`${q.si} SI is too large to state in ${unit.symbol}`)
  return value
}

/**
 * Gauge plus barometric pressure. `barometric` is an absolute pressure, from the machine record.
 * Refuses (`vacuum`) when the sum, or the barometric pressure itself, is not above zero; throws on wrong kinds.
 */
export function toAbsolute(gauge: Quantity, barometric: Quantity): Result<Quantity> {
  requireKind(gauge, 'pressure-gauge')
  const bad = checkBarometric(barometric)
  if (bad !== undefined) return bad
  const absolute = fromSi('pressure-absolute', gauge.si + barometric.si)
  if (absolute.si <= 0) {
    return refuse(
      'vacuum',
      'This gauge pressure is at or below a full vacuum; check it and the barometric pressure.',
    )
  }
  return ok(absolute)
}

/** Absolute less barometric pressure. Refuses (`vacuum`) either one if it is not above zero; throws on wrong kinds. */
export function toGauge(absolute: Quantity, barometric: Quantity): Result<Quantity> {
  requireKind(absolute, 'pressure-absolute')
  const bad = checkBarometric(barometric)
  if (bad !== undefined) return bad
  if (absolute.si <= 0) {
    return refuse('vacuum', 'This absolute pressure is at or below a full vacuum; check the reading.')
  }
  return ok(fromSi('pressure-gauge', absolute.si - barometric.si))
}

function checkBarometric(barometric: Quantity): ReturnType<typeof refuse> | undefined {
  requireKind(barometric, 'pressure-absolute')
  if (barometric.si > 0) return undefined
  return refuse('vacuum', 'The barometric pressure is not above zero; enter it in the machine record.')
}

const KIND_OF_DIFFERENCE: Partial<Record<QuantityKind, QuantityKind>> = {
  'pressure-gauge': 'pressure-difference',
  'pressure-absolute': 'pressure-difference',
  temperature: 'temperature-difference',
}

/**
 * a - b, both of one kind. Temperatures give a temperature difference and pressures of one reference a pressure
 * difference; every other kind gives itself. Throws on two kinds. There is no sum: two temperatures cannot be added.
 */
export function difference(a: Quantity, b: Quantity): Quantity {
  requireKind(b, a.kind)
  return fromSi(KIND_OF_DIFFERENCE[a.kind] ?? a.kind, a.si - b.si)
}
