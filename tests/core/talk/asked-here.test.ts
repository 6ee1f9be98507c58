// Which lines are heard while sides of a prompt are still to be turned over: what asks, and never what may be an answer.
import { describe, expect, it } from 'vitest'
import { isAskedHere } from '../../../src/core/talk/asked-here.ts'
import { Walk } from '../../helpers/example.ts'
import { defsOf } from '../../helpers/trainees.ts'

const here = (walk: Walk, line: string) => isAskedHere(walk.engine.defs, walk.state, walk.talk, line)

describe('while sides are turned over', () => {
  const practised = new Walk(defsOf('bore-inspection', 'tc-401'), 'PRACTICE', {
    practice: { seed: 1, level: 1 },
  })

  it.each(['look', 'measure', 'look quick', 'hint', 'Hint', 'what is a liner?'])(
    '%j is heard in practice',
    (line) => {
      expect(here(practised.copy().keys('RO'), line)).toBe(true)
    },
  )

  it.each(['TC-401-1', '9.5033', 'look here', 'wait 5', 'fault 1', '1'])('%j is not', (line) => {
    expect(here(practised.copy().keys('RO'), line)).toBe(false)
  })

  it.each(['look', 'measure', 'hint'])('%j asks nothing of a real machine', (line) => {
    expect(here(new Walk().toBore(), line)).toBe(false)
  })
})
