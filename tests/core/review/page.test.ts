// The review on the sheet: one screen with the worst first and nothing left out, whole in lines, harmless whatever was keyed.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { widthOf } from '../../../src/core/lib/text.ts'
import { type Exception, type Found, inOrder, KINDS } from '../../../src/core/review/exception.ts'
import { foldTo } from '../../../src/core/review/fold-list.ts'
import { itemBlocks } from '../../../src/core/review/item.ts'
import { lastNumber, rangeBlocks, screenLines, wholeBlocks } from '../../../src/core/review/page.ts'
import type { Review } from '../../../src/core/review/review.ts'
import { layOut, plainText, row, type SheetStyle } from '../../../src/core/sheet/block.ts'
import type { Walk } from '../../helpers/example.ts'
import {
  asPerson,
  reviewed,
  SMALL_DEFS,
  settled,
  smallAtSize,
  smallDone,
  smallStart,
} from '../../helpers/reviewed.ts'

const STYLE: SheetStyle = { width: 79, record: 'EXAMPLE', ascii: false }
const screen = (walk: Walk, rows = 21, style = STYLE) =>
  screenLines(walk.engine.defs, reviewed(walk), style, rows)
const whole = (walk: Walk, style = STYLE) =>
  wholeBlocks(walk.engine.defs, reviewed(walk), walk.state, style)
    .map((block) => plainText(layOut(block, style)))
    .join('\n')
/** Without margins and line breaks. */
const flow = (text: string) => text.replace(/\s*\n[A-Z]+ +(?:\d+ )?│ */g, ' ')
const item = (walk: Walk, number: number, style = STYLE) =>
  (itemBlocks(walk.engine.defs, asPerson(walk.entries), reviewed(walk), number, style) ?? [])
    .map((block) => plainText(layOut(block, style)))
    .join('\n')

const found: fc.Arbitrary<Found[]> = fc.array(
  fc.record({
    kind: fc.constantFrom(...KINDS),
    what: fc.string(),
    sentences: fc.array(fc.string(), { maxLength: 2 }),
    entries: fc.uniqueArray(fc.nat(50), { maxLength: 3 }),
    open: fc.boolean(),
    grave: fc.integer({ min: -1, max: 3 }),
  }),
  { maxLength: 60 },
)

describe('the order', () => {
  it('is that of the kinds, numbers run from 1, and it does not hang on the order of the looks', () => {
    fc.assert(
      fc.property(found, (all) => {
        const list = inOrder(all)
        expect(list.map((one) => one.number)).toEqual(all.map((_, i) => i + 1))
        for (const [i, one] of list.entries()) expect(one.rank).toBeGreaterThanOrEqual(list[i - 1]?.rank ?? 1)
        // Within a kind with entries of its own each: the same from whichever end they come.
        const apart = all.map((one, i): Found => ({ ...one, entries: [i], grave: 0 }))
        expect(inOrder([...apart].reverse())).toEqual(inOrder(apart))
      }),
      { numRuns: 50 },
    )
  })
})

describe('a list for a screen', () => {
  it('fits, and has every exception in it or in a count, at any height', () => {
    fc.assert(
      fc.property(found, fc.integer({ min: 1, max: 30 }), (all, rows) => {
        const list = inOrder(all)
        const listed = foldTo(list, rows)
        expect(listed.length).toBeLessThanOrEqual(rows)
        const numbers = listed.flatMap((l) => (l.is === 'one' ? [l.one] : l.of)).map((one) => one.number)
        expect(numbers.sort((a, b) => a - b)).toEqual(list.map((one) => one.number))
        const denied = list.filter(({ kind }) => kind === 'denied').length
        const alone = listed.filter((l) => l.is === 'one' && l.one.kind === 'denied').length
        expect(alone).toBeGreaterThanOrEqual(Math.min(denied, rows - 1))
      }),
      { numRuns: 100 },
    )
  })

  it('folds the least grave first, and unfolds what still fits', () => {
    const of = (kind: Found['kind'], n: number): Found[] =>
      Array.from({ length: n }, (_, i) => ({
        kind,
        what: `${kind} ${i}`,
        sentences: [],
        entries: [i],
        open: false,
      }))
    const shape = (rows: number) =>
      foldTo(inOrder([...of('stop', 2), ...of('gate', 9), ...of('correction', 3)]), rows).map((l) =>
        l.is === 'one' ? l.one.kind : `${l.of.length} ${l.is === 'many' ? l.kind : 'rest'}`,
      )
    expect(shape(14)).toHaveLength(14)
    expect(shape(12)).toEqual(['stop', 'stop', ...Array(9).fill('gate'), '3 correction'])
    expect(shape(6)).toEqual(['stop', 'stop', '9 gate', 'correction', 'correction', 'correction'])
    expect(shape(3)).toEqual(['2 stop', '9 gate', '3 correction'])
    expect(shape(2)).toEqual(['2 stop', '12 rest'])
  })
})

