import { describe, expect, test } from 'vitest'
import { EXAMPLES } from '../../../src/core/compute/examples.ts'
import { asTaken, decimalsFor, figured, inBoth, inUnit, trimmed } from '../../../src/core/compute/figures.ts'
import { computedJson } from '../../../src/core/compute/json.ts'
import { readInputs } from '../../../src/core/compute/read-inputs.ts'
import { compute, findComputation, GROUPS } from '../../../src/core/compute/registry.ts'
import { showComputed, showList, showUse } from '../../../src/core/compute/show.ts'
import { quantity } from '../../../src/core/units/index.ts'

const STYLE = { width: 79, ascii: true }

function worked(name: string, words: readonly string[] = EXAMPLES[name] ?? []) {
  const found = findComputation(name)
  if (!found.ok) throw new Error(found.error.say)
  const read = readInputs(found.value, words)
  if (!read.ok) throw new Error(read.error.say)
  const computed = compute(found.value, read.value.values)
  if (!computed.ok) throw new Error(computed.error.say)
  return { computation: found.value, read: read.value, computed: computed.value }
}

describe('figures', () => {
  test('lengths keep the places of the shop, and 4 figures where they are small', () => {
    expect(inUnit(quantity(9.5, 'in'), 'in')).toBe('9.5000 in')
    expect(inUnit(quantity(0.0003, 'in'), 'in')).toBe('0.0003 in')
    expect(inUnit(quantity(0.00042426, 'in'), 'in')).toBe('0.0004243 in')
    expect(inBoth(quantity(9.5062, 'in'), 'in')).toBe('9.5062 in   241.457 mm')
    expect(inBoth(quantity(0, 'in'), 'in')).toBe('0.0000 in   0.000 mm')
  })

  test('anything else has 5 figures, and both systems', () => {
    expect(inBoth(quantity(23110.34, 'lbf'), 'lbf')).toBe('23110 lbf   102.80 kN')
    expect(figured(0.02275013)).toBe('0.022750')
    expect(inUnit(quantity(1.5, '1'), '1')).toBe('1.5000')
  })

  test('an input is shown as it was keyed', () => {
    expect(asTaken(quantity(9.5062, 'in'), 'in')).toBe('9.5062 in   241.457 mm')
    expect(asTaken(quantity(95, 'degF'), 'degF')).toBe('95 degF   35 degC')
    expect(trimmed(100)).toBe('100')
    expect(decimalsFor(0, 5)).toBe(0)
  })
})

describe('a computation worked out', () => {
  const { computation, read, computed } = worked('wear-rate')
  const lines = showComputed(computation, read.values, computed, STYLE)

  test('title, inputs as understood, arithmetic, result in both systems, warnings, validity, sources, in that order', () => {
    const heads = lines.filter((line) => /^\S/.test(line))
    expect(heads).toEqual([
      'Wear per 1000 service hours from two or more overhauls  (wear-rate)',
      ...['Taken', 'Worked out', 'Result', 'Beside it', 'Holds for', 'Sources'],
    ])
    const text = lines.join('\n')
    expect(text).toContain('0.0031 in / 8200.0 h = 0.000378 in per 1000 h')
    expect(text).toMatch(/per_1000h +0\.000378 in {3}0\.009602 mm/)
    expect(text).toContain('Two overhauls show a rate but no scatter')
    for (const warning of computed.warnings) expect(text.replace(/\s+/g, ' ')).toContain(warning)
  })

  test('a unit that was taken and not keyed is said beside the input', () => {
    const bare = worked('difference', ['a=9.5', 'b=9.4 in', 'a_u=0.0003 in', 'b_u=0.0003 in'])
    const text = showComputed(
      bare.computation,
      bare.read.values,
      bare.computed,
      STYLE,
      bare.read.assumed,
    ).join('\n')
    expect(text).toMatch(/a +9\.5 in {3}241\.3 mm {3}\(no unit keyed: taken as in\)/)
    expect(text).not.toMatch(/ b +.*no unit keyed/)
  })

  test('nothing is wider than the screen, down to 40 columns', () => {
    for (const width of [40, 60, 79, 200])
      for (const line of [
        ...showComputed(computation, read.values, computed, { width, ascii: true }),
        ...showList(GROUPS, { width, ascii: true }),
      ])
        expect(line.length).toBeLessThanOrEqual(Math.min(width, 100))
  })

  test('signs become letters where the screen shows nothing else, and stay where it does', () => {
    const signs = {
      ...computation,
      validity: '\u00b1 2\u00b0, \u03c0/4 D\u00b2, 3 \u00b5m \u2264 4 \u00b7 5',
    }
    const last = (ascii: boolean) =>
      showUse(signs, [], { width: 79, ascii }).find((line) => /^ {2}\S+ 2/.test(line))
    expect(last(true)).toBe('  +- 2deg , pi/4 D^2, 3 um <= 4 . 5')
    expect(last(false)).toBe(`  ${signs.validity}`)
  })

  test('as data: figures in the declared unit and in SI', () => {
    const data = JSON.parse(JSON.stringify(computedJson(computation, read.values, computed)))
    expect(data.outputs.per_1000h).toMatchObject({ unit: 'in', kind: 'length' })
    expect(data.outputs.per_1000h.value * 0.0254).toBeCloseTo(data.outputs.per_1000h.si, 15)
    expect(data.inputs.readings).toHaveLength(2)
    expect(data.warnings).toEqual(computed.warnings)
  })
})

describe('the page of one computation, and the list', () => {
  test('inputs with their kind and unit, what may be left out, an example', () => {
    const { computation } = worked('repeats')
    const text = showUse(computation, EXAMPLES.repeats ?? [], STYLE).join('\n')
    expect(text).toContain('(list of 2 or more, in unless said)')
    expect(text).toContain('barover compute repeats "readings=9.5012 9.5014 9.5013')
    const { computation: guard } = worked('guard-band')
    expect(showUse(guard, [], STYLE).join(' ').replace(/\s+/g, ' ')).toContain(
      '(number between 0 and 5; may be left out)',
    )
  })

  test('one line for each, under its group', () => {
    const lines = showList(GROUPS, { width: 100, ascii: true })
    expect(lines.filter((line) => /^ {2}wear-rate /.test(line))).toHaveLength(1)
    expect(lines.indexOf('Wear over time')).toBeLessThan(
      lines.findIndex((line) => line.startsWith('  wear-rate ')),
    )
  })
})
