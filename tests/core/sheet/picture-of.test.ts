// A step that sends its reader to the readings shows them, where there is room.
import { describe, expect, it } from 'vitest'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { BORE_LINES, exampleDefs, Walk } from '../../helpers/example.ts'

const style = { width: 79, record: 'EXAMPLE' as const, ascii: true }
const atWear = (walk = new Walk()) => walk.toBore().keys(...BORE_LINES, '3', '9.7502', '1')
const drawn = (walk: Walk) => {
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, style)
  const live = fitLive({
    ...{ view, foot: foot(defs, walk.state, walk.now), style, rows: 24, columns: 80, notice: null },
    taken: 2,
  })
  return live.above.map(({ text }) => text).join('\n')
}

describe('where the wear lies', () => {
  it('is asked beside the figures of the bore at 80 by 24', () => {
    const walk = atWear()
    expect(walk.prompt).toMatchObject({ kind: 'observe', step: { number: 13 } })
    const text = drawn(walk)
    for (const figure of ['9.5034', '9.5069', '9.5027', '9.5021', '9.5035', '9.5019'])
      expect(text).toContain(figure)
    expect(text).toContain('4  I cannot tell')
  })

  it('tells them in words where nothing is drawn', () => {
    const walk = atWear()
    const view = promptView(walk.engine.defs, walk.state, walk.talk, { ...style, linear: true })
    expect(
      view.drawings
        .flat()
        .map(({ text }) => text)
        .join(' '),
    ).toContain('9.5069')
  })
})

it('a step that does not ask for them shows none', () => {
  const silent = exampleDefs({
    procedure: (text) => text.replace('    drawing: readings\n', ''),
  })
  expect(drawn(atWear(new Walk(silent)))).not.toContain('9.5069')
  expect(drawn(new Walk().toBore().keys(...BORE_LINES, '3', '9.7502'))).not.toContain('9.5069')
})
