// Parts from the side: one exact picture of each, and what holds for any stations at any width.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type AlongKind, type AlongPlace, drawAlong } from '../../../src/core/drawing/along-part.ts'
import { ALONG_PARTS } from '../../../src/core/drawing/along-parts.ts'
import type { DrawnStation } from '../../../src/core/drawing/types.ts'
import { nameForms, plain } from '../../../src/core/drawing/words.ts'
import { count, expectSound, picture, stations } from './arbitrary.ts'

const KINDS = Object.keys(ALONG_PARTS) as AlongKind[]

function at(...list: readonly (readonly [number, string, string?])[]): DrawnStation[] {
  return list.map(([share, label, value]) => ({
    id: label,
    label,
    at: share,
    ...(value === undefined ? {} : { value }),
  }))
}

const PACKING_RUN = at([0.2, 'PISTON', '2.4987'], [0.5, 'MIDDLE'], [0.8, 'XHEAD'])
const ENDS = at([0.1, 'HEAD', '9.4810'], [0.9, 'CRANK'])
const SEAT = at([0.1, 'HEAD', '10.501'], [0.5, 'MIDDLE'], [0.9, 'CRANK'])

function lines(kind: AlongKind, list: DrawnStation[], here: string, across: boolean, width = 42) {
  return drawAlong({ kind, stations: list, here, across }, { ascii: false, width }).lines
}

describe('the parts', () => {
  it('rod under a micrometer', () => {
    expect(lines('rod', PACKING_RUN, 'MIDDLE', true)).toEqual(
      picture(`
                    HERE
      ┌───────────── # ─────────────┐
HE ┼┼═╡   x          #         o    ╞═┼ CE
      └──── rod ──── # ─────────────┘
       PISTON      MIDDLE    XHEAD
       2.4987
`),
    )
  })

  it('rod under a dial on the face of its shoulder', () => {
    expect(lines('rod', at([0.1, 'FACE']), 'FACE', false)).toEqual(
      picture(`
   HERE
     #┌─────────────────────────────┐
HE ┼══╡                             ╞═┼ CE
      └─ rod, its piston end left ──┘
   FACE
`),
    )
  })

  it('piston under a dial on its face', () => {
    expect(lines('piston', at([0, 'HEAD', '0.0010'], [1, 'CRANK']), 'CRANK', false)).toEqual(
      picture(`
                                 HERE
   x┌───────╥──────╥─────╥───────┐#
HE  │                            ╞═════ CE
    └───────╨──────╨─────╨───────┘
 HEAD                           CRANK
0.0010
`),
    )
  })

  it('riders, the caliper at the foot', () => {
    expect(lines('riders', ENDS, 'CRANK', false)).toEqual(
      picture(`
   ┌─═════─────╥──────╥─────═════─┐
HE │                        HERE  ╞════ CE
   └─══x══─────╨──────╨─────═ # ═─┘
     HEAD                   CRANK
    9.4810
`),
    )
  })

  it('liner from outside', () => {
    expect(lines('liner', SEAT, 'CRANK', true)).toEqual(
      picture(`
                                  HERE
   ┌────────────────────────────── # ─┐
HE │  x              o             #  │ CE
   └──── liner, from outside ───── # ─┘
    HEAD           MIDDLE        CRANK
   10.501
`),
    )
  })

  it('seat of the liner', () => {
    expect(lines('seat', SEAT, 'MIDDLE', true)).toEqual(
      picture(`
                    HERE
   ┘──────────────── # ───────────────└
HE    x              #             o    CE
   ┐─ seat, inside ─ # ───────────────┌
    HEAD           MIDDLE        CRANK
   10.501
`),
    )
  })

  it('cylinder from outside', () => {
    expect(lines('cylinder', at([0.5, 'WALL']), 'WALL', true)).toEqual(
      picture(`
                    HERE
   ┌──┬───────────── # ────────────┬──┐
HE │  │                            │  │ CE
   └──┴── cylinder, from outside ──┴──┘
                    WALL
`),
    )
  })

  it('way of the gas', () => {
    const way = at([0, 'suction', '92.1'], [0.3, 'water in'], [0.6, 'wtr out'], [1, 'disch'])
    expect(lines('gas_way', way, 'wtr out', false, 56)).toEqual(
      picture(`
                               HERE
            ┌─────────────────────────────┐
in x════════╡    o              #         ╞════════o out
            └───── cylinder, jacket ──────┘
suction      water in        wtr out             disch
 92.1
`),
    )
  })

  it('rod in its low and narrow form, in ASCII', () => {
    const low = { ascii: true, width: 30, height: 5 }
    expect(drawAlong({ kind: 'rod', stations: PACKING_RUN, here: 'XHEAD', across: true }, low).lines).toEqual(
      picture(`
                    HERE
     +-------------- # -+
HE +=+  x      o     #  +=+ CE
     +---- rod ----- # -+
     PISTON  MIDDLE XHEAD
`),
    )
  })
})

