// What has to hold although something before it let through what it should not have: a file, a check, an old log, a clock.
import { describe, expect, it } from 'vitest'
import type { Thermometer } from '../../../src/core/definition/instruments.ts'
import { unfitness } from '../../../src/core/job/admit-people.ts'
import { readingFrom } from '../../../src/core/job/admit-reading.ts'
import { instrumentById, type PlacedStep } from '../../../src/core/job/definitions.ts'
import type { Entry } from '../../../src/core/job/entries.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { gateState } from '../../../src/core/job/gate.ts'
import { judgeMeasured, type Measuring } from '../../../src/core/job/measured-limit.ts'
import {
  MISSES_ALLOWED,
  signer,
  WAIT_AFTER_MISSES_MS,
  waitAfterMisses,
} from '../../../src/core/job/signature.ts'
import type { State } from '../../../src/core/job/state.ts'
import { kindsDefs, LIFT, NO_RISE, SPACE } from '../../helpers/all-kinds.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { gate, type Raw, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const at = (evidence: Raw[]): Walk => {
  const steps = [gate('g', ['start'], [...evidence, WITNESS]), tell('in', { exposes: ['start'] })]
  return new Walk(kindsDefs(steps)).keys('RO', 'TC-401-1')
}
const given = (walk: Walk) => Object.keys(gateState(walk.state, 'g').given)

/** The last entry again, as another log might hold it. */
function rewritten(walk: Walk, change: (entry: Entry) => object): void {
  const { last } = walk
  walk.state = fold(walk.state, { ...last, ...change(last), seq: last.seq + 1 } as Entry)
}

describe('whether a step is needed', () => {
  const defs = (unknown: string) =>
    smallDefs([
      readOne('size', {
        stations: ['a', 'b'].map((id, i) => ({ id, label: id, at: 0.2 + i * 0.5 })),
        repeats: { at_least: 1, at_most: 1, within: '1 in' },
      }),
      tell('polish', { when: { rule: 'max(size) > length("9.51 in")', unknown } }),
      tell('close'),
    ])

  it('is unknown with one place not measured, whatever the others say, and the job holds where it says so', () => {
    const walk = new Walk(defs('hold')).keys('RO', 'TC-401-1', '1', '9.5200', 'n/a', 'a lamp is in the way')
    expect(walk.prompt).toMatchObject({ kind: 'held', step: { id: 'polish' } })
    expect(walk.bring({ do: 'done', step: 'polish' })).toBe('not-asked')
    expect(walk.state.done).toEqual({})
  })

  it('unknown is done where it says do', () => {
    const walk = new Walk(defs('do')).keys('RO', 'TC-401-1', '1', '9.5020', 'n/a', 'a lamp is in the way')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'polish' } })
  })
})

describe('a measured value', () => {
  const psi = (value: number) =>
    ({ text: `${value} psi`, kind: 'pressure-difference', value, unit: 'psi', si: value * 6895 }) as const
  const psig = (value: number) =>
    ({ text: `${value} psig`, kind: 'pressure-gauge', value, unit: 'psig', si: value * 6895 }) as const
  const evidence = { ...SPACE, at_most: undefined, at_least: psig(2) } as never
  const gauge = {
    id: 'P-4',
    kind: 'pressure_gauge',
    range: { from: psig(0), to: psig(15) },
    resolution: psi(0.1),
    uncertainty: { expanded: psi(0.2), k: 2, source: 'C' },
  } as unknown as Measuring
  const kindOf = (value: number, change: object = {}) =>
    judgeMeasured(evidence, { ...gauge, ...change } as Measuring, psig(value).si).kind

  it('is above its least by as much as the gauge may be off', () => {
    expect([1.9, 2, 2.1, 2.19, 2.2, 2.5].map((value) => kindOf(value))).toEqual([
      ...['fails', 'fails', 'fails', 'fails'],
      ...['passes', 'passes'],
    ])
  })

  it('on a gauge of which nobody said how far off it may be is nothing', () => {
    expect(kindOf(5, { uncertainty: undefined })).toBe('not-valid')
  })

  it('counts half a step of the instrument more where its certificate leaves the step out', () => {
    const stated = (includes_resolution: boolean) => ({
      uncertainty: { expanded: psi(0.2), k: 2, source: 'C', includes_resolution },
    })
    expect(kindOf(2.22, stated(true))).toBe('passes')
    expect(kindOf(2.22, stated(false))).toBe('fails')
    expect(kindOf(2.26, stated(false))).toBe('passes')
  })

  it('is not read on an instrument that measures something else, though it sits in the seat', () => {
    const walk = at([SPACE])
    const thermometer = instrumentById(walk.engine.defs, 'T-2') as Thermometer
    expect(thermometer.kind).toBe('contact_thermometer')
    walk.state = { ...walk.state, seats: { ...walk.state.seats, low_range: thermometer.id } }
    expect(walk.bring({ do: 'evidence', step: 'g', item: 'space', typed: '0' })).toBe('no-instrument')
    expect(given(walk)).toEqual([])
  })
})

