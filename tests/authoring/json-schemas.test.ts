// The schemas that editors read: fresh, explained throughout, true of every shipped file and strict on wrong ones.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { KINDS } from '../../src/authoring/definition-file.ts'
import { schemaFileName, schemaFiles } from '../../src/authoring/json-schemas.ts'
import { written } from '../../src/core/definition/common.ts'
import { quantityPattern } from '../../src/core/definition/quantity-pattern.ts'
import { QUANTITY_KINDS, UNITS, unitsOf } from '../../src/core/units/index.ts'
import { SHIPPED } from '../helpers/shipped.ts'
import { type JsonSchema, misfitsOf } from './json-schema-reader.ts'

const ROOT = join(import.meta.dirname, '..', '..')
const FOLDER = 'procedures/schemas'

function schema(name: string): JsonSchema {
  return JSON.parse(readFileSync(join(ROOT, FOLDER, name), 'utf8'))
}

function fixture(name: string): unknown {
  return parse(readFileSync(join(ROOT, 'tests/fixtures/files', `${name}.yaml`), 'utf8'))
}

describe('the schema files', () => {
  it('are what npm run schemas writes', () => {
    const fresh = schemaFiles()
    expect(readdirSync(join(ROOT, FOLDER)).sort()).toEqual([...fresh.keys()].sort())
    expect(fresh.size).toBe(KINDS.length)
    for (const [name, text] of fresh) expect(readFileSync(join(ROOT, FOLDER, name), 'utf8')).toBe(text)
  })

  it.each(KINDS)('explain every key: %s', (kind) => {
    const silent: string[] = []
    let keys = 0
    const walk = (one: unknown, path: string): void => {
      if (typeof one !== 'object' || one === null) return
      for (const [key, inner] of Object.entries((one as JsonSchema).properties ?? {})) {
        keys += 1
        const says = (inner as JsonSchema).description
        if (typeof says !== 'string' || !/^\S.*\S$/.test(says) || says.length > 200)
          silent.push(`${path}/${key}`)
      }
      for (const [key, inner] of Object.entries(one)) walk(inner, `${path}/${key}`)
    }
    walk(schema(schemaFileName(kind)), '')
    expect(silent).toEqual([])
    expect(keys).toBeGreaterThan(3)
  })
})

describe('shipped files', () => {
  it.each(SHIPPED.map((one) => [one.path, one] as const))(
    '%s names its schema and fits it',
    (path, { text }) => {
      const named = /^# yaml-language-server: \$schema=(\S+)$/m.exec(text.split('\n')[0] ?? '')?.[1] ?? ''
      const kind = KINDS.find((one) => Object.keys(parse(text))[0] === one)
      expect(join(dirname(path), named)).toBe(join(FOLDER, schemaFileName(kind ?? 'crew')))
      expect(misfitsOf(schema(schemaFileName(kind ?? 'crew')), parse(text))).toEqual([])
    },
  )
})

const WRONG: readonly (readonly [string, string, string])[] = [
  ['misspelled-key', 'machine', '/bore/nominl: unknown'],
  ['unknown-key', 'machine', '/cylinder/paint: unknown'],
  ['missing-key', 'machine', '/bore/stroke: required'],
  ['no-unit-quoted', 'machine', '/bore/nominal: pattern'],
  ['no-unit', 'machine', '/bore/nominal: type'],
  ['unknown-unit', 'machine', '/bore/nominal: pattern'],
  ['gauge-for-absolute', 'machine', '/site/barometer: pattern'],
  ['bare-pressure', 'machine', '/site/barometer: pattern'],
  ['comma-number', 'machine', '/bore/stroke: pattern'],
  ['fraction', 'machine', '/bore/stroke: pattern'],
  ['below-zero', 'machine', '/bore/stroke: pattern'],
  ['union-unit', 'machine', '/site/gas/limits/1/at_most: anyOf'],
  ['wrong-choice', 'machine', '/cylinder/orientation: enum'],
  ['yes-for-true', 'machine', '/bore/lined: type'],
  ['number-for-text', 'machine', '/edition: type'],
  ['zero-number', 'machine', '/cylinder/throw: exclusiveMinimum'],
  ['half-number', 'machine', '/cylinder/throw: type'],
  ['source-missing', 'machine', '/limits/0/source: required'],
  ['wrong-step-kind', 'procedure', '/steps/1: oneOf'],
  ['not-an-id', 'procedure', '/steps/1/id: pattern'],
  ['empty-list', 'procedure', '/steps/0/evidence: minItems'],
  ['missing-unknown', 'procedure', '/steps/5/when/unknown: required'],
]

describe('wrong files', () => {
  it.each(['machine', 'procedure', 'limit-book', 'instruments', 'crew'])('good-%s fits', (name) => {
    expect(misfitsOf(schema(`${name}.schema.json`), fixture(`good-${name}`))).toEqual([])
  })

  it.each(WRONG)('%s does not fit', (name, kind, expected) => {
    expect(misfitsOf(schema(`${kind}.schema.json`), fixture(name))).toContain(expected)
  })
})

describe('the pattern of a quantity', () => {
  const figures = fc.constantFrom(
    '0',
    '9',
    '9.5',
    '0.0003',
    '.5',
    '12.50',
    '09',
    '9.',
    '9,5',
    '1e3',
    '3/8',
    '',
  )
  const spelled = fc.constantFrom(
    ...UNITS.flatMap((unit) => [unit.symbol, ...unit.aliases]),
    '',
    'furlong',
    'x',
  )
  const text = fc
    .tuple(
      fc.constantFrom('', '+', '-', '\u2212'),
      figures,
      fc.constantFrom('', ' ', '  '),
      spelled,
      fc.boolean(),
    )
    .map(([sign, number, gap, unit, loud]) => `${sign}${number}${gap}${loud ? unit.toUpperCase() : unit}`)
  const kind = fc.constantFrom(...QUANTITY_KINDS)

  it('marks nothing that a check takes', () => {
    let taken = 0
    fc.assert(
      fc.property(text, kind, fc.boolean(), (word, of, signed) => {
        if (!written(of, { signed }).safeParse(word).success) return
        taken += 1
        expect(word).toMatch(new RegExp(quantityPattern(of, signed), 'u'))
      }),
      { numRuns: 20_000 },
    )
    expect(taken).toBeGreaterThan(100)
  })

  it.each(QUANTITY_KINDS)('marks a bare figure and a unit of another kind: %s', (of) => {
    const pattern = new RegExp(quantityPattern(of, true), 'u')
    expect('9.5').not.toMatch(pattern)
    const own = new Set(
      unitsOf(of).flatMap((unit) => [unit.symbol, ...unit.aliases].map((name) => name.toLowerCase())),
    )
    for (const unit of UNITS) {
      if (unit.kind !== of && !own.has(unit.symbol.toLowerCase()))
        expect(`9.5 ${unit.symbol}`).not.toMatch(pattern)
    }
  })
})
