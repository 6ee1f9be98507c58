// Sentences of check at the width of a terminal: no word broken, nothing lost, what follows set in.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Diagnostic, renderDiagnostic } from '../../src/authoring/diagnostic.ts'
import { wrapWords } from '../../src/authoring/wrap-words.ts'
import { columnsOf } from '../../src/cli/terminal.ts'

const word = fc.stringMatching(/^[!-~]{1,30}$/)

describe('wrapped words', () => {
  it('are all there, in order and whole, and no line is wider than its words make it', () => {
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 20, max: 120 }),
        fc.integer({ min: 0, max: 10 }),
        (words, width, hang) => {
          const lines = wrapWords(words.join(' '), width, hang).split('\n')
          expect(lines.flatMap((line) => line.trim().split(/ +/))).toEqual(words)
          for (const [n, line] of lines.entries()) {
            expect(line).toBe(line.trimEnd())
            if (n > 0) expect(/^ */.exec(line)?.[0]).toHaveLength(hang)
            if (line.length > width) expect(line.trim()).not.toContain(' ')
            const next = lines[n + 1]?.trim().split(' ')[0]
            if (next !== undefined) expect(line.length + 1 + next.length).toBeGreaterThan(width)
          }
        },
      ),
    )
  })

  it('keep the gaps between columns', () => {
    expect(wrapWords('a.yaml:1:2  code  It is so.', 80, 2)).toBe('a.yaml:1:2  code  It is so.')
    expect(wrapWords('  hint: do this', 80, 8)).toBe('  hint: do this')
  })
})

describe('a problem', () => {
  const problem: Diagnostic = {
    file: 'a/rather/long/path/to/some/procedure.yaml',
    line: 3,
    column: 90,
    endColumn: 94,
    code: 'hazard-unheld',
    message: "'wiped' has a hazard line and no exposes, so it is behind no gate.",
    hint: 'add exposes with each it faces of start, rotation, pressure and bad_air; or exposes: [] if no gate need hold it',
    severity: 'warning',
  }
  const line = `${'x '.repeat(44)} BCDE ${'y '.repeat(40)}`

  it.each([40, 60, 80, 120])('stays within %i columns, and its spot stays underlined', (columns) => {
    const lines = renderDiagnostic(problem, line, columns).split('\n')
    for (const one of lines.slice(1)) expect(one.length).toBeLessThanOrEqual(columns)
    const under = lines.findIndex((one) => /^ *\^+$/.test(one))
    const [from, to] = [lines[under]?.indexOf('^') ?? 0, (lines[under]?.lastIndexOf('^') ?? 0) + 1]
    expect(lines[under - 1]?.slice(from, to)).toBe('BCDE')
  })

  it('is 80 columns wide where no terminal tells its width', () => {
    expect([columnsOf({}), columnsOf({ isTTY: true, columns: 132 }), columnsOf({ columns: 132 })]).toEqual([
      80, 132, 80,
    ])
  })
})
