// A file written by name: whole, and never over another unasked.
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { checkOutFile, writeOutFile } from '../../src/node/out-file.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'barover-out-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

const out = (name: string, replace = false) => ({
  path: join(folder, name),
  bytes: Buffer.from('new'),
  replace,
  replaceHint: 'say so',
})

describe('a file that is asked for', () => {
  it('is written whole, and nothing is left beside it', () => {
    writeOutFile(out('a.pdf'))
    expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('new')
    expect(readdirSync(folder)).toEqual(['a.pdf'])
  })

  it('is not written over another, unless that was said', () => {
    writeFileSync(join(folder, 'a.pdf'), 'old')
    expect(() => writeOutFile(out('a.pdf'))).toThrow(/is there already and was left as it is/)
    expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('old')
    writeOutFile(out('a.pdf', true))
    expect(readFileSync(join(folder, 'a.pdf'), 'utf8')).toBe('new')
    expect(readdirSync(folder)).toEqual(['a.pdf'])
  })

  it('follows no link and takes the place of no folder, even where replacing was said', () => {
    writeFileSync(join(folder, 'far.txt'), 'old')
    symlinkSync(join(folder, 'far.txt'), join(folder, 'link.pdf'))
    mkdirSync(join(folder, 'folder'))
    for (const name of ['link.pdf', 'folder'])
      expect(() => checkOutFile(out(name, true))).toThrow(/is there and is no file/)
    expect(readFileSync(join(folder, 'far.txt'), 'utf8')).toBe('old')
  })

  it('is refused in a sentence where there is no folder, or none that takes it', () => {
    expect(() => writeOutFile(out('none/a.pdf'))).toThrow(/^There is no folder /)
    writeFileSync(join(folder, 'shut'), '')
    expect(() => writeOutFile(out('shut/a.pdf'))).toThrow(/^There is no folder /)
    const shut = join(folder, 'locked')
    mkdirSync(shut)
    chmodSync(shut, 0o500)
    // Root writes wherever it likes.
    if (process.getuid?.() !== 0)
      expect(() => writeOutFile(out('locked/a.pdf'))).toThrow(/nobody may write there/)
    chmodSync(shut, 0o700)
  })
})
