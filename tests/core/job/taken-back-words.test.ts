// What falls with words that were not so: what was read since against the same, and what an instrument read that they were said of.

import { describe, expect, it } from 'vitest'
import { fallsWithItems } from '../../../src/core/job/falls-with.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, NO_START, OXYGEN, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

const BUMP = { id: 'bump', kind: 'words', ask: 'Try the meter.', words: 'METER ANSWERED', seat: 'meter' }

const defs = smallDefs([
  gate(
    'isolated',
    ['start', 'rotation', 'bad_air'],
    [
      { ...LOCKS, against: ['start'] },
      { ...NO_START, against: ['start'] },
      { ...NO_START, id: 'bleeds', words: 'NO FLOW', against: ['bad_air'] },
      { ...BUMP, against: ['rotation'] },
      { ...OXYGEN, against: ['bad_air'] },
      WITNESS,
    ],
  ),
  gate('again', ['bad_air'], [{ ...OXYGEN, id: 'oxygen_again' }, WITNESS]),
  tell('in', { exposes: ['start', 'bad_air'] }),
])

const LINES = ['L-1', 'L-2', 'NO START', 'NO FLOW', '1', 'METER ANSWERED', '20.9', 'ML', '20.9', 'ML']
const filled = () => new Walk(defs).keys('RO', 'TC-401-1', ...LINES)
const falls = (key: string) =>
  fallsWithItems(defs, filled().state, 'isolated', [key]).map(({ gate: at, items }) => [at.id, ...items])

describe('words taken back', () => {
  it('takes the gas that was read since, where gas may have come back, and not where it tells nothing of it', () => {
    expect(falls('bleeds')).toEqual([
      ['isolated', 'bleeds', 'oxygen', 'witness'],
      ['again', 'oxygen_again', 'witness'],
    ])
    expect(falls('try_start')).toEqual([['isolated', 'try_start', 'witness']])
  })

  it('takes what the meter it was said of read, at every hold point, whatever that was against', () => {
    const both = [
      ['isolated', 'bump', 'oxygen', 'witness'],
      ['again', 'oxygen_again', 'witness'],
    ]
    expect(falls('bump')).toEqual(both)
    const walk = filled()
    walk.bring({ do: 'take-back-evidence', step: 'isolated', item: 'bump', why: 'it was the other meter' })
    expect(walk.entries.slice(-2).map((e) => ('items' in e ? e.items : []))).toEqual(
      both.map(([, ...items]) => items),
    )
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('leaves what was read before them', () => {
    const walk = filled()
    walk.bring({ do: 'take-back-evidence', step: 'isolated', item: 'try_start', why: 'the panel was dead' })
    walk.keys('ALL OUT')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', item: { key: 'try_start' } })
    walk.keys('NO START', 'ML')
    expect(walk.prompt).toMatchObject({ step: { id: 'in' } })
    expect(Object.keys(walk.state.gates.isolated?.given ?? {})).toContain('oxygen')
    expect(violations(momentOf(walk))).toEqual([])
  })
})
