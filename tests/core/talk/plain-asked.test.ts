// Questions of somebody who sits before it for the first time are told from the job, its crew and its record.
import { describe, expect, it } from 'vitest'
import { hearChoice } from '../../../src/core/talk/choice.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { Walk } from '../../helpers/example.ts'

const said = (walk: Walk, line: string) =>
  hear(walk.engine.defs, walk.state, walk.talk, line, walk.now).say.join('\n')

describe('a first question', () => {
  it.each([
    ['what is RO', /^RO, from the crew file: R\. Oduya, mechanic/],
    ['what is the PIN of KH', /invented: its PINs stand in the comment at the head of crew\.yaml/],
    ['where do I find the example PINs', /at the head of crew\.yaml, beside the machine record of TC-401-1/],
    ['what is a pin?', /4 to 12 figures by which somebody signs/],
    ['do I need a permit?', /gives out no permit/],
    ['can I witness myself?', /^No: a witness is somebody else[\s\S]*Hold point 2: Somebody who did none/],
    ['which machine is this job for?', /is for TC-401-1: TC-401 throw 1/],
    ['where do i find the lock number', /On the lock itself/],
    ['do I have to do all of it again', /only what rests on what was wrong/],
    ['how do I measure out of round', /different directions at one place[\s\S]*By hand: at one station/],
    [
      'is the crank locked now',
      /BLOCKED BOTH WAYS, keyed \d\d:\d\d by RO; it stands\.[\s\S]*look at the block/,
    ],
  ])('%j is answered, and takes nothing', (line, answer) => {
    const walk = new Walk().toBore()
    expect(said(walk, line)).toMatch(answer)
    expect(hear(walk.engine.defs, walk.state, walk.talk, line, walk.now).input).toBeNull()
  })

  it('of who is in tells what the record lets one think, and never that nobody is', () => {
    expect(said(new Walk().toGate(), 'who is in?')).toMatch(
      /cannot see who is in[\s\S]*no hold point is complete now\./,
    )
    const walk = new Walk().toBore()
    expect(said(walk, 'is anybody inside?')).toMatch(
      /Signed on: RO\.\nHold point 2 is complete: people may be in/,
    )
    walk.keys('stop', '4', 'V-12 was opened', 'ML')
    expect(said(walk, 'who is in?')).toMatch(/has fallen and nobody keyed ALL OUT: people may be in there\./)
  })

  it('of a block that fell says so', () => {
    const walk = new Walk().toBore().keys('stop')
    expect(said(walk, 'is the crank locked now')).not.toMatch(/it stands/)
  })

  it('of a PIN in a REAL job names no place where one stands', () => {
    const walk = new Walk().toBore()
    walk.state = { ...walk.state, record: 'REAL' }
    expect(said(walk, 'what is the PIN of KH')).toMatch(/^A PIN stands nowhere/)
  })

  it('at the choice of jobs is told what each is', () => {
    const choice = { title: 'Jobs', lines: [], options: ['a', 'b'], zero: 'Leave', help: ['told'] } as const
    for (const line of ['what is this', 'which one is for me', 'what now?'])
      expect(hearChoice(choice, line)).toEqual({ is: 'said', lines: ['told'] })
    expect(hearChoice(choice, '2')).toEqual({ is: 'chosen', which: 1 })
  })
})
