// Small jobs, each of the shape in which one fault of the engine shows and in no simpler one. They are proved; the engines that
// are broken in just that way are in tests/mutants/search.ts, and this file is to notice them.
import { expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { prove } from '../../../src/core/proof/prove.ts'
import { exampleDefs } from '../../helpers/example.ts'
import {
  gate,
  NO_START,
  OXYGEN,
  type Raw,
  rawProcedure,
  readOne,
  smallDefs,
  tell,
  WITNESS,
} from '../../helpers/small-job.ts'

const found: Raw = {
  id: 'found',
  kind: 'observe',
  title: 'found',
  conditions: ['yes', 'no'].map((one) => ({ id: one, label: one })),
}
const START = gate('isolated', ['start'], [NO_START, WITNESS])
const AIR = gate('air', ['bad_air'], [OXYGEN, WITNESS], { exposes: ['start'] })
const facing = (...exposes: string[]) => ({ exposes })
const whenFound = (unknown: string) => ({ when: { rule: 'found == "yes"', unknown } })

function partWith(...steps: Raw[]): Parameters<typeof smallDefs> {
  const part = { id: 'p', kind: 'part', title: 'p', use: 'opened', ...whenFound('hold') }
  const opened = rawProcedure(steps, { procedure: 'opened' })
  return [[found, START, part, tell('in', facing('bad_air', 'start'))], [opened]]
}

/** The shipped bore inspection without its gate: what only has to do with judging. */
function judging(): Definitions {
  const whole = exampleDefs()
  const steps = whole.steps.filter((s) => s.step.kind !== 'gate')
  return { ...whole, steps: steps.map((s) => ({ ...s, step: { ...s.step, exposes: [] } })) }
}

/** Nobody has an instrument for the first reading, which its rule leaves out. */
function withoutDial(): Definitions {
  const seats = [
    ...exampleDefs().procedure.seats,
    { id: 'dial', kinds: ['dial_indicator'], for: 'what nobody has' },
  ]
  const instruments = exampleDefs().instruments.instruments.filter((one) => one.kind !== 'dial_indicator')
  const steps = [
    found,
    START,
    readOne('f', { ...facing('start'), with: 'dial', ...whenFound('skip') }),
    readOne('r', facing('start')),
    tell('end'),
  ]
  return smallDefs(steps, [], { instruments: { instruments } }, { seats })
}

const more = { when: { rule: 'size > length("9.52 in")', unknown: 'hold' }, ...facing('start') }
const letsIn = { ...facing('start'), lets_in: ['start'] }

const JOBS: readonly (readonly [string, () => Definitions])[] = [
  [
    'a point of inspection behind two gates',
    () =>
      smallDefs([
        START,
        AIR,
        tell('in', { ...facing('bad_air', 'start'), point: { kind: 'hold', roles: ['lead'] } }),
        tell('end'),
      ]),
  ],
  [
    'a gate in a part that is left out, beside one that is open',
    () => smallDefs(...partWith(AIR, tell('within', facing('bad_air')))),
  ],
  [
    'a step behind a rule that nobody can answer',
    () => smallDefs([START, readOne('size'), tell('more', more), tell('end')]),
  ],
  [
    'a confirmed step that lets in what a told one let in before',
    () =>
      smallDefs([
        tell('brief'),
        START,
        tell('a', letsIn),
        { id: 'b', kind: 'confirm', title: 'b', seen: 'So.', ...letsIn },
        tell('c', facing('start')),
      ]),
  ],
  ['a late reading behind one that no instrument fits', withoutDial],
  ['a verdict that sends the part back', judging],
]

it.each(JOBS)('is proved: %s', { timeout: 120_000 }, (_, defs) => {
  expect(prove(defs())).toMatchObject({ is: 'proved' })
})
