// Why a line was not taken: over the question, and never so that the live part is as high as the terminal.
import { describe, expect, it } from 'vitest'
import { layOut, row } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fitRefused } from '../../../src/core/sheet/refused.ts'
import { roomAbove } from '../../../src/core/sheet/to-read.ts'
import { walkExample } from '../../helpers/walked.ts'

describe('a refusal', () => {
  it.each([
    [80, 24],
    [40, 15],
    [60, 12],
  ])('is whole where the question leaves it room, at %i by %i', (columns, rows) => {
    const style = { width: columns - 1, record: 'EXAMPLE' as const, ascii: true }
    let whole = 0
    walkExample((walk, n) => {
      const { defs } = walk.engine
      const view = promptView(defs, walk.state, walk.talk, style)
      const input = { view, foot: foot(defs, walk.state, walk.now), style, columns, rows, notice: null }
      const refused = layOut(
        { margin: '', rows: [row(`refused ${'so '.repeat(1 + (n % 40))}`, 'caution')] },
        style,
      )
      for (const side of [
        { of: 'front', n: 0 },
        // Answered is on the last side: there it was keyed, and there it is told why it was not taken.
        { of: 'question', n: 99 },
      ] as const) {
        const live = fitRefused({ ...input, toRead: [], side }, refused)
        expect(live.above.length + 1 + live.below.length).toBeLessThan(rows)
        if (side.of === 'front' || live.tooSmall || refused.length > roomAbove(input)) continue
        whole++
        expect(live.above.slice(0, refused.length)).toEqual(refused)
      }
    })
    expect(whole).toBeGreaterThan(10)
  })
})
