// Places drawn large: one exact picture of each, and what holds for any stations at any size.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SPOT_ART } from '../../../src/core/drawing/spot-art.ts'
import { drawSpot, hasTwoSpots, type SpotKind } from '../../../src/core/drawing/spot-place.ts'
import type { DrawnStation } from '../../../src/core/drawing/types.ts'
import { plain } from '../../../src/core/drawing/words.ts'
import { expectSound, picture, stations } from './arbitrary.ts'

const KINDS = Object.keys(SPOT_ART) as SpotKind[]
const TWO: readonly DrawnStation[] = [
  { id: 'high', label: 'high', words: 'as high as it reaches', at: 0, value: '0.042' },
  { id: 'low', label: 'low', words: 'as low as it reaches', at: 1 },
]

const drawn = (kind: SpotKind, width = 60, height?: number, ascii = false, here = 'low') =>
  drawSpot({ kind, stations: TWO, here }, { ascii, width, ...(height === undefined ? {} : { height }) }).lines

const PICTURES: Readonly<Record<SpotKind, string>> = {
  ring_gap: `
╭────────────────────╮  x high 0.042
│ ╭──────┤#├───────╮ │  # HERE as low as it reaches
│ │  ring, square  │ │
│ ╰────────────────╯ │
╰────────────────────╯
`,
  free_gap: `
╭──────┤#####├──────╮  x high 0.042
│    loose ring,    │  # HERE as low as it reaches
│ nothing round it  │
╰───────────────────╯
`,
  ring_section: `
╶──── outer face ──#──╴  x high 0.042
  ring             #     # HERE as low as it reaches
╶──── inner face ──#──╴
`,
  ring_side: `
─────┐#┌───────┬─────  x high 0.042
 land│#│ ring  │land   # HERE as low as it reaches
     │#└───────┤
     └─────────┘
 groove in the piston
`,
  groove_depth: `
   #############        x high 0.042
─────┐   #   ┌─────     # HERE as low as it reaches
 land│   #   │land
     └───#───┘
 groove, no ring in it
`,
  rider_proud: `
════ straight edge ══════  x high 0.042
┌─────┐  #####  ┌─────┐    # HERE as low as it reaches
│rider│ ┌─────┐ │rider│
│     │ │ring │ │     │
┴─────┴─┴─────┴─┴─────┴
`,
  head_clearance: `
     ║   ┌──────────┐        x high 0.042
head ║ x │          │        # HERE as low as it reaches
end  ║   │  piston  ╞═══ CE
     ║###│          │
     ║   └──────────┘
`,
  crank_clearance: `
   ┌──────────┐   ║        x high 0.042
   │          │ x ║ crank  # HERE as low as it reaches
HE │  piston  ╞═══╫═ end
   │          │###║
   └──────────┘   ║
`,
  piston_clearance: `
════════ bore, top ════   x high 0.042
    x                     # HERE as low as it reaches
HE │   piston     ╞══ CE
#######
═══════ bore, foot ════
`,
  crosshead_clearance: `
═══════ guide, top ═════  x high 0.042
           x              # HERE as low as it reaches
  │ crosshead on shoes │
        #######
═══════ guide, foot ════
`,
  runout_top: `
       ┌─┐ #  top dial      x high 0.042
───────┤ ├─#──────────────  # HERE as low as it reaches
piston │ │  rod  crosshead
───────┤ ├────────────────
packing└─┘  from the side
`,
  runout_side: `
packing┌─┐  from above      x high 0.042
───────┤ ├────────────────  # HERE as low as it reaches
piston │ │  rod  crosshead
───────┤ ├─#──────────────
       └─┘ #  side dial
`,
  nut: `
  ┌──────┐                    x high 0.042
┌─┘      └─┐                  # HERE as low as it reaches
│   nut    ############
└─┐      ┌─┘
  └──────┘  wrench square on
`,
  nut_angle: `
piston ╷ ##              x high 0.042
  ┌────┴─┐ ##            # HERE as low as it reaches
┌─┘      └─╴ # nut line
│   nut    │
└─┐      ┌─┘
`,
  rod_end: `
####################### face  x high 0.042
──────┐    #    ┌──────       # HERE as low as it reaches
piston│nut # nut│piston
      │  ├───┤  │
      │  │rod│  │
`,
  pocket_stem: `
  ╥ wheel  ┌────────┐       x high 0.042
###########│   ┌┐   └─────  # HERE as low as it reaches
──╫────────┤───┤│  opening
  ║  stem  │   └┘   ┌─────
  ╨   face └────────┘ cyl.
`,
  pocket_wheel: `
  # wheel  ┌────────┐       x high 0.042
  #        │   ┌┐   └─────  # HERE as low as it reaches
──#────────┤───┤│  opening
  #  stem  │   └┘   ┌─────
  #   face └────────┘ cyl.
`,
}

