// Tests over time: what is read at the end is said of one start and one stand, so whatever becomes of the start, stand and end
// come again; and a gate that asks whether every finding is decided.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stands } from '../../../src/core/job/state.ts'
import { kindsDefs, PROVED_EMPTY, tiedDefs } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { changed, takenEntry, takenIn } from '../../helpers/taken-in.ts'
import { violations } from './invariants.ts'
import { KINDS_LINES, LINES, momentOf, perform, scheduleOf } from './schedules.ts'

const defs = tiedDefs()
const TO_START = ['RO', 'TC-401-1', 'NO START', 'ML', '1', '1', '1.0']
const started = (more = {}) => new Walk(tiedDefs(more)).keys(...TO_START)
const stood = (walk: Walk) => walk.keys('ALL SHUT IN').wait(15).keys('NO RISE', 'ML')
const ended = () => stood(started()).keys('1.4')
const off = () => ended().keys('1')

function at({ prompt }: Walk): string {
  if (prompt.kind === 'evidence') return `${prompt.gate.id}.${prompt.item.key}`
  if (prompt.kind === 'clear') return `clear ${prompt.gate.id}`
  return 'step' in prompt ? prompt.step.id : prompt.kind
}
const seqOf = (walk: Walk, step: string) =>
  Object.values(walk.state.readings)
    .flat()
    .find((r) => r.step === step && r.correctedBy === null)?.seq ?? -1
const correct = (walk: Walk, step: string, typed: string) =>
  walk.bring({ do: 'correct', of: seqOf(walk, step), typed, why: 'misread' })
const doubt = (walk: Walk) => {
  const instrument = walk.state.seats.low_range ?? ''
  return walk.bring({ do: 'doubt-instrument', instrument, why: 'dropped', says: 'the laboratory' })
}
/** By the record taken in: the stand calls people out first where it had been complete. */
const again = (walk: Walk) => {
  walk.keys('1', '1', '1.0')
  return stood(at(walk) === 'clear stood' ? walk.keys('ALL OUT') : walk).keys('1.4', '1')
}
const anew = (walk: Walk) => walk.entries.flatMap((e) => (e.type === 'branch.left' ? [e] : []))

