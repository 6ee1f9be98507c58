// What a seed builds is checked whole against a number in the program: whoever changes a draw, a fault or what a machine answers by has
// to put the new one down, and by that every older session is told from those of today.
import { expect, it } from 'vitest'
import { buildMachine, soundMachine } from '../../../src/core/practice/build.ts'
import { fnv1a } from '../../../src/core/practice/chance.ts'
import { EDITION } from '../../../src/core/practice/edition.ts'
import { factsOf } from '../../../src/core/practice/facts.ts'
import { PRACTISED_NAMES } from '../../../src/core/practice/practised.ts'
import { factsFor, shown } from '../../helpers/impossible.ts'
import { defsOf } from '../../helpers/trainees.ts'

/** Six figures: what is left of a computation anywhere. Sentences are no figures, so another wording is the same machine. */
const figures = (_key: string, value: unknown) => (typeof value === 'number' ? value.toPrecision(6) : value)

/** What there is to be keyed or measured, without the words in which it is told. */
const withoutWords = (told: string) => told.replace(/"seen":"(?:[^"\\]|\\.)*",?/g, '')

function built(): string {
  const parts = PRACTISED_NAMES.flatMap((name) =>
    (['tc-401', 'rg-27'] as const).flatMap((site) => {
      const defs = defsOf(name, site)
      if (!factsOf(defs).ok) return []
      const of = factsFor(defs)
      const machines = [
        soundMachine(of, 4711, 1),
        soundMachine(of, 27, 3),
        ...of.faults.map(({ id }) => buildMachine(of, { seed: 4711, level: 5, faults: [id] })),
      ]
      return machines.map((machine) => {
        const told = [...shown(defs, machine)].map(([where, text]) => [
          where,
          withoutWords(text).replace(/-?\d+\.\d+(?:e-?\d+)?/g, (one) => Number(one).toPrecision(6)),
        ])
        return JSON.stringify([machine, told], figures)
      })
    }),
  )
  return (fnv1a(parts.join('\n')) >>> 0).toString(16).padStart(8, '0')
}

it('the edition names the machines that are built, and cannot be left as it was when they are built otherwise', () => {
  const now = built()
  expect(
    EDITION.split('.')[0],
    `A seed builds another machine now. In src/core/practice/edition.ts: const BUILT = '${now}'`,
  ).toBe(now)
})
