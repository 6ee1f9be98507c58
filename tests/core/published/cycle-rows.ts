// The rows of cycle.test.ts: source with page, inputs, printed result, tolerance from its printed rounding, how the figure
// was seen. A wider tolerance is named where the book worked with pi = 22/7, 273 or a rounded speed.
import { flowAt, freeAirEfficiency, inletCapacity, molarFlow } from '../../../src/core/cycle/capacity.ts'
import { displacement, pistonAreas, pistonSpeed } from '../../../src/core/cycle/cylinder-ends.ts'
import { dischargeTemperature } from '../../../src/core/cycle/discharge-temperature.ts'
import { brakePower, indicatedPower, isothermalEfficiency } from '../../../src/core/cycle/power.ts'
import { cycleWork } from '../../../src/core/cycle/pv-cycle.ts'
import { dischargeAtCompressionLimit, gasRodLoad, netGasLoad } from '../../../src/core/cycle/rod-load.ts'
import { sliderCrankTwoTerm } from '../../../src/core/cycle/slider-crank.ts'
import { type VeInputs, volumetricEfficiency } from '../../../src/core/cycle/volumetric-efficiency.ts'
import type { Result } from '../../../src/core/lib/result.ts'
import { fromSi, quantity, valueIn } from '../../../src/core/units/index.ts'

/** read: in a stored page of the book. companion: in an open notebook that re-works it; the page itself not seen. */
type Status = 'read' | 'companion' | 'memory'
/** What, printed result, half of its last place, our figure; then any named widening. */
type Row = readonly [string, number, number, () => number, (readonly [number, string])?]

interface Source {
  readonly source: string
  readonly inputs: string
  readonly status: Status
  readonly rows: readonly Row[]
}

const get = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}
const si = (value: number, unit: string) => quantity(value, unit).si
const as = (kind: Parameters<typeof fromSi>[0], value: number, unit: string) =>
  valueIn(fromSi(kind, value), unit)
const ve = (clearance: number, ratio: number, k: number, more: Partial<VeInputs> = {}) =>
  get(volumetricEfficiency({ form: 'ideal', clearance, ratio, k, zSuction: 1, zDischarge: 1, ...more }))
const kW = (suctionPa: number, inletM3PerS: number, ratio: number, n: number) =>
  get(indicatedPower({ suctionPa, inletM3PerS, ratio, n, zSuction: 1, zDischarge: 1 })) / 1000
const shaft = (kiloWatts: number, mechanical: number, compression = 1) =>
  get(brakePower(kiloWatts * 1000, { compression, mechanical })) / 1000
/** Head end of a cylinder without a rod, m3 a cycle and m3 a second. */
const swept = (boreM: number, strokeM: number, perMin = 60) =>
  get(displacement({ boreM, rodM: 0 }, strokeM, perMin / 60))
const state = (pressurePa: number, temperatureK: number) => ({ pressurePa, temperatureK, z: 1 })
const AIR_KG = 0.0289655
const twoTerm = (gear: readonly [number, number, number], degrees: number) =>
  get(
    sliderCrankTwoTerm(
      { crankM: gear[0], conRodM: gear[1], omega: (gear[2] * 2 * Math.PI) / 60 },
      (degrees * Math.PI) / 180,
    ),
  )

const BIG = { boreM: si(34, 'in'), rodM: si(4, 'in') }
const BIG_AREAS = get(pistonAreas(BIG))
const BARO = si(14.696, 'psia')
const gauge = (psig: number) => si(psig, 'psig') + BARO
const limitAt = (suction: number) => {
  const ask = { areas: BIG_AREAS, suctionPa: gauge(suction), outsidePa: BARO }
  return (get(dischargeAtCompressionLimit(ask, si(125000, 'lbf'))) - BARO) / si(1, 'psi')
}
const pullAt = (suction: number, discharge: number) => {
  const at = { suctionPa: gauge(suction), dischargePa: gauge(discharge), outsidePa: BARO }
  return as('force', get(gasRodLoad({ areas: BIG_AREAS, ...at })).tensionN, 'lbf')
}
const PSI_STEP = BIG_AREAS.crankM2 / si(1, 'in2')

