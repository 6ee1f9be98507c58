// Proofs that are kept: only what was searched by the very same program on the very same files is known again.
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { definitionsFrom } from '../../src/authoring/definitions.ts'
import { piecesOf } from '../../src/core/proof/prove.ts'
import { keptProofs, pieceName, programHash } from '../../src/node/kept-proofs.ts'
import { fileCopies } from '../helpers/example.ts'

let cache = ''
beforeEach(() => {
  cache = mkdtempSync(join(tmpdir(), 'kept-'))
})
afterEach(() => rmSync(cache, { recursive: true, force: true }))

const folder = () => join(cache, 'barover', 'proofs')
const PIECE = { states: 3, moves: 7 }

describe('what is kept', () => {
  it('is found again by its name and by no other', () => {
    const store = keptProofs(cache)
    expect(store.find('a1')).toBeNull()
    store.keep('a1', PIECE)
    expect(keptProofs(cache).find('a1')).toEqual(PIECE)
    expect(store.find('a2')).toBeNull()
    expect(readdirSync(folder())).toEqual(['a1.json'])
    renameSync(join(folder(), 'a1.json'), join(folder(), 'a2.json'))
    expect(store.find('a2')).toBeNull()
  })

  it.each([
    ['cut off', '{"format":"barover proof 1","name":"a1","sta'],
    ['of another format', '{"format":"barover proof 2","name":"a1","states":3,"moves":7}'],
    ['without counts', '{"format":"barover proof 1","name":"a1"}'],
    ['with counts that are none', '{"format":"barover proof 1","name":"a1","states":-1,"moves":7.5}'],
    ['nothing at all', 'null'],
  ])('counts for nothing where it is %s', (_, text) => {
    const store = keptProofs(cache)
    store.keep('a1', PIECE)
    writeFileSync(join(folder(), 'a1.json'), text)
    expect(store.find('a1')).toBeNull()
  })

  it('counts for nothing in a folder that others can write to, and is not put there', () => {
    const store = keptProofs(cache)
    store.keep('a1', PIECE)
    chmodSync(folder(), 0o777)
    expect(store.find('a1')).toBeNull()
    store.keep('a2', PIECE)
    expect(readdirSync(folder())).toEqual(['a1.json'])
  })

  it('is no fault where nothing can be written', () => {
    const file = join(cache, 'file')
    writeFileSync(file, '')
    const store = keptProofs(file)
    expect(() => store.keep('a1', PIECE)).not.toThrow()
    expect(store.find('a1')).toBeNull()
    expect(keptProofs(null).find('a1')).toBeNull()
  })
})

describe('the name of a piece', () => {
  const names = (program = 'p', change: Parameters<typeof fileCopies>[0] = {}) => {
    const files = fileCopies(change)
    const result = definitionsFrom(files)
    if (!result.ok) throw new Error(result.diagnostics.map((d) => d.message).join('\n'))
    return piecesOf(result.defs).flatMap(({ small }) =>
      small === null ? [] : pieceName(program, files, small),
    )
  }
  const was = names()

  it('is the same for the same, and one for each piece', () => {
    expect(names()).toEqual(was)
    expect(was.length).toBeGreaterThan(1)
    expect(new Set(was).size).toBe(was.length)
  })

  it.each([
    ['another program', () => names('q')],
    ['a byte of the procedure', () => names('p', { procedure: (text) => `${text}\n# more` })],
    ['a byte of the machine record', () => names('p', { machine: (text) => `${text}\n# more` })],
    ['a byte of a limit book', () => names('p', { 'limit-book': (text) => `${text}\n# more` })],
    [
      'gauges of another range',
      () => names('p', { instruments: (text) => text.replaceAll('to: 12 in', 'to: 11 in') }),
    ],
  ])('is another for each piece with %s', (_, other) => {
    for (const name of other()) expect(was).not.toContain(name)
  })

  it('stays where only somebody got another PIN or a gauge another day of calibration', () => {
    expect(names('p', { crew: (text) => text.replace(/name: .*/, 'name: Another Name') })).toEqual(was)
    expect(names('p', { instruments: (text) => text.replace(/due: \d{4}/g, 'due: 2031') })).toEqual(was)
  })
})

describe('the hash of the program', () => {
  it('is of every file of it, by name and bytes', () => {
    const dist = join(cache, 'dist')
    mkdirSync(dist)
    expect(programHash(dist)).toBeNull()
    const put = (name: string, text: string) => writeFileSync(join(dist, name), text)
    put('a.mjs', 'one')
    put('b.mjs', 'two')
    const was = programHash(dist)
    put('b.mjs', 'twO')
    expect(programHash(dist)).not.toBe(was)
    put('b.mjs', 'two')
    expect(programHash(dist)).toBe(was)
    put('c.mjs', '')
    expect(programHash(dist)).not.toBe(was)
    expect(readFileSync(join(dist, 'a.mjs'), 'utf8')).toBe('one')
  })
})
