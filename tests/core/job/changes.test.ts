// As found, as left and the last overhaul side by side, and the rate of wear between them.
import { describe, expect, it } from 'vitest'
import { instrumentSchema } from '../../../src/core/definition/instruments.ts'
import { changesOf } from '../../../src/core/job/changes.ts'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { changeLines } from '../../../src/core/talk/changes.ts'
import { Walk } from '../../helpers/example.ts'
import { machineWith } from '../../helpers/records.ts'
import { type Raw, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

const COUNTER = instrumentSchema.parse({
  id: 'H-9',
  kind: 'hour_counter',
  title: 'Hours',
  unit: 'h',
  range: { from: '0 h', to: '99999 h' },
  resolution: '1 h',
  calibration: { due: '2030-01-01', certificate: 'none (invented)' },
})
const FEELERS = instrumentSchema.parse({
  id: 'F-9',
  kind: 'feeler_gauge',
  title: 'Feelers',
  unit: 'in',
  range: { from: '0 in', to: '1 in' },
  resolution: '0.001 in',
  uncertainty: { expanded: '0.001 in', k: 2, includes_resolution: true, source: 'Certificate (invented)' },
  calibration: { due: '2030-01-01', certificate: 'C (invented)' },
})
const SEATS = [
  { id: 'counter', kinds: ['hour_counter'], for: 'hours' },
  { id: 'feelers', kinds: ['feeler_gauge'], for: 'gaps' },
]
const window = {
  plausible: { from: 'range', least: '0.01 in', most: '0.5 in' },
  repeats: { at_least: 1, at_most: 2, within: '0.002 in' },
}
const gap = (id: string, stage: string) => readOne(id, { of: 'Ring gap', with: 'feelers', stage, ...window })
const STEPS: Raw[] = [
  readOne('hours', {
    quantity: 'time',
    of: 'running hours',
    with: 'counter',
    stage: 'as_found',
    repeats: { at_least: 1, at_most: 2, within: '1 h' },
    plausible: { from: 'range', least: '1 h', most: '90000 h' },
  }),
  gap('found', 'as_found'),
  gap('left', 'as_left'),
  tell('end'),
]
const left = (value: string, more: Raw = {}) => [
  { of: 'ring gap', value, u: '0.001 in', wears: 'larger', ...more },
]
const overhaul = (day: string, hours: string, figures: Raw[], more: Raw = {}) => ({
  day,
  hours,
  report: 'R (invented)',
  left: figures,
  ...more,
})

function defsWith(overhauls: Raw[], steps = STEPS): Definitions {
  const machine = machineWith({ overhauls })
  const instruments = { instruments: [COUNTER, FEELERS] }
  return smallDefs(steps, [], { machine, instruments }, { seats: SEATS })
}
const walked = (overhauls: Raw[], lines = ['1', '10000', '1', '0.040', '0.020']) =>
  new Walk(defsWith(overhauls)).keys('RO', 'TC-401-1', ...lines)
const lines = (walk: Walk) => changeLines(walk.engine.defs, walk.state).join('\n')
const gapOf = (walk: Walk) => changesOf(walk.engine.defs, walk.state).find((one) => one.of === 'Ring gap')

describe('as found and as left', () => {
  it('stand on one line with the change, and with the last overhaul', () => {
    const walk = walked([overhaul('2024-01-01', '2000 h', left('0.022 in'))])
    expect(lines(walk)).toMatch(
      /last 0\.0220 in \(2024-01-01\) {3}found 0\.0400 in, \+0\.0180 in since {3}left 0\.0200 in {3}change -0\.0200 in/,
    )
    walk.key('changes')
    expect(walk.said.join('\n')).toContain('found 0.0400 in')
  })

  it('give a rate from two overhauls with the measuring error only: 0.018 in over 8000 h', () => {
    const walk = walked([overhaul('2024-01-01', '2000 h', left('0.022 in'))])
    const rate = gapOf(walk)?.rate
    if (!rate?.ok) throw new Error('no rate')
    expect((rate.value.perHour * 8000) / 0.0254).toBeCloseTo(0.018, 9)
    expect((rate.value.U * 8000) / 0.0254).toBeCloseTo(Math.hypot(0.001, 0.001), 9)
    expect(rate.value.basis).toBe('measuring error only')
    expect(lines(walk)).toContain('(measuring error only)')
  })

  it('begin anew where something was renewed: what lies before it counts for nothing', () => {
    const old = overhaul('2020-01-01', '500 h', left('0.090 in'))
    const renewed = overhaul('2024-01-01', '2000 h', left('0.022 in'), { renewed: ['rings'] })
    const rate = gapOf(walked([old, renewed]))?.rate
    expect(rate?.ok && rate.value.from.hours).toBe(2000)
  })

  it.each([
    [
      'no error on the old figure',
      [overhaul('2024-01-01', '2000 h', left('0.022 in', { u: undefined }))],
      null,
    ],
    [
      'no way of wearing on record',
      [overhaul('2024-01-01', '2000 h', left('0.022 in', { wears: undefined }))],
      null,
    ],
    ['no overhaul', [], null],
    ['hours that do not rise', [overhaul('2024-01-01', '20000 h', left('0.022 in'))], 'hours-order'],
    ['wear that goes back', [overhaul('2024-01-01', '2000 h', left('0.060 in'))], 'contradiction'],
  ] as const)('tell no rate with %s', (_what, overhauls, code) => {
    // Wear that goes back is doubted first, and kept here.
    const kept = code === 'contradiction' ? ['3', 'measured twice'] : []
    const rate = gapOf(walked([...overhauls], ['1', '10000', '1', '0.040', ...kept, '0.020']))?.rate
    if (code === null) expect(rate).toBeNull()
    else expect(rate).toMatchObject({ ok: false, error: { code } })
  })

  it('may be the very figure of then with feelers, which come out alike: it is not doubted', () => {
    const walk = walked([overhaul('2024-01-01', '2000 h', left('0.040 in'))])
    expect(walk.entries.filter((e) => e.type === 'reading.doubted')).toEqual([])
    expect(lines(walk)).toContain('last 0.0400 in (2024-01-01)   found 0.0400 in')
  })

  it('say once that running hours were not read, where only they are missing', () => {
    const wide = readOne('wide', { of: 'Ring width', with: 'feelers', stage: 'as_found', ...window })
    const both = [...left('0.022 in'), { ...left('0.022 in')[0], of: 'ring width' }]
    const defs = defsWith(
      [overhaul('2024-01-01', '2000 h', both)],
      [...STEPS.slice(0, -1), wide, tell('end')],
    )
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', 'n/a', 'counter broken', '1', '0.040', '0.020')
    walk.keys('0.030')
    expect(changesOf(defs, walk.state).map(({ rate }) => rate?.ok === false && rate.error.code)).toEqual([
      'no-hours',
      'no-hours',
    ])
    const said = lines(walk).split('\n')
    expect(said.filter((line) => line.includes('no rate'))).toEqual([
      'no rate of wear: the running hours were not read on this job.',
    ])
    expect(said.at(-1)).toContain('no rate')
  })

  it('tell no rate of what is no size: hours have none, whatever the record says', () => {
    const hours = [
      { of: 'running hours', value: '2 lb', wears: 'larger', u: '0.001 in' },
      ...left('0.022 in'),
    ]
    const walk = walked([overhaul('2024-01-01', '2000 h', hours)])
    const of = changesOf(walk.engine.defs, walk.state).find((one) => one.of === 'running hours')
    expect(of).toMatchObject({ last: null, rate: null })
    expect(lines(walk)).toContain('found 10000.0 h')
  })

  it('show what was read as found only, and nothing where nothing was', () => {
    expect(lines(walked([], ['1', '10000', '1', '0.040']))).not.toContain('left')
    expect(lines(walked([], []))).toBe('')
  })
})
