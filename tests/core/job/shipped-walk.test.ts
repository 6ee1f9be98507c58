// Every shipped procedure can be walked to its end on the example machine by careful answers, and whenever a step faces a
// hazard a gate that holds it is proved.
import { describe, expect, it } from 'vitest'
import { dispositionsFor } from '../../../src/core/job/admit-disposition.ts'
import { asKind } from '../../../src/core/job/definitions.ts'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { SHIPPED, shippedDefs } from '../../helpers/shipped-jobs.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

/** The example machine has neither a pocket nor a liner: there the job goes no further than what it should be. */
const WAITS = ['clearance-pocket.yaml', 'renew-liner.yaml']

/** As careful people would, and a lead lets pass what figures made up here come to: where they say hold, the job waits. */
function lineAt(walk: Walk): string {
  const { prompt, state, talk, engine } = walk
  if (prompt.kind !== 'decide' || talk.ask !== null) return rightLine(engine.defs, state, talk)
  const { step, scope } = asKind(prompt.step, 'decide')
  const verdict = state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
  const open = dispositionsFor(verdict, step.choices)
  return ['concession', 'accept'].find((choice) => open.includes(choice)) ?? open[0] ?? ''
}

/** Its own answers files walk it (pull-walk.test.ts). */
const WALKED_ELSEWHERE = ['piston-pull.yaml']

describe('a shipped procedure', () => {
  it.each(SHIPPED.filter((name) => !WALKED_ELSEWHERE.includes(name)))('%s is walked to its end', (name) => {
    const walk = new Walk(shippedDefs(name))
    for (let lines = 0; lines < 600 && walk.state.closed === null; lines++) {
      const { prompt, state } = walk
      const begun =
        prompt.kind === 'evidence' ? state.gates[prompt.gate.id]?.begun[prompt.item.key] : undefined
      if (begun !== undefined) walk.wait(16)
      walk.key(lineAt(walk))
      expect(violations(momentOf(walk), false)).toEqual([])
    }
    if (WAITS.includes(name)) expect(walk.prompt.kind).toBe('held')
    else expect(walk.state.closed).not.toBeNull()
  })

  it.each([
    ['bar-over.yaml', 'bar'],
    ['open-cylinder.yaml', 'bar_in__bar'],
    ['put-back.yaml', 'bar_free__bar'],
    ['return-to-service.yaml', 'first_start'],
  ])('%s does not send anybody to %s on a count of people of an hour ago', (name, step) => {
    const walk = new Walk(shippedDefs(name))
    for (let lines = 0; lines < 600; lines++) {
      const { prompt, state } = walk
      if (prompt.kind === 'confirm' && prompt.step.id === step) break
      const begun =
        prompt.kind === 'evidence' ? state.gates[prompt.gate.id]?.begun[prompt.item.key] : undefined
      if (begun !== undefined) walk.wait(16)
      walk.key(lineAt(walk))
    }
    walk.wait(60).bring({ do: 'tick' })
    expect(walk.prompt.kind).toBe('clear')
    expect(walk.last).toMatchObject({ type: 'gate.closed', cause: 'lapsed' })
  })
})
