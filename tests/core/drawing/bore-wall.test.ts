// One wall of the bore: exact pictures, and what holds for any stations.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawBoreWall } from '../../../src/core/drawing/bore-wall.ts'
import { bore, count, expectSound, HE_CENTRE_CE, picture, size } from './arbitrary.ts'

describe('the wall of the bore', () => {
  it('is drawn with the counterbore and the travel of the rings', () => {
    const wall = { stations: HE_CENTRE_CE, here: 'centre', hasCounterbore: true }
    expect(drawBoreWall(wall, { ascii: false, width: 60 }).lines).toEqual(
      picture(`
                           HERE
HE      ┌─────x═════════════ # ═════════════o─────┐      CE
   ─────┘                                         └─────
              ├──────── ring travel ────────┤
             HE           CENTRE            CE
           9.5062
`),
    )
  })

  it('is drawn in ASCII, low, with the mark in the counterbore', () => {
    const deep = { id: 'deep', label: 'DEEP', at: -0.3, inCounterbore: true }
    const wall = { stations: [deep, ...HE_CENTRE_CE], here: 'deep' }
    expect(drawBoreWall(wall, { ascii: true, width: 40, height: 5 }).lines).toEqual(
      picture(`
    HERE
HE       +---x=======o=======o---+    CE
   -- # -+                       +---
             +- ring travel -+
    DEEP    HE     CENTRE    CE
`),
    )
  })

  it('is said in words where it is too narrow or too low', () => {
    const wall = { stations: HE_CENTRE_CE, here: 'ce' }
    expect(drawBoreWall(wall, { ascii: true, width: 23 }).lines).toEqual(['HERE CE'])
    expect(drawBoreWall(wall, { ascii: true, width: 40, height: 4 }).lines).toEqual(['HERE CE'])
    expect(() => drawBoreWall({ ...wall, here: 'no' }, { ascii: true, width: 40 })).toThrow("no station 'no'")
  })

  it('is sound for any stations, with one instrument under one HERE and a mark for each of the others', () => {
    fc.assert(
      fc.property(bore, size, (wall, { ascii, width, height }) => {
        const drawn = drawBoreWall(wall, { ascii, width, height })
        expectSound(drawn, ascii, width, Math.min(6, height))
        expect(count(drawn.lines, 'HERE')).toBe(1)
        expect(count(drawn.lines, '#')).toBe(1)
        const rows = drawn.lines.slice(1, 3)
        expect(count(rows, 'x')).toBe(
          wall.stations.filter(({ id, value }) => id !== wall.here && value !== undefined).length,
        )
        const column = (rows.find((row) => row.includes('#')) ?? '').indexOf('#')
        const word = (drawn.lines[0] ?? '').indexOf('HERE')
        expect(column).toBeGreaterThanOrEqual(word)
        expect(column).toBeLessThanOrEqual(word + 3)
      }),
    )
  })

  it('has the same shape in ASCII', () => {
    fc.assert(
      fc.property(bore, size, (wall, { width, height }) => {
        const [box, ascii] = [false, true].map(
          (flag) => drawBoreWall(wall, { ascii: flag, width, height }).lines,
        )
        expect(ascii?.map((line) => line.length)).toEqual(box?.map((line) => line.length))
      }),
    )
  })
})
