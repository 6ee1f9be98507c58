// Which words a lead has at a review, by how the job stands; and the way to what is not done there.
import { describe, expect, it } from 'vitest'
import { deskOf, whyNotNow } from '../../../src/core/talk/desk-words.ts'
import { Walk } from '../../helpers/example.ts'
import { smallAtSize } from '../../helpers/reviewed.ts'

const wordsOf = (walk: Walk) => deskOf(walk.engine.defs, walk.state).acts.map(({ word }) => word)
const saysOf = (walk: Walk) => {
  const { acts, elsewhere } = deskOf(walk.engine.defs, walk.state)
  return [...acts.map(({ says }) => says), ...elsewhere].join('\n')
}
const left = (walk: Walk) => walk.keys('leave')

describe('the words of a desk', () => {
  it('under a STOP are those of the STOP, and no release where nobody may', () => {
    const gas = new Walk().toBore().keys('stop', '1', 'smells of gas', 'RO')
    expect(wordsOf(left(gas))).toEqual(['release', 'close', 'cause'])
    const started = new Walk().toBore().keys('stop', '3', 'it turned', 'RO')
    expect(saysOf(gas)).toContain('smells of gas')
    expect(wordsOf(left(started))).toEqual(['close', 'cause'])
  })

  it('at a finding are to decide on it; at a verdict it is said that it is for who did not measure', () => {
    const found = left(smallAtSize().keys('9.5033', '2', 'a score at 3', ''))
    expect(wordsOf(found)).toEqual(['dispose', 'note'])
    const judged = left(new Walk().toVerdict())
    expect(wordsOf(judged)).toEqual(['dispose', 'note'])
    expect(saysOf(judged)).toMatch(/MONITOR, by a lead who did not measure/)
  })

  it('that do nothing now say what stands in the way, and what is keyed for it', () => {
    const spoken = new Walk().toGate().keys('sign on', 'ML').throughTheRest()
    left(spoken.keys('1', 'radio', 'KH', 'run it', 'ML'))
    const why = (walk: Walk, word: string) => whyNotNow(walk.engine.defs, walk.state, word)?.join('\n')
    expect(wordsOf(spoken)).not.toContain('countersign')
    expect(why(spoken, 'countersign')).toMatch(/^Not yet: people may be behind 2 .*[\s\S]*ALL OUT is missing/)
    expect(why(spoken, 'close')).toMatch(/closes by itself[\s\S]*In the way:[\s\S]*NOT COUNTERSIGNED/)
    expect(why(spoken, 'release')).toBe('No STOP is open in this job.')
    expect(why(spoken, 'note')).toBeUndefined()
    expect(why(spoken, 'locks')).toBeUndefined()
    const stop = left(new Walk().toBore().keys('stop', '1', 'smells of gas', 'RO'))
    expect(why(stop, 'dispose')).toMatch(/^Under a STOP dispose waits[\s\S]*STOP not released/)
    expect(why(stop, 'close')).toBeUndefined()
  })

  it('at work are a note, and where a decision is asked is told with the way to the job', () => {
    const work = left(new Walk().toBore())
    expect(wordsOf(work)).toEqual(['note'])
    expect(saysOf(work)).toMatch(/Asked next is \d+ .*a lead decides where the job asks for it/)
    expect(saysOf(work)).toContain('barover resume test')
  })

  it('of a closed job are a remark, and the ways to what is added to one', () => {
    const closed = new Walk().toVerdict().keys('1', 'KH', 'runs on to the next overhaul, none given', '')
    expect(closed.state.closed).toBe('MONITOR')
    expect(wordsOf(closed)).toEqual(['remark'])
    expect(saysOf(closed)).toMatch(/barover adopt test[\s\S]*barover doubt test/)
  })
})
