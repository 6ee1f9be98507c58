// Oxygen that nobody can breathe passes inside an opening, and is told from then on: at each sheet behind it, to whoever asks, to a lead.
import { describe, expect, it } from 'vitest'
import { gatesBefore } from '../../../src/core/job/gate.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import { GATE_LINES, Walk } from '../../helpers/example.ts'
import { reviewed } from '../../helpers/reviewed.ts'

/** Up to the witness, with this much oxygen inside; `8` only where the meter sees flammables by it. */
function atWitness(oxygen: string): Walk {
  const lines = GATE_LINES.slice(0, -1)
  return new Walk().toGate().keys(...lines.map((line, i) => (i === lines.length - 3 ? oxygen : line)))
}

/** What is asked of hydrogen sulfide inside, with this much oxygen there. */
function atSulfide(oxygen: string): string {
  const lines = GATE_LINES.slice(0, -2)
  const { engine, state, talk } = new Walk()
    .toGate()
    .keys(...lines.map((line, i) => (i === lines.length - 2 ? oxygen : line)))
  const { ask } = promptView(engine.defs, state, talk, { width: 79, record: 'EXAMPLE', ascii: true })
  return ask.map(({ text }) => text).join(' ')
}

const must = ({ engine, state, talk }: Walk) =>
  promptView(engine.defs, state, talk, { width: 79, record: 'EXAMPLE', ascii: true }).must.map(
    ({ text }) => text,
  )
const said = (walk: Walk, line: string) =>
  hear(walk.engine.defs, walk.state, walk.talk, line, walk.now).say.join('\n')

const WARNING = '15 %vol oxygen inside: NO HEAD IN, NOBODY BREATHES THERE'

describe('little oxygen inside an opening', () => {
  it('is told first of all at the witness and at each sheet behind the hold point, and in a question there', () => {
    const walk = atWitness('15')
    expect(must(walk)[0]).toBe(WARNING)
    walk.keys('ML')
    for (const line of ['1', '1', '71.2', '70.4', '1', '9.5000', '9.5033', 'note']) {
      const { prompt } = walk
      const isBehind = 'step' in prompt && gatesBefore(walk.engine.defs, prompt.step).length > 0
      if (isBehind) expect(must(walk)[0]).toBe(WARNING)
      walk.key(line)
    }
    expect(walk.talk.ask).not.toBeNull()
    expect(must(walk)).toContain(WARNING)
  })

  it.each([
    'is it safe to look in',
    'can I put my head in',
    'can I look in with my head?',
    'is the air bad?',
  ])('%j is told it before what is let in', (line) => {
    const told = said(atWitness('15').keys('ML'), line)
    expect(told).toMatch(
      /NOBODY BREATHES THERE OR PUTS A HEAD IN: hold point 2, oxygen inside the opening, 15 %vol\./,
    )
  })

  it('is told where hydrogen sulfide is read there, as its cell may not see it', () => {
    expect(atSulfide('15')).toMatch(/a low figure proves nothing \(AIHA, .*p\. 33\)/i)
    expect(atSulfide('20.8')).toMatch(/Must be at most 5 ppm/)
    expect(atSulfide('20.8')).not.toMatch(/proves nothing/)
  })

  it('is asked about in the review, and of air nothing is told anywhere', () => {
    const about = (walk: Walk) => reviewed(walk).exceptions.filter(({ kind }) => kind === 'air')
    expect(about(atWitness('15').keys('ML'))).toMatchObject([
      { what: '2 oxygen inside the opening: 15 %vol, nobody breathes there', open: false },
    ])
    const fresh = atWitness('20.8').keys('ML')
    expect([about(fresh), must(fresh).filter((text) => /NOBODY/.test(text))]).toEqual([[], []])
    expect(said(fresh, 'is it safe to look in')).not.toMatch(/NOBODY/)
  })
})
