// Words keyed out of habit: each is told which word does it, and none of them ever does anything.
import { describe, expect, it } from 'vitest'
import { hear } from '../../../src/core/talk/hear.ts'
import { exampleDefs, LOCK_LINES, Walk, WORD_LINES } from '../../helpers/example.ts'
import { walkExample } from '../../helpers/walked.ts'

const HABITS = ['?', '??', 'undo', 'cancel', 'skip', 'ok', 'OK.', 'y', 'yes', 'no', 'enter', 'quit', 'exit']

const heard = (walk: Walk, line: string) => hear(walk.engine.defs, walk.state, walk.talk, line)
const said = (walk: Walk, line: string) => heard(walk, line).say.join('\n')

describe('a word keyed out of habit', () => {
  it('changes nothing at any prompt of the whole example, and is answered', () => {
    let seen = 0
    walkExample((walk) => {
      if (walk.talk.ask !== null) return
      for (const word of HABITS) {
        const before = walk.entries.length
        const one = walk.copy()
        one.key(word)
        expect([walk.prompt.kind, word, one.entries.slice(before).map((e) => e.type)]).toEqual([
          walk.prompt.kind,
          word,
          [],
        ])
        expect(one.said.join(' ')).not.toBe('')
        expect(one.talk.ask).toBeNull()
        seen++
      }
    })
    expect(seen).toBeGreaterThan(500)
  })

  it('? tells the words and what may be asked', () => {
    const lines = said(new Walk().toBore(), '?')
    for (const word of ['correct', 'n/a', 'leave', 'how far am I']) expect(lines).toContain(word)
  })

  it('undo names back and correct, and under STOP says that nothing is changed', () => {
    expect(said(new Walk().toBore(), 'undo')).toMatch(/Nothing was changed.*\n.*back .*correct /)
    expect(said(new Walk().toBore().keys('stop'), 'undo')).toContain('STOP is open: nothing is changed')
  })

  it.each([
    ['a reading that may be n/a', new Walk().toBore(), 'n/a, with the reason'],
    [
      'a reading that may not',
      new Walk(
        exampleDefs({
          procedure: (text) =>
            text
              .replaceAll(/not_applicable: \w+/g, '')
              .replaceAll(/kind: read\n/g, 'kind: read\n    not_applicable: never\n'),
        }),
      ).toBore(),
      'has no n/a: measure it',
    ],
    ['a hold point', new Walk().toGate(), 'without this evidence it stays shut'],
    ['a step', new Walk().keys('RO', 'TC-401-1'), 'Only a reading can be n/a'],
  ])('skip at %s says whether there is an n/a', (_what, walk, words) => {
    const { input, talk, say } = heard(walk, 'skip')
    expect(say.join(' ')).toContain(words)
    expect(talk.ask).toBeNull()
    expect(input === null || input.do === 'evidence').toBe(true)
  })

  it.each([
    ['ok', new Walk().toBore(), 'the figure in inches, as M-3 shows it'],
    ['ok', new Walk().toGate().keys(...LOCK_LINES, ...WORD_LINES), 'the figure in %vol that the meter shows'],
    ['ok', new Walk().keys('RO', 'TC-401-1'), 'Key done, or press Enter alone, once it is done'],
    ['y', new Walk().throughGate(), '1 if it is so, 2 if it is not'],
    ['yes', new Walk().toBore().keys('9.053'), '1, 2 or 3'],
    ['yes', new Walk().toVerdict(), 'the decision, 1 to 6 or its word'],
    ['ok', new Walk(), 'your initials'],
    ['ok', new Walk().keys('RO'), 'the tag on the plate'],
    ['ok', new Walk().keys('stop'), 'why STOP was called'],
  ])('%s where something else is asked is told what: %#', (word, walk, words) => {
    expect(said(walk, word)).toContain(words)
  })

  it('at a hold point is refused in one sentence where that says what is wanted', () => {
    const walk = new Walk().toGate().keys(...LOCK_LINES)
    expect(walk.key('y')).toBe('words')
    expect(walk.said.filter((line) => line.includes('NO START'))).toEqual([
      'That does not count as evidence: only if it is so, type NO START in full.',
    ])
    const locks = new Walk().toGate()
    locks.key('yes')
    expect(locks.said).toEqual([expect.stringMatching(/^Key the number on the lock at /)])
  })

  it('is the answer where it is one', () => {
    const again = new Walk().toGate().keys('L-101', 'back')
    expect(heard(again, 'yes').input).toMatchObject({ do: 'ask-again' })
    expect(heard(new Walk().keys('stop', '1', 'gas was smelt'), '?').input).toMatchObject({ calledBy: null })
    expect(heard(new Walk().toBore().keys('n/a'), 'no').input).toMatchObject({ do: 'not-applicable' })
  })

  it.each(['undo', 'skip', '?', 'quit'])(
    '%s within a question leaves it standing, and back leaves it',
    (word) => {
      for (const walk of [new Walk().toBore().keys('note'), new Walk().toBore().keys('9.053', '3')]) {
        const { input, talk, say } = heard(walk, word)
        expect([input, talk]).toEqual([null, walk.talk])
        expect(say.join(' ')).toContain('back leaves this question')
      }
    },
  )
})
