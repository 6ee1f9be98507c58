// Why STOP was called decides who may release it, or that nobody may. What was said against a release is never taken back.
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { openStop } from '../../../src/core/job/state.ts'
import { isReleasable, STOP_CAUSES, type StopCause } from '../../../src/core/job/stop-causes.ts'
import { Walk } from '../../helpers/example.ts'

const LASTING = ['moved', 'safeguard', 'wrong-place', 'hurt']
const release = (walk: Walk, person: string) =>
  walk.bring({ do: 'release-stop', person, answer: 'put right' })
const explained = (cause: number, caller: string, who = 'RO') =>
  new Walk().keys(who, 'TC-401-1', 'stop', String(cause), 'it was so', caller)

describe('the cause of a STOP', () => {
  it.each(STOP_CAUSES.map((c, i) => [i + 1, c.id] as const))('number %i, %s', (number, id) => {
    const walk = explained(number, 'ML')
    expect(walk.last).toMatchObject({
      type: 'stop.explained',
      cause: id,
      why: 'it was so',
      called_by: 'ML',
    })
    expect(release(walk, 'KH')).toBe(LASTING.includes(id) ? 'never-released' : null)
    expect(openStop(walk.state) === null).toBe(!LASTING.includes(id))
  })

  it('that is not in the list is never released', () => {
    expect(isReleasable('shrug' as StopCause)).toBe(false)
    for (const { id, releasable } of STOP_CAUSES) expect(isReleasable(id)).toBe(releasable)
  })

  it('takes three answers, each asked again until it is one', () => {
    const walk = new Walk().keys('RO', 'stop')
    for (const no of ['', 'gas', '0', '10', '1.5']) walk.key(no)
    walk.keys('1', '', '12', 'it smells', 'XX', 'R0')
    expect(walk.entries.filter((e) => e.type === 'stop.explained')).toEqual([])
    walk.key('ro')
    expect(walk.last).toMatchObject({ cause: 'gas', why: 'it smells', called_by: 'RO' })
  })

  it('once it is never released is put right only to one as strict', () => {
    const walk = explained(3, 'ML').keys('cause', '1', 'only a smell', '')
    expect(walk.said.join(' ')).toContain('only to one as strict')
    expect(openStop(walk.state)?.cause).toBe('moved')
    walk.keys('cause', '6', 'he is hurt', '')
    expect(openStop(walk.state)?.cause).toBe('hurt')
    expect(release(walk, 'KH')).toBe('never-released')
  })

  it('called by mistake is released by a lead only, with all proved again, and what was said on record', () => {
    const walk = new Walk().throughGate().keys('stop', '9', 'I leaned on the key', 'RO')
    expect(walk.last).toMatchObject({ cause: 'mistake', why: 'I leaned on the key', called_by: 'RO' })
    expect(walk.state.gates.hold_point?.status).not.toBe('open')
    expect(release(walk, 'ML')).toBe('not-lead')
    expect(release(walk, 'KH')).toBeNull()
    expect(walk.prompt).toMatchObject({ kind: 'clear' })
    const own = explained(9, 'KH', 'KH')
    expect(release(own, 'KH')).toBe('own-stop')
  })

  it('is never put right to a mistake once it was anything else', () => {
    for (const cause of [1, 2, 7, 8, 3]) {
      const walk = explained(cause, 'ML').keys('cause', '9', 'nothing was wrong', '')
      expect(walk.said.join(' ')).toContain('only to one as strict')
      expect(openStop(walk.state)?.cause).toBe(STOP_CAUSES[cause - 1]?.id)
    }
    const walk = explained(9, 'ML').keys('cause', '3', 'it did move', '')
    expect(release(walk, 'KH')).toBe('never-released')
  })

  it('says so at once to whoever keys release, and asks for no lead', () => {
    const walk = explained(3, 'ML').keys('release')
    expect(walk.talk.ask).toBeNull()
    expect(walk.said.at(-1)).toMatch(/never released: a lead closes this job/)
  })

  it('is answered by number as by word, and whoever may not release it is told at the initials', () => {
    for (const way of ['1', 'release']) {
      const walk = explained(9, 'ML').keys(way)
      expect(walk.talk.ask?.kind).toBe('release-who')
      expect([walk.key('ML'), walk.talk.ask?.kind]).toEqual(['not-lead', 'release-who'])
    }
    const own = explained(9, 'KH').keys('1')
    expect([own.key('KH'), own.talk.ask?.kind]).toEqual(['own-stop', 'release-who'])
    expect(explained(9, 'ML').keys('2').talk.ask?.kind).toBe('close-who')
    expect(explained(9, 'ML').keys('3').talk.ask?.kind).toBe('stop-cause')
    // Of one that is never released there is only one way.
    expect(explained(3, 'ML').keys('1').talk.ask?.kind).toBe('close-who')
    expect(explained(3, 'ML').keys('2').talk.ask).toBeNull()
  })

  it('put right to one that is never released holds from then on', () => {
    const walk = explained(1, 'ML').keys('cause', '4', 'the lock hung open', '')
    expect(release(walk, 'PB')).toBe('never-released')
  })
})

