import { describe, expect, test } from 'vitest'
import { type BoreVerdict, judgeBore } from '../../../src/core/bore/bore-judge.ts'
import type { BoreJudgeInput, SetCheck } from '../../../src/core/bore/bore-judge-input.ts'
import type { BoreReading } from '../../../src/core/bore/bore-readings.ts'
import { boreInput, boreLimit, boreOf, IN, LIMITS, SOUND_ROWS } from './sample-bore.ts'

const words = (v: BoreVerdict) => v.judged.map(({ judgement }) => judgement.verdict)
const kinds = (v: BoreVerdict) => v.proposals.map(({ kind }) => kind)
const judge = (change: Partial<BoreJudgeInput> = {}) => judgeBore(boreInput(change))
const rows = (...values: [number, number][]) => ({ readings: boreOf(values) })

/** 0.009 in wider in the middle on one axis: spread and taper are beyond their limits, out-of-round is not. */
const BARREL = rows([9.5, 9.5], [9.509, 9.503], [9.5002, 9.5])

describe('a bore that can be judged', () => {
  test('is accepted with room on every limit, and nothing is proposed', () => {
    const v = judge()
    expect(v).toMatchObject({ verdict: 'ACCEPT', holds: [] })
    expect(words(v)).toEqual(['ACCEPT', 'ACCEPT', 'ACCEPT', 'ACCEPT'])
    expect(kinds(v)).toEqual(['nothing-to-do'])
    expect((v.wearFromNominalM ?? 0) / IN).toBeCloseTo(0.002, 9)
    expect(v.wearFromDatum?.perAxis.map(({ wearM }) => Math.round((wearM ?? 0) / IN / 1e-4))).toEqual([
      16, 12,
    ])
    expect(v.reboreRoom).toMatchObject({ boundBy: 'counterbore' })
  })

  test('taper governs by the share of its own limit, and its two stations are named', () => {
    const v = judge()
    expect(v.governs?.characteristics).toEqual(['taper'])
    expect(v.governs?.used).toBeCloseTo(0.001 / 0.0055, 9)
    expect(v.judged[1]?.places).toEqual([
      { station: 'S2', axis: 'vertical' },
      { station: 'S3', axis: 'vertical' },
    ])
  })

  test('the diameter is counted from nominal and so does not govern a new bore', () => {
    const used = judge().judged[3]?.judgement.used
    expect(used).toBeCloseTo(0.002 / 0.03, 9)
  })

  test('characteristics that use the same share both govern', () => {
    const limits = {
      ...LIMITS,
      taper: boreLimit('taper', 0.005),
      'out-of-round': boreLimit('out-of-round', 0.003),
    }
    expect(judge({ limits }).governs?.characteristics).toEqual(['out-of-round', 'taper'])
  })

  test('a watched share is MONITOR and the proposal is to keep watch', () => {
    const v = judge({ limits: { ...LIMITS, taper: boreLimit('taper', 0.0055, { monitorFrom: 0.15 }) } })
    expect(v.verdict).toBe('MONITOR')
    expect(kinds(v)).toEqual(['keep-watch'])
  })

  test('differences are judged with the U of a difference, the diameter with the U of a reading', () => {
    const guards = judge().judged.map(({ judgement }) => Math.round((judgement.guard ?? 0) / IN / 1e-6))
    expect(guards).toEqual([424, 424, 424, 300])
  })
})

