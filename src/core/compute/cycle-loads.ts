// Rod load, reversal, slider-crank and PV cycle offered by name.

import { pistonAreas } from '../cycle/cylinder-ends.ts'
import { aboveZero, firstFault } from '../cycle/guard.ts'
import { pinLoad } from '../cycle/pin-load.ts'
import { cycleWork, enclosedWork, pvPoints } from '../cycle/pv-cycle.ts'
import { meetsReversal, type Reversal, reversalOf } from '../cycle/reversal.ts'
import { gasRodLoad } from '../cycle/rod-load.ts'
import { sliderCrank } from '../cycle/slider-crank.ts'
import { ok, type Result } from '../lib/result.ts'
import { formatBoth, formatNumber, fromSi } from '../units/index.ts'
import type { Computation } from './computation.ts'
import {
  absolutePressures,
  BAROMETER,
  BORE,
  CON_ROD,
  DISCHARGE,
  K,
  type Pressures,
  ROD,
  SPEED,
  STROKE,
  SUCTION,
  sizeOf,
  TAIL_ROD,
  take,
  takeNumber,
  takeWord,
} from './cycle-common-inputs.ts'
import { fig, type Given, numberOut, offer, quantityOut, wordOut } from './cycle-given.ts'

export const rodLoadComputation: Computation = offer(
  {
    name: 'rod-load',
    title: 'Gas load on the piston rod',
    inputs: [BORE, ROD, TAIL_ROD, SUCTION, DISCHARGE, BAROMETER],
    outputs: [
      take('compression', 'discharging at the head end', 'force', 'lbf', { signed: true }),
      take('tension', 'discharging at the crank end; below zero: never pulled by the gas', 'force', 'lbf', {
        signed: true,
      }),
    ],
    sources: ['Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 83-85'],
    validity: 'Double-acting cylinder at the pressures given; valve losses and inertia are not in it.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const areas = pistonAreas(sizeOf(given))
    if (!areas.ok) return areas
    const { suctionPa, dischargePa, barometerPa } = pressures.value
    const load = gasRodLoad({ areas: areas.value, suctionPa, dischargePa, outsidePa: barometerPa })
    if (!load.ok) return load
    const { compressionN, tensionN } = load.value
    const { headM2, crankM2 } = areas.value
    const force = (newtons: number) => formatBoth(fromSi('force', newtons), 'lbf', 0)
    return ok({
      outputs: { compression: quantityOut('force', compressionN), tension: quantityOut('force', tensionN) },
      trace: [
        ...pressures.value.trace,
        {
          says: 'Discharging at the head end: the rod is pushed',
          formula: 'Fc = Pd Ahe - Ps Ace - Pbar (Arod - Atail)',
          worked: `Ahe = ${fig(headM2)} m2, Ace = ${fig(crankM2)} m2: Fc = ${force(compressionN)}`,
        },
        {
          says: 'Discharging at the crank end: the rod is pulled',
          formula: 'Ft = Pd Ace - Ps Ahe + Pbar (Arod - Atail)',
          worked: `Ft = ${force(tensionN)}`,
        },
      ],
      warnings: [
        'Gas only, at line pressures: in the cylinder valve losses add to it, and inertia is not in it.',
        ...(tensionN <= 0 ? ['The gas never pulls the rod: the crosshead pin may not be unloaded.'] : []),
      ],
    })
  },
)

const CRITERION = [
  take('least_angle', 'least reversal, degrees of the turn; left out: HOLD', 'angle', 'deg', {
    optional: true,
  }),
  take('least_share', 'least peak in the lesser direction, % of the other; left out: HOLD', 'ratio', '%', {
    optional: true,
  }),
]

