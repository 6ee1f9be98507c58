// Pocket curve and pocket setting offered by name. A HOLD is a refusal here: no figure leaves that could be acted on.

import type { OperatingPoint } from '../cycle/operate.ts'
import { pocketCurve } from '../cycle/pocket-curve.ts'
import { type PocketSetting, pocketSetting, type SettingFound } from '../cycle/pocket-setting.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { formatBoth, formatNumber, fromSi } from '../units/index.ts'
import type { Computation, Computed, TraceStep } from './computation.ts'
import { take, takeNumber, takeWord } from './cycle-common-inputs.ts'
import { fig, numberOut, offer, quantityOut, wordOut } from './cycle-given.ts'
import { MACHINE_INPUTS, machineOf } from './cycle-machine-inputs.ts'

const SOURCES = [
  'mass balance through all stages; ideal-cycle power with stated efficiencies (P. K. Nag, Engineering Thermodynamics, ch. 18)',
  'form of volumetric efficiency as named in the inputs; rod load: Bloch & Hoefner, Reciprocating Compressors, 1996, p. 83-85',
  'what is left when no opening does: common practice, no source',
]

const VALIDITY =
  'One double-acting cylinder a stage. Held through the search: suction temperatures, Z, k, efficiencies, cooler drop as a ' +
  'fraction. Not modelled: pulsation, valve dynamics, leakage, heat to jackets.'

const horsepower = (watts: number) => formatBoth(fromSi('power', watts), 'hp', 1)

export const pocketCurveComputation: Computation = offer(
  {
    name: 'pocket-curve',
    title: 'Capacity and driver load against the opening of a clearance pocket',
    inputs: [...MACHINE_INPUTS, takeNumber('steps', 'steps from shut to full open', 1, 100, true)],
    outputs: [
      {
        name: 'openings',
        says: 'openings, of full travel',
        type: { is: 'quantities', kind: 'ratio', unit: '%', least: 1 },
      },
      {
        name: 'capacity_shares',
        says: 'capacity, of that with the pocket shut or least open',
        type: { is: 'quantities', kind: 'ratio', unit: '%', least: 1 },
      },
      {
        name: 'loads',
        says: 'computed driver load',
        type: { is: 'quantities', kind: 'power', unit: 'hp', least: 1 },
      },
    ],
    sources: SOURCES,
    validity: VALIDITY,
  },
  (given) => {
    const machine = machineOf(given)
    if (!machine.ok) return machine
    const curve = pocketCurve(machine.value.record, machine.value.choice, given.si('steps'))
    if (!curve.ok) return curve
    const drawn = curve.value.flatMap(({ opening, point }) => (point === null ? [] : [{ opening, point }]))
    const [first] = drawn
    if (first === undefined)
      return refuse('no-flow', 'At no opening does the machine draw gas and find a balance.')
    const list = (kind: 'ratio' | 'power', values: readonly number[]) =>
      ({ is: 'quantities', quantities: values.map((value) => fromSi(kind, value)) }) as const
    const share = (point: OperatingPoint) => point.molPerS / first.point.molPerS
    return ok({
      outputs: {
        openings: list(
          'ratio',
          drawn.map(({ opening }) => opening),
        ),
        capacity_shares: list(
          'ratio',
          drawn.map(({ point }) => share(point)),
        ),
        loads: list(
          'power',
          drawn.map(({ point }) => point.driverW),
        ),
      },
      trace: drawn.map(({ opening, point }) => ({
        says: `Pocket ${formatNumber(opening * 100, 1)} % open`,
        formula: 'n1 = n2 = ...: pressures between stages from the balance; load from each stage',
        worked: `capacity ${formatNumber(share(point) * 100, 1)} %, driver ${horsepower(point.driverW)}`,
      })),
      warnings: curve.value.flatMap(({ opening, point, why }) =>
        point === null ? [`${formatNumber(opening * 100, 1)} % open: ${why}`] : [],
      ),
    })
  },
)

