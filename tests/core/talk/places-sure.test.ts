// A length with fewer places than its gauge reads is asked for once in full; whatever is keyed second is taken as it stands.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'

const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }
const HE_V = 'bore.head_end.vertical'
const taken = (walk: Walk) => (walk.state.readings[HE_V] ?? []).map(({ typed }) => typed)

describe('a length with fewer places than its gauge reads', () => {
  it.each([
    ['9.503', '9.5030'],
    ['9.51', '9.5100'],
  ])('%s is asked for in full, and nothing is taken', (line, full) => {
    const walk = new Walk().toBore().keys(line)
    expect(taken(walk)).toEqual([])
    expect(walk.said.at(-1)).toBe(`${line}: nothing was taken yet, as M-3 reads to 4 places.`)
    const view = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(view.ask[0]?.text).toBe(`The whole figure as the instrument shows it, like ${full}`)
  })

  it('is taken as it is keyed second, in full or the same once more, or is left', () => {
    expect(taken(new Walk().toBore().keys('9.503', '9.5034'))).toEqual(['9.5034'])
    expect(taken(new Walk().toBore().keys('9.503', '9.503'))).toEqual(['9.503'])
    expect(taken(new Walk().toBore().keys('9.503', 'back'))).toEqual([])
    // A figure is not taken by one key.
    expect(taken(new Walk().toBore().keys('9.503', '1'))).toEqual([])
  })

  it('with more places is asked for again as well, but for noughts at the end', () => {
    const walk = new Walk().toBore().keys('9.50342')
    expect(taken(walk)).toEqual([])
    expect(walk.said.at(-1)).toBe('9.50342: nothing was taken yet, as M-3 reads to 4 places.')
    const view = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(view.ask[0]?.text).toBe('The whole figure with 4 places, as the instrument shows it')
    expect(taken(walk.keys('9.5034'))).toEqual(['9.5034'])
    expect(taken(new Walk().toBore().keys('9.50340'))).toEqual(['9.50340'])
  })

  it('is not answered by the number of a choice, nor is a correction', () => {
    const walk = new Walk().toBore().keys('9.503', '1')
    expect(walk.talk.ask?.kind).toBe('places-sure')
    expect(walk.said.at(-1)).toMatch(/a figure is asked for here/)
    const mended = new Walk().toBore().keys('9.5033', 'back', 'misread', '1')
    expect(mended.talk.ask?.kind).toBe('correct-value')
    expect(mended.said.at(-1)).toMatch(/^Nothing was changed: a figure is asked for here/)
  })

  it('is doubted first where it cannot be, and not asked about at a thermometer or in full', () => {
    expect(new Walk().toBore().keys('9.05').prompt.kind).toBe('doubt')
    expect(taken(new Walk().toBore().keys('9.5030'))).toEqual(['9.5030'])
    const warm = new Walk().throughGate().keys('1', '1', '71')
    expect(warm.last).toMatchObject({ type: 'reading.taken', typed: '71' })
  })
})
