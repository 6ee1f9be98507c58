// Parts: their steps take the part's id before their own, in rules, inputs and answers alike.

import { describe, expect, it } from 'vitest'
import { lintParts } from '../../../src/core/definition/lint-parts.ts'
import { asBoreJudge } from '../../../src/core/job/bore-facts.ts'
import { stepById } from '../../../src/core/job/definitions.ts'
import { boreInput } from '../../../src/core/job/judge-step.ts'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { wouldVoid } from '../../../src/core/job/voids.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { rightLine } from '../../helpers/right-line.ts'
import {
  gate,
  LOCKS,
  type Raw,
  rawProcedure,
  readOne,
  smallDefs,
  tell,
  tryAssemble,
  WITNESS,
} from '../../helpers/small-job.ts'

const part = (id: string, use: string, more: Raw = {}): Raw => ({ id, kind: 'part', title: id, use, ...more })
const look = (id: string): Raw => ({
  id,
  kind: 'observe',
  title: id,
  conditions: [
    { id: 'yes', label: 'Yes' },
    { id: 'no', label: 'No' },
  ],
})
const inner = (name: string, steps: Raw[]) => rawProcedure(steps, { procedure: name })
const begin = (...args: Parameters<typeof smallDefs>) => new Walk(smallDefs(...args)).keys('RO', 'TC-401-1')
const at = (walk: Walk) => ('step' in walk.prompt ? walk.prompt.step.id : walk.prompt.kind)

