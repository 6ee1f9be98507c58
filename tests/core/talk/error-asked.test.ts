// What a verdict is read by: measuring error and the share of a limit, asked in plain words; why so many locks; a station asked by its name;
// how a slip is undone. Nothing is taken by any of them.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { Walk } from '../../helpers/example.ts'

const heard = ({ engine, state, talk, now }: Walk, line: string) => {
  const { say, input } = hear(engine.defs, state, talk, line, now)
  expect(input).toBeNull()
  return say.join('\n')
}
const bore = () => new Walk().toBore()
const verdict = () => new Walk().toVerdict()

describe('of what a verdict is read by', () => {
  it.each([
    'what is measuring error',
    'mesuring error?',
    'how big is the error',
    'what is the uncertainty here?',
  ])('%j: the measuring error', (line) => {
    expect(heard(bore(), line)).toContain('How far a figure may lie from the truth')
    expect(heard(verdict(), line)).toContain('why error shows')
    expect(heard(bore(), line)).not.toContain('why error shows')
  })

  it.each([
    '70 % of what',
    '70% of what?',
    '75 percent of what',
    'what does 13 % used mean',
    'share of a limit',
  ])('%j: the share of a limit, and no figure is taken', (line) => {
    for (const walk of [bore(), verdict()])
      expect(heard(walk, line)).toContain('How much of the way to its limit a figure has gone')
  })

  it.each(['9.5033 in', '70 %'])('%j stays what is keyed', (line) => {
    const { engine, state, talk, now } = bore()
    expect(hear(engine.defs, state, talk, line, now).input).toMatchObject({ do: 'read', typed: line })
  })
})

describe('of locks', () => {
  it.each([
    'why two locks',
    'why so many locks',
    'why a lock on each',
    'why do we need six locks?',
    'why all these locks',
  ])('%j: each point is one of the record', (line) => {
    for (const walk of [bore(), verdict()])
      expect(heard(walk, line)).toMatch(
        /names 6 points, each with a lock of its own.*: breaker, barring, suction/,
      )
  })

  it('one point is still told by itself, and a verdict by its own', () => {
    expect(heard(bore(), 'why a lock on the suction valve')).not.toContain('names 6 points')
    expect(heard(verdict(), 'why is it so')).toContain('MONITOR, because')
  })
})

it('a station is told by its name, wherever the gauge stands', () => {
  expect(heard(bore(), 'how far in is centre')).toContain('CENTRE of ring travel: about 8.60 in')
  expect(heard(bore(), 'how far in is the crank end?')).toContain('CRANK END of ring travel: about 14.10 in')
  // Whoever asks how far to go in is told how far, and whether anybody may.
  expect(heard(bore(), 'how deep do I go in')).toMatch(
    /^HEAD END of ring travel: about 3\.10 in[\s\S]*old point 2/,
  )
  expect(heard(bore(), 'may I go in')).not.toContain('about 3.10 in')
  // A word of all of them names none.
  expect(heard(bore(), 'how far in from the end of ring travel')).toContain('HEAD END of ring travel')
})

it.each(['how do i undo', 'how do i undo that?', 'where can i undo the last one'])(
  '%j: back and correct',
  (line) => {
    expect(heard(bore(), line)).toMatch(/back goes to the last answer[\s\S]*correct/)
  },
)

it.each(['wher is crank end', 'wy the crank end'])('%j is heard as a question', (line) => {
  expect(heard(bore(), line)).toContain('crank end')
})
