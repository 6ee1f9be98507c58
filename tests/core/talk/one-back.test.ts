// `back` within several questions goes one question back: what was keyed for those before it stays.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { BORE_LINES, Walk } from '../../helpers/example.ts'
import { SCORED } from '../../helpers/scored.ts'

const KEYED = (walk: Walk): Walk => {
  walk.autoPin = false
  return walk
}
const asked = (walk: Walk) =>
  promptView(walk.engine.defs, walk.state, walk.talk, { width: 79, record: 'EXAMPLE', ascii: true }).ask.map(
    ({ text }) => text,
  )

describe('at the PIN of a decision', () => {
  it('goes to the day, then the reason, then the initials, then leaves', () => {
    const walk = KEYED(new Walk().toVerdict()).keys('1', 'KH', 'inside its limits', '2026-09-14')
    expect(walk.talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
    expect(asked(walk)).toContain('back goes to the question before')
    walk.key('back')
    expect(walk.talk.ask).toEqual({
      kind: 'dispose-why',
      step: 'disposition',
      choice: 'accept',
      person: 'KH',
      why: 'inside its limits',
    })
    walk.key('back')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-why', choice: 'accept', person: 'KH' })
    expect(walk.talk.ask).not.toHaveProperty('why')
    walk.key('back')
    expect(walk.talk.ask).toEqual({ kind: 'dispose-who', step: 'disposition', choice: 'accept' })
    expect(asked(walk)).toContain('back leaves this question')
    walk.key('back')
    expect(walk.talk.ask).toBeNull()
    expect(walk.said.at(-1)).toBe('Left as it was.')
    expect(walk.state.dispositions).toEqual({})
  })

  it('of a finding goes to the initials, then to what is decided of it, and takes another choice there', () => {
    const walk = new Walk()
      .toBore()
      .keys(...BORE_LINES, ...SCORED, '1', 'KH', 'read again after 4000 h', '', '1')
    walk.autoPin = false
    walk.keys('rework', 'KH')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-why', choice: 'rework', person: 'KH' })
    walk.key('back')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-who', choice: 'rework' })
    walk.key('back')
    expect(walk.talk.ask).toMatchObject({ kind: 'finding-choice', step: 'surface' })
    walk.key('6')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-who', choice: 'hold' })
    walk.keys('back', 'concession', 'KH', 'runs until the liner is here', 'MT-12', 'back', 'back', 'back')
    expect(walk.talk.ask).toMatchObject({ kind: 'dispose-who', choice: 'concession' })
    walk.keys('back', 'back')
    expect(walk.talk.ask).toBeNull()
  })

  it('stays at the reason where none is given for going back', () => {
    const walk = new Walk().toBore().keys('9.5033', '9.5039', 'back', '1')
    expect(walk.talk.ask).not.toBeNull()
    const at = new Walk().throughGate().keys('1', 'back', '1')
    expect(at.talk.ask).toMatchObject({ kind: 'reopen-why' })
    expect(at.said.at(-1)).toBe('Going back needs words: type a short sentence.')
    expect(at.keys('rag left in there').talk.ask).toBeNull()
  })

  it('takes another day with the same reason, also after a wrong PIN', () => {
    const walk = KEYED(new Walk().toVerdict()).keys('1', 'KH', 'inside its limits', '2026-09-14')
    walk.keys('1111', 'back', '2026-10-01', '8314')
    expect(walk.state.dispositions.disposition).toMatchObject({
      why: 'inside its limits; to be read again: 2026-10-01',
    })
  })

  it('says one back, not left, where nothing or a word of habit is keyed', () => {
    const walk = KEYED(new Walk().toVerdict()).keys('1', 'KH', '')
    expect(walk.said.at(-1)).toBe('Nothing was keyed; back goes to the question before.')
  })
})

it('goes from the PIN of a release to what was put right, with the lead kept', () => {
  const walk = KEYED(new Walk()).keys('RO', '4071', 'TC-401-1', '', 'stop', '1', 'a hose came off', 'RO')
  walk.keys('1', 'KH', 'hose put back and tested')
  expect(walk.talk.ask).toMatchObject({ kind: 'pin', person: 'KH' })
  walk.key('back')
  expect(walk.talk.ask).toEqual({ kind: 'release-answer', person: 'KH' })
  walk.keys('hose changed and tested', '8314')
  expect(walk.last).toMatchObject({ type: 'stop.released', answer: 'hose changed and tested' })
})

it('leaves the PIN where initials at a prompt were all, and the prompt stands', () => {
  const walk = KEYED(new Walk())
  walk.keys('RO', 'back')
  expect(walk.talk.ask).toBeNull()
  expect(walk.prompt.kind).toBe('sign-on')
})

it('goes through a concession one question at a time', () => {
  const walk = KEYED(new Walk().toVerdict()).keys('2', 'KH')
  expect(walk.talk.ask).toMatchObject({ kind: 'dispose-why' })
  const back: unknown[] = []
  walk.talk = {
    ask: {
      kind: 'concession-far',
      ...{ step: 'disposition', choice: 'concession', person: 'KH', why: 'w', authority: 'a', until: 'u' },
    },
  }
  for (let n = 0; n < 5; n++) {
    back.push(walk.talk.ask?.kind)
    walk.key('back')
  }
  expect(back).toEqual([
    'concession-far',
    'concession-until',
    'concession-authority',
    'dispose-why',
    'dispose-who',
  ])
})
