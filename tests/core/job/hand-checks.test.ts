// Verdicts of the shipped procedures on the example machine, against sums done by hand: each reading is keyed, each figure worked
// by plain arithmetic in inches here, and nothing of ours is called for it. Readings invented.
import { describe, expect, it } from 'vitest'
import { asKind } from '../../../src/core/job/definitions.ts'
import { figureRecord } from '../../../src/core/job/verdict-record.ts'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

interface Keyed {
  /** Figures by step and station, each keyed as often as it is asked for. */
  readonly readings?: Readonly<Record<string, string>>
  /** Conditions by step. */
  readonly seen?: Readonly<Record<string, string>>
  /** Instruments by seat. */
  readonly picks?: Readonly<Record<string, string>>
}

/** Walks until the judge step has spoken: what is not said here is keyed as a careful person would. */
function judged(file: string, judge: string, { readings = {}, seen = {}, picks = {} }: Keyed) {
  const walk = new Walk(shippedDefs(file))
  for (let lines = 0; lines < 600; lines++) {
    const record = figureRecord(walk.state.verdicts[judge]?.verdict)
    if (record !== undefined) return record
    const { prompt, state } = walk
    if (prompt.kind === 'evidence' && state.gates[prompt.gate.id]?.begun[prompt.item.key] !== undefined)
      walk.wait(16)
    walk.key(lineFor(walk, { readings, seen, picks }))
  }
  throw new Error(`${judge} was not reached: ${walk.prompt.kind}`)
}

function lineFor(walk: Walk, { readings, seen, picks }: Required<Keyed>): string {
  const { prompt } = walk
  if (walk.talk.ask === null && prompt.kind === 'read') {
    const keyed = readings[`${prompt.step.id}.${prompt.place.station.id}`]
    if (keyed !== undefined) return keyed
  }
  if (walk.talk.ask === null && prompt.kind === 'pick' && picks[prompt.seat.id] !== undefined)
    return picks[prompt.seat.id] ?? ''
  if (walk.talk.ask === null && prompt.kind === 'observe' && seen[prompt.step.id] !== undefined) {
    const { conditions } = asKind(prompt.step, 'observe').step
    return String(1 + conditions.findIndex(({ id }) => id === seen[prompt.step.id]))
  }
  return rightLine(walk.engine.defs, walk.state, walk.talk)
}

type Judged = ReturnType<typeof judged>
const IN = 0.0254
const PSI = 6894.757293168
const FTLB = 1.3558179483314
const value = (record: Judged, characteristic: string, unit = IN) =>
  (record.inputs.figures.find((one) => one.characteristic === characteristic)?.value ?? Number.NaN) / unit
const limit = (record: Judged, characteristic: string, unit = IN) =>
  (record.inputs.figures.find((one) => one.characteristic === characteristic)?.limit?.value ?? Number.NaN) /
  unit
const word = (record: Judged, characteristic: string) =>
  record.result.judged.find((one) => one.characteristic === characteristic)?.judgement.verdict

describe('the rod', () => {
  const at = (top: number[], side: number[]) => ({
    'rod_top.piston_end': String(top[0]),
    'rod_top.middle': String(top[1]),
    'rod_top.crosshead_end': String(top[2]),
    'rod_side.piston_end': String(side[0]),
    'rod_side.middle': String(side[1]),
    'rod_side.crosshead_end': String(side[2]),
  })
  const temps = (rod: string, mic: string) => ({
    'rod_temp_before.middle': rod,
    'rod_temp_after.middle': rod,
    'mic_temp_before.body': mic,
    'mic_temp_after.body': mic,
    'mic_set_before.standard': '2.0000',
    'mic_set_after.standard': '2.0000',
  })

  it('undersize and still usable: 0.0038 in of 0.005 in, watched', () => {
    const readings = { ...temps('68', '68'), ...at([2.2464, 2.2462, 2.2465], [2.2465, 2.2463, 2.2464]) }
    const record = judged('rod-sizes.yaml', 'rod_size_judged', { readings })
    expect(value(record, 'rod-undersize')).toBeCloseTo(2.25 - 2.2462, 7)
    expect(limit(record, 'rod-undersize')).toBeCloseTo(0.005, 9)
    expect(value(record, 'rod-out-of-round')).toBeCloseTo(0.0001, 7)
    expect(value(record, 'rod-taper')).toBeCloseTo(2.2465 - 2.2462, 7)
    expect(word(record, 'rod-undersize')).toBe('MONITOR')
    expect(record.result.verdict).toBe('MONITOR')
  })

  it('measured warm is judged at 20 degC: rod 24 degC and 4140, micrometer 22 degC and steel', () => {
    const readings = { ...temps('75.2', '71.6'), ...at([2.2488, 2.2485, 2.2487], [2.2487, 2.2484, 2.2486]) }
    const record = judged('rod-sizes.yaml', 'rod_size_judged', { readings })
    const smallest = (2.2484 * (1 + 11.5e-6 * 2)) / (1 + 11.2e-6 * 4)
    expect(value(record, 'rod-undersize')).toBeCloseTo(2.25 - smallest, 7)
  })

  it('bent by 0.0016 in is beyond 0.001 in', () => {
    const readings = {
      'rod_straight.piston_end': '0.0004',
      'rod_straight.middle': '0.0016',
      'rod_straight.crosshead_end': '0.0005',
    }
    const record = judged('rod-sizes.yaml', 'straight_judged', {
      readings: { ...temps('68', '68'), ...readings },
    })
    expect(value(record, 'rod-straightness')).toBeCloseTo(0.0016, 7)
    expect(limit(record, 'rod-straightness')).toBeCloseTo(0.001, 9)
    expect(record.result.verdict).toBe('REPLACE')
  })
})

