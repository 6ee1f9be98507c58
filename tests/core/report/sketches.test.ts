// Sketches of a report: the drawings of the screen with what was measured, and nothing that is being measured any more.
import { describe, expect, it } from 'vitest'
import { drawPlace } from '../../../src/core/drawing/place.ts'
import { paperOf } from '../../../src/core/report/paper-of.ts'
import { reportHtml } from '../../../src/core/report/write/html.ts'
import { reportText } from '../../../src/core/report/write/text.ts'
import { Walk } from '../../helpers/example.ts'
import { exampleWalk, reported } from '../../helpers/reported.ts'

const report = reported(exampleWalk())
const bore = report.readings.find(({ step }) => step === 'bore')

describe('the sketches of a bore', () => {
  it('have the figure that counts at each place, one sketch for each line across', () => {
    expect(bore?.sketches.map(({ title }) => title)).toEqual([
      '7 Bore, TOP TO BOTTOM [in]',
      '7 Bore, SIDE TO SIDE [in]',
    ])
    for (const [n, sketch] of (bore?.sketches ?? []).entries()) {
      const own = bore?.places.filter((_, i) => i % 2 === n) ?? []
      expect(own).toHaveLength(3)
      const figures = own.map(({ value }) => value?.shown ?? '?')
      expect(sketch.lines.join('\n').match(/\d\.\d{4}/g)).toEqual(figures)
      expect(sketch.told.match(/\d\.\d{4}/g)).toEqual(figures)
    }
  })

  it('have no instrument along the bore, and no place that is still to come', () => {
    for (const { lines } of bore?.sketches ?? []) {
      const along = lines.map((one) => one.slice(0, 40)).join('\n')
      expect(along).not.toMatch(/HERE|#|\bo\b/)
      expect(along.match(/x/g)).toHaveLength(3)
    }
  })

  it('tell apart what was not measured, and what has no figure', () => {
    const open = reported(new Walk().toBore().keys('9.5033', '9.5034'))
    const [first] = open.readings.find(({ step }) => step === 'bore')?.sketches ?? []
    expect(first?.told).toBe(
      'HEAD END of ring travel 9.5034; CENTRE of ring travel not measured; CRANK END of ring travel not measured.',
    )
    expect(first?.lines.join('\n').match(/\bo\b/g)?.length).toBeGreaterThanOrEqual(2)
  })

  it('stand in the page as a picture told in words, and in the text as words alone', () => {
    const html = reportHtml(paperOf(report))
    const [first] = bore?.sketches ?? []
    expect(html).toContain(`aria-label="${first?.told}"`)
    expect(html).toContain(first?.lines[2])
    const text = reportText(paperOf(report))
    expect(text).toContain('Sketch: 7 Bore, TOP TO BOTTOM')
    expect(text).not.toContain('ring travel ─')
  })
})

describe('a drawing of what was measured', () => {
  const stations = [
    { id: 'a', label: 'A', at: 0.2, value: '1.25' },
    { id: 'b', label: 'B', at: 0.8 },
  ]
  it.each(['bore_wall', 'rod', 'piston'] as const)('has figures and no instrument: %s', (kind) => {
    const { lines } = drawPlace({ kind, stations, here: null, across: true }, { ascii: false, width: 60 })
    const all = lines.join('\n')
    expect(all).toContain('1.25')
    expect(all).not.toMatch(/HERE|#/)
  })

  it('is none of one place drawn large', () => {
    expect(
      drawPlace({ kind: 'nut', stations, here: null, across: false }, { ascii: false, width: 60 }).lines,
    ).toEqual([])
  })
})