describe('flattening', () => {
  it('scopes ids at every depth and numbers the sheet through', () => {
    const defs = smallDefs(
      [tell('a'), part('p', 'outer'), part('q', 'outer'), tell('z')],
      [inner('outer', [tell('a'), part('p', 'deep')]), inner('deep', [tell('a')])],
    )
    expect(defs.steps.map((s) => s.id)).toEqual(['a', 'p__a', 'p__p__a', 'q__a', 'q__p__a', 'z'])
    expect(defs.steps.map((s) => s.number)).toEqual([1, 2, 3, 4, 5, 6])
  })

  it('refuses a part that is not there, and one inside itself at any depth', () => {
    expect(tryAssemble([part('p', 'nowhere')])).toMatchObject({ ok: false, error: { code: 'part' } })
    expect(tryAssemble([part('p', 'small')], [inner('small', [tell('a')])])).toMatchObject({
      ok: false,
      error: { code: 'part-loop' },
    })
    const loop = [inner('x', [part('p', 'y')]), inner('y', [part('p', 'x')])]
    expect(tryAssemble([part('p', 'x')], loop)).toMatchObject({ ok: false, error: { code: 'part-loop' } })
  })

  it('leaves out what the whole has already, and refuses to where something that stays refers to it', () => {
    const used = inner('used', [
      tell('a'),
      look('seen'),
      tell('b', { when: { rule: 'seen == "yes"', unknown: 'do' } }),
    ])
    const omitting = (...omits: string[]) => tryAssemble([tell('z'), part('p', 'used', { omits })], [used])
    const left = omitting('a')
    expect(left.ok && left.value.steps.map((s) => s.id)).toEqual(['z', 'p__seen', 'p__b'])
    for (const omits of [['seen'], ['nowhere'], ['a', 'seen', 'b']])
      expect(omitting(...omits)).toMatchObject({ ok: false, error: { code: 'part-omits' } })
    expect(omitting('seen', 'b')).toMatchObject({ ok: true })
  })

  it('leaves out a step of a part of a part, and refuses one that is in none', () => {
    const deep = inner('deep', [tell('a'), tell('b')])
    const used = inner('used', [tell('z'), part('q', 'deep')])
    const omitting = (...omits: string[]) => tryAssemble([part('p', 'used', { omits })], [used, deep])
    const left = omitting('q.a')
    expect(left.ok && left.value.steps.map((s) => s.id)).toEqual(['p__z', 'p__q__b'])
    expect(omitting('q').ok).toBe(true)
    for (const omits of [['q.nowhere'], ['z.a'], ['nowhere.a'], ['q', 'q.a'], ['q.a', 'q.b']])
      expect(omitting(...omits), omits.join()).toMatchObject({ ok: false, error: { code: 'part-omits' } })
    const codes = (...omits: string[]) => {
      const whole = rawProcedure([part('p', 'used', { omits })])
      return lintParts(whole, new Map([used, deep].map((one) => [one.procedure, one]))).map((one) => one.code)
    }
    expect(codes('q.nowhere')).toContain('part-omits')
    expect(codes('q.a')).not.toContain('part-omits')
  })

  it('finds a gate that a step before it would wait for', () => {
    const late = (...steps: Raw[]) =>
      lintParts(rawProcedure(steps), new Map([['used', used]]))
        .filter((one) => one.code === 'late-gate')
        .map((one) => one.path.join('.'))
    const danger = (id: string, hazard: string) => tell(id, { exposes: [hazard], hazard: 'x', trouble: 'y' })
    const used = inner('used', [gate('g', ['start'], [LOCKS, WITNESS]), danger('in', 'start')])
    const own = gate('own', ['start'], [LOCKS, WITNESS])
    expect(late(own, danger('a', 'start'), part('p', 'used'))).toEqual(['steps.0.holds.0'])
    expect(late(own, danger('a', 'start'), gate('again', ['bad_air', 'start'], [WITNESS]))).toEqual([
      'steps.2.holds.1',
    ])
    expect(late(own, danger('a', 'start'), part('p', 'used', { omits: ['g'] }))).toEqual([])
    expect(late(own, gate('air', ['bad_air'], [WITNESS], { exposes: ['start'] }))).toEqual([])
  })

  it('looks through derived values for what a step that stays refers to', () => {
    const values = [{ id: 'wide', title: 'Wide', kind: 'length', is: 'size - machine.nominal' }]
    const steps = [readOne('size'), tell('b', { when: { rule: 'wide > length("0.01 in")', unknown: 'do' } })]
    const used = rawProcedure(steps, { procedure: 'used', values })
    expect(tryAssemble([part('p', 'used', { omits: ['size'] })], [used])).toMatchObject({
      ok: false,
      error: { code: 'part-omits' },
    })
  })

  it('does not leave out a gate that something still needs: the flattened whole is what is checked', () => {
    const used = inner('used', [
      gate('g', ['start'], [LOCKS, WITNESS]),
      tell('b', { exposes: ['start'], hazard: 'x', trouble: 'y' }),
    ])
    const whole = rawProcedure([part('p', 'used', { omits: ['g'] })])
    const codes = lintParts(whole, new Map([['used', used]])).map((one) => one.code)
    expect(codes).toContain('not-held')
    const held = rawProcedure([gate('own', ['start'], [LOCKS, WITNESS]), part('p', 'used', { omits: ['g'] })])
    expect(lintParts(held, new Map([['used', used]])).map((one) => one.code)).not.toContain('not-held')
  })

  it('refuses ids that come to the same, so that one gate could stand open for another', () => {
    const twice = tryAssemble(
      [gate('p__g', ['start'], [LOCKS]), part('p', 'in')],
      [inner('in', [gate('g', ['start'], [WITNESS])])],
    )
    expect(twice).toMatchObject({ ok: false, error: { code: 'id-twice' } })
    expect(tryAssemble([tell('a'), tell('a')])).toMatchObject({ ok: false, error: { code: 'id-twice' } })
    expect(tryAssemble([gate('g', ['start'], [WITNESS, WITNESS])])).toMatchObject({
      ok: false,
      error: { code: 'id-twice' },
    })
  })

  it('refuses ids that every object has: such a step would be done, such evidence given, before anybody came', () => {
    expect(tryAssemble([tell('constructor')])).toMatchObject({ ok: false, error: { code: 'id-taken' } })
    const evidence = tryAssemble([gate('g', ['start'], [{ ...WITNESS, id: 'constructor' }])])
    expect(evidence).toMatchObject({ ok: false, error: { code: 'id-taken' } })
  })
})

describe('a gate inside a part', () => {
  it('holds back steps outside it', () => {
    const walk = begin(
      [part('p', 'in'), tell('a', { exposes: ['start'] })],
      [inner('in', [gate('g', ['start'], [LOCKS])])],
    )
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'p__g' } })
    walk.keys('L-1', 'L-2')
    expect(at(walk)).toBe('a')
    walk.keys('stop', '8', 'a shout', '?', 'release', 'KH', 'nobody was hurt')
    expect(walk.prompt).toMatchObject({ kind: 'clear', gate: { id: 'p__g' }, before: { id: 'a' } })
  })

  it('holds them back also when the part itself is skipped', () => {
    const walk = begin(
      [
        look('seen'),
        part('p', 'in', { when: { rule: 'seen == "yes"', unknown: 'do' } }),
        tell('a', { exposes: ['start'] }),
      ],
      [inner('in', [gate('g', ['start'], [LOCKS])])],
    )
    walk.keys('2')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'p__g' }, before: { id: 'a' } })
  })

  it('is not opened by the same gate of the same part used elsewhere', () => {
    const walk = begin(
      [part('p', 'in'), part('q', 'in'), tell('a', { exposes: ['start'] })],
      [inner('in', [gate('g', ['start'], [LOCKS])])],
    )
    walk.keys('L-1', 'L-2')
    expect(walk.prompt).toMatchObject({ kind: 'evidence', gate: { id: 'q__g' } })
  })
})

