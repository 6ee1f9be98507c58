// What is to be done with a verdict: a lead decides who did not take the readings, and gives a reason.
import { describe, expect, expectTypeOf, it } from 'vitest'
import { lintProcedure } from '../../../src/core/definition/lint-procedure.ts'
import { type Disposable, dispositionsFor } from '../../../src/core/job/admit-disposition.ts'
import { outcomeOf } from '../../../src/core/job/outcome.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { gate, NO_START, smallDefs, WITNESS } from '../../helpers/small-job.ts'

const ALL = ['accept', 'rework', 'repair', 'replace', 'concession', 'hold']
const dispose = (walk: Walk, person: string, why = 'read again after 4000 h', choice = 'accept') =>
  walk.bring({ do: 'dispose', step: 'disposition', choice, person, why, proved: true })

describe('choices', () => {
  it.each([
    ['HOLD', ['rework', 'repair', 'replace', 'concession', 'hold']],
    ['REWORK', ['rework', 'repair', 'replace', 'concession']],
    ['REPLACE', ['rework', 'repair', 'replace', 'concession']],
    ['MONITOR', ['accept', 'rework', 'repair', 'replace', 'concession']],
    ['ACCEPT', ['accept', 'rework', 'repair', 'replace', 'concession']],
  ])('for %s are %j', (verdict, choices) => {
    expect(dispositionsFor(verdict, ALL)).toEqual(choices)
  })
})

describe('a disposition', () => {
  it.each([
    ['ML', 'not-lead'],
    ['TS', 'not-lead'],
    ['RO', 'not-lead'],
    ['XX', 'unknown-person'],
    ['', 'unknown-person'],
  ])('is not for %j', (person, code) => {
    const walk = new Walk().toVerdict()
    expect(dispose(walk, person)).toBe(code)
    expect(walk.state.dispositions).toEqual({})
  })

  it.each(['', ' ', '1', '...'])('needs a reason in words, not %j', (why) => {
    expect(dispose(new Walk().toVerdict(), 'KH', why)).toBe('no-words')
  })

  it('is not for the lead who measured', () => {
    const walk = new Walk()
    walk.keys('KH', 'TC-401-1', '').keys('L-1', 'L-2', 'L-3', 'L-4', 'L-5', 'L-6')
    expect(walk.state.doer).toBe('KH')
    const measured = new Walk().toVerdict()
    const verdict = measured.state.verdicts.bore_judged
    if (verdict === undefined) throw new Error('not judged')
    expect(verdict.on).toEqual(['RO'])
    const there = { bore_judged: { ...verdict, on: ['RO', 'KH'] } }
    measured.state = { ...measured.state, doer: 'KH', verdicts: there }
    expect(dispose(measured, 'KH')).toBe('own-work')
    expect(dispose(measured, 'PB')).toBeNull()
  })

  it('is for the lead alone at the keys who came on only once it was judged', () => {
    const walk = new Walk().toVerdict()
    walk.bring({ do: 'leave' })
    walk.bring({ do: 'take-up' })
    walk.keys('KH', 'TC-401-1')
    expect(walk.state.doer).toBe('KH')
    expect(dispose(walk, 'KH')).toBeNull()
  })

  it('is not for a lead who measured and then handed the keyboard on', () => {
    const walk = new Walk().toVerdict()
    const readings = Object.fromEntries(
      Object.entries(walk.state.readings).map(([k, l]) => [k, l.map((r) => ({ ...r, by: 'KH' }))]),
    )
    walk.state = { ...walk.state, readings }
    expect(dispose(walk, 'KH')).toBe('own-work')
    expect(dispose(walk, 'PB')).toBeNull()
  })

  it('is of a verdict that stands, from the choices open for it', () => {
    const walk = new Walk().toVerdict()
    expect(dispose(walk, 'KH', 'so', 'hold')).toBe('choice')
    expect(dispose(walk, 'KH', 'so', 'scrap')).toBe('choice')
    const verdict = walk.state.verdicts.bore_judged
    if (verdict === undefined) throw new Error('not judged')
    const early = new Walk().toBore()
    expect(dispose(early, 'KH')).toBe('not-asked')
    expect(dispose(walk, 'kh')).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'disposition.set',
      about: 'bore_judged',
      person: 'KH',
      why: 'read again after 4000 h',
    })
    expect(walk.state.verdicts.bore_judged).toBe(verdict)
  })
})

