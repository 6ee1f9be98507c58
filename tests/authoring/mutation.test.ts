// Any good file with any one thing spoiled: never a crash, and every complaint lies inside the file.
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Document, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, visit } from 'yaml'
import { checkFiles } from '../../src/authoring/check.ts'
import { type Diagnostic, renderDiagnostic, sourceLine } from '../../src/authoring/diagnostic.ts'

const FOLDER = new URL('../fixtures/files/', import.meta.url)
const GOOD = readdirSync(FOLDER)
  .filter((name) => name.startsWith('good-'))
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'))
const RUNS = Number(process.env.MUTATIONS ?? 120)

function check(text: string): readonly Diagnostic[] {
  const { diagnostics } = checkFiles([{ path: 'f.yaml', text }])
  const lines = text.split('\n')
  for (const one of diagnostics) {
    expect(one.file).toBe('f.yaml')
    expect(one.line).toBeGreaterThanOrEqual(1)
    expect(one.line).toBeLessThanOrEqual(lines.length)
    const length = sourceLine(text, one.line).length
    expect(one.column).toBeGreaterThanOrEqual(1)
    expect(one.column).toBeLessThanOrEqual(length + 1)
    expect(one.endColumn).toBeGreaterThan(one.column)
    expect(one.endColumn).toBeLessThanOrEqual(Math.max(length + 1, one.column + 1))
    expect(one.message).toMatch(/^\S[^\n]*\S$/)
    for (const line of renderDiagnostic(one, sourceLine(text, one.line)).split('\n')) {
      if (line.startsWith('    ')) expect(line.length).toBeLessThanOrEqual(80)
    }
  }
  return diagnostics
}

/** A good file and one of its nodes, as the number of the node in document order. */
const spot = fc.tuple(fc.constantFrom(...GOOD), fc.nat({ max: 10_000 }))

interface Slot {
  readonly parent: Node
  readonly index: number
  readonly key: Node | null
}

/** Every pair and every item of the document. */
function slotsOf(doc: Document): Slot[] {
  const slots: Slot[] = []
  visit(doc, {
    Collection: (_key, node) => {
      node.items.forEach((item, index) => {
        slots.push({ parent: node as Node, index, key: isMap(node) ? ((item as Pair).key as Node) : null })
      })
    },
  })
  return slots
}

function pick(text: string, n: number): { doc: Document; slot: Slot } {
  const doc = parseDocument(text)
  const slots = slotsOf(doc)
  const slot = slots[n % slots.length]
  if (slot === undefined) throw new Error('the file has no nodes')
  return { doc, slot }
}

describe('a good file with one node spoiled', () => {
  it('is located when a node is deleted', () => {
    fc.assert(
      fc.property(spot, ([text, n]) => {
        const { doc, slot } = pick(text, n)
        if (isMap(slot.parent) || isSeq(slot.parent)) slot.parent.items.splice(slot.index, 1)
        check(String(doc))
      }),
      { numRuns: RUNS },
    )
  })

  it('is refused when a key is there twice, and located when an item is', () => {
    fc.assert(
      fc.property(spot, ([text, n]) => {
        const { doc, slot } = pick(text, n)
        if (!isMap(slot.parent) && !isSeq(slot.parent)) return
        const items = slot.parent.items as unknown[]
        items.splice(slot.index, 0, items[slot.index])
        const found = check(doc.toString({ verifyAliasOrder: false }))
        if (slot.key !== null) expect(found.map((one) => one.code)).toContain('repeated-key')
      }),
      { numRuns: RUNS },
    )
  })

  const other = fc.constantFrom(
    null,
    0,
    -1,
    1.5,
    12,
    true,
    '',
    'x',
    'not a value',
    '9 in',
    '3 bar',
    [],
    {},
    [[]],
    { a: 1 },
  )
  it('is located when a value becomes something else', () => {
    fc.assert(
      fc.property(spot, other, ([text, n], value) => {
        const { doc, slot } = pick(text, n)
        const node = doc.createNode(value)
        if (isMap(slot.parent)) (slot.parent.items[slot.index] as Pair).value = node
        else if (isSeq(slot.parent)) slot.parent.items[slot.index] = node
        check(String(doc))
      }),
      { numRuns: RUNS },
    )
  })

  it('is refused at the very key when a key is misspelled', () => {
    fc.assert(
      fc.property(spot, fc.nat({ max: 30 }), ([text, n], where) => {
        const { slot } = pick(text, n)
        if (!isScalar(slot.key) || !slot.key.range) return
        const [start, end] = slot.key.range
        const at = start + 1 + (where % (end - start))
        const spoiled = `${text.slice(0, at)}q${text.slice(at)}`
        const line = spoiled.slice(0, start).split('\n').length
        const column = start - spoiled.lastIndexOf('\n', start - 1)
        const places = check(spoiled).map((one) => `${one.line}:${one.column} ${one.endColumn - one.column}`)
        expect(places).toContain(`${line}:${column} ${end - start + 1}`)
      }),
      { numRuns: RUNS },
    )
  })
})

describe('a good file with its text spoiled', () => {
  const bits = fc.constantFrom(
    ...[
      '\t',
      '\n',
      '  ',
      ': ',
      '- ',
      '"',
      "'",
      '{',
      '}',
      '[',
      ']',
      '&a ',
      '*a',
      '!t ',
      '#',
      '%',
      '|',
      '>',
      '\r',
      '\ufeff',
    ],
    ...[
      '\u0000',
      '\u202e',
      '---\n',
      '...\n',
      '<<: ',
      '? ',
      '@',
      '\\',
      '\ud83d',
      '\u6c14',
      '__proto__: 1\n',
      'constructor',
    ],
  )
  const edit = fc.record({
    at: fc.nat({ max: 5000 }),
    cut: fc.nat({ max: 12 }),
    put: fc.oneof(bits, fc.string({ maxLength: 6 })),
  })

  it('is located', () => {
    fc.assert(
      fc.property(fc.constantFrom(...GOOD), fc.array(edit, { minLength: 1, maxLength: 4 }), (text, edits) => {
        const spoiled = edits.reduce((before, { at, cut, put }) => {
          const from = at % before.length
          return before.slice(0, from) + put + before.slice(from + cut)
        }, text)
        check(spoiled)
      }),
      { numRuns: 2 * RUNS },
    )
  })

  it('is located when cut off anywhere', () => {
    fc.assert(
      fc.property(fc.constantFrom(...GOOD), fc.nat({ max: 5000 }), (text, at) => {
        check(text.slice(0, at % text.length))
      }),
      { numRuns: RUNS },
    )
  })

  it('is located when it is no such file at all', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ maxLength: 200 }), fc.json()), (text) => {
        expect(check(text).some((one) => one.severity === 'error')).toBe(true)
      }),
      { numRuns: RUNS },
    )
  })
})
