// Pictures without an instrument.
import { describe, expect, it } from 'vitest'
import { drawFigure, drawFigureLow, FIGURE_KINDS } from '../../../src/core/drawing/figures.ts'
import { expectSound, picture } from './arbitrary.ts'

describe('a hollow piston on the bench', () => {
  it('has its plugs at a wall or a shield on both faces', () => {
    expect(drawFigure('piston_plugs', { ascii: true, width: 60 }).lines).toEqual(
      picture(`
|     +--+---+--+     |
|     | cavity  |     |
|<----+ plug    +---->|
|     |         |     |
wall  +--+---+--+  shield
nobody in line: plug, vent
`),
    )
  })
})

describe.each(FIGURE_KINDS)('%s', (kind) => {
  it('is drawn whole or not at all, and in one line where there is no room for that, within the 29 columns of a sheet of 40, in the same shape in ASCII', () => {
    for (const ascii of [false, true])
      for (let width = 0; width < 70; width += 1)
        for (let height = 1; height < 9; height += 1)
          for (const draw of [drawFigure, drawFigureLow])
            expectSound(draw(kind, { ascii, width, height }), ascii, width, height)
    const [box, ascii] = [false, true].map((flag) => drawFigure(kind, { ascii: flag, width: 29 }).lines)
    expect(box?.length).toBeGreaterThan(3)
    expect(ascii?.map((line) => line.length)).toEqual(box?.map((line) => line.length))
    expect(drawFigure(kind, { ascii: false, width: 20 }).lines).toEqual([])
    expect(drawFigure(kind, { ascii: false, width: 29, height: 5 }).lines).toEqual([])
    expect(drawFigureLow(kind, { ascii: false, width: 29, height: 1 }).lines).toHaveLength(1)
  })
})