export const pocketSettingComputation: Computation = offer(
  {
    name: 'pocket-setting',
    title: 'Smallest pocket opening that brings the driver under its rating with the stated margin',
    inputs: MACHINE_INPUTS,
    outputs: [
      takeWord('answer', 'what was found', ['shut-is-enough', 'opening', 'no-opening']),
      takeWord('standing', 'HOLD where no opening does, or a load, reversal or temperature is out', [
        'clear',
        'HOLD',
      ]),
      take('opening', 'of full travel; with no-opening, where the load is least', 'ratio', '%'),
      take('load', 'driver load there, raised by the correction', 'power', 'hp'),
      take('target', 'rating less margin', 'power', 'hp'),
      take('capacity_share', 'capacity there over capacity now', 'ratio', '%'),
      takeNumber('turns', 'turns of the hand-wheel from shut; only of a hand-wheel', 0, 1000),
    ],
    sources: SOURCES,
    validity: VALIDITY,
  },
  (given) => {
    const machine = machineOf(given)
    if (!machine.ok) return machine
    const setting = pocketSetting(machine.value.record, machine.value.choice)
    return settingComputed(setting, given.maybe('pocket_turns'))
  },
)

function settingComputed(setting: PocketSetting, turns: number | undefined): Result<Computed> {
  if (setting.is === 'hold') return refuse('hold', `HOLD. ${setting.reasons.join(' ')}`)
  const at = setting.is === 'no-opening' ? setting.best : setting.found
  const clear = setting.is !== 'no-opening' && setting.clear
  return ok({
    outputs: {
      answer: wordOut(setting.is),
      standing: wordOut(clear ? 'clear' : 'HOLD'),
      opening: quantityOut('ratio', at.opening),
      load: quantityOut('power', at.loadW),
      target: quantityOut('power', setting.targetW),
      capacity_share: quantityOut('ratio', at.capacityShare),
      ...(turns === undefined ? {} : { turns: numberOut(at.opening * turns) }),
    },
    trace: settingTrace(setting, at),
    warnings: [
      ...(setting.is === 'no-opening'
        ? [
            `No opening does: ${horsepower(setting.shortW)} over the target is left at best.`,
            `Left for the lead to weigh: ${setting.left.join('; ')}.`,
          ]
        : []),
      ...at.checks.faults.map((fault) => `${fault.grade === 'hold' ? 'HOLD: ' : ''}${fault.say}`),
      'Capacity and load fall in proportion only at unchanged pressures in the ideal cycle.',
    ],
  })
}

function settingTrace(setting: Exclude<PocketSetting, { is: 'hold' }>, at: SettingFound): TraceStep[] {
  const stage = (point: OperatingPoint['stages'][number], i: number): TraceStep => ({
    says: `Stage ${i + 1} at ${formatNumber(at.opening * 100, 2)} % open`,
    formula: 'n = sum of VE x displacement x Ps / (Z R Ts), the same through all stages',
    worked:
      `Ps = ${fig(point.suctionPa / 1000)} kPa, Pd = ${fig(point.dischargePa / 1000)} kPa, r = ${fig(point.ratio)}, ` +
      `n = ${fig(point.molPerS)} mol/s, indicated ${horsepower(point.indicatedW)}`,
  })
  return [
    {
      says: 'Target',
      formula: 'target = rating x (1 - margin)',
      worked: horsepower(setting.targetW),
    },
    {
      says: 'Load at the present setting, and what measured load raises it by',
      formula: 'correction = measured / computed, never below 1',
      worked: `${horsepower(setting.present.driverW)}; correction ${fig(setting.correction)}`,
    },
    ...at.point.stages.map(stage),
    {
      says: 'Driver load there',
      formula: 'load = correction x (sum of indicated powers and friction)',
      worked: `${horsepower(at.loadW)} against ${horsepower(setting.targetW)}`,
    },
  ]
}