describe('beyond a limit', () => {
  test('an unlined barrel is bored, and honing is said not to help', () => {
    const v = judge(BARREL)
    expect(v.verdict).toBe('REWORK')
    expect(v.form).toMatchObject({ form: 'barrel', widerInMiddleOn: 'vertical' })
    expect(kinds(v)).toEqual(['bore'])
    expect(v.proposals[0]?.say).toContain('neither taper nor out-of-round')
    expect(v.proposals[0]?.say).toContain('counterbore')
  })

  test('a lined one is renewed, or bored only where the book gives a greatest bore', () => {
    expect(kinds(judge({ ...BARREL, lined: true }))).toEqual(['renew-liner'])
    expect(kinds(judge({ ...BARREL, lined: true, maxBoreM: 9.53 * IN }))).toEqual(['bore', 'renew-liner'])
  })

  test('over its greatest diameter it is not bored further', () => {
    const over = rows([9.5302, 9.5302], [9.5309, 9.5305], [9.5302, 9.5302])
    expect(judge(over).verdict).toBe('REPLACE')
    expect(kinds(judge(over))).toEqual(['line-or-renew'])
    expect(kinds(judge({ ...over, lined: true }))).toEqual(['renew-liner'])
    const rework = { ...LIMITS, 'largest-diameter': boreLimit('largest-diameter', 9.53) }
    expect(judge({ ...over, limits: rework }).verdict).toBe('REWORK')
    expect(kinds(judge({ ...over, limits: rework }))).toEqual(['line-or-renew'])
    expect(kinds(judge({ ...BARREL, maxBoreM: 9.508 * IN }))).toEqual(['line-or-renew'])
  })

  test('with no counterbore on record boring waits for the room to be known', () => {
    const v = judge({ ...BARREL, counterboreM: null })
    expect(v.reboreRoom).toBeNull()
    expect(v.proposals[0]?.say).toContain('once the room')
  })

  test('beyond one limit and without another it is HOLD, and both are proposed', () => {
    const { spread, taper, 'out-of-round': round } = LIMITS
    const v = judge({ ...BARREL, limits: { spread, taper, 'out-of-round': round } })
    expect(v.verdict).toBe('HOLD')
    expect(words(v)).toEqual(['ACCEPT', 'REWORK', 'REWORK', 'HOLD'])
    expect(v.holds).toEqual(['Largest-diameter: no limit is on record.'])
    expect(kinds(v)).toEqual(['judge-again', 'bore'])
  })

  test('too close to call is HOLD and measured again', () => {
    const v = judge(rows([9.5, 9.5], [9.507, 9.503], [9.5025, 9.5025]))
    expect(v.verdict).toBe('HOLD')
    expect(kinds(v)[0]).toBe('measure-again')
    expect(v.holds[0]).toContain('too close to call')
  })
})

describe('holds on the measuring leave no word about the part standing', () => {
  const check = (deviation: number | null, allowed: number | null = 0.0002): SetCheck => ({
    deviationM: deviation === null ? null : deviation * IN,
    allowedM: allowed === null ? null : allowed * IN,
  })
  const good = check(0.0001)
  const cases: [string, Partial<BoreJudgeInput>, string][] = [
    [
      'a place missing',
      { missing: [{ station: 'S4', axis: 'vertical', why: 'unsettled' }] },
      'S4, vertical (unsettled)',
    ],
    [
      'no set-check before',
      { setCheck: { before: null, after: good } },
      'no set-check of the instrument before',
    ],
    [
      'no set-check after',
      { setCheck: { before: good, after: undefined } },
      'no set-check of the instrument after',
    ],
    [
      'no deviation',
      { setCheck: { before: check(null), after: good } },
      'no set-check of the instrument before',
    ],
    ['no allowance', { setCheck: { before: good, after: check(0, null) } }, 'is not on record'],
    ['an allowance of zero', { setCheck: { before: check(0, 0), after: good } }, 'is not on record'],
    ['a set-check not a number', { setCheck: { before: check(Number.NaN), after: good } }, 'is not a number'],
    [
      'a set-check out',
      { setCheck: { before: good, after: check(0.0003) } },
      'after the readings is out by more',
    ],
    [
      'a set-check out below',
      { setCheck: { before: check(-0.0003), after: check(-0.0003) } },
      'before the readings is out',
    ],
    [
      'drift',
      { setCheck: { before: check(-0.0002), after: check(0.0001) } },
      'differ by more than is allowed',
    ],
    ['no temperature', { temperaturesKnown: false }, 'temperature'],
    ['no nominal', { nominalM: undefined }, 'nominal bore is not on record'],
    ['a nominal not a number', { nominalM: Number.NaN }, 'nominal bore is not on record'],
    ['negative wear', { nominalM: 9.5012 * IN }, 'below nominal by more than the measuring error'],
    ['a counterbore below the bore', { counterboreM: 9.5 * IN }, 'counterbore is smaller than the bore'],
    [
      'a reading not a number',
      {
        readings: boreOf([
          [Number.NaN, 9.5],
          [9.5, 9.5],
        ]),
      },
      'not a size above zero',
    ],
    ['a grid not whole', { readings: boreOf(SOUND_ROWS).slice(1) }, 'S1, vertical'],
    ['no readings', { readings: [] }, 'two stations'],
  ]
  test.each(cases)('%s', (_, change, says) => {
    const v = judge(change)
    expect(v.verdict).toBe('HOLD')
    expect(words(v)).toEqual(['HOLD', 'HOLD', 'HOLD', 'HOLD'])
    expect(v.holds.join(' ')).toContain(says)
    expect(v.governs).toBeNull()
    expect(kinds(v).every((kind) => kind === 'measure-again' || kind === 'judge-again')).toBe(true)
    expect(v.proposals.length).toBeGreaterThan(0)
  })

  test('even a bore far beyond its limits is not condemned on an instrument that is out', () => {
    expect(words(judge({ ...BARREL, setCheck: { before: good, after: check(0.0003) } }))).not.toContain(
      'REWORK',
    )
  })

  test('a set-check on its allowance, and a smallest below nominal by U, are no holds', () => {
    expect(judge({ setCheck: { before: check(0.0002), after: check(0) } }).verdict).toBe('ACCEPT')
    expect(judge({ nominalM: 9.5011 * IN }).verdict).toBe('ACCEPT')
  })
})

