// Every unit Barover takes or shows, one row per unit and kind, and how a typed name finds its row.
// Names are unique over the whole table, so one symbol always means one kind: a bare `psi` is a difference, never gauge.
import type { QuantityKind } from './kinds.ts'

export interface Unit {
  readonly symbol: string
  readonly kind: QuantityKind
  /** Other spellings taken as this unit. The symbol is what is shown and recorded. */
  readonly aliases: readonly string[]
  /** SI units in one of this unit: si = (value + offset) * factor. */
  readonly factor: number
  /** Temperatures only: degrees of this unit between its zero and absolute zero. */
  readonly offset?: number
  /** Where the factor comes from. */
  readonly source: string
}

const SI = 'SI unit or exact decimal multiple'
const EXACT = 'exact definition; NIST SP 811 (2008) App. B'
const DERIVED = 'derived from exact inch, pound and standard gravity; NIST SP 811 (2008) App. B'
const DEFINED = 'definition'

const INCH = 0.0254
const FOOT = 0.3048
const POUND = 0.45359237
const STANDARD_GRAVITY = 9.80665
const LBF = POUND * STANDARD_GRAVITY
const PSI = LBF / INCH ** 2
const FT_LBF = LBF * FOOT
/** Mechanical horsepower, 550 ft lbf/s; not the metric one. */
const HP = 550 * FT_LBF

function row(
  kind: QuantityKind,
  symbol: string,
  factor: number,
  source: string,
  aliases: readonly string[] = [],
): Unit {
  return { symbol, kind, aliases, factor, source }
}

const GEOMETRY: readonly Unit[] = [
  row('length', 'in', INCH, EXACT, ['in.', 'inch', 'inches', '"', '\u2033', '\u201d']),
  row('length', 'mm', 1e-3, SI),
  row('length', 'mil', INCH / 1000, EXACT, ['mils', 'thou']),
  row('length', 'um', 1e-6, SI, ['\u00b5m', 'micron', 'microns']),
  row('length', 'ft', FOOT, EXACT, ['foot', 'feet']),
  row('length', 'm', 1, SI),
  row('area', 'in2', INCH ** 2, EXACT, ['in\u00b2', 'sq in']),
  row('area', 'mm2', 1e-6, SI, ['mm\u00b2']),
  row('area', 'm2', 1, SI, ['m\u00b2']),
  row('volume', 'in3', INCH ** 3, EXACT, ['in\u00b3', 'cu in']),
  row('volume', 'ft3', FOOT ** 3, EXACT, ['ft\u00b3', 'cu ft']),
  row('volume', 'cm3', 1e-6, SI, ['cm\u00b3', 'cc']),
  row('volume', 'mL', 1e-6, SI),
  row('volume', 'L', 1e-3, SI),
  row('volume', 'm3', 1, SI, ['m\u00b3']),
  row('angle', 'deg', Math.PI / 180, EXACT, ['\u00b0', 'degree', 'degrees']),
  row('angle', 'rad', 1, SI),
]

const PRESSURES: readonly Unit[] = [
  row('pressure-gauge', 'psig', PSI, DERIVED),
  row('pressure-gauge', 'barg', 1e5, EXACT),
  row('pressure-gauge', 'kPag', 1e3, SI),
  row('pressure-gauge', 'MPag', 1e6, SI),
  row('pressure-absolute', 'psia', PSI, DERIVED),
  row('pressure-absolute', 'bara', 1e5, EXACT),
  row('pressure-absolute', 'kPaa', 1e3, SI),
  row('pressure-absolute', 'MPaa', 1e6, SI),
  row('pressure-difference', 'psi', PSI, DERIVED),
  row('pressure-difference', 'bar', 1e5, EXACT),
  row('pressure-difference', 'kPa', 1e3, SI),
  row('pressure-difference', 'MPa', 1e6, SI),
  row('pressure-difference', 'Pa', 1, SI),
]

// K = (degF + 459.67) * 5/9 and K = degC + 273.15: NIST SP 811 (2008) App. B.
const TEMPERATURES: readonly Unit[] = [
  { ...row('temperature', 'degF', 5 / 9, EXACT, ['F', '\u00b0F', 'deg F', '\u2109']), offset: 459.67 },
  { ...row('temperature', 'degC', 1, EXACT, ['C', '\u00b0C', 'deg C', '\u2103']), offset: 273.15 },
  row('temperature', 'K', 1, SI),
  row('temperature-difference', 'delta-degF', 5 / 9, EXACT, ['delta-F', 'Fdeg', '\u0394F', '\u0394\u00b0F']),
  row('temperature-difference', 'delta-degC', 1, EXACT, ['delta-C', 'Cdeg', '\u0394C', '\u0394\u00b0C']),
]

