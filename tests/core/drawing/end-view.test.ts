// The end view: exact pictures of the usual lines of measurement, and what holds for any.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawEndView } from '../../../src/core/drawing/end-view.ts'
import { axis, count, expectSound, HORIZONTAL, picture, VERTICAL } from './arbitrary.ts'

const across = (from: number) => ({ id: 'x', label: 'x', from, to: from + 6 > 12 ? from - 6 : from + 6 })
const lines = (from: number, ascii = true, height = 7): string[] =>
  drawEndView({ axis: across(from) }, { ascii, width: 24, height }).lines

describe('the usual lines of measurement', () => {
  it('top to bottom', () => {
    expect(drawEndView({ axis: VERTICAL }, { ascii: false, width: 24 }).lines).toEqual(
      picture(`
      ╭──12───╮
    ╭─╯   #   ╰─╮
    9     #     3
    ╰─╮   #   ╭─╯
      ╰───6───╯
   12 to 6 o'clock
seen from the head end
`),
    )
  })

  it('side to side, in ASCII', () => {
    expect(drawEndView({ axis: HORIZONTAL }, { ascii: true, width: 24 }).lines).toEqual(
      picture(`
      .--12---.
    .-'       '-.
    9###########3
    '-.       .-'
      '---6---'
   9 to 3 o'clock
seen from the head end
`),
    )
  })

  it('half past ten to half past four: falls from the left to the right, as seen from the head end', () => {
    expect(lines(10.5)).toEqual(
      picture(`
      #--12---.
    .-'##     '-.
    9    ###    3
    '-.     ##.-'
      '---6---#
10:30 to 4:30 o'clock
seen from the head end
`),
    )
  })

  it('has a 5-line form', () => {
    expect(lines(1.5, false, 5)).toEqual(
      picture(`
      ╭──12───#
     9   ###   3
      #───6───╯
1:30 to 7:30 o'clock
seen from the head end
`),
    )
  })

  it('marks the ends of the other lines', () => {
    const view = { axis: VERTICAL, axes: [VERTICAL, HORIZONTAL, across(10.5)] }
    expect(drawEndView(view, { ascii: true, width: 24 }).lines.slice(0, 5)).toEqual(
      picture(`
      o--12---.
    .-'   #   '-.
    9     #     3
    '-.   #   .-'
      '---6---o
`),
    )
  })

  it('tells ten o clock, half past ten and eleven apart', () => {
    const pictures = [10, 10.5, 11, 12, 1, 1.5, 2, 3].map((from) => lines(from).slice(0, 5).join('\n'))
    expect(new Set(pictures).size).toBe(8)
  })
})

describe('what can not be drawn', () => {
  it('is said in words', () => {
    expect(drawEndView({ axis: VERTICAL }, { ascii: true, width: 21 }).lines).toEqual([
      "12 to 6 o'clock, seen",
    ])
    expect(drawEndView({ axis: VERTICAL }, { ascii: true, width: 60, height: 4 }).lines).toEqual([
      "12 to 6 o'clock, seen from the head end",
    ])
  })

  it('draws no line for a position that is no number', () => {
    const bad = { id: 'b', label: 'ends', from: Number.NaN, to: 6 }
    const drawn = drawEndView({ axis: bad, axes: [bad] }, { ascii: true, width: 24 })
    expect(count(drawn.lines, '#')).toBe(0)
    expect(drawn.lines[5]?.trim()).toBe('ends')
  })
})

/** Cells of the instrument, from the centre of the clock; the figures hide the line, so their cells are left out. */
function cells(rows: readonly string[]): string[] {
  const middle = (rows.length - 1) / 2
  const hidden = [
    '0,-2',
    '-1,-2',
    '1,-2',
    '0,2',
    '1,2',
    '-1,2',
    '0,-1',
    '0,1',
    '-1,-1',
    '1,1',
    '-1,1',
    '1,-1',
  ]
  const found: string[] = []
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x += 1) if (row[x] === '#') found.push(`${x - 10},${y - middle}`)
  })
  return found
    .filter((cell) => (rows.length === 5 ? !hidden.slice(0, 6).includes(cell) : !hidden.includes(cell)))
    .sort()
}
const flip = (cell: string, sx: number, sy: number): string => {
  const [x, y] = cell.split(',').map(Number)
  return `${(x as number) * sx || 0},${(y as number) * sy || 0}`
}

describe('any line of measurement', () => {
  it('is sound and says where it is seen from', () => {
    fc.assert(
      fc.property(
        axis,
        fc.array(axis),
        fc.boolean(),
        fc.integer({ min: 5, max: 8 }),
        (one, axes, ascii, height) => {
          const drawn = drawEndView({ axis: one, axes }, { ascii, width: 24, height })
          expectSound(drawn, ascii, 24, height < 7 ? 5 : 7)
          expect(drawn.lines.at(-1)).toBe('seen from the head end')
          for (const figure of ['12', '6', '9', '3']) {
            expect(drawn.lines.slice(0, -2).join('\n')).toContain(figure)
          }
        },
      ),
    )
  })

  it('is the same from both ends, and mirrors', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 48 }), fc.constantFrom(5, 7), (quarter, height) => {
        const from = quarter / 4
        const rows = (position: number) => cells(lines(position, true, height).slice(0, -2))
        const here = rows(from)
        expect(here.length).toBeGreaterThan(0)
        expect(here.map((cell) => flip(cell, -1, -1)).sort()).toEqual(here)
        const mirrored = from === 12 ? 12 : 12 - from
        expect(
          rows(mirrored)
            .map((cell) => flip(cell, -1, 1))
            .sort(),
        ).toEqual(here)
      }),
    )
  })
})
