// A step that an answer leaves out is named where the job passes it by, with the answer and how to change it.
import { describe, expect, it } from 'vitest'
import { passedByRows } from '../../../src/core/sheet/left-out.ts'
import { entryBlocks } from '../../../src/core/sheet/shown-block.ts'
import { BORE_LINES, Walk } from '../../helpers/example.ts'

const toldBy = ({ engine: { defs }, state, last }: Walk) =>
  passedByRows(defs, state, last).map(({ text }) => text)
const atStrip = () => new Walk().toBore().keys(...BORE_LINES)
const STRIP = ['9.5008', '9.5008', '9.5007', '9.5007']

describe('passed by', () => {
  it('is said with the last reading before it, and not sooner', () => {
    const walk = atStrip().keys('1')
    expect(toldBy(walk)).toEqual([])
    for (const line of STRIP.slice(0, -1)) expect(toldBy(walk.keys(line))).toEqual([])
    expect(toldBy(walk.keys(STRIP.at(-1) ?? ''))).toEqual([
      'Left out: 10, by the answer at 8; the word correct changes it.',
    ])
    expect(walk.prompt).toMatchObject({ kind: 'read', step: { number: 11 } })
  })

  it('is two steps in one line where one answer leaves both out', () => {
    expect(toldBy(atStrip().keys('2'))).toEqual([
      'Left out: 9, by the answer at 8; the word correct changes it.',
    ])
    expect(toldBy(atStrip().keys('3'))).toEqual([
      'Left out: 9 and 10, by the answer at 8; the word correct changes it.',
    ])
  })

  it('is nothing where the next step is asked', () => {
    expect(toldBy(new Walk().toBore())).toEqual([])
    expect(toldBy(atStrip())).toEqual([])
  })

  it('stands in the transcript of the live sheet, under what was taken where there is room', () => {
    const walk = atStrip().keys('1', ...STRIP)
    const shown = (width: number, how: 'live' | 'read-back') =>
      entryBlocks(walk.engine.defs, walk.state, walk.last, { width, record: 'EXAMPLE', ascii: true }, how)
        .flatMap(({ rows }) => rows.map(({ text }) => text))
        .filter((text) => /Left out|9\.5007/.test(text))
    expect(shown(79, 'live').at(-1)).toMatch(/^Left out: 10/)
    expect(shown(39, 'live').at(0)).toMatch(/^Left out: 10/)
    expect(shown(39, 'live').at(-1)).toMatch(/9\.5007/)
    expect(shown(79, 'read-back').join(' ')).not.toContain('Left out')
  })
})
