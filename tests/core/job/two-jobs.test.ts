// Two jobs on one machine, in any order of what people do at each: what one lets in or takes off is void in the other.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Definitions } from '../../../src/core/job/definitions.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold, opening } from '../../../src/core/job/fold.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { next } from '../../../src/core/job/next.ts'
import type { State } from '../../../src/core/job/state.ts'
import { EVERY_KIND, kindsDefs, LET_IN } from '../../helpers/all-kinds.ts'
import type { Walk } from '../../helpers/example.ts'
import { runs } from '../../helpers/runs.ts'
import {
  gate,
  LOCKS,
  NO_START,
  OFF_STEPS,
  OXYGEN,
  rawProcedure,
  smallDefs,
  TWO_GATES,
  tell,
  WITNESS,
  withValve,
} from '../../helpers/small-job.ts'
import { pair } from '../../helpers/two-jobs.ts'
import { violations } from './invariants.ts'
import { letInOnPeople, voidElsewhere } from './invariants-elsewhere.ts'
import { type Action, momentOf, perform, scheduleOf } from './schedules.ts'

const SEED = 20260315

/** Names one hazard that no other procedure of these tests has. */
const FOREIGN_STEPS = [
  gate('ready', ['turn'], [NO_START, WITNESS]),
  tell('barred', { exposes: ['turn'], lets_in: ['turn'] }),
  tell('close'),
]
const FOREIGN = smallDefs(FOREIGN_STEPS, [], {
  procedure: rawProcedure(FOREIGN_STEPS, { hazards: [{ id: 'turn', name: 'the crank turning' }] }),
})
const LETS_IN = kindsDefs(LET_IN)
const TWO = smallDefs(TWO_GATES)
const KINDS = kindsDefs(EVERY_KIND)
const OFF = withValve(smallDefs(OFF_STEPS))
const LOCKED = withValve(
  smallDefs([
    gate('hold', ['start'], [LOCKS, WITNESS]),
    tell('inside', { exposes: ['start'] }),
    tell('again', { exposes: ['start'] }),
  ]),
)

const PAIRS: readonly (readonly [Definitions, Definitions])[] = [
  [LETS_IN, TWO],
  [LETS_IN, LETS_IN],
  [FOREIGN, TWO],
  [KINDS, LETS_IN],
  [OFF, LOCKED],
  [OFF, OFF],
]

const LINES = ['stop', 'stop', 'placed', 'taken', 'leave', 'back', 'note', '2', '30', 'y', 'ALL OUT']

const acts = fc
  .tuple(scheduleOf(LINES), fc.infiniteStream(fc.boolean()))
  .map(([actions, stream]) => actions.map((a): readonly [0 | 1, Action] => [stream.next().value ? 1 : 0, a]))

/** The job from its written text alone. */
function replayed(walk: Walk): State {
  const read = readEntries(
    walk.entries.map((e) => ({ prev: '', hash: '', ...(JSON.parse(JSON.stringify(e)) as object) })),
  )
  if (!read.ok) throw new Error(read.error.say)
  const [first, ...rest] = read.value
  if (first?.type !== 'job.opened') throw new Error('not opened')
  return rest.reduce((state, e) => fold(state, e), opening(first))
}

describe('what one job does is void in the other', () => {
  it('over random schedules of both, after the look that sees it', { timeout: 240_000 }, () => {
    const seen = { fell: 0, held: 0, waited: 0, bare: 0 }
    fc.assert(
      fc.property(fc.nat(PAIRS.length - 1), acts, (which, done) => {
        const jobs = pair(PAIRS[which] ?? [TWO, TWO])
        const inputs: [Input[], Input[]] = [[], []]
        for (const [who, action] of done) {
          const walk = jobs.walks[who]
          perform(walk, action, inputs[who])
          // What the act did to the clock is acted on, as in the moment that is looked at.
          walk.bring({ do: 'tick' })
          jobs.note()
          const other = jobs.walks[who === 0 ? 1 : 0]
          const us = { defs: walk.engine.defs, state: walk.state }
          const them = { defs: other.engine.defs, state: other.state }
          expect(voidElsewhere(us, them, who, jobs.written)).toEqual([])
          expect(letInOnPeople(us, them, who, jobs.written)).toEqual([])
          expect(violations(momentOf(walk), false)).toEqual([])
          const prompt = next(us.defs, us.state)
          if ('step' in prompt && prompt.kind !== 'held' && (prompt.step.step.exposes ?? []).length > 0)
            seen.bare += 1
          if (prompt.kind === 'held' && prompt.elsewhere === true)
            seen[prompt.step.step.kind === 'gate' ? 'held' : 'waited'] += 1
        }
        for (const walk of jobs.walks) {
          seen.fell += walk.entries.filter((e) => e.type === 'gate.closed' && e.cause === 'elsewhere').length
          expect(replayed(walk)).toEqual(walk.state)
          expect(JSON.stringify(replayed(walk).gates)).toBe(JSON.stringify(walk.state.gates))
        }
      }),
      { numRuns: runs(200), seed: SEED },
    )
    expect(seen.fell).toBeGreaterThan(100)
    expect(seen.held).toBeGreaterThan(100)
    expect(seen.waited).toBeGreaterThan(20)
    expect(seen.bare).toBeGreaterThan(500)
  })
})

