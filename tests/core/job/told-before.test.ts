// What is told before an answer is what falls by it: by `back` and `correct`, at every hold point, for every line of small jobs.

import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/core/job/entries.ts'
import { rehearsed } from '../../../src/core/job/rehearse.ts'
import type { Ask } from '../../../src/core/talk/ask.ts'
import { wouldVoidLines } from '../../../src/core/talk/would-void.ts'
import { tiedDefs } from '../../helpers/all-kinds.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, OXYGEN, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const BUMP = { id: 'bump', kind: 'words', ask: 'Try the meter.', words: 'METER ANSWERED', seat: 'meter' }
const SHORT = { ...NO_START, life: '5 min' }
const TWO = smallDefs([
  gate('isolated', ['start'], [LOCKS, BUMP, SHORT, WITNESS]),
  gate('air', ['start', 'bad_air'], [OXYGEN, WITNESS], { exposes: ['start'] }),
  tell('in', { exposes: ['start', 'bad_air'] }),
])

/** Both hold points shown, and people let in. */
const LINES = ['L-1', 'L-2', '1', 'METER ANSWERED', 'NO START', 'ML', '20.9', 'ML']
const letIn = () => new Walk(TWO).keys('RO', 'TC-401-1', ...LINES)

const told = (walk: Walk, ask: Ask) => wouldVoidLines(walk.engine.defs, walk.state, ask)
const fell = (entries: readonly Entry[]) =>
  entries.flatMap((e) => (e.type === 'gate.closed' ? [[e.step, ...e.items]] : []))

describe('what would fall is told before', () => {
  it('and going back behind an open hold point takes what was read there since, by the same rule as correct', () => {
    const walk = letIn()
    expect(walk.prompt).toMatchObject({ step: { id: 'in' } })
    walk.wait(6).bring({ do: 'tick' })
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'try_start' } })
    expect(told(walk, { kind: 'ask-again-sure', step: 'isolated' })).toEqual([
      'Last: bump, METER ANSWERED.',
      'This would make void what was keyed for: bump.',
      expect.stringMatching(/^Hold point 2 would fall: oxygen.*; witness\.$/),
    ])
    const before = walk.entries.length
    walk.bring({ do: 'ask-again', step: 'isolated' })
    expect(fell(walk.entries.slice(before))).toEqual([
      ['isolated', 'bump'],
      ['air', 'oxygen', 'witness'],
    ])
    expect(violations(momentOf(walk))).toEqual([])
  })

  const HELD = ['RO', 'TC-401-1', 'NO START', 'ML', '1', '1', '1.0', 'ALL SHUT IN'] as const
  const stood = () =>
    new Walk(tiedDefs())
      .keys(...HELD)
      .wait(15)
      .keys('NO RISE', 'ML', '1.4')

  it('when the start of a test over time is corrected', () => {
    const walk = stood()
    const of = walk.state.readings['first.here']?.[0]?.seq ?? Number.NaN
    const lines = told(walk, { kind: 'correct-why', of })
    const before = walk.entries.length
    walk.bring({ do: 'correct', of, typed: '0.6', why: 'misread it' })
    const gone = fell(walk.entries.slice(before))
    expect(gone.length).toBeGreaterThan(0)
    expect(lines.filter((line) => line.startsWith('Hold point')).length).toBe(gone.length)
  })

  it('when a finding is corrected behind words that every finding is decided', () => {
    const defs = smallDefs([
      {
        ...{ id: 'look', kind: 'observe', title: 'look' },
        conditions: [
          { id: 'sound', label: 'Sound' },
          { id: 'scored', label: 'Scored', note: true, finding: true },
        ],
      },
      gate(
        'go',
        ['start'],
        [{ ...NO_START, id: 'findings', words: 'EVERY FINDING DECIDED', findings: 'decided' }, WITNESS],
      ),
      tell('run', { exposes: ['start'] }),
    ])
    const walk = new Walk(defs).keys('RO', 'TC-401-1', '1', 'EVERY FINDING DECIDED', 'ML')
    expect(told(walk, { kind: 'finding-why', step: 'look' })).toContainEqual(
      expect.stringMatching(/^Hold point 2 would fall: /),
    )
    const before = walk.entries.length
    walk.bring({
      do: 'correct-finding',
      step: 'look',
      condition: 'scored',
      note: 'deep',
      why: 'looked again',
    })
    expect(fell(walk.entries.slice(before))).toEqual([['go', 'findings', 'witness']])
  })

  it('and nothing is told that does not fall', () => {
    const walk = letIn()
    for (const step of ['isolated', 'air'])
      for (const item of Object.keys(walk.state.gates[step]?.given ?? {})) {
        const said = rehearsed(walk.engine.defs, walk.state, { do: 'take-back-evidence', step, item })
        const other = walk.copy()
        const before = other.entries.length
        other.bring({ do: 'take-back-evidence', step, item, why: 'it was not so' })
        expect(said.map((at) => [at.gate.id, ...at.items])).toEqual(fell(other.entries.slice(before)))
        expect(walk.entries.length).toBe(before)
      }
  })
})