// `lb` inside a torque is pound-force; `lb` alone is a mass and is refused where a force is asked for.
const FORCES: readonly Unit[] = [
  row('force', 'lbf', LBF, DERIVED),
  row('force', 'kN', 1e3, SI),
  row('force', 'N', 1, SI),
  row('torque', 'lbf.ft', FT_LBF, DERIVED, [
    ...['lbf\u00b7ft', 'lbf-ft', 'ft.lbf', 'ft\u00b7lbf', 'ft-lbf'],
    ...['lb.ft', 'lb\u00b7ft', 'lb-ft', 'ft.lb', 'ft\u00b7lb', 'ft-lb'],
  ]),
  row('torque', 'lbf.in', LBF * INCH, DERIVED, [
    ...['lbf\u00b7in', 'lbf-in', 'in.lbf', 'in\u00b7lbf', 'in-lbf'],
    ...['lb.in', 'lb\u00b7in', 'lb-in', 'in.lb', 'in\u00b7lb', 'in-lb'],
  ]),
  row('torque', 'N.m', 1, SI, ['Nm', 'N\u00b7m', 'N-m']),
  row('mass', 'lb', POUND, EXACT, ['lbs', 'lbm']),
  row('mass', 'kg', 1, SI),
  row('mass', 'g', 1e-3, SI),
  row('power', 'hp', HP, DERIVED),
  row('power', 'kW', 1e3, SI),
  row('power', 'W', 1, SI),
]

// Rotation counts turns, not radians: 1/s is one turn a second. Flows are at the conditions where they are read;
// a flow at standard or normal conditions is another thing and has no row.
const RATES: readonly Unit[] = [
  row('time', 's', 1, SI, ['sec', 'secs', 'second', 'seconds']),
  row('time', 'min', 60, EXACT, ['mins', 'minute', 'minutes']),
  row('time', 'h', 3600, EXACT, ['hr', 'hrs', 'hour', 'hours']),
  row('speed', 'ft/min', FOOT / 60, EXACT, ['fpm']),
  row('speed', 'm/s', 1, SI),
  row('rotation', 'rpm', 1 / 60, EXACT, ['r/min', 'rev/min', '1/min']),
  row('rotation', '1/s', 1, SI, ['r/s', 'rev/s']),
  row('flow', 'cfm', FOOT ** 3 / 60, EXACT, ['acfm', 'ft3/min', 'ft\u00b3/min']),
  row('flow', 'm3/h', 1 / 3600, EXACT, ['m\u00b3/h']),
  row('flow', 'm3/s', 1, SI, ['m\u00b3/s']),
]

// Both concentrations are by volume. %LEL needs the gas and its basis to become % by volume, so it is its own kind.
const FRACTIONS: readonly Unit[] = [
  row('concentration', '%vol', 0.01, DEFINED, ['% vol', 'vol%', 'vol %']),
  row('concentration', 'ppm', 1e-6, DEFINED, ['ppmv']),
  row('lel-fraction', '%LEL', 0.01, DEFINED, ['% LEL']),
  row('ratio', '1', 1, DEFINED),
  row('ratio', '%', 0.01, DEFINED, ['percent']),
  row('ratio', 'in/in', 1, DEFINED, ['mm/mm', 'm/m']),
]

/** All rows, in the order they are named to a person within each kind. */
export const UNITS: readonly Unit[] = [
  ...GEOMETRY,
  ...PRESSURES,
  ...TEMPERATURES,
  ...FORCES,
  ...RATES,
  ...FRACTIONS,
]

/** Characters that look the same in print and come from different keyboards. */
const TWINS: Readonly<Record<string, string>> = {
  '\u03bc': '\u00b5', // Greek mu, micro sign
  '\u22c5': '\u00b7', // dot operator, middle dot
  '\u00ba': '\u00b0', // masculine ordinal, degree sign
  '\u2206': '\u0394', // increment, Greek delta
}

function tidy(name: string): string {
  const plain = name.trim().replace(/\s+/g, ' ')
  return plain.replace(/[\u03bc\u22c5\u00ba\u2206]/g, (twin) => TWINS[twin] ?? twin)
}

function hasName(unit: Unit, isSame: (name: string) => boolean): boolean {
  return isSame(unit.symbol) || unit.aliases.some(isSame)
}

/** The unit of exactly this symbol or alias, case and all; for names a program or a procedure file wrote. */
export function unitNamed(name: string): Unit | undefined {
  const wanted = tidy(name)
  return UNITS.find((unit) => hasName(unit, (known) => known === wanted))
}

/**
 * The unit a person meant: exact symbol or alias first, then without regard to case if that fits one unit only.
 * With a kind, only that kind's units are looked at; without one, case is forgiven only if unique over all units.
 */
export function findUnit(text: string, kind?: QuantityKind): Unit | undefined {
  const exact = unitNamed(text)
  if (exact !== undefined && (kind === undefined || exact.kind === kind)) return exact
  const wanted = tidy(text).toLowerCase()
  const near = UNITS.filter(
    (unit) =>
      (kind === undefined || unit.kind === kind) && hasName(unit, (known) => known.toLowerCase() === wanted),
  )
  return near.length === 1 ? near[0] : undefined
}

/** The units of one kind, in the order they are named to a person. */
export function unitsOf(kind: QuantityKind): readonly Unit[] {
  return UNITS.filter((unit) => unit.kind === kind)
}