const HOLDS = gate('hold', ['start'], [NO_START, WITNESS])
const UNLOCKS = smallDefs([HOLDS, tell('unlocked', { exposes: ['start'], lets_in: ['start'] }), tell('end')])
const ON_PAPER = smallDefs([
  HOLDS,
  tell('inside', { exposes: ['start'] }),
  tell('paper'),
  tell('last', { exposes: ['start'] }),
])
const TO_WITNESS = ['RO', 'TC-401-1', 'NO START']

describe('a step that lets in', () => {
  it('waits for people of a job that asks for something on paper now: they are called out all the same', () => {
    const [unlocks, paper] = pair([UNLOCKS, ON_PAPER]).walks
    paper.keys(...TO_WITNESS, 'ML', '')
    expect(paper.prompt).toMatchObject({ kind: 'tell', step: { id: 'paper' } })
    unlocks.keys(...TO_WITNESS, 'ML')
    expect(unlocks.prompt).toMatchObject({ kind: 'held', elsewhere: true })
    paper.bring({ do: 'tick' })
    expect(paper.prompt.kind).toBe('clear')
    paper.key('ALL OUT')
    expect(paper.prompt).toMatchObject({ kind: 'tell', step: { id: 'paper' } })
    unlocks.bring({ do: 'tick' })
    expect(unlocks.prompt).toMatchObject({ kind: 'tell', step: { id: 'unlocked' } })
  })

  it('calls out also those whose hold point had fallen before by age, when nothing behind it was asked', () => {
    const gas = gate('hold', ['start'], [{ ...NO_START, life: '30 min' }, WITNESS])
    const aged = smallDefs([
      gas,
      tell('inside', { exposes: ['start'] }),
      tell('paper'),
      tell('last', { exposes: ['start'] }),
    ])
    const [unlocks, paper] = pair([UNLOCKS, aged]).walks
    paper.keys(...TO_WITNESS, 'ML', '').wait(31)
    paper.bring({ do: 'tick' })
    expect(paper.prompt).toMatchObject({ kind: 'tell', step: { id: 'paper' } })
    unlocks.keys(...TO_WITNESS, 'ML')
    expect(unlocks.prompt).toMatchObject({ kind: 'held', elsewhere: true })
    paper.bring({ do: 'tick' })
    expect(paper.prompt.kind).toBe('clear')
  })

  it('was begun, and left between two looks of the other: what held it there is void', () => {
    const [unlocks, inside] = pair([UNLOCKS, ON_PAPER]).walks
    inside.keys(...TO_WITNESS)
    unlocks.keys(...TO_WITNESS, 'ML')
    expect(unlocks.prompt).toMatchObject({ kind: 'tell', step: { id: 'unlocked' } })
    unlocks.key('leave')
    inside.bring({ do: 'tick' })
    expect(inside.state.gates.hold?.given).toEqual({})
    // Whoever was giving it stands at the machine.
    expect(inside.prompt.kind).toBe('clear')
  })

  it('waits too where the other procedure does not name what it lets in', () => {
    const opens = smallDefs([
      gate('hold', ['bad_air'], [NO_START, WITNESS]),
      tell('opened', { exposes: ['bad_air'], lets_in: ['bad_air'] }),
    ])
    const steps = [HOLDS, tell('inside', { exposes: ['start'] })]
    const hazards = [{ id: 'start', name: 'the driver being started' }]
    const narrow = smallDefs(steps, [], { procedure: rawProcedure(steps, { hazards }) })
    const [opening, inside] = pair([opens, narrow]).walks
    inside.keys(...TO_WITNESS, 'ML')
    opening.keys(...TO_WITNESS, 'ML')
    expect(opening.prompt).toMatchObject({ kind: 'held', elsewhere: true })
    inside.bring({ do: 'tick' })
    expect(inside.state.gates.hold).toMatchObject({ status: 'closed' })
    expect(inside.state.gates.hold?.given).toEqual({})
  })

  it('of a record of another kind neither waits nor voids', () => {
    const [unlocks, paper] = pair([UNLOCKS, ON_PAPER], ['EXAMPLE', 'PRACTICE']).walks
    paper.keys(...TO_WITNESS, 'ML')
    unlocks.keys(...TO_WITNESS, 'ML', 'stop')
    paper.bring({ do: 'tick' })
    expect(paper.state.gates.hold?.status).toBe('open')
    expect(Object.values(paper.state.elsewhere)).toMatchObject([
      { record: 'EXAMPLE', stop: expect.any(String) },
    ])
  })
})

