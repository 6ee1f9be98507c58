// Figures against their limits: what is missing holds, the worst word stands for the whole.
import { describe, expect, it } from 'vitest'
import { type Figure, judgeFigures } from '../../../src/core/metrology/figure-judge.ts'
import type { Limit } from '../../../src/core/metrology/limit.ts'

const limit = (more: Partial<Limit> = {}): Limit => ({
  characteristic: 'ring-end-gap',
  bound: 'at-most',
  value: 0.057,
  unit: 'in',
  inclusive: true,
  beyond: 'REPLACE',
  source: 'a book',
  approvedBy: 'KH',
  since: '2026-01-01',
  from: 'machine',
  book: 'TC-401-1',
  ...more,
})
const figure = (more: Partial<Figure> = {}): Figure => ({
  characteristic: 'ring-end-gap',
  is: 'max(gaps)',
  value: 0.03,
  unknown: [],
  expandedU: 0.001,
  resolution: 0.001,
  limit: limit(),
  parts: [],
  ...more,
})
const judge = (figures: readonly Figure[], holds: readonly string[] = []) =>
  judgeFigures({ figures, holds, k: 2, simpleAcceptance: null })
const word = (more: Partial<Figure>) => judge([figure(more)]).verdict

describe('judgeFigures', () => {
  it('accepts inside by U, sends beyond by U, and holds between', () => {
    expect(word({ value: 0.056 })).toBe('ACCEPT')
    expect(word({ value: 0.0565 })).toBe('HOLD')
    expect(word({ value: 0.059 })).toBe('REPLACE')
  })

  it('bounds from below where the limit does: a gap under the least is to be filed, never better than new', () => {
    const least = limit({
      characteristic: 'ring-end-gap-least',
      bound: 'at-least',
      value: 0.019,
      beyond: 'REWORK',
    })
    const at = (value: number) => word({ characteristic: 'ring-end-gap-least', value, limit: least })
    expect([at(0.022), at(0.019), at(0.012)]).toEqual(['ACCEPT', 'HOLD', 'REWORK'])
  })

  it.each([
    ['no value', { value: null, unknown: ['gaps is not known'] }],
    ['no value and no reason', { value: null }],
    ['a value below nought', { value: -0.001 }],
    ['a value that is not a number', { value: Number.NaN }],
    ['no limit', { limit: null }],
    ['the limit of something else', { limit: limit({ characteristic: 'ring-side-clearance' }) }],
    ['no stated error', { expandedU: null }],
    ['an error that is not a number', { expandedU: Number.NaN }],
    ['no step of the instrument', { resolution: null }],
    ['a limit of nought', { limit: limit({ value: 0 }) }],
  ] as const)('holds on %s', (_what, more) => {
    const { verdict, holds } = judge([figure(more)])
    expect(verdict).toBe('HOLD')
    expect(holds).toHaveLength(1)
    expect(holds[0]).toMatch(/\w{4}/)
  })

  it('holds everything on what makes the measuring untrusted, and on nothing to judge', () => {
    const { verdict, judged, holds, governs } = judge([figure(), figure({ value: 0.09 })], ['no set-check'])
    expect(verdict).toBe('HOLD')
    expect(judged.map((one) => one.judgement.verdict)).toEqual(['HOLD', 'HOLD'])
    expect(holds).toEqual(['no set-check'])
    expect(governs).toBeNull()
    expect(judge([]).verdict).toBe('HOLD')
  })

  it('is as bad as its worst figure, and names what uses most of its limit', () => {
    const other = figure({
      characteristic: 'ring-side-clearance',
      value: 0.003,
      limit: limit({ characteristic: 'ring-side-clearance', value: 0.006, beyond: 'REWORK' }),
      expandedU: 0.0005,
      resolution: 0.0005,
    })
    const both = judge([figure({ value: 0.0285 }), other])
    expect(both.verdict).toBe('ACCEPT')
    expect(both.governs?.characteristics).toEqual(['ring-end-gap', 'ring-side-clearance'])
    expect(judge([figure({ value: 0.09 }), other]).verdict).toBe('REPLACE')
    expect(judge([figure({ value: null, unknown: ['x'] }), figure({ value: 0.09 })]).verdict).toBe('HOLD')
  })
})
