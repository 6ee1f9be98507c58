// A diameter kept beyond what its gauge shows, and a temperature beyond its thermometer: on record, and no measurement.
import { expect, it } from 'vitest'
import { asBoreJudge, boreFacts } from '../../../src/core/job/bore-facts.ts'
import { type Definitions, stepById } from '../../../src/core/job/definitions.ts'
import { judgeStep } from '../../../src/core/job/judge-step.ts'
import { Walk } from '../../helpers/example.ts'

/** The same job by a register in which the instrument goes no farther than this. */
function upTo(defs: Definitions, id: string, si: number): Definitions {
  const instruments = defs.instruments.instruments.map((one) =>
    one.id === id && one.kind !== 'gas_meter'
      ? { ...one, range: { ...one.range, to: { ...one.range.to, si } } }
      : one,
  )
  return { ...defs, instruments: { ...defs.instruments, instruments } } as Definitions
}

const walk = new Walk().toVerdict()
const facts = (defs: Definitions) => {
  const judge = asBoreJudge(stepById(defs, 'bore_judged'))
  if (judge === null) throw new Error('no judge')
  return { ...boreFacts(defs, walk.state, judge), verdict: judgeStep(defs, walk.state, judge, '1').result }
}

it('is missing with its reason, and the verdict is HOLD', () => {
  expect(facts(walk.engine.defs).main.missing).toEqual([])
  const { main, verdict } = facts(upTo(walk.engine.defs, 'M-3', 0.23))
  expect(main.readings).toEqual([])
  expect(main.missing[0]?.why).toMatch(/^beyond what M-3 reads/)
  expect(verdict.verdict).toBe('HOLD')
})

it('leaves how warm it is unknown, and the verdict is HOLD', () => {
  const { part, body, verdict } = facts(upTo(walk.engine.defs, 'T-2', 280))
  expect([part, body]).toEqual([null, null])
  expect(verdict.verdict).toBe('HOLD')
})
