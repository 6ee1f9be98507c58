// From raw sequences of a terminal to keys: real terminals send far more than letters.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readKeys } from '../../src/ui/use-keys.ts'

const keys = (raw: string, held = '') => readKeys(held, raw).keys
const kinds = (raw: string) => keys(raw).map((key) => key.kind)
const ESC = '\u001b'

describe('keys', () => {
  it.each([
    ['\r', 'enter'],
    ['\u007f', 'erase-left'],
    ['\b', 'erase-left'],
    [`${ESC}[3~`, 'erase-left'],
    ['\u0015', 'erase-all'],
    [`${ESC}[D`, 'left'],
    [`${ESC}OC`, 'right'],
    [`${ESC}[1;5D`, 'left'],
    [`${ESC}[H`, 'home'],
    [`${ESC}[4~`, 'end'],
    ['\u0003', 'interrupt'],
    [`${ESC}\r`, 'enter'],
    ['\t', 'safe'],
    ['\t\t', 'safe'],
    [`${ESC}\t`, 'safe'],
  ])('%j is %s', (raw, kind) => {
    expect(kinds(raw)).toEqual([kind])
  })

  it('passes text on as it came', () => {
    expect(keys('9.5033\r')).toEqual([{ kind: 'chunk', text: '9.5033\r' }])
    expect(keys('OK')).toEqual([{ kind: 'chunk', text: 'OK' }])
    expect(keys('[I')).toEqual([{ kind: 'chunk', text: '[I' }])
  })

  it('knows Tab behind other keys that were read with it', () => {
    expect(keys('L-\t')).toEqual([{ kind: 'chunk', text: 'L-' }, { kind: 'safe' }])
    expect(keys('\r\t')).toEqual([{ kind: 'enter' }, { kind: 'safe' }])
    expect(keys('9.5033\t')).toEqual([{ kind: 'chunk', text: '9.5033' }, { kind: 'safe' }])
  })

  it('erases once for each time the key came, also read at once and between figures', () => {
    expect(kinds('\u007f\u007f\b')).toEqual(['erase-left', 'erase-left', 'erase-left'])
    expect(keys('9.57\u007f03')).toEqual([
      { kind: 'chunk', text: '9.57' },
      { kind: 'erase-left' },
      { kind: 'chunk', text: '03' },
    ])
    // What stands in a paste is no key.
    expect(kinds(`${ESC}[200~a\u007fb${ESC}[201~`)).toEqual(['chunk', 'chunk', 'chunk'])
  })

  it('knows the two marks of a paste', () => {
    expect(keys(`${ESC}[200~`)).toEqual([{ kind: 'chunk', text: '[200~' }])
    expect(keys(`${ESC}[201~`)).toEqual([{ kind: 'chunk', text: '[201~' }])
  })

  it('joins a mark that came in two reads', () => {
    const first = readKeys('', `${ESC}[20`)
    expect(first.keys).toEqual([])
    expect(readKeys(first.held, '0~abc')).toEqual({
      keys: [
        { kind: 'chunk', text: '[200~' },
        { kind: 'chunk', text: 'abc' },
      ],
      held: '',
    })
  })

  it.each([
    ['focus gained', `${ESC}[I`],
    ['a click', `${ESC}[<0;12;4M`],
    ['Control-F1', `${ESC}[1;5P`],
    ['F5', `${ESC}[15~`],
    ['shift-tab', `${ESC}[Z`],
    ['escape', ESC],
    ['two escapes', ESC + ESC],
  ])('leaves %s out of the line', (_, raw) => {
    expect(keys(raw)).toEqual([])
  })

  it('turns over by the arrows up and down, and by a page', () => {
    const kinds = [`${ESC}[A`, `${ESC}OA`, `${ESC}[5~`, `${ESC}[B`, `${ESC}[6~`].flatMap((raw) => keys(raw))
    const back = { kind: 'turn-back' }
    expect(kinds).toEqual([back, back, back, { kind: 'turn-on' }, { kind: 'turn-on' }])
  })

  it('lets ! through right after Escape', () => {
    expect(keys(`${ESC}!`)).toEqual([{ kind: 'chunk', text: '!' }])
  })

  it('never throws and never lets an escape character into the line', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(`${ESC}[`, ESC, `${ESC}O`))),
        (reads) => {
          let held = ''
          for (const raw of reads) {
            const read = readKeys(held, raw)
            held = read.held
            for (const key of read.keys) if (key.kind === 'chunk') expect(key.text).not.toContain(ESC)
          }
        },
      ),
    )
  })
})
