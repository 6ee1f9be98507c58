// A quantity as a report holds it: in SI, and as the sheet shows it.
import type { Definitions } from '../../job/definitions.ts'
import type { ReadingAt } from '../../job/entries.ts'
import { bareReading, bareWorked, isFinish, lengthText } from '../../talk/names.ts'
import {
  formatNumber,
  fromSi,
  type QuantityKind,
  shownNumber,
  unitNamed,
  valueIn,
} from '../../units/index.ts'
import type { Figure } from '../schema-words.ts'

/** The unit a kind has in SI, for headers. */
export const SI_UNIT: Readonly<Record<QuantityKind, string>> = {
  length: 'm',
  area: 'm2',
  volume: 'm3',
  'pressure-gauge': 'Pa',
  'pressure-absolute': 'Pa',
  'pressure-difference': 'Pa',
  temperature: 'K',
  'temperature-difference': 'K',
  force: 'N',
  torque: 'N.m',
  mass: 'kg',
  time: 's',
  speed: 'm/s',
  rotation: '1/s',
  angle: 'rad',
  power: 'W',
  flow: 'm3/s',
  concentration: '1',
  'lel-fraction': '1',
  ratio: '1',
}

/** `shown` is the figure in `unit` as the sheet has it; the unit by the one name it is shown by. */
export function figureOf(kind: QuantityKind, si: number, unit: string, shown: string): Figure {
  const symbol = unitNamed(unit)?.symbol ?? unit
  return { si, kind, unit: symbol, shown, text: symbol === '1' ? shown : `${shown} ${symbol}` }
}

/** With so many decimals. Throws on a unit that is not of the kind: a bug of the caller. */
export function figureIn(kind: QuantityKind, si: number, unit: string, decimals: number): Figure {
  return figureOf(kind, si, unit, formatNumber(valueIn(fromSi(kind, si), unit), decimals))
}

/** The same, and a value that is not zero is never shown as one. */
export function figureShown(kind: QuantityKind, si: number, unit: string, decimals: number): Figure {
  return figureOf(kind, si, unit, shownNumber(valueIn(fromSi(kind, si), unit), decimals))
}

/** One reading in the unit it was keyed in. */
export function figureRead(defs: Definitions, reading: ReadingAt): Figure {
  const kind = unitNamed(reading.unit)?.kind ?? 'length'
  return figureOf(kind, reading.si, reading.unit, bareReading(defs, reading))
}

/** Decimals of a length in the shop's unit, and `more`. */
export function shopDecimals({ machine }: Definitions, more = 0): number {
  return (machine.shop_units.length === 'in' ? 4 : 3) + more
}

/** A length in the shop's unit, to the last place of its gauges and `more`. */
export function shopLength(defs: Definitions, metres: number, more = 0): Figure {
  return figureShown('length', metres, defs.machine.shop_units.length, shopDecimals(defs, more))
}

/** How far the readings of a place lie apart, in words. */
export function spreadOf(defs: Definitions, last: ReadingAt, si: number): string {
  return isFinish(defs, last.instrument) ? bareWorked(defs, last, si) : lengthText(defs, si)
}