describe('a concession', () => {
  const concede = (walk: Walk, authority?: string, until?: string) =>
    walk.bring({
      do: 'dispose',
      step: 'disposition',
      choice: 'concession',
      person: 'KH',
      why: 'worn but runs',
      ...(authority === undefined ? {} : { authority }),
      ...(until === undefined ? {} : { until }),
      from: '91000',
    })

  it.each([
    [undefined, '4000 h', 'no-authority'],
    ['', '4000 h', 'no-authority'],
    ['12', '4000 h', 'no-authority'],
    ['maker letter', undefined, 'validity'],
    ['maker letter', '', 'validity'],
    ['maker letter', '2026-03-14', 'validity'],
    ['maker letter', '2026-03-13', 'validity'],
    ['maker letter', '2026-02-30', 'validity'],
    ['maker letter', '2027-13-01', 'validity'],
    ['maker letter', 'for ever', 'validity'],
    ['maker letter', '4000', 'validity'],
    ['maker letter', '0 h', 'validity'],
    ['maker letter', '-5 h', 'validity'],
    ['maker letter', 'NaN h', 'validity'],
    ['maker letter', '1e9 h', 'validity'],
  ])('on the authority of %j until %j is refused: %s', (authority, until, code) => {
    const walk = new Walk().toVerdict()
    expect(concede(walk, authority, until)).toBe(code)
    expect(walk.state.dispositions).toEqual({})
  })

  it.each([
    ['2026-03-15', { until: '2026-03-15' }],
    [' 4000 H ', { hours: 4000, from: 91_000 }],
    ['1 hours', { hours: 1, from: 91_000 }],
  ])('until %j carries it', (until, valid) => {
    const walk = new Walk().toVerdict()
    expect(concede(walk, 'maker letter 12', until)).toBeNull()
    expect(walk.last).toMatchObject({ authority: 'maker letter 12', valid })
    expect(walk.state.dispositions.disposition).toMatchObject({ authority: 'maker letter 12', valid })
  })

  it('is asked both in words, other choices are not', () => {
    const walk = new Walk().toVerdict().keys('5', 'KH', 'worn but runs')
    expect(walk.talk.ask?.kind).toBe('concession-authority')
    walk.keys('maker letter 12')
    expect(walk.talk.ask?.kind).toBe('concession-until')
    walk.keys('2027-01-01')
    expect(walk.last).toMatchObject({ type: 'disposition.set', valid: { until: '2027-01-01' } })
    const other = new Walk().toVerdict().keys('2', 'KH', 'hone it')
    expect(other.last).toMatchObject({ type: 'disposition.set', choice: 'rework' })
    expect(other.last).not.toHaveProperty('valid')
  })

  it('falls with its verdict when a reading is corrected', () => {
    const walk = new Walk().toVerdict()
    concede(walk, 'maker letter 12', '4000 h')
    const of = walk.state.readings['bore.centre.vertical']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '9.5070', why: 'misread' })
    expect(walk.entries.at(-2)).toMatchObject({ voids: ['bore_judged', 'disposition'] })
    expect(walk.state.dispositions.disposition?.void).toBe(true)
  })
})

