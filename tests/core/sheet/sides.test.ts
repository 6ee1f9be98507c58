// What is asked, folded: what is chosen from stands with the question on the last side, on as few sides as before, with every line once.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Line } from '../../../src/core/sheet/block.ts'
import { fold } from '../../../src/core/sheet/sides.ts'

const line = (text: string): Line => ({ margin: '', text, tone: 'plain' }) as Line
const row = (name: string, n: number) => Array.from({ length: n }, (_, i) => line(`${name}.${i}`))
const texts = (sides: readonly (readonly Line[])[]) => sides.map((side) => side.map(({ text }) => text))

describe('a question on several sides', () => {
  it('has its choices beside it on the last one', () => {
    const ask = [row('doubted', 3), row('1', 2), row('2', 2), row('3', 2), row('which', 1)]
    const { sides, front } = fold({ must: [], text: [], ask, room: 8, pointer: [] })
    expect(front).toBe(0)
    expect(texts(sides)).toEqual([
      ['doubted.0', 'doubted.1', 'doubted.2'],
      ['1.0', '1.1', '2.0', '2.1', '3.0', '3.1', 'which.0'],
    ])
  })

  it('has every line once, in order, whole rows only, on no more sides than room asks for, the last one never the emptier for it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 5, max: 9 }),
        (heights, room) => {
          const ask = heights.map((n, i) => row(`r${i}`, n))
          const { sides } = fold({ must: [], text: [], ask, room, pointer: [] })
          const all = texts(sides)
          expect(all.flat()).toEqual(ask.flat().map(({ text }) => text))
          for (const side of all) {
            expect(side.length).toBeGreaterThan(0)
            expect(side.length).toBeLessThanOrEqual(room)
            expect(side[0]).toMatch(/\.0$/)
          }
          // Filled from the first on it would be as many.
          let sidesDown = 1
          let used = 0
          for (const n of heights) {
            if (used + n > room) {
              sidesDown++
              used = 0
            }
            used += n
          }
          expect(all).toHaveLength(sidesDown)
          // One row more from the side before would not have gone in.
          const before = all.at(-2)
          const lastOfBefore =
            before === undefined
              ? 0
              : (heights[ask.findIndex((r) => r[0]?.text === before.findLast((t) => t.endsWith('.0')))] ?? 0)
          if (before !== undefined) expect((all.at(-1)?.length ?? 0) + lastOfBefore).toBeGreaterThan(room)
        },
      ),
    )
  })
})
