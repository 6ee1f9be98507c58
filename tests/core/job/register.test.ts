// The register of temporary things: placed when a step says so or somebody does, open until two people account for it.
import { describe, expect, it } from 'vitest'
import { openThings, registerClear } from '../../../src/core/job/register.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { makeSafeLines } from '../../../src/core/talk/make-safe.ts'
import { Walk } from '../../helpers/example.ts'
import { gate, LOCKS, type Raw, rawProcedure, smallDefs, tell, WITNESS } from '../../helpers/small-job.ts'

const STEPS: Raw[] = [
  tell('block', {
    places: [
      { id: 'block', what: 'turning block' },
      { id: 'blind', what: 'blind' },
    ],
  }),
  tell('out'),
]
const begun = (leaves?: string[]) =>
  new Walk(
    smallDefs(
      STEPS,
      [],
      leaves === undefined ? {} : ({ procedure: rawProcedure(STEPS, { leaves }) } as never),
    ),
  ).keys('RO', 'TC-401-1')
const placedBoth = (walk: Walk) => walk.keys('', 'at the flywheel', 'B-12', 'suction flange', '')
const sign = (walk: Walk, which: number, person: string) => {
  const of = walk.state.things[which]?.seq ?? -1
  return walk.bring({ do: 'account', of, person })
}

describe('a step that places things', () => {
  it('is done only with where each of them is, and puts them on record before itself', () => {
    const walk = begun()
    expect(walk.bring({ do: 'done', step: 'block' })).toBe('not-placed')
    expect(
      walk.bring({ do: 'done', step: 'block', placed: [{ id: 'block', where: 'flywheel', number: null }] }),
    ).toBe('not-placed')
    walk.keys('', 'at the flywheel', 'back')
    expect(walk.state.things).toEqual([])
    placedBoth(walk)
    expect(walk.entries.slice(-3)).toMatchObject([
      {
        type: 'thing.placed',
        what: 'turning block',
        where: 'at the flywheel',
        number: 'B-12',
        place: 'block',
      },
      { type: 'thing.placed', what: 'blind', where: 'suction flange', place: 'blind' },
      { type: 'step.done', step: 'block' },
    ])
    expect(registerClear(walk.state)).toBe(false)
  })

  it('done again asks only for what is not in the register already', () => {
    const walk = placedBoth(begun())
    sign(walk, 1, 'RO')
    sign(walk, 1, 'ML')
    walk.bring({ do: 'reopen', step: 'block', why: 'the blind is out' })
    walk.keys('', 'discharge flange', 'F-2')
    expect(openThings(walk.state).map((t) => t.where)).toEqual(['at the flywheel', 'discharge flange'])
    expect(walk.state.done.block).toBe('done')
  })
})

describe('a hold point that asks for a clear register', () => {
  const BACK = { id: 'back', kind: 'words', ask: 'All back?', words: 'NOTHING LEFT IN', register: 'clear' }
  const steps = [
    tell('block', { places: [{ id: 'block', what: 'turning block' }] }),
    gate('ready', ['start'], [LOCKS, BACK, WITNESS]),
    tell('go', { exposes: ['start'] }),
  ]
  const atWords = () =>
    new Walk(smallDefs(steps)).keys('RO', 'TC-401-1', '', 'flywheel', 'B-12', 'L-1', 'L-2')

  it('takes no word for it while a thing is open, and says which', () => {
    const walk = atWords()
    const { seq } = walk.state
    expect(walk.key('NOTHING LEFT IN')).toBe('register-open')
    expect(walk.state.seq).toBe(seq)
    sign(walk, 0, 'RO')
    expect(walk.key('NOTHING LEFT IN')).toBe('register-open')
    sign(walk, 0, 'ML')
    walk.keys('NOTHING LEFT IN', 'ML')
    expect(walk.prompt).toMatchObject({ kind: 'tell', step: { id: 'go' } })
  })

  it('shuts when something is placed behind it, and only that and the witness are asked again', () => {
    const walk = atWords()
    for (const person of ['RO', 'ML']) sign(walk, 0, person)
    walk.keys('NOTHING LEFT IN', 'ML')
    walk.bring({ do: 'place', what: 'wedge', where: 'crosshead guide', number: null })
    expect(walk.last).toMatchObject({ type: 'gate.closed', step: 'ready', items: ['back', 'witness'] })
    expect(walk.prompt.kind).toBe('clear')
    walk.keys('ALL OUT')
    expect(walk.key('NOTHING LEFT IN')).toBe('register-open')
  })
})

