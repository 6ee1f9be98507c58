// What is longer than the room above the question is read from its beginning, side by side, before the question.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Line, layOut, row, type SheetStyle } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive, type LiveInput, type SideUp } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fitToRead, roomAbove } from '../../../src/core/sheet/to-read.ts'
import { Walk } from '../../helpers/example.ts'

const at = (walk: Walk, columns: number, rows: number): LiveInput & { style: SheetStyle } => {
  const { state, now, engine, talk } = walk
  const style: SheetStyle = { width: columns - 1, record: 'EXAMPLE', ascii: true }
  return {
    view: promptView(engine.defs, state, talk, style),
    foot: foot(engine.defs, state, now),
    style,
    columns,
    rows,
    notice: null,
  }
}

const said = (n: number, { style }: { style: SheetStyle }): Line[] =>
  layOut({ margin: '', rows: Array.from({ length: n }, (_, i) => row(`said ${i}`)) }, style)

const GATE = at(new Walk().toGate(), 80, 24)
const LOW = at(new Walk().toBore(), 40, 15)

const textsOf = (lines: readonly Line[]) => lines.map((line) => line.text)

/** What is read when all is turned over, and every screen on the way. */
function readThrough(input: LiveInput, toRead: readonly Line[]) {
  const first = fitToRead({ ...input, toRead })
  const screens = [first]
  for (let n = 1; n < (first.turn?.toRead ?? 0); n++)
    screens.push(fitToRead({ ...input, toRead, side: { of: 'front', n } }))
  return screens
}

describe('what came with the last line', () => {
  it.each([
    ['80 by 24', GATE],
    ['40 by 15', LOW],
  ])('is read whole, in order and from its beginning, at %s', (_, input) => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 70 }), (n) => {
        const toRead = said(n, input)
        const screens = readThrough(input, toRead)
        const read = screens.flatMap((s) => textsOf(s.above).filter((t) => t.startsWith('said ')))
        expect(read).toEqual(textsOf(toRead))
        for (const { above, below, turn, choices } of screens) {
          expect(above.length + 1 + below.length).toBeLessThan(input.rows)
          expect(turn?.at).toBeLessThan((turn?.of ?? 0) - 1)
          expect(choices).toBe(0)
        }
      }),
    )
  })

  it('stands before the question, which is as it would be without it', () => {
    const toRead = said(30, GATE)
    const of = fitToRead({ ...GATE, toRead }).turn?.of
    const side: SideUp = { of: 'question', n: 0 }
    const question = fitToRead({ ...GATE, toRead, side })
    const bare = fitLive(GATE)
    expect(bare.turn).toBeNull()
    expect(question.above).toEqual(bare.above)
    expect(question.turn).toMatchObject({ at: (of ?? 0) - 1, of, toRead: 2 })
  })

  it('counts the sides of a question that is folded itself', () => {
    const inner = fitLive(LOW).turn
    const toRead = said(30, LOW)
    const turn = fitToRead({ ...LOW, toRead }).turn
    expect(inner?.of).toBeGreaterThan(1)
    expect(turn?.of).toBe((turn?.toRead ?? 0) + (inner?.of ?? 0))
    const last = fitToRead({ ...LOW, toRead, side: { of: 'question', n: 9 } })
    expect(textsOf(last.above).join('\n')).toContain(`${turn?.of} of ${turn?.of}`)
  })

  it('is not held back where nothing is, or where there is no room for four lines of it', () => {
    expect(fitToRead({ ...GATE, toRead: [] })).toEqual(fitLive(GATE))
    const low = { ...GATE, rows: 7 }
    expect(fitToRead({ ...low, toRead: said(9, GATE) })).toEqual(fitLive(low))
  })

  it('keeps a row together that goes on in the next line', () => {
    const long = layOut(
      { margin: '', rows: Array.from({ length: 12 }, (_, i) => row(`row ${i} ${'word '.repeat(14)}`)) },
      GATE.style,
    )
    for (const { above } of readThrough(GATE, long)) expect(above[0]?.text).toMatch(/^row /)
  })

  it('keeps a row together that is set in itself, under one that is not', () => {
    for (let before = 1; before < 12; before++) {
      const rows = [
        ...Array.from({ length: before }, (_, i) => row(`said ${i}`)),
        row('  Now: what sheet 3 and those after it ask. Nothing else.'),
        row('  Until 06:57, or until anything here changes: then come out.'),
      ]
      const screens = readThrough(LOW, layOut({ margin: '', rows }, LOW.style))
      const sides = screens.map(({ above }) => textsOf(above).join(' ').replace(/\s+/g, ' '))
      expect(sides.join('|')).toMatch(/Until 06:57, or until anything here changes: then come out\./)
    }
  })

  it('has the room above the question that is left when all else has given way', () => {
    const close = fitLive({ ...GATE, said: 999 })
    expect(roomAbove(GATE)).toBe(24 - 1 - (close.above.length + 1 + close.below.length))
    expect(roomAbove({ ...GATE, rows: 4 })).toBe(Number.POSITIVE_INFINITY)
  })
})
