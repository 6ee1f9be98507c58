// A PIN that is written into a comment of a crew file would stand in each log: it is told when the file is checked.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readDefinition } from '../../src/authoring/definition-file.ts'
import { ROOT } from '../helpers/example.ts'

const EXAMPLE = readFileSync(join(ROOT, 'examples/tc-401/crew.yaml'), 'utf8')
const OWN = EXAMPLE.replace(/^invented: true$/m, '')
const BARE = OWN.replace(/^#.*$/gm, '')
const told = (text: string) => {
  const read = readDefinition(text, 'crew.yaml')
  if (!read.ok) throw new Error(JSON.stringify(read.diagnostics))
  return read.warnings.filter(({ code }) => code === 'figures-in-comment')
}

describe('figures in the comments of a crew file', () => {
  it('are told at their place where the crew is not invented', () => {
    const last = BARE.split('\n').length
    expect(told(`${BARE}# KH 8314`)).toMatchObject([
      { line: last, column: 6, endColumn: 10, severity: 'warning' },
    ])
    expect(told(OWN).length).toBeGreaterThan(0)
  })

  it('are nothing of an invented one, nor are keys, and words without figures', () => {
    expect(told(EXAMPLE)).toEqual([])
    expect(told(BARE)).toEqual([])
    expect(told(`${BARE}# the crew of shift 2`)).toEqual([])
  })
})
