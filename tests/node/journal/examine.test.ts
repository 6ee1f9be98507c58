import { describe, expect, it } from 'vitest'
import { buildLine, GENESIS, lineHash } from '../../../src/node/journal/chain.ts'
import { examine } from '../../../src/node/journal/examine.ts'
import { AT, bytesOf, headOf, linesOf, reading } from './fixtures.ts'

const LINES = linesOf([1, 2, 3, 4, 5].map((value) => reading(value, 'Ø')))
const OTHER = linesOf([11, 12, 13, 14, 15, 16, 17].map((value) => reading(value, 'other')))

/** The whole file with line n (from 1) put through `change`. */
function withLine(n: number, change: (line: Buffer) => Buffer): Buffer {
  const pieces = LINES.map((line, index) => {
    const raw = Buffer.from(line, 'utf8')
    return Buffer.concat([index === n - 1 ? change(raw) : raw, Buffer.from('\n')])
  })
  return Buffer.concat(pieces)
}

const glue = (...parts: (Buffer | number[] | string)[]) =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from(part))))

describe('a fault is located and named', () => {
  it.each([
    ['a byte order mark', 1, withLine(1, (line) => glue([0xef, 0xbb, 0xbf], line)), 'byte order mark'],
    ['a carriage return', 2, withLine(2, (line) => glue(line, '\r')), 'carriage return'],
    ['an empty line', 3, withLine(3, (line) => glue('\n', line)), 'Line 3 is empty.'],
    ['an empty line at the end', 6, glue(bytesOf(LINES), '\n'), 'Line 6 is empty.'],
    [
      'bytes that are not UTF-8',
      4,
      withLine(4, (line) => glue(line.subarray(0, 5), [0xff], line)),
      'not UTF-8',
    ],
    ['half of a two-byte letter', 2, withLine(2, (line) => drop(line, line.indexOf('Ø') + 1)), 'not UTF-8'],
    ['something else than JSON', 2, withLine(2, () => Buffer.from('hello')), 'not a complete JSON line'],
    ['JSON of another kind', 2, withLine(2, () => Buffer.from('[1]')), 'does not end in its own hash'],
    ['a changed value', 5, withLine(5, (line) => swapText(line, '"value":5', '"value":6')), 'was changed'],
    ['zeros', 3, withLine(3, (line) => Buffer.alloc(line.length)), 'not a complete JSON line'],
  ])('%s', (_name, line, bytes, says) => {
    const seen = examine(bytes)
    expect(seen.fault?.line).toBe(line)
    expect(seen.fault?.what).toContain(says)
    expect(seen.lines.length).toBe(line - 1)
    expect(seen.head).toBe(headOf(LINES.slice(0, line - 1)))
    expect(seen.soundBytes).toBe(bytesOf(LINES.slice(0, line - 1)).length)
  })

  it.each([
    ['lines missing', [0, 3, 4], 2, 'Line 2 was written as line 4: 2 lines are missing before it.'],
    ['a missing start', [1, 2, 3], 1, 'Line 1 was written as line 2: 1 line is missing before it.'],
    ['one alone at the end', [0, 1, 4], 3, '2 lines are missing before it, or it is not of this journal.'],
    [
      'an order changed',
      [0, 2, 3, 1, 4],
      2,
      'line 2 was written as line 3, and the one written as line 2 stands on line 4',
    ],
    ['a copy', [0, 1, 0, 2], 3, 'Line 3 is a copy of line 1, put in where it does not belong.'],
  ])('%s', (_name, order, line, says) => {
    const { fault } = examine(bytesOf(order.map((index) => LINES[index] ?? '')))
    expect(fault?.line).toBe(line)
    expect(fault?.what).toContain(says)
  })

  it.each([
    ['replaced by its namesake', LINES.with(2, OTHER[2] ?? ''), 3, 'one of the two was replaced'],
    [
      'joined from two journals',
      [...LINES.slice(0, 3), ...OTHER.slice(3)],
      4,
      'after another line 3 than the one here',
    ],
    [
      'an earlier line put in',
      LINES.toSpliced(3, 0, OTHER[1] ?? ''),
      4,
      'was written as line 2, which is already there',
    ],
    ['a later line put in', LINES.toSpliced(1, 0, OTHER[3] ?? ''), 2, 'another line that says it is line 4'],
  ])('a line of another journal: %s', (_name, lines, line, says) => {
    const { fault } = examine(bytesOf(lines))
    expect(fault?.line).toBe(line)
    expect(fault?.what).toContain(says)
  })

  it('a line whose number was rewritten with its own hash', () => {
    const odd = buildLine(reading(9), { seq: 7, prev: headOf(LINES.slice(0, 2)), at: AT })
    const { fault } = examine(bytesOf([...LINES.slice(0, 2), odd]))
    expect(fault).toEqual({
      line: 3,
      what: 'Line 3 follows from the line before it but says it is line 8: it was rewritten.',
      behind: 0,
    })
  })

  it('and the lines behind it are counted, an unfinished one among them', () => {
    const odd = buildLine(reading(9), { seq: 7, prev: headOf(LINES.slice(0, 2)), at: AT })
    const bytes = bytesOf([...LINES.slice(0, 2), odd, ...LINES.slice(2)])
    expect(examine(bytes).fault?.behind).toBe(LINES.length - 2)
    expect(examine(Buffer.concat([bytes, Buffer.from('{"se')])).fault?.behind).toBe(LINES.length - 1)
  })

  it('a first line that names one before it', () => {
    const odd = buildLine(reading(9), { seq: 0, prev: lineHash('x'), at: AT })
    expect(examine(bytesOf([odd])).fault?.what).toContain('not the start')
  })
})

describe('a torn tail', () => {
  const sound = bytesOf(LINES.slice(0, 4))
  const last = Buffer.from(LINES[4] ?? '', 'utf8')

  it('may be cut inside a letter and is still only torn', () => {
    const piece = last.subarray(0, last.indexOf('Ø') + 1)
    const seen = examine(Buffer.concat([sound, piece]))
    expect(seen).toMatchObject({
      fault: null,
      soundBytes: sound.length,
      torn: { bytes: piece.length, complete: false },
    })
  })

  it('says when only the newline is missing, and still does not count the line', () => {
    const seen = examine(Buffer.concat([sound, last]))
    expect(seen.torn).toEqual({ bytes: last.length, text: LINES[4], complete: true })
    expect(seen.lines.length).toBe(4)
  })

  it('is not called complete when it stands in the wrong place', () => {
    expect(examine(Buffer.concat([sound, Buffer.from(LINES[2] ?? '')])).torn?.complete).toBe(false)
  })

  it('is told beside a fault further up', () => {
    const bytes = Buffer.concat([bytesOf(LINES.toSpliced(1, 1)), Buffer.from('{"se')])
    expect(examine(bytes)).toMatchObject({ fault: { line: 2 }, torn: { bytes: 4, text: '{"se' } })
  })

  it('can be the whole file', () => {
    expect(examine(last)).toMatchObject({
      lines: [],
      head: GENESIS,
      soundBytes: 0,
      torn: { bytes: last.length },
    })
  })

  it('is not there in an empty file', () => {
    expect(examine(Buffer.alloc(0))).toEqual({
      lines: [],
      head: GENESIS,
      soundBytes: 0,
      torn: null,
      fault: null,
    })
  })
})

function drop(line: Buffer, index: number): Buffer {
  return Buffer.concat([line.subarray(0, index), line.subarray(index + 1)])
}

function swapText(line: Buffer, from: string, to: string): Buffer {
  return Buffer.from(line.toString('utf8').replace(from, to), 'utf8')
}
