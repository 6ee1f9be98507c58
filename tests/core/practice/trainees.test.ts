// A careful trainee finds each fault by what the machine shows, and a careless one misses it. PRACTICE_SEEDS=200 runs both over that
// many machines as they are drawn, and prints what each fault came to.
import { describe, expect, it } from 'vitest'
import { LEVELS } from '../../../src/core/job/practice.ts'
import { faultsFor } from '../../../src/core/practice/faults.ts'
import { careful, careless, practiceDefs, rodDefs, seedHiding, session } from '../../helpers/trainees.ts'

const SEEDS = Number(process.env.PRACTICE_SEEDS ?? 0)

const FAULTS = faultsFor(practiceDefs())
const OF_ROD = faultsFor(rodDefs())

describe('a fault', () => {
  it.each(FAULTS.map(({ id, level }) => [id, level] as const))(
    '%s of level %i is found by who looks',
    (id, level) => {
      const { grade } = session(seedHiding(id, level), level, careful)
      expect(grade).toMatchObject({
        safety: 'passed',
        unsafe: [],
        hidden: [{ id, isNamed: true }],
        isPassed: true,
      })
    },
  )

  it.each(OF_ROD.map(({ id, level }) => [id, level] as const))(
    '%s of level %i of a rod is found too',
    (id, level) => {
      const defs = rodDefs()
      const { grade } = session(seedHiding(id, level, defs), level, careful, defs)
      expect(grade).toMatchObject({ safety: 'passed', hidden: [{ id, isNamed: true }], isPassed: true })
    },
  )

  it('of a rod is missed by who keys what is expected', () => {
    const defs = rodDefs()
    const { grade } = session(seedHiding('rod-bent', 2, defs), 2, careless, defs)
    expect(grade).toMatchObject({ isPassed: false, hidden: [{ isNamed: false }] })
  })

  // One of each sort: all of them in the long run below.
  it.each(['driver-live', 'gas-inside', 'gas-returns', 'barrel', 'ridge', 'gauge-off'])(
    '%s is missed by who keys what is expected',
    (id) => {
      const fault = FAULTS.find((one) => one.id === id)
      if (fault === undefined) throw new Error(`no fault ${id}`)
      const { grade } = session(seedHiding(id, fault.level), fault.level, careless)
      expect(grade).toMatchObject({ isPassed: false, hidden: [{ id, isNamed: false }] })
      expect(grade.safety).toBe(fault.shows === 'stop' ? 'failed' : 'passed')
    },
  )
})

if (SEEDS > 0)
  it.each([practiceDefs, rodDefs])(
    `over ${SEEDS} seeds the careful one passes every session, the careless one none with a fault`,
    {
      timeout: 600_000,
    },
    (files) => {
      const defs = files()
      const came = new Map<string, { drawn: number; found: number; missed: number }>()
      for (let seed = 1; seed <= SEEDS; seed++) {
        const level = LEVELS[seed % LEVELS.length] ?? 1
        const good = session(seed, level, careful, defs).grade
        const bad = session(seed, level, careless, defs).grade
        expect(good, `seed ${seed}, level ${level}`).toMatchObject({ isPassed: true, safety: 'passed' })
        expect(bad.isPassed, `seed ${seed}, level ${level}`).toBe(false)
        for (const { id, isNamed } of good.hidden) {
          const row = came.get(id) ?? { drawn: 0, found: 0, missed: 0 }
          const isMissed = bad.hidden.some((one) => one.id === id && !one.isNamed)
          came.set(id, {
            drawn: row.drawn + 1,
            found: row.found + Number(isNamed),
            missed: row.missed + Number(isMissed),
          })
        }
      }
      const rows = [...came].map(
        ([id, { drawn, found, missed }]) =>
          `${id.padEnd(20)} drawn ${drawn}, found ${found}, missed ${missed}`,
      )
      process.stdout.write(`${rows.sort().join('\n')}\n`)
      for (const { drawn, found, missed } of came.values()) expect([found, missed]).toEqual([drawn, drawn])
    },
  )
