// The lowest picture of each kind: the part in one line, names and figures under it where there is room.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DRAWING_KINDS, isSpot } from '../../../src/core/drawing/kinds.ts'
import { drawStrip } from '../../../src/core/drawing/strip.ts'
import type { DrawnStation } from '../../../src/core/drawing/types.ts'
import { axis, bore, count, expectSound, HE_CENTRE_CE, HORIZONTAL, picture, VERTICAL } from './arbitrary.ts'

/** Columns of the words on a sheet of 40. */
const NARROW = 29
const AXES = [VERTICAL, HORIZONTAL]

const ofBore = {
  kind: 'bore' as const,
  stations: HE_CENTRE_CE,
  here: 'centre',
  across: true,
  hasCounterbore: true,
  axes: AXES,
}

describe('a bore in three lines and fewer', () => {
  it.each([
    [1, 'HE |-+-x===#===o-+-| CE 12-6'],
    [2, 'HE |-+-x===#===o-+-| CE 12-6\n    9.5062'],
    [3, 'HE |-+-x===#===o-+-| CE 12-6\n      HE CENT. CE\n    9.5062'],
  ])('%i: walls, steps, ring travel, what is measured and to come, the clock positions', (height, wanted) => {
    const { lines } = drawStrip({ ...ofBore, axis: VERTICAL }, { ascii: true, width: NARROW, height })
    expect(lines.join('\n')).toBe(wanted)
  })

  it('stays where it is from one direction to the next', () => {
    const at = (of: typeof VERTICAL) =>
      drawStrip({ ...ofBore, axis: of }, { ascii: false, width: NARROW, height: 1 }).lines[0] ?? ''
    expect(at(HORIZONTAL)).toBe('HE │─┴─x═══#═══o─┴─│ CE 9-3')
    expect(at(HORIZONTAL).indexOf('#')).toBe(at(VERTICAL).indexOf('#'))
  })

  it('has clock positions that leave it no room under it', () => {
    const slant = { id: 's', label: 'slant', from: 10.5, to: 4.5 }
    const { lines } = drawStrip({ ...ofBore, axis: slant }, { ascii: true, width: NARROW, height: 2 })
    expect(lines[1]).toBe('10:30-4:30')
  })

  it('is sound with any stations and at any size, with one instrument on it', () => {
    fc.assert(
      fc.property(
        bore,
        axis,
        fc.boolean(),
        fc.integer({ min: 0, max: 70 }),
        fc.integer({ min: 0, max: 5 }),
        (place, across, ascii, width, height) => {
          const drawn = drawStrip(
            { kind: 'bore', across: true, ...place, axis: across, axes: [across] },
            { ascii, width, height },
          )
          expectSound(drawn, ascii, Math.max(0, width), height)
          if (drawn.lines.length > 0) expect(count(drawn.lines.slice(0, 1), '#')).toBe(1)
        },
      ),
    )
  })
})

describe.each(DRAWING_KINDS)('%s', (kind) => {
  const two: readonly DrawnStation[] = isSpot(kind)
    ? [
        { id: 'a', label: 'TOP', at: 0, value: '0.048' },
        { id: 'b', label: 'FOOT', at: 1 },
      ]
    : HE_CENTRE_CE.slice(0, 2)
  const draw = (ascii: boolean, height: number) =>
    drawStrip(
      { kind, stations: two, here: two[1]?.id ?? '', across: true, axis: VERTICAL, axes: AXES },
      { ascii, width: NARROW, height },
    ).lines

  it('has one line with the instrument on a sheet of 40 columns, in the same shape in ASCII', () => {
    const [line = '', ...more] = draw(false, 1)
    expect(more).toEqual([])
    expect(line).toContain('#')
    expect(draw(true, 1).map((one) => one.length)).toEqual([line.length])
  })

  it('says in three lines what is measured already', () => {
    expect(draw(true, 3).length).toBeLessThanOrEqual(3)
    expect(draw(true, 3).join('\n')).toContain(two[0]?.value)
  })
})

describe('a spot with two places', () => {
  it('names the one that is measured, and what the other came to', () => {
    const stations = [
      { id: 'top', label: 'TOP', at: 0, value: '0.048' },
      { id: 'foot', label: 'FOOT', at: 1 },
    ]
    const place = { kind: 'head_clearance' as const, stations, here: 'foot', across: false }
    expect(drawStrip(place, { ascii: true, width: NARROW }).lines).toEqual(
      picture(`
head |##| piston +== CE  FOOT
x TOP 0.048
`),
    )
  })
})
