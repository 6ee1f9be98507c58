import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { FormUncertainty } from '../../../src/core/bore/axis-form.ts'
import { type BoreForm, boreForm } from '../../../src/core/bore/bore-form.ts'
import type { BoreReading } from '../../../src/core/bore/bore-readings.ts'
import { boreOf, IN, SOUND_ROWS } from './sample-bore.ts'

const U: FormUncertainty = { differenceU: 0.0004 * IN, centreU: 0.0004 * IN }

function form(readings: readonly BoreReading[], u: FormUncertainty = U): BoreForm {
  const result = boreForm(readings, u)
  if (!result.ok) throw new Error(result.error.say)
  return result.value
}

/** One axis in thousandths over 9.5 in, the other a steady 9.5 in. */
const along = (...mils: number[]) => boreOf(mils.map((mil) => [9.5 + mil / 1000, 9.5] as const))
const inches = (m: number | null) => (m ?? Number.NaN) / IN

describe('figures', () => {
  test('out-of-round, taper between named stations, ends, middle, spread, places', () => {
    const f = form(boreOf(SOUND_ROWS))
    expect(f.round.map(({ outOfRoundM }) => Math.round(inches(outOfRoundM) * 1e4))).toEqual([4, 6, 2])
    expect(f.worstRound).toMatchObject({ station: 'S2', widestOn: 'vertical', narrowestOn: 'horizontal' })
    expect(f.worstTaper).toMatchObject({
      axis: 'vertical',
      widestAt: 'S2',
      narrowestAt: 'S3',
      widerEnd: 'S1',
    })
    expect(inches(f.worstTaper.taperM)).toBeCloseTo(0.001, 9)
    expect(inches(f.worstTaper.endToEndM)).toBeCloseTo(0.0002, 9)
    expect(inches(f.worstTaper.widerInMiddleM)).toBeCloseTo(0.0009, 9)
    expect(inches(f.spreadM)).toBeCloseTo(0.0012, 9)
    expect(f.largest).toMatchObject({ station: 'S2', axis: 'vertical' })
    expect(f.smallest).toMatchObject({ station: 'S1', axis: 'horizontal' })
  })

  test('taper is the greatest difference between ANY two stations, not end against end', () => {
    const f = form(along(1, 6, 0, 1))
    expect(inches(f.worstTaper.taperM)).toBeCloseTo(0.006, 9)
    expect(f.worstTaper).toMatchObject({ widestAt: 'S2', narrowestAt: 'S3', endToEndM: 0, widerEnd: null })
  })

  test('stations run by distance, whatever order they were read in', () => {
    const f = form([...along(0, 1, 2)].reverse())
    expect(f.stations).toEqual(['S1', 'S2', 'S3'])
    const shuffled = along(0, 5, 1)
    const byHand = form([...shuffled.slice(2, 4), ...shuffled.slice(0, 2), ...shuffled.slice(4)])
    expect(byHand).toMatchObject({ form: 'barrel', stations: ['S1', 'S2', 'S3'] })
    expect(inches(byHand.widerInMiddleM)).toBeCloseTo(0.0045, 9)
  })

  // Bloch & Hoefner 1996, p. 259: 10.000 in nominal, smallest 10.0025, so the largest may reach 10.010.
  test('the published example has a spread of 0.0075 in', () => {
    const f = form(
      boreOf([
        [10.0025, 10.004],
        [10.01, 10.006],
        [10.005, 10.003],
      ]),
    )
    expect(inches(f.spreadM)).toBeCloseTo(0.0075, 9)
  })
})

describe('form word', () => {
  test.each([
    ['barrel', [0, 2, 0]],
    ['hourglass', [2, 0, 2]],
    ['tapered', [0, 1, 2]],
    ['uneven', [0, 2, 0, 0, 0]],
    ['not told apart from measuring error', [0, 0.3, 0]],
    ['not told apart from measuring error', [0, 0.4]],
    ['tapered', [0, 0.5]],
    ['barrel', [0, 2, 2, 0]],
  ] as const)('%s for %o', (word, mils) => {
    expect(form(along(...mils)).form).toBe(word)
  })

  test('straight is said only where every station reads the same and the error is known', () => {
    expect(form(along(0, 0, 0)).form).toBe('straight')
    expect(form(along(0, 0, 0), {}).form).toBe('not told apart from measuring error')
    expect(form(along(0, 0.1, 0)).form).toBe('not told apart from measuring error')
  })

  test('without a U nothing is told apart', () => {
    expect(form(along(0, 9, 0), {}).form).toBe('not told apart from measuring error')
  })

  test('axes that tell different forms make the whole uneven', () => {
    expect(
      form(
        boreOf([
          [9.5, 9.502],
          [9.502, 9.5],
          [9.5, 9.502],
        ]),
      ).form,
    ).toBe('uneven')
  })

  test('the middle is signed: wider is above zero, narrower below, none with two stations', () => {
    expect(inches(form(along(0, 2, 0)).widerInMiddleM)).toBeCloseTo(0.002, 9)
    expect(inches(form(along(2, 0, 2)).widerInMiddleM)).toBeCloseTo(-0.002, 9)
    expect(form(along(0, 2))).toMatchObject({ widerInMiddleM: null, widerInMiddleOn: null })
  })

  test('the middle is the station half way between the ends by distance, not by count', () => {
    const places = [0.1, 0.15, 0.5, 0.9]
    const readings = along(0, 5, 1, 0).map((r) => ({ ...r, at: places[Number(r.station.slice(1)) - 1] ?? 0 }))
    expect(inches(form(readings).widerInMiddleM)).toBeCloseTo(0.001, 9)
  })
})

