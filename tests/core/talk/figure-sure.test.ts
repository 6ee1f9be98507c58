// One digit alone at an oxygen reading is asked about before it fells anything; nothing is opened by it, whatever is keyed next.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { standingAsk } from '../../../src/core/talk/ask.ts'
import { withListed } from '../../../src/core/talk/correct.ts'
import { GAS_LINES, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }
const atOxygen = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
const status = (walk: Walk) => gateState(walk.state, 'hold_point').status
const asked = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, STYLE).ask.map((r) => r.text)

describe('one digit alone at an oxygen reading', () => {
  it('is asked about: nothing goes on record, and the hold point stays shut', () => {
    const walk = atOxygen()
    const { seq } = walk.state
    walk.key('1')
    expect(walk.state.seq).toBe(seq)
    expect(walk.said.at(-2)).toMatch(/^1 %vol of oxygen: if G-7 shows that, COME OUT AND STAND CLEAR/)
    expect(asked(walk)[0]).toBe('Oxygen as the meter shows it, in full; 1 once more if it is 1')
    expect(status(walk)).not.toBe('open')
    walk.key('back')
    expect(walk.prompt.kind).toBe('evidence')
    expect(walk.state.seq).toBe(seq)
  })

  it('and keyed once more, or in full, is the figure, and calls everybody out', () => {
    for (const line of ['1', '1.0', '1 %vol', '15']) {
      const walk = atOxygen().keys('1', line)
      expect([line, walk.entries.filter(({ type }) => type === 'evidence.failed').length]).toEqual([line, 1])
      expect(status(walk)).not.toBe('open')
    }
  })

  it('and another digit alone is asked about like the first', () => {
    const walk = atOxygen()
    const { seq } = walk.state
    walk.keys('2', '0')
    expect(walk.state.seq).toBe(seq)
    expect(asked(walk)[0]).toBe('Oxygen as the meter shows it, in full; 0 once more if it is 0')
    expect(walk.keys('0').entries.filter(({ type }) => type === 'evidence.failed')).toHaveLength(1)
  })

  it.each(['', 'yes', 'ok', 'NO', '?'])('then %j opens nothing and is no figure', (line) => {
    const walk = atOxygen().keys('1', line)
    expect(walk.entries.some(({ type }) => type === 'evidence.failed')).toBe(false)
    expect(gateState(walk.state, 'hold_point').given.oxygen_breathing).toBeUndefined()
  })

  it('then the right figure is taken, and the rest goes on', () => {
    const walk = atOxygen().keys('1', ...GAS_LINES)
    expect(gateState(walk.state, 'hold_point').given.oxygen_breathing?.shown).toBe('20.9 %vol')
    expect(status(walk.keys('ML'))).toBe('open')
  })

  it('is none of it where the figure has a second digit, nor at what burns, which is often nothing', () => {
    const low = atOxygen()
    low.key('15')
    expect(low.entries.some(({ type }) => type === 'evidence.failed')).toBe(true)
    const burns = atOxygen().keys('20.9')
    burns.key('0')
    expect(gateState(burns.state, 'hold_point').given.flammable_breathing?.shown).toBe('0 %LEL')
  })

  it('is asked about inside the bore too, where it would pass; keyed so again its box is no fine one', () => {
    const walk = atOxygen().keys(...GAS_LINES.slice(0, 3), '2')
    expect(walk.said.at(-2)).toMatch(/^2 %vol of oxygen: if G-7 shows that, COME OUT AND STAND CLEAR/)
    expect(gateState(walk.state, 'hold_point').given.oxygen_inside).toBeUndefined()
    walk.key('2')
    const block = entryBlocks(walk.engine.defs, walk.state, walk.last, STYLE)[0]
    expect(block?.rows[0]).toMatchObject({
      text: expect.stringMatching(/2 %vol .*NOBODY BREATHES THERE/),
      tone: 'caution',
    })
  })

  it('is asked about where a temperature is read, and is taken once it is keyed again', () => {
    const walk = new Walk().throughGate().keys('1', '1', '1')
    expect(walk.last.type).not.toBe('reading.taken')
    expect(asked(walk)[0]).toBe('Temperature as the instrument shows it, in full; 1 once more if it is 1')
    expect(walk.keys('71.2').last).toMatchObject({ type: 'reading.taken', typed: '71.2' })
    const cold = new Walk().throughGate().keys('1', '1', '1', '1')
    expect(cold.last).toMatchObject({ type: 'reading.taken', typed: '1' })
  })

  it('goes with the line it was keyed for', () => {
    const walk = atOxygen().keys('1')
    const { ask } = walk.talk
    expect(standingAsk(walk.prompt, ask)).toBe(ask)
    walk.bring({ do: 'evidence', step: 'hold_point', item: 'oxygen_breathing', typed: '20.9' })
    expect(standingAsk(walk.prompt, ask)).toBeNull()
  })
})

describe('the meter of a hold point', () => {
  it('is named at each gas line, and as that of before where it is not asked for again', () => {
    const first = atOxygen()
    expect(asked(first)).toContain('With G-7, Four-gas meter')
    const again = atOxygen()
      .keys(...GAS_LINES, 'ML')
      .wait(40)
    again.bring({ do: 'tick' })
    again.keys('ALL OUT')
    expect(again.prompt.kind).toBe('evidence')
    expect(asked(again)).toContain('Meter G-7 as before: oxygen where people breathe, %vol')
  })
})

describe('what was shown at a hold point, put right', () => {
  const atWhy = () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'correct')
    const question = walk.talk.ask
    if (question?.kind !== 'correct-which') throw new Error('no list')
    const which = question.items.findIndex(({ text }) => text.includes('L-102'))
    return walk.keys(withListed(String(which + 1), question.items.length))
  }

  it('is asked why it was wrong by its own number, under its own name', () => {
    const walk = atWhy()
    const view = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(view.title).toBe('lock at barring motor breaker, E-2')
    expect(view.ask.map((r) => r.text).slice(0, 3)).toEqual([
      'Stands: L-102',
      'It is asked again; nobody was let in yet. This would make void what was keyed for: lock at barring motor breaker, E-2.',
      'Why was L-102 wrong? In words; what is right is asked after',
    ])
  })

  it.each(['L-107', 'L-102', 'l-102', '7'])(
    'takes %s for no reason: it would blame the good one on record',
    (line) => {
      const walk = atWhy()
      const { seq } = walk.state
      walk.key(line)
      expect(walk.state.seq).toBe(seq)
      expect(walk.said.at(-1)).toContain('That is no reason: why was L-102 wrong?')
    },
  )

  it('names on record what is taken back, and what it was shown for', () => {
    const walk = atWhy().keys('read from the other breaker')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'corrected',
      why: 'L-102, lock at barring motor breaker, E-2, is taken back: read from the other breaker',
    })
  })

  it('is taken back by back and one key, and left by another', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102', 'back', '2')
    expect(gateState(walk.state, 'hold_point').given['locks.barring']?.shown).toBe('L-102')
    walk.keys('back', '1')
    expect(gateState(walk.state, 'hold_point').given['locks.barring']).toBeUndefined()
  })
})
