// The line being keyed: bursts, pastes, wide characters, and nothing kept that is not seen.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { widthOf } from '../../src/core/lib/text.ts'
import { BLANK, type Editor, edit, graphemes, type Key, MOST, viewOf } from '../../src/ui/line-editor.ts'

type Press = string | { readonly kind: Exclude<Key['kind'], 'chunk'> }

/** Presses in turn; strings are chunks as they were read. */
function press(keys: readonly Press[], scan = false, from: Editor = BLANK) {
  let editor = from
  const submitted: string[] = []
  for (const key of keys) {
    const edited = edit(editor, typeof key === 'string' ? { kind: 'chunk', text: key } : key, scan)
    editor = edited.editor
    if (edited.submit !== null) submitted.push(edited.submit)
  }
  return { ...editor, submitted }
}

const enter = { kind: 'enter' } as const
const left = { kind: 'left' } as const
const right = { kind: 'right' } as const
const home = { kind: 'home' } as const
const end = { kind: 'end' } as const
const erase = { kind: 'erase-left' } as const
const eraseAll = { kind: 'erase-all' } as const

describe('bursts', () => {
  it('takes a burst with its return as a line only where a gauge may type', () => {
    expect(press(['9.5033\r'], true).submitted).toEqual(['9.5033'])
    expect(press(['9.5033\r\n'], true).submitted).toEqual(['9.5033'])
    const elsewhere = press(['L-101\r'], false)
    expect(elsewhere.submitted).toEqual([])
    expect(elsewhere.text.trim()).toBe('L-101')
  })

  it('gives two figures in one burst as one line, to be refused, and never drops one in silence', () => {
    expect(press(['9.5033\r9.5034\r'], true).submitted).toEqual(['9.5033 9.5034'])
  })

  it('keeps a burst without its return on the line', () => {
    expect(press(['9.50', '33'], true)).toMatchObject({ text: '9.5033', submitted: [] })
  })

  it('takes Enter by itself as the end of a line everywhere', () => {
    expect(press(['abc', enter]).submitted).toEqual(['abc'])
    expect(press([enter]).submitted).toEqual([''])
  })
})

describe('STOP', () => {
  it.each([true, false])('comes of a burst at every prompt, scan %s', (scan) => {
    expect(press(['stop\r'], scan).submitted).toEqual(['stop'])
    expect(press([' STOP! \r\n'], scan).submitted).toEqual(['STOP!'])
    // Half a figure was keyed when somebody called.
    expect(press(['9.50', 'stop\r'], scan).submitted).toEqual(['stop'])
    expect(press(['st', 'op\r'], scan).submitted).toEqual(['stop'])
  })

  it('comes of ! on an empty line at once, held down too', () => {
    expect(press(['!'])).toMatchObject({ text: '', submitted: ['!'] })
    expect(press(['!!!!'])).toMatchObject({ text: '', submitted: ['!'] })
    expect(press(['!\r']).submitted).toEqual(['!'])
  })

  it('does not come of ! within a line', () => {
    expect(press(['abc', '!'])).toMatchObject({ text: 'abc!', submitted: [] })
    expect(press(['abc', home, '!'])).toMatchObject({ text: '!abc', submitted: [] })
  })

  it('gets through a paste whose end was lost', () => {
    expect(press(['[200~', 'stop', enter]).submitted).toEqual(['stop'])
    expect(press(['[200~', 'x', eraseAll, '!']).submitted).toEqual(['!'])
  })
})

describe('pastes', () => {
  it.each([true, false])('never submit by a line end of their own, scan %s', (scan) => {
    expect(press(['[200~', '9.5033\r', '[201~'], scan)).toMatchObject({
      submitted: [],
      pasting: false,
      full: false,
    })
    expect(press(['[200~9.5033\r[201~'], scan).submitted).toEqual([])
    expect(press(['[200~9.50', '33\r\n', 'x\n', enter, '[201~'], scan).submitted).toEqual([])
    expect(press(['[200~stop\r[201~'], scan).submitted).toEqual([])
  })

  it('are one line, line ends as spaces, and Enter after them submits', () => {
    expect(press(['[200~', 'one\r\ntwo\tthree', '[201~', enter]).submitted).toEqual(['one two three'])
  })

  it('take a typed return again once they have ended', () => {
    expect(press(['[200~9.50[201~', '33\r'], true).submitted).toEqual(['9.5033'])
  })

  it('are text also when they are only a !', () => {
    expect(press(['[200~', '!', '[201~'])).toMatchObject({ text: '!', submitted: [] })
  })

  it('stop at the longest line that makes sense', () => {
    expect(press(['x'.repeat(10_000)]).text).toBe('x'.repeat(MOST))
    expect(press(['ab', left, 'x'.repeat(10_000)]).text).toBe(`a${'x'.repeat(MOST - 2)}b`)
    // One letter under ten thousand accents is one grapheme: it does not fit, so it is not there.
    expect(press([`e${'\u0301'.repeat(10_000)}`]).text).toBe('')
  })

  it('say that the line was full until some of it is erased or it is gone', () => {
    const over = 'x'.repeat(MOST + 1)
    expect(press(['x'.repeat(MOST)]).full).toBe(false)
    expect(press([over]).full).toBe(true)
    expect(press([' '.repeat(10_000)]).full).toBe(true)
    expect(press([over, left]).full).toBe(true)
    expect(press([over, erase]).full).toBe(false)
    expect(press([over, enter]).full).toBe(false)
  })
})

