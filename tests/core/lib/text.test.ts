// Text in fixed columns: nothing lost, nothing too wide, nothing that could disturb a screen.
import fc from 'fast-check'
import stringWidth from 'string-width'
import { describe, expect, it } from 'vitest'
import { asciiTwin, clean, cut, widthOf, withoutUnseen, wrap } from '../../../src/core/lib/text.ts'

/** Letters narrow and wide, accents, emoji, and both kinds of space. */
const anyText = fc
  .array(
    fc.oneof(
      fc.string({ unit: 'grapheme-ascii', maxLength: 12 }),
      fc.string({ unit: 'grapheme', maxLength: 6 }),
      fc.constantFrom(' ', '   ', '漢字仮名', '👷', 'e\u0301', '\u00a0', 'x'.repeat(50)),
    ),
    { maxLength: 12 },
  )
  .map((parts) => clean(parts.join('')))

const bare = (text: string) => text.replaceAll(' ', '')

describe('wrap', () => {
  it('loses and doubles nothing but spaces', () => {
    fc.assert(
      fc.property(
        anyText,
        fc.integer({ min: 8, max: 90 }),
        fc.integer({ min: 0, max: 3 }),
        (text, width, hang) => {
          // Trimming at the ends takes every kind of space.
          expect(
            bare(wrap(text, width, hang).join(''))
              .trim()
              .replace(/\s/g, ''),
          ).toBe(text.replace(/\s/g, ''))
        },
      ),
      { numRuns: 500 },
    )
  })

  it('is never wider than its columns', () => {
    fc.assert(
      fc.property(
        anyText,
        fc.integer({ min: 8, max: 90 }),
        fc.integer({ min: 0, max: 3 }),
        (text, width, hang) => {
          for (const line of wrap(text, width, hang)) expect(widthOf(line)).toBeLessThanOrEqual(width)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('breaks at spaces, sets later lines in, and breaks only words that are too long', () => {
    expect(wrap('one two three', 9, 2)).toEqual(['one two', '  three'])
    expect(wrap('abcdefghij k', 6, 2)).toEqual(['abcdef', '  ghij', '  k'])
    expect(wrap('漢字仮名漢字', 8, 2)).toEqual(['漢字仮名', '  漢字'])
    expect(wrap('', 9)).toEqual([''])
  })

  it('holds a figure and its unit together by a no-break space', () => {
    expect(wrap('limit 9.5300\u00a0in', 12)).toEqual(['limit', '9.5300\u00a0in'])
  })

  it('keeps leading spaces, but never so many that the words have no room', () => {
    expect(wrap('  because it is so', 12, 2)).toEqual(['  because it', '    is so'])
    expect(wrap(`${' '.repeat(40)}word`, 12, 2).join('')).toMatch(/word$/)
  })
})

describe('cut', () => {
  it('never splits a character and never goes over', () => {
    expect(cut('漢字', 3)).toBe('漢')
    expect(cut('ae\u0301b', 2)).toBe('ae\u0301')
    fc.assert(
      fc.property(anyText, fc.nat(60), (text, width) => {
        const kept = cut(text, width)
        expect(widthOf(kept)).toBeLessThanOrEqual(width)
        expect(text.startsWith(kept)).toBe(true)
      }),
    )
  })
})

describe('what is not seen', () => {
  const hostile = 'a\u001b[2Jb\u009b1mc\u202ed\u2066e\u200bf\ng\rh\ti\u0000j\ufeffk\u{e0041}l\ud800m'

  it('is shown as a question mark where it is on record', () => {
    expect(clean(hostile)).toBe('a?[2Jb?1mc?d?e?f?g?h?i?j?k?l?m')
  })

  it('is left out of a line being keyed', () => {
    expect(withoutUnseen(hostile)).toBe('a[2Jb1mcdefghijklm')
  })

  it('leaves letters, accents, wide characters and emoji alone', () => {
    for (const text of ['9.5033 in', 'é e\u0301 漢字 שלום', '👷']) expect(clean(text)).toBe(text)
  })
})

describe('ASCII twins', () => {
  it('are as wide as what they stand for', () => {
    const ours = '\u2018\u2019\u201c\u201d\u2013\u2014\u00a0'
    expect(asciiTwin(ours)).toBe(`''""-- `)
    expect(widthOf(asciiTwin(ours))).toBe(widthOf(ours))
  })
})

describe('the width of a line', () => {
  it('is what the terminal library says, for each character up to the drawn ones and beside any other', {
    timeout: 120_000,
  }, () => {
    const wrong: string[] = []
    for (let code = 0x20; code < 0x2700; code++) {
      const one = String.fromCharCode(code)
      if (widthOf(one) !== stringWidth(one)) wrong.push(code.toString(16))
      if (widthOf(`a${one}b`) !== stringWidth(`a${one}b`)) wrong.push(`a${code.toString(16)}b`)
    }
    expect(wrong).toEqual([])
    fc.assert(
      fc.property(
        anyText,
        fc.constantFrom('\u2502', '\u2550', '\u00b0', '\ufe0f', '\u0301', '\u200d', '\u00a9'),
        (text, more) => {
          expect(widthOf(text + more)).toBe(stringWidth(text + more))
          expect(widthOf(more + text)).toBe(stringWidth(more + text))
        },
      ),
    )
  })
})
