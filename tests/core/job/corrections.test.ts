// What a correction voids, by name: verdict, disposition, gate evidence, later branch; and that it is said beforehand.

import { describe, expect, it } from 'vitest'
import type { Input } from '../../../src/core/job/input.ts'
import { standing } from '../../../src/core/job/state.ts'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { correctable, withListed } from '../../../src/core/talk/correct.ts'
import { BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, readOne, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const HE_V = 'bore.head_end.vertical'
/** The number under which the first thing of a kind stands in the list of what can be corrected, all of it on the screen. */
const which = (walk: Walk, kind: string, step?: string) => {
  const at = correctable(walk.engine.defs, walk.state).findIndex(
    (c) => c.kind === kind && (step === undefined || ('step' in c && c.step === step)),
  )
  return withListed(String(at + 1), 99)
}
const types = (walk: Walk, n: number) => walk.entries.slice(-n).map((e) => e.type)

describe('a corrected finding', () => {
  const correct = (walk: Walk, condition: string, note?: string, why = 'wrong line'): string | null =>
    walk.bring({
      do: 'correct-finding',
      step: 'strip',
      condition,
      why,
      ...(note === undefined ? {} : { note }),
    })

  it('adds, keeps the first, and voids verdict and disposition by name', () => {
    const walk = new Walk().toVerdict().keys('1', 'KH', 'read again, none given')
    expect(correct(walk, 'gone')).toBeNull()
    expect(walk.entries.find((e) => e.type === 'finding.corrected')).toMatchObject({
      was: 'present',
      condition: 'gone',
      voids: ['bore_judged', 'disposition'],
    })
    expect(walk.state.done.strip).toBe('gone')
    expect(walk.entries.some((e) => e.type === 'finding.observed' && e.condition === 'present')).toBe(true)
  })

  it('that leaves a branch voids its steps by name, and their readings count for nothing for good', () => {
    const walk = new Walk().toVerdict()
    correct(walk, 'gone')
    expect(types(walk, 3)).toEqual(['finding.corrected', 'branch.left', 'verdict.given'])
    expect(walk.entries.at(-2)).toMatchObject({ voids: ['strip_diameter'] })
    expect(boreRecord(walk.state.verdicts.bore_judged?.verdict)?.inputs.datum).toMatchObject({
      from: 'as-left record',
    })
    for (const axis of ['vertical', 'horizontal'])
      expect(standing(walk.state, `strip_diameter.strip.${axis}`)).toEqual([])
    expect(correct(walk, 'present')).toBeNull()
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { id: 'strip_diameter' } })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it.each([
    ['present', undefined, 'wrong line', 'no-change'],
    ['none', undefined, 'wrong line', 'unknown-condition'],
    ['unsure', undefined, 'wrong line', 'no-words'],
    ['unsure', '1', 'wrong line', 'no-words'],
    ['gone', undefined, '', 'no-words'],
  ])('to %j with note %j because %j is refused: %s', (condition, note, why, code) => {
    expect(correct(new Walk().toVerdict(), condition, note, why)).toBe(code)
  })

  it('is only of an observation that was made', () => {
    expect(correct(new Walk().toBore(), 'gone')).toBe('not-asked')
    const walk = new Walk().toVerdict()
    expect(walk.bring({ do: 'correct-finding', step: 'brief', condition: 'done', why: 'wrong' })).toBe(
      'not-asked',
    )
  })

  it('is asked in words, with what it voids said before', () => {
    const walk = new Walk().toVerdict().keys('correct', which(new Walk().toVerdict(), 'finding', 'strip'))
    expect(walk.talk.ask).toMatchObject({ kind: 'finding-why', step: 'strip' })
    expect(walk.warned).toEqual([
      'This would make void: Bore judged.',
      'If it is not needed then, void too, with its readings: Unswept strip, head end.',
    ])
    walk.keys('looked again')
    expect(walk.warned).toEqual([])
    walk.keys('4', 'rust all round')
    expect(walk.entries.find((e) => e.type === 'finding.corrected')).toMatchObject({
      condition: 'unsure',
      note: 'rust all round',
      why: 'looked again',
    })
  })
})

describe('n/a taken back', () => {
  const withNa = () => new Walk().toBore().keys('n/a', 'a lamp is in the way', ...BORE_LINES.slice(2, 6))

  it('asks the reading again, with the reason on record', () => {
    const walk = withNa()
    walk.keys('correct', which(walk, 'not-applicable'))
    expect(walk.said.at(-1)).toBe('Its reading is asked again.')
    walk.keys('lamp taken out')
    expect(walk.last).toMatchObject({ type: 'not-applicable.taken-back', place: HE_V, why: 'lamp taken out' })
    expect(walk.prompt).toMatchObject({ kind: 'read', place: { key: HE_V } })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('needs words, and an n/a to take back', () => {
    const walk = withNa()
    expect(walk.bring({ do: 'take-back-not-applicable', place: HE_V, why: '' })).toBe('no-words')
    expect(walk.bring({ do: 'take-back-not-applicable', place: 'bore.centre.vertical', why: 'so' })).toBe(
      'not-asked',
    )
  })
})

describe('n/a where the step says who', () => {
  const defs = (rule: string) =>
    exampleDefs({
      procedure: (t) => t.replace('of: bore diameter\n', `of: bore diameter\n    not_applicable: ${rule}\n`),
    })

  it('never is refused, at once and by the engine', () => {
    const walk = new Walk(defs('never')).toBore().keys('n/a')
    expect(walk.talk.ask).toBeNull()
    expect(walk.bring({ do: 'not-applicable', place: HE_V, why: 'a lamp is there' })).toBe('never')
    expect(walk.state.notApplicable).toEqual({})
  })

  it.each([
    ['ML', 'not-lead'],
    ['RO', 'not-lead'],
    ['TS', 'not-lead'],
    ['', 'unknown-person'],
  ])('lead is not %j', (person, code) => {
    const walk = new Walk(defs('lead')).toBore()
    const input: Input = { do: 'not-applicable', place: HE_V, why: 'a lamp is there', person }
    expect(walk.bring(input)).toBe(code)
    expect(walk.state.notApplicable).toEqual({})
  })

  it('lead is a lead who is not doing the work, asked after the reason', () => {
    const walk = new Walk(defs('lead')).toBore()
    walk.state = { ...walk.state, doer: 'KH' }
    expect(walk.bring({ do: 'not-applicable', place: HE_V, why: 'a lamp is there', person: 'KH' })).toBe(
      'own-work',
    )
    expect(walk.bring({ do: 'not-applicable', place: HE_V, why: 'a lamp is there', person: 'ML' })).toBe(
      'not-lead',
    )
    walk.keys('n/a', 'a lamp is there', 'PB')
    expect(walk.last).toMatchObject({ type: 'reading.not-applicable', person: 'PB', signed: 'pin' })
  })
})

describe('gate evidence found wrong', () => {
  it('shuts an open gate with what hangs on it, and calls people out', () => {
    const walk = new Walk().toBore()
    expect(
      walk.bring({ do: 'take-back-evidence', step: 'hold_point', item: 'oxygen_inside', why: 'misread' }),
    ).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'gate.closed',
      cause: 'corrected',
      why: expect.stringMatching(/misread$/),
    })
    expect(walk.last).toMatchObject({
      items: [
        'oxygen_breathing',
        'flammable_breathing',
        'h2s_breathing',
        'oxygen_inside',
        'flammable_inside',
        'h2s_inside',
        'witness',
      ],
    })
    expect(walk.prompt.kind).toBe('clear')
  })

  it('voids with a lock what was tried under it, and the witness who vouched for it', () => {
    const walk = new Walk().toBore()
    walk.bring({ do: 'take-back-evidence', step: 'hold_point', item: 'locks.breaker', why: 'other lock' })
    expect(walk.last.type).toBe('gate.closed')
    expect(walk.last).toMatchObject({
      items: [
        'locks.breaker',
        ...['try_start', 'bleeds', 'block', 'bump'],
        ...['oxygen', 'flammable', 'h2s'].flatMap((gas) => [`${gas}_breathing`]),
        ...['oxygen', 'flammable', 'h2s'].flatMap((gas) => [`${gas}_inside`]),
        'witness',
      ],
    })
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('says before what falls, and needs words', () => {
    const walk = new Walk(
      smallDefs([
        gate('isolated', ['start'], [LOCKS, NO_START, WITNESS]),
        tell('in', { exposes: ['start'] }),
      ]),
    )
    walk.keys('RO', 'TC-401-1', 'L-1', 'L-2', 'NO START', 'ML', 'correct', '2')
    expect(walk.warned).toEqual([
      'The hold point would fall, and everybody comes out. This would make void what was keyed for: try start; witness.',
    ])
    const { seq } = walk.state
    walk.key('2')
    expect(walk.state.seq).toBe(seq)
    const item = 'try_start'
    expect(walk.bring({ do: 'take-back-evidence', step: 'isolated', item, why: '2' })).toBe('no-words')
    walk.keys('it was the wrong panel')
    expect(walk.last).toMatchObject({ type: 'gate.closed', items: ['try_start', 'witness'] })
  })

  it('is only of what was shown', () => {
    const walk = new Walk().toGate()
    const item = 'locks.breaker'
    expect(walk.bring({ do: 'take-back-evidence', step: 'hold_point', item, why: 'so' })).toBe('not-given')
    expect(walk.bring({ do: 'take-back-evidence', step: 'brief', item, why: 'so' })).toBe('not-asked')
  })
})

describe('a later branch', () => {
  const SPLIT = [
    readOne('size', { repeats: { at_least: 1, at_most: 1, within: '1 in' } }),
    tell('polish', { when: { rule: 'size > length("9.51 in")', unknown: 'hold' } }),
    { ...readOne('after'), when: { rule: 'size > length("9.51 in")', unknown: 'hold' } },
    tell('end'),
  ]

  it('falls by name when a correction of the reading leaves it', () => {
    const walk = new Walk(smallDefs(SPLIT)).keys('RO', 'TC-401-1', '1', '9.5200', '', '9.5150')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'end' } })
    const { size } = Object.fromEntries(
      Object.values(walk.state.readings)
        .flat()
        .map((r) => [r.step, r.seq]),
    )
    walk.bring({ do: 'correct', of: size ?? -1, typed: '9.50', why: 'misread' })
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'reading.corrected', voids: ['polish'] },
      { type: 'branch.left', voids: ['after'] },
    ])
    expect(walk.state.done.polish).toBeUndefined()
    expect(standing(walk.state, 'after.here')).toEqual([])
    expect(violations(momentOf(walk))).toEqual([])
  })
})
