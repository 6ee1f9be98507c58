// Whoever may not witness is told why with the question in sight, and only those who may are named.
import { describe, expect, it } from 'vitest'
import { layOut, row } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { fitRefused } from '../../../src/core/sheet/refused.ts'
import { roomAbove } from '../../../src/core/sheet/to-read.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }

/** At the keyboard, where the pace of gas figures is told too. */
function atWitness(): Walk {
  const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
  walk.stepMs = 5000
  walk.keys(...GAS_LINES)
  walk.state = { ...walk.state, scripted: false }
  return walk
}

describe('who may not witness', () => {
  it.each([
    ['TS', 'TS is a trainee, who may not witness here: key ML, KH or PB.'],
    ['RO', 'RO did this and may not witness it: key ML, KH or PB.'],
    ['ZZ', '"ZZ" is nobody in the crew file: key ML, KH or PB.'],
    ['zz', '"zz" is nobody in the crew file: key ML, KH or PB.'],
    ['', 'Nothing was keyed: key ML, KH or PB.'],
    ['  ', 'Nothing was keyed: key ML, KH or PB.'],
  ])('%s', (typed, says) => {
    const walk = atWitness().keys(typed)
    expect(walk.said.at(-1)).toBe(says)
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'witness' } })
  })

  it.each(['4071', 'RO 4071'])('a PIN keyed too soon, %s, is not shown back', (typed) => {
    const walk = atWitness().keys(typed)
    expect(walk.said.join(' ')).not.toContain('4071')
  })

  it('is asked nothing on the page that looks like a question to be answered there', () => {
    const { engine, state, talk } = atWitness()
    const { ask } = promptView(engine.defs, state, talk, STYLE)
    expect(ask.map(({ text }) => text).join(' ')).toContain('15 s apart: watch the meter settle.')
    expect(ask.filter(({ text }) => text.includes('?'))).toEqual([])
  })
})

it('stands with the whole question at 80 by 24', () => {
  const { engine, state, talk, now, said } = atWitness().keys('TS')
  const view = promptView(engine.defs, state, talk, STYLE)
  const input = {
    ...{ view, foot: foot(engine.defs, state, now), style: STYLE, rows: 24, columns: 80, notice: null },
    toRead: [],
  }
  const refused = layOut({ margin: '', rows: [row(said.at(-1) ?? '')] }, STYLE)
  expect(roomAbove(input)).toBeGreaterThanOrEqual(refused.length)
  const live = fitRefused(input, refused)
  expect(live.turn).toBeNull()
  const above = live.above.map(({ text }) => text)
  expect(above[0]).toBe(said.at(-1))
  expect(above.join(' ')).toMatch(/Hazard: .*In trouble: .*May witness: ML/)
  expect(live.above.length + 1 + live.below.length).toBeLessThanOrEqual(23)
})
