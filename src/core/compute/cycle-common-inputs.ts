// Inputs that several cycle computations share, and the one place where their gauge pressures become absolute.

import { firstFault, ratioFault, within } from '../cycle/guard.ts'
import { ok, type Result } from '../lib/result.ts'
import { fromSi, type QuantityKind, toAbsolute } from '../units/index.ts'
import type { Parameter, TraceStep } from './computation.ts'
import { fig, type Given } from './cycle-given.ts'

export function take(
  name: string,
  says: string,
  kind: QuantityKind,
  unit: string,
  more: { readonly signed?: boolean; readonly optional?: boolean } = {},
): Parameter {
  const { signed, optional } = more
  const type = { is: 'quantity', kind, unit, ...(signed === undefined ? {} : { signed }) } as const
  return { name, says, type, ...(optional === undefined ? {} : { optional }) }
}

export function takeNumber(
  name: string,
  says: string,
  least: number,
  most: number,
  whole = false,
): Parameter {
  return { name, says, type: { is: 'number', least, most, ...(whole ? { whole } : {}) } }
}

export function takeWord(name: string, says: string, words: readonly string[]): Parameter {
  return { name, says, type: { is: 'word', words } }
}

export function takeList(
  name: string,
  says: string,
  kind: QuantityKind,
  unit: string,
  least: number,
): Parameter {
  return {
    name,
    says,
    type: { is: 'quantities', kind, unit, least },
    ...(least === 0 ? { optional: true } : {}),
  }
}

export const BORE = take('bore', 'nominal or measured bore', 'length', 'in')
export const ROD = take('rod', 'piston rod diameter', 'length', 'in')
export const TAIL_ROD = take('tail_rod', 'tail rod diameter; left out: no tail rod', 'length', 'in', {
  optional: true,
})
export const STROKE = take('stroke', 'stroke', 'length', 'in')
export const SPEED = take('speed', 'speed of the crankshaft', 'rotation', 'rpm')
export const CON_ROD = take('con_rod', 'connecting rod between centres', 'length', 'in')
export const SUCTION = take('suction', 'suction pressure at the cylinder', 'pressure-gauge', 'psig', {
  signed: true,
})
export const DISCHARGE = take('discharge', 'discharge pressure at the cylinder', 'pressure-gauge', 'psig', {
  signed: true,
})
export const BAROMETER = take('barometer', 'barometric pressure of the site', 'pressure-absolute', 'psia')
export const SUCTION_TEMPERATURE = take(
  'suction_temperature',
  'gas temperature at the cylinder suction',
  'temperature',
  'degF',
  { signed: true },
)
export const K = takeNumber('k', 'exponent of compression and re-expansion', 1, 2)
export const Z_SUCTION = takeNumber('z_suction', 'compressibility at suction; 1 for an ideal gas', 0.1, 3)
export const Z_DISCHARGE = takeNumber(
  'z_discharge',
  'compressibility at discharge; 1 for an ideal gas',
  0.1,
  3,
)

export interface Pressures {
  readonly suctionPa: number
  readonly dischargePa: number
  readonly barometerPa: number
  readonly ratio: number
  readonly trace: readonly TraceStep[]
}

/**
 * Both gauge pressures brought to absolute with the site's barometer, and their ratio.
 * Refuses: a barometer outside 30 to 120 kPa, a pressure at or below vacuum, a ratio outside 1 to 50.
 */
export function absolutePressures(given: Given): Result<Pressures> {
  const barometer = barometerOf(given)
  if (!barometer.ok) return barometer
  const barometerPa = barometer.value
  const suction = absoluteOf(given, 'suction', barometerPa)
  if (!suction.ok) return suction
  const discharge = absoluteOf(given, 'discharge', barometerPa)
  if (!discharge.ok) return discharge
  const [suctionPa, dischargePa] = [suction.value, discharge.value]
  const ratio = dischargePa / suctionPa
  const kPa = (pa: number) => fig(pa / 1000)
  const trace = [
    {
      says: 'Suction and discharge, absolute, and their ratio',
      formula: 'Ps = suction + barometer; Pd = discharge + barometer; r = Pd/Ps',
      worked: `Ps = ${kPa(suctionPa)} kPa; Pd = ${kPa(dischargePa)} kPa; r = ${fig(ratio)}`,
    },
  ]
  return firstFault(ratioFault(ratio)) ?? ok({ suctionPa, dischargePa, barometerPa, ratio, trace })
}

export function barometerOf(given: Given): Result<number> {
  const barometerPa = given.si('barometer')
  return firstFault(within('barometer in Pa', barometerPa, 3e4, 1.2e5)) ?? ok(barometerPa)
}

export function absoluteOf(given: Given, name: string, barometerPa: number): Result<number> {
  const gauge = fromSi('pressure-gauge', given.si(name))
  const absolute = toAbsolute(gauge, fromSi('pressure-absolute', barometerPa))
  return absolute.ok ? ok(absolute.value.si) : absolute
}

export function sizeOf(given: Given) {
  const tailRodM = given.maybe('tail_rod')
  return {
    boreM: given.si('bore'),
    rodM: given.si('rod'),
    ...(tailRodM === undefined ? {} : { tailRodM }),
  }
}