export const rodReversalComputation: Computation = offer(
  {
    name: 'rod-reversal',
    title: 'Reversal of gas plus inertia load at the crosshead pin',
    inputs: [
      ...[BORE, ROD, TAIL_ROD, STROKE, CON_ROD, SPEED, SUCTION, DISCHARGE, BAROMETER, K],
      take('clearance_head', 'clearance of the head end over its swept volume', 'ratio', '%'),
      take('clearance_crank', 'clearance of the crank end over its swept volume', 'ratio', '%'),
      take('mass', 'piston, rod and crosshead, not the connecting rod; left out: HOLD', 'mass', 'lb', {
        optional: true,
      }),
      ...CRITERION,
    ],
    outputs: [
      takeWord('verdict', 'HOLD where masses or criterion are missing', [
        'reverses',
        'does not reverse',
        'HOLD',
      ]),
      take('angle', 'longest unbroken reversal', 'angle', 'deg'),
      take('share', 'lesser peak over greater peak', 'ratio', '%'),
      take('compression_peak', 'peak load at the pin, rod pushed', 'force', 'lbf'),
      take('tension_peak', 'peak load at the pin, rod pulled', 'force', 'lbf'),
    ],
    sources: [
      'force balance on the reciprocating parts, exact slider-crank, ideal PV cycle',
      'measures of reversal: API Std 618 5th ed. 6.6.4 (from memory); the criterion is the site figure given here',
    ],
    validity: 'Double-acting cylinder, both ends loaded, ideal valves; friction and pulsation are not in it.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const mass = given.maybe('mass')
    const unsound = mass === undefined ? null : firstFault(aboveZero('reciprocating mass', mass))
    if (unsound !== null) return unsound
    const found = reversalAtPin(given, pressures.value, mass ?? 0)
    return found.ok ? reversalComputed(given, pressures.value, found.value, mass) : found
  },
)

function reversalAtPin(given: Given, pressures: Pressures, reciprocatingKg: number): Result<Reversal> {
  const areas = pistonAreas(sizeOf(given))
  if (!areas.ok) return areas
  const { suctionPa, dischargePa, barometerPa } = pressures
  const common = { acts: true, suctionPa, dischargePa, n: given.si('k') }
  const loads = pinLoad({
    areas: areas.value,
    gear: {
      crankM: given.si('stroke') / 2,
      conRodM: given.si('con_rod'),
      omega: 2 * Math.PI * given.si('speed'),
    },
    head: { ...common, clearance: given.si('clearance_head') },
    crank: { ...common, clearance: given.si('clearance_crank') },
    outsidePa: barometerPa,
    reciprocatingKg,
  })
  return loads.ok ? reversalOf(loads.value.map((load) => load.pinN)) : loads
}

function reversalComputed(given: Given, pressures: Pressures, found: Reversal, mass: number | undefined) {
  const [leastAngle, leastShare] = [given.maybe('least_angle'), given.maybe('least_share')]
  const canJudge = mass !== undefined && leastAngle !== undefined && leastShare !== undefined
  const met = canJudge ? meetsReversal(found, { leastAngle, leastShare }) : null
  if (met !== null && !met.ok) return met
  const verdict = met === null ? 'HOLD' : met.value ? 'reverses' : 'does not reverse'
  const degrees = formatNumber((found.angle * 180) / Math.PI, 1)
  const force = (newtons: number) => formatBoth(fromSi('force', newtons), 'lbf', 0)
  return ok({
    outputs: {
      verdict: wordOut(verdict),
      angle: quantityOut('angle', found.angle),
      share: quantityOut('ratio', found.share),
      compression_peak: quantityOut('force', found.compressionPeakN),
      tension_peak: quantityOut('force', found.tensionPeakN),
    },
    trace: [
      ...pressures.trace,
      {
        says:
          mass === undefined ? 'Gas load alone round the turn' : 'Gas plus inertia at the pin round the turn',
        formula:
          'F = Phe Ahe - Pce Ace - Pbar (Arod - Atail) - m a; reversal = arc and peak of the lesser direction',
        worked:
          `pushed ${force(found.compressionPeakN)}; pulled ${force(found.tensionPeakN)}; ` +
          `${degrees} deg, ${formatNumber(found.share * 100, 1)} %`,
      },
    ],
    warnings: [
      ...(mass === undefined
        ? ['No reciprocating mass given: HOLD. The figures are gas only, a screen and no check of the pin.']
        : []),
      ...(leastAngle === undefined || leastShare === undefined
        ? ['No criterion given: HOLD. None is built in; the maker or the site gives it.']
        : []),
    ],
  })
}

