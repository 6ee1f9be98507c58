// A verdict on figures says what was found by eye beside it: a crack has no size.
import { describe, expect, it } from 'vitest'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { AFTER_LINES, BORE_LINES, exampleDefs, noOverhauls, Walk } from '../../helpers/example.ts'
import { reported } from '../../helpers/reported.ts'

/** Sizes that are all ACCEPT, with this seen at the surface. */
function judged(...surface: readonly string[]): Walk {
  const small = BORE_LINES.map((_, i) => (i % 4 < 2 ? '9.5012' : '9.5011'))
  const after = AFTER_LINES.flatMap((line, i) => (i === 6 ? surface : [line]))
  return new Walk(exampleDefs({ machine: noOverhauls })).toBore().keys(...small, ...after)
}

const sheet = ({ engine, state, entries }: Walk) => {
  const entry = entries.find(({ type }) => type === 'verdict.given')
  if (entry === undefined) throw new Error('not judged')
  return (entryBlock(engine.defs, state, entry)?.rows ?? []).map(({ text }) => text).join('\n')
}

const FOUND = /Of figures alone\. Found besides, and in no figure of it:\n {4}NC-1 Surface.*: A crack.*; OPEN/

describe('a crack in a bore whose sizes are good', () => {
  it('stands under the verdict, which does not say that nothing is to be done', () => {
    const walk = judged('4', 'by the port, 20 mm')
    expect(Object.values(walk.state.verdicts)[0]?.verdict.result.verdict).toBe('ACCEPT')
    expect(sheet(walk)).toMatch(FOUND)
    expect(sheet(walk)).not.toContain('Nothing to do')
    const report = JSON.stringify(reported(walk).verdicts)
    expect(report).toContain('Of figures alone')
  })

  it('is not told of where there is none', () => {
    expect(sheet(judged('1'))).toContain('Nothing to do to the bore.')
    expect(sheet(judged('1'))).not.toContain('Of figures alone')
  })
})

it('whoever decides on MONITOR has what was found besides in sight', () => {
  const walk = new Walk().toBore().keys(...BORE_LINES)
  walk.keys(...AFTER_LINES.flatMap((line, i) => (i === 6 ? ['4', 'by the port'] : [line])))
  expect(walk.prompt.kind).toBe('decide')
  const view = promptView(walk.engine.defs, walk.state, walk.talk, {
    width: 79,
    record: 'EXAMPLE',
    ascii: true,
  })
  expect(view.ask.map(({ text }) => text).join('\n')).toMatch(FOUND)
})
