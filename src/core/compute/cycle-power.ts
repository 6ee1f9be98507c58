// Capacity, indicated power and discharge temperature offered by name.

import { flowAt, freeAirEfficiency, inletCapacity, molarFlow } from '../cycle/capacity.ts'
import { dischargeTemperature } from '../cycle/discharge-temperature.ts'
import { brakePower, indicatedPower } from '../cycle/power.ts'
import { ok } from '../lib/result.ts'
import { formatBoth, fromSi } from '../units/index.ts'
import type { Computation } from './computation.ts'
import {
  absoluteOf,
  absolutePressures,
  BAROMETER,
  barometerOf,
  DISCHARGE,
  K,
  SUCTION,
  SUCTION_TEMPERATURE,
  take,
  takeNumber,
  Z_DISCHARGE,
  Z_SUCTION,
} from './cycle-common-inputs.ts'
import { fig, type Given, numberOut, offer, quantityOut } from './cycle-given.ts'

/** m3/s in a million cubic feet a day. */
const MMCFD = (1e6 * 0.3048 ** 3) / 86400

export const capacityComputation: Computation = offer(
  {
    name: 'capacity',
    title: 'Capacity at the inlet and at stated base conditions',
    inputs: [
      take('efficiency', 'volumetric efficiency on suction conditions', 'ratio', '%'),
      take('displacement', 'displacement of the ends that act', 'flow', 'cfm'),
      SUCTION,
      BAROMETER,
      SUCTION_TEMPERATURE,
      Z_SUCTION,
      take('base_pressure', 'base pressure, absolute: say whose standard', 'pressure-absolute', 'psia'),
      take('base_temperature', 'base temperature', 'temperature', 'degF', { signed: true }),
      takeNumber('base_z', 'compressibility at the base; 1 for an ideal gas', 0.1, 3),
    ],
    outputs: [
      take('capacity', 'capacity at suction conditions', 'flow', 'cfm'),
      takeNumber('mol_per_s', 'amount of gas, mol/s', 0, 1e9),
      takeNumber('base_m3_per_h', 'flow at base conditions, m3/h', 0, 1e12),
      takeNumber('base_mmcf_per_day', 'flow at base conditions, million cubic feet a day', 0, 1e9),
      take('base_efficiency', 'volumetric efficiency on the base (free-air) basis', 'ratio', '%'),
    ],
    sources: [
      'E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook, p. 272',
      'gas law with compressibility; gas constant: SI Brochure, 9th ed. (2019)',
      'R. Joel, Basic Engineering Thermodynamics, Ex 14.1, p. 400 (suction and free-air basis apart)',
    ],
    validity:
      'One cylinder or stage at one suction condition; base conditions are always stated, never assumed.',
  },
  workCapacity,
)

function workCapacity(given: Given) {
  const barometer = barometerOf(given)
  if (!barometer.ok) return barometer
  const suctionPa = absoluteOf(given, 'suction', barometer.value)
  if (!suctionPa.ok) return suctionPa
  const from = {
    pressurePa: suctionPa.value,
    temperatureK: given.si('suction_temperature'),
    z: given.si('z_suction'),
  }
  const base = {
    pressurePa: given.si('base_pressure'),
    temperatureK: given.si('base_temperature'),
    z: given.si('base_z'),
  }
  const [efficiency, moved] = [given.si('efficiency'), given.si('displacement')]
  const inlet = inletCapacity(efficiency, moved)
  if (!inlet.ok) return inlet
  const amount = molarFlow(inlet.value, from)
  if (!amount.ok) return amount
  const atBase = flowAt(inlet.value, from, base)
  if (!atBase.ok) return atBase
  const basis = freeAirEfficiency(efficiency, from, base)
  if (!basis.ok) return basis
  const inletWords = formatBoth(fromSi('flow', inlet.value), 'cfm', 1)
  const baseWords = `${fig(base.pressurePa / 1000)} kPa, ${fig(base.temperatureK)} K`
  return ok({
    outputs: {
      capacity: quantityOut('flow', inlet.value),
      mol_per_s: numberOut(amount.value),
      base_m3_per_h: numberOut(atBase.value * 3600),
      base_mmcf_per_day: numberOut(atBase.value / MMCFD),
      base_efficiency: quantityOut('ratio', basis.value),
    },
    trace: [
      {
        says: 'Capacity at suction conditions',
        formula: 'Q = VE x displacement',
        worked: `Q = ${fig(efficiency)} x ${fig(moved)} = ${fig(inlet.value)} m3/s = ${inletWords}`,
      },
      {
        says: `The same gas at the base: ${baseWords}, Z ${fig(base.z)}`,
        formula: 'Qb = Q (Ps/Pb) (Tb/Ts) (Zb/Zs)',
        worked:
          `Qb = ${fig(inlet.value)} x (${fig(from.pressurePa)}/${fig(base.pressurePa)}) x ` +
          `(${fig(base.temperatureK)}/${fig(from.temperatureK)}) x (${fig(base.z)}/${fig(from.z)}) = ${fig(atBase.value)} m3/s`,
      },
    ],
    warnings: [],
  })
}

