// Trainees of every sort over machines as they are drawn: each is told what they did and nothing else, a careful one passes, and whoever
// misses what is hidden does not. PRACTICE_SEEDS=20 looks at so many machines of each procedure; PRACTICE_TABLE=FILE writes what it came to.
import { appendFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { LEVELS } from '../../../src/core/job/practice.ts'
import type { Grade } from '../../../src/core/practice/grade.ts'
import { PRACTISED_NAMES } from '../../../src/core/practice/practised.ts'
import { type Name, unfairness } from '../../helpers/said-of.ts'
import {
  asksHints,
  leaves,
  mends,
  misjudges,
  misnames,
  passesFalse,
  type Slipping,
  skips,
} from '../../helpers/slipping-trainees.ts'
import { careful, careless, defsOf, session, type Trainee } from '../../helpers/trainees.ts'

const SEEDS = Number(process.env.PRACTICE_SEEDS ?? 1)
const FROM = Number(process.env.PRACTICE_FROM ?? 1)
const TABLE = process.env.PRACTICE_TABLE

const plain = (trainee: Trainee): Slipping => ({ trainee, deeds: [] })

/** By the seed it is another of the chances that a session has. */
const TRAINEES: Readonly<Record<Name, (seed: number) => Slipping>> = {
  careful: () => plain(careful),
  careless: () => plain(careless),
  mends: (seed) => mends(seed % 9),
  leaves: (seed) => leaves(seed % 9),
  skips: (seed) => skips(seed % 9),
  misjudges: (seed) => misjudges(seed % 3),
  misnames: () => misnames(),
  passesFalse: (seed) => passesFalse(seed % 5),
  asksHints: (seed) => asksHints(1 + (seed % 8)),
}

interface Came {
  readonly name: Name
  readonly seed: number
  readonly deeds: number
  readonly grade: Grade
}

describe('a session says what was done in it, and no more', () => {
  it.each(PRACTISED_NAMES)('%s', { timeout: 3_000_000 }, (procedure) => {
    const defs = defsOf(procedure)
    const came: Came[] = []
    const unfair: string[] = []
    for (let seed = FROM; seed < FROM + SEEDS; seed++) {
      const level = LEVELS[seed % LEVELS.length] ?? 1
      for (const name of Object.keys(TRAINEES) as Name[]) {
        const one = TRAINEES[name](seed)
        const { grade } = session(seed, level, one.trainee, defs)
        const { deeds } = one
        came.push({ name, seed, deeds: deeds.length, grade })
        const why = unfairness(name, deeds, grade)
        if (why !== null) unfair.push(`seed ${seed}, level ${level}, ${why}`)
      }
    }
    if (TABLE !== undefined) appendFileSync(TABLE, `${tableOf(procedure, came).join('\n')}\n`)
    expect(unfair).toEqual([])
  })
})

function tableOf(procedure: string, came: readonly Came[]): string[] {
  const of = (name: Name) => came.filter((one) => one.name === name)
  const named = (name: Name, id: string, isNamed: boolean) =>
    of(name).filter(({ grade }) => grade.hidden?.some((one) => one.id === id && one.isNamed === isNamed))
      .length
  const faults = [
    ...new Set(of('careful').flatMap(({ grade }) => (grade.hidden ?? []).map(({ id }) => id))),
  ].sort()
  const none = of('careful').filter(({ grade }) => grade.hidden?.length === 0).length
  return [
    `${procedure}: ${SEEDS} seeds`,
    ...(Object.keys(TRAINEES) as Name[]).map((name) => {
      const all = of(name)
      const passed = all.filter(({ grade }) => grade.isPassed).length
      const failed = all.filter(({ grade }) => grade.safety === 'failed').length
      const did =
        name === 'careful' || name === 'careless'
          ? ''
          : `, did it in ${all.filter(({ deeds }) => deeds > 0).length}`
      return `  ${name.padEnd(12)} passed ${passed} of ${all.length}, safety failed ${failed}${did}`
    }),
    ...faults.map(
      (id) =>
        `    ${id.padEnd(20)} drawn ${named('careful', id, true) + named('careful', id, false)}, named by careful ${named('careful', id, true)}, missed by careless ${named('careless', id, false)}`,
    ),
    `    nothing hidden       ${none}`,
  ]
}