export const sliderCrankComputation: Computation = offer(
  {
    name: 'slider-crank',
    title: 'Position, velocity and acceleration of the piston',
    inputs: [
      STROKE,
      CON_ROD,
      SPEED,
      take('angle', 'crank angle from outer dead centre', 'angle', 'deg', { signed: true }),
    ],
    outputs: [
      take('position', 'travel from outer dead centre', 'length', 'in'),
      take('velocity', 'towards the crank positive', 'speed', 'm/s', { signed: true }),
      takeNumber('acceleration', 'm/s2, towards the crank positive', -1e12, 1e12),
    ],
    sources: [
      'R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 15 (exact, without its two-term shortening)',
    ],
    validity: 'Crank centre on the line of the piston; connecting rod longer than half the stroke.',
  },
  (given) => {
    const crankM = given.si('stroke') / 2
    const conRodM = given.si('con_rod')
    const omega = 2 * Math.PI * given.si('speed')
    const angle = given.si('angle')
    const motion = sliderCrank({ crankM, conRodM, omega }, angle)
    if (!motion.ok) return motion
    const { positionM, velocity, acceleration } = motion.value
    const bad = firstFault(motionFault(velocity), motionFault(acceleration))
    if (bad !== null) return bad
    const gear = `r = ${fig(crankM)} m, l = ${fig(conRodM)} m, w = ${fig(omega)} rad/s, t = ${fig(angle)} rad`
    return ok({
      outputs: {
        position: quantityOut('length', positionM),
        velocity: quantityOut('speed', velocity),
        acceleration: numberOut(acceleration),
      },
      trace: [
        {
          says: 'Piston',
          formula:
            'D = sqrt(l^2 - r^2 sin^2 t); x = r(1 - cos t) + l - D; v = w r (sin t + r sin t cos t / D); ' +
            'a = w^2 r (cos t + r (l^2 cos 2t + r^2 sin^4 t) / D^3)',
          worked: `${gear}: x = ${fig(positionM)} m, v = ${fig(velocity)} m/s, a = ${fig(acceleration)} m/s2`,
        },
      ],
      warnings: [],
    })
  },
)

function motionFault(value: number) {
  if (Number.isFinite(value)) return null
  return { code: 'not-finite', say: 'The motion does not come to a finite number: check the inputs.' }
}

export const pvCycleComputation: Computation = offer(
  {
    name: 'pv-cycle',
    title: 'Ideal PV cycle of one end: points for a plot and work each cycle',
    inputs: [
      take('swept', 'swept volume of this end', 'volume', 'in3'),
      take('clearance', 'clearance over swept volume', 'ratio', '%'),
      ...[SUCTION, DISCHARGE, BAROMETER],
      takeNumber('n_compression', 'exponent of compression', 1, 2),
      takeNumber('n_expansion', 'exponent of re-expansion', 1, 2),
      takeNumber('steps', 'points on each curve', 2, 500, true),
    ],
    outputs: [
      { name: 'volumes', says: 'volumes', type: { is: 'quantities', kind: 'volume', unit: 'in3', least: 2 } },
      {
        name: 'pressures',
        says: 'absolute pressures at those volumes',
        type: { is: 'quantities', kind: 'pressure-absolute', unit: 'psia', least: 2 },
      },
      takeNumber('work_joules', 'work put into the gas each cycle, J', -1e12, 1e12),
    ],
    sources: ['P. K. Nag, Engineering Thermodynamics, ch. 18 (cycle with clearance)'],
    validity: 'Ideal valves, level lines at line pressure, one end.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const { suctionPa, dischargePa } = pressures.value
    const cycle = {
      sweptM3: given.si('swept'),
      clearance: given.si('clearance'),
      suctionPa,
      dischargePa,
      compressionN: given.si('n_compression'),
      expansionN: given.si('n_expansion'),
    }
    const points = pvPoints(cycle, given.si('steps'))
    if (!points.ok) return points
    const work = cycleWork(cycle)
    if (!work.ok) return work
    return ok({
      outputs: {
        volumes: { is: 'quantities', quantities: points.value.map((one) => fromSi('volume', one.volumeM3)) },
        pressures: {
          is: 'quantities',
          quantities: points.value.map((one) => fromSi('pressure-absolute', one.pressurePa)),
        },
        work_joules: numberOut(work.value),
      },
      trace: [
        ...pressures.value.trace,
        {
          says: 'Work each cycle',
          formula: 'W = Ps V3 f(r, nc) - Ps V2 f(r, ne), f = n/(n-1) (r^((n-1)/n) - 1)',
          worked: `W = ${fig(work.value)} J; area of the points drawn: ${fig(enclosedWork(points.value))} J`,
        },
      ],
      warnings: [],
    })
  },
)
