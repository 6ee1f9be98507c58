// Every practised procedure on every example machine that can be practised on, seed by seed: no machine that cannot be, and no fault
// that nobody could find. PRACTICE_SEEDS=10000 takes so many of each; a load is worked out by its solver, so there it is a tenth of them.
import { expect, it } from 'vitest'
import { LEVELS } from '../../../src/core/job/practice.ts'
import { buildMachine } from '../../../src/core/practice/build.ts'
import { factsOf } from '../../../src/core/practice/facts.ts'
import { PRACTISED_NAMES } from '../../../src/core/practice/practised.ts'
import { factsFor, impossible, isMet, shownAt } from '../../helpers/impossible.ts'
import { defsOf } from '../../helpers/trainees.ts'

const SEEDS = Number(process.env.PRACTICE_SEEDS ?? 100)
const SLOW = ['pocket-load', 'set-pocket']

const ROWS = PRACTISED_NAMES.flatMap((name) =>
  (['tc-401', 'rg-27'] as const).flatMap((site) =>
    factsOf(defsOf(name, site)).ok ? [[name, site] as const] : [],
  ),
)

it('all practised procedures are among them', () => {
  expect(new Set(ROWS.map(([name]) => name))).toEqual(new Set(PRACTISED_NAMES))
  expect(ROWS.length).toBeGreaterThanOrEqual(PRACTISED_NAMES.length + 8)
})

it.each(ROWS)(
  `machines of %s on %s can be, and show what is wrong with them where they say`,
  { timeout: 3_600_000 },
  (name, site) => {
    const defs = defsOf(name, site)
    const of = factsFor(defs)
    const seeds = SLOW.includes(name) ? Math.ceil(SEEDS / 10) : SEEDS
    const wrong: string[] = []
    let met = 0
    for (let seed = 1; seed <= seeds; seed++) {
      const machine = buildMachine(of, { seed, level: LEVELS[seed % LEVELS.length] ?? 1 })
      const told = `seed ${seed} ${machine.faults.join(' ')}`
      for (const what of impossible(machine, of)) wrong.push(`${told}: ${what}`)
      for (const id of machine.faults) {
        const differs = shownAt(defs, of, machine, id)
        if (isMet(id, differs)) met += 1
        else wrong.push(`${told}: ${id} shows at ${differs.join(', ') || 'no place'}`)
      }
    }
    if (process.env.PRACTICE_SEEDS !== undefined)
      process.stdout.write(
        `${name} on ${site}: ${seeds} machines, ${met} faults met, ${wrong.length} wrong\n`,
      )
    expect(wrong).toEqual([])
    expect(met).toBeGreaterThan(0)
  },
)

it('a fault that stops the work is met at a place of its own, and at others only where its list says so', () => {
  expect(isMet('vent-plugged', ['knock', 'mass_says'])).toBe(false)
  expect(isMet('vent-plugged', ['vents'])).toBe(true)
  // Of a piston that was openly hollow without it: the knock rings as before, and record and scale say solid now.
  expect(isMet('cavity-small', ['record_says', 'mass_says', 'vents'])).toBe(true)
  expect(isMet('cavity-small', ['record_says', 'vents'])).toBe(false)
  expect(isMet('hollow-as-solid', ['vents', 'way'])).toBe(false)
})