describe('a lock that was taken off in the other job', () => {
  const BOTH = smallDefs([
    gate(
      'hold',
      ['start', 'bad_air'],
      [{ ...LOCKS, against: ['start'] }, { ...OXYGEN, against: ['bad_air'] }, WITNESS],
    ),
    tell('inside', { exposes: ['start', 'bad_air'] }),
  ])

  function takenOff(number: string | null): Walk {
    const [other, us] = pair([UNLOCKS, BOTH]).walks
    us.keys('RO', 'TC-401-1', 'L-101', 'L-102', '1', '20.9', 'ML')
    expect(us.state.gates.hold?.status).toBe('open')
    other.keys('RO', 'TC-401-1')
    other.bring({ do: 'place', what: 'lock', where: 'E-1', number })
    const of = other.state.things[0]?.seq ?? -1
    for (const person of ['RO', 'KH']) other.bring({ do: 'account', of, person, proved: true })
    us.bring({ do: 'tick' })
    expect(us.state.gates.hold?.status).toBe('closed')
    return us
  }

  it('fells what its number held, and leaves the rest', () => {
    expect(Object.keys(takenOff('l101').state.gates.hold?.given ?? {})).toEqual(['oxygen'])
  })

  it.each([null, 'L-999'])('with number %j could be anything, so everything falls', (number) => {
    expect(takenOff(number).state.gates.hold?.given).toEqual({})
  })

  it('goes with the job that hung it, when that ends', () => {
    const [other, us] = pair([BOTH, BOTH]).walks
    for (const walk of [us, other]) walk.keys('RO', 'TC-401-1', 'L-101', 'L-102', '1', '20.9', 'ML')
    other.key('')
    expect(other.state.closed).toBe('NONE')
    us.bring({ do: 'tick' })
    expect(Object.keys(us.state.gates.hold?.given ?? {})).toEqual(['oxygen'])
  })
})

describe('a lock that the other job keyed without the letters of its number', () => {
  const LOCKED = smallDefs([
    gate('hold', ['start'], [LOCKS, WITNESS]),
    tell('inside', { exposes: ['start'] }),
  ])

  it('goes with the job that hung it, also where that keyed its number without the letters', () => {
    const [other, us] = pair([LOCKED, LOCKED]).walks
    us.keys('RO', 'TC-401-1', 'L-101', 'L-102', 'ML')
    other.keys('RO', 'TC-401-1', '101', '102', 'ML')
    expect(us.state.gates.hold?.status).toBe('open')
    other.key('')
    expect(other.state.closed).toBe('NONE')
    us.bring({ do: 'tick' })
    expect(us.state.gates.hold?.status).toBe('closed')
    expect(us.state.gates.hold?.given).toEqual({})
  })
})

describe('nothing is admitted without a look', () => {
  it('and the hold point says on record what was seen when it opened', () => {
    const [, inside] = pair([UNLOCKS, ON_PAPER]).walks
    inside.keys(...TO_WITNESS, 'ML')
    const opened = inside.entries.find((e) => e.type === 'gate.opened')
    expect(opened).toMatchObject({ looked: [{ job: 'job-aaaa', upTo: 0 }] })
  })
})
