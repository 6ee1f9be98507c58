// Published values and worked examples of statistics and measuring error, one row each. Derived figures do not count.

import type { Result } from '../../../src/core/lib/result.ts'
import { type Component, combineBudget, expandBudget } from '../../../src/core/metrology/budget.ts'
import { conformance, guardBandFor, guardBandRisk } from '../../../src/core/metrology/conformance.ts'
import { grubbsCritical } from '../../../src/core/statistics/grubbs.ts'
import { fitLine, predict } from '../../../src/core/statistics/line.ts'
import { normalAt } from '../../../src/core/statistics/normal-quantile.ts'
import { coverageFactor, tAt } from '../../../src/core/statistics/student-t.ts'
import { meanOf, sdOf } from '../../../src/core/statistics/summary.ts'
import { H2, H2_R } from './gum-h2.ts'
import * as data from './statistics-data.ts'

export interface Published {
  readonly what: string
  readonly source: string
  /** Whether the printed figure was read, read as another text retells it, or is from memory. */
  readonly status: 'read' | 'read second-hand' | 'from memory'
  readonly printed: number
  readonly tolerance: number
  readonly got: number
}

type Row = readonly [what: string, printed: number, got: number, tolerance: number]

function from(source: string, status: Published['status'], rows: readonly Row[]): Published[] {
  return rows.map(([what, printed, got, tolerance]) => ({ what, source, status, printed, got, tolerance }))
}

/** Half a unit in the last printed place; a hair more, as the printed half may itself have been rounded. */
const half = (decimals: number) => 0.5000001 * 10 ** -decimals
/** 15 figures are certified; doubles of the data carry about 13 of them through to a small scatter. */
const near15 = (printed: number) => Math.abs(printed) * 1e-12
const certified = (what: string, printed: number, got: number): Row => [what, printed, got, near15(printed)]

function sound<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

const lineOf = (xs: readonly number[], ys: readonly number[]) =>
  sound(fitLine(xs.map((x, i) => ({ x, y: ys[i] ?? Number.NaN }))))
const norris = lineOf(data.NORRIS_X, data.NORRIS_Y)
const oxygen = lineOf(data.OXYGEN_X, data.OXYGEN_Y)
const se = (x: number | null) => x ?? Number.NaN
const slopeHalf = coverageFactor(0.95, 18) * se(oxygen.slopeSe)
const atOne = sound(predict(oxygen, 1, 0.95))

const STRD = 'NIST StRD certified values'
const NIST: Published[] = [
  ...from(`${STRD}, Norris.dat (linear, lower difficulty)`, 'read', [
    certified('Norris intercept', -0.262323073774029, norris.intercept),
    certified('Norris slope', 1.00211681802045, norris.slope),
    certified('Norris sd of intercept', 0.232818234301152, se(norris.interceptSe)),
    certified('Norris sd of slope', 0.429796848199937e-3, se(norris.slopeSe)),
    certified('Norris residual sd', 0.884796396144373, se(norris.residualSd)),
    certified('Norris R squared', 0.999993745883712, se(norris.r2)),
    certified('Norris residual sum of squares', 26.6173985294224, norris.sse),
    certified('Norris regression sum of squares', 4255954.13232369, norris.slope ** 2 * norris.sxx),
    certified('Norris F', 5436385.54079785, (norris.slope / se(norris.slopeSe)) ** 2),
    certified('Norris t of slope', 2331.60578589043, norris.slope / se(norris.slopeSe)),
  ]),
  ...from(`${STRD}, Michelso.dat (from a test-data file that cites it)`, 'read second-hand', [
    certified('Michelso mean', 299.8524, meanOf(data.MICHELSO)),
    certified('Michelso sd', 0.0790105478190518, sdOf(data.MICHELSO)),
  ]),
  ...from(`${STRD}, Mavro.dat (from a test-data file that cites it)`, 'read second-hand', [
    certified('Mavro mean', 2.001856, meanOf(data.MAVRO)),
    certified('Mavro sd', 0.000429123454003053, sdOf(data.MAVRO)),
  ]),
  ...from(`${STRD}, Lew.dat (data and values from three public test files)`, 'read second-hand', [
    certified('Lew mean', -177.435, meanOf(data.LEW)),
    certified('Lew sd', 277.332168044316, sdOf(data.LEW)),
  ]),
  ...from(`${STRD}, NumAcc1.dat (from public test files)`, 'read second-hand', [
    ['NumAcc1 mean', 10000002, meanOf(data.NUMACC1), 0],
    ['NumAcc1 sd', 1, sdOf(data.NUMACC1), 0],
  ]),
  ...from('NIST/SEMATECH e-Handbook 6.3.2.2, individuals chart (from a test-data file)', 'read second-hand', [
    ['Flowrate mean', 50.81, meanOf(data.FLOWRATE), half(2)],
    ['Flowrate mean moving range', 1.8778, movingRange(), half(4)],
    ['Flowrate upper control limit', 55.8041, meanOf(data.FLOWRATE) + (3 * movingRange()) / 1.128, half(4)],
    ['Flowrate lower control limit', 45.8159, meanOf(data.FLOWRATE) - (3 * movingRange()) / 1.128, half(4)],
  ]),
]

