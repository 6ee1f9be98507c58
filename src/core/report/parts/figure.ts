// A quantity as a report holds it: in SI, and as the sheet shows it.
import type { Definitions } from '../../job/definitions.ts'
import type { ReadingAt } from '../../job/entries.ts'
import { bareError, bareReading, isFinish } from '../../talk/names.ts'
import { fromSi, type QuantityKind, shownNumber, unitNamed, valueIn } from '../../units/index.ts'
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

/** With so many decimals, or as many more as tell a value that is not zero from one. Throws on a unit that is not of the kind. */
export function figureShown(kind: QuantityKind, si: number, unit: string, decimals: number): Figure {
  return figureOf(kind, si, unit, shownNumber(valueIn(fromSi(kind, si), unit), decimals))
}

/** The finish of a surface names itself behind its unit: it is no size. */
export function asFinish(figure: Figure): Figure {
  return { ...figure, text: `${figure.text} Ra` }
}

/** One reading in the unit it was keyed in. */
export function figureRead(defs: Definitions, reading: ReadingAt): Figure {
  const kind = unitNamed(reading.unit)?.kind ?? 'length'
  const figure = figureOf(kind, reading.si, reading.unit, bareReading(defs, reading))
  return isFinish(defs, reading.instrument) ? asFinish(figure) : figure
}

/** A length in the shop's unit, to the last place of its gauges and `more`. */
export function shopLength(defs: Definitions, metres: number, more = 0): Figure {
  const unit = defs.machine.shop_units.length
  return figureShown('length', metres, unit, (unit === 'in' ? 4 : 3) + more)
}

/** A measuring error in the shop's unit, to the last place of its gauges: rounded up, as what is allowed for is no less. */
export function shopError(defs: Definitions, metres: number): Figure {
  const unit = defs.machine.shop_units.length
  return figureOf('length', metres, unit, bareError(defs, metres))
}