describe('in few columns', () => {
  it('the number of an item does not run together with the number that its words begin with', () => {
    const narrow = { ...STYLE, width: 39 }
    const laid = (text: string) => layOut({ margin: '8', rows: [row(text)] }, narrow)[0]?.text
    expect(laid('2 Hold point before')).toBe('8:  2 Hold point before')
    expect(laid('Note, RO')).toBe('8  Note, RO')
  })
})

describe('on a screen of 80 by 24', () => {
  const walk = settled().toVerdict()

  it('stands what it is, then the exceptions by number, what was as usual, and the last overhaul on one line', () => {
    const lines = plainText(screen(walk)).split('\n')
    expect(lines.length).toBeLessThanOrEqual(21)
    expect(lines[0]).toMatch(/^EXAMPLE {8}│ REVIEW {2}TC-401-1 {2}Bore or liner inspection$/)
    expect(lines[1]).toMatch(/│ open {3}2026-03-14 06:20 to \d\d:\d\d {3}RO, ML$/)
    expect(lines[2]).toMatch(/^EXAMPLE {6}1 │ NC-1 Bore judged: MONITOR; NOT DECIDED$/)
    expect(lines.join('\n')).toMatch(/│ As usual: \d+ entries; /)
    expect(lines.join('\n')).toMatch(/│ bore diameter, in; worst of 6, 5 more behind 5\n.*│ {2}CENTRE 12-6 /)
    for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(79)
  })

  it('gives the rows of figures to the exceptions where these would be counted otherwise, and never the numbers behind', () => {
    const noisy = walk.copy()
    const { length } = reviewed(walk).exceptions
    for (let n = length; n < 16; n++) noisy.bring({ do: 'note', text: `seen ${n}` })
    const { defs } = noisy.engine
    const told = (rows: number) => plainText(screenLines(defs, reviewed(noisy), STYLE, rows))
    expect(reviewed(noisy).exceptions).toHaveLength(16)
    expect(told(21)).not.toContain('bore diameter, in')
    expect(told(21)).toMatch(/│ 17 found and left, /)
    for (let n = length; n < 16; n++) expect(told(21)).toContain(`seen ${n}`)
    expect(told(24)).toContain('bore diameter, in')
    for (let n = length; n < 16; n++) expect(told(24)).toContain(`seen ${n}`)
  })

  it('carries the word of the record on every line, at any size, in ASCII when asked', () => {
    for (const record of ['REAL', 'PRACTICE', 'EXAMPLE'] as const)
      for (const [width, rows] of [
        [79, 21],
        [39, 12],
        [120, 40],
      ] as const) {
        const style: SheetStyle = { width, record, ascii: true }
        const texts = [plainText(screen(walk, rows, style)), whole(walk, style), item(walk, 1, style)]
        for (const line of texts.join('\n').split('\n')) {
          expect(line.startsWith(record)).toBe(true)
          expect(widthOf(line)).toBeLessThanOrEqual(width)
          expect(line).toMatch(/^[\x20-\x7e]*$/)
        }
      }
  })
})

describe('in lines', () => {
  it('nothing is counted in place of being told: every sentence of every exception stands there', () => {
    const walk = smallAtSize().keys('9.7033', '3', 'measured by two of us', '2', 'at six', '')
    const review: Review = reviewed(walk)
    const flat = flow(whole(walk))
    expect(review.exceptions.length).toBeGreaterThan(1)
    for (const { what, sentences } of review.exceptions)
      for (const text of [what, ...sentences]) expect(flat).toContain(text)
  })

  it('says which words do what is open, and that a closed job takes none of them', () => {
    expect(flow(whole(smallAtSize()))).toMatch(
      /barover resume test\. There the words are: release, countersign,/,
    )
    expect(flow(whole(smallDone()))).toContain(
      'Nothing out of the ordinary was found by what this review looks at.',
    )
    expect(flow(whole(smallDone()))).toMatch(/its log takes a lead’s words, .* and an instrument found out/)
  })
})