describe('a wait', () => {
  it('begun at a time that cannot be read never ends', () => {
    const walk = at([NO_RISE]).keys('ALL SHUT IN')
    expect(walk.last.type).toBe('wait.begun')
    rewritten(walk, () => ({ at: 'yesterday' }))
    walk.wait(24 * 60)
    expect(walk.bring({ do: 'evidence', step: 'g', item: 'no_rise', typed: 'NO RISE' })).toBe('too-soon')
  })
})

describe('a lift plan', () => {
  it('with a load that was kept without its figure carries nothing', () => {
    const walk = at([LIFT]).keys('1800')
    rewritten(walk, () => ({ reading: undefined }))
    walk.key('2000')
    expect(walk.entries.slice(-2).map((e) => e.type)).toEqual(['evidence.failed', 'gate.closed'])
    expect(given(walk)).toEqual([])
  })

  it('falls whole with any part of it', () => {
    const walk = at([LIFT]).keys('1800', '2000', 'S-4')
    expect(given(walk)).toEqual(['head_lift.load', 'head_lift.rating', 'head_lift.sling'])
    const why = 'the tag is of another sling'
    walk.bring({ do: 'take-back-evidence', step: 'g', item: 'head_lift.sling', why })
    expect(given(walk)).toEqual([])
  })
})

describe('a signature', () => {
  const keyless = exampleDefs({ crew: (text) => text.replaceAll(/^ {4}pin: .*\n/gm, '') })

  it('by initials alone is none on a REAL record', () => {
    const { state } = new Walk(keyless)
    const real: State = { ...state, record: 'REAL' }
    expect(signer(keyless, real, { person: 'RO' })).toMatchObject({ ok: false, error: { code: 'no-pin' } })
    expect(signer(keyless, state, { person: 'RO' })).toMatchObject({ ok: true })
  })

  it('does not count while its person has to wait, though the PIN fitted', () => {
    const walk = new Walk()
    for (let n = 0; n < MISSES_ALLOWED; n++) walk.bring({ do: 'pin-missed', person: 'RO' })
    expect(walk.bring({ do: 'sign-on', person: 'RO', proved: true })).toBe('pin-wait')
    expect(walk.wait(5).bring({ do: 'sign-on', person: 'RO', proved: true })).toBeNull()
  })

  it('waits in full at a time that cannot be told', () => {
    const walk = new Walk()
    for (let n = 0; n < MISSES_ALLOWED; n++) walk.bring({ do: 'pin-missed', person: 'RO' })
    expect(waitAfterMisses(walk.state, 'RO', Number.NaN)).toBe(WAIT_AFTER_MISSES_MS)
  })
})

describe('an instrument', () => {
  const { defs } = new Walk().engine
  const gauge = instrumentById(defs, 'M-3')

  it('is fit for nothing on a day that cannot be read', () => {
    if (gauge === undefined) throw new Error('the example has no M-3')
    expect(unfitness(defs, gauge, '2026-03-14T06:20:00.000+00:00')).toBeNull()
    expect(unfitness(defs, gauge, 'some day')).not.toBeNull()
  })

  it('is not for a bore that its range does not take in', () => {
    if (gauge?.kind !== 'inside_micrometer') throw new Error('the example has no M-3')
    const { range } = gauge
    const short = {
      ...gauge,
      range: { ...range, to: { ...range.to, si: defs.machine.bore.nominal.si - 1e-6 } },
    }
    expect(unfitness(defs, short, '2026-03-14T06:20:00.000+00:00')).toMatch(/does not take in 9.5/)
  })

  it('found out of calibration reads nothing more', () => {
    const walk = new Walk().toBore()
    const placed = defs.steps.find((step) => step.id === 'bore') as PlacedStep
    const read = (state: State) => readingFrom(defs, state, placed, 'bore.1', 'M-3', '9.5033')
    expect(read(walk.state)).toMatchObject({ ok: true })
    const doubted = { ...walk.state, doubted: { 'M-3': 40 } }
    expect(read(doubted)).toMatchObject({ ok: false, error: { code: 'doubted' } })
  })
})

describe('a doubtful reading', () => {
  it('is kept only with a reason, however it is brought', () => {
    const walk = new Walk().toBore().keys('9.60')
    expect(walk.prompt.kind).toBe('doubt')
    expect(walk.bring({ do: 'settle-doubt', choice: 'kept' })).toBe('no-words')
    expect(walk.prompt.kind).toBe('doubt')
  })

  it('with nothing on record to compare it with is doubted', () => {
    const from = { from: 'counterbore', below: '0.1 in', above: '0.1 in' }
    const steps = [readOne('size', { plausible: from }), tell('close')]
    const { machine } = exampleDefs()
    const { counterbore: _none, ...bore } = machine.bore
    const walk = new Walk(smallDefs(steps, [], { machine: { ...machine, bore } }))
    walk.keys('RO', 'TC-401-1', '1', '9.75')
    expect(walk.last).toMatchObject({ type: 'reading.doubted', why: expect.stringMatching(/^without/) })
    const known = new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', '1', '9.7500')
    expect(known.last.type).toBe('reading.taken')
  })
})