describe('limits and errors that are missing or contradict', () => {
  test.each([
    [
      'no limits at all',
      { limits: {} },
      'Out-of-round, taper, spread, largest-diameter: no limit is on record.',
    ],
    ['a limit of another characteristic', { limits: { ...LIMITS, taper: LIMITS.spread } }, 'is for spread'],
    [
      'an at-least limit',
      { limits: { ...LIMITS, taper: boreLimit('taper', 0.0055, { bound: 'at-least' }) } },
      'a bore wears larger',
    ],
    [
      'a greatest bore below nominal',
      { limits: { ...LIMITS, 'largest-diameter': boreLimit('largest-diameter', 9.4) } },
      'not inside the limit',
    ],
    ['no U', { readingU: undefined, differenceU: undefined }, 'the measuring error U is not on record'],
    ['a U not a number', { differenceU: Number.NaN, readingU: Number.NaN }, 'U is not a number'],
    ['no resolution', { resolutionM: null }, 'the resolution of the reading is not on record'],
  ] as [string, Partial<BoreJudgeInput>, string][])('%s is HOLD', (_, change, says) => {
    const v = judge(change)
    expect(v.verdict).toBe('HOLD')
    expect(v.holds.join(' ')).toContain(says)
    expect(kinds(v)).toContain('judge-again')
  })

  test('simple acceptance lets a bore without U through as MONITOR at best', () => {
    const v = judge({ readingU: undefined, differenceU: undefined, simpleAcceptance: { by: 'A. Owner' } })
    expect(v.verdict).toBe('MONITOR')
    expect(new Set(words(v))).toEqual(new Set(['MONITOR']))
    expect(v.form?.form).toBe('not told apart from measuring error')
  })

  test('without U a smallest reading more than one step below nominal is still negative wear', () => {
    const noU = { readingU: undefined, differenceU: undefined, simpleAcceptance: { by: 'A. Owner' } }
    expect(judge({ ...noU, nominalM: 9.501 * IN }).verdict).toBe('HOLD')
    expect(judge({ ...noU, nominalM: 9.5009 * IN }).verdict).toBe('MONITOR')
  })
})

test('swapping axes and mirroring stations change neither the verdict, the words, the governing rule nor the holds', () => {
  for (const change of [{}, BARREL, rows([9.5, 9.5], [9.507, 9.503], [9.5025, 9.5025])]) {
    const input = boreInput(change)
    const turned = (readings: BoreReading[]) => judgeBore({ ...input, readings })
    const swap = (axis: string) => (axis === 'vertical' ? 'horizontal' : 'vertical')
    const plain = judgeBore(input)
    const mirrored = turned(input.readings.map((r) => ({ ...r, at: -r.at })))
    const swapped = turned(input.readings.map((r) => ({ ...r, axis: swap(r.axis) })))
    for (const other of [mirrored, swapped])
      expect([other.verdict, words(other), other.governs, other.holds]).toEqual([
        plain.verdict,
        words(plain),
        plain.governs,
        plain.holds,
      ])
  }
})
