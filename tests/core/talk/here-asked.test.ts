// Questions about the thing that is asked now are told from the procedure, the machine record and the job, and take nothing.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { kindsDefs, PROVED_EMPTY } from '../../helpers/all-kinds.ts'
import { LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'

const said = (walk: Walk, line: string) => {
  const heard = hear(walk.engine.defs, walk.state, walk.talk, line, walk.now)
  expect(heard.input).toBeNull()
  return heard.say.join('\n')
}

describe('a question about what is asked here', () => {
  it.each([
    'why is a lock wanted on the barring motor?',
    'why do I need a lock at E-2',
    'why lock the barring motor',
  ])('%j tells the point and what its lock stands against', (line) => {
    expect(said(new Walk().toGate(), line)).toMatch(
      /^barring motor breaker, E-2: a point of the machine record, as it can turn the machine\.\nHold point 2: its locks stand against .*start/,
    )
  })

  it('of a lock without its point is about the one that is asked', () => {
    expect(said(new Walk().toGate(), 'why do I hang a lock here')).toMatch(/^main driver breaker, E-1:/)
  })

  it.each(['where do I put the mike?', 'where does the gauge go', 'where do I measure it'])(
    '%j tells the place, and how the gauge in hand is held there',
    (line) => {
      expect(said(new Walk().toBore(), line)).toMatch(
        /^Here: Bore, HEAD END of ring travel, TOP TO BOTTOM\.\nMeasure the diameter here.*\nSwing it across for the MOST/,
      )
    },
  )

  it('of a wait where none runs says so, and of what would fall who tells it', () => {
    expect(said(new Walk().toGate(), 'how long do I wait')).toMatch(/^No wait runs now\./)
    expect(said(new Walk().toBore(), 'what would fall?')).toMatch(
      /name all that would become void before you agree/,
    )
  })

  it('of a wait that runs tells what is left of it by the clock', () => {
    const walk = new Walk(kindsDefs(PROVED_EMPTY)).keys('RO', 'TC-401-1', 'P-4', '0')
    expect(said(walk, 'how long do I wait')).toBe('no rise: 15 min, from the moment you type ALL SHUT IN.')
    walk.keys('all shut in').wait(5)
    expect(said(walk, 'how long do I wait')).toMatch(
      /^no rise, hold point 1: 15 min in all, 10 min left by the clock/,
    )
    walk.wait(20)
    expect(said(walk, 'how long is this wait')).toMatch(/over by the clock/)
  })

  it('of a time that the sheet asks quotes it, and says that no clock counts it', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    expect(said(walk, 'how long do I wait')).toMatch(
      /no clock of the program counts it:\n {2}Wait a full minute/,
    )
  })

  it('of a point by the number on its plate is about that point', () => {
    expect(said(new Walk().toGate(), 'where is E-1?')).toMatch(
      /^main driver breaker, E-1: an isolation point/,
    )
    expect(said(new Walk().toGate(), 'where is V-99?')).not.toMatch(/isolation point/)
  })

  it('of the gas that was read tells what stands, and after a STOP that nothing does', () => {
    const walk = new Walk().toBore()
    expect(said(walk, 'what gas figures are on record')).toMatch(
      /^Hold point 2, gas where people breathe.*20\.9/,
    )
    expect(said(walk, 'how much oxygen is in there')).toMatch(/gas inside the opening.*20\.8/)
    walk.keys('stop', '9', 'I leaned on it', 'ML')
    expect(said(walk, 'what gas figures are on record')).toBe('No gas reading stands on record now.')
  })

  it('of good or bad calls nothing so, and at a verdict tells what it means', () => {
    expect(said(new Walk().toBore(), 'is that good or bad?')).toMatch(/^Barover calls no figure good or bad/)
    expect(said(new Walk().toVerdict(), 'is that good or bad')).toMatch(
      /^Sheet 18, Bore judged: MONITOR\.\nOPEN, no lead has decided: NC-1[\s\S]*Terms of the trade, MONITOR:/,
    )
    const oxygen = new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES)
    expect(said(oxygen, 'is 8 ok')).toMatch(/^8 %vol, oxygen.*OUT OF ITS LIMIT.*\n {2}The limit of this line/)
  })

  it('of leaving and of how long gas stands is told from the job', () => {
    const walk = new Walk().toBore()
    expect(said(walk, 'what would fall if I leave now')).toMatch(
      /^leave keeps all that was keyed\. Every hold point falls/,
    )
    expect(said(walk, 'how long is the gas good for?')).toMatch(/lapses/)
  })
})
