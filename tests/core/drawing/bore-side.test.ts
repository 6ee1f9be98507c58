// The side view: exact pictures of the usual bore, and what holds for any bore.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layOutBore } from '../../../src/core/drawing/bore-layout.ts'
import { drawBoreSide } from '../../../src/core/drawing/bore-side.ts'
import type { DrawnStation } from '../../../src/core/drawing/types.ts'
import { nameForms, plain } from '../../../src/core/drawing/words.ts'
import { bore, count, expectSound, HE_CENTRE_CE, picture, size } from './arbitrary.ts'

const usual = { stations: HE_CENTRE_CE, here: 'centre', hasCounterbore: true }

describe('the usual bore', () => {
  it('is drawn with box signs', () => {
    expect(drawBoreSide(usual, { ascii: false, width: 64 }).lines).toEqual(
      picture(`
   ┌────┐                    HERE                     ┌────┐
   │    └─────════════════════ # ════════════════─────┘    │
HE │          x               >#<               o          │ CE
   │    ┌─────════════════════ # ════════════════─────┐    │
   └────┘     ├────────── ring travel ──────────┤     └────┘
             HE             CENTRE              CE
           9.5062
`),
    )
  })

  it('is drawn with ASCII signs', () => {
    expect(drawBoreSide(usual, { ascii: true, width: 40 }).lines).toEqual(
      picture(`
   +--+          HERE           +--+
   |  +---======== # ========---+  |
HE |      x       >#<       o      | CE
   |  +---======== # ========---+  |
   +--+   |-- ring travel --|   +--+
         HE     CENTRE      CE
       9.5062
`),
    )
  })

  it('has a 5-line form', () => {
    expect(drawBoreSide(usual, { ascii: false, width: 26, height: 6 }).lines).toEqual(
      picture(`
   ┌─┐    HERE     ┌─┐
   │ └──═══ # ═══──┘ │
HE │    x  >#<  o    │ CE
   │ ┌──═══ # ═══──┐ │
   └─┘ HE CENT. CE └─┘
`),
    )
  })

  it('has no steps without a counterbore, and no row of figures before there is one', () => {
    const fresh = HE_CENTRE_CE.map(({ id, label, at }) => ({ id, label, at }))
    expect(drawBoreSide({ stations: fresh, here: 'he' }, { ascii: true, width: 40 }).lines).toEqual(
      picture(`
      HERE
   +--- # =====================----+
HE |   >#<         o          o    | CE
   +--- # =====================----+
        |---- ring travel ----|
       HE       CENTRE        CE
`),
    )
  })

  it('draws the unswept strip at bore diameter and the counterbore in the step', () => {
    const stations = [
      { id: 'deep', label: 'C-BORE', at: -0.3, inCounterbore: true },
      { id: 'strip', label: 'STRIP', at: -0.1 },
      ...HE_CENTRE_CE,
    ]
    expect(drawBoreSide({ stations, here: 'deep' }, { ascii: true, width: 64 }).lines).toEqual(
      picture(`
   +HERE-+                                             +----+
   |  #  +-----===================================-----+    |
HE | >#<    o  x                o                o          | CE
   |  #  +-----===================================-----+    |
   +-----+     |---------- ring travel ----------|     +----+
 C-BORE STRIP HE              CENTRE             CE
             9.5062
`),
    )
  })

  it.each([
    ['head', -0.3, /^ {3}┌HERE─┐ .*┌─+┐$/],
    ['crank', 1.3, /^ {3}┌─+┐ .*┌─HERE┐$/],
  ])('leaves the corners of the counterbore at the %s end whole, in the low form too', (_end, at, top) => {
    const side = { stations: [{ id: 'deep', label: 'C-BORE', at, inCounterbore: true }], here: 'deep' }
    for (const width of [24, 36, 64])
      expect(drawBoreSide(side, { ascii: false, width, height: 5 }).lines[0]).toMatch(top)
  })
})

describe('what can not be drawn', () => {
  const words = (side: Parameters<typeof drawBoreSide>[0], width: number, height = 7) =>
    drawBoreSide(side, { ascii: true, width, height }).lines

  it('is said in words', () => {
    expect(words(usual, 23)).toEqual(['HERE CENTRE'])
    expect(words(usual, 8)).toEqual(['HERE CEN'])
    expect(words(usual, 64, 4)).toEqual(['HERE CENTRE'])
    for (const station of [
      { at: Number.NaN },
      { at: Number.POSITIVE_INFINITY },
      { at: 1e308 },
      { at: 0.5, inCounterbore: true },
    ]) {
      const stations = [...HE_CENTRE_CE, { id: 'odd', label: 'ODD', ...station }]
      expect(words({ stations, here: 'he' }, 64)).toEqual(['HERE HE'])
    }
  })

  it('is a bug when it has no station to stand on', () => {
    expect(() => words({ ...usual, here: 'nowhere' }, 64)).toThrow("no station 'nowhere'")
  })
})

