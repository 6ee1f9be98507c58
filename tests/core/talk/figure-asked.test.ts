// What a figure means: held against the limit of its line or of the gas that is named, never called good, and taken by nothing.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const said = (walk: Walk, line: string) => {
  const heard = hear(walk.engine.defs, walk.state, walk.talk, line, walk.now)
  expect([line, heard.input, heard.talk.ask, heard.refusal]).toEqual([line, null, null, undefined])
  return heard.say.join('\n')
}

const toGas = () => new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)

describe('a figure at a gas line', () => {
  it.each([
    'what does 18 mean',
    'what is 18 % oxygen?',
    'what if it reads 18',
    'is 18 dangerous',
    'what if the oxygen is 18',
  ])('%j where people breathe is out of its limit, and what is done then is told', (line) => {
    const text = said(toGas(), line)
    expect(text).toMatch(/^18 %vol, oxygen where people breathe: OUT OF ITS LIMIT, below 19\.5 %vol/)
    expect(text).toContain('Source: 29 CFR 1910.146(b)')
    expect(text).toContain('everybody comes out and stands clear')
  })

  it('that passes inside, and that nobody can breathe, says so', () => {
    const text = said(toGas().keys('20.9', '0', '0'), 'what does 18 mean')
    expect(text).toMatch(
      /^18 %vol, oxygen inside the opening: not out of its limit\.\nNobody can breathe that/,
    )
    expect(text).not.toContain('comes out')
    expect(text).not.toMatch(/\b(?:good|safe|fine)\b/)
  })

  it('of another gas than the line asks is held against that gas, at each place', () => {
    const text = said(toGas(), 'what does 12 %lel mean')
    expect(text).toMatch(/12 %LEL, flammables where people breathe: OUT/)
    expect(text).toMatch(/12 %LEL, flammables inside the opening: OUT/)
    expect(text).not.toContain('oxygen')
  })

  it('that stands on record is told from there', () => {
    const walk = toGas().keys('20.9', '0', '0', '18')
    expect(said(walk, 'what does 18 mean')).toMatch(
      /^On record, hold point 2, oxygen inside the opening: 18 %vol\.\nNobody can breathe that/,
    )
  })
})

describe('a figure elsewhere', () => {
  it('is a number of the list that lies open', () => {
    const walk = new Walk().toVerdict()
    expect(said(walk, 'what does 5 mean')).toMatch(
      /^In the list that is asked here, 5 is: concession\.\nTerms of the trade, concession/,
    )
    expect(said(walk, 'what does 6 mean')).toMatch(/6 is: hold: NOT OPEN, it was judged/)
  })

  it('that was read is told with its place', () => {
    expect(said(new Walk().toBore().keys('9.5033'), 'what does 9.5033 mean')).toMatch(
      /^On record: 7\.1 Bore, HEAD END of ring travel, TOP TO BOTTOM/,
    )
  })

  it('that is nowhere says so, and no limit is quoted that only has the number in its source', () => {
    const text = said(new Walk().toGate(), 'what does 18 mean')
    expect(text).toMatch(/^18 alone stands nowhere/)
    expect(said(new Walk().toGate(), 'why 18')).not.toContain('runout')
  })

  it('with its gas named is told anywhere', () => {
    expect(said(new Walk().toBore(), 'what does 18 percent oxygen mean')).toMatch(
      /^18 %vol, oxygen where people breathe: OUT OF ITS LIMIT/,
    )
  })
})