describe('what can not be drawn', () => {
  const words = (list: DrawnStation[], width: number, height = 6) =>
    drawAlong({ kind: 'rod', stations: list, here: 'MIDDLE', across: true }, { ascii: true, width, height })
      .lines

  it('is said in words', () => {
    expect(words(PACKING_RUN, 23)).toEqual(['HERE MIDDLE'])
    expect(words(PACKING_RUN, 8)).toEqual(['HERE MID'])
    expect(words(PACKING_RUN, 42, 4)).toEqual(['HERE MIDDLE'])
    for (const off of [-0.01, 1.01, Number.NaN])
      expect(words([...PACKING_RUN, ...at([off, 'OFF'])], 42)).toEqual(['HERE MIDDLE'])
  })

  it('is a bug when it has no station to stand on', () => {
    expect(() => lines('rod', PACKING_RUN, 'nowhere', true)).toThrow("no station 'nowhere'")
  })
})

/** Stations that lie on the part; the labels of `stations` hold no sign of a mark. */
const place = stations
  .map((list) => list.map((station) => ({ ...station, at: Math.min(1, Math.max(0, station.at)) })))
  .chain((list) =>
    fc.record({
      kind: fc.constantFrom(...KINDS),
      stations: fc.constant(list),
      here: fc.constantFrom(...list.map((station) => station.id)),
      across: fc.boolean(),
    }),
  )
const size = fc.record({
  ascii: fc.boolean(),
  width: fc.integer({ min: 24, max: 70 }),
  height: fc.integer({ min: 5, max: 8 }),
})

/** Rows of the picture without the captions, whose letters could be taken for marks. */
function bare({ kind }: AlongPlace, drawn: readonly string[]): string[] {
  const words = [...ALONG_PARTS[kind].captions, 'HERE'].sort((a, b) => b.length - a.length)
  const ends = /^(HE|in) ?|(CE|out)$/g
  return drawn.map((line) =>
    words.reduce(
      (text, word) => text.replace(word, ' '.repeat(word.length)),
      line.replace(ends, (end) => ' '.repeat(end.length)),
    ),
  )
}

/** Which row has the marks, counted from the row of HERE. */
function marksIn(
  given: AlongPlace,
  drawn: readonly string[],
): { readonly row: string; readonly rows: string[] } {
  const rows = bare(given, drawn)
  const hash = rows.flatMap((line, i) => (line.includes('#') ? [i] : []))
  return { row: rows[hash[Math.floor(hash.length / 2)] ?? 0] ?? '', rows }
}

const isDrawn = (drawn: readonly string[]) => drawn.length > 1

