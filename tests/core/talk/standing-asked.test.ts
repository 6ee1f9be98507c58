// Questions in plain words about how the job stands are answered from the job; what only sounds like one is not.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { standingAsked } from '../../../src/core/talk/standing-asked.ts'
import { whereLines } from '../../../src/core/talk/where.ts'
import { Walk } from '../../helpers/example.ts'

describe('a question about how the job stands', () => {
  it.each([
    ['how long is this', 'all'],
    ['How long is this?', 'all'],
    ['how long does it take', 'all'],
    ['how long will the job take?', 'all'],
    ['how far am I', 'all'],
    ['how far are we now', 'all'],
    ['how much is left', 'all'],
    ['how many sheets are left', 'all'],
    ['how much longer does this take', 'all'],
    ['when are we done?', 'all'],
    ['who is signed on', 'people'],
    ['who\u2019s on the job?', 'people'],
    ['who is here', 'people'],
    ['what time does the gas lapse', 'lapse'],
    ['when does the gas test run out?', 'lapse'],
    ['how long is the gas good', 'lapse'],
    ['how old is the gas test', 'lapse'],
    ['ask when does the gas test expire', 'lapse'],
  ])('%s is one: %s', (line, about) => {
    expect(standingAsked(line)).toBe(about)
  })

  it.each([
    'how long is the rod',
    'how far from the end is the centre',
    'how much taper is allowed',
    'when is the bore renewed',
    'who releases a stop',
    'what time',
    'how long',
    'what does the gas meter need',
    '9.5033',
  ])('%s is none', (line) => {
    expect(standingAsked(line)).toBeNull()
  })

  it('is answered at a prompt and within a question, and goes on no record', () => {
    const walk = new Walk().toBore()
    const { defs } = walk.engine
    const told = (about: 'all' | 'people' | 'lapse') => whereLines(defs, walk.state, walk.now, about)
    const heard = (line: string) => hear(defs, walk.state, walk.talk, line, walk.now)
    expect(heard('how far am I')).toMatchObject({ input: null, say: told('all') })
    expect(told('all').join('\n')).toMatch(/Sheet 7 of 19[\s\S]*Signed on: RO\./)
    expect(heard('who is signed on').say).toEqual(['Signed on: RO.'])
    expect(heard('what time does the gas lapse').say).toEqual([
      expect.stringMatching(/^Hold point 2: complete; gas test \d+ min old, lapses \d\d:\d\d\.$/),
    ])
    walk.keys('correct')
    expect(heard('who is signed on')).toMatchObject({ talk: walk.talk, input: null, say: ['Signed on: RO.'] })
    walk.keys('back', 'note')
    expect(heard('ask who is signed on').say).toEqual(['Signed on: RO.'])
    expect(heard('who is signed on').input).toMatchObject({ do: 'note' })
  })

  it('tells that no gas test stands where none does', () => {
    const walk = new Walk().toGate()
    expect(whereLines(walk.engine.defs, walk.state, walk.now, 'lapse')).toEqual([
      'No gas test stands now, so none lapses.',
    ])
  })
})
