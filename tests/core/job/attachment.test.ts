// Attached files as the core sees them: names, what may go on record and when, and that one is evidence for nothing.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  givenName,
  isFileSize,
  isGivenName,
  isKeptName,
  keptName,
  MOST_FILE_BYTES,
  sizeText,
} from '../../../src/core/job/attachment.ts'
import { FORMAT } from '../../../src/core/job/entries.ts'
import { readEntries } from '../../../src/core/job/entry-schema.ts'
import { fold } from '../../../src/core/job/fold.ts'
import { handOverLines } from '../../../src/core/job/hand-over.ts'
import type { Input } from '../../../src/core/job/input.ts'
import { entryBlock } from '../../../src/core/sheet/entry-block.ts'
import { Walk } from '../../helpers/example.ts'

type Attach = Extract<Input, { do: 'attach' }>

const attach = (more: Partial<Attach> = {}): Attach => ({
  do: 'attach',
  name: 'wall.jpg',
  given: 'wall.jpg',
  size: 2_100_000,
  sha256: 'ab'.repeat(32),
  caption: 'the score at the crank end',
  ...more,
})

describe('names of kept files', () => {
  it.each([
    ['wall.jpg', 1, 'wall.jpg'],
    ['wall.jpg', 2, 'wall-2.jpg'],
    ['Wand innen.JPG', 1, 'Wand innen.JPG'],
    ['Ж 孔.png', 1, 'Ж 孔.png'],
    ['-rf', 1, '_rf'],
    ['--help.txt', 1, '_help.txt'],
    ['.hidden', 1, '_hidden'],
    ['..', 1, '_'],
    ['...', 3, '_-3'],
    ['a/../b.jpg', 1, 'a_.._b.jpg'],
    ['a\\b.jpg', 1, 'a_b.jpg'],
    ['con.jpg', 1, '_con.jpg'],
    ['LPT1', 1, '_LPT1'],
    ['two\nlines.jpg', 1, 'two_lines.jpg'],
    ['gpj.\u202etxt', 1, 'gpj._txt'],
    ['scan.', 1, 'scan'],
    ['no ending', 2, 'no ending-2'],
    ['', 1, '_'],
    [`${'x'.repeat(300)}.jpg`, 12, `${'x'.repeat(92)}-12.jpg`],
    [`a.${'x'.repeat(300)}`, 1, `a.${'x'.repeat(97)}`],
  ])('%j, number %i, is kept as %j', (given, count, name) => {
    expect(keptName(given, count)).toBe(name)
  })

  it('are fit for any system, whatever was given', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 400 }),
        fc.integer({ min: 1, max: 999 }),
        (given, n) => {
          expect(isKeptName(keptName(given, n))).toBe(true)
          expect(isGivenName(givenName(given))).toBe(true)
          expect(isKeptName(keptName(givenName(given), n))).toBe(true)
        },
      ),
    )
  })

  it.each(['../x', 'a/b', 'a\\b', '..', '.x', '-x', 'a\nb', 'a\u202eb', '', 'nul', 'x.', 'x'.repeat(101)])(
    '%j is none',
    (name) => {
      expect(isKeptName(name)).toBe(false)
    },
  )

  it('tell the name given, with a mark for what cannot be seen', () => {
    expect(givenName('a\nb\u202ec.jpg')).toBe('a?b?c.jpg')
    expect(givenName('x'.repeat(300))).toHaveLength(255)
  })
})

describe('sizes', () => {
  it.each([
    [1, '1 byte'],
    [999, '999 bytes'],
    [1000, '1 kB'],
    [999_499, '999 kB'],
    [999_500, '1.0 MB'],
    [2_149_000, '2.1 MB'],
    [MOST_FILE_BYTES, '50.0 MB'],
  ])('%i is %s', (size, text) => {
    expect(sizeText(size)).toBe(text)
  })

  it.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY, MOST_FILE_BYTES + 1])('%d is none', (size) => {
    expect(isFileSize(size)).toBe(false)
  })
})