describe('any part', () => {
  it('is sound, with one HERE over one instrument, which goes across or touches', () => {
    fc.assert(
      fc.property(place, size, (given, { ascii, width, height }) => {
        const drawn = drawAlong(given, { ascii, width, height })
        expectSound(drawn, ascii, width, Math.min(6, height))
        expect(count(drawn.lines, 'HERE')).toBe(1)
        if (!isDrawn(drawn.lines)) return
        const { spans } = ALONG_PARTS[given.kind]
        expect(count(drawn.lines, '#')).toBe(given.across && spans ? 3 : 1)
        const column = marksIn(given, drawn.lines).row.indexOf('#')
        const over = drawn.lines.find((line) => line.includes('HERE')) ?? ''
        expect(column).toBeGreaterThanOrEqual(over.indexOf('HERE'))
        expect(column).toBeLessThanOrEqual(over.indexOf('HERE') + 3)
      }),
    )
  })

  it('has a mark for every station, in order, filled in when it has a value', () => {
    fc.assert(
      fc.property(place, size, (given, { ascii, width, height }) => {
        const { lines: drawn } = drawAlong(given, { ascii, width, height })
        if (!isDrawn(drawn)) return
        const expected = given.stations
          .map((station, i) => ({ station, i }))
          .sort((a, b) => a.station.at - b.station.at || a.i - b.i)
          .map(({ station: { id, value } }) => (id === given.here ? '#' : value === undefined ? 'o' : 'x'))
        expect(marksIn(given, drawn).row.replace(/[^ox#]/g, '')).toBe(expected.join(''))
      }),
    )
  })

  it('writes whole names and figures, each at its own mark only, and the current name always', () => {
    fc.assert(
      fc.property(place, size, (given, { ascii, width, height }) => {
        const { lines: drawn } = drawAlong(given, { ascii, width, height })
        if (!isDrawn(drawn)) return
        const { row, rows } = marksIn(given, drawn)
        const marks = [...row].flatMap((sign, i) => ('ox#'.includes(sign) ? [i] : []))
        const names = given.stations.map((station) => plain(station.label))
        const forms = names.flatMap((name) => nameForms(name, names))
        const low = rows.findLastIndex((line) => /[└┘+┐┌]/.test(line)) + 1
        const check = (text: string, allowed: readonly unknown[]): void => {
          for (const { 0: word, index } of text.matchAll(/[^ ]+/g)) {
            expect(allowed).toContain(word)
            expect(marks.filter((mark) => mark >= index && mark < index + word.length)).toHaveLength(1)
          }
        }
        check(drawn[low] ?? '', forms)
        check(
          drawn[low + 1] ?? '',
          given.stations.map((station) => station.value),
        )
        if (height < 6) expect(drawn[low + 1]).toBeUndefined()
      }),
    )
  })

  it('has the same shape in ASCII', () => {
    fc.assert(
      fc.property(place, size, (given, { width, height }) => {
        const [box, ascii] = [false, true].map(
          (flag) => drawAlong(given, { ascii: flag, width, height }).lines,
        )
        expect(ascii?.map((line) => line.length)).toEqual(box?.map((line) => line.length))
        expect(ascii?.map((line) => line.replace(/[^\w#?. ]/g, ''))).toEqual(
          box?.map((line) => line.replace(/[^\w#?. ]/g, '')),
        )
      }),
    )
  })

  it('keeps what lies on the face of a piston outside it and all else between the faces', () => {
    fc.assert(
      fc.property(place, size, (given, { width }) => {
        const on = { ...given, kind: 'piston' as const, across: false }
        const drawn = drawAlong(on, { ascii: false, width, height: 6 }).lines
        if (!isDrawn(drawn)) return
        const row = drawn[1] ?? ''
        const inside = row.slice(row.indexOf('┌') + 1, row.indexOf('┐')).replace(/[^ox#]/g, '')
        expect(inside).toHaveLength(
          given.stations.filter((station) => station.at > 0 && station.at < 1).length,
        )
      }),
    )
  })
})

describe('the usual stations', () => {
  it.each([30, 42, 66])('are all drawn and named at %i columns', (width) => {
    for (const kind of KINDS)
      for (const here of ['PISTON', 'MIDDLE', 'XHEAD']) {
        const drawn = lines(kind, PACKING_RUN, here, true, width).join('\n')
        for (const word of ['PISTON', 'MIDDLE', 'XHEAD', '2.4987']) expect(drawn).toContain(word)
      }
  })
})
