import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Computation, Value } from '../../../src/core/compute/computation.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { ok } from '../../../src/core/lib/result.ts'

const SAMPLE: Computation = {
  name: 'sample',
  title: 'A sample',
  inputs: [
    { name: 'bore', says: 'bore', type: { is: 'quantity', kind: 'length', unit: 'in' } },
    {
      name: 'rod_temp',
      says: 'temperature',
      type: { is: 'quantity', kind: 'temperature', unit: 'degF' },
      optional: true,
    },
    {
      name: 'move',
      says: 'move',
      type: { is: 'quantity', kind: 'length', unit: 'in', signed: true },
      optional: true,
    },
    {
      name: 'readings',
      says: 'r',
      type: { is: 'quantities', kind: 'length', unit: 'in', least: 2 },
      optional: true,
    },
    {
      name: 'speeds',
      says: 's',
      type: { is: 'quantities', kind: 'rotation', unit: 'rpm', least: 1 },
      optional: true,
    },
    { name: 'turns', says: 't', type: { is: 'number', whole: true, least: 0, most: 10 }, optional: true },
    { name: 'joint', says: 'j', type: { is: 'word', words: ['butt', 'angle'] }, optional: true },
    {
      name: 'suction',
      says: 'p',
      type: { is: 'quantity', kind: 'pressure-gauge', unit: 'psig' },
      optional: true,
    },
  ],
  outputs: [],
  sources: [],
  validity: '',
  run: () => ok({ outputs: {}, trace: [], warnings: [] }),
}

function read(...words: string[]) {
  const result = readInputs(SAMPLE, words)
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}
function refusal(...words: string[]) {
  const result = readInputs(SAMPLE, words)
  return result.ok ? { code: 'taken', say: '' } : result.error
}
function mm(value: Value | undefined): number[] {
  if (value?.is === 'quantity') return [value.quantity.si * 1000]
  if (value?.is === 'quantities') return value.quantities.map((one) => one.si * 1000)
  throw new Error('no length there')
}

describe('key=value with units', () => {
  test('a figure with its unit, quoted or in words of its own', () => {
    for (const words of [['bore=9.5 in'], ['bore=9.5in'], ['bore=9.5', 'in'], ['BORE=241.3 mm']])
      expect(mm(read(...words).values.bore)[0]).toBeCloseTo(241.3, 9)
  })

  test('a unit that was not keyed is the declared one, and is told', () => {
    expect(read('bore=9.5').assumed).toEqual({ bore: 'in' })
    expect(read('bore=9.5 in').assumed).toEqual({})
    expect(read('bore=9.5 in', 'readings=1 2').assumed).toEqual({ readings: 'in' })
  })

  test.each([
    ['readings=9.500 in, 9.501 in', [241.3, 241.3254]],
    ['readings=9.500 9.501 in', [241.3, 241.3254]],
    ['readings=9.500, 9.501', [241.3, 241.3254]],
    ['readings=9.500in 241.3 mm', [241.3, 241.3]],
    ['readings=1 in; 2 in', [25.4, 50.8]],
  ])('list %s', (text, sizes) => {
    const got = mm(read('bore=1 in', text).values.readings)
    expect(got.map((x) => Number(x.toFixed(6)))).toEqual(sizes)
  })

  test('a unit that begins with a figure is a unit behind one', () => {
    const { values } = read('bore=1 in', 'speeds=5 1/s 6 1/s')
    expect(values.speeds).toMatchObject({ quantities: [{ si: 5 }, { si: 6 }] })
  })

  test('temperatures and vacuum may be below zero; a signed length may, a size may not', () => {
    expect(read('bore=1 in', 'rod_temp=-10 degF', 'suction=-3 psig', 'move=-0.02 in').values).toHaveProperty(
      'move',
    )
    expect(refusal('bore=-1 in').code).toBe('negative')
    expect(refusal('bore=1 in', 'readings=1 -2 in').code).toBe('negative')
  })
})

describe('refused, in a sentence about the word keyed', () => {
  test.each([
    [['9.5 in'], 'no-key', "'9.5 in' does not say what it is"],
    [['=9.5 in'], 'no-key', 'does not say what it is'],
    [[], 'missing-keys', 'sample also needs bore.'],
    [['bor=9.5 in'], 'unknown-key', "'bor' is no input of sample; did you mean bore?"],
    [['bore=1 in', 'frobnicate=1'], 'unknown-key', 'it takes bore, rod_temp, move'],
    [['bore=1 in', 'bore=2 in'], 'key-twice', 'bore is given twice'],
    [['bore=9.5 psi'], 'unit-kind', 'bore: '],
    [['bore=9,503'], 'comma', 'bore: '],
    [['bore=9.5O in'], 'look-alike', 'the letter O'],
    [['bore='], 'empty', 'bore: Nothing was keyed'],
    [['bore=1 in', 'suction=100 psi'], 'unit-bare-pressure', 'does not say gauge or absolute'],
    [['bore=1 in', 'readings=9,503 9.504'], 'list-comma', 'could be one number or two'],
    [['bore=1 in', 'readings=9.503 in 9.504'], 'list-units', 'Key the unit with each figure'],
    [['bore=1 in', 'readings=9.503 in 9.504 9.505 in'], 'list-units', 'Key the unit with each figure'],
    [['bore=1 in', 'readings=9.5 in'], 'too-few', 'readings needs 2 or more'],
    [['bore=1 in', 'readings='], 'too-few', 'readings needs 2 or more'],
    [['bore=1 in', 'turns=3 in'], 'unit-on-number', 'turns is a plain number'],
    [['bore=1 in', 'turns=2.5'], 'not-whole', 'turns is a whole number'],
    [['bore=1 in', 'turns=11'], 'out-of-range', 'turns lies between 0 and 10'],
    [['bore=1 in', 'turns=NaN'], 'not-a-number', 'turns: '],
    [['bore=1 in', 'joint=lap'], 'unknown-word', "joint takes butt or angle, not 'lap'."],
  ] as const)('%o: %s', (words, code, say) => {
    const error = refusal(...words)
    expect(error.code).toBe(code)
    expect(error.say).toContain(say)
  })

  test('whatever is keyed: read or refused in one line, never thrown, never a figure that is not finite', () => {
    const piece = fc.oneof(
      fc.string(),
      fc.constantFrom(
        'bore=',
        'readings=',
        'in',
        ',',
        '9.5',
        '1/s',
        '-',
        'turns=',
        '=',
        ' ',
        '9,503',
        'mm',
        'e5',
      ),
    )
    fc.assert(
      fc.property(
        fc.array(
          fc.array(piece, { maxLength: 6 }).map((p) => p.join('')),
          { maxLength: 5 },
        ),
        (words) => {
          const result = readInputs(SAMPLE, words)
          if (!result.ok) {
            expect(result.error.say).not.toMatch(/[\n\r]/)
            return
          }
          for (const value of Object.values(result.value.values)) {
            if (value.is === 'number') expect(Number.isFinite(value.number)).toBe(true)
            if (value.is === 'quantities')
              expect(value.quantities.every((one) => Number.isFinite(one.si))).toBe(true)
            if (value.is === 'quantity') expect(Number.isFinite(value.quantity.si)).toBe(true)
          }
        },
      ),
      { numRuns: 3000 },
    )
  })
})
