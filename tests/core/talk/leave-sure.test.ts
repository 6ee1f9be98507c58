// Leaving in the middle of the work: what has to be proved again is told before, and then it is left as asked.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'

/** Somebody at the keyboard: answers out of a file are asked nothing. */
function atKeys(walk: Walk): Walk {
  walk.state = { ...walk.state, scripted: false }
  return walk
}
const asked = ({ engine: { defs }, state, talk }: Walk) =>
  promptView(defs, state, talk, { width: 79, record: 'EXAMPLE', ascii: true }).ask.map(({ text }) => text)

describe('leave behind an open hold point', () => {
  it('tells first what falls, until when the gas would stand, and leaves at 1', () => {
    const walk = atKeys(new Walk().toBore().keys('9.5033')).keys('leave')
    expect(walk.state.left).toBe(false)
    expect(asked(walk)).toEqual([
      'Hold point 2 falls when you leave. On return all of it is proved again, its gas and its witness too. Whoever stays has its gas figures until 06:52.',
      'What was read and answered stays on record.',
      'Leave now? 1 or 2',
      '1  leave',
      '2  stay',
    ])
    walk.key('1')
    expect(walk.state.left).toBe(true)
    expect(walk.said.join('\n')).toContain('ON RETURN')
    // Nobody who leaves in the ordinary way is told to call for help.
    expect(walk.said.join('\n')).toMatch(/^IN TROUBLE ONLY\. FIRST OF ALL: come out/m)
    expect(walk.said.join('\n')).not.toMatch(/^FIRST OF ALL/m)
  })

  it.each(['leave', 'LEAVE', 'yes'])('leaves at %s too', (line) => {
    expect(atKeys(new Walk().toBore()).keys('leave', line).state.left).toBe(true)
  })

  it.each(['2', 'no', 'back'])('stays at %s, with nothing changed', (line) => {
    const walk = atKeys(new Walk().toBore())
    const entries = walk.entries.length
    walk.keys('leave', line)
    expect(walk.talk.ask).toBeNull()
    expect(walk.entries).toHaveLength(entries)
  })

  it('asks again at anything else, and STOP is STOP', () => {
    const walk = atKeys(new Walk().toBore()).keys('leave', '9.5033')
    expect(walk.talk.ask).toEqual({ kind: 'leave-sure' })
    expect(walk.said.at(-1)).toBe('Key 1 to leave, 2 to stay.')
    expect(walk.keys('stop').prompt.kind).toBe('stop-cause')
  })

  it('gives way to coming out, when the hold point falls under the question', () => {
    const walk = atKeys(new Walk().toBore()).keys('leave').wait(40)
    walk.bring({ do: 'tick' })
    expect(walk.prompt.kind).toBe('clear')
    expect(asked(walk).join(' ')).toContain('COME OUT')
    expect(asked(walk).join(' ')).not.toContain('Leave now?')
  })
})

it.each([
  ['before the hold point is complete', () => atKeys(new Walk().toGate().keys('L-101'))],
  ['out of a file', () => new Walk().toBore()],
])('%s it is left at once', (_, walk) => {
  expect(walk().keys('leave').state.left).toBe(true)
})
