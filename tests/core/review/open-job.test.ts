// What a review says of a job that is open: that people may be in, what lies behind it, and nothing of what is still to come.
import { describe, expect, it } from 'vitest'
import { leftOutRows } from '../../../src/core/review/left-out.ts'
import { Walk } from '../../helpers/example.ts'
import { only, reviewed } from '../../helpers/reviewed.ts'
import { gate, NO_START, readOne, smallDefs, tell } from '../../helpers/small-job.ts'

describe('people who may be in', () => {
  it('stand in the list and behind its number as soon as a hold point was complete, and not once it is closed', () => {
    const walk = new Walk().toVerdict()
    const open = only(reviewed(walk), 'open')
    expect(open.what).toMatch(/^NOT CLOSED, PEOPLE MAY BE IN at hold point 2: 17 of 19 steps done/)
    expect(open.sentences[1]).toMatch(
      /^PEOPLE MAY BE IN behind hold point 2 .*: it was complete at the last entry, and nobody keyed that they came out\./,
    )
    expect(open.sentences.join(' ')).toMatch(/ALL OUT is missing at hold point 2 /)
    const before = only(reviewed(new Walk().toGate()), 'open')
    expect([before.what, ...before.sentences].join(' ')).not.toMatch(/PEOPLE MAY BE IN|ALL OUT/)
    walk.keys('1', 'KH', 'read again, none given', '')
    expect(JSON.stringify(reviewed(walk).exceptions)).not.toMatch(/PEOPLE MAY BE IN/)
  })

  it('are told once for several hold points, with their numbers', () => {
    const walk = new Walk(
      smallDefs([
        gate('stopped', ['start'], [NO_START]),
        tell('inside', { exposes: ['start'] }),
        gate('aired', ['bad_air'], [NO_START]),
        tell('below', { exposes: ['bad_air'] }),
        tell('end'),
      ]),
    ).keys('RO', 'TC-401-1', 'NO START', '', 'NO START', '')
    walk.bring({ do: 'clock-moved', seconds: 400 })
    const inside = new Walk(walk.engine.defs).keys('RO', 'TC-401-1', 'NO START', '', 'NO START', '')
    expect(only(reviewed(inside), 'open').sentences[1]).toMatch(
      /^PEOPLE MAY BE IN behind hold points 1 and 3: they were complete at the last entry, /,
    )
    const { sentences } = only(reviewed(walk), 'open')
    expect(sentences.filter((one) => one.includes('ALL OUT is missing'))).toEqual([
      'ALL OUT is missing at 2 hold points, 1 and 3: nobody keyed that people are out. At the machine, by barover resume. Sign on, then ALL OUT at each.',
    ])
  })
})

describe('steps that their rule leaves out for want of an outcome', () => {
  const polish = tell('polish', { when: { rule: 'size > length("9.51 in")', unknown: 'skip' } })
  const lines = (walk: Walk) =>
    reviewed(walk)
      .exceptions.filter(({ kind, what }) => kind === 'missing' && what.startsWith('Left out'))
      .map(({ what, sentences }) => [what, ...sentences])
  const defs = smallDefs([readOne('size', { not_applicable: 'reason' }), polish, tell('wiped'), tell('end')])

  it('are none while they lie ahead: they are still to come', () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1')
    const review = reviewed(walk)
    expect(lines(walk)).toEqual([])
    expect(review.leftOut).toBe(0)
    expect(review.usual.join(' ')).not.toContain('left out')
    expect(leftOutRows(defs, walk.state).map(({ text }) => text)).not.toContain('  2  polish')
  })

  it('are told behind the work, by their rule in words and the step that told nothing', () => {
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', 'n/a', 'no room')
    expect(lines(walk)).toEqual([
      [
        'Left out, not known whether needed: 2 polish',
        'It is done only if step 1, size, asks for it.',
        'Not told: 1 size.',
      ],
    ])
  })
})