function movingRange(): number {
  return meanOf(data.FLOWRATE.slice(1).map((x, i) => Math.abs(x - (data.FLOWRATE[i] ?? Number.NaN))))
}

const BOOKS: Published[] = [
  ...from(
    'D. C. Montgomery & G. C. Runger, Applied Statistics and Probability for Engineers, Ex 11-1 to 11-6, pp. 433-450 (data read second-hand, printed results from memory)',
    'from memory',
    [
      ['Oxygen slope', 14.947, oxygen.slope, half(3)],
      ['Oxygen intercept', 74.283, oxygen.intercept, half(3)],
      ['Oxygen residual variance', 1.18, se(oxygen.residualSd) ** 2, half(2)],
      ['Oxygen Sxx', 0.68088, oxygen.sxx, half(5)],
      ['Oxygen t of slope', 11.35, oxygen.slope / se(oxygen.slopeSe), half(2)],
      ['Oxygen slope, 95 in 100, low', 12.181, oxygen.slope - slopeHalf, half(3)],
      // Printed 17.713 and 17.714 in different places: the book works from rounded figures.
      ['Oxygen slope, 95 in 100, high', 17.713, oxygen.slope + slopeHalf, 0.001],
      ['Oxygen mean at 1.00', 89.23, atOne.fit, half(2)],
      ['Oxygen mean at 1.00, low', 88.49, atOne.meanLow, half(2)],
      ['Oxygen mean at 1.00, high', 89.98, atOne.meanHigh, half(2)],
      ['Oxygen prediction at 1.00, low', 86.83, atOne.low, half(2)],
      ['Oxygen prediction at 1.00, high', 91.63, atOne.high, half(2)],
      ['Oxygen R squared', 0.877, se(oxygen.r2), half(3)],
    ],
  ),
  ...from(
    "R. G. Budynas & J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., Table 8-14, p. 439",
    'read',
    [
      ['Bolt preload mean, kN', 34.18, meanOf(data.BOLTS), half(2)],
      ['Bolt preload sd, kN', 2.88, sdOf(data.BOLTS), half(2)],
    ],
  ),
]

/** H.1 with lengths in nm. */
const LS = 50_000_623
const H1: readonly Component[] = [
  { name: 'standard', u: 25, dof: 18 },
  { name: 'difference', u: 9.7, dof: 25.6 },
  { name: 'expansion', u: 1.2e-6, sensitivity: 0 },
  { name: 'bench temperature', u: 0.41, sensitivity: 0 },
  { name: 'difference of expansion', u: 0.58e-6, sensitivity: -LS * -0.1, dof: 50 },
  { name: 'difference of temperature', u: 0.029, sensitivity: -LS * 11.5e-6, dof: 2 },
]
const h1 = sound(combineBudget(H1))
const h1d = sound(combineBudget([5.8, 3.9, 6.7].map((u) => ({ name: `${u}`, u }))))
const h1U = sound(expandBudget(h1, 0.99))
const four = (dof?: number) => sound(combineBudget([1, 2, 3, 4].map((i) => ({ name: `${i}`, u: 1, dof }))))
const part = (name: string) => h1.lines.find((line) => line.name === name)?.contribution ?? Number.NaN
const r = (i: number) => H2_R[i]?.r ?? Number.NaN