export const indicatedPowerComputation: Computation = offer(
  {
    name: 'indicated-power',
    title: 'Ideal indicated power, and shaft power with stated losses',
    inputs: [
      SUCTION,
      DISCHARGE,
      BAROMETER,
      take('capacity', 'capacity at suction conditions', 'flow', 'cfm'),
      K,
      Z_SUCTION,
      Z_DISCHARGE,
      take(
        'compression_efficiency',
        'ideal over actual indicated power; 100 % leaves valve loss out',
        'ratio',
        '%',
      ),
      take('mechanical_efficiency', 'indicated over shaft power', 'ratio', '%'),
    ],
    outputs: [
      take('ideal_power', 'ideal indicated power', 'power', 'hp'),
      take('brake_power', 'power at the shaft', 'power', 'hp'),
    ],
    sources: [
      'P. K. Nag, Engineering Thermodynamics, ch. 18',
      'Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 19',
    ],
    validity: 'One stage, ratio 1 to 50; one exponent for compression and re-expansion.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const { suctionPa, ratio } = pressures.value
    const n = given.si('k')
    const inletM3PerS = given.si('capacity')
    const [zSuction, zDischarge] = [given.si('z_suction'), given.si('z_discharge')]
    const ideal = indicatedPower({ suctionPa, inletM3PerS, ratio, n, zSuction, zDischarge })
    if (!ideal.ok) return ideal
    const compression = given.si('compression_efficiency')
    const mechanical = given.si('mechanical_efficiency')
    const shaft = brakePower(ideal.value, { compression, mechanical })
    if (!shaft.ok) return shaft
    const kW = (watts: number) => `${fig(watts / 1000)} kW`
    return ok({
      outputs: {
        ideal_power: quantityOut('power', ideal.value),
        brake_power: quantityOut('power', shaft.value),
      },
      trace: [
        ...pressures.value.trace,
        {
          says: 'Ideal indicated power',
          formula: 'P = Ps Q n/(n-1) (r^((n-1)/n) - 1) (Zs + Zd)/(2 Zs); ln r in its place at n = 1',
          worked: `Ps = ${fig(suctionPa)} Pa, Q = ${fig(inletM3PerS)} m3/s, n = ${fig(n)}: P = ${kW(ideal.value)}`,
        },
        {
          says: 'Power at the shaft',
          formula: 'B = P / (compression efficiency x mechanical efficiency)',
          worked: `B = ${kW(ideal.value)} / (${fig(compression)} x ${fig(mechanical)}) = ${kW(shaft.value)}`,
        },
      ],
      warnings:
        compression === 1 || mechanical === 1
          ? ['A loss is left out: the real machine takes more than this.']
          : [],
    })
  },
)

/** Bloch & Hoefner 1996, p. 389: the wish and the absolute limit, kelvin. */
const WISHED_K = 135 + 273.15
const ABSOLUTE_K = 190 + 273.15

export const dischargeTemperatureComputation: Computation = offer(
  {
    name: 'discharge-temperature',
    title: 'Ideal discharge temperature of one stage',
    inputs: [SUCTION_TEMPERATURE, SUCTION, DISCHARGE, BAROMETER, K],
    outputs: [
      take('discharge_temperature', 'ideal discharge temperature', 'temperature', 'degF', { signed: true }),
    ],
    sources: [
      'Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 389 (A-1)',
    ],
    validity: 'One stage, ratio 1 to 50. Zero of temperature 273.15 and 459.67.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const { ratio } = pressures.value
    const [suctionK, k] = [given.si('suction_temperature'), given.si('k')]
    const found = dischargeTemperature(suctionK, ratio, k)
    if (!found.ok) return found
    const hot = formatBoth(fromSi('temperature', found.value), 'degF', 0)
    const above = 'Bloch & Hoefner p. 389'
    return ok({
      outputs: { discharge_temperature: quantityOut('temperature', found.value) },
      trace: [
        ...pressures.value.trace,
        {
          says: 'Discharge temperature',
          formula: 'T2 = T1 r^((k-1)/k), absolute',
          worked: `T2 = ${fig(suctionK)} x ${fig(ratio)}^${fig((k - 1) / k)} = ${fig(found.value)} K = ${hot}`,
        },
      ],
      warnings: [
        'Ideal: the real gas leaves hotter.',
        ...(found.value > ABSOLUTE_K ? [`Above 190 C (375 F), the absolute limit of ${above}.`] : []),
        ...(found.value > WISHED_K && found.value <= ABSOLUTE_K
          ? [`Above 135 C (275 F), the most wished for by ${above}.`]
          : []),
      ],
    })
  },
)
