// After every answer of the example, on the smallest screen: what was just taken is in sight above what is asked next.
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { layOut } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive, type SideUp } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { Walk } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

const ROWS = 15
const COLUMNS = 40
const LAST_SIDE: SideUp = { of: 'question', n: 0 }
const STYLE = { width: COLUMNS - 1, record: 'EXAMPLE' as const, ascii: true }

const linesOf = ({ engine: { defs }, state }: Walk, entry: Entry) =>
  entryBlocks(defs, state, entry, STYLE).flatMap((block) => layOut(block, STYLE))

/** Rows of what was taken that stand above the prompt, and how many of them it had. */
function inSight(walk: Walk, from: number, of: SideUp['of']) {
  const { defs } = walk.engine
  const all = walk.entries.slice(from).reduce((sum, entry) => sum + linesOf(walk, entry).length, 0)
  const live = fitLive({
    view: promptView(defs, walk.state, walk.talk, STYLE),
    foot: foot(defs, walk.state, walk.now),
    style: STYLE,
    rows: ROWS,
    columns: COLUMNS,
    notice: null,
    taken: Math.min(all, 8),
    side: { of, n: 0 },
  })
  const drawn = live.above.length + 1 + live.below.length
  expect(drawn).toBeLessThanOrEqual(ROWS - 1)
  return { seen: ROWS - 1 - drawn, all, folded: live.turn !== null }
}

describe('at 40 columns and 15 rows', () => {
  it('a line at least of what was just taken is in sight over the question', () => {
    const missed: string[] = []
    let from = 0
    let answers = 0
    walkExample((walk, n) => {
      const begun = from
      from = walk.entries.length
      if (n === 0 || from === begun || walk.state.closed !== null) return
      answers++
      const { seen, all } = inSight(walk, begun, 'question')
      if (seen < Math.min(1, all)) missed.push(`${walk.entries.at(-1)?.type}, then ${walk.prompt.kind}`)
      // Sides before the question are turned over: a hazard is never cut short for it.
      inSight(walk, begun, 'front')
    })
    expect(answers).toBeGreaterThan(40)
    // These fill the screen with words nobody has read yet. Make safe never gives way.
    expect(missed.length, missed.join('\n')).toBeLessThanOrEqual(3)
    expect(new Set(missed)).toEqual(new Set(['evidence.given, then evidence', 'reading.taken, then read']))
  })
})

describe('a figure behind a long reason', () => {
  const LONG =
    'swung three times by two of us, with the bore wiped dry before and the standard read again after it to the last figure; there is a step that can be felt with a finger and seen in the lamp, at the very place that was measured, so it stands as it was read'

  it.each([
    ['corrected', ['9.5021', 'correct', '1', LONG, '9.5031'], '9.5031'],
    ['doubted and kept', ['9.053', '3', LONG], '9.053'],
  ])('%s is in sight over the next question at 80 by 24 and at 40 by 15', (_, lines, figure) => {
    for (const [columns, rows] of [
      [80, 24],
      [40, 15],
    ] as const) {
      const walk = new Walk().toBore()
      let from = 0
      for (const line of lines) {
        from = walk.entries.length
        walk.key(line)
      }
      expect(walk.prompt.kind).toBe('read')
      const style = { ...STYLE, width: columns - 1 }
      const { defs } = walk.engine
      const all = walk.entries
        .slice(from)
        .flatMap((entry) => entryBlocks(defs, walk.state, entry, style).flatMap((b) => layOut(b, style)))
      const live = fitLive({
        ...{ view: promptView(defs, walk.state, walk.talk, style), foot: foot(defs, walk.state, walk.now) },
        ...{ style, rows, columns, notice: null, taken: Math.min(all.length, 8), side: LAST_SIDE },
      })
      const seen = rows - 2 - live.above.length - live.below.length
      const inView = all.slice(Math.max(0, all.length - seen)).map(({ text }) => text)
      expect(inView.join(' '), `${columns} columns`).toContain(figure)
    }
  })
})
