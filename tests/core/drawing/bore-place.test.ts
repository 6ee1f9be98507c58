// Both views together: which of them are drawn, and where.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawBorePlace } from '../../../src/core/drawing/bore-place.ts'
import { axisWords } from '../../../src/core/drawing/with-end-view.ts'
import {
  axis,
  bore,
  count,
  expectSound,
  HE_CENTRE_CE,
  HORIZONTAL,
  picture,
  size,
  VERTICAL,
} from './arbitrary.ts'

const place = {
  stations: HE_CENTRE_CE,
  here: 'centre',
  axis: VERTICAL,
  axes: [VERTICAL, HORIZONTAL],
  hasCounterbore: true,
}
const lines = (ascii: boolean, width: number, height?: number): string[] =>
  drawBorePlace(place, { ascii, width, ...(height === undefined ? {} : { height }) }).lines

describe('the six places of the usual bore', () => {
  it('stand next to each other from 60 columns on', () => {
    expect(lines(false, 64)).toEqual(
      picture(`
   ┌──┐          HERE           ┌──┐           ╭──12───╮
   │  └───════════ # ════════───┘  │         ╭─╯   #   ╰─╮
HE │      x       >#<       o      │ CE      9     #     3
   │  ┌───════════ # ════════───┐  │         ╰─╮   #   ╭─╯
   └──┘   ├── ring travel ──┤   └──┘           ╰───6───╯
         HE     CENTRE      CE              12 to 6 o'clock
       9.5062                            seen from the head end
`),
    )
  })

  it('side to side at the crank end, in ASCII', () => {
    const drawn = drawBorePlace({ ...place, here: 'ce', axis: HORIZONTAL }, { ascii: true, width: 64 })
    expect(drawn.lines).toEqual(
      picture(`
   +--+                    HERE +--+           .--12---.
   |  +---================= # --+  |         .-'       '-.
HE |      x        o       >#<     | CE      9###########3
   |  +---================= # --+  |         '-.       .-'
   +--+   |-- ring travel --|   +--+           '---6---'
         HE     CENTRE      CE              9 to 3 o'clock
       9.5062                            seen from the head end
`),
    )
  })

  it('low form', () => {
    expect(lines(true, 60, 5)).toEqual(
      picture(`
   +--+        HERE         +--+           .--12---.
   |  +---====== # ======---+  |          9    #    3
HE |      x     >#<     o      | CE        '---6---'
   |  +---====== # ======---+  |        12 to 6 o'clock
   +--+  HE   CENTRE    CE  +--+     seen from the head end
`),
    )
  })

  it('stand one above the other where it is narrow and high enough', () => {
    expect(lines(true, 26, 14)).toHaveLength(14)
    expect(lines(true, 26)).toHaveLength(14)
    expect(lines(true, 26, 13)).toHaveLength(12)
    expect(lines(true, 26, 12)).toHaveLength(12)
    expect(lines(true, 26, 11)).toHaveLength(10)
    expect(lines(true, 26, 10).at(-1)).toBe('seen from the head end')
  })

  it('leave the end view to words where it is low', () => {
    expect(lines(true, 40, 8)).toHaveLength(8)
    expect(lines(true, 40, 6)).toHaveLength(6)
    expect(lines(true, 40, 6).at(-1)).toBe("12 to 6 o'clock, seen from the head end")
    expect(lines(true, 40, 5)).toEqual(lines(true, 40, 6).slice(0, 5))
    expect(lines(true, 40, 4)).toEqual(['HERE CENTRE', "12 to 6 o'clock, seen from the head end"])
    expect(lines(true, 40, 1)).toEqual(['HERE CENTRE'])
  })
})

describe('the line of measurement in words', () => {
  it('takes the fullest form that fits', () => {
    const oblique = { id: 'o', label: 'o', from: 10.5, to: 4.5 }
    expect(axisWords(oblique, 60)).toBe("10:30 to 4:30 o'clock, seen from the head end")
    expect(axisWords(oblique, 40)).toBe("10:30 to 4:30 o'clock, from head end")
    expect(axisWords(oblique, 26)).toBe('10:30-4:30 seen from HE')
  })
})

describe('any place', () => {
  it('is sound and has one HERE', () => {
    fc.assert(
      fc.property(bore, axis, fc.array(axis), size, (side, one, axes, { ascii, width, height }) => {
        const drawn = drawBorePlace({ ...side, axis: one, axes }, { ascii, width, height })
        expectSound(drawn, ascii, width, height)
        expect(count(drawn.lines, 'HERE')).toBe(1)
        if (width >= 60 || height > 5) expect(drawn.lines.join('\n')).toMatch(/seen from|from head end/)
      }),
    )
  })

  it('never throws, whatever the size', () => {
    fc.assert(
      fc.property(
        bore,
        axis,
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 9 }),
        (side, one, width, height) => {
          const drawn = drawBorePlace({ ...side, axis: one }, { ascii: true, width, height })
          expectSound(drawn, true, width, Math.max(1, height))
        },
      ),
    )
  })
})
