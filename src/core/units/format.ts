// Numbers as a person reads them: plain decimals, no exponent, no minus zero, and never more figures than were measured.
import { decimalParts, formatNumber } from '../lib/decimal.ts'
import { type Quantity, valueIn } from './quantity.ts'
import { unitNamed } from './unit-table.ts'

/**
 * Decimals needed to write a resolution: 0.0001 gives 4, 0.0005 gives 4, 0.05 gives 2, 1 or 10 gives 0.
 * `resolutionInUnit` is in the unit to be shown. Throws unless it is a finite number above zero.
 */
export function decimalsOf(resolutionInUnit: number): number {
  if (!Number.isFinite(resolutionInUnit) || resolutionInUnit <= 0) {
    throw new Error(`a resolution of ${resolutionInUnit} is not possible`)
  }
  // Twelve figures: enough for any resolution, few enough to lose binary noise such as 0.1 + 0.2.
  const { digits, power } = decimalParts(resolutionInUnit, 12)
  const zeros = /0*$/.exec(digits.toString())?.[0].length ?? 0
  return Math.max(0, -(power + zeros))
}

/** Beyond this many further places a value is what adding and taking away in binary leaves, and nothing measured. */
const MOST_MORE = 6

/** `decimals`, or as many more as a value that is not zero takes to be told from zero: 0.0004 to three decimals takes four. */
export function placesFor(value: number, decimals: number): number {
  const isNought = (places: number) => Number(formatNumber(value, places)) === 0
  if (value === 0 || !isNought(decimals)) return decimals
  for (let more = decimals + 1; more <= Math.min(20, decimals + MOST_MORE); more++)
    if (!isNought(more)) return more
  return decimals
}

/** Running hours as a counter shows them: whole where it was read whole, else as fine as it was read. */
export function hoursText(hours: number): string {
  return formatNumber(hours, COUNTER_PLACES).replace(/\.?0+$/, '')
}

/** No counter of running hours is read finer. */
const COUNTER_PLACES = 2

/** A share as a whole percentage: `75 %`, not parted over lines. */
export function percentText(share: number): string {
  return `${shownNumber(share * 100, 0)}\u00a0%`
}

/** As `formatNumber`, and never a zero for what is none. */
export function shownNumber(value: number, decimals: number): string {
  return formatNumber(value, placesFor(value, decimals))
}

/**
 * To so many places, a measuring error never made smaller: 0.00034 to four places is 0.0004 (JCGM 100:2008 7.2.6 lets it be
 * rounded up). What binary leaves is no part of it.
 */
export function shownUp(value: number, decimals: number): string {
  const steps = value * 10 ** decimals
  return Number.isFinite(steps)
    ? shownNumber(Math.ceil(steps - UP_NOISE) / 10 ** decimals, decimals)
    : String(value)
}

/** Share of a step: far above what binary leaves, far below what anybody measures. */
const UP_NOISE = 1e-6

/** `9.5062 in`. The unit is shown by its symbol; a plain ratio (unit `1`) shows the number alone. */
export function formatQuantity(q: Quantity, unit: string, decimals: number): string {
  const number = shownNumber(valueIn(q, unit), decimals)
  const symbol = unitNamed(unit)?.symbol ?? unit
  return symbol === '1' ? number : `${number} ${symbol}`
}

/** Units of feet and pounds, each with the metric one that is shown beside it and back. */
const PAIRS: readonly (readonly [string, string])[] = [
  ['in', 'mm'],
  ['mil', 'um'],
  ['ft', 'm'],
  ['in2', 'mm2'],
  ['in3', 'cm3'],
  ['ft3', 'm3'],
  ['psig', 'barg'],
  ['psia', 'bara'],
  ['psi', 'bar'],
  ['degF', 'degC'],
  ['delta-degF', 'delta-degC'],
  ['lbf', 'kN'],
  ['lbf.ft', 'N.m'],
  ['lb', 'kg'],
  ['ft/min', 'm/s'],
  ['hp', 'kW'],
  ['cfm', 'm3/h'],
]

const COMPANIONS: ReadonlyMap<string, string> = new Map([
  ...PAIRS.flatMap(([own, other]): [string, string][] => [
    [own, other],
    [other, own],
  ]),
  ['mL', 'in3'],
  ['L', 'in3'],
  ['kPag', 'psig'],
  ['MPag', 'psig'],
  ['kPaa', 'psia'],
  ['MPaa', 'psia'],
  ['kPa', 'psi'],
  ['MPa', 'psi'],
  ['N', 'lbf'],
  ['lbf.in', 'N.m'],
  ['m3/s', 'cfm'],
])

const FEET_AND_POUNDS: ReadonlySet<string> = new Set([...PAIRS.map(([own]) => own), 'lbf.in'])

/** Of a unit that has a companion: whether it is the metric one of the two. */
export function isMetric(unit: string): boolean {
  return !FEET_AND_POUNDS.has(unitNamed(unit)?.symbol ?? unit)
}

/** The unit of the other system shown beside `unit`, always of the same kind; none for turns, angles and gas. */
export function companion(unit: string): string | undefined {
  return COMPANIONS.get(unitNamed(unit)?.symbol ?? unit)
}

/**
 * Decimals for the companion: its last place is the largest power of ten not above the original last place, so nothing
 * measured is lost and less than one figure is added. 0.0001 in (0.00254 mm) gives 3 of mm; 0.001 mm (0.000039 in)
 * gives 5 of in. Never below 0: 1 kN is shown to 1 lbf, as whole hundreds would misread.
 */
function companionDecimals(unit: string, other: string, decimals: number): number {
  const factor = (unitNamed(unit)?.factor ?? Number.NaN) / (unitNamed(other)?.factor ?? Number.NaN)
  // The small addition keeps an exact power of ten from falling one place short in binary.
  return Math.max(0, -Math.floor(Math.log10(factor) - decimals + 1e-9))
}

/** `9.5062 in   241.457 mm`: the quantity in its own unit, then in the companion unit if there is one. */
export function formatBoth(q: Quantity, unit: string, decimals: number): string {
  const own = formatQuantity(q, unit, decimals)
  const other = companion(unit)
  if (other === undefined) return own
  const places = placesFor(valueIn(q, unit), decimals)
  return `${own}   ${formatQuantity(q, other, companionDecimals(unit, other, places))}`
}

const MICROINCH = 0.0254e-6
const MICROMETRE = 1e-6

/**
 * `0.8 um Ra   31 uin Ra`: the finish of a surface, in metres, to the decimals of its comparator in micrometres. Never in
 * inches or millimetres, in which a finish is nothing (ISO 21920-2 and ASME B46.1 state Ra in um and uin).
 */
export function formatFinish(metres: number, decimals: number): string {
  // A micrometre is about 39 microinches: one place less loses nothing that was read.
  const inch = shownNumber(metres / MICROINCH, Math.max(0, decimals - 1))
  return `${shownNumber(metres / MICROMETRE, decimals)} um Ra   ${inch} uin Ra`
}
