// Every wrong file under tests/fixtures/files is told what its row in expected.ts says; every good one passes.
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { checkFiles } from '../../src/authoring/check.ts'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { renderDiagnostic, sourceLine } from '../../src/authoring/diagnostic.ts'
import { EXPECTED } from '../fixtures/files/expected.ts'

const FOLDER = new URL('../fixtures/files/', import.meta.url)
const NAMES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.slice(0, -5))
const GOOD = NAMES.filter((name) => name.startsWith('good-'))
const BAD = NAMES.filter((name) => !name.startsWith('good-'))

function read(name: string): string {
  return readFileSync(new URL(`${name}.yaml`, FOLDER), 'utf8')
}

describe('good files', () => {
  it.each(GOOD)('%s passes without a word', (name) => {
    const { diagnostics } = checkFiles([{ path: name, text: read(name) }])
    expect(diagnostics).toEqual([])
  })

  it('are of all five kinds', () => {
    const { kinds } = checkFiles(GOOD.map((name) => ({ path: name, text: read(name) })))
    expect([...new Set(kinds.values())].sort()).toEqual([
      'crew',
      'instruments',
      'limit_book',
      'machine',
      'procedure',
    ])
  })
})

describe('wrong files', () => {
  it('have a row each, and every row a file', () => {
    expect([...BAD].sort()).toEqual(Object.keys(EXPECTED).sort())
    expect(BAD.length).toBeGreaterThanOrEqual(60)
  })

  it.each(BAD)('%s', (name) => {
    const text = read(name)
    const { diagnostics } = checkFiles([{ path: name, text }])
    const found = diagnostics.map((one) => {
      const line = sourceLine(text, one.line)
      const mark = line.slice(one.column - 1, one.endColumn - 1)
      // A span ends on its own line.
      expect(one.endColumn - one.column).toBe(mark.length)
      const { code, column, hint, severity } = one
      return {
        code,
        line: one.line,
        column,
        mark,
        ...(hint && { hint }),
        ...(severity === 'warning' && { severity }),
      }
    })
    expect(found).toEqual(EXPECTED[name])
    const isHeld = diagnostics.every((one) => one.severity === 'warning')
    expect(readDefinition(text, name).ok).toBe(isHeld)
    for (const one of diagnostics) {
      expect(one.message).toMatch(/^\S[^\n]*\.$/)
      expect(renderDiagnostic(one, sourceLine(text, one.line))).not.toMatch(/undefined|\[object/)
    }
  })
})