describe('an attached file', () => {
  it('goes on record at the step where it was attached, by whom, and is told in one line', () => {
    const walk = new Walk().toBore()
    expect(walk.bring(attach())).toBeNull()
    expect(walk.last).toMatchObject({
      type: 'file.attached',
      step: 'bore',
      name: 'wall.jpg',
      given: 'wall.jpg',
      size: 2_100_000,
      sha256: 'ab'.repeat(32),
      caption: 'the score at the crank end',
      by: 'RO',
    })
    const block = entryBlock(walk.engine.defs, walk.state, walk.last)
    expect(block?.rows.map((r) => r.text)).toEqual(['Attached: wall.jpg, 2.1 MB: the score at the crank end'])
    expect(handOverLines(walk.engine.defs, walk.state)).toContain(
      'Files attached: 1, the last wall.jpg, 2.1 MB: the score at the crank end',
    )
  })

  it.each<[string, Partial<Attach>]>([
    ['file-name', { name: '../wall.jpg' }],
    ['file-name', { name: '' }],
    ['file-name', { name: 'a\nb' }],
    ['file-name', { given: 'photos/wall.jpg' }],
    ['file-name', { given: 'C:\\wall.jpg' }],
    ['file-name', { given: 'a\u202eb' }],
    ['file-name', { given: 'x'.repeat(256) }],
    ['file-facts', { size: 0 }],
    ['file-facts', { size: 1.5 }],
    ['file-facts', { size: Number.NaN }],
    ['file-facts', { size: MOST_FILE_BYTES + 1 }],
    ['file-facts', { sha256: 'AB'.repeat(32) }],
    ['file-facts', { sha256: 'ab'.repeat(31) }],
    ['no-words', { caption: ' ' }],
    ['no-words', { caption: '12' }],
    ['too-long', { caption: 'a'.repeat(501) }],
  ])('is refused as %s with %j', (code, more) => {
    const walk = new Walk().toBore()
    const before = walk.entries.length
    expect(walk.bring(attach(more))).toBe(code)
    expect(walk.entries).toHaveLength(before)
  })

  it('is refused under a name that is on record', () => {
    const walk = new Walk().toBore()
    expect(walk.bring(attach())).toBeNull()
    expect(walk.bring(attach())).toBe('file-twice')
    expect(walk.bring(attach({ name: 'wall-2.jpg' }))).toBeNull()
    expect(walk.state.files.map((f) => f.name)).toEqual(['wall.jpg', 'wall-2.jpg'])
  })

  it('is taken under STOP, which stays as it was, and when the job was just left, and never when it is closed', () => {
    const stopped = new Walk().toBore().keys('stop')
    const { prompt } = stopped
    expect(stopped.bring(attach())).toBeNull()
    expect(stopped.last.type).toBe('file.attached')
    expect(stopped.prompt).toEqual(prompt)
    const left = new Walk().toBore().keys('leave')
    expect(left.bring(attach())).toBeNull()
    expect(left.state.left).toBe(true)
    const closed = new Walk().toVerdict().keys('1', 'KH', 'run it, none given', 'done')
    expect(closed.state.closed).not.toBeNull()
    expect(closed.bring(attach())).toBe('closed')
  })

  it('answers nothing: at every prompt of the hold point and after it the same is asked as before', () => {
    const walks = [new Walk(), new Walk().toGate(), new Walk().throughGate(), new Walk().toVerdict()]
    for (const walk of walks) {
      const { prompt, state } = walk
      expect(walk.bring(attach())).toBeNull()
      expect(walk.prompt).toEqual(prompt)
      const { files: _files, seq: _seq, lastMs: _ms, lastAt: _at, ...after } = walk.state
      const { files: _f, seq: _s, lastMs: _m, lastAt: _a, ...before } = state
      expect(after).toEqual(before)
    }
  })

  it('does not end what may still be called out of a reading cut short', () => {
    const walk = new Walk().toBore().wait(40)
    walk.bring({ do: 'tick' })
    expect(walk.state.cutShort).toBe(true)
    walk.bring(attach())
    expect(walk.state.cutShort).toBe(true)
  })

  it('lets what has lapsed fall first', () => {
    const walk = new Walk().toBore().wait(40)
    const before = walk.entries.length
    walk.bring(attach())
    expect(walk.entries.slice(before).map((e) => e.type)).toEqual(['gate.closed', 'file.attached'])
  })
})

describe('the entry read back', () => {
  const opened = new Walk().entries[0]
  const entry = (more: object) => ({
    type: 'file.attached',
    seq: 1,
    at: '2026-03-14T06:20:00.000+00:00',
    by: 'RO',
    prev: '',
    hash: '',
    step: null,
    ...(({ do: _do, ...rest }) => rest)(attach()),
    ...more,
  })
  const first = { ...opened, prev: '', hash: '' }

  it('is of the first format still, as no older reader takes it for anything else', () => {
    expect(FORMAT).toBe(1)
    const read = readEntries([first, entry({})])
    expect(read.ok && read.value[1]).toMatchObject({ type: 'file.attached', name: 'wall.jpg' })
  })

  it.each([
    { name: '../../etc/passwd' },
    { given: 'a/b' },
    { sha256: 'xx' },
    { size: -1 },
    { size: 1.5 },
    { caption: 3 },
    { path: '/home/x' },
  ])('is refused with %j', (more) => {
    expect(readEntries([first, entry(more)]).ok).toBe(false)
  })

  it('folds into the state in its order', () => {
    const walk = new Walk().toBore()
    walk.bring(attach())
    const again = walk.entries.slice(1).reduce(fold, new Walk().state)
    expect(again.files).toEqual(walk.state.files)
  })
})
