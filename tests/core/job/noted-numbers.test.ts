// Numbers that are keyed again later in the job, and two people who each hang a lock of their own.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { kindsDefs, OWN_LOCK } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, type Raw, tell, WITNESS } from '../../helpers/small-job.ts'

const TAG: Raw = { id: 'tag', kind: 'numbers', ask: 'Tag.', of: 'tag', per: 'once' }
const given = (walk: Walk, id: string) => Object.keys(gateState(walk.state, id).given)

/** Two gates, the second with a number that the first has noted. */
const twice = (first: Raw, second: Raw) =>
  new Walk(
    kindsDefs([
      gate('g', ['start'], [first, WITNESS]),
      tell('in', { exposes: ['start'] }),
      gate('h', ['fall'], [second, WITNESS]),
      tell('under', { exposes: ['fall'] }),
    ]),
  ).keys('RO', 'TC-401-1')

describe('a number noted earlier', () => {
  const tagged = () =>
    twice({ ...TAG, notes: 'piston_tag' }, { ...TAG, id: 'tag_again', same_as: 'piston_tag' }).keys(
      'V-118',
      'ML',
      '',
    )

  it.each(['V-118', 'v118'])('is evidence where it is keyed again as %s', (typed) => {
    expect(given(tagged().keys(typed), 'h')).toEqual(['tag_again'])
  })

  it('is no evidence where another is keyed: that goes on record with the one of before, and the gate stays shut', () => {
    const walk = tagged().keys('V-181')
    expect(walk.last).toMatchObject({
      type: 'evidence.failed',
      item: 'tag_again',
      shown: 'V-181',
      unlike: 'piston_tag',
      why: expect.stringContaining('V-118 was noted earlier'),
    })
    expect(given(walk, 'h')).toEqual([])
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'tag_again' } })
  })

  it('falls only once a lead has released a STOP over it', () => {
    const walk = tagged().keys('stop', '8', 'a shout', '?', 'release', 'KH', 'nobody was hurt')
    expect(walk.keys('V-181').last.type).toBe('evidence.failed')
    walk.keys('stop', '8', 'two tags', '?', 'release', 'KH', 'the first was misread')
    expect(given(walk.keys('V-181'), 'h')).toEqual(['tag_again'])
  })

  it('is the last one noted, and nothing is held against what nobody noted', () => {
    const walk = tagged().keys('V-118')
    expect(walk.state.noted).toEqual({
      piston_tag: { shown: 'V-118', step: 'g', differs: false, takenBack: false },
    })
    const alone = twice(NO_START, { ...TAG, same_as: 'piston_tag' }).keys('NO START', 'ML', '', 'V-7')
    expect(given(alone, 'h')).toEqual(['tag'])
  })

  it('is one for each isolation point', () => {
    const walk = twice({ ...LOCKS, notes: 'lock' }, { ...LOCKS, id: 'again', same_as: 'lock' }).keys(
      ...['L-1', 'L-2', 'ML', '', 'L-1'],
    )
    expect(walk.keys('L-3').last).toMatchObject({ type: 'evidence.failed', unlike: 'lock.barring' })
    expect(given(walk.keys('L-2'), 'h')).toEqual(['again.breaker', 'again.barring'])
  })
})

describe('a lock for each of two at least', () => {
  const begun = () =>
    new Walk(
      kindsDefs([
        gate('g', ['start'], [{ ...OWN_LOCK, at_least: 2 }, WITNESS]),
        tell('in', { exposes: ['start'] }),
        tell('out', { exposes: ['start'] }),
      ]),
    ).keys('RO', 'TC-401-1', 'P-1')

  it('keeps the gate shut to one alone, whatever is keyed', () => {
    const walk = begun()
    for (const typed of ['P-2', 'ML', '', 'y']) expect(walk.key(typed)).toBe('alone')
    expect(given(walk, 'g')).toEqual(['own_lock.RO'])
    expect(walk.prompt.kind).toBe('evidence')
  })

  it('opens once the other is on the job with another lock, and is shut when one of them goes', () => {
    const walk = begun().keys('sign on', 'ML')
    expect(walk.prompt).toMatchObject({ item: { key: 'own_lock.ML', person: 'ML' } })
    expect(walk.key('P-1')).toBe('number-twice')
    walk.keys('P-2', 'KH')
    expect(gateState(walk.state, 'g').status).toBe('open')
    walk.keys('sign off', 'ML')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'people',
      why: 'one person alone is left on the job',
    })
    expect(walk.prompt.kind).toBe('clear')
  })
})
