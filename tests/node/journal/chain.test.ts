import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buildLine, type Entry, GENESIS, lineHash, readLine } from '../../../src/node/journal/chain.ts'
import { AT, reading } from './fixtures.ts'

const FIRST = { seq: 0, prev: GENESIS, at: AT }

/** Gives a body the own hash it deserves, for lines the program itself would never write. */
function sealed(body: string): string {
  return `${body.slice(0, -1)},"hash":"${lineHash(body)}"}`
}

describe('hash', () => {
  it('is SHA-256 as published', () => {
    // "abc" and the 448-bit message: FIPS 180-2 (2002), Appendix B.1 and B.2, the same examples NIST keeps for 180-4.
    expect(lineHash('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    expect(lineHash(Buffer.from('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'))).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    )
  })

  it('is of the UTF-8 bytes', () => {
    expect(lineHash('20 °C Ø')).toBe(lineHash(Buffer.from('20 °C Ø', 'utf8')))
  })
})

describe('building a line', () => {
  it('puts seq, prev and at first and its own hash last', () => {
    const line = buildLine({ type: 'note', text: 'Ø 254' }, FIRST)
    const body = `{"seq":0,"prev":"${GENESIS}","at":"${AT}","type":"note","text":"Ø 254"}`
    expect(line).toBe(`${body.slice(0, -1)},"hash":"${lineHash(body)}"}`)
  })

  it.each(['seq', 'prev', 'at', 'hash'])('refuses an entry with its own "%s"', (key) => {
    expect(() => buildLine({ type: 'note', [key]: 1 }, FIRST)).toThrow(`"${key}"`)
  })

  it.each([
    ['NaN', { type: 'x', value: Number.NaN }, 'entry.value is NaN'],
    ['infinity deep down', { type: 'x', a: { b: [1, { c: Number.POSITIVE_INFINITY }] } }, 'entry.a.b[1].c'],
    ['undefined', { type: 'x', a: undefined }, 'entry.a'],
    // biome-ignore lint/suspicious/noSparseArray: the hole is what is tested
    ['a hole in a list', { type: 'x', a: [1, , 2] }, 'entry.a[1]'],
    ['bigint', { type: 'x', a: 1n }, 'entry.a'],
    ['a date object', { type: 'x', a: new Date(0) }, 'entry.a is not plain data'],
    ['a map', { type: 'x', a: new Map() }, 'entry.a is not plain data'],
    ['a function', { type: 'x', toJSON: () => 1 }, 'entry.toJSON'],
  ] as [string, Entry, string][])('throws for %s', (_name, entry, says) => {
    expect(() => buildLine(entry, FIRST)).toThrow(says)
  })

  it('throws for a missing type, a bad place or a time without an offset', () => {
    expect(() => buildLine({ type: '' }, FIRST)).toThrow('type')
    expect(() => buildLine(reading(1), { ...FIRST, seq: -1 })).toThrow('seq')
    expect(() => buildLine(reading(1), { ...FIRST, seq: Number.NaN })).toThrow('seq')
    expect(() => buildLine(reading(1), { ...FIRST, prev: 'x' })).toThrow('prev')
    expect(() => buildLine(reading(1), { ...FIRST, at: '2026-03-02T06:52:10' })).toThrow('offset')
  })

  it('reads back what any plain entry holds, whatever its keys and texts', () => {
    const data = fc.dictionary(
      fc.string({ unit: 'binary' }).filter((key) => !['seq', 'prev', 'at', 'hash', 'type'].includes(key)),
      fc.jsonValue(),
    )
    fc.assert(
      fc.property(data, fc.nat(), (more, seq) => {
        const entry = { ...more, type: 'any' }
        const read = readLine(buildLine(entry, { ...FIRST, seq }))
        if (!read.ok) throw new Error(read.error.say)
        const { hash, ...rest } = read.value
        // JSON has no minus zero, and only the first writing may differ: 0 for -0.
        expect(rest).toEqual(JSON.parse(JSON.stringify({ ...FIRST, seq, ...entry })))
        expect(hash).toMatch(/^[0-9a-f]{64}$/)
      }),
    )
  })
})

describe('reading a line', () => {
  const body = `{"seq":0,"prev":"${GENESIS}","at":"${AT}","type":"note"}`

  it.each([
    ['a cut line', buildLine(reading(1), FIRST).slice(0, -5), 'not-json'],
    ['JSON without a hash', body, 'no-hash'],
    ['a changed digit', buildLine(reading(254.1), FIRST).replace('254.1', '254.7'), 'own-hash'],
    [
      'a hash in capitals',
      buildLine(reading(1), FIRST).replace(/[0-9a-f]{64}"\}$/, (h) => h.toUpperCase()),
      'no-hash',
    ],
    ['a space after the end', `${buildLine(reading(1), FIRST)} `, 'no-hash'],
    ['not JSON under a good hash', sealed('{"seq":0,}'), 'not-json'],
    ['a key twice under a good hash', sealed(body.replace('{', '{"seq":5,')), 'not-ours'],
    ['a number too big to hold', sealed(body.replace('"type"', '"v":1e999,"type"')), 'not-ours'],
    ['spaces between keys', sealed(body.replace(',"type"', ', "type"')), 'not-ours'],
    ['a seq in quotes', sealed(body.replace('"seq":0', '"seq":"0"')), 'bad-shape'],
    ['a broken seq', sealed(body.replace('"seq":0', '"seq":0.5')), 'bad-shape'],
    ['a negative seq', sealed(body.replace('"seq":0', '"seq":-1')), 'bad-shape'],
    ['a short prev', sealed(body.replace(GENESIS, '00')), 'bad-shape'],
    ['no time', sealed(body.replace(`"at":"${AT}",`, '')), 'bad-shape'],
    ['a time as a number', sealed(body.replace(`"${AT}"`, '5')), 'bad-shape'],
    ['no type', sealed(body.replace(',"type":"note"', '')), 'bad-shape'],
  ])('refuses %s', (_name, line, code) => {
    const read = readLine(line, 'Line 3')
    expect(read.ok ? 'ok' : read.error.code).toBe(code)
    if (!read.ok) expect(read.error.say).toMatch(/^Line 3 .*\.$/)
  })
})