describe('a test over time', () => {
  it('asks for stand and end again where the start was corrected, by name, and counts the stand from then', () => {
    const walk = ended()
    expect(at(walk)).toBe('gas_off')
    expect(correct(walk, 'first', '0.6')).toBeNull()
    expect(anew(walk)).toMatchObject([{ test: 'Leak of the pocket', voids: ['last'] }])
    expect(walk.state.gates.stood?.why).toBe('first was read after it had begun')
    expect(at(walk)).toBe('clear stood')
    walk.keys('ALL OUT')
    expect(at(walk)).toBe('stood.no_rise')
    expect(walk.key('NO RISE')).toBe('not-begun')
    walk.keys('ALL SHUT IN').wait(14)
    expect(walk.key('NO RISE')).toBe('too-soon')
    walk.wait(1).keys('NO RISE', 'ML')
    expect(at(walk)).toBe('last')
    walk.keys('1.0', '1')
    expect(walk.state.verdicts.judged).toMatchObject({ void: false })
  })

  it('begins a wait anew that runs while the start is corrected', () => {
    const walk = started().keys('ALL SHUT IN').wait(14)
    correct(walk, 'first', '0.6')
    expect(walk.state.gates.stood?.begun).toEqual({})
    walk.wait(2)
    expect(walk.key('NO RISE')).toBe('not-begun')
  })

  it('asks for the start, the stand and the end once the gauge of both was found unfit', () => {
    const walk = ended()
    doubt(walk)
    expect(at(walk)).toBe('first')
    walk.keys(rightLine(defs, walk.state, walk.talk), '1.0')
    expect(at(walk)).toBe('clear stood')
    stood(walk.keys('ALL OUT'))
    expect(at(walk)).toBe('last')
  })

  it('begins at its first step where the gas is off, whatever fell of it', () => {
    for (const change of [
      (walk: Walk) => correct(walk, 'first', '0.6'),
      (walk: Walk) => doubt(walk),
      (walk: Walk) => walk.bring({ do: 'reopen', step: 'gas_on', why: 'it was not on' }),
    ]) {
      const walk = off()
      expect(walk.state.verdicts.judged).toMatchObject({ void: false })
      change(walk)
      walk.keys('ALL OUT')
      expect(Object.keys(walk.state.done)).not.toContain('gas_off')
      walk.keys('NO START', 'ML')
      expect(at(walk)).toBe('gas_on')
      expect(walk.state.verdicts.judged?.void).toBe(true)
    }
  })

  it('begins at its first step, whole and by name, where a machine record was taken in, with the gas on or off', () => {
    for (const [begun, falls] of [
      [started, ['gas_on', 'first']],
      [ended, ['gas_on', 'first', 'last']],
      [off, ['gas_on', 'first', 'last', 'gas_off']],
    ] as const) {
      const walk = begun()
      walk.bring({ do: 'leave' })
      const after = takenIn(walk, changed(walk, { edition: '5' }))
      expect(takenEntry(after).tests).toEqual(['Leak of the pocket'])
      after.bring({ do: 'take-up' })
      after.keys('RO', 'TC-401-1', 'ALL OUT')
      expect(anew(after)).toMatchObject([{ test: 'Leak of the pocket' }])
      expect(anew(after)[0]?.voids).toEqual(expect.arrayContaining([...falls]))
      expect(Object.values(after.state.readings).flat().filter(stands)).toEqual([])
      after.keys('NO START', 'ML')
      expect(at(after)).toBe('gas_on')
      // And once only: what is done by the new record stands.
      again(after)
      expect(anew(after)).toHaveLength(1)
      expect(after.state.verdicts.judged?.void).toBe(false)
    }
  })

  it('lets the end be corrected on paper, with the gas on or off', () => {
    const walk = off()
    correct(walk, 'last', '1.3')
    expect(anew(walk)).toEqual([])
    expect(walk.state.verdicts.judged?.void).toBe(false)
  })

  it('does not have its start read before it has settled, by the clock', () => {
    const settling = new Walk(tiedDefs({ settles: '10 min' })).keys(...TO_START)
    expect(settling.said.at(-1)).toBe(
      'Not yet: 10 min left since "gas_on". Read it then, and key what it shows then.',
    )
    expect(settling.wait(9).key('1.0')).toBe('too-soon')
    settling.bring({ do: 'clock-moved', seconds: 3600 })
    settling.keys('ALL OUT', 'NO START', 'ML')
    expect(settling.key('1.0')).toBe('too-soon')
    settling.wait(10)
    expect(settling.key('1.0')).toBeNull()
  })

  it('holds over random schedules', { timeout: 120_000 }, () => {
    const starts = [started, ended, off].map((start) => () => start())
    const seen = new Set<string>()
    fc.assert(
      fc.property(fc.constantFrom(...starts), scheduleOf([...LINES, ...KINDS_LINES]), (start, actions) => {
        const walk = start()
        actions.forEach((a, n) => {
          perform(walk, a, [])
          const moment = momentOf(walk)
          expect(violations(moment, n === actions.length - 1)).toEqual([])
        })
        for (const e of walk.entries)
          seen.add(e.type === 'branch.left' ? `anew ${e.voids.length > 2}` : e.type)
      }),
      { numRuns: 150, seed: 20260317 },
    )
    expect([...seen]).toEqual(
      expect.arrayContaining([
        'anew true',
        'anew false',
        'reading.corrected',
        'instrument.doubted',
        'job.closed',
      ]),
    )
  })
})

