// The load question and the proof: every finding and reading it rests on is taken away, and both machines are searched to the end.
import { describe, expect, it } from 'vitest'
import { judgeStep } from '../../../src/core/job/judge-step.ts'
import { withWord } from '../../../src/core/job/verdict-record.ts'
import { unheldVerdict } from '../../../src/core/proof/gaps.ts'
import { freshJob, prove } from '../../../src/core/proof/prove.ts'
import { pocketDefs } from '../../helpers/pocket-job.ts'

describe.each(['rg-27', 'tc-401'] as const)('the load question on %s', (site) => {
  const defs = pocketDefs(site)

  it('is proved', { timeout: 240_000 }, () => {
    const proof = prove(defs)
    expect(proof).toMatchObject({ is: 'proved' })
    expect(proof.states).toBeGreaterThan(20)
  })

  it('holds on every gap', () => {
    expect(unheldVerdict({ defs, version: 'test' }, freshJob())).toBeNull()
  })

  it('finds a judge that does not mind a finding left unseen', () => {
    const judge: typeof judgeStep = (given, state, placed, version) => {
      const record = judgeStep(given, state, placed, version)
      return state.done.fitted === undefined ? withWord(record, 'ACCEPT') : withWord(record, 'HOLD')
    }
    expect(unheldVerdict({ defs, version: 'test', judge }, freshJob())).toMatchObject({
      rule: 'verdict',
      step: 'judged',
      say: expect.stringContaining('fitted not seen'),
    })
  })

  it('finds a judge that does not mind a reading left out', () => {
    const judge: typeof judgeStep = (given, state, placed, version) =>
      withWord(
        judgeStep(given, state, placed, version),
        state.readings['load.panel']?.length === 0 ? 'REWORK' : 'HOLD',
      )
    expect(unheldVerdict({ defs, version: 'test', judge }, freshJob())?.say).toContain(
      'load.panel not measured',
    )
  })
})