const JOEL = { suction: state(97e3, 293.15), free: state(101325, 288.15) }
const joelVe = () => get(freeAirEfficiency(ve(0.05, 550 / 97, 1.3), JOEL.suction, JOEL.free))
const joelInlet = () => ve(0.05, 550 / 97, 1.3) * swept(0.2, 0.3, 500).headM3PerS
const nagInlet = () => (ve(0.05, 8, 1.25) * 2000e-6 * 800) / 60
const bhattInlet = () => (ve(0.04, 6.25, 1.3) * swept(0.09, 0.1).headM3 * 2 * 410) / 60
const PI_22_7 = 22 / 7 / Math.PI - 1

/** Khurmi & Gupta Ex 15.7: two-term inertia, one pressure difference over the whole bore. */
const khurmiThrust = () => {
  const areas = get(pistonAreas({ boreM: 0.5, rodM: 0 }))
  const { acceleration } = twoTerm([0.3, 1.2, 250], 60)
  return netGasLoad(areas, 0.35e6, 0, 0) - 250 * acceleration
}
const khurmiTilt = Math.asin(Math.sin(Math.PI / 3) / 4)

const zeroOfAcceleration = () => {
  let [low, high] = [60, 90]
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (twoTerm([0.3, 1.5, 180], middle).acceleration > 0) low = middle
    else high = middle
  }
  return low
}

const RULES = 'E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook'
const BHATT = 'Bhatt & Mehta, Elements of Mechanical Engineering, ch. 8'
const SINGH = 'O. Singh, Applied Thermodynamics'
const RAMA = 'Ramalingam (title not given in the notebook)'
const KHURMI = 'R. S. Khurmi & J. K. Gupta, Theory of Machines, ch. 15'
const NAG = 'P. K. Nag, Engineering Thermodynamics'

