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
    ['am I finished?', 'finished'],
    ['is it done yet?', 'finished'],
    ['is that all', 'finished'],
    ['what is left to do', 'finished'],
    ['did it take my reading', 'taken'],
    ['was my last figure saved?', 'taken'],
    ['what did I key last', 'taken'],
    ['how do I fix it', 'mend'],
    ['how do I fix sheet 11?', 'mend'],
    ['how do I take another gauge?', 'instrument'],
    ['how can I change the instrument', 'instrument'],
    ['can I use a different micrometer?', 'instrument'],
    ['I picked the wrong gauge', 'instrument'],
    ['I keyed the wrong lock, how do I fix it?', 'mend'],
    ['can I change the last reading?', 'mend'],
    ['how do I undo a mistake', 'mend'],
    ['I typed the wrong number?', 'mend'],
    ['how do I go back?', 'mend'],
    ['how do I start practice', 'practice'],
    ['where can I practise?', 'practice'],
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
    'how do I fix a leaking valve',
    'how do I correct the taper of the bore',
    'is the bore done for',
    'did the valve take gas',
    'can I change the liner',
    '9.5033',
  ])('%s is none', (line) => {
    expect(standingAsked(line)).toBeNull()
  })

  it('whether it is finished, what was taken and how a slip is put right: by what stands in the job', () => {
    const walk = new Walk().toGate().keys('L-101', 'L-102')
    const heard = (line: string) => hear(walk.engine.defs, walk.state, walk.talk, line, walk.now).say
    expect(heard('I keyed the wrong lock, how do I fix it?')[0]).toMatch(
      /^back takes back what was given last here: lock/,
    )
    expect(heard('how do I fix it')[1]).toMatch(/^The word correct lists readings, findings/)
    expect(heard('did it take my number?')).toEqual([
      expect.stringMatching(/^Taken last, and on record: 2 .*: L-102\.$/),
    ])
    walk.keys('note')
    expect(heard('ask how do I fix it').at(-1)).toMatch(/back leaves it first/)
    const read = new Walk().toBore().keys('9.5033')
    const answer = (line: string) => hear(read.engine.defs, read.state, read.talk, line, read.now).say
    expect(answer('did it take my reading?').join(' ')).toMatch(
      /on record: 7\.1 .*9\.5033 in.*Of this place 1 is taken; it is read again/,
    )
    read.keys('9.053')
    expect(answer('did it take my reading?')[0]).toMatch(/9\.053 waits, and counts for nothing/)
    expect(answer('am I finished?')[0]).toBe('Not yet: sheet 7 of 20 is asked, Bore.')
    read.keys('stop')
    expect(answer('how do I fix it').join()).toMatch(/STOP is open: nothing is changed/)
  })

  it('is answered at a prompt and within a question, and goes on no record', () => {
    const walk = new Walk().toBore()
    const { defs } = walk.engine
    const told = (about: 'all' | 'people' | 'lapse') => whereLines(defs, walk.state, walk.now, about)
    const heard = (line: string) => hear(defs, walk.state, walk.talk, line, walk.now)
    expect(heard('how far am I')).toMatchObject({ input: null, say: told('all') })
    expect(told('all').join('\n')).toMatch(/Sheet 7 of 20[\s\S]*Signed on: RO\./)
    expect(heard('who is signed on').say).toEqual(['Signed on: RO.'])
    expect(heard('what time does the gas lapse').say).toEqual([
      expect.stringMatching(/^Hold point 2: complete; gas test \d+ min old, lapses \d\d:\d\d\.$/),
    ])
    walk.keys('correct')
    expect(heard('who is signed on')).toMatchObject({ talk: walk.talk, input: null, say: ['Signed on: RO.'] })
    walk.keys('back', 'note')
    expect(heard('ask who is signed on').say).toEqual(['Signed on: RO.'])
    expect(heard('who is signed on').talk.ask).toMatchObject({ kind: 'word-meant', of: { kind: 'note' } })
  })

  it('tells that no gas test stands where none does', () => {
    const walk = new Walk().toGate()
    expect(whereLines(walk.engine.defs, walk.state, walk.now, 'lapse')).toEqual([
      'No gas test stands now, so none lapses.',
    ])
  })
})