describe('refusals', () => {
  const good = boreOf(SOUND_ROWS)
  const first = good[0] as BoreReading
  const cases: [string, BoreReading[], string][] = [
    ['a place missing', good.slice(1), 'bore-incomplete'],
    ['a place twice', [...good, first], 'bore-place-twice'],
    ['one station', good.slice(0, 2), 'bore-too-few'],
    ['one axis', good.filter(({ axis }) => axis === 'vertical'), 'bore-too-few'],
    ['nothing', [], 'bore-too-few'],
    ['a station at two distances', [{ ...first, at: 9 }, ...good.slice(1)], 'bore-station-moved'],
    ['two stations at one distance', good.map((r) => ({ ...r, at: 0.1 })), 'bore-stations-together'],
    ['no distance', [{ ...first, at: Number.NaN }, ...good.slice(1)], 'bore-station-unsound'],
    ...[Number.NaN, Number.POSITIVE_INFINITY, 0, -0.2].map((valueM): [string, BoreReading[], string] => [
      `a size of ${valueM}`,
      [{ ...first, valueM }, ...good.slice(1)],
      'bore-size-unsound',
    ]),
  ]
  test.each(cases)('%s', (_, readings, code) => {
    const result = boreForm(readings, U)
    expect(result.ok ? 'taken' : result.error.code).toBe(code)
  })

  test('the missing places are named', () => {
    const result = boreForm(good.slice(1), U)
    expect(result.ok ? '' : result.error.say).toContain('S1, vertical')
  })

  test('an unsound U', () => {
    expect(boreForm(good, { differenceU: Number.NaN }).ok).toBe(false)
    expect(boreForm(good, { centreU: -1 }).ok).toBe(false)
  })
})

describe('properties', () => {
  const grid = fc
    .record({ stations: fc.integer({ min: 2, max: 6 }), axes: fc.integer({ min: 2, max: 4 }) })
    .chain(({ stations, axes }) =>
      fc
        .array(fc.integer({ min: 0, max: 200 }), { minLength: stations * axes, maxLength: stations * axes })
        .map((mils) =>
          mils.map((mil, index): BoreReading => {
            const s = Math.floor(index / axes)
            return {
              station: `S${s}`,
              at: 0.05 * s,
              axis: `A${index % axes}`,
              valueM: (9.5 + mil / 10_000) * IN,
            }
          }),
        ),
    )
  const figures = (f: BoreForm) => [
    f.worstRound.outOfRoundM,
    f.worstTaper.taperM,
    f.spreadM,
    Math.abs(f.widerInMiddleM ?? 0),
  ]
  const expectSame = (a: BoreForm, b: BoreForm) => {
    for (const [index, x] of figures(a).entries())
      expect(Math.abs(x - (figures(b)[index] ?? Number.NaN))).toBeLessThan(1e-12)
  }

  test('adding one amount to all diameters changes neither out-of-round, taper, spread nor form', () => {
    fc.assert(
      fc.property(grid, fc.double({ min: -0.01, max: 0.01, noNaN: true }), (readings, add) => {
        const moved = form(readings.map((r) => ({ ...r, valueM: r.valueM + add })))
        expectSame(form(readings), moved)
      }),
    )
  })

  test('mirroring the stations and swapping the axes change no figure and no form', () => {
    fc.assert(
      fc.property(grid, (readings) => {
        const mirrored = form(readings.map((r) => ({ ...r, at: 1 - r.at })))
        const swapped = form([...readings].reverse())
        const straight = form(readings)
        expectSame(straight, mirrored)
        expectSame(straight, swapped)
        expect([mirrored.form, swapped.form]).toEqual([straight.form, straight.form])
      }),
    )
  })

  test('no out-of-round and no taper is greater than the spread; ends never differ by more than the taper', () => {
    fc.assert(
      fc.property(grid, (readings) => {
        const f = form(readings)
        for (const { outOfRoundM } of f.round) expect(outOfRoundM).toBeLessThanOrEqual(f.spreadM)
        for (const { taperM, endToEndM } of f.perAxis) {
          expect(taperM).toBeLessThanOrEqual(f.spreadM)
          expect(endToEndM).toBeLessThanOrEqual(taperM)
        }
      }),
    )
  })
})