const CYCLE: readonly Source[] = [
  {
    source: `${RULES}, p. 271-273`,
    inputs: 'bore 6 in, rod 2.5 in, stroke 12 in, 300 rpm; single-acting bore 9 in, stroke 5 in',
    status: 'read',
    rows: [
      [
        'displacement, cfm',
        107.6,
        0.05,
        () => {
          const size = { boreM: si(6, 'in'), rodM: si(2.5, 'in') }
          return as('flow', get(displacement(size, si(12, 'in'), 5)).totalM3PerS, 'cfm')
        },
      ],
      ['piston speed, ft/min', 600, 0.5, () => as('speed', get(pistonSpeed(si(12, 'in'), 5)), 'ft/min')],
      ['swept, in3', 318, 0.5, () => as('volume', swept(si(9, 'in'), si(5, 'in')).headM3, 'in3')],
      ['swept, ft3', 0.184, 5e-4, () => as('volume', swept(si(9, 'in'), si(5, 'in')).headM3, 'ft3')],
    ],
  },
  {
    source: `${RULES}, p. 271-272`,
    inputs: 'CO2 1720 to 3440 psia, k 1.3, C 12 %, Z 0.312 and 0.575, L 0.05; 575 R',
    status: 'read',
    rows: [
      [
        'volumetric efficiency, form 97-less-loss',
        0.929,
        5e-4,
        () => ve(0.12, 2, 1.3, { form: '97-less-loss', zSuction: 0.312, zDischarge: 0.575, loss: 0.05 }),
      ],
      [
        'inlet capacity, cfm (book takes 93 %)',
        100.1,
        0.05,
        () => as('flow', get(inletCapacity(0.93, si(107.6, 'cfm'))), 'cfm'),
      ],
      ['discharge temperature, R', 674.7, 0.05, () => get(dischargeTemperature(575 / 1.8, 2, 1.3)) * 1.8],
    ],
  },
  {
    source: 'Bloch & Geitner, Practical Machinery Management for Process Plants, vol. 4, p. 181, fig. 5-5B',
    inputs: 'bore 34 in, rod 4 in, compression 125,000 lb, tension 115,000 lb, suction 10 and 40 psig',
    status: 'read',
    rows: [
      ['discharge at the compression limit, suction 10, psig', 147.5, 0.05, () => limitAt(10)],
      ['discharge at the compression limit, suction 40, psig', 177, 0.5, () => limitAt(40)],
      [
        'tension at the printed 138.5 psig, suction 10, lbf',
        115000,
        0.05 * PSI_STEP,
        () => pullAt(10, 138.5),
        [0.05 * PSI_STEP, 'printed 138.5 is cut, not rounded (138.58)'],
      ],
      ['tension at the printed 169 psig, suction 40, lbf', 115000, 0.5 * PSI_STEP, () => pullAt(40, 169)],
    ],
  },
  {
    source: `${NAG}, Ex 18.2, p. 724`,
    inputs: 'C 5 %, 101.3 kPa, r 8, n 1.25, 2000 cm3, 800 cycles/min, 288 K, mechanical 0.85',
    status: 'companion',
    rows: [
      ['volumetric efficiency, ideal', 0.786, 5e-4, () => ve(0.05, 8, 1.25)],
      ['inlet flow, m3/min', 1.26, 0.005, () => nagInlet() * 60],
      ['mass flow, kg/min', 1.54, 0.005, () => get(molarFlow(nagInlet(), state(101.3e3, 288))) * AIR_KG * 60],
      ['indicated power, kW', 5.48, 0.005, () => kW(101.3e3, nagInlet(), 8, 1.25)],
      ['isothermal efficiency', 0.806, 5e-4, () => get(isothermalEfficiency(8, 1.25))],
      ['shaft power, kW', 6.44, 0.005, () => shaft(kW(101.3e3, nagInlet(), 8, 1.25), 0.85)],
    ],
  },
  {
    source: 'R. Joel, Basic Engineering Thermodynamics, Ex 14.1, p. 400',
    inputs:
      '200 x 300 mm, 500 rpm, single-acting, C 5 %, 97 to 550 kPa, n 1.3, 20 C; free air 101.325 kPa, 15 C',
    status: 'companion',
    rows: [
      ['volumetric efficiency, free-air basis', 0.809, 5e-4, joelVe],
      [
        'free air delivered, m3/min',
        3.814,
        5e-4,
        () => get(flowAt(joelInlet(), JOEL.suction, JOEL.free)) * 60,
      ],
      [
        'delivery temperature, C',
        164.3,
        0.05,
        () => get(dischargeTemperature(293.15, 550 / 97, 1.3)) - 273.15,
        [0.08, 'book takes 273'],
      ],
      ['indicated power, kW', 14.0, 0.05, () => kW(97e3, joelInlet(), 550 / 97, 1.3)],
    ],
  },
  {
    source: 'R. Joel, as above, Ex 14.3, p. 409',
    inputs: 'first of three stages 450 x 300 mm, C 5 %, r 15^(1/3), n 1.3; delivered at 15 times suction',
    status: 'companion',
    rows: [
      [
        'effective swept volume, L',
        45.32,
        0.005,
        () => swept(0.45, 0.3).headM3 * ve(0.05, 15 ** (1 / 3), 1.3) * 1000,
      ],
      [
        'delivered volume, L',
        3.72,
        0.005,
        () => {
          const drawn = swept(0.45, 0.3).headM3 * ve(0.05, 15 ** (1 / 3), 1.3)
          const hot = get(dischargeTemperature(300, 15 ** (1 / 3), 1.3))
          return get(flowAt(drawn, state(1e5, 300), state(15e5, hot))) * 1000
        },
      ],
    ],
  },
  {
    source: `${BHATT}, Ex 8.14`,
    inputs:
      'C 4 %, 0.96 to 6 bar, n 1.3, 90 x 100 mm double-acting, 410 rpm, 40 C; free air 1 bar, 20 C; pi 22/7, no rod',
    status: 'companion',
    rows: [
      ['volumetric efficiency, ideal', 0.876, 5e-4, () => ve(0.04, 6.25, 1.3)],
      [
        'effective displacement, cm3',
        557.6,
        0.05,
        () => swept(0.09, 0.1).headM3 * ve(0.04, 6.25, 1.3) * 1e6,
        [557.6 * PI_22_7, 'pi 22/7'],
      ],
      [
        'free air delivered, m3/h',
        24.66,
        0.005,
        () => get(flowAt(bhattInlet(), state(0.96e5, 313.15), state(1e5, 293.15))) * 3600,
        [24.66 * PI_22_7, 'pi 22/7'],
      ],
      ['indicated power, kW', 1.67, 0.005, () => kW(0.96e5, bhattInlet(), 6.25, 1.3)],
    ],
  },
  {
    source: `${BHATT}, Ex 8.1 to 8.3`,
    inputs:
      'C 5 %, r 6.5, n 1.25; bore 240 mm at 5/6 m/s, 100 to 1000 kPa, n 1.35; 200 x 240 mm, 300 rpm, 1.01325 bar, r 8',
    status: 'read',
    rows: [
      ['volumetric efficiency, ideal, %', 82.65, 0.005, () => ve(0.05, 6.5, 1.25) * 100],
      [
        'indicated power, kW',
        11.88,
        0.005,
        () => kW(100e3, (get(pistonAreas({ boreM: 0.24, rodM: 0 })).headM2 * 5) / 6, 10, 1.35),
        [11.88 * PI_22_7, 'pi 22/7'],
      ],
      ['indicated power, kW', 10.5, 0.05, () => kW(101325, swept(0.2, 0.24, 300).headM3PerS, 8, 1.35)],
      [
        'brake power at 0.96 and 0.85, kW',
        12.91,
        0.005,
        () => shaft(kW(101325, swept(0.2, 0.24, 300).headM3PerS, 8, 1.35), 0.85, 0.96),
        [12.91 * PI_22_7, 'pi 22/7'],
      ],
    ],
  },
  {
    source: 'P. K. Nag, Basic and Applied Thermodynamics, Ex 19.2, p. 819',
    inputs:
      'C 5 %, 96 to 725 kPa, n 1.3, 305 K; free air 101.3 kPa, 292 K (printed by the notebook; book gives none)',
    status: 'companion',
    rows: [
      [
        'volumetric efficiency, free-air basis, %',
        73.779,
        5e-4,
        () => get(freeAirEfficiency(ve(0.05, 725 / 96, 1.3), state(96e3, 305), state(101.3e3, 292))) * 100,
      ],
    ],
  },
  {
    source: `${SINGH}, Ex 16.3, p. 745 and Ex 16.13, p. 759`,
    inputs: 'C 5 %, r 7, n 1.25, 0.97 bar 308 K against 1 bar 300 K; C 4 %, r 20^(1/3), n 1.25, 300 x 200 mm',
    status: 'companion',
    rows: [
      [
        'volumetric efficiency, free-air basis',
        0.768,
        5e-4,
        () => get(freeAirEfficiency(ve(0.05, 7, 1.25), state(0.97e5, 308), state(1e5, 300))),
      ],
      [
        'effective swept volume, m3',
        0.01345,
        5e-6,
        () => swept(0.3, 0.2).headM3 * ve(0.04, 20 ** (1 / 3), 1.25),
      ],
    ],
  },
  {
    source: `${SINGH}, Ex 16.2, p. 742`,
    inputs: '1 m3/min at 100 kPa to 1200 kPa, n 1.2, 240 rpm, stroke 1.8 bore, mechanical 0.88',
    status: 'read',
    rows: [
      ['isothermal efficiency, %', 80.72, 0.005, () => get(isothermalEfficiency(12, 1.2)) * 100],
      [
        'm3/min swept by the printed 14.34 cm and 25.808 cm',
        1,
        (2 * 0.005) / 14.34 + 0.0005 / 25.808,
        () => swept(0.1434, 0.25808, 240).headM3PerS * 60,
      ],
      ['drive, hp', 7.82, 0.005, () => as('power', shaft(kW(100e3, 1 / 60, 12, 1.2), 0.88) * 1000, 'hp')],
    ],
  },
  {
    source: `${RAMA}, Ex 10, p. 9.27; Ex 1, p. 9.18; Ex 5, p. 9.22; Ex 6, p. 9.22`,
    inputs: '150 x 225 mm, C 5 %, 1 to 6.5 bar, n 1.3; 1 to 6 bar, 303 K, R 287; 308 K, r 12; 293 K, r 9',
    status: 'companion',
    rows: [
      [
        'work each cycle, J',
        781,
        0.5,
        () => {
          const sweptM3 = swept(0.15, 0.225).headM3
          const pressures = { suctionPa: 1e5, dischargePa: 6.5e5 }
          return get(
            cycleWork({ sweptM3, clearance: 0.05, ...pressures, compressionN: 1.3, expansionN: 1.3 }),
          )
        },
      ],
      ['specific work, isothermal, kJ/kg', 155.813, 5e-4, () => kW(1e5, (287 * 303) / 1e5, 6, 1)],
      ['specific work, n 1.2, kJ/kg', 181.578, 5e-4, () => kW(1e5, (287 * 303) / 1e5, 6, 1.2)],
      ['specific work, n 1.4, kJ/kg', 203.47, 0.005, () => kW(1e5, (287 * 303) / 1e5, 6, 1.4)],
      ['discharge temperature, K', 546.5, 0.05, () => get(dischargeTemperature(308, 12, 1.3))],
      ['discharge temperature, k 1.41, K', 555.06, 0.005, () => get(dischargeTemperature(293, 9, 1.41))],
      ['discharge temperature, n 1.3, K', 486.49, 0.005, () => get(dischargeTemperature(293, 9, 1.3))],
    ],
  },
  {
    source: 'R. K. Rajput, Internal Combustion Engines, Ex 20.1-20.2, p. 750 (also Bhatt & Mehta Ex 8.4)',
    inputs: '1 m3/min at 1.013 bar to 7 bar, n 1.35; 0.85 and 0.90; 300 rpm, stroke 1.5 bore',
    status: 'companion',
    rows: [
      ['indicated power, kW', 4.24, 0.005, () => kW(1.013e5, 1 / 60, 7 / 1.013, 1.35)],
      ['motor power, kW', 5.54, 0.005, () => shaft(kW(1.013e5, 1 / 60, 7 / 1.013, 1.35), 0.85, 0.9)],
      [
        'm3/min swept by the printed 141.44 mm',
        1,
        (3 * 0.005) / 141.44,
        () => swept(0.14144, 0.14144 * 1.5, 300).headM3PerS * 60,
      ],
    ],
  },
  {
    source: 'P. K. Nag, Basic and Applied Thermodynamics, Ex 19.7, p. 820; saving: Ramalingam Ex 13, p. 9.30',
    inputs: 'two stages 1 to 9 bar, 300 K, n 1.3, R 287; against one stage',
    status: 'companion',
    rows: [
      ['specific work, kJ/kg', 215.32, 0.005, () => 2 * kW(1e5, (287 * 300) / 1e5, 3, 1.3)],
      ['saving, %', 12.6, 0.05, () => 100 - (200 * kW(1e5, 1, 3, 1.3)) / kW(1e5, 1, 9, 1.3)],
    ],
  },
  {
    source: `${NAG}, Ex 18.1, p. 723`,
    inputs:
      '120 x 150 mm, 1200 rpm, no clearance, 120 kPa, 298 to 488 K, n 1.3, molar mass 44, mechanical 0.80',
    status: 'companion',
    rows: [
      ['temperature at the printed r 8.476, K', 488, 0.05, () => get(dischargeTemperature(298, 8.476, 1.3))],
      ['indicated power, kW', 11.249, 5e-4, () => kW(120e3, swept(0.12, 0.15, 1200).headM3PerS, 8.476, 1.3)],
      [
        'shaft power, kW',
        14.061,
        5e-4,
        () => shaft(kW(120e3, swept(0.12, 0.15, 1200).headM3PerS, 8.476, 1.3), 0.8),
      ],
      [
        'mass flow, kg/s',
        0.0723,
        5e-5,
        () => get(molarFlow(swept(0.12, 0.15, 1200).headM3PerS, state(120e3, 298))) * 0.044,
      ],
    ],
  },
  {
    source: 'A. V. Arasu, Thermal Engineering, Ex 5.1, p. 250',
    inputs: '200 x 300 mm, 1 to 8 bar, 300 K, n 1.25, 100 rpm, R 287; book takes pi 3.147',
    status: 'read',
    rows: [
      [
        'power, kW',
        4.06,
        0.005,
        () => kW(1e5, swept(0.2, 0.3, 100).headM3PerS, 8, 1.25),
        [4.06 * (3.147 / Math.PI - 1), 'pi 3.147'],
      ],
      [
        'mass flow, kg/min',
        1.1,
        0.005,
        () => get(molarFlow(swept(0.2, 0.3, 100).headM3PerS, state(1e5, 300))) * AIR_KG * 60,
        [1.1 * (3.147 / Math.PI - 1), 'pi 3.147'],
      ],
      ['delivery temperature, K', 454.7, 0.05, () => get(dischargeTemperature(300, 8, 1.25))],
    ],
  },
  {
    source: `${KHURMI}, Ex 15.4, p. 528`,
    inputs: 'r 0.3 m, l 1.5 m, 180 rpm, 40 deg (two-term)',
    status: 'companion',
    rows: [
      ['velocity, m/s', 4.19, 0.005, () => twoTerm([0.3, 1.5, 180], 40).velocity],
      ['acceleration, m/s2', 85.36, 0.005, () => twoTerm([0.3, 1.5, 180], 40).acceleration],
      ['angle of no acceleration, deg', 79.27, 0.005, zeroOfAcceleration],
    ],
  },
  {
    source: `${KHURMI}, Ex 15.5, p. 528`,
    inputs: 'r 0.15 m, l 0.6 m, 450 rpm, 60 deg (two-term)',
    status: 'companion',
    rows: [
      ['velocity, m/s', 6.9, 0.05, () => twoTerm([0.15, 0.6, 450], 60).velocity],
      ['acceleration, m/s2', 124.91, 0.005, () => twoTerm([0.15, 0.6, 450], 60).acceleration],
    ],
  },
  {
    source: `${KHURMI}, Ex 15.6, p. 532 and Ex 15.7, p. 533`,
    inputs:
      '180 kg, r 0.1, l 0.4 m, 500 rpm, 60 deg; bore 0.5 m, 0.35 N/mm2, r 0.3, l 1.2 m, 250 kg, 250 rpm, 60 deg',
    status: 'companion',
    rows: [
      [
        'inertia force, kN',
        18.53,
        0.005,
        () => (180 * twoTerm([0.1, 0.4, 500], 60).acceleration) / 1000,
        [0.03, 'book rounds 52.36 rad/s to 52.4'],
      ],
      ['thrust in the connecting rod, kN', 50.65, 0.005, () => khurmiThrust() / Math.cos(khurmiTilt) / 1000],
      ['side force, kN', 10.97, 0.005, () => (khurmiThrust() * Math.tan(khurmiTilt)) / 1000],
    ],
  },
  {
    source: 'McCabe, Smith & Harriott, Unit Operations of Chemical Engineering, compressor example',
    inputs: 'methane, 540 R, 14 to 900 psia in three equal stages, 1.31',
    status: 'memory',
    rows: [
      [
        'first discharge temperature, F',
        290,
        0.5,
        () => as('temperature', get(dischargeTemperature(300, (900 / 14) ** (1 / 3), 1.31)), 'degF'),
        [0.33, 'book takes 460'],
      ],
    ],
  },
]

/** One row for each printed figure. `half`: half of its last place; `widened`: by how much more, and why. */
export const CYCLE_ROWS = CYCLE.flatMap(({ source, inputs, status, rows }) =>
  rows.map(([what, printed, half, ours, widened]) => ({
    ...{ source, inputs, status, what, printed, half, ours, widened },
  })),
)
