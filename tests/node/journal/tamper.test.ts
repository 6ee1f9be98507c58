// Promise: a changed, removed, reordered or inserted byte is detected and located.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Entry } from '../../../src/node/journal/chain.ts'
import { examine } from '../../../src/node/journal/examine.ts'
import { verify } from '../../../src/node/journal/verify.ts'
import { bytesOf, headOf, linesOf } from './fixtures.ts'

const anyEntry: fc.Arbitrary<Entry> = fc.record({
  type: fc.constantFrom('reading.recorded', 'step.completed'),
  note: fc.string({ unit: 'grapheme', maxLength: 20 }),
  value: fc.double({ noNaN: true, noDefaultInfinity: true }),
})
const anyLines = fc.array(anyEntry, { minLength: 1, maxLength: 7 }).map(linesOf)

/** Line (from 1) that holds the byte; a newline belongs to the line it ends. */
function lineAt(bytes: Buffer, offset: number): number {
  return bytes.subarray(0, offset).filter((byte) => byte === 0x0a).length + 1
}

function insertAt<T>(list: readonly T[], index: number, item: T): T[] {
  return [...list.slice(0, index), item, ...list.slice(index)]
}

describe('tampering', () => {
  it('leaves nothing to find in an untouched journal', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        const bytes = bytesOf(lines)
        const seen = examine(bytes)
        expect(seen).toMatchObject({ head: headOf(lines), soundBytes: bytes.length, torn: null, fault: null })
        expect(seen.lines.map((line) => JSON.stringify(line))).toEqual(lines)
      }),
    )
  })

  it('finds any single changed byte, in the right line', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(), fc.integer({ min: 1, max: 255 }), (lines, where, mask) => {
        const bytes = bytesOf(lines)
        const offset = where % bytes.length
        const line = lineAt(bytes, offset)
        bytes[offset] = (bytes[offset] ?? 0) ^ mask
        const seen = examine(bytes)
        expect(seen.lines.length).toBe(line - 1)
        if (offset === bytes.length - 1) {
          // Without its last newline a file cannot be told from one whose last write was cut short.
          expect(seen.fault).toBeNull()
          expect(seen.torn?.complete).toBe(false)
        } else {
          expect(seen.fault?.line).toBe(line)
        }
        expect(verify(bytes, headOf(lines)).whole.state).toBe('fault')
      }),
      { numRuns: 2000 },
    )
  })

  it('finds every bit of a small journal, one at a time', () => {
    const whole = bytesOf(linesOf([{ type: 'a' }, { type: 'b', note: 'Ø' }]))
    for (let offset = 0; offset < whole.length; offset++) {
      for (let bit = 1; bit < 256; bit <<= 1) {
        const bytes = Buffer.from(whole)
        bytes[offset] = (bytes[offset] ?? 0) ^ bit
        const { fault, torn } = examine(bytes)
        const line = lineAt(whole, offset)
        expect(fault?.line ?? (torn === null ? 'nothing' : 'torn')).toBe(
          offset === whole.length - 1 ? 'torn' : line,
        )
      }
    }
  })

  it('finds any line removed; the last one only against a noted check number, and says so', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(), (lines, where) => {
        const gone = where % lines.length
        const bytes = bytesOf(lines.toSpliced(gone, 1))
        const { fault } = examine(bytes)
        if (gone < lines.length - 1) {
          expect(fault?.line).toBe(gone + 1)
          expect(fault?.what).toContain('1 line is missing before it')
        } else {
          expect(fault).toBeNull()
          const alone = verify(bytes)
          expect(alone.tail).toEqual({
            state: 'unknown',
            what: 'unknown: NOT PROVED that no lines were cut off the end; only a check number noted elsewhere shows that',
          })
          expect(verify(bytes, headOf(lines))).toMatchObject({
            tail: { state: 'fault' },
            whole: { state: 'fault' },
          })
        }
      }),
    )
  })

  it('finds any two lines swapped, at the first of them', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(), fc.nat(), (lines, one, two) => {
        const a = one % lines.length
        const b = two % lines.length
        fc.pre(a < b)
        const swapped = lines.with(a, lines[b] ?? '').with(b, lines[a] ?? '')
        const { fault } = examine(bytesOf(swapped))
        expect(fault?.line).toBe(a + 1)
        expect(fault?.what).toBe(
          `Lines are out of order: line ${a + 1} was written as line ${b + 1}, and the one written as line ${a + 1} stands on line ${b + 1}.`,
        )
      }),
    )
  })

  it('finds a copied line put in anywhere, and names the line it copies', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(), fc.nat(), (lines, from, to) => {
        const source = from % lines.length
        const place = to % (lines.length + 1)
        const { fault } = examine(bytesOf(insertAt(lines, place, lines[source] ?? '')))
        // Put in just before itself, the second of two equal lines is the one too many.
        const line = place === source ? place + 2 : place + 1
        const original = source + 1 + (place < source ? 1 : 0)
        expect(fault).toEqual({
          line,
          what: `Line ${line} is a copy of line ${original}, put in where it does not belong.`,
          behind: lines.length + 1 - line,
        })
      }),
    )
  })

  it('finds a cut at any byte; a cut between lines only against a noted check number', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(), (lines, where) => {
        const whole = bytesOf(lines)
        const cut = where % whole.length
        const bytes = whole.subarray(0, cut)
        const seen = examine(bytes)
        const kept = lineAt(whole, cut) - 1
        expect(seen.fault).toBeNull()
        expect(seen.lines.length).toBe(kept)
        expect(seen.soundBytes).toBe(bytesOf(lines.slice(0, kept)).length)
        expect(seen.torn?.bytes ?? 0).toBe(cut - seen.soundBytes)
        expect(seen.torn?.complete ?? false).toBe(whole[cut] === 0x0a)
        expect(verify(bytes).tail.state).toBe('unknown')
        expect(verify(bytes, headOf(lines)).tail.state).toBe('fault')
      }),
      { numRuns: 500 },
    )
  })
})
