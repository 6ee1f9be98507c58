// Sentences that do not begin like a question, where no words are asked and where they are.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { BORE_LINES, LOCK_LINES, Walk } from '../../helpers/example.ts'

const heard = (walk: Walk, line: string) => hear(walk.engine.defs, walk.state, walk.talk, line, walk.now)
const said = (walk: Walk, line: string) => heard(walk, line).say.join('\n')

const pick = () => new Walk().throughGate().keys('1')
const reading = () => new Walk().toBore()
const seen = () => new Walk().throughGate()
const doubt = () => new Walk().toBore().keys('9.053')

describe('a sentence where a number or a figure is asked', () => {
  it.each([
    ['pick', pick],
    ['read', reading],
    ['confirm', seen],
    ['doubt', doubt],
  ] as const)('is answered at %s, takes nothing, and is not met with a list of numbers alone', (kind, at) => {
    const walk = at()
    expect(walk.prompt.kind).toBe(kind)
    expect(heard(walk, 'the ring is stuck').input).toBeNull()
    expect(said(walk, 'the ring is stuck')).toMatch(/Nothing was taken\. Asked is .*\n.*stop blocks the job/)
    expect(said(walk, 'not sure what this means')).toMatch(/Asked is .*\nask, and your words behind it/)
    expect(said(walk, 'gas is coming out')).toMatch(/^FIRST: come out, everybody/)
    expect(said(walk, 'I dropped a nut in the bore')).toMatch(/safe shows the whole make-safe sheet/)
  })

  it('has what to do in trouble before it, and no figure or number is taken for a sentence', () => {
    expect(said(reading(), 'it does not fit in')).toMatch(/^In trouble: Come out and say STOP\./)
    expect(heard(reading(), '9.5033').input).toMatchObject({ do: 'read' })
    expect(heard(pick(), '1').input).toMatchObject({ do: 'pick' })
    expect(said(pick(), 'no such thing')).toMatch(/Key 1/)
  })

  it('is no answer at a line of a hold point either, and the line stays missing', () => {
    const walk = new Walk().toGate()
    const { refusal, say, input } = heard(walk, 'the lock is stuck')
    expect(say.join('\n')).toContain('In trouble: Come out, stand clear, say STOP.')
    walk.keys('the lock is stuck')
    expect([refusal?.code, input?.do]).toContain('evidence')
    expect(Object.keys(walk.state.gates.hold_point?.given ?? {})).toEqual([])
  })
})

describe('what somebody sees or did, told where a choice or set words are asked', () => {
  const words = () => new Walk().toGate().keys(...LOCK_LINES)
  const look = () => new Walk().toBore().keys(...BORE_LINES)

  it.each(['the bore is scored', 'I can feel a ridge', 'there is rust at the bottom'])(
    '%j takes nothing and is pointed to a note',
    (line) => {
      for (const at of [seen, pick, words, look]) {
        const walk = at()
        expect(said(walk, line)).toMatch(/Nothing was taken\. Asked[\s\S]*note alone puts these words there/)
        const before = walk.entries.length
        walk.keys(line)
        expect(walk.entries.filter(({ type }) => type !== 'evidence.failed')).toHaveLength(before)
      }
    },
  )

  it('a lock number that was wrong is pointed to the word that mends it', () => {
    for (const at of [words, seen, look])
      expect(said(at(), 'I keyed the wrong lock number')).toMatch(/correct/)
  })

  it('the set words themselves are those words', () => {
    const walk = words().keys('NO START')
    expect(walk.last).toMatchObject({ type: 'evidence.given', shown: 'NO START' })
  })
})

describe('words that tell of danger', () => {
  it.each([
    ['a note', () => reading().keys('note'), 'gas is coming out'],
    ['what is seen instead', () => seen().keys('2'), 'it moved, he is hurt'],
    ['a reason', () => doubt().keys('3'), 'my partner does not answer'],
  ] as const)('where %s is asked go on record and are answered', (_, at, line) => {
    const walk = at()
    const { input, say } = heard(walk, line)
    expect(JSON.stringify(input)).toContain(line)
    expect(say[0]).toBe('FIRST: come out, everybody, and stand clear. Say STOP.')
    const before = walk.entries.length
    walk.keys(line)
    expect(JSON.stringify(walk.entries.slice(before))).toContain(line)
  })

  it('in one line with the word note are answered too, and a question mark does not hold them back', () => {
    expect(said(reading(), 'note gas is coming out of the port')).toMatch(/^FIRST: come out/)
    const { input, say } = heard(reading().keys('note'), 'is he hurt? he is hurt')
    expect(input).toMatchObject({ do: 'note' })
    expect(say[0]).toMatch(/^FIRST/)
  })

  it('are told from words that tell of none, which are only put down', () => {
    for (const line of [
      'the gas meter was changed',
      'a rag is stuck to the wall',
      'one pin missing from the drawing',
    ])
      expect(heard(reading().keys('note'), line)).toMatchObject({
        say: [],
        input: { do: 'note', text: line },
      })
  })
})

describe('a slip that is told as it is', () => {
  it.each([
    'i swapped two lock numbers',
    'oops wrong number on the counterbore',
    'i think i made a mistake',
    'that is the wrong one, E-2 is L-102',
  ])('%j is told what puts it right, and what to do where it is none', (line) => {
    for (const at of [new Walk().toGate().keys('L-101'), reading()]) {
      const told = said(at, line)
      expect(told).toMatch(/\bback\b[\s\S]*\bcorrect\b/)
      expect(told).toMatch(/hands off, stand clear, say STOP\./)
    }
  })
})

it('danger that is told, and not asked about, is said to be on no record yet', () => {
  const walk = new Walk().toGate().keys(...LOCK_LINES)
  expect(said(walk, 'it moved a bit')).toMatch(/None of it is on record yet: note alone/)
  expect(said(walk, 'theres a bit of hissing')).toMatch(/NO START is not typed/)
  expect(said(walk, 'what if it moved')).not.toMatch(/on record yet: note alone/)
})