describe('a wait that is watched from a value', () => {
  const empty = () => {
    const walk = new Walk(kindsDefs(PROVED_EMPTY)).keys('RO', 'TC-401-1', '1', '0', 'ALL SHUT IN')
    return walk.wait(15).keys('NO RISE', 'ML')
  }

  it('falls with it where its gauge was found unfit, and where it was keyed wrong', () => {
    for (const change of [
      (walk: Walk) => doubt(walk),
      (walk: Walk) =>
        walk.bring({ do: 'take-back-evidence', step: 'empty', item: 'space', why: 'it was the other gauge' }),
    ]) {
      const walk = empty()
      expect(walk.state.gates.empty?.status).toBe('open')
      change(walk)
      const { status, given, begun } = walk.state.gates.empty ?? {}
      expect({ status, given, begun }).toEqual({ status: 'closed', given: {}, begun: {} })
    }
  })
})

describe('a gate that asks whether every finding is decided', () => {
  const found = () => off().keys('2')

  it('asks a lead about each first, and takes the words once none is open or on hold', () => {
    const walk = found()
    expect(walk.prompt).toMatchObject({ kind: 'findings', gate: { id: 'go' }, open: [{ name: 'NC-1' }] })
    expect(walk.bring({ do: 'evidence', step: 'go', item: 'decided', typed: 'ALL DECIDED' })).toBe(
      'not-asked',
    )
    walk.keys('1', '6', 'KH', 'not fit')
    expect(walk.prompt).toMatchObject({ kind: 'findings', open: [{ decided: { choice: 'hold' } }] })
    walk.keys('1', '1', 'KH', 'light')
    expect(at(walk)).toBe('go.decided')
    walk.keys('ALL DECIDED', 'ML')
    expect(at(walk)).toBe('run')
  })

  it('takes no word by radio for a decision before its lead has signed', () => {
    const walk = found().keys('sign on', 'ML')
    walk.keys('1', '1', 'radio', 'KH', 'run it', 'ML')
    expect(walk.prompt.kind).toBe('countersign')
    walk.keys('KH', '1')
    expect(at(walk)).toBe('go.decided')
  })

  it('shuts once something is found after it, or what was decided on is looked at anew', () => {
    const walk = off().keys('1', 'ALL DECIDED', 'ML', '')
    expect(at(walk)).toBe('on')
    walk.bring({ do: 'correct-finding', step: 'look', condition: 'scored', why: 'seen since' })
    expect(walk.state.gates.go?.why).toBe('no lead has decided on NC-1, so that it can go on')
    expect(at(walk)).toBe('clear go')
    walk.keys('ALL OUT')
    expect(walk.prompt.kind).toBe('findings')
  })

  it('asks a lead anew once a machine record was taken in, whatever was decided and said before', () => {
    const walk = found().keys('1', '1', 'KH', 'light', 'ALL DECIDED', 'ML', 'leave')
    expect(walk.state.gates.go?.struck.map(({ item }) => item)).toContain('decided')
    const after = takenIn(walk, changed(walk, { edition: '5' }), { person: 'PB' })
    expect(takenEntry(after)).toMatchObject({ undecided: ['look'], voids: ['judged'] })
    after.bring({ do: 'take-up' })
    again(after.keys('RO', 'TC-401-1', 'ALL OUT', 'NO START', 'ML'))
    expect(after.prompt).toMatchObject({ kind: 'clear', gate: { id: 'go' } })
    after.keys('ALL OUT')
    expect(after.prompt).toMatchObject({ kind: 'findings', gate: { id: 'go' }, open: [{ step: 'look' }] })
  })

  it('asks about a verdict too that its procedure has nobody decide on', () => {
    const walk = stood(started()).keys('14', '1', '1')
    expect(walk.prompt).toMatchObject({ kind: 'findings', open: [{ step: 'judged' }] })
    const before = walk.said.length
    walk.keys('1')
    expect(walk.said.slice(before).join(' ')).toContain('accept: NOT OPEN')
    walk.keys('rework', 'KH', 'lapped')
    expect(at(walk)).toBe('go.decided')
    expect(rightLine(defs, walk.state, walk.talk)).toBe('ALL DECIDED')
  })
})