describe('a condition on a part', () => {
  const steps = [
    look('seen'),
    part('p', 'in', { when: { rule: 'seen == "yes"', unknown: 'hold' } }),
    tell('z'),
  ]
  const parts = [
    inner('in', [tell('a'), look('b'), tell('c', { when: { rule: 'b == "yes"', unknown: 'skip' } })]),
  ]

  it('skips all its steps, or does them with their own conditions', () => {
    expect(at(begin(steps, parts).keys('2'))).toBe('z')
    const walk = begin(steps, parts).keys('1')
    expect(at(walk)).toBe('p__a')
    expect(at(walk.keys(''))).toBe('p__b')
    expect(at(walk.copy().keys('1'))).toBe('p__c')
    expect(at(walk.keys('2'))).toBe('z')
  })

  it.each([
    ['hold', 'held'],
    ['skip', 'z'],
    ['do', 'p__a'],
  ])('that is unknown does what it says: %s', (unknown, where) => {
    // What was never asked has no word for rules.
    const skipped = { ...look('b'), when: { rule: 'seen == "yes"', unknown: 'hold' } }
    const walk = begin(
      [look('seen'), skipped, part('p', 'in', { when: { rule: 'b == "yes"', unknown } }), tell('z')],
      parts,
    ).keys('2')
    expect(unknown === 'hold' ? walk.prompt.kind : at(walk)).toBe(where)
  })

  it('voids what was done inside when the answer it hangs on is taken back', () => {
    const walk = begin(steps, parts).keys('1', '', '1', '')
    expect(wouldVoid(walk.engine.defs, walk.state, 'seen')).toEqual(['p__a', 'p__b', 'p__c'])
    walk.bring({ do: 'reopen', step: 'seen', why: 'looked again' })
    walk.keys('1')
    expect(at(walk)).toBe('p__a')
  })
})

describe('the bore inspection as a part', () => {
  const example = exampleDefs()
  const whole = (when?: Raw) =>
    begin(
      [look('open'), part('job', 'bore_inspection', when === undefined ? {} : { when }), tell('end')],
      [example.procedure],
      {
        machine: example.machine,
      },
    )
  const finish = (walk: Walk) => {
    for (let n = 0; walk.state.closed === null && n < 200; n++)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    return walk
  }

  it('judges by its own readings under their scoped names, and ends the job', () => {
    const walk = finish(whole().keys('1'))
    expect(walk.state.closed).toMatch(/ACCEPT|MONITOR/)
    expect(Object.keys(walk.state.verdicts)).toEqual(['job__bore_judged'])
    const judge = asBoreJudge(stepById(walk.engine.defs, 'job__bore_judged'))
    if (judge === null) throw new Error('no judge of a bore')
    expect(boreInput(walk.engine.defs, walk.state, judge).readings).toHaveLength(6)
    expect(Object.keys(walk.state.readings).every((k) => k.startsWith('job__'))).toBe(true)
  })

  it('corrected, voids by the scoped name', () => {
    const walk = whole().keys('1')
    while (walk.state.verdicts.job__bore_judged === undefined)
      walk.key(rightLine(walk.engine.defs, walk.state, walk.talk))
    const seq = walk.state.readings['job__bore.centre.vertical']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of: seq, typed: '9.5031', why: 'misread' })
    expect(walk.entries.find((e) => e.type === 'reading.corrected')).toMatchObject({
      voids: ['job__bore_judged'],
    })
  })

  it('skipped by its condition, has no say beside one that was judged', () => {
    const twice = [
      look('open'),
      part('job', 'bore_inspection'),
      part('other', 'bore_inspection', { when: { rule: 'open == "yes"', unknown: 'hold' } }),
    ]
    const walk = finish(begin(twice, [example.procedure], { machine: example.machine }).keys('2'))
    expect(walk.state.closed).toMatch(/ACCEPT|MONITOR/)
  })

  it('skipped by its condition, leaves nothing judged, which is HOLD', () => {
    const walk = whole({ rule: 'open == "yes"', unknown: 'hold' }).keys('2', '')
    expect(walk.state.verdicts).toEqual({})
    expect(outcomeOf(walk.engine.defs, walk.state)).toBe('HOLD')
    expect(walk.state.closed).toBe('HOLD')
  })
})