/** Stations as they stand from left to right. */
function leftToRight(stations: readonly DrawnStation[]): DrawnStation[] {
  return stations
    .map((station, i) => ({ station, i }))
    .sort((a, b) => a.station.at - b.station.at || a.i - b.i)
    .map(({ station }) => station)
}

describe('any bore', () => {
  it('is sound, with one HERE over one instrument', () => {
    fc.assert(
      fc.property(bore, size, (side, { ascii, width, height }) => {
        const drawn = drawBoreSide(side, { ascii, width, height })
        expectSound(drawn, ascii, width, height < 7 ? 5 : 7)
        expect(count(drawn.lines, 'HERE')).toBe(1)
        expect(count(drawn.lines, '#')).toBe(3)
        const column = (drawn.lines[2] ?? '').indexOf('#')
        expect(drawn.lines[1]?.[column]).toBe('#')
        expect(drawn.lines[3]?.[column]).toBe('#')
        const word = (drawn.lines[0] ?? '').indexOf('HERE')
        expect(column).toBeGreaterThanOrEqual(word)
        expect(column).toBeLessThanOrEqual(word + 3)
      }),
    )
  })

  it('has a mark for every station, in order, filled in when it has a value', () => {
    fc.assert(
      fc.property(bore, size, (side, { ascii, width, height }) => {
        const row = drawBoreSide(side, { ascii, width, height }).lines[2] ?? ''
        const expected = leftToRight(side.stations).map((station) =>
          station.id === side.here ? '#' : station.value === undefined ? 'o' : 'x',
        )
        // Stations in a counterbore stand outside the others whatever their number says.
        const inOrder = side.stations.every((station) => station.inCounterbore !== true)
        const marks = row.replace(/[^ox#]/g, '').split('')
        expect(inOrder ? marks : [...marks].sort()).toEqual(inOrder ? expected : [...expected].sort())
      }),
    )
  })

  it('writes whole names and figures, each at its own mark only, none touching', () => {
    fc.assert(
      fc.property(bore, size, (side, { ascii, width, height }) => {
        const { lines } = drawBoreSide(side, { ascii, width, height })
        const marks = [...(lines[2] ?? '')].flatMap((sign, i) => ('ox#'.includes(sign) ? [i] : []))
        const names = side.stations.map((station) => plain(station.label))
        const forms = names.flatMap((name) => nameForms(name, names))
        const values = side.stations.map((station) => station.value)
        const check = (row: string, allowed: readonly unknown[]): void => {
          for (const { 0: text, index } of row.matchAll(/[^ ]+/g)) {
            expect(allowed).toContain(text)
            expect(marks.filter((mark) => mark >= index && mark < index + text.length)).toHaveLength(1)
          }
        }
        if (height < 7) check((lines[4] ?? '').replace(/[└┘─+-]/g, ' '), forms)
        else {
          check(lines[5] ?? '', forms)
          check(lines[6] ?? '', values)
        }
      }),
    )
  })

  it('keeps ring travel true: what lies outside is drawn outside', () => {
    fc.assert(
      fc.property(bore, size, ({ stations, hasCounterbore }, { width }) => {
        const layout = layOutBore(stations, hasCounterbore, width)
        if (layout === undefined) throw new Error('no layout')
        stations.forEach(({ at, inCounterbore }, i) => {
          const column = layout.columns[i] as number
          expect(column < layout.travelFrom).toBe(at < 0)
          expect(column > layout.travelTo).toBe(at > 1)
          expect(column < layout.stepLeft || column > layout.stepRight).toBe(inCounterbore === true)
          expect(column).toBeGreaterThan(layout.wallLeft)
          expect(column).toBeLessThan(layout.wallRight)
        })
        expect(new Set(layout.columns).size).toBe(stations.length)
      }),
    )
  })

  it('mirrors when its stations do', () => {
    const places = fc.uniqueArray(fc.integer({ min: -20, max: 84 }), { minLength: 1, maxLength: 9 })
    fc.assert(
      fc.property(places, fc.boolean(), fc.integer({ min: 24, max: 66 }), (list, deep, width) => {
        const of = (flip: boolean) =>
          layOutBore(
            list.map((n) => ({ id: `${n}`, label: '', at: flip ? 1 - n / 64 : n / 64 })),
            deep,
            width,
          )
        const [one, other] = [of(false), of(true)]
        if (one === undefined || other === undefined) throw new Error('no layout')
        const flipped = other.columns.map((column) => one.wallLeft + one.wallRight - column)
        expect(flipped).toEqual(one.columns)
      }),
      // The station at 35/64 is in the very middle of what is drawn, and is pushed by half a column.
      { examples: [[[-12, 7, 10, 17, 22, 31, 35, 42, 82], false, 63]] },
    )
  })
})
