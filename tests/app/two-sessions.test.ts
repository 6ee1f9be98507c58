// Two programs at two jobs on one machine in the same moment: both looked before either had written.
import { describe, expect, it } from 'vitest'
import { next } from '../../src/core/job/next.ts'
import { Walk } from '../helpers/example.ts'
import { type MemorySession, memorySession } from '../helpers/fake-terminal.ts'
import { gate, NO_START, smallDefs, tell, WITNESS } from '../helpers/small-job.ts'
import { watcherOf } from '../helpers/two-jobs.ts'

const HOLDS = gate('hold', ['start'], [NO_START, WITNESS])
const LETS_IN = smallDefs([HOLDS, tell('unlocked', { exposes: ['start'], lets_in: ['start'] }), tell('end')])
const EXPOSED = smallDefs([HOLDS, tell('inside', { exposes: ['start'] }), tell('end')])

/** Both sign on and show all but the witness; from then on what they write waits to be let through. */
function both(): readonly [MemorySession, MemorySession] {
  const walks = [new Walk(LETS_IN), new Walk(EXPOSED)] as const
  for (const walk of walks) walk.keys('RO', 'TC-401-1', 'NO START')
  const disks: MemorySession[] = []
  const watchers = walks.map((walk, n) =>
    watcherOf(
      {
        engine: walk.engine,
        state: walk.state,
        get entries() {
          return [...walk.entries, ...(disks[n]?.written ?? [])]
        },
      },
      `job-${n}`,
    ),
  )
  walks.forEach((walk, n) => {
    walk.others = () => watchers.flatMap((look, other) => (other === n ? [] : [look()]))
    disks.push(memorySession(walk, true))
  })
  return disks as unknown as readonly [MemorySession, MemorySession]
}

const promptOf = ({ session }: MemorySession) => next(session.engine.defs, session.snapshot().state)

describe('two jobs that go on in the same moment', () => {
  it.each([[[0, 1]], [[1, 0]]])(
    'never send people in beside what lets in: %j writes first',
    async (order) => {
      const disks = both()
      const shown: string[] = []
      for (const [n, { session }] of disks.entries())
        session.subscribe(() => shown.push(`${n} ${promptOf(disks[n as 0 | 1]).kind}`))
      let going = 2
      for (const { session } of disks)
        void session
          .bring({ do: 'evidence', step: 'hold', item: 'witness', typed: 'ML', proved: true })
          .then(() => going--)
      for (let n = 0; n < 200 && going > 0; n++) {
        await new Promise<void>((resolve) => setImmediate(resolve))
        disks[(order[n % 2] ?? 0) as 0 | 1].letThrough()
      }
      expect(going).toBe(0)
      expect(disks.map((d) => d.written.filter((e) => e.type === 'gate.opened').length)).toEqual([1, 1])
      const [unlocking, inside] = disks.map(promptOf)
      expect([unlocking?.kind, inside?.kind]).not.toEqual(['tell', 'tell'])
      // Nor were they ever shown side by side.
      expect(shown.filter((one) => one.endsWith(' tell')).length).toBeLessThan(2)
    },
  )
})
