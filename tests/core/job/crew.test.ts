// Several people on one job: who comes on voids the gas test, who goes is gone, and the keyboard is handed over in the open.
import { describe, expect, it } from 'vitest'
import { gateState } from '../../../src/core/job/gate.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import { GATE_LINES, pinOf, Walk, WORDS_AGAIN } from '../../helpers/example.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const gate = (walk: Walk) => gateState(walk.state, 'hold_point')
const AGAIN = [...WORDS_AGAIN, '20.9', '0', '0', '20.8', '0', '0', 'ML']

describe('coming onto the job', () => {
  it('counts the person among those on it and leaves the keyboard where it is', () => {
    const walk = new Walk().toGate().keys('sign on', 'KH')
    expect(walk.last).toMatchObject({ type: 'person.came-on', person: 'KH', signed: 'pin', by: 'RO' })
    expect(walk.state).toMatchObject({ doer: 'RO', people: ['RO', 'KH'], everOn: ['RO', 'KH'] })
  })

  it('voids the gas test, what was said in words and the witness once given, calls everybody out, and leaves the locks', () => {
    const walk = new Walk().toBore().keys('9.5033', 'sign on', 'KH')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'people' })
    expect(walk.prompt.kind).toBe('clear')
    expect(Object.keys(gate(walk).given)).toHaveLength(6)
    walk.keys('ALL OUT', ...AGAIN)
    expect(walk.prompt.kind).toBe('read')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('voids the gas test and the words in mid-gate too', () => {
    const walk = new Walk().toGate().keys(...GATE_LINES.slice(0, 14), 'sign on', 'KH')
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'people',
      items: [
        ...['try_start', 'bleeds', 'block', 'bump'],
        ...['oxygen_breathing', 'flammable_breathing', 'h2s_breathing'],
      ],
    })
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'try_start' } })
  })

  it('is refused for a trainee, for who is on already, and without the PIN', () => {
    const walk = new Walk().toGate()
    expect(walk.keys('sign on').key('TS')).toBe('trainee')
    expect(walk.keys('sign on').key('RO')).toBe('already-on')
    expect(walk.bring({ do: 'come-on', person: 'KH', proved: false })).toBe('pin-needed')
    expect(walk.state.people).toEqual(['RO'])
    const practice = new Walk(undefined, 'PRACTICE').toGate().keys('sign on', 'TS')
    expect(practice.state.people).toEqual(['RO', 'TS'])
  })

  it('waits under STOP and until everybody is out', () => {
    const stopped = new Walk().toGate().keys('stop', 'a hiss', 'sign on')
    expect(stopped.talk.ask).toBe(null)
    expect(stopped.bring({ do: 'come-on', person: 'KH', proved: true })).toBe('stopped')
    const fallen = new Walk().toBore().wait(31).keys('', 'sign on')
    expect(fallen.prompt.kind).toBe('clear')
    expect(fallen.talk.ask).toBe(null)
  })
})

describe('signing off', () => {
  it('takes a person off the job, with their PIN, and not the one at the keyboard', () => {
    const walk = new Walk().toGate().keys('sign on', 'KH')
    expect(walk.bring({ do: 'sign-off', person: 'KH', proved: false })).toBe('pin-needed')
    expect(walk.keys('sign off').key('RO')).toBe('at-keyboard')
    expect(walk.keys('sign off').key('ML')).toBe('not-on')
    walk.keys('sign off', 'KH')
    expect(walk.last).toMatchObject({ type: 'person.signed-off', person: 'KH' })
    expect(walk.state).toMatchObject({ people: ['RO'], everOn: ['RO', 'KH'] })
  })

  it('is what leaving comes to: whoever takes the job up signs on anew', () => {
    const walk = new Walk().toGate().keys('sign on', 'KH', 'leave')
    expect(walk.state.people).toEqual([])
    walk.bring({ do: 'take-up' })
    walk.keys('ML')
    expect(walk.state).toMatchObject({ doer: 'ML', people: ['ML'], everOn: ['RO', 'KH', 'ML'] })
  })
})