describe('a thing', () => {
  it('is accounted for by two different people of the crew, each by a signature', () => {
    const walk = placedBoth(begun())
    expect(sign(walk, 0, 'XX')).toBe('unknown-person')
    expect(sign(walk, 0, 'TS')).toBe('trainee')
    expect(sign(walk, 9, 'RO')).toBe('no-thing')
    expect(sign(walk, 0, 'RO')).toBeNull()
    expect(sign(walk, 0, 'RO')).toBe('same-person')
    expect(openThings(walk.state)).toHaveLength(2)
    expect(sign(walk, 0, 'ML')).toBeNull()
    expect(walk.last).toMatchObject({ type: 'thing.accounted', people: ['RO', 'ML'] })
    expect(sign(walk, 0, 'KH')).toBe('no-thing')
    expect(openThings(walk.state)).toHaveLength(1)
  })

  it('asks for the second signature at once, and takes the word accounted too', () => {
    const walk = placedBoth(begun()).keys('accounted', '2', 'RO')
    expect(walk.talk.ask).toMatchObject({ kind: 'account-who', first: 'RO' })
    walk.keys('ro')
    expect(walk.talk.ask).toMatchObject({ kind: 'account-who', first: 'RO' })
    walk.keys('ML')
    expect(walk.talk.ask).toBeNull()
    expect(openThings(walk.state).map((t) => t.what)).toEqual(['turning block'])
  })

  it.each([
    ['before sign-on', () => new Walk()],
    ['under STOP', () => new Walk().toBore().keys('stop')],
    ['under one that is never released', () => new Walk().keys('RO', 'stop', '3', 'it turned', '?')],
    ['while people are called out', () => new Walk().toBore().wait(31).keys('')],
  ])('is placed and accounted for %s', (_, walkTo) => {
    const walk = walkTo()
    const asked = walk.prompt.kind
    walk.keys('placed', 'a plug', 'cavity 2', 'P-2', 'taken', '1', 'RO', 'ML')
    expect(walk.state.things).toMatchObject([{ number: 'P-2', accountedBy: ['RO', 'ML'] }])
    expect(walk.prompt.kind).toBe(asked)
  })

  it('stands on the make-safe sheet until it is accounted for', () => {
    const walk = placedBoth(begun())
    const sheet = () => makeSafeLines(walk.engine.defs, walk.state).join('\n')
    expect(sheet()).toContain('turning block, at the flywheel, B-12')
    sign(walk, 0, 'RO')
    expect(sheet()).toContain('turning block')
    sign(walk, 0, 'ML')
    expect(sheet()).not.toContain('turning block')
  })
})

describe('the end of a job', () => {
  it('waits for everything placed, and comes by itself with the last of it', () => {
    const walk = placedBoth(begun()).keys('')
    expect(walk.prompt.kind).toBe('open-things')
    walk.keys('', 'done', 'yes', 'taken', '1', 'RO', 'ML')
    expect(walk.state.closed).toBeNull()
    walk.keys('taken', '1', 'KH', 'ML')
    expect(walk.state.closed).toBe('NONE')
  })

  it('comes with a lead who hands on what stays, and says so at the close', () => {
    const walk = placedBoth(begun()).keys('')
    const handOn = (person: string, to = 'the next shift') => walk.bring({ do: 'hand-on', person, to })
    expect(handOn('ML')).toBe('not-lead')
    expect(handOn('KH', '1')).toBe('no-words')
    walk.keys('placed', 'a sling', 'on the hook', '', 'hand on', 'KH', 'the next shift takes all three out')
    expect(walk.state.closed).toBe('NONE')
    const closing = entryBlock(walk.engine.defs, walk.state, walk.last)
      ?.rows.map((r) => r.text)
      .join('\n')
    expect(closing).toContain('STILL PLACED: blind, suction flange')
    expect(closing).toContain('STILL PLACED: a sling, on the hook')
  })

  it('is not handed on by the lead who worked, nor before everything else is done', () => {
    const own = new Walk(smallDefs(STEPS)).keys('KH', 'TC-401-1')
    placedBoth(own)
    expect(own.bring({ do: 'hand-on', person: 'PB', to: 'the next shift' })).toBe('not-asked')
    own.keys('')
    expect(own.bring({ do: 'hand-on', person: 'KH', to: 'the next shift' })).toBe('own-work')
    expect(own.bring({ do: 'hand-on', person: 'PB', to: 'the next shift' })).toBeNull()
  })

  it('leaves behind only what the procedure names', () => {
    const walk = placedBoth(begun(['blind'])).keys('')
    expect(walk.prompt).toMatchObject({ kind: 'open-things', things: [{ place: 'block' }] })
    walk.keys('taken', '1', 'RO', 'ML')
    expect(walk.state.closed).toBe('NONE')
  })
})

describe('leaving', () => {
  it('shows the make-safe sheet and what is proved again, then leaves', () => {
    const walk = new Walk().throughGate()
    walk.said.length = 0
    walk.key('leave')
    const said = walk.said.join('\n')
    expect(said).toContain('MAKE SAFE')
    expect(said).toMatch(/ON RETURN[\s\S]*Proved again, whole.*Hold point before hands/)
    expect(walk.last.type).toBe('job.left')
  })
})
