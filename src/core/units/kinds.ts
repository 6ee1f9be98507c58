// The kinds of quantity Barover knows. A kind is narrower than a dimension: gauge, absolute and difference pressures
// share a dimension and are never taken for one another, and neither are %LEL, % by volume and a plain ratio.

export const QUANTITY_KINDS = [
  'length',
  'area',
  'volume',
  'pressure-gauge',
  'pressure-absolute',
  'pressure-difference',
  'temperature',
  'temperature-difference',
  'force',
  'torque',
  'mass',
  'time',
  'speed',
  'rotation',
  'angle',
  'power',
  'flow',
  'concentration',
  'lel-fraction',
  'ratio',
] as const

export type QuantityKind = (typeof QUANTITY_KINDS)[number]

/** Exponents over (L, M, T, Theta): length, mass, time, temperature. */
export type Dimension = readonly [length: number, mass: number, time: number, temperature: number]

const NONE: Dimension = [0, 0, 0, 0]
const PRESSURE: Dimension = [-1, 1, -2, 0]

/** Each kind's exponents. Equal exponents do not make two kinds interchangeable; the kind decides. */
export const DIMENSION: Readonly<Record<QuantityKind, Dimension>> = {
  length: [1, 0, 0, 0],
  area: [2, 0, 0, 0],
  volume: [3, 0, 0, 0],
  'pressure-gauge': PRESSURE,
  'pressure-absolute': PRESSURE,
  'pressure-difference': PRESSURE,
  temperature: [0, 0, 0, 1],
  'temperature-difference': [0, 0, 0, 1],
  force: [1, 1, -2, 0],
  torque: [2, 1, -2, 0],
  mass: [0, 1, 0, 0],
  time: [0, 0, 1, 0],
  speed: [1, 0, -1, 0],
  rotation: [0, 0, -1, 0],
  angle: NONE,
  power: [2, 1, -3, 0],
  flow: [3, 0, -1, 0],
  concentration: NONE,
  'lel-fraction': NONE,
  ratio: NONE,
}

/** Each kind in plain English, without an article. */
export const KIND_NAME: Readonly<Record<QuantityKind, string>> = {
  length: 'length',
  area: 'area',
  volume: 'volume',
  'pressure-gauge': 'gauge pressure',
  'pressure-absolute': 'absolute pressure',
  'pressure-difference': 'pressure difference',
  temperature: 'temperature',
  'temperature-difference': 'temperature difference',
  force: 'force',
  torque: 'torque',
  mass: 'mass',
  time: 'time',
  speed: 'speed',
  rotation: 'speed of rotation',
  angle: 'angle',
  power: 'power',
  flow: 'volume flow',
  concentration: 'concentration by volume',
  'lel-fraction': 'fraction of the LEL',
  ratio: 'ratio',
}

/** The kind's name with `a` or `an`, for use in a sentence. */
export function aKind(kind: QuantityKind): string {
  const name = KIND_NAME[kind]
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`
}

export function isQuantityKind(text: string): text is QuantityKind {
  return (QUANTITY_KINDS as readonly string[]).includes(text)
}
