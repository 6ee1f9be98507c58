// The word attach and its questions: what is asked of the shell, and that none of it stands before a STOP or coming out.
import { describe, expect, it } from 'vitest'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import { afterFound, ageText, attachWord } from '../../../src/core/talk/ask-file.ts'
import { hear } from '../../../src/core/talk/hear.ts'
import type { Talk } from '../../../src/core/talk/heard.ts'
import { Walk } from '../../helpers/example.ts'

const FILE = {
  path: '/photos/wall.jpg',
  given: 'wall.jpg',
  size: 2_100_000,
  ageMs: 190_000,
  folder: '/photos',
}
const STYLE = { width: 79, record: 'EXAMPLE' as const, ascii: true }

const at = (walk: Walk, ask: Talk['ask'], line: string) => hear(walk.engine.defs, walk.state, { ask }, line)

describe('attach', () => {
  it('asks for a path, and looks for the one that is keyed', () => {
    const walk = new Walk().toBore().keys('attach')
    expect(walk.talk.ask).toEqual({ kind: 'attach-path' })
    expect(at(walk, walk.talk.ask, ' photos/wall.jpg ')).toMatchObject({
      input: null,
      talk: { ask: { kind: 'attach-looking' } },
      file: { do: 'find', path: 'photos/wall.jpg' },
    })
    expect(at(walk, null, 'attach photos/my wall.jpg').file).toEqual({
      do: 'find',
      path: 'photos/my wall.jpg',
    })
  })

  it.each(['', '  ', 'newest', 'NEWEST'])(
    'takes %j for the newest, which is shown and never taken by itself',
    (line) => {
      const walk = new Walk().toBore()
      expect(at(walk, { kind: 'attach-path' }, line).file).toEqual({ do: 'newest' })
      const found = afterFound('newest', FILE)
      expect(found).toMatchObject({ input: null, talk: { ask: { kind: 'attach-newest' } } })
      expect(found.say).toEqual(['The newest in /photos: wall.jpg, 2.1 MB, last written 3 min ago'])
      for (const wrong of ['', 'yes', 'y', '3'])
        expect(at(walk, found.talk.ask, wrong).talk).toEqual(found.talk)
      expect(at(walk, found.talk.ask, '2').talk.ask).toEqual({ kind: 'attach-path' })
      expect(at(walk, found.talk.ask, '1').talk.ask).toEqual({ kind: 'attach-caption', file: FILE })
    },
  )

  it('has it kept only with words for what it shows', () => {
    const walk = new Walk().toBore()
    const question = { kind: 'attach-caption', file: FILE } as const
    for (const wrong of ['', ' ', '12', 'x'.repeat(501)]) {
      expect(at(walk, question, wrong).talk.ask).toBe(question)
      expect(at(walk, question, wrong).file).toBeUndefined()
    }
    expect(at(walk, question, 'the score ')).toMatchObject({
      input: null,
      talk: { ask: null },
      file: { do: 'keep', file: FILE, caption: 'the score' },
    })
  })

  it('brings nothing itself: what was kept comes from the shell', () => {
    const walk = new Walk().toBore()
    for (const line of ['attach', 'attach x', 'attach newest']) expect(at(walk, null, line).input).toBeNull()
  })

  it.each(['attach-path', 'attach-looking'] as const)('stop and safe are heard at %s', (kind) => {
    const walk = new Walk().toBore()
    expect(at(walk, { kind }, 'stop')).toEqual({ talk: { ask: null }, input: { do: 'stop' }, say: [] })
    expect(at(walk, { kind }, 'safe').say[0]).toMatch(/^MAKE SAFE/)
    expect(at(walk, { kind }, 'back').talk.ask).toBeNull()
  })

  it('may be keyed under STOP', () => {
    const walk = new Walk().toBore().keys('stop', 'attach')
    expect(walk.talk.ask).toEqual({ kind: 'attach-path' })
  })

  it('gives way to coming out, and is not begun there', () => {
    const walk = new Walk().toBore().keys('attach').wait(40)
    walk.bring({ do: 'tick' })
    expect(walk.prompt.kind).toBe('clear')
    const view = promptView(walk.engine.defs, walk.state, walk.talk, STYLE)
    expect(view.path).toBe(false)
    expect(JSON.stringify(view)).not.toContain('Path of the file')
    const began = at(walk, null, 'attach')
    expect(began.talk.ask).toBeNull()
    expect(began.say.join()).toContain('Come out and stand clear first')
    expect(attachWord(walk.prompt, 'x.jpg').file).toBeUndefined()
  })

  it('says where Tab completes, and nowhere else', () => {
    const walk = new Walk().toBore()
    const path = (ask: Talk['ask']) => promptView(walk.engine.defs, walk.state, { ask }, STYLE).path
    expect(path({ kind: 'attach-path' })).toBe(true)
    expect(path(null)).toBe(false)
    expect(path({ kind: 'note' })).toBe(false)
    expect(path({ kind: 'attach-caption', file: FILE })).toBe(false)
  })

  it.each([
    [-5000, 'after now, by the clock of this computer'],
    [Number.NaN, 'after now, by the clock of this computer'],
    [0, '0 s ago'],
    [59_999, '59 s ago'],
    [60_000, '1 min ago'],
    [7_200_000, '2 h ago'],
    [172_800_000, '2 days ago'],
  ])('%d ms is told as %s', (ms, text) => {
    expect(ageText(ms)).toBe(text)
  })
})
