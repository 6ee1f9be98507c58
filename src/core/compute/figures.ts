// Figures as they stand in a line of arithmetic: so many that count, plain decimals, no exponent.
import { companion, formatNumber, type Quantity, valueIn } from '../units/index.ts'

/** Places that a shop reads a length to, by unit: fewer would hide what was measured. */
const LENGTH_PLACES: Readonly<Record<string, number>> = { in: 4, mm: 3, mil: 2, um: 1 }

/** Decimals that show `figures` figures of `x`; 0 to 12. */
export function decimalsFor(x: number, figures: number): number {
  if (x === 0) return 0
  const lead = Math.floor(Math.log10(Math.abs(x)) + 1e-12)
  return Math.min(12, Math.max(0, figures - 1 - lead))
}

/** `x` to so many figures. Throws on a number that is not finite. */
export function figured(x: number, figures = 5): string {
  return formatNumber(x, decimalsFor(x, figures))
}

/** As keyed, as near as a double can tell: no zeros left over at the end. */
export function trimmed(x: number, figures = 12): string {
  return withoutZeros(figured(x, figures), 0)
}

/**
 * A quantity in one unit, for a line of arithmetic: `9.5062 in`, `0.000424 in`, `23110 lbf`. A length has the places of
 * its unit or more, enough for 4 figures, and no zeros beyond; anything else has so many figures.
 */
export function inUnit(q: Quantity, unit: string, figures = 5): string {
  return withSymbol(q.kind === 'length' ? lengthText(q, unit) : figured(valueIn(q, unit), figures), unit)
}

function lengthText(q: Quantity, unit: string): string {
  const value = valueIn(q, unit)
  const places = LENGTH_PLACES[unit] ?? 0
  return withoutZeros(formatNumber(value, Math.max(decimalsFor(value, 4), places)), places)
}

/** A result in its own unit and, where there is one, in that of the other system. */
export function inBoth(q: Quantity, unit: string): string {
  const other = companion(unit)
  return other === undefined ? inUnit(q, unit) : `${inUnit(q, unit)}   ${inUnit(q, other)}`
}

/** An input as it was understood: every figure keyed, then the other system. */
export function asTaken(q: Quantity, unit: string): string {
  const own = withSymbol(trimmed(valueIn(q, unit), 8), unit)
  const other = companion(unit)
  return other === undefined ? own : `${own}   ${withSymbol(trimmed(valueIn(q, other), 6), other)}`
}

function withSymbol(text: string, unit: string): string {
  return unit === '1' ? text : `${text} ${unit}`
}

/** Drops zeros at the end, but keeps so many places. */
function withoutZeros(text: string, places: number): string {
  const [whole = '', part = ''] = text.split('.')
  const kept = part.slice(0, places) + part.slice(places).replace(/0+$/, '')
  return kept === '' ? whole : `${whole}.${kept}`
}
