import { describe, expect, test } from 'vitest'
import { aKind, DIMENSION, isQuantityKind, KIND_NAME, QUANTITY_KINDS } from '../../../src/core/units/kinds.ts'

describe('kinds', () => {
  test('every kind has a dimension and a plain name of its own', () => {
    const names = QUANTITY_KINDS.map((kind) => KIND_NAME[kind])
    expect(new Set(names).size).toBe(QUANTITY_KINDS.length)
    expect(Object.keys(DIMENSION).sort()).toEqual([...QUANTITY_KINDS].sort())
    for (const name of names) expect(name).toMatch(/^[a-z]+( [a-zA-Z]+)*$/)
  })

  // Exponents over (L, M, T, Theta): the SI Brochure's base quantities; force = mass * length / time^2 and so on.
  test.each([
    ['area', [2, 0, 0, 0]],
    ['pressure-gauge', [-1, 1, -2, 0]],
    ['pressure-absolute', [-1, 1, -2, 0]],
    ['force', [1, 1, -2, 0]],
    ['torque', [2, 1, -2, 0]],
    ['power', [2, 1, -3, 0]],
    ['flow', [3, 0, -1, 0]],
    ['rotation', [0, 0, -1, 0]],
    ['temperature-difference', [0, 0, 0, 1]],
    ['angle', [0, 0, 0, 0]],
    ['concentration', [0, 0, 0, 0]],
    ['lel-fraction', [0, 0, 0, 0]],
    ['ratio', [0, 0, 0, 0]],
  ] as const)('%s is %j', (kind, exponents) => {
    expect(DIMENSION[kind]).toEqual(exponents)
  })

  test('force = pressure * area, torque = force * length, power = torque * rotation', () => {
    const sum = (a: readonly number[], b: readonly number[]) => a.map((x, i) => x + (b[i] ?? Number.NaN))
    expect(sum(DIMENSION['pressure-difference'], DIMENSION.area)).toEqual(DIMENSION.force)
    expect(sum(DIMENSION.force, DIMENSION.length)).toEqual(DIMENSION.torque)
    expect(sum(DIMENSION.torque, DIMENSION.rotation)).toEqual(DIMENSION.power)
    expect(sum(DIMENSION.area, DIMENSION.speed)).toEqual(DIMENSION.flow)
  })

  test('only a kind is a kind', () => {
    expect(isQuantityKind('pressure-gauge')).toBe(true)
    for (const text of ['pressure', 'Length', '', 'toString', '__proto__'])
      expect(isQuantityKind(text)).toBe(false)
  })

  test('the article fits', () => {
    expect(aKind('area')).toBe('an area')
    expect(aKind('pressure-absolute')).toBe('an absolute pressure')
    expect(aKind('pressure-gauge')).toBe('a gauge pressure')
  })
})
