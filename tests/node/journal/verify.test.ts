import { describe, expect, it } from 'vitest'
import { GENESIS } from '../../../src/node/journal/chain.ts'
import { verify } from '../../../src/node/journal/verify.ts'
import { bytesOf, headOf, linesOf, reading } from './fixtures.ts'

const LINES = linesOf([1, 2, 3, 4, 5].map((value) => reading(value)))
const WHOLE = bytesOf(LINES)

describe('without a check number noted elsewhere', () => {
  it('claims content only', () => {
    expect(verify(WHOLE)).toEqual({
      lines: 5,
      head: headOf(LINES),
      torn: null,
      content: { state: 'sound', line: null, behind: 0, what: '5 lines prove content and place.' },
      tail: {
        state: 'unknown',
        what: 'unknown: NOT PROVED that no lines were cut off the end; only a check number noted elsewhere shows that',
      },
      whole: {
        state: 'unknown',
        what: 'unknown: NOT PROVED that the log was not written anew; only a check number noted elsewhere shows that',
      },
      grownBy: null,
    })
  })

  it('cannot see a journal rewritten from the start, and does not claim to', () => {
    const forged = bytesOf(linesOf([1, 2, 99, 4, 5].map((value) => reading(value))))
    expect(verify(forged)).toMatchObject({ content: { state: 'sound' }, whole: { state: 'unknown' } })
    expect(verify(forged, headOf(LINES))).toMatchObject({
      content: { state: 'sound' },
      whole: { state: 'fault' },
    })
  })

  it('locates a fault in the content', () => {
    expect(verify(bytesOf(LINES.toSpliced(2, 1))).content).toMatchObject({ state: 'fault', line: 3 })
  })

  it('never calls an empty file sound', () => {
    expect(verify(Buffer.alloc(0)).content).toMatchObject({ state: 'fault', line: 1 })
    expect(verify(Buffer.from('{"seq":0')).content.state).toBe('fault')
  })

  it('says that an unfinished end proves nothing', () => {
    const seen = verify(Buffer.concat([WHOLE, Buffer.from('{"seq')]))
    expect(seen.content.what).toBe(
      '5 lines prove content and place, and an unfinished piece of 5 bytes at the end proves nothing.',
    )
    expect(seen.torn?.bytes).toBe(5)
  })
})

describe('against a noted check number', () => {
  it('checks all three when it is the last line', () => {
    const seen = verify(WHOLE, headOf(LINES))
    expect(seen).toMatchObject({ tail: { state: 'checked' }, whole: { state: 'checked' }, grownBy: 0 })
  })

  /** With other signs at these places, from 1. */
  const misread = (head: string, ...places: number[]) =>
    [...head].map((sign, n) => (places.includes(n + 1) ? (sign === '0' ? '1' : '0') : sign)).join('')

  it.each([
    [[5], '1 sign of 64, the 5th:'],
    [[21, 22], '2 signs of 64, the 21st and 22nd:'],
    [[1, 12, 64], '3 signs of 64, the 1st, 12th and 64th:'],
  ])('with the signs %j another it asks whether it was misread, and still passes nothing', (places, told) => {
    for (const line of [3, 5]) {
      const seen = verify(WHOLE, misread(headOf(LINES.slice(0, line)), ...places))
      expect(seen).toMatchObject({ tail: { state: 'fault' }, whole: { state: 'fault' }, grownBy: null })
      expect(seen.tail.what).toContain(
        `it is that of line ${line} but for ${told} was it misread or mistyped?`,
      )
      expect(seen.tail.what).toContain(
        'if it was given as it was noted, lines were removed at the end or changed',
      )
      expect(seen.tail.what + seen.whole.what).not.toMatch(/[0-9a-f]{64}/)
    }
  })

  it('that is another altogether it has compared again first', () => {
    const seen = verify(WHOLE, misread(headOf(LINES), 1, 2, 3, 4))
    expect(seen.tail.what).toBe(
      'fault: no sound line has the noted check number: compare it again, sign by sign, with where it was noted; if it was given as it was noted, lines were removed at the end or changed',
    )
  })

  it('takes it as keyed from paper, in capitals and with spaces around it', () => {
    expect(verify(WHOLE, ` ${headOf(LINES).toUpperCase()}\n`).whole.state).toBe('checked')
  })

  it.each([1, 2, 3, 4])('says by how much the file has grown since line %i', (line) => {
    const seen = verify(WHOLE, headOf(LINES.slice(0, line)))
    const entries = line === 4 ? '1 entry' : `${5 - line} entries`
    expect(seen.grownBy).toBe(5 - line)
    expect(seen.tail.state).toBe('checked')
    expect(seen.tail.what).toContain(`the file has grown by ${entries} since that check number was noted`)
    expect(seen.tail.what).toContain('a tail removed after line 5 would not show')
    expect(seen.whole.what).toMatch(new RegExp(`^checked up to line ${line}:`))
  })

  it('keeps what was noted apart from a fault further down', () => {
    const seen = verify(bytesOf(LINES.toSpliced(3, 1)), headOf(LINES.slice(0, 3)))
    expect(seen.content).toMatchObject({ state: 'fault', line: 4 })
    expect(seen.whole.what).toMatch(/^checked up to line 3:/)
    expect(seen.grownBy).toBe(0)
  })

  it('is a fault when no line has it', () => {
    const seen = verify(bytesOf(LINES.slice(0, 4)), headOf(LINES))
    expect(seen).toMatchObject({
      content: { state: 'sound' },
      tail: { state: 'fault' },
      whole: { state: 'fault' },
    })
    expect(seen.grownBy).toBeNull()
  })

  it('says so when the noted line has only lost its newline', () => {
    const seen = verify(WHOLE.subarray(0, -1), headOf(LINES))
    expect(seen.tail).toEqual({
      state: 'fault',
      what: 'fault: the noted check number is line 5, which has lost its newline since',
    })
    expect(seen.whole.state).toBe('fault')
  })

  it.each(['', 'abc', GENESIS, headOf(LINES).slice(1)])('never passes on "%s", which is no head', (head) => {
    expect(verify(WHOLE, head)).toMatchObject({
      tail: { state: 'unknown' },
      whole: { state: 'unknown' },
      grownBy: null,
    })
  })
})
