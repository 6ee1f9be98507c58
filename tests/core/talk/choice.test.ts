// What is keyed in a choice of jobs: a number, 0, help and make safe, drawn or in plain lines.
import { describe, expect, it } from 'vitest'
import { type Choice, hearChoice, wanted } from '../../../src/core/talk/choice.ts'

const first: Choice = {
  title: 'Barover',
  lines: [],
  options: ['Take up', 'Start', 'Practise', 'See'],
  zero: 'Leave',
  help: ['The number before a line.'],
}
const list: Choice = { ...first, options: [], zero: 'Back' }

describe('a choice', () => {
  it.each([
    ['1', { is: 'chosen', which: 0 }],
    [' 4 ', { is: 'chosen', which: 3 }],
    ['0', { is: 'left' }],
    ['leave', { is: 'left' }],
    ['safe', { is: 'safe' }],
    ['stop', { is: 'safe' }],
    ['help', { is: 'said', lines: ['The number before a line.'] }],
    ['?', { is: 'said', lines: ['The number before a line.'] }],
    ['5', { is: 'said', lines: ['Key a number, 1 to 4, or 0 to leave.'] }],
    ['', { is: 'said', lines: ['Key a number, 1 to 4, or 0 to leave.'] }],
    // Here it would end the program, and whoever keys it does not mean that.
    ['back', { is: 'said', lines: ['Key a number, 1 to 4, or 0 to leave.'] }],
  ])('takes %j as %j', (line, heard) => {
    expect(hearChoice(first, line)).toEqual(heard)
  })

  it('answers words with the number of what they speak of, and does nothing by them', () => {
    const told = {
      ...first,
      options: ['Take up', 'Start the example job', 'Practise the same job', 'See a finished job'],
    }
    expect(hearChoice(told, 'how do I start practice?')).toEqual({
      is: 'said',
      lines: ['Key 3: Practise the same job'],
    })
    expect(hearChoice(told, 'example')).toEqual({ is: 'said', lines: ['Key 2: Start the example job'] })
    expect(hearChoice(told, 'how much is it')).toEqual({
      is: 'said',
      lines: ['Key a number, 1 to 4, or 0 to leave.'],
    })
  })

  it('goes back from a list, also from an empty one, and says so', () => {
    expect(hearChoice(list, 'back')).toEqual({ is: 'left' })
    expect(hearChoice(list, '1')).toEqual({ is: 'said', lines: ['Key 0 to go back.'] })
    expect(wanted({ ...list, options: ['one'] })).toBe('Key 1, or 0 to go back.')
  })
})