describe('the pictures', () => {
  it.each(KINDS)('%s', (kind) => {
    expect(drawn(kind)).toEqual(picture(PICTURES[kind]))
  })

  it.each(KINDS)('%s has its marks on the sheet, one of each place, and the instrument whole', (kind) => {
    const { art, marks } = SPOT_ART[kind]
    expect(art.length).toBeLessThanOrEqual(5)
    expect(Math.max(...art.map((line) => line.length))).toBeLessThanOrEqual(30)
    expect(marks.length).toBeLessThanOrEqual(art.length)
    const signs = marks.join('').replace(/[ .]/g, '')
    expect(signs).toMatch(/^[1278]+$/)
    expect(signs.split('1')).toHaveLength(2)
    expect(signs.split('2')).toHaveLength(hasTwoSpots(kind) ? 2 : 1)
    // No word of a picture is written over by the instrument.
    marks.forEach((line, row) => {
      for (const [column, cell] of [...line].entries())
        if ('1278'.includes(cell)) expect(art[row]?.[column] ?? ' ').toMatch(/[^a-z]/)
    })
  })

  it('stands over its list where it is narrow, in ASCII', () => {
    expect(drawn('head_clearance', 30, undefined, true)).toEqual(
      picture(`
     |   +----------+
head | x |          |
end  |   |  piston  +=== CE
     |###|          |
     |   +----------+
x high 0.042
# HERE as low as it reaches
`),
    )
  })
})

const place = stations.chain((list) =>
  fc.record({
    kind: fc.constantFrom(...KINDS),
    stations: fc.constant(list),
    here: fc.constantFrom(...list.map((station) => station.id)),
  }),
)
const size = fc.record({
  ascii: fc.boolean(),
  width: fc.integer({ min: 0, max: 70 }),
  height: fc.integer({ min: 1, max: 16 }),
})
/** As many instruments as the picture has cells for the place, by its half of the way. */
function cells(kind: SpotKind, at: number): number {
  const second = hasTwoSpots(kind) && at > 0.5
  return SPOT_ART[kind].marks.join('').replace(second ? /[^28]/g : /[^17]/g, '').length
}

describe('any place', () => {
  it('is sound, and says HERE once, beside the sign of the instrument', () => {
    fc.assert(
      fc.property(place, size, (given, { ascii, width, height }) => {
        const all = drawSpot(given, { ascii, width, height })
        expectSound(all, ascii, width, height)
        if (width >= 24) expect(all.lines.filter((line) => line.includes('HERE'))).toHaveLength(1)
      }),
    )
  })

  it('draws the instrument where the current station is, and nowhere else', () => {
    fc.assert(
      fc.property(place, size, (given, { width, height }) => {
        const { lines } = drawSpot(given, { ascii: false, width, height })
        if (lines.length < 2) return
        const here = given.stations.find((station) => station.id === given.here)
        // One more in the list.
        expect(lines.join('').split('#')).toHaveLength(cells(given.kind, here?.at ?? 0) + 2)
      }),
    )
  })

  it('lists every station with its figure, or counts those that have no line', () => {
    fc.assert(
      fc.property(place, size, (given, { width, height }) => {
        const { lines } = drawSpot(given, { ascii: false, width, height })
        if (lines.length < 2 || width < 60) return
        const text = lines.join('\n')
        const others = given.stations.filter((station) => station.id !== given.here)
        const listed = others.filter(({ label, value }) =>
          text.includes(
            `${value === undefined ? 'o' : 'x'} ${plain(label)}${value === undefined ? '' : ` ${value}`}`,
          ),
        )
        const more = Number(/\+(\d+) more/.exec(text)?.[1] ?? 0)
        expect(listed.length + more).toBeGreaterThanOrEqual(others.length)
        if (height >= 9) expect(more).toBe(0)
      }),
    )
  })

  it('has the same shape in ASCII', () => {
    fc.assert(
      fc.property(place, size, (given, { width, height }) => {
        const [box, ascii] = [false, true].map(
          (flag) => drawSpot(given, { ascii: flag, width, height }).lines,
        )
        expect(ascii?.map((line) => line.length)).toEqual(box?.map((line) => line.length))
      }),
    )
  })

  it('marks the other place of the picture as measured or to come', () => {
    for (const kind of KINDS.filter(hasTwoSpots)) {
      const { marks } = SPOT_ART[kind]
      const at = (cell: string, here: string) => {
        const row = marks.findIndex((line) => line.includes(cell))
        return [...(drawn(kind, 60, 5, false, here)[row] ?? '')][marks[row]?.indexOf(cell) ?? 0]
      }
      expect([at('1', 'low'), at('2', 'low')]).toEqual(['x', '#'])
      expect([at('1', 'high'), at('2', 'high')]).toEqual(['#', 'o'])
    }
  })

  it('is a bug when it has no station to stand on', () => {
    expect(() => drawn('nut', 60, 5, false, 'nowhere')).toThrow("no station 'nowhere'")
  })
})
