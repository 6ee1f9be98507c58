// Gas at a gate: entries, limits, meters. A method that is not valid says nothing; a reading outside its limit fells all.
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { gateState } from '../../../src/core/job/gate.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'
import { exampleDefs, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const toGas = (defs?: Definitions) => new Walk(defs).toGate().keys(...LOCK_LINES, ...WORD_LINES)
const given = (walk: Walk) =>
  Object.keys(gateState(walk.state, 'hold_point').given).filter((k) => /oxygen|flammable|h2s/.test(k))
const types = (walk: Walk, last: number) => walk.entries.slice(-last).map((e) => e.type)

describe('entries', () => {
  it.each([
    '',
    'y',
    'ok',
    'nan',
    'NaN',
    'Infinity',
    '1e999',
    '0x10',
    '--',
    '-20.9',
    '20,9',
    '101',
    '20.9 %LEL',
    '20.9 ppm x',
  ])('refuses %j as an oxygen reading, and records nothing', (typed) => {
    const walk = toGas()
    const before = walk.entries.length
    expect(walk.key(typed)).not.toBeNull()
    expect(walk.entries).toHaveLength(before)
    expect(given(walk)).toEqual([])
  })
})

it('a bare sign of per cent is told to be left off where the box is by volume, and at LEL it is not', () => {
  const walk = toGas()
  expect(walk.key('20.9%')).toBe('bare-percent')
  expect(walk.said.at(-1)).toBe('Key 20.9 without the sign, if that is % by volume: this box takes %vol.')
  walk.key('20.9')
  expect(walk.key('5 %')).not.toBe('bare-percent')
})

describe('a figure that looks like a slip', () => {
  it('falls at once when it is outside its limit: whoever reads it comes out before anything is asked about it', () => {
    for (const lines of [['20.9', '1000'], ['20.9', '0', '999'], ['2.09'], ['90.2']]) {
      const walk = toGas().keys(...lines)
      expect([lines, walk.prompt.kind, walk.last.type]).toEqual([lines, 'clear', 'gate.closed'])
      expect(walk.state.doubt).toBeNull()
    }
  })

  it('109 for 10.9 is no oxygen there is: refused, nothing taken, and the hold point stays shut', () => {
    const walk = toGas()
    expect(walk.key('109')).toBe('oxygen')
    expect(given(walk)).toEqual([])
    expect(walk.said.at(-1)).toContain('the hold point stays shut: read the meter again')
    walk.keys('10.9')
    expect(walk.prompt.kind).toBe('clear')
  })
})

describe('limits', () => {
  it.each([
    ['19.5', true],
    ['19.49', false],
    ['23.5', true],
    ['23.51', false],
    ['0', false],
    ['5', false],
  ])(
    'oxygen of %s vol pct where people breathe passes: %s (19.5 to 23.5, 29 CFR 1910.146(b))',
    (typed, passes) => {
      const walk = toGas().keys(typed)
      expect(given(walk)).toEqual(passes ? ['oxygen_breathing'] : [])
    },
  )

  it.each([
    ['10', true],
    ['10.1', false],
    ['100', false],
  ])('flammables of %s pct LEL pass: %s (10, 29 CFR 1910.146(b))', (typed, passes) => {
    expect(given(toGas().keys('20.9', typed))).toEqual(
      passes ? ['oxygen_breathing', 'flammable_breathing'] : [],
    )
  })

  it.each([
    ['100', false],
    ['99', true],
  ])(
    'flammables of %s pct LEL under a limit of 250 pct LEL pass: %s, as it burns from 100',
    (typed, passes) => {
      const defs = exampleDefs()
      const { site } = defs.machine
      const most = { text: '250 %LEL', kind: 'lel-fraction', value: 250, unit: '%LEL', si: 2.5 } as const
      const limits = site.gas.limits.map((l) => (l.gas === 'flammable' ? { ...l, at_most: most } : l))
      const walk = toGas({
        ...defs,
        machine: { ...defs.machine, site: { ...site, gas: { ...site.gas, limits } } },
      }).keys('20.9', typed)
      expect(given(walk)).toEqual(passes ? ['oxygen_breathing', 'flammable_breathing'] : [])
    },
  )

  it('puts a failure on record, fells all gas of the gate, keeps the locks, and calls people out', () => {
    const walk = toGas().keys('20.9', '0', '6')
    expect(walk.entries.slice(-2)).toMatchObject([
      {
        type: 'evidence.failed',
        item: 'h2s_breathing',
        shown: '6 ppm',
        instrument: 'G-7',
        why: expect.stringMatching(/above 5 ppm/),
      },
      { type: 'gate.closed', cause: 'failed', items: ['oxygen_breathing', 'flammable_breathing'] },
    ])
    expect(given(walk)).toEqual([])
    expect(Object.keys(gateState(walk.state, 'hold_point').given)).toHaveLength(10)
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'oxygen_breathing' } })
  })

  it('stays shut where the machine record lacks the limit, has no bound in it, or bounds it in another unit', () => {
    const defs = exampleDefs()
    const { site } = defs.machine
    const withLimits = (limits: typeof site.gas.limits): Definitions => ({
      ...defs,
      machine: { ...defs.machine, site: { ...site, gas: { ...site.gas, limits } } },
    })
    const none = toGas(withLimits(site.gas.limits.filter((l) => l.id !== 'oxygen_breathing')))
    expect(none.key('20.9')).toBe('no-limit')
    const bare = site.gas.limits.map(({ at_least: _a, at_most: _b, ...rest }) => rest)
    const unbound = toGas(withLimits(bare)).keys('20.9')
    expect(unbound.entries.at(-2)).toMatchObject({
      type: 'evidence.failed',
      why: expect.stringMatching(/no bound/),
    })
    const lel = site.gas.limits.find((l) => l.id === 'flammable_breathing')?.at_most
    const mixed = site.gas.limits.map((l) => (l.gas === 'hydrogen_sulfide' ? { ...l, at_most: lel } : l))
    const wrong = toGas(withLimits(mixed as typeof site.gas.limits)).keys('20.9', '0', '0')
    expect(wrong.entries.at(-2)).toMatchObject({
      type: 'evidence.failed',
      why: expect.stringMatching(/not in a unit/),
    })
    for (const walk of [none, unbound, wrong]) expect(given(walk)).toEqual([])
  })
})

