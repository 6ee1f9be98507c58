// A doubt about words is headed by what those words were asked for, not by the sheet that lies open.
import { expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { Walk } from '../../helpers/example.ts'

const headOf = (walk: Walk) => {
  const { margin, title } = promptView(walk.engine.defs, walk.state, walk.talk, {
    width: 79,
    record: 'EXAMPLE',
    ascii: true,
  })
  return `${margin} ${title}`
}

it('is headed as the question it is about', () => {
  const walk = new Walk().toBore().keys('9.5033', 'back', '1')
  walk.key('what is it?')
  expect(walk.talk.ask).toMatchObject({ kind: 'word-meant' })
  const doubted = headOf(walk)
  walk.key('back')
  expect(walk.talk.ask).not.toBeNull()
  expect(headOf(walk)).toBe(doubted)
})

it('of a slip further up names what is put right, and not the sheet that lies open', () => {
  const walk = new Walk().toBore().keys('correct', '1')
  const asked = headOf(walk)
  walk.key('why is that?')
  expect(walk.talk.ask).toMatchObject({ kind: 'word-meant' })
  expect(headOf(walk)).toBe(asked)
  expect(asked).toMatch(/^6 /)
})
