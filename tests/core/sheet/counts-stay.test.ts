// At 40 columns and 15 rows: what is said beside a question makes it no more sides than it was, as whoever turns them counts.
import { describe, expect, it } from 'vitest'
import { layOut } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { askFolded, fitLive, type Live, type LiveInput } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fitToRead } from '../../../src/core/sheet/to-read.ts'
import { LOCK_LINES, Walk } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

const STYLE = { width: 39, record: 'EXAMPLE' as const, ascii: true }
const TOO_SOON = 'Not taken: that Enter came with the one before. Enter once more closes the job.'
const NOTICE_LINES = layOut({ margin: '', rows: [{ text: TOO_SOON, tone: 'caution' }] }, STYLE).length
const LAST = { of: 'question', n: 99 } as const

function input(walk: Walk) {
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, STYLE)
  const size = { rows: 15, columns: 40 }
  return { view, foot: foot(defs, walk.state, walk.now), style: STYLE, ...size, notice: null }
}

describe('the count of sides', () => {
  it('stays with a notice of three lines on the last of them, where that has room for it', () => {
    let folded = 0
    let stayed = 0
    walkExample((walk) => {
      if (walk.state.closed !== null) return
      const bare = fitLive({ ...input(walk), side: LAST })
      if (bare.turn === null) return
      folded++
      const told = fitLive({ ...input(walk), notice: TOO_SOON, side: LAST })
      const lines = bare.above.length + 1 + bare.below.length
      if (told.turn?.of === bare.turn.of) stayed++
      // Of sides that are full, but for less than it takes: there it is read on one more, for the two seconds that it stands.
      else expect(lines + NOTICE_LINES).toBeGreaterThan(14)
      expect(told.above.length + 1 + told.below.length).toBeLessThan(15)
    })
    expect(folded).toBeGreaterThan(15)
    expect(stayed).toBeGreaterThan(15)
  })

  it('loses no line of what is asked, whichever side is up, under a notice too', () => {
    let seen = 0
    const flow = (sides: readonly Live[]) =>
      sides.flatMap(({ above }) => above.map(({ text }) => text.trim())).join(' ')
    const all = (one: LiveInput) => {
      const of = fitLive({ ...one, side: LAST }).turn?.of ?? 1
      return Array.from({ length: of }, (_, n) => fitLive({ ...one, side: { of: 'front', n } }))
    }
    const check = (one: LiveInput) => {
      const told = { ...one, notice: TOO_SOON }
      if (all(told).length < 2) return
      seen++
      const rows = askFolded(one.view).filter(({ tone }) => tone !== 'faint')
      for (const { text } of layOut({ margin: '', rows }, STYLE))
        expect(flow(all(told))).toContain(text.trim())
    }
    walkExample((walk) => {
      if (walk.state.closed === null) check(input(walk))
    })
    // Shown again, with a meter as before: the limit stood on none of its sides.
    const again = new Walk()
      .toGate()
      .keys(...LOCK_LINES, 'NO START', 'NO FLOW', 'BLOCKED BOTH WAYS', '1', 'METER ANSWERED', '20.9')
      .keys('correct', '1', 'misread it', 'ALL OUT')
    check(input(again))
    expect(flow(all({ ...input(again), notice: TOO_SOON }))).toContain('Must be 19.5 %vol to 23.5')
    expect(seen).toBeGreaterThan(15)
  })

  it('goes by the question alone where a refusal stands on a side of its own before it', () => {
    let seen = 0
    const toRead = Array.from({ length: 5 }, (_, i) => ({
      margin: '',
      text: `why ${i}`,
      tone: 'caution' as const,
    }))
    walkExample((walk) => {
      if (walk.state.closed !== null) return
      const of = (live: ReturnType<typeof fitLive>) => live.above.at(-1)?.text
      const bare = fitLive({ ...input(walk), side: LAST })
      if (bare.turn === null) return
      seen++
      const refusing = { ...input(walk), toRead, refusesOnly: true }
      expect(of(fitToRead({ ...refusing, side: LAST }))).toBe(of(bare))
      const first = fitToRead({ ...refusing, side: { of: 'front', n: 0 } })
      expect(first.above.map(({ text }) => text)).toEqual([
        ...toRead.map(({ text }) => text),
        'Enter turns over',
      ])
    })
    expect(seen).toBeGreaterThan(15)
  })
})
