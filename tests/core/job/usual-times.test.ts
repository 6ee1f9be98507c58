// About how much work is left: told by the kind of step, or by its own `takes`; less with every line that is shown and read.
import { describe, expect, it } from 'vitest'
import { minutesLeftAt, roughTime } from '../../../src/core/job/usual-times.ts'
import { whereLines } from '../../../src/core/talk/where.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, NO_START, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const left = ({ engine: { defs }, state }: Walk) =>
  defs.steps.map((placed) => minutesLeftAt(defs, state, placed))

describe('the work that is left', () => {
  it('is by kind where a step says nothing, and as it says where it does', () => {
    const defs = smallDefs([
      tell('brief'),
      gate('isolated', ['start'], [NO_START, WITNESS]),
      readOne('size', { repeats: { at_least: 2, at_most: 4, within: '0.01 in' }, exposes: ['start'] }),
      tell('long', { takes: '1 h' }),
    ])
    expect(left(new Walk(defs))).toEqual([2, 4, 2, 60])
  })

  it('is less with each line at a hold point, and nothing of a step that is done', () => {
    const defs = smallDefs([
      gate('isolated', ['start'], [NO_START, WITNESS]),
      tell('in', { exposes: ['start'] }),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1')
    expect(left(walk)).toEqual([4, 2])
    expect(left(walk.keys('NO START'))).toEqual([3, 2])
    expect(left(walk.keys('ML'))).toEqual([0, 2])
  })

  it('has a hold point again that fell, where a step to come stands behind it, and not where none does', () => {
    const behind = (exposes: readonly string[]) => {
      const defs = smallDefs([
        gate('isolated', ['start'], [NO_START, WITNESS]),
        tell('in', { exposes: ['start'] }),
        tell('after', exposes.length === 0 ? {} : { exposes }),
      ])
      const walk = new Walk(defs).keys('RO', 'TC-401-1', 'NO START', 'ML', '')
      expect(left(walk)).toEqual([0, 0, 2])
      walk.keys('stop', '9', 'I leaned on it', 'ML')
      return left(walk)
    }
    expect(behind(['start'])).toEqual([4, 0, 2])
    expect(behind([])).toEqual([0, 0, 2])
  })

  it('is told by where, as a rough time, and no more once the job is closed', () => {
    const defs = smallDefs([tell('brief'), tell('long', { takes: '90 min' })])
    const walk = new Walk(defs).keys('RO', 'TC-401-1')
    const where = () => whereLines(defs, walk.state, walk.now).join('\n')
    expect(where()).toContain('About 1 h 30 min of work left. Rough times: common practice, no source.')
    walk.keys('', '')
    expect(walk.state.closed).not.toBeNull()
    expect(where()).not.toContain('of work left')
  })

  it.each([
    [0.4, '5 min'],
    [12, '10 min'],
    [58, '1 h'],
    [66, '1 h'],
    [100, '1 h 45 min'],
    [239, '4 h'],
    [260, '4 h'],
    [700, '12 h'],
  ])('of %f minutes is said as %s', (minutes, said) => {
    expect(roughTime(minutes)).toBe(said)
  })
})