describe('a decision that work waits on', () => {
  const defs = exampleDefs()
  const steps = defs.steps.map((placed) =>
    placed.step.kind === 'decide'
      ? { ...placed, step: { ...placed.step, waits_on: ['rework' as const, 'hold' as const] } }
      : placed,
  )
  const walk = () => new Walk({ ...defs, steps }).toVerdict()

  it('lets nothing on, and is asked again with what was decided', () => {
    const waits = walk().keys('2', 'KH', 'hone it')
    expect(waits.state.dispositions.disposition).toMatchObject({ choice: 'rework', void: false })
    expect(waits.prompt).toMatchObject({ kind: 'decide', step: { id: 'disposition' } })
    const view = promptView(waits.engine.defs, waits.state, waits.talk, {
      width: 79,
      record: 'EXAMPLE',
      ascii: false,
    })
    expect(view.ask.map(({ text }) => text)).toContain('Decided rework by KH: NOTHING GOES ON FROM HERE.')
  })

  it('goes on once another word was given, or another verdict', () => {
    const waits = walk().keys('2', 'KH', 'hone it', '1', 'PB', 'it can run, none given')
    expect(waits.prompt.kind).not.toBe('decide')
    const of = waits.state.readings['bore.centre.vertical']?.[0]?.seq ?? -1
    const anew = walk().keys('2', 'KH', 'hone it')
    anew.bring({ do: 'correct', of, typed: '9.5070', why: 'honed' })
    expect(anew.state.dispositions.disposition?.void).toBe(true)
  })

  it('waits on no other choice', () => {
    expect(walk().keys('1', 'KH', 'it can run, none given').prompt.kind).not.toBe('decide')
  })

  it('is asked in the file for choices that there are, and never for the first of them', () => {
    const found = (waits_on: string[]) =>
      lintProcedure({
        ...defs.procedure,
        steps: defs.procedure.steps.map((step) =>
          step.kind === 'decide' ? { ...step, waits_on: waits_on as ['hold'] } : step,
        ),
      }).map(({ code }) => code)
    expect(found(['rework', 'hold'])).toEqual([])
    expect(found(['accept'])).toEqual(['first-waits'])
    const few = defs.procedure.steps.map((step) =>
      step.kind === 'decide'
        ? { ...step, choices: ['accept', 'rework'] as ['accept', 'rework'], waits_on: ['replace' as const] }
        : step,
    )
    expect(lintProcedure({ ...defs.procedure, steps: few }).map(({ code }) => code)).toEqual([
      'unknown-choice',
    ])
  })
})

describe('a hold point', () => {
  it('has no disposition of any kind, whatever the files say', () => {
    expectTypeOf<Disposable>().toEqualTypeOf<'judge'>()
    const about = {
      id: 'decided',
      kind: 'decide',
      title: 'decided',
      about: 'isolated',
      choices: ['accept', 'concession'],
    }
    const walk = new Walk(smallDefs([gate('isolated', ['start'], [NO_START, WITNESS]), about]))
    walk.keys('RO', 'TC-401-1', 'NO START', 'ML')
    expect(walk.prompt.kind).toBe('decide')
    const input = { do: 'dispose', step: 'decided', choice: 'concession', person: 'KH', why: 'so' } as const
    expect(walk.bring({ ...input, authority: 'the boss', until: '4000 h' })).toBe('not-judged')
    expect(walk.state.dispositions).toEqual({})
  })
})

describe('the outcome', () => {
  it('is the verdict, whatever was decided about it', () => {
    const walk = new Walk().toVerdict()
    walk.keys('5', 'KH', 'worn but runs', 'maker letter 12', '4000 h', '91000', '')
    expect(walk.state.closed).toBe('MONITOR')
    expect(walk.bring({ do: 'note', text: 'late word' })).toBe('closed')
  })

  it('is HOLD with nothing judged or a void verdict, STOP under STOP', () => {
    const { defs } = new Walk().engine
    expect(outcomeOf(defs, new Walk().toBore().state)).toBe('HOLD')
    const walk = new Walk().toVerdict()
    expect(outcomeOf(defs, walk.state)).toBe('MONITOR')
    walk.bring({ do: 'reopen', step: 'strip', why: 'look again' })
    expect(outcomeOf(defs, walk.state)).toBe('HOLD')
    walk.keys('stop')
    expect(outcomeOf(defs, walk.state)).toBe('STOP')
  })
})
