import { describe, expect, test } from 'vitest'
import type { Value } from '../../../src/core/compute/computation.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { compute, findComputation } from '../../../src/core/compute/registry.ts'

const named = (name: string) => {
  const found = findComputation(name)
  if (!found.ok) throw new Error(found.error.say)
  return found.value
}
function outcome(name: string, ...words: string[]) {
  const read = readInputs(named(name), words)
  if (!read.ok) throw new Error(read.error.say)
  return compute(named(name), read.value.values)
}
function worked(name: string, ...words: string[]) {
  const computed = outcome(name, ...words)
  if (!computed.ok) throw new Error(computed.error.say)
  return computed.value
}
const code = (name: string, ...words: string[]) => {
  const computed = outcome(name, ...words)
  return computed.ok ? 'worked' : computed.error.code
}
const si = (value: Value | undefined) =>
  value?.is === 'quantity' ? value.quantity.si : value?.is === 'number' ? value.number : Number.NaN
const word = (value: Value | undefined) => (value?.is === 'word' ? value.word : undefined)

describe('repeats', () => {
  test('the one that stands out is named, stays in the mean, and is to be read again', () => {
    const { outputs, warnings } = worked('repeats', 'readings=1 1 2 1 2 1 2 1 9 mm', 'resolution=1 mm')
    expect(word(outputs.stands_out)).toBe('reading 9')
    expect(si(outputs.mean)).toBeCloseTo(20e-3 / 9, 12)
    expect(warnings[0]).toContain('nothing is left out')
  })

  test('two readings cannot tell which is off, few only hint', () => {
    expect(worked('repeats', 'readings=1 2 mm', 'resolution=1 mm').warnings[0]).toContain('take a third')
    expect(worked('repeats', 'readings=1 2 1 mm', 'resolution=1 mm').warnings[0]).toContain('hint')
    expect(worked('repeats', 'readings=1 2 1 2 1 2 1 mm', 'resolution=1 mm').warnings).toEqual([])
  })
})

describe('measuring error', () => {
  // JCGM 100:2008 H.1 (second-hand): uc 32 nm, 16 degrees of freedom, k 2.92, U99 93 nm (printed from rounded 32).
  test('GUM H.1 through the command: components in micrometres', () => {
    const { outputs } = worked(
      'error-budget',
      'components=0.025 0.0097 0.0029 0.016675 um',
      'dof=18 25.6 50 2',
      'level=0.99',
    )
    expect(si(outputs.uc) * 1e9).toBeCloseTo(31.7, 1)
    expect(si(outputs.k)).toBeCloseTo(2.92, 2)
    expect(Math.round(si(outputs.u) * 1e9)).toBe(93)
  })

  test('two repeats call for a far larger k, and it is said', () => {
    const budget = worked('error-budget', 'components=1 um', 'dof=1')
    expect(si(budget.outputs.k)).toBeCloseTo(12.706, 3)
    expect(budget.warnings.join(' ')).toContain('Take more repeats')
    expect(worked('error-budget', 'components=1 um').warnings.join(' ')).not.toContain('more repeats')
  })

  test('each line adds: without repeats or resolution it is smaller', () => {
    const common = [
      ...[
        'instrument_u=0.0002 in',
        'instrument_k=2',
        'size=9.5 in',
        'part_alpha=10.8',
        'instrument_alpha=11.5',
      ],
      ...['part_temp_u=2 delta-degF', 'instrument_temp_u=2 delta-degF', 'resolution=0.0001 in'],
    ]
    const bare = si(worked('reading-error', ...common, 'resolution_in_u=yes').outputs.uc)
    const stepped = si(worked('reading-error', ...common, 'resolution_in_u=no').outputs.uc)
    const repeated = si(
      worked('reading-error', ...common, 'resolution_in_u=no', 'readings=9.5012 9.5016 in').outputs.uc,
    )
    expect(stepped).toBeGreaterThan(bare)
    expect(repeated).toBeGreaterThan(stepped)
  })

  test('a difference within its error may be none at all, and exactly on it is not clear', () => {
    const at = (a: string) =>
      worked('difference', `a=${a} mm`, 'b=10 mm', 'a_u=0.003 mm', 'b_u=0.004 mm').outputs.clear
    expect(word(at('10.005'))).toBe('no')
    expect(word(at('10.006'))).toBe('yes')
    expect(word(at('9.994'))).toBe('yes')
  })

  test('size at 20 C: 254 mm of grey iron at 35 C, read with steel at 35 C, is 254.0027 mm', () => {
    const { outputs } = worked(
      'size-at-20c',
      ...[
        'reading=254 mm',
        'part_temp=35 degC',
        'instrument_temp=35 degC',
        'part_alpha=10.8',
        'instrument_alpha=11.5',
      ],
    )
    expect(si(outputs.size) * 1000).toBeCloseTo(254.0027, 4)
  })

  test('refused', () => {
    expect(code('error-budget', 'components=1 2 um', 'dof=3')).toBe('dof-count')
    expect(code('error-budget', 'components=1 um', 'dof=0')).toBe('component-unsound')
    expect(
      code(
        'size-at-20c',
        'reading=1 in',
        'part_temp=300 degF',
        'instrument_temp=70 degF',
        'part_alpha=10',
        'instrument_alpha=11',
      ),
    ).toBe('temperature-implausible')
  })
})