describe('behind a number', () => {
  it('stand the entries: who, when, what was keyed, before and after', () => {
    const walk = smallAtSize().keys('9.5033', '1')
    const of = walk.state.readings['size.here']?.[0]?.seq ?? -1
    walk.bring({ do: 'correct', of, typed: '9.5043', why: 'misread' })
    walk.keys('')
    const text = item(walk, 1)
    expect(text).toMatch(/Before: 9\.5033 in .* with M-3, RO 06:\d\d\./s)
    expect(text).toMatch(/After: 9\.5043 in/)
    expect(text).toMatch(
      new RegExp(`entry ${of} {3}2026-03-14 06:\\d\\d:\\d\\d \\+00:00 {3}RO {3}keyed "9\\.5033"`),
    )
    expect(text).toMatch(/keyed "9\.5043"/)
    expect(text).toMatch(/Corrected: was 9\.5033 in, now 9\.5043 in/)
    expect(text).toMatch(/because misread; the first value stays in the log/)
  })

  it('of a verdict stand its sums and what its error is made of, and no word that is not taken there', () => {
    const text = item(settled().toVerdict(), 1)
    expect(text).toContain('The sums, from unrounded figures')
    expect(flow(text)).toMatch(/U 0\.0\d+ in of one diameter.* with M-3, calibrated until 2026-09-30/)
    expect(flow(text)).toMatch(/instrument: 0\.00015 in at k = 1, \d+ % of it/)
    expect(text).not.toContain('Type why')
    expect(flow(text)).toMatch(
      /Measuring error: U 0\.0\d+ of one diameter, 0\.0\d+ of a difference \(level of k = 2\)/,
    )
    expect(flow(text)).toMatch(/taper: centre top to bottom less .* = 0\.0\d+; limit/)
  })

  it('of a run of numbers stands a line for each, as the screen writes it', () => {
    const review = reviewed(smallAtSize().keys('9.7033', '3', 'measured by two of us', '2', 'at six', ''))
    const texts = (asked: string) => rangeBlocks(review, asked)?.map(({ margin }) => margin) ?? null
    expect(texts('1-2')).toEqual(['1', '2'])
    expect(texts('1 to 2')).toEqual(['1', '2'])
    expect(texts('1+')).toEqual(['1'])
    for (const none of ['99-100', '0-2', '1', '2-1', 'x']) expect(texts(none)).toBeNull()
  })

  it('that there is not stands nothing', () => {
    const review = reviewed(smallDone())
    for (const number of [0, lastNumber(review) + 1, -1, 1.5, Number.NaN])
      expect(itemBlocks(SMALL_DEFS, smallDone().entries, review, number, STYLE)).toBeNull()
  })
})

describe('names meant to do harm', () => {
  const HOSTILE = 'x\u001b[2J\u202egnp.exe\u0007\u2066 {a} <b> =1+1 \u200bend'

  it('are shown with what cannot be seen as question marks, and break no line', () => {
    const walk = smallStart().keys('NO START', 'KH', '1', '1', '9.7033', '3', HOSTILE, '2', HOSTILE, '')
    walk.bring({ do: 'doubt-instrument', instrument: 'M-3', why: HOSTILE, says: HOSTILE, person: 'KH' })
    const beside = {
      files: [{ seq: 1, name: HOSTILE, isAsAttached: false, what: HOSTILE }],
      strays: [HOSTILE],
      log: { faults: [HOSTILE], head: 'none' as const, whole: 'unknown' as const, checked: [HOSTILE] },
    }
    const review = reviewed(walk, beside)
    const texts = [
      plainText(screenLines(SMALL_DEFS, review, STYLE, 21)),
      ...wholeBlocks(SMALL_DEFS, review, walk.state, STYLE).map((block) => plainText(layOut(block, STYLE))),
      ...review.exceptions.flatMap(({ number }: Exception) =>
        (itemBlocks(SMALL_DEFS, asPerson(walk.entries), review, number, STYLE) ?? []).map((block) =>
          plainText(layOut(block, STYLE)),
        ),
      ),
    ].join('\n')
    expect(texts).toContain('x?[2J?gnp.exe??')
    expect(texts).not.toMatch(
      /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2060-\u206f]/,
    )
    for (const line of texts.split('\n')) expect(line).toMatch(/^EXAMPLE /)
  })
})
