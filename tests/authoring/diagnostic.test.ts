// Order, number and look of diagnostics.
import { describe, expect, it } from 'vitest'
import { type Diagnostic, renderDiagnostic, sourceLine, tidy } from '../../src/authoring/diagnostic.ts'

function at(line: number, column: number, more: Partial<Diagnostic> = {}): Diagnostic {
  const place = { file: 'm.yaml', line, column, endColumn: column + 4 }
  return { ...place, code: 'zero', message: 'It is wrong.', severity: 'error', ...more }
}

describe('tidy', () => {
  it('sorts by place in the file', () => {
    const sorted = tidy([at(3, 1), at(1, 9), at(1, 2)])
    expect(sorted.map((one) => [one.line, one.column])).toEqual([
      [1, 2],
      [1, 9],
      [3, 1],
    ])
  })

  it('drops the same complaint about the same span, and keeps another one', () => {
    expect(tidy([at(1, 1), at(1, 1), at(1, 1, { code: 'other' })]).map((one) => one.code)).toEqual([
      'zero',
      'other',
    ])
  })

  it('puts the error before the warning at one place', () => {
    const both = tidy([at(1, 1, { severity: 'warning', code: 'w' }), at(1, 1)])
    expect(both.map((one) => one.severity)).toEqual(['error', 'warning'])
  })

  it('shows twenty and says how many more', () => {
    const many = Array.from({ length: 25 }, (_, n) => at(n + 1, 1, { hint: 'do it' }))
    const shown = tidy(many)
    expect(shown).toHaveLength(21)
    expect(shown[20]).toEqual({ ...at(21, 1), code: 'more', message: 'From here on, and 5 more.' })
    expect(tidy(many.slice(0, 20))).toHaveLength(20)
  })

  it('is an error in what it leaves out if there is one', () => {
    const warnings = Array.from({ length: 22 }, (_, n) => at(n + 1, 1, { severity: 'warning' }))
    expect(tidy(warnings)[20]?.severity).toBe('warning')
    expect(tidy([...warnings, at(30, 1)])[20]?.severity).toBe('error')
  })
})

describe('renderDiagnostic', () => {
  it('shows place, code, sentence, the marked line and the hint', () => {
    const d = at(2, 5, {
      endColumn: 8,
      code: 'unknown-key',
      message: "'bor' is not a key.",
      hint: 'did you mean bore?',
    })
    expect(renderDiagnostic(d, '    bor: 1')).toBe(
      [
        "m.yaml:2:5  unknown-key  'bor' is not a key.",
        '    bor: 1',
        '    ^^^',
        '  hint: did you mean bore?',
      ].join('\n'),
    )
  })

  it('says that a warning is one', () => {
    expect(renderDiagnostic(at(1, 1, { severity: 'warning' }), 'abcd')).toContain(
      'zero  warning: It is wrong.',
    )
  })

  it.each([
    ['at the start', 1],
    ['in the middle', 101],
    ['at the end', 197],
  ])('trims a long line around a span %s', (_where, column) => {
    const line = `${'a'.repeat(column - 1)}BCDE${'z'.repeat(200 - column - 3)}`
    const [, shown = '', underline = ''] = renderDiagnostic(at(1, column), line).split('\n')
    expect(shown.length).toBeLessThanOrEqual(80)
    expect(shown.slice(underline.indexOf('^'), underline.lastIndexOf('^') + 1)).toBe('BCDE')
  })

  it('keeps the underline below wide and combining characters', () => {
    const line = 'a\u0301\u6c14\u6c14: bad'
    const [, , underline] = renderDiagnostic(at(1, 7, { endColumn: 10 }), line).split('\n')
    // One column for the accented letter, two for each wide character, two for colon and space.
    expect(underline).toBe(`    ${' '.repeat(7)}^^^`)
  })

  it('shows nothing that a terminal would obey', () => {
    const d = at(1, 1, { file: 'a\u001b[2J.yaml', message: 'x\u202ey\r.', hint: '\u0007' })
    expect(renderDiagnostic(d, '\u001b[31mred\u200b')).not.toMatch(
      /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b\u202e]/,
    )
  })
})

describe('sourceLine', () => {
  it('leaves the line end out', () => {
    expect(sourceLine('a\r\nb\r\n', 2)).toBe('b')
    expect(sourceLine('a', 9)).toBe('')
  })
})