describe('caret', () => {
  it('moves and erases by what is seen as one character', () => {
    expect(press(['é漢字', left, left, erase])).toMatchObject({ text: '漢字', caret: 0 })
    expect(press(['e\u0301x', erase, erase])).toMatchObject({ text: '', caret: 0 })
    expect(press(['🇳🇴', erase]).text).toBe('')
  })

  it('inserts where it stands and stays in the line', () => {
    expect(press(['ac', left, 'b'])).toMatchObject({ text: 'abc', caret: 2 })
    expect(press(['ab', left, left, left, 'x'])).toMatchObject({ text: 'xab', caret: 1 })
    expect(press(['ab', home, right, right, right, 'x'])).toMatchObject({ text: 'abx', caret: 3 })
    expect(press(['ab', home, end, erase])).toMatchObject({ text: 'a', caret: 1 })
    expect(press(['ab', home, erase])).toMatchObject({ text: 'ab', caret: 0 })
    expect(press(['ab', eraseAll])).toMatchObject({ text: '', caret: 0 })
  })

  it('counts a mark that joins the letter before it', () => {
    expect(press(['e', '\u0301'])).toMatchObject({ text: 'e\u0301', caret: 1 })
  })
})

describe('what is kept', () => {
  it('drops control characters, escape, direction and zero-width characters', () => {
    expect(press(['a\u0000b\u0007c\u001bd\u009be']).text).toBe('abcde')
    expect(press(['\u202e9.50\u200b\u2066\ufeff\u00ad']).text).toBe('9.50')
    expect(press(['a\u2028b\ud800c']).text).toBe('a bc')
  })

  it('never throws, keeps the caret in the line and nothing unseen, whatever is pressed', () => {
    const chunk = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.string({ unit: 'grapheme', maxLength: 8 }),
      fc.constantFrom('[200~', '[201~', '\r', '\n', 'stop\r', '!', '🇳', '\u0301', '\u200d', '\u001b[A'),
    )
    const key = fc.oneof(chunk, fc.constantFrom<Press>(enter, left, right, home, end, erase, eraseAll))
    fc.assert(
      fc.property(fc.array(key, { maxLength: 40 }), fc.boolean(), (keys, scan) => {
        let editor = BLANK
        for (const one of keys) {
          const edited = edit(editor, typeof one === 'string' ? { kind: 'chunk', text: one } : one, scan)
          editor = edited.editor
          expect(editor.caret).toBeGreaterThanOrEqual(0)
          expect(editor.caret).toBeLessThanOrEqual(graphemes(editor.text).length)
          expect(editor.text.length).toBeLessThanOrEqual(MOST)
          for (const text of [editor.text, edited.submit ?? ''])
            expect(text).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069\u200b]/)
        }
      }),
      { numRuns: 400 },
    )
  })
})

describe('the part of the line in sight', () => {
  it('shows a short line whole, with the caret on it or past it', () => {
    expect(viewOf({ text: 'abc', caret: 3, pasting: false, full: false }, 20)).toEqual({
      before: 'abc',
      at: ' ',
      after: '',
    })
    expect(viewOf({ text: 'abc', caret: 1, pasting: false, full: false }, 20)).toEqual({
      before: 'a',
      at: 'b',
      after: 'c',
    })
  })

  it('shows the end of a long line while it is being keyed', () => {
    expect(viewOf({ text: '0123456789', caret: 10, pasting: false, full: false }, 5).before).toBe('6789')
  })

  it('is never wider than its room and always holds the caret', () => {
    const line = fc.tuple(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.nat())
    fc.assert(
      fc.property(line, fc.integer({ min: 4, max: 40 }), ([raw, n], width) => {
        const { text } = press([raw])
        const parts = graphemes(text)
        const caret = n % (parts.length + 1)
        const { before, at, after } = viewOf({ text, caret, pasting: false, full: false }, width)
        expect(at).toBe(parts[caret] ?? ' ')
        expect([...before, ...at, ...after].length).toBeGreaterThan(0)
        expect(graphemes(before + at + after).reduce((sum, g) => sum + widthOf(g), 0)).toBeLessThanOrEqual(
          width,
        )
        expect(text.includes((before + at + after).trimEnd())).toBe(true)
      }),
    )
  })
})
