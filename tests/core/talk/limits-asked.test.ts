// How far a part may go, asked without a name: the limits that this job judges by, each with its source, and no others first.
import { describe, expect, it } from 'vitest'
import { NOTHING_FOUND } from '../../../src/core/talk/answer-asked.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

function atBore(): Walk {
  return new Walk().toBore()
}
const answer = (walk: Walk, line: string) =>
  hear(walk.engine.defs, walk.state, walk.talk, line).say.join('\n')

describe('a question for a limit', () => {
  it.each([
    'how much wear is allowed',
    'what is the limit',
    'how worn can the bore get',
    'how worn',
    'too much',
    'what is the maximum?',
    'is the bore worn too far',
    'how much is too much',
  ])('%s: all four of the bore, each with its source', (line) => {
    const said = answer(atBore(), line)
    expect(said).toContain('This job judges by these limits:')
    expect(said).toMatch(/ {2}out of round: at most .*Source: Bloch and Hoefner 1996, p\. 259 \(fall-back\)/)
    expect(said).toMatch(/ {2}taper: at most .*Source: /)
    expect(said).toMatch(/ {2}spread of all: at most .*Source: /)
    expect(said).toMatch(/ {2}largest: at most 9\.530 in.*Source: Machine book/)
    expect(said).toContain('the maker’s manual comes first')
    expect(said).not.toContain('Weight wears the bottom')
  })

  it('that names one gets that one, and is told where this job does not judge it', () => {
    expect(answer(atBore(), 'how much taper is allowed')).toMatch(
      /taper: at most .*, beyond it REWORK\. Source/,
    )
    expect(answer(atBore(), 'limit largest?')).toMatch(
      /largest: at most 9\.530 in, beyond it REPLACE\. Source/,
    )
    expect(answer(atBore(), 'how much taper is allowed')).not.toContain('not judged in this job')
    expect(answer(atBore(), 'what gap is too much')).toContain('ring end gap (not judged in this job)')
  })

  it('at a gas reading gets the limit of that very line', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    expect(answer(walk, 'what is the limit')).toMatch(
      /The limit of this line:\n {2}oxygen where people breathe/,
    )
    expect(answer(walk, 'limits')).toMatch(/The limit of this line:\n {2}oxygen where people breathe/)
  })

  it('is none where it asks how far to go or how many', () => {
    expect(answer(atBore(), 'how far do I put it in')).not.toContain('This job judges')
    expect(answer(atBore(), 'how many')).not.toContain('This job judges')
    expect(answer(atBore(), 'where is the limit of the moon')).toBe(NOTHING_FOUND)
  })

  it('has the sizes of the cylinder and of the standard beside', () => {
    expect(answer(atBore(), 'what size is the counterbore?')).toContain('Counterbore: 9.750 in')
    expect(answer(atBore(), 'how big is the counterbore')).toContain('Counterbore: 9.750 in')
    expect(answer(atBore(), 'what is the nominal bore')).toContain('Nominal bore: 9.500 in')
    expect(answer(atBore(), 'what size is the setting standard?')).toContain('ring R-95: 9.5000 in')
  })
})
