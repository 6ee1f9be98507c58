// The hand-over tells what hangs by the record, and of what came off when and by whom.
import { describe, expect, it } from 'vitest'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { hanging, onLines } from '../../../src/core/job/locks-on.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, type Raw, smallDefs, tell } from '../../helpers/small-job.ts'

const OWN = { id: 'own', kind: 'numbers', of: 'personal_lock', per: 'person' }
const ON = { ...OWN, ask: 'The number of this person’s own lock on the lock box. No lock comes off.' }
const OFF = { ...OWN, ask: 'The number of this person’s own lock, taken off just now.' }
const TAG = { id: 'tag', kind: 'numbers', of: 'tag', per: 'once', ask: 'The tag on the piston.' }
const DRIVER = { id: 'gone', kind: 'words', ask: 'The lock of the driver off?', words: 'DRIVER LOCK OFF' }

const isolated = (more: Raw[] = []) => gate('isolated', ['start'], [LOCKS, ON, ...more])
const work = tell('work', { exposes: ['start'] })
const jobOf = (...steps: Raw[]) => new Walk(smallDefs(steps)).keys('RO', 'TC-401-1')
const lines = (walk: Walk) => handOverLines(walk.engine.defs, walk.state)

describe('the hand-over', () => {
  it('of a job that closes with its locks on says so, with when and by whom they were keyed', () => {
    const walk = jobOf(isolated(), work).keys('L-1', 'L-2', 'P-1', '')
    expect(walk.state.closed).toBe('NONE')
    expect(lines(walk).filter((one) => one.startsWith('Still on'))).toEqual([
      expect.stringMatching(
        /^Still on by the record: lock at main driver breaker, E-1: L-1, keyed 2026-03-14 06:2\d by RO$/,
      ),
      expect.stringMatching(/: L-2, keyed/),
      expect.stringMatching(/personal lock of RO: P-1, keyed/),
    ])
    expect(lines(walk).join('\n')).not.toMatch(/Came off|asked again after|evidence void/)
  })

  it('says a lock off by its number, also while the job goes on', () => {
    const walk = jobOf(isolated(), work, gate('back', ['fall'], [OFF]), tell('end')).keys(
      'L-1',
      'L-2',
      'P-1',
      '',
    )
    walk.keys('P-1')
    const off = lines(walk).filter((one) => one.startsWith('Came off'))
    expect(off).toEqual([
      expect.stringMatching(/^Came off: personal lock of RO: P-1, 2026-03-14 06:2\d by RO, at 3 back$/),
    ])
    expect(lines(walk)).toContain('lock at main driver breaker, E-1: L-1')
    expect(lines(walk).filter((one) => one.includes('P-1'))).toHaveLength(1)
  })

  it('takes a lock that was hung again as on', () => {
    const again = gate('once_more', ['bad_air'], [ON])
    const walk = jobOf(isolated(), work, gate('back', ['fall'], [OFF]), again, tell('end'))
    walk.keys('L-1', 'L-2', 'P-1', '', 'P-1', 'P-1', '')
    expect(lines(walk).filter((one) => one.includes('P-1'))).toEqual([expect.stringMatching(/^Still on/)])
  })

  it('says the locks off with the driver’s once the job has gone to its end, but no tag and none keyed since', () => {
    const steps = [isolated([TAG]), work, gate('run', ['fall'], [DRIVER]), tell('end', { exposes: ['fall'] })]
    const walk = jobOf(...steps).keys('L-1', 'L-2', 'P-1', 'T-9', '', 'DRIVER LOCK OFF')
    expect(lines(walk)).toContain('lock at main driver breaker, E-1: L-1')
    walk.keys('')
    expect(walk.state.closed).toBe('NONE')
    const all = lines(walk)
    expect(all.filter((one) => one.startsWith('Still on'))).toEqual([expect.stringMatching(/tag: T-9/)])
    expect(all.find((one) => one.startsWith('Came off'))).toMatch(
      /^Came off by 2026-03-14 06:2\d by RO, who keyed DRIVER LOCK OFF at 3 run: .*L-1; .*L-2; .*P-1$/,
    )
  })

  it('under a STOP that ends the job counts every lock as on', () => {
    const steps = [isolated(), work, gate('run', ['fall'], [DRIVER]), tell('end', { exposes: ['fall'] })]
    const walk = jobOf(...steps).keys('L-1', 'L-2', 'P-1', '', 'DRIVER LOCK OFF')
    walk.keys('stop', '8', 'a knock', 'ML', 'close', 'KH', 'nobody starts it')
    expect(walk.state.closed).toBe('STOP')
    expect(lines(walk).filter((one) => one.startsWith('Still on'))).toHaveLength(3)
  })

  describe('a number that stood when the hold point fell', () => {
    const D = smallDefs([isolated(), work, tell('end', { exposes: ['start'] })])
    const on = (walk: Walk) =>
      onLines(D, hanging(D, walk.state)).flatMap(
        (one) => /: (L-\d+), keyed .*06:\d\d by/.exec(one)?.[1] ?? [],
      )
    const fallen = () => {
      const walk = new Walk(D).keys('RO', 'TC-401-1', 'L-1', 'L-2', 'P-1')
      walk.bring({ do: 'leave' })
      walk.bring({ do: 'take-up' })
      return walk.keys('RO', 'TC-401-1', 'ALL OUT')
    }
    const back = (walk: Walk) => {
      expect(walk.bring({ do: 'ask-again', step: 'isolated' })).toBeNull()
      return walk
    }

    it('is on, whatever was keyed in its place since and taken back again', () => {
      const other = fallen().keys('L-9', '3', 'ML took L-1 home')
      expect(on(other)).toEqual(['L-1', 'L-2', 'L-9'])
      expect(on(back(other.copy()))).toEqual(['L-1', 'L-2'])
      expect(on(back(fallen().keys('L-1')))).toEqual(['L-1', 'L-2'])
      // The hold point that opens again forgets what fell, and not what hangs.
      const open = other.keys('L-2', 'P-1')
      expect(open.state.gates.isolated?.status).toBe('open')
      expect(on(open)).toEqual(['L-1', 'L-9', 'L-2'])
      expect(makeSafeLines(D, open.state).join()).toMatch(/ {2}L-9 {2}.* {2}L-1 {2}/)
      expect(handOverLines(D, open.state).join()).toMatch(/: L-9\b.*: L-1, evidence void/)
    })

    it('is no other than the one keyed after it where it was read wrong', () => {
      expect(on(fallen().keys('L-9', '4', 'L-9'))).toEqual(['L-2', 'L-9'])
    })
  })

  it('leaves out what was mistyped', () => {
    const walk = jobOf(isolated(), work).keys('L-7', 'back', 'yes', 'L-1', 'L-2', 'P-1', '')
    expect(lines(walk).join('\n')).not.toContain('L-7')
  })
})