describe('the method', () => {
  it('takes no flammables on a catalytic meter below the oxygen it needs: put back, no word about the place', () => {
    const walk = toGas().keys('20.9', '0', '0', '9.9', '0')
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'evidence.failed', item: 'flammable_inside', why: expect.stringMatching(/needs 10 %vol/) },
      { type: 'instrument.put-back', seat: 'meter' },
    ])
    expect(given(walk)).toEqual(['oxygen_breathing', 'flammable_breathing', 'h2s_breathing', 'oxygen_inside'])
    expect(walk.prompt.kind).toBe('pick')
  })

  it('takes them at exactly the oxygen it needs', () => {
    expect(given(toGas().keys('20.9', '0', '0', '10', '0'))).toContain('flammable_inside')
  })

  it.each([
    ['another lower limit', 'lower_limit: 5.0 %vol }', 'lower_limit: 4.4 %vol }'],
    ['another gas', 'gas: methane, lower', 'gas: pentane, lower'],
  ])('takes none on a meter that reads pct LEL of %s', (_what, from, to) => {
    // The checks of the files only warn of a basis that differs, since the meter could be set otherwise.
    const defs = exampleDefs()
    const instruments = defs.instruments.instruments.map((i) =>
      i.kind !== 'gas_meter'
        ? i
        : {
            ...i,
            lel_basis: from.startsWith('gas')
              ? { ...i.lel_basis, gas: 'pentane' }
              : { ...i.lel_basis, lower_limit: { ...i.lel_basis.lower_limit, text: to, si: 0.044 } },
          },
    )
    const walk = toGas({ ...defs, instruments: { instruments } }).keys('20.9', '0')
    expect(walk.entries.at(-2)).toMatchObject({
      type: 'evidence.failed',
      why: expect.stringMatching(/reads % LEL of/),
    })
    expect(given(walk)).toEqual(['oxygen_breathing'])
  })

  it('takes none when the oxygen of the place was never named', () => {
    const defs = exampleDefs()
    const steps = defs.steps.map((s) =>
      s.step.kind !== 'gate'
        ? s
        : {
            ...s,
            step: {
              ...s.step,
              evidence: s.step.evidence.map((e) => (e.kind === 'gas' ? { ...e, oxygen: undefined } : e)),
            },
          },
    )
    const walk = toGas({ ...defs, steps }).keys('20.9', '0')
    expect(walk.entries.at(-2)).toMatchObject({
      type: 'evidence.failed',
      why: expect.stringMatching(/not on record/),
    })
  })
})

describe('the meter', () => {
  it('is refused when its calibration lapsed', () => {
    const walk = new Walk(
      exampleDefs({ instruments: (t) => t.replace('due: 2026-04-15', 'due: 2026-03-13') }),
    )
    expect(
      walk
        .toGate()
        .keys(...LOCK_LINES, ...WORD_LINES.slice(0, 3))
        .key('1'),
    ).toBe('unfit')
    expect(walk.prompt.kind).toBe('pick')
  })

  it('stands on the day it is due', () => {
    const walk = toGas(exampleDefs({ instruments: (t) => t.replace('due: 2026-04-15', 'due: 2026-03-14') }))
    expect(given(walk.keys('20.9'))).toEqual(['oxygen_breathing'])
  })

  it('is put back when its calibration lapses while the prompt waits, before the line is looked at', () => {
    const walk = toGas(exampleDefs({ instruments: (t) => t.replace('due: 2026-04-15', 'due: 2026-03-14') }))
    // No entry since yesterday: only the clock says that the day is over.
    walk.now = readStamp('2026-03-15T00:00:30.000+00:00') ?? walk.now
    walk.keys('20.9')
    expect(types(walk, 1)).toEqual(['instrument.put-back'])
    expect(given(walk)).toEqual([])
  })
})