describe('who may release', () => {
  it.each([
    // at the keyboard, caller, who releases, code
    ['RO', 'ML', 'KH', null],
    ['RO', 'KH', 'KH', 'own-stop'],
    ['RO', 'KH', 'PB', null],
    ['KH', 'RO', 'KH', 'own-stop'],
    ['KH', 'KH', 'KH', 'own-stop'],
    ['KH', 'KH', 'PB', null],
    ['KH', '?', 'KH', 'own-stop'],
    ['RO', '?', 'KH', null],
    ['RO', '', 'PB', null],
    ['RO', 'ML', 'ML', 'not-lead'],
    ['RO', 'ML', 'TS', 'not-lead'],
  ])('raised by %s, called by %j, released by %s', (keyboard, caller, person, code) => {
    expect(release(explained(8, caller, keyboard), person)).toBe(code)
  })

  it('is no lead who was on the job, or witnessed at its gate, when the caller is not known', () => {
    const onJob = new Walk().keys('KH', 'TC-401-1', 'leave')
    onJob.bring({ do: 'take-up' })
    onJob.keys('RO', 'stop', '8', 'a shout', '?')
    expect(release(onJob, 'KH')).toBe('own-stop')
    expect(release(onJob, 'PB')).toBeNull()
    const witness = new Walk().toGate()
    witness.keys('L-101', 'L-102', 'L-103', 'L-104', 'L-105', 'L-106', 'NO START', 'NO FLOW')
    witness.keys('BLOCKED BOTH WAYS', '1', 'METER ANSWERED', '20.9', '0', '0', '20.8', '0', '0', 'PB')
    witness.keys('stop', '8', 'a shout', '?')
    expect(release(witness, 'PB')).toBe('own-stop')
    expect(release(witness, 'KH')).toBeNull()
  })

  it('is nobody when it is known neither who raised nor who called it', () => {
    const walk = new Walk().keys('stop', '8', 'a shout', '?')
    for (const person of ['KH', 'PB']) expect(release(walk, person)).toBe('never-released')
    // Named afterwards it is no better: what was not known is not made known by whom it serves.
    walk.keys('cause', '8', 'a shout', 'KH')
    expect(release(walk, 'PB')).toBe('never-released')
    expect(release(new Walk().keys('stop', '8', 'a shout', 'KH'), 'PB')).toBeNull()
  })

  it('is never more people after the cause was put right', () => {
    const walk = explained(8, 'KH').keys('cause', '8', 'it was PB', 'PB')
    expect(release(walk, 'KH')).toBe('own-stop')
    expect(release(walk, 'PB')).toBe('own-stop')
    const unknown = explained(8, '?', 'KH').keys('cause', '8', 'it was RO', 'RO')
    expect(release(unknown, 'KH')).toBe('own-stop')
  })

  it('is still no lead who was on the job after a caller was named', () => {
    const walk = new Walk().toGate().keys('sign on', 'KH', 'stop', '8', 'a shout', '?')
    expect(release(walk, 'KH')).toBe('own-stop')
    walk.keys('cause', '8', 'it was ML', 'ML')
    expect(release(walk, 'KH')).toBe('own-stop')
    expect(release(walk, 'PB')).toBeNull()
  })
})

