// What Tab means: make safe, but for one stroke where a path is being keyed.
import { describe, expect, it, vi } from 'vitest'
import type { FilesPort } from '../../src/app/ports.ts'
import { drawJob } from '../../src/ui/draw-job.tsx'
import { tabMeans } from '../../src/ui/tab.ts'
import { readKeys } from '../../src/ui/use-keys.ts'
import { endsWithTest, keyLine } from '../helpers/drawn.ts'
import { Walk } from '../helpers/example.ts'
import { fakeTerminal, memorySession } from '../helpers/fake-terminal.ts'
import { noFiles } from '../helpers/files.ts'

vi.hoisted(() => {
  process.env.CI = 'false'
  process.env.CONTINUOUS_INTEGRATION = 'false'
})

function draw(complete: FilesPort['complete'], walk = new Walk().toBore(), size = { cols: 80, rows: 24 }) {
  const terminal = fakeTerminal(size)
  const { session } = memorySession(walk, false, { ...noFiles, complete })
  const done = drawJob(session, { width: 79, record: 'EXAMPLE', ascii: false }, terminal)
  endsWithTest(terminal, done)
  const sheets = () =>
    session.snapshot().shown.filter((s) => s.kind === 'said' && s.lines[0]?.startsWith('MAKE SAFE')).length
  const say = (line: string) => keyLine(terminal, line)
  /** At the question for a path, with so much of it keyed. */
  const atPath = async (typed: string) => {
    await terminal.screen.until('a line', () => terminal.screen.input !== null)
    while (terminal.screen.text.includes('Enter turns over')) {
      const before = terminal.screen.text
      terminal.send('\r')
      await terminal.screen.until('the next side', () => terminal.screen.text !== before)
    }
    await terminal.screen.see('Reading (in)')
    await say('attach')
    await terminal.screen.see('Path of the file')
    terminal.send(typed)
    await terminal.screen.until('the beginning', () => terminal.screen.input === typed)
  }
  return { terminal, screen: terminal.screen, session, sheets, atPath }
}

describe('Tab means', () => {
  it.each([
    [{ path: true, text: 'pho', again: false, tooSmall: false }, 'complete'],
    [{ path: true, text: '', again: false, tooSmall: false }, 'safe'],
    [{ path: true, text: '  ', again: false, tooSmall: false }, 'safe'],
    [{ path: true, text: 'pho', again: true, tooSmall: false }, 'safe'],
    [{ path: true, text: 'pho', again: false, tooSmall: true }, 'safe'],
    [{ path: false, text: 'pho', again: false, tooSmall: false }, 'safe'],
  ] as const)('with %j: %s', (where, what) => {
    expect(tabMeans(where)).toBe(what)
  })

  it('more than once when several come in one read', () => {
    expect(readKeys('', '\t\t').keys).toEqual([{ kind: 'safe', again: true }])
    expect(readKeys('', 'x\t\t').keys).toEqual([
      { kind: 'chunk', text: 'x' },
      { kind: 'safe', again: true },
    ])
    expect(readKeys('', '\t').keys).toEqual([{ kind: 'safe' }])
  })
})

describe('on the screen', () => {
  const found = async (text: string) => ({ text: `${text}tos/`, fits: ['wall.jpg', 'ring.jpg'] })

  it('the first completes the path, the next is make safe, and keys between begin anew', async () => {
    const { screen, terminal, sheets, atPath } = draw(found)
    await atPath('pho')
    await screen.see('Tab twice: make safe')
    terminal.send('\t')
    await screen.until('the whole', () => screen.input === 'photos/')
    await screen.see('Fits: wall.jpg   ring.jpg')
    expect(sheets()).toBe(0)
    terminal.send('\t')
    await screen.until('the sheet', () => sheets() === 1)
    // The line is as it was.
    expect(screen.input).toBe('photos/')
    terminal.send('x')
    await screen.until('one letter more', () => screen.input === 'photos/x')
    terminal.send('\t')
    await screen.until('completed again', () => screen.input === 'photos/xtos/')
    expect(sheets()).toBe(1)
  })

  it('is make safe at once on the empty line of the path, and at any other question', async () => {
    const { screen, terminal, sheets, atPath } = draw(found)
    await screen.see('Reading (in)')
    terminal.send('9.5')
    await screen.until('half a figure', () => screen.input === '9.5')
    terminal.send('\t')
    await screen.until('the sheet', () => sheets() === 1)
    terminal.send('\u0015')
    await screen.until('an empty line', () => screen.input === '')
    await atPath('')
    terminal.send('\t')
    await screen.until('the sheet again', () => sheets() === 2)
  })

  it('is make safe with the second stroke also while the disk does not answer', async () => {
    const { screen, terminal, sheets, atPath } = draw(() => new Promise(() => undefined))
    await atPath('pho')
    terminal.send('\t')
    terminal.send('\t')
    await screen.until('the sheet', () => sheets() === 1)
    terminal.send('\t\t')
    await screen.until('and again', () => sheets() === 2)
  })

  it('names that fit never take the place of the question on a low screen', async () => {
    const many = async () => ({
      text: 'x',
      fits: Array.from({ length: 6 }, (_, i) => `${'n'.repeat(60)}${i}.jpg`),
    })
    const { screen, terminal, atPath } = draw(many, undefined, { cols: 80, rows: 24 })
    await atPath('x')
    terminal.send('\t')
    await screen.see('Fits: nnn')
    expect(screen.text).toContain('Path of the file')
    expect(screen.wipes).toBe(0)
  })
})