describe('rings', () => {
  it('a worn gap of 0.064 in is beyond three times the new 0.019 in', () => {
    const readings = { 'gap_found.greatest': '0.064', 'gap_found.least': '0.041' }
    const record = judged('piston-and-rings.yaml', 'gap_judged', { readings })
    expect(value(record, 'ring-end-gap')).toBeCloseTo(0.064, 9)
    expect(limit(record, 'ring-end-gap')).toBeCloseTo(3 * 0.019, 9)
    expect(record.result.verdict).toBe('REPLACE')
  })

  it('a new gap of 0.015 in is to be filed: 0.002 in for each inch of a 9.500 in bore is the least', () => {
    const readings = { 'gap_left.greatest': '0.022', 'gap_left.least': '0.015' }
    const record = judged('rings-in-bore.yaml', 'gap_judged', { readings })
    expect(limit(record, 'ring-end-gap-least')).toBeCloseTo(0.002 * 9.5, 9)
    expect(word(record, 'ring-end-gap-least')).toBe('REWORK')
    expect(word(record, 'ring-end-gap')).toBe('ACCEPT')
    expect(record.result.verdict).toBe('REWORK')
  })

  it('side clearance, thickness and how far the ring lies below its land', () => {
    const readings = {
      'side.least': '0.0040',
      'side.greatest': '0.0055',
      'radial_new.greatest': '0.3125',
      'radial_new.least': '0.3110',
      'groove_depth.least': '0.3300',
    }
    const record = judged('ring-fit.yaml', 'fit_judged', { readings })
    expect(value(record, 'ring-groove-depth-least')).toBeCloseTo(0.33 - 0.3125, 7)
    expect(limit(record, 'ring-side-clearance-least')).toBeCloseTo(0.006 * 0.375, 9)
    expect(record.result.verdict).toBe('ACCEPT')
  })

  it('a piston of 9.4860 in runs with 0.014 in, more than 0.00125 in for each inch', () => {
    const both = { 'piston_od.head_land': '9.4860', 'piston_od.crank_land': '9.4858' }
    const steady = {
      'piston_temp_before.middle': '68',
      'piston_temp_after.middle': '68',
      'mic_temp_before.body': '68',
      'mic_temp_after.body': '68',
      'mic_set_before.standard': '9.0000',
      'mic_set_after.standard': '9.0000',
    }
    const record = judged('ring-fit.yaml', 'piston_judged', {
      readings: { ...both, ...steady },
      picks: { piston_micrometer: 'M-9' },
    })
    expect(value(record, 'piston-clearance-least')).toBeCloseTo(9.5 - 9.486, 6)
    expect(value(record, 'piston-clearance')).toBeCloseTo(9.5 - 9.4858, 6)
    expect(limit(record, 'piston-clearance-least')).toBeCloseTo(0.00125 * 9.5, 9)
    expect(record.result.verdict).toBe('ACCEPT')
  })
})

