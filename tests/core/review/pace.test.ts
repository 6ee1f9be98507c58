// Wear since the last overhaul beside that before it, and the words at the prompt of a review.
import { describe, expect, it } from 'vitest'
import { wordBlocks } from '../../../src/core/review/keyed-words.ts'
import { paceOf } from '../../../src/core/review/kinds/pace.ts'
import { layOut, plainText } from '../../../src/core/sheet/block.ts'
import { figureSums } from '../../../src/core/talk/figure-sums.ts'
import type { WearHistory } from '../../../src/core/wear/history.ts'
import { exampleDefs, Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

const U = 5e-6
const history = (...wear: number[]): WearHistory => ({
  wears: 'larger',
  readings: wear.map((value, n) => ({ hours: 10_000 * n, value: 0.24 + value, U, since: 'nothing' })),
})

describe('wear since the last overhaul', () => {
  it('more than twice as fast, or less than half, and by more than the errors tell, is asked', () => {
    expect(paceOf(history(0, 20e-6, 80e-6))).toMatchObject({
      last: expect.closeTo(6e-9, 11),
      before: expect.closeTo(2e-9, 11),
    })
    expect(paceOf(history(0, 60e-6, 70e-6))).not.toBeNull()
  })

  it.each([
    ['as it was before', history(0, 20e-6, 41e-6)],
    ['faster, but not twice', history(0, 40e-6, 110e-6)],
    ['twice, and no further than measuring error', history(0, 4e-6, 14e-6)],
    ['of two readings only', history(0, 50e-6)],
  ])('%s is not', (_, one) => {
    expect(paceOf(one)).toBeNull()
  })

  it('of a size that wears smaller is told by the same measure', () => {
    const turned = history(0, 20e-6, 80e-6)
    const smaller = turned.readings.map((one) => ({ ...one, value: 1 - one.value }))
    expect(paceOf({ wears: 'smaller', readings: smaller })?.last).toBeCloseTo(6e-9, 11)
  })
})

describe('a word at the prompt of a review', () => {
  const review = reviewed(new Walk().toVerdict())
  const said = (keyed: string) =>
    wordBlocks(review, keyed)
      ?.map((block) => plainText(layOut(block, { width: 79, record: 'EXAMPLE', ascii: true })))
      .join('\n')

  it.each(['decide', 'what must I decide', 'OPEN'])('%s lists what is open, and nothing else', (keyed) => {
    const open = review.exceptions.filter((one) => one.open)
    const told = said(keyed) ?? ''
    expect(open.length).toBeGreaterThan(0)
    expect(told).toContain(`Open: ${open.length}`)
    expect(told.match(/^EXAMPLE +\d+ \|/gm)).toHaveLength(open.length)
  })

  it('that stands in the list gives the numbers it stands in; any other says what can be keyed', () => {
    expect(said('fall-back')).toMatch(/with "fall-back" in .*\d \| .*by fall-back limits/s)
    expect(said('why')).toMatch(/What can be keyed.*1 to \d+: what is behind.*decide: what is open/s)
  })

  it('is no number, and a number is none', () => {
    expect(wordBlocks(review, '99')).toBeNull()
    expect(wordBlocks(review, '3-9')).toBeNull()
  })
})

it('a figure is told by its name, and never by what a procedure writes for it', () => {
  const figure = {
    characteristic: 'rod-undersize',
    is: 'machine.rod_diameter - min(min(rod_top), min(rod_side))',
    value: 0.00376 * 0.0254,
    unknown: [],
    expandedU: 0.0003 * 0.0254,
    resolution: 0.0001 * 0.0254,
    limit: null,
    parts: [],
  }
  const inputs = { figures: [figure], holds: [], k: 2 as const, simpleAcceptance: null }
  const result = { verdict: 'HOLD' as const, judged: [], governs: null, holds: [] }
  const record = { compute: 'figures' as const, version: '0', readings: [], inputs, result }
  const told = (how: 'named' | 'written') => figureSums(exampleDefs(), record, how).slice(0, 2)
  expect(told('named')).toEqual(['rod undersize: 0.00376 in', '  U of the figure 0.00030 in (k = 2).'])
  expect(told('written')[0]).toBe(`rod undersize: ${figure.is} = 0.00376 in`)
})
