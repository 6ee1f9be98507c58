// Every shipped procedure can be walked to its end on the example machine by careful answers, and whenever a step faces a
// hazard a gate that holds it is proved.
import { describe, expect, it } from 'vitest'
import { Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import { SHIPPED, shippedDefs } from '../../helpers/shipped-jobs.ts'
import { violations } from './invariants.ts'
import { momentOf } from './schedules.ts'

describe('a shipped procedure', () => {
  it.each(SHIPPED)('%s is walked to its end', (name) => {
    const walk = new Walk(shippedDefs(name))
    for (let lines = 0; lines < 300 && walk.state.closed === null; lines++) {
      const { prompt, state } = walk
      const begun =
        prompt.kind === 'evidence' ? state.gates[prompt.gate.id]?.begun[prompt.item.key] : undefined
      if (begun !== undefined) walk.wait(16)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
      expect(violations(momentOf(walk), false)).toEqual([])
    }
    expect(walk.state.closed).not.toBeNull()
  })
})
