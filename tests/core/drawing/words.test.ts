// Words and columns: names that never become another name, rows that keep their order and distances.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { axisText, clockText } from '../../../src/core/drawing/clock.ts'
import { type Side, settle } from '../../../src/core/drawing/settle.ts'
import { nameForms, plain, wrap } from '../../../src/core/drawing/words.ts'

describe('names', () => {
  it('are made plain, one column per character', () => {
    expect(plain(' Hülse\t1\n漢 ')).toBe('Hulse 1 ?')
  })

  it('are cut without becoming another name', () => {
    expect(nameForms('CENTRE', ['HE', 'CENTRE', 'CE'])).toEqual(['CENTRE', 'CENT.', 'CEN.'])
    expect(nameForms('STATION 1', ['STATION 1', 'STATION 2'])).toEqual(['STATION 1'])
    expect(nameForms('STAGE', ['STAGE', 'STAND'])).toEqual(['STAGE'])
    expect(nameForms('', [''])).toEqual([])
  })

  it('are wrapped at spaces', () => {
    expect(wrap('not to scale, bars from', 12)).toEqual(['not to', 'scale, bars', 'from'])
  })
})

describe('clock positions', () => {
  it('are written in hours and minutes', () => {
    expect([12, 6, 10.5, 4.25, 0, 12.5, 11.9999, -3].map(clockText)).toEqual([
      '12',
      '6',
      '10:30',
      '4:15',
      '12',
      '12:30',
      '12',
      '9',
    ])
    expect(clockText(Number.NaN)).toBeUndefined()
    expect(axisText({ id: 'a', label: 'a', from: 12, to: Number.NaN })).toBeUndefined()
  })
})

describe('settle', () => {
  const thing = (want: number, side: Side = -1) => ({ want, gap: 2, min: 0, max: 10, side })

  it('leaves alone what has room, and crowds to both sides alike', () => {
    expect(settle([thing(1), thing(5), thing(9)])).toEqual([1, 5, 9])
    expect(settle([thing(5, 0), thing(5, 0), thing(5, 0)])).toEqual([3, 5, 7])
    expect(settle([thing(0), thing(0)])).toEqual([0, 2])
  })

  it('says when there is no room', () => {
    expect(settle(Array.from({ length: 7 }, () => thing(5)))).toBeUndefined()
  })

  it('keeps order, distances and bounds', () => {
    const wants = fc.array(
      fc.integer({ min: 0, max: 40 }).map((n) => n / 4),
      { minLength: 1, maxLength: 6 },
    )
    fc.assert(
      fc.property(wants, (list) => {
        const columns =
          settle([...list].sort((a, b) => a - b).map((want) => thing(want, want > 5 ? 1 : -1))) ?? []
        expect(columns).toHaveLength(list.length)
        columns.forEach((column, i) => {
          expect(Number.isInteger(column)).toBe(true)
          expect(column).toBeGreaterThanOrEqual(0)
          expect(column).toBeLessThanOrEqual(10)
          if (i > 0) expect(column - (columns[i - 1] as number)).toBeGreaterThanOrEqual(2)
        })
      }),
    )
  })
})
