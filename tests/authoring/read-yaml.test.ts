// Texts that are no honest YAML file: large, deep, unfolding, in other line ends.
import { describe, expect, it } from 'vitest'
import { MOST_BYTES, readYaml } from '../../src/authoring/read-yaml.ts'

function codes(text: string): string[] {
  const result = readYaml(text, 'f.yaml')
  return result.ok
    ? ['ok', ...result.warnings.map((one) => one.code)]
    : result.diagnostics.map((one) => one.code)
}

describe('readYaml', () => {
  it('reads the values of YAML 1.2 as YAML 1.2 means them', () => {
    const result = readYaml('a: yes\nb: 1_000\nc: 2024-01-01\nd: true\ne: 1:30\nf: ~\n', 'f.yaml')
    expect(result.ok && result.yaml.value).toEqual({
      a: 'yes',
      b: '1_000',
      c: '2024-01-01',
      d: true,
      e: '1:30',
      f: null,
    })
  })

  it('takes a file of 1 MiB and no more, counted in bytes', () => {
    const fill = (bytes: number) => `a: ${'x'.repeat(bytes - 3)}`
    expect(codes(fill(MOST_BYTES))).toEqual(['ok'])
    expect(codes(fill(MOST_BYTES + 1))).toEqual(['too-large'])
    expect(codes(`a: ${'\u00e9'.repeat(MOST_BYTES / 2)}`)).toEqual(['too-large'])
  })

  it.each(['', '\n\n', '\ufeff', '  \r\n'])('finds nothing in %j', (text) => {
    expect(codes(text)).toEqual(['empty'])
  })

  it.each([
    ['brackets', 'a: ['.padEnd(50_000, '[')],
    ['closed brackets', `a: ${'['.repeat(5000)}${']'.repeat(5000)}`],
    ['brackets closed only in quotes', '{a: ["]}", '.repeat(5000)],
    ['dashes', '- '.repeat(5000)],
    ['question marks', '? '.repeat(5000)],
    ['keys', Array.from({ length: 1200 }, (_, n) => `${' '.repeat(n)}k:\n`).join('')],
  ])('refuses levels without end: %s', (_name, text) => {
    expect(codes(text)).toEqual(['too-deep'])
  })

  it('takes text that holds many dashes, colons and brackets', () => {
    const quoted = `"${'[-: '.repeat(100)}"`
    expect(codes(`a: ${quoted}\nb: >-\n${'  - - - [ [ [ x: y\n'.repeat(30)}\n`)).toEqual(['ok'])
    const flat = Array.from({ length: 100 }, (_, n) => `k${n}: [1]`).join(', ')
    expect(codes(`a: { ${flat} }`)).toEqual(['ok'])
  })

  it('refuses aliases that unfold without end', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]']
    for (let n = 1; n < 9; n++) {
      lines.push(`a${n}: &a${n} [${Array.from({ length: 10 }, () => `*a${n - 1}`).join(', ')}]`)
    }
    expect(codes(lines.join('\n'))).toEqual(['alias'])
  })

  it('takes an alias that is used honestly', () => {
    const result = readYaml('a: &x [1]\nb: *x\n', 'f.yaml')
    expect(result.ok && result.yaml.value).toEqual({ a: [1], b: [1] })
  })

  it.each([
    ['unix', 'a: 1\nb: [\n'],
    ['dos', 'a: 1\r\nb: [\r\n'],
    ['with a byte order mark', '\ufeffa: 1\nb: [\n'],
  ])('counts lines and columns alike: %s', (_name, text) => {
    const result = readYaml(text, 'f.yaml')
    expect(result.ok ? [] : result.diagnostics).toEqual([
      expect.objectContaining({ code: 'bracket', line: 2, column: 4, endColumn: 5 }),
    ])
  })

  it.each([
    ['a lone carriage return', 'a: 1\rb: 2'],
    ['a zero-width space', 'a: x\u200by'],
    ['an escape', 'a: \u001b[2J'],
    ['a byte order mark in the middle', 'a: 1\n\ufeffb: 2'],
  ])('points at %s', (_name, text) => {
    expect(codes(text)).toEqual(['hidden-character'])
  })

  it.each([
    ['? [1]\n: 2\n', 'key'],
    ['null: 1\n', 'key'],
    [': 1\n', 'key'],
    ['a: &x 1\nb: !!int 3\n', 'tag'],
    ['a: "\\q"\n', 'escape'],
    ['%FOO\n---\na: 1\n', 'directive'],
    ['a: &x &y 1\n', 'anchor'],
    ['a: - b\n', 'unexpected'],
  ])('refuses %j as %s', (text, code) => {
    expect(codes(text)).toEqual([code])
  })

  it('keeps numbers that only look odd, with a warning', () => {
    expect(codes('a: 012\nb: 0x1F\nc: 0.5\nd: "012"\n')).toEqual(['ok', 'odd-number', 'odd-number'])
  })
})
