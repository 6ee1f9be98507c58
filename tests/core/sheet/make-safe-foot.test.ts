// Make safe stands under every question and every side of one, whatever else the foot has to say.
import { describe, expect, it } from 'vitest'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive, type Live } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fitToRead } from '../../../src/core/sheet/to-read.ts'
import type { Walk } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

const SIZES = [
  [80, 24],
  [40, 15],
] as const

function inputOf({ engine, state, talk, now }: Walk, columns: number, rows: number) {
  const style = { width: columns - 1, record: 'EXAMPLE', ascii: true } as const
  return {
    view: promptView(engine.defs, state, talk, style),
    foot: foot(engine.defs, state, now),
    style,
    rows,
    columns,
    notice: null,
  }
}

const textOf = ({ below }: Live) => below.map(({ text }) => text).join('\n')

describe.each(SIZES)('at %i by %i', (columns, rows) => {
  it('the foot names the key of make safe, also with a gas clock or an open STOP, on each side', () => {
    let [aged, sides, stopped] = [0, 0, 0]
    const look = (walk: Walk) => {
      const input = inputOf(walk, columns, rows)
      for (let n = 0, of = 1; n < of; n++) {
        const live = fitLive({ ...input, side: { of: 'front', n } })
        of = live.turn?.of ?? 1
        if (of > 1) sides++
        expect(textOf(live), `${walk.prompt.kind}, side ${n + 1} of ${of}`).toContain('Tab')
        if (input.foot.stands.some((one) => one.includes('lapses'))) aged++
      }
      const toRead = Array.from({ length: 40 }, (_, n) => ({
        margin: '',
        text: `line ${n}`,
        tone: 'plain' as const,
      }))
      const read = fitToRead({ ...input, toRead, side: { of: 'front', n: 0 } })
      expect(textOf(read)).toContain('Tab')
    }
    walkExample((walk) => {
      if (walk.state.closed !== null) return
      look(walk)
      if (walk.prompt.kind !== 'read' || stopped > 0) return
      const { state, talk, entries } = walk
      walk.keys('stop')
      look(walk)
      stopped++
      Object.assign(walk, { state, talk, entries })
    })
    expect(aged).toBeGreaterThan(10)
    expect(stopped).toBe(1)
    if (rows < 24) expect(sides).toBeGreaterThan(5)
  })
})