describe('deciding', () => {
  // JCGM 106:2012 7.3 and 7.4: chance of a value U inside one limit at k = 2 is 0.977.
  test('chance inside one limit and two', () => {
    const one = worked('conformance', 'value=9.5092 in', 'u=0.0003 in', 'k=2', 'upper=9.5095 in').outputs
    expect(si(one.inside)).toBeCloseTo(0.97725, 5)
    expect(one.below).toBeUndefined()
    const two = worked(
      'conformance',
      'value=10 mm',
      'u=0.02 mm',
      'k=2',
      'lower=9.98 mm',
      'upper=10.02 mm',
    ).outputs
    expect(si(two.inside)).toBeCloseTo(0.9545, 4)
  })

  test('guard band at a limit bounding either way', () => {
    const most = worked('guard-band', 'limit=0.0095 in', 'bound=at-most', 'u=0.0003 in', 'k=2').outputs
    expect([si(most.accept) / 0.0254, si(most.reject) / 0.0254].map((x) => x.toFixed(4))).toEqual([
      '0.0092',
      '0.0098',
    ])
    const least = worked('guard-band', 'limit=0.0095 in', 'bound=at-least', 'u=0.0003 in', 'k=2').outputs
    expect([si(least.accept) / 0.0254, si(least.reject) / 0.0254].map((x) => x.toFixed(4))).toEqual([
      '0.0098',
      '0.0092',
    ])
    expect(
      worked('guard-band', 'limit=1 mm', 'bound=at-most', 'u=0.1 mm', 'k=2', 'share=0.5').warnings,
    ).toHaveLength(1)
  })

  test('refused', () => {
    expect(code('conformance', 'value=1 mm', 'u=0.1 mm', 'k=2')).toBe('no-limit')
    expect(code('conformance', 'value=1 mm', 'u=0 mm', 'k=2', 'upper=2 mm')).toBe('no-uncertainty')
    expect(code('guard-band', 'limit=1 mm', 'bound=at-most', 'u=1 mm', 'k=2')).toBe('nothing-accepted')
    expect(code('guard-band', 'limit=1 mm', 'bound=at-most', 'u=0 mm', 'k=2')).toBe('size-zero')
  })
})

describe('wear', () => {
  const record = [
    'readings=9.5000 9.5022 9.5043 9.5061 in',
    'hours=0 8100 16300 24000 h',
    'u=0.0003 in',
    'wears=larger',
  ]

  test('hours to two limits, each with its interval, and the direction said', () => {
    const { outputs, warnings } = worked(
      'hours-left',
      ...record,
      'renewed=nothing',
      'limits=9.5080 9.5095 in',
      'first_set=no',
    )
    const [first, second] = [1, 2].map((i) =>
      ['earliest', 'expected', 'latest'].map((end) => si(outputs[`${end}_${i}`]) / 3600),
    )
    for (const ends of [first, second]) expect([...(ends ?? [])].sort((a, b) => a - b)).toEqual(ends)
    expect(second?.[0]).toBeGreaterThan(first?.[0] ?? Number.NaN)
    expect(word(outputs.basis)).toBe('scatter about the line')
    // By hand: (9.5095 - 9.50618) in left at 0.00025446 in per 1000 h.
    expect(second?.[1]).toBeCloseTo(13055, 0)
    expect(warnings[warnings.length - 1]).toContain('Earliest is the end to plan by')
    expect(outputs.earliest_3).toBeUndefined()
  })

  test.each([
    ['renewed-between', ['renewed=reline']],
    ['renewed-between', ['renewed=unknown']],
  ])('HOLD: %s %o', (expected, words) => {
    expect(code('wear-rate', ...record, ...words)).toBe(expected)
  })

  test('HOLD: one overhaul, uneven lists, too many limits, first set', () => {
    const one = ['readings=9.5 in', 'hours=0 h', 'u=0.0003 in', 'wears=larger', 'renewed=nothing']
    expect(code('wear-rate', ...one)).toBe('too-few-readings')
    expect(code('wear-rate', 'readings=9.5 9.6 in', ...one.slice(1))).toBe('counts-differ')
    const hours = [...record, 'renewed=nothing']
    expect(code('hours-left', ...hours, 'limits=9.6 9.7 9.8 9.9 in', 'first_set=no')).toBe('too-many-limits')
    expect(code('hours-left', ...hours, 'limits=9.6 in', 'first_set=yes')).toBe('first-set')
  })

  test('two overhauls are labelled as measuring error only, in the result and beside it', () => {
    const two = worked(
      'wear-rate',
      'readings=9.5 9.5031 in',
      'hours=0 8200 h',
      'u=0.0003 in',
      'wears=larger',
      'renewed=nothing',
    )
    expect(word(two.outputs.basis)).toBe('measuring error only')
    expect(two.warnings.join(' ')).toContain('measuring error only')
  })
})
