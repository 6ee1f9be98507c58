// One rule of rounding on every screen: the same figure reads alike whichever way it was worked out.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { formatNumber } from '../../../src/core/lib/decimal.ts'
import { hoursText, percentText, quantity, valueIn } from '../../../src/core/units/index.ts'
import { ROOT } from '../../helpers/example.ts'

/** By hand: whole numbers of the last place, a half away from zero. */
function byHand(tenths: number): string {
  const whole = Math.trunc(Math.abs(tenths) / 10) + (Math.abs(tenths) % 10 >= 5 ? 1 : 0)
  const sign = tenths < 0 && whole > 0 ? '-' : ''
  return `${sign}${Math.trunc(whole / 1000)}.${String(whole % 1000).padStart(3, '0')}`
}

it('reads a difference of two sizes alike, in millimetres, in metres or by hand', () => {
  const size = fc.integer({ min: 0, max: 9_000_000 })
  fc.assert(
    fc.property(size, size, (a, b) => {
      const inMetres = valueIn({ kind: 'length', si: a / 1e7 - b / 1e7 }, 'mm')
      const keyed = (tenths: number) => quantity(tenths / 1e4, 'mm').si
      const keyedApart = valueIn({ kind: 'length', si: keyed(a) - keyed(b) }, 'mm')
      const shown = [(a - b) / 1e4, a / 1e4 - b / 1e4, inMetres, keyedApart].map((v) => formatNumber(v, 3))
      expect(new Set(shown)).toEqual(new Set([byHand(a - b)]))
    }),
    { numRuns: 500 },
  )
})

it.each([
  [381.0325 - 381.02, '0.013'],
  [-(381.0325 - 381.02), '-0.013'],
  [0.0125, '0.013'],
  [0.01249, '0.012'],
  // So near below the half as no size is read, and as binary leaves: the half.
  [0.0124999999999999, '0.013'],
  [0.012499999, '0.012'],
])('%d is %s', (value, shown) => {
  expect(formatNumber(value, 3)).toBe(shown)
})

it('is the only one: no figure is rounded another way', () => {
  const files = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.tsx?$/.test(name),
  )
  expect(files.length).toBeGreaterThan(500)
  const others = files.filter((file) => {
    const text = readFileSync(join(ROOT, 'src', file), 'utf8')
    return /\.toFixed\(|Math\.round\([^)]*\* 100\)}/.test(text)
  })
  // What a search took is no figure of a machine.
  expect(others).toEqual(['authoring/safety.ts'])
})

it('shows hours as they were read, and shares in whole parts of a hundred', () => {
  expect([68300, 68300.4, 68300.25, 0, 68310].map(hoursText)).toEqual([
    '68300',
    '68300.4',
    '68300.25',
    '0',
    '68310',
  ])
  expect(hoursText(245_881_440 / 3600)).toBe('68300.4')
  expect(percentText(0.285)).toBe('29\u00a0%')
})