const GUM: Published[] = [
  ...from(
    'JCGM 100:2008 (GUM) H.1, end gauge, Table H.1 and H.1.6 (as encoded in public test files)',
    'read second-hand',
    [
      ['H.1 length, mm', 50.000838, (LS + 215) / 1e6, half(6)],
      ['H.1 part of the standard, nm', 25, part('standard'), half(0)],
      ['H.1 part of the difference, nm', 9.7, part('difference'), half(1)],
      ['H.1 the difference from its own parts, nm', 9.7, h1d.uc, half(1)],
      ['H.1 part of the expansion, nm', 2.9, part('difference of expansion'), half(1)],
      // Printed 16.6; unrounded 16.675, which rounds to 16.7: the standard cut the figure.
      ['H.1 part of the temperature, nm', 16.6, part('difference of temperature'), 0.1],
      ['H.1 combined, nm', 32, h1.uc, half(0)],
      ['H.1 effective degrees of freedom', 16.7, h1.effectiveDof ?? Number.NaN, half(1)],
      ['H.1 degrees of freedom used', 16, h1U.dof, 0],
      ['H.1 t99(16)', 2.92, h1U.k, half(2)],
      ['H.1 U99, nm', 93, h1U.U, half(0)],
    ],
  ),
  ...from(
    'JCGM 100:2008 (GUM) H.2, resistance and reactance (as encoded in a public test file)',
    'read second-hand',
    [
      ['H.2 R, ohm', 127.732, H2.R.value, half(3)],
      ['H.2 u(R)', 0.071, H2.R.budget.uc, half(3)],
      ['H.2 X, ohm', 219.847, H2.X.value, half(3)],
      // 0.29558 unrounded: the printed figure is cut, not rounded.
      ['H.2 u(X)', 0.295, H2.X.budget.uc, 0.001],
      ['H.2 Z, ohm', 254.26, H2.Z.value, half(3)],
      ['H.2 u(Z)', 0.236, H2.Z.budget.uc, half(3)],
    ],
  ),
  ...from('JCGM 100:2008 (GUM) H.2, Table H.2', 'from memory', [
    ['H.2 correlation of V and I', -0.36, r(0), half(2)],
    ['H.2 correlation of V and phi', 0.86, r(1), half(2)],
    ['H.2 correlation of I and phi', -0.65, r(2), half(2)],
  ]),
  ...from(
    'JCGM 100:2008 (GUM) G.4; JCGM 101:2008 9.2 (as encoded in a public test file)',
    'read second-hand',
    [
      ['Four equal parts of 10 degrees of freedom', 40, four(10).effectiveDof ?? Number.NaN, 1e-9],
      ['Four unit parts combined', 2, four().uc, half(1)],
      ['Four unit parts, 95 in 100', 3.92, sound(expandBudget(four(), 0.95)).U, half(2)],
    ],
  ),
]

const inside = (value: number, u: number, limits: { lower?: number; upper?: number }) =>
  sound(conformance(value, u, limits)).inside
