// What falls with a lock, tag or blind that is taken back: whatever was tried while it was said to hang, at every hold point.

import { describe, expect, it } from 'vitest'
import { fallsWithItems } from '../../../src/core/job/falls-with.ts'
import { wouldVoidLines } from '../../../src/core/talk/would-void.ts'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { gate, LOCKS, NO_START, OXYGEN, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

describe('a lock taken back', () => {
  const OTHER = [
    gate('isolated', ['start'], [LOCKS, { ...NO_START, against: ['start'] }, WITNESS]),
    gate(
      'blocked',
      ['start', 'bad_air'],
      [{ ...NO_START, id: 'tried_again', against: ['start'] }, { ...OXYGEN, against: ['bad_air'] }, WITNESS],
    ),
    tell('in', { exposes: ['start', 'bad_air'] }),
  ]
  const filled = () =>
    new Walk(smallDefs(OTHER)).keys(
      ...['RO', 'TC-401-1', 'L-1', 'L-2', 'NO START', 'ML', 'NO START', '1', '20.9', 'ML'],
    )

  it('voids what was tried under a lock at every hold point, and not what says nothing of it', () => {
    const walk = filled()
    expect(walk.prompt).toMatchObject({ step: { id: 'in' } })
    const item = Object.keys(walk.state.gates.isolated?.given ?? {})[0] ?? ''
    walk.bring({ do: 'take-back-evidence', step: 'isolated', item, why: 'it hung open' })
    expect(walk.entries.slice(-2)).toMatchObject([
      { type: 'gate.closed', step: 'isolated', items: [item, 'try_start', 'witness'] },
      { type: 'gate.closed', step: 'blocked', items: ['tried_again', 'witness'] },
    ])
    expect(Object.keys(walk.state.gates.blocked?.given ?? {})).toEqual(['oxygen'])
    expect(walk.prompt.kind).toBe('clear')
    expect(violations(momentOf(walk))).toEqual([])
  })

  it('keeps what was tried before a number was keyed, and tells first what falls elsewhere', () => {
    const walk = filled()
    const given = walk.state.gates.isolated?.given ?? {}
    const [first = '', second = ''] = Object.keys(given)
    const [one, two] = [first, second].map((key) =>
      fallsWithItems(walk.engine.defs, walk.state, 'isolated', [key]),
    )
    expect(one?.[0]?.items).toEqual([first, 'try_start', 'witness'])
    // The other lock hangs by itself.
    expect(two?.[0]?.items).toEqual([second, 'try_start', 'witness'])
    const tried = fallsWithItems(walk.engine.defs, walk.state, 'isolated', ['try_start'])
    expect(tried.map(({ gate: at, items }) => [at.id, ...items])).toEqual([
      ['isolated', 'try_start', 'witness'],
      ['blocked', 'tried_again', 'witness'],
    ])
    const question = { kind: 'evidence-why', step: 'isolated', item: first, shown: 'L-1' } as const
    expect(wouldVoidLines(walk.engine.defs, walk.state, question)).toEqual([
      expect.stringMatching(/^The hold point would fall, .*try start; witness\.$/),
      expect.stringMatching(/^Hold point 2 would fall: .*witness\.$/),
    ])
  })

  const STAND = {
    id: 'stand',
    kind: 'wait',
    ask: 'Stand.',
    lasts: '10 min',
    begin_words: 'WATCHED',
    words: 'NO MOVE',
    against: ['start'],
  }

  it('leaves nobody in the work until all that was tried under it was tried again, whatever line it is', () => {
    const defs = smallDefs(
      OTHER.map((step) =>
        step.id === 'blocked' ? { ...step, evidence: [STAND, ...(step.evidence as object[])] } : step,
      ),
    )
    const isIn = (walk: Walk) => 'step' in walk.prompt && walk.prompt.step?.id === 'in'
    const goOn = (walk: Walk) => {
      for (let n = 0; n < 60 && !isIn(walk); n += 1) {
        if (walk.prompt.kind === 'evidence' && walk.prompt.item.evidence.kind === 'wait') walk.wait(11)
        walk.key(rightLine(defs, walk.state, walk.talk))
        expect(violations(momentOf(walk))).toEqual([])
      }
      expect(isIn(walk)).toBe(true)
    }
    const whole = new Walk(defs)
    goOn(whole)
    const lines = ['isolated', 'blocked'].flatMap((step) =>
      Object.keys(whole.state.gates[step]?.given ?? {}).map((item) => ({ step, item })),
    )
    expect(lines.length).toBe(8)
    for (const { step, item } of lines) {
      const walk = new Walk(defs)
      goOn(walk)
      walk.bring({ do: 'take-back-evidence', step, item, why: 'it hung open' })
      expect(violations(momentOf(walk))).toEqual([])
      goOn(walk)
    }
  })
})
