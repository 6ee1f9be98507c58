import { describe, expect, test } from 'vitest'
import { boreForm } from '../../../src/core/bore/bore-form.ts'
import {
  type BoreDatum,
  reboreRoom,
  wearFromDatum,
  wearFromNominal,
} from '../../../src/core/bore/bore-wear.ts'
import { boreOf, IN, SOUND_ROWS } from './sample-bore.ts'

const readings = boreOf(SOUND_ROWS)
const axes = ['vertical', 'horizontal']
const wear = (datum: BoreDatum | null | undefined) =>
  wearFromDatum(readings, axes, datum).perAxis.map(({ wearM }) =>
    wearM === null ? null : Math.round((wearM / IN) * 1e4),
  )

describe('wear', () => {
  test('from nominal is the largest reading less nominal, signed', () => {
    const form = boreForm(readings)
    if (!form.ok) throw new Error(form.error.say)
    expect(wearFromNominal(form.value, 9.5 * IN) / IN).toBeCloseTo(0.002, 9)
    expect(wearFromNominal(form.value, 9.503 * IN)).toBeLessThan(0)
    expect(() => wearFromNominal(form.value, Number.NaN)).toThrow()
  })

  test('from the datum goes axis by axis, or from its single size', () => {
    expect(
      wear({ from: 'unswept strip', byAxisM: { vertical: 9.5004 * IN, horizontal: 9.5002 * IN } }),
    ).toEqual([16, 12])
    expect(wear({ from: 'as-left record', singleM: 9.5 * IN })).toEqual([20, 14])
    expect(wear({ from: 'as-bored record', byAxisM: { vertical: 9.5 * IN }, singleM: 9.501 * IN })).toEqual([
      20, 4,
    ])
  })

  test('without a datum there is no figure and the reason is given', () => {
    const none = wearFromDatum(readings, axes, undefined)
    expect(none.from).toBeNull()
    expect(none.perAxis.map(({ wearM }) => wearM)).toEqual([null, null])
    expect(none.perAxis[0]?.why).toContain('no unswept strip')
    expect(wear({ from: 'as-left record', byAxisM: { vertical: 9.5 * IN } })).toEqual([20, null])
    expect(wear({ from: 'as-left record', singleM: Number.NaN })).toEqual([null, null])
    const partly = wearFromDatum(readings, axes, { from: 'as-left record', byAxisM: { vertical: 9.5 * IN } })
    expect(partly.perAxis[1]?.why).toContain('has no size for horizontal')
  })

  test('a counterbore is never a datum, even when a file says so', () => {
    expect(wear({ from: 'counterbore' as BoreDatum['from'], singleM: 9.4 * IN })).toEqual([null, null])
  })

  test('an axis named like a built-in property finds no size of its own', () => {
    const named = (singleM: number | undefined) =>
      wearFromDatum([{ station: 'S1', at: 0, axis: 'constructor', valueM: 9.502 * IN }], ['constructor'], {
        from: 'as-left record',
        byAxisM: {},
        singleM,
      }).perAxis[0]?.wearM
    expect(named(undefined)).toBeNull()
    expect((named(9.5 * IN) ?? Number.NaN) / IN).toBeCloseTo(0.002, 9)
  })
})

describe('room for boring out', () => {
  const room = (largest: number, counterbore: number | null, maxBore?: number) =>
    reboreRoom({
      largestM: largest * IN,
      counterboreM: counterbore === null ? null : counterbore * IN,
      maxBoreM: maxBore === undefined ? undefined : maxBore * IN,
    })

  test('is bounded by the counterbore, or by the greatest bore of the book when that is less', () => {
    expect(room(9.502, 9.75)).toMatchObject({ ok: true, value: { boundBy: 'counterbore' } })
    const bounded = room(9.502, 9.75, 9.53)
    expect(bounded).toMatchObject({ ok: true, value: { boundBy: 'greatest bore of the book' } })
    expect((bounded.ok ? bounded.value.roomM : Number.NaN) / IN).toBeCloseTo(0.028, 9)
    expect(room(9.54, 9.75, 9.53)).toMatchObject({ value: { roomM: 0 } })
  })

  test('is refused when unknown or contradictory', () => {
    const code = (r: ReturnType<typeof room>) => (r.ok ? 'taken' : r.error.code)
    expect(code(room(9.502, null))).toBe('counterbore-unknown')
    expect(code(room(9.502, 9.5))).toBe('counterbore-below-bore')
    expect(code(room(9.502, Number.NaN))).toBe('rebore-size-unsound')
    expect(code(room(9.502, 9.75, -1))).toBe('rebore-size-unsound')
  })
})