const JCGM106: Published[] = [
  ...from(
    'JCGM 106:2012 7.3.3 Ex. 2, burst strength, as retold in UKAS LAB 48 ed. 3 Ex. 6',
    'read second-hand',
    [
      ['Burst 509.7 kPa, u 8.6, at least 490', 0.99, inside(509.7, 8.6, { lower: 490 }), half(2)],
      ['Burst 495.2 kPa, u 8.6, at least 490', 0.73, inside(495.2, 8.6, { lower: 490 }), half(2)],
    ],
  ),
  ...from('JCGM 106:2012 7.3.3 Ex. 1, breakdown voltage', 'from memory', [
    ['-5.47 V, u 0.05, at most -5.40', 0.92, inside(-5.47, 0.05, { upper: -5.4 }), half(2)],
  ]),
  ...from('JCGM 106:2012 7.4, oil viscosity (inputs read second-hand, result from memory)', 'from memory', [
    ['13.6 mm2/s, u 1.8, 12.5 to 16.3', 0.66, inside(13.6, 1.8, { lower: 12.5, upper: 16.3 }), half(2)],
  ]),
  ...from('ISO 14253-1:2017 guard band for 5 in 100, as retold beside ILAC-G8:09/2019', 'read second-hand', [
    // k = 2: 0.822; k = 1.96: 0.839. The printed 0.83 lies between.
    ['Guard band for 5 in 100, share of U', 0.83, guardBandFor(0.05, 2), 0.01],
  ]),
  ...from('ILAC-G8:09/2019 Table 1, guard band 1.5 U (uses k = 1.96)', 'read second-hand', [
    ['Chance left at 1.5 U, in 100', 0.16, guardBandRisk(1.5, 1.96) * 100, half(2)],
  ]),
]

const tRow = (nu: number, printed: number): Row => [
  `t 0.975, ${nu} degrees of freedom`,
  printed,
  tAt(0.975, nu),
  half(3),
]
const zRow = (p: number, printed: number): Row => [`z ${p}`, printed, normalAt(p), half(3)]
const TABLES: Published[] = [
  ...from('NIST/SEMATECH e-Handbook t table, as reprinted; same in two textbook tables', 'read second-hand', [
    ...(
      [
        [1, 12.706],
        [2, 4.303],
        [3, 3.182],
        [5, 2.571],
        [10, 2.228],
        [16, 2.12],
        [19, 2.093],
        [20, 2.086],
        [30, 2.042],
      ] as const
    ).map(([nu, t]) => tRow(nu, t)),
    ...(
      [
        [0.9, 1.282],
        [0.95, 1.645],
        [0.975, 1.96],
        [0.99, 2.326],
        [0.995, 2.576],
        [0.999, 3.09],
      ] as const
    ).map(([p, z]) => zRow(p, z)),
  ]),
]

const LIBRE = 'LibreTexts Chemistry, Appendix 07, critical values for Grubbs test, alpha '
/** Its last place is cut or rounded up by turns, hence a whole unit; n = 7 (0.05) and n = 15 (0.01) are misprints. */
const libre = (alpha: number, pairs: readonly (readonly [number, number])[]) =>
  from(
    `${LIBRE}${alpha}`,
    'read',
    pairs.map(([n, g]): Row => [`G(${n}), ${alpha}`, g, grubbsCritical(n, alpha), 0.001]),
  )
const DIN = 'Grubbs table citing F. E. Grubbs (1950, 1969) and DIN 32645, one-sided'
const din = (alpha: number, pairs: readonly (readonly [number, number])[]) =>
  from(
    `${DIN} ${alpha}`,
    'read second-hand',
    pairs.map(([n, g]): Row => [`G(${n}), one-sided ${alpha}`, g, grubbsCritical(n, alpha, 1), 0.01]),
  )
const GRUBBS: Published[] = [
  ...libre(0.05, [
    [3, 1.155],
    [4, 1.481],
    [5, 1.715],
    [6, 1.887],
    [8, 2.126],
    [9, 2.215],
    [10, 2.29],
    [11, 2.355],
    [12, 2.412],
    [13, 2.462],
    [14, 2.507],
    [15, 2.549],
  ]),
  ...libre(0.01, [
    [3, 1.155],
    [4, 1.496],
    [5, 1.764],
    [6, 1.973],
    [7, 2.139],
    [8, 2.274],
    [9, 2.387],
    [10, 2.482],
    [11, 2.564],
    [12, 2.636],
    [13, 2.699],
    [14, 2.755],
  ]),
  ...din(0.025, [
    [7, 2.02],
    [15, 2.55],
  ]),
  ...din(0.05, [
    [7, 1.94],
    [10, 2.18],
    [15, 2.41],
    [20, 2.56],
  ]),
]

export const STATISTICS_ROWS: readonly Published[] = [
  ...NIST,
  ...BOOKS,
  ...GUM,
  ...JCGM106,
  ...TABLES,
  ...GRUBBS,
]