describe('the nut', () => {
  const nut = (method: string, readings: Keyed['readings'], judge: string) =>
    judged('piston-on-rod.yaml', judge, { seen: { contact: 'enough', method }, readings: readings ?? {} })

  it('by torque: 950 ft-lb between 900 and 1000', () => {
    const record = nut('torque', { 'nut_torque.nut': '950' }, 'torque_judged')
    expect(value(record, 'nut-torque', FTLB)).toBeCloseTo(950, 6)
    expect(record.result.verdict).toBe('ACCEPT')
  })

  it('by stretch: 0.0080 in between 0.0070 and 0.0095, and 0.0055 is not enough', () => {
    const by = (after: string) =>
      nut('stretch', { 'end_before.end': '1.2000', 'end_after.end': after }, 'stretch_judged')
    expect(value(by('1.2080'), 'nut-stretch')).toBeCloseTo(0.008, 7)
    expect(by('1.2080').result.verdict).toBe('ACCEPT')
    expect(by('1.2055').result.verdict).toBe('REWORK')
  })
})

describe('put back', () => {
  const readings = {
    'piston_running.top': '0.012',
    'crosshead_running.top': '0.007',
    'head_clearance.high': '0.070',
    'head_clearance.low': '0.068',
    'crank_clearance.high': '0.036',
    'crank_clearance.low': '0.034',
    'runout_horizontal.packing': '-0.0008',
    'runout_vertical.packing': '-0.0008',
    'dial_return.worse': '0.0001',
  }
  it('end clearances and runout: 11/45 of half of 0.012 less 0.007 in is what to expect up and down', () => {
    const record = judged('put-back.yaml', 'set_judged', { readings })
    expect(value(record, 'end-clearance-head')).toBeCloseTo(0.07, 9)
    expect(value(record, 'end-clearance-crank-least')).toBeCloseTo(0.034, 9)
    expect(value(record, 'runout-horizontal')).toBeCloseTo(0.0008, 9)
    // Zero with the piston out; at the crank end the dial stands nearer the piston, which lies the lower of the two.
    const expected = -((11 / 45) * (0.012 - 0.007)) / 2
    expect(value(record, 'runout-vertical-deviation')).toBeCloseTo(Math.abs(-0.0008 - expected), 7)
    expect(word(record, 'end-clearance-head')).toBe('ACCEPT')
    expect(word(record, 'runout-vertical-deviation')).toBe('ACCEPT')
  })

  it('a crank end of 0.052 in is beyond 0.040 in', () => {
    const record = judged('put-back.yaml', 'set_judged', {
      readings: { ...readings, 'crank_clearance.high': '0.052' },
    })
    expect(word(record, 'end-clearance-crank')).toBe('REWORK')
  })
})

describe('what must hold pressure', () => {
  it('a leak test that loses 0.6 psi of 2 psi, on a gauge good enough to tell', () => {
    const lost = (begin: string, end: string, gauge: string) =>
      judged('return-to-service.yaml', 'loss_judged', {
        readings: { 'test_begin.gauge': begin, 'test_end.gauge': end },
        picks: { test_gauge: gauge },
      })
    expect(value(lost('50.0', '49.4', 'P-7'), 'test-pressure-loss', PSI)).toBeCloseTo(0.6, 6)
    expect(lost('50.0', '49.4', 'P-7').result.verdict).toBe('ACCEPT')
    expect(lost('50.0', '46.0', 'P-7').result.verdict).toBe('REWORK')
    // What a gauge cannot show was not read on it, whoever kept it and why.
    const offScale = lost('50.0', '49.4', 'P-4').result
    expect(offScale.verdict).toBe('HOLD')
    expect(offScale.holds.join()).toContain('beyond what P-4 reads, 0 psig to 15 psig')
    // The gauge for running pressures may be off by 1.5 psi: with two readings on it nothing can be said of 2 psi.
    expect(lost('50', '49', 'P-6').result.verdict).toBe('HOLD')
  })

  it('a pocket that gains 2.4 psi of 1 psi leaks', () => {
    const record = judged('pocket-leak-test.yaml', 'leak_judged', {
      readings: { 'leak_start.pocket': '0.0', 'leak_end.pocket': '2.4' },
    })
    expect(value(record, 'pocket-leak-rise', PSI)).toBeCloseTo(2.4, 6)
    expect(record.result.verdict).toBe('REWORK')
  })
})

it('a ridge of 0.0062 in is near the 0.007 in at which a bore is cut', () => {
  const record = judged('ridge-and-finish.yaml', 'ridge_judged', {
    readings: { 'ridge_height.ridge': '0.0062' },
  })
  expect(limit(record, 'ridge')).toBeCloseTo(0.007, 9)
  expect(record.result.verdict).toBe('MONITOR')
})
