// What check says of tests over time: of one that is tied wrongly, and of one that is not tied at all.
import { describe, expect, it } from 'vitest'
import { lintProcedure } from '../../src/core/definition/lint-procedure.ts'
import { omittedFault } from '../../src/core/definition/omitted.ts'
import { TIE, TIED_STEPS, tiedProcedure } from '../helpers/all-kinds.ts'
import type { Raw } from '../helpers/small-job.ts'

const CODES = [
  ...[
    'unknown-step',
    'wrong-step',
    'test-order',
    'no-wait',
    'not-behind-stand',
    'ends-itself',
    'untied-test',
  ],
  'repeated-id',
]
const ours = (tests: readonly Raw[], steps: readonly Raw[] = TIED_STEPS) =>
  lintProcedure(tiedProcedure(tests, steps)).filter(({ code }) => CODES.includes(code))
const codes = (more: Raw, steps = TIED_STEPS) => ours([{ ...TIE, ...more }], steps).map(({ code }) => code)
const changed = (id: string, more: Raw) =>
  TIED_STEPS.map((step) => (step.id === id ? { ...step, ...more } : step))

describe('a test over time', () => {
  it('passes where it is tied', () => {
    expect(codes({})).toEqual([])
    expect(codes({ settles: '10 min' })).toEqual([])
  })

  it('is refused where readings on both sides of a wait are not tied', () => {
    expect(ours([])).toMatchObject([{ code: 'untied-test', path: ['steps', 4, 'id'] }])
    // Also where only a judge tells that the two belong together.
    const apart = changed('first', { exposes: [] })
    expect(ours([], apart).map(({ code }) => code)).toEqual(['untied-test'])
    const unjudged = apart.filter(({ id }) => id !== 'judged')
    expect(ours([], unjudged)).toEqual([])
    expect(
      ours(
        [],
        unjudged.map((s) =>
          s.id === 'last' ? { ...s, when: { rule: 'last_gone == "x"', unknown: 'do' } } : s,
        ),
      ).map(({ code }) => code),
    ).toEqual(['unknown-step'])
  })

  it('names steps that are there, of the right kind, in their order', () => {
    expect(codes({ start: ['frist'] })).toEqual(['unknown-step', 'untied-test'].slice(0, 1))
    expect(codes({ start: ['gas_on'] })).toEqual(['wrong-step'])
    expect(codes({ stand: 'first' })).toEqual(['wrong-step'])
    expect(codes({ until: 'judged' })).toEqual(['wrong-step'])
    expect(codes({ from: 'first', settles: '10 min' })).toEqual(['wrong-step'])
    expect(codes({ start: ['last'], end: ['last'] })).toEqual(['test-order'])
    expect(codes({ from: 'gas_off' })).toEqual(['test-order'])
    expect(codes({ until: 'gas_on' })).toEqual(['test-order'])
    expect(ours([TIE, TIE]).map(({ code }) => code)).toEqual(['repeated-id'])
  })

  it('has a stand with a wait, and an end behind it that does not end the test', () => {
    expect(codes({ stand: 'ready' })).toContain('no-wait')
    expect(codes({}, changed('last', { exposes: ['start'] }))).toContain('not-behind-stand')
    expect(codes({}, changed('last', { lets_in: ['bad_air'] }))).toEqual(['ends-itself'])
  })

  it('keeps what it names from being left out of a part', () => {
    expect(omittedFault(tiedProcedure([TIE]), new Set(['gas_on']))).toContain("the test 'leak' refers to it")
    expect(omittedFault(tiedProcedure([]), new Set(['gas_on']))).toBeNull()
  })
})