describe('handing over', () => {
  it('is signed by both, in order, and puts the other one at the keyboard with every gate fallen', () => {
    const walk = new Walk().toBore().keys('9.5033')
    walk.autoPin = false
    walk.keys('hand over', pinOf('RO'), 'ML', pinOf('ML'))
    expect(walk.last).toMatchObject({
      type: 'job.handed-over',
      from: 'RO',
      to: 'ML',
      signedFrom: 'pin',
      signedTo: 'pin',
      by: 'RO',
    })
    expect(walk.state).toMatchObject({ doer: 'ML', people: ['ML'], everOn: ['RO', 'ML'] })
    expect(walk.prompt.kind).toBe('clear')
    walk.autoPin = true
    walk.keys('ALL OUT', ...GATE_LINES.filter((l) => l !== '1' && l !== 'ML'))
    expect(walk.key('ML')).toBe('self-witness')
    walk.keys('KH', '9.5034')
    expect(walk.last).toMatchObject({ type: 'reading.taken', by: 'ML' })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('in mid-gate leaves nothing of it standing', () => {
    const walk = new Walk().toGate().keys(...GATE_LINES.slice(0, 12), 'hand over', 'ML')
    expect(gate(walk).given).toEqual({})
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'locks.breaker' } })
  })

  it('changes nothing when it is left half-way', () => {
    for (const upTo of [1, 2, 3]) {
      const walk = new Walk().toBore()
      const { seq } = walk.state
      walk.autoPin = false
      // From the second PIN back goes to the question before it, which back leaves then.
      walk.keys(
        ...['hand over', pinOf('RO'), 'ML'].slice(0, upTo),
        ...(upTo === 3 ? ['back', 'back'] : ['back']),
      )
      expect(walk.talk.ask).toBe(null)
      expect(walk.state.seq).toBe(seq)
      expect(walk.prompt.kind).toBe('read')
    }
  })

  it('is refused to oneself, to a trainee, to nobody, and without either PIN', () => {
    const walk = new Walk().toBore().keys('hand over', 'RO')
    expect(walk.talk.ask?.kind).toBe('hand-over-to')
    walk.keys('TS', 'XX')
    expect(walk.talk.ask?.kind).toBe('hand-over-to')
    const bring = (from: string, fromProved: boolean, person: string, proved: boolean) =>
      walk.bring({ do: 'hand-over', from, fromProved, person, proved })
    expect(bring('RO', true, 'RO', true)).toBe('same-person')
    expect(bring('RO', true, 'TS', true)).toBe('trainee')
    expect(bring('RO', true, 'XX', true)).toBe('unknown-person')
    expect(bring('RO', true, 'ML', false)).toBe('pin-needed')
    expect(bring('RO', false, 'ML', true)).toBe('pin-needed')
    expect(bring('KH', true, 'ML', true)).toBe('not-asked')
    expect(walk.state.doer).toBe('RO')
  })

  it('counts wrong PINs of either by name and stays where it was', () => {
    const walk = new Walk().toBore()
    walk.autoPin = false
    walk.keys('hand over', '0000')
    expect(walk.last).toMatchObject({ type: 'pin.missed', person: 'RO' })
    walk.keys(pinOf('RO'), 'ML', '0000', pinOf('ML'))
    expect(walk.state).toMatchObject({ doer: 'ML' })
    expect(walk.state.pinMisses).toEqual({})
  })

  it('falls when the gas test lapses under it', () => {
    const walk = new Walk().toBore()
    walk.autoPin = false
    walk.keys('hand over', pinOf('RO')).wait(31)
    walk.keys('ML', 'ALL OUT')
    expect(walk.state.doer).toBe('RO')
  })

  it('tells what is done, next, locked, tested, doubted, found and judged, and never that gas is good', () => {
    const walk = new Walk().toBore().keys('9.60', 'sign on')
    const lines = handOverLines(walk.engine.defs, walk.state)
    expect(lines).toEqual([
      'Bore or liner inspection on TC-401-1, job test',
      'On the job: RO at the keyboard',
      'Done: 6 of 20 sheets, last 6 Set-check before',
      'Next: 7 Bore',
      'Hold point 2 Hold point before hands, tools or lamps go in: complete; all of it is asked again after this',
      ...walk.engine.defs.machine.site.isolation_points.map((p, i) => `lock at ${p.name}: L-10${i + 1}`),
      'Shown besides: NO START, NO FLOW, BLOCKED BOTH WAYS, METER ANSWERED, witness ML',
      'Gas test: oldest reading taken 06:22, would lapse 06:52; it ends with this hand-over',
      'STOP: none open',
      expect.stringMatching(/^Doubted and open: 9\.60 at 7 Bore, /),
    ])
    const judged = new Walk().toVerdict().keys('1', 'KH', 'read again after 4000 h')
    expect(handOverLines(judged.engine.defs, judged.state)).toContain(
      '19 What is to be done, a lead decides: accept by KH, read again after 4000 h',
    )
    judged.keys('stop', '8', 'a hiss', 'ML')
    expect(handOverLines(judged.engine.defs, judged.state)).toContain('STOP OPEN: a hiss')
    const said = [...lines, ...handOverLines(judged.engine.defs, judged.state)].join(' ')
    expect(said).not.toMatch(/\b(good|safe|fine|clear)\b/i)
    // Locks hang on whatever has become of the evidence.
    expect(said).toContain(': L-101')
    expect(
      handOverLines(judged.engine.defs, judged.state).filter((l) => /evidence void/.test(l)),
    ).toHaveLength(6)
  })
})