describe('a second STOP', () => {
  it('is an entry of its own, and each is explained before release', () => {
    const walk = explained(8, 'ML').keys('stop')
    expect(walk.entries.filter((e) => e.type === 'stop.raised')).toHaveLength(2)
    expect(release(walk, 'PB')).toBe('not-asked')
    expect(walk.prompt.kind).toBe('stop-cause')
    walk.keys('1', 'it smells', 'KH')
    expect(release(walk, 'KH')).toBe('own-stop')
    expect(release(walk, 'PB')).toBeNull()
    expect(openStop(walk.state)).toBeNull()
  })

  it('bars who raised or called either of them, not only the last', () => {
    const walk = explained(8, 'KH').keys('stop', '1', 'it smells', 'ML')
    expect(release(walk, 'KH')).toBe('own-stop')
    expect(release(walk, 'PB')).toBeNull()
  })

  it('said again before the first is explained is answered by "same" and who called it', () => {
    const walk = new Walk().keys('RO', 'stop', 'stop', 'same')
    expect(walk.last.type).toBe('stop.raised')
    walk.keys('2', 'a hiss', 'ML', 'same', 'KH')
    expect(walk.last).toMatchObject({ type: 'stop.explained', cause: 'pressure', called_by: 'KH' })
    expect(release(walk, 'KH')).toBe('own-stop')
  })

  it('that is never released makes all of them so, the first too', () => {
    for (const order of [
      ['8', '3'],
      ['3', '8'],
    ]) {
      const walk = new Walk().keys('RO', 'stop', order[0] ?? '', 'first', 'ML', 'stop', order[1] ?? '')
      walk.keys('second', 'ML')
      expect(release(walk, 'KH')).toBe('never-released')
    }
  })
})

describe('closing under STOP', () => {
  it('is signed by a lead in words, and ends the job in STOP', () => {
    const walk = explained(3, 'ML')
    const close = (person: string, first: string) => walk.bring({ do: 'close-stopped', person, first })
    expect(close('RO', 'look at it')).toBe('not-lead')
    expect(close('XX', 'look at it')).toBe('unknown-person')
    expect(close('KH', '1')).toBe('no-words')
    walk.keys('close', 'KH', 'find what turned the crank')
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'stop.stands', person: 'KH', first: 'find what turned the crank' },
      { type: 'job.closed', outcome: 'STOP' },
    ])
    expect(walk.prompt.kind).toBe('closed')
  })

  it('waits for the cause, and is nothing without a STOP', () => {
    const close = { do: 'close-stopped', person: 'KH', first: 'look at it' } as const
    expect(new Walk().keys('RO').bring(close)).toBe('not-asked')
    expect(new Walk().keys('RO', 'stop').bring(close)).toBe('not-asked')
  })
})

describe('an old journal', () => {
  it('that explained a STOP in words only is read, released as it was, and asked the cause when open', () => {
    const walk = new Walk().keys('RO', 'stop')
    const old = {
      type: 'stop.explained',
      why: 'a shout',
      seq: walk.state.seq + 1,
      at: walk.last.at,
      by: 'RO',
    }
    const read = readEntries([...walk.entries, old].map((e) => ({ ...e, prev: '00', hash: '00' })))
    expect(read.ok).toBe(true)
    walk.state = fold(walk.state, old as Entry)
    expect(walk.prompt.kind).toBe('stop-cause')
    expect(release(walk, 'KH')).toBe('not-asked')
    const freed = fold(walk.state, {
      ...{ type: 'stop.released', person: 'KH', answer: 'quiet', at: walk.last.at },
      seq: walk.state.seq + 1,
    } as Entry)
    expect(openStop(freed)).toBeNull()
  })
})

describe('the caller of a STOP that nobody raised who was signed on', () => {
  const called = () => {
    const walk = new Walk()
    walk.autoPin = false
    return walk.keys('stop', '9', 'I leaned on the key')
  }

  it('signs for it: another name does not let a lead lift their own', () => {
    const walk = called().keys('RO')
    expect(walk.talk.ask).toMatchObject({ kind: 'pin', person: 'RO' })
    expect(openStop(walk.state)?.cause).toBeNull()
    expect(walk.bring({ do: 'explain-stop', of: walk.state.stops[0]?.seq ?? 0, ...NAMED })).toBe('pin-needed')
    walk.keys('4071')
    expect(walk.last).toMatchObject({ type: 'stop.explained', called_by: 'RO', signed: 'pin' })
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: 'put right', proved: true })).toBeNull()
  })

  it('of an older log, by initials that nobody signed for, is as if nobody were named', () => {
    const walk = called()
    const [stop] = walk.state.stops
    const entry: Entry = {
      type: 'stop.explained',
      of: stop?.seq ?? 0,
      cause: 'mistake',
      why: 'it was so',
      called_by: 'RO',
      seq: walk.last.seq + 1,
      at: walk.last.at,
    }
    walk.state = fold(walk.state, entry)
    expect(walk.bring({ do: 'release-stop', person: 'KH', answer: 'put right', proved: true })).toBe(
      'never-released',
    )
  })
})

const NAMED = { cause: 'mistake', why: 'it was so', calledBy: 'RO' } as const
