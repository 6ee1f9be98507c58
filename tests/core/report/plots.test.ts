// Plots by their data: each point stands where its axis says, and is a reading of the job, not only something that looks like one.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boreRecord } from '../../../src/core/job/verdict-record.ts'
import { predictionAt, wearPlots } from '../../../src/core/report/parts/plot-wear.ts'
import { sceneOf } from '../../../src/core/report/plot/of.ts'
import { INKS, type Scene } from '../../../src/core/report/plot/scene.ts'
import type { Report } from '../../../src/core/report/schema.ts'
import type { Plot, PlotOf } from '../../../src/core/report/schema-plots.ts'
import { PAGE_INKS } from '../../../src/core/report/write/style.ts'
import { sceneSvg } from '../../../src/core/report/write/svg.ts'
import { type WearHistory, wornSide } from '../../../src/core/wear/history.ts'
import { hoursToLimits } from '../../../src/core/wear/hours-left.ts'
import { wearRate } from '../../../src/core/wear/rate.ts'
import { Walk } from '../../helpers/example.ts'
import { pocketDefs, rg27Lines } from '../../helpers/pocket-job.ts'
import { exampleWalk, reported } from '../../helpers/reported.ts'

function only<K extends Plot['kind']>({ plots }: Report, kind: K): PlotOf<K> {
  const found = plots.filter((one): one is PlotOf<K> => one.kind === kind)
  const [first] = found
  if (first === undefined || found.length > 1) throw new Error(`${found.length} plots of ${kind}`)
  return first
}

/** Every point lies where the straight scale through the two that are furthest apart has it. */
function expectScaled({ data }: Scene): void {
  for (const axis of [0, 1] as const) {
    const sorted = [...data].sort((a, b) => a.value[axis] - b.value[axis])
    const [least, most] = [sorted[0], sorted.at(-1)]
    if (least === undefined || most === undefined || least.value[axis] === most.value[axis]) continue
    const per = (most.px[axis] - least.px[axis]) / (most.value[axis] - least.value[axis])
    // Upwards is less on paper.
    expect(Math.sign(per)).toBe(axis === 0 ? 1 : -1)
    for (const { value, px } of data)
      expect(px[axis]).toBeCloseTo(least.px[axis] + (value[axis] - least.value[axis]) * per, 6)
  }
}

/** Places of the marks in the SVG, as it is written. */
function marksIn(svg: string): string[] {
  return [...svg.matchAll(/translate\(([-\d.]+ [-\d.]+)\)/g)].map(([, at]) => at ?? '')
}

const at = ([x, y]: readonly [number, number]) => `${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100}`

describe('the plot of a bore', () => {
  const plot = only(reported(exampleWalk()), 'bore-profile')
  const scene = sceneOf(plot)

  it('has a point for each size that was judged, in the unit of the shop', () => {
    const [record] = Object.values(exampleWalk().state.verdicts).map(({ verdict }) => boreRecord(verdict))
    const judged = record?.inputs.readings ?? []
    expect(judged.length).toBe(6)
    expect(plot.points.map(({ value }) => value.si)).toEqual(judged.map(({ valueM }) => valueM))
    const drawn = scene.data.map(({ value }) => value)
    for (const one of judged) expect(drawn).toContainEqual([one.at, expect.closeTo(one.valueM / 0.0254, 9)])
    expectScaled(scene)
  })

  it('draws those points, and says how many times sizes are larger than lengths', () => {
    const marks = marksIn(sceneSvg(scene, 'a'))
    for (const { px } of scene.data) expect(marks).toContain(at(px))
    // By hand: points on paper for one inch of size, over those for one inch along the bore.
    const [a, b] = [scene.data[0], scene.data[1]]
    const [c, d] = [scene.data[0], scene.data.find(({ value }) => value[0] === 1)]
    if (a === undefined || b === undefined || c === undefined || d === undefined) throw new Error('no points')
    const perSize = Math.abs((a.px[1] - b.px[1]) / (a.value[1] - b.value[1]))
    const perLength = Math.abs((c.px[0] - d.px[0]) / (c.value[0] - d.value[0])) / (plot.travel.si / 0.0254)
    const said = Number(/drawn (\d+) times as large/.exec(scene.notes[0] ?? '')?.[1])
    expect(said / (perSize / perLength)).toBeCloseTo(1, 1)
    expect(scene.notes[0]).toMatch(/exaggerated/)
  })

  it('has each value on paper of its own inside the frame, after every line and mark', () => {
    const { shapes } = scene
    const values = plot.points.map(({ value }) =>
      shapes.findIndex((s) => s.is === 'text' && s.text === value.shown),
    )
    const lines = shapes.flatMap((s, n) =>
      s.is === 'path' && s.fill === undefined && s.width === 1.25 ? [n] : [],
    )
    for (const n of values) {
      expect(n).toBeGreaterThan(Math.max(...lines))
      expect(shapes[n - 1]).toMatchObject({ is: 'path', fill: 'paper' })
    }
  })

  it('has nominal and limits, and says of one that is far off where it lies', () => {
    expect(plot.lines.map(({ label, value }) => [label, value.shown])).toEqual([
      ['nominal', '9.50000'],
      ['limit of the spread', '9.50894'],
      ['limit of the largest', '9.53000'],
    ])
    expect(sceneSvg(scene, 'a')).toContain('limit of the largest 9.53000 lies above this')
    expect(scene.told).toContain('outside the plot')
  })
})

const history = (
  readings: readonly (readonly [hours: number, mm: number, u: number])[],
  wears: WearHistory['wears'] = 'larger',
): WearHistory => ({
  wears,
  readings: readings.map(([hours, mm, u]) => ({ hours, value: mm / 1000, U: u / 1000, since: 'nothing' })),
})

describe('the band of wear', () => {
  it.each([
    [
      'two readings',
      history([
        [0, 241.3, 0.008],
        [8000, 241.42, 0.008],
      ]),
    ],
    [
      'three readings',
      history([
        [0, 241.3, 0.008],
        [8000, 241.37, 0.008],
        [16000, 241.45, 0.008],
      ]),
    ],
    [
      'a ring that thins',
      history(
        [
          [0, 12.7, 0.01],
          [8000, 12.1, 0.01],
          [16000, 11.6, 0.01],
        ],
        'smaller',
      ),
    ],
  ])('meets the limit at the hours that are told: %s', (_, given) => {
    const rate = wearRate(given)
    if (!rate.ok) throw new Error(rate.error.say)
    const limit = given.wears === 'larger' ? 0.2425 : 0.0105
    const told = hoursToLimits(given, [limit], 'no')
    if (!told.ok) throw new Error(told.error.say)
    const [left] = told.value.limits
    if (left === undefined || left.latest === null) throw new Error('no telling')
    const last = given.readings.at(-1)?.hours ?? Number.NaN
    const bar = wornSide(given, limit)
    const early = predictionAt(given, rate.value, last + left.earliest)
    const late = predictionAt(given, rate.value, last + left.latest)
    expect(early.fit + early.half).toBeCloseTo(bar, 9)
    expect(late.fit - late.half).toBeCloseTo(bar, 9)
  })

  it('of two readings is as wide at each as its own error, and says that it is measuring error only', () => {
    const given = history([
      [1000, 241.3, 0.006],
      [9000, 241.42, 0.009],
    ])
    const rate = wearRate(given)
    if (!rate.ok) throw new Error(rate.error.say)
    expect(predictionAt(given, rate.value, 1000).half).toBeCloseTo(6e-6, 12)
    expect(predictionAt(given, rate.value, 9000).half).toBeCloseTo(9e-6, 12)
    const { defs } = exampleWalk().engine
    const step = { step: { of: 'nothing on record' }, id: 'none', scope: '' }
    const station = { id: 'none', label: 'CENTRE' }
    // Of what was found only the name of the place is drawn, and no overhaul has it.
    const found = { si: 0.24142, u: 9e-6, step, place: { station, axis: null } }
    const [plot] = wearPlots(defs, [
      {
        of: 'bore',
        found,
        left: null,
        last: null,
        rate,
        history: given,
        hoursLeft: null,
        held: { found: null, left: null },
      } as never,
    ])
    expect(plot?.notes.join(' ')).toMatch(/measuring error only, as two readings show no scatter/)
    if (plot === undefined) throw new Error('no plot')
    const scene = sceneOf(plot)
    expect(scene.data.map(({ value }) => value)).toEqual(
      given.readings.map(({ hours, value }) => [hours, expect.closeTo(value / 0.0254, 9)]),
    )
    expectScaled(scene)
    // Bars are promised only where they stand out of their mark.
    const fine = { ...plot, readings: plot.readings.map((one) => ({ ...one, U: one.U / 100 })) }
    const legend = (one: typeof plot) => sceneOf(one).shapes.flatMap((s) => (s.is === 'text' ? [s.text] : []))
    expect(legend(plot)).toContain('bars: U, k = 2')
    expect(legend(fine)).not.toContain('bars: U, k = 2')
    expect(legend(fine)).toContain('U is in the mark')
    expect(sceneSvg(scene, 'w')).toContain('error only')
    for (const { hours, low, fit, high } of plot.band) {
      const { half } = predictionAt(given, rate.value, hours)
      expect([fit - low, high - fit]).toEqual([expect.closeTo(half, 8), expect.closeTo(half, 8)])
    }
  })
})

describe('the plots of a load question', () => {
  const walk = new Walk(pocketDefs('rg-27')).keys(...rg27Lines())
  const report = reported(walk)

  it('mark the setting, and have a point for each opening of the table', () => {
    const verdict = Object.values(walk.state.verdicts)[0]?.verdict
    if (verdict?.compute !== 'pocket_setting') throw new Error('no pocket was judged')
    const plot = only(report, 'pocket')
    const scene = sceneOf(plot)
    const curve = scene.data.filter(({ series }) => series === 'driver load')
    expect(curve.map(({ value: [x, y] }) => [x, y * 1000])).toEqual(
      verdict.result.table.map(({ opening, loadW }) => [opening, expect.closeTo(loadW, 6)]),
    )
    expectScaled(scene)
    const { recommended, present } = verdict.result
    expect([plot.setting, plot.present]).toEqual([recommended, present])
    const svg = sceneSvg(scene, 'p')
    expect(svg).toMatch(/now [\d.]+ %/)
    expect(svg.includes('SET ')).toBe(recommended !== null)
  })

  it.each([
    ['a turn and a half open', '540', '222'],
    ['three turns open', '1080', '219'],
    ['shut', '0', '226'],
  ])(
    'mark where it stands and what was read, %s: from the readings on record, not from the verdict',
    (_, wheel, load) => {
      const read = new Walk(pocketDefs('rg-27')).keys(...rg27Lines({ setting: wheel, load }))
      const plot = only(reported(read), 'pocket')
      const scene = sceneOf(plot)
      // 24 turns from shut to full open, by the machine record; the power meter in kW.
      const opening = Number(wheel) / (24 * 360)
      const now = scene.data.filter(({ series }) => series === 'as it stands')
      expect(now.map(({ value: [x] }) => x)).toEqual([expect.closeTo(opening, 12)])
      expect(plot.measured?.si).toBeCloseTo(Number(load) * 1000, 6)
      expect(plot.target?.si).toBeCloseTo(225_000 * 0.95, 6)
      expectScaled(scene)
      // The line of the mark is drawn at that very place, and its word says how far open that is.
      const [mark] = now
      const paths = scene.shapes.flatMap((one) => (one.is === 'path' ? [one.d] : []))
      const [x] = mark?.px ?? [Number.NaN]
      expect(
        paths.some((d) =>
          new RegExp(`^M${at([x, 0]).split(' ')[0]}[ ,].*L${at([x, 0]).split(' ')[0]}[ ,]`).test(d),
        ),
      ).toBe(true)
      expect(sceneSvg(scene, 'p')).toContain(`now ${Math.round(opening * 1000) / 10} %`)
    },
  )

  it('mark the recommended setting where the load by the curve is at or under the target, and the step before is over it', () => {
    const plot = only(report, 'pocket')
    const scene = sceneOf(plot)
    const [set, ...more] = scene.data.filter(({ series }) => series === 'to be set')
    if (set === undefined || plot.target === null) throw new Error('nothing is recommended')
    expect(more).toEqual([])
    expect(set.value[0]).toBe(plot.setting)
    expect(set.value[1] * 1000).toBeLessThanOrEqual(plot.target.si)
    const smaller = scene.data.filter(
      ({ series, value }) => series === 'driver load' && value[0] < set.value[0],
    )
    expect(smaller.length).toBeGreaterThan(0)
    for (const { value } of smaller) expect(value[1] * 1000).toBeGreaterThan(plot.target.si)
  })

  it('draw the ideal cycle between the pressure read and that of the stage, over the volumes of cylinder and pocket', () => {
    const plot = only(report, 'pv')
    const head = plot.ends.find(({ label }) => label === 'head end')
    if (head === undefined) throw new Error('no head end')
    // By hand from the machine record: bore 381 mm, the pocket of 4.6 L open by 540 of 8640 degrees; 2.10 bar read.
    const swept = (Math.PI / 4) * 0.381 ** 2 * 0.28
    const clearance = 0.15 * swept + 0.0046 * (540 / 8640)
    const volumes = head.points.map(({ volume }) => volume)
    expect(Math.max(...volumes)).toBeCloseTo(swept + clearance, 8)
    expect(Math.min(...volumes)).toBeCloseTo(clearance, 8)
    const pressures = head.points.map(({ pressure }) => pressure)
    expect(Math.min(...pressures) / (210_000 + 100_200)).toBeCloseTo(1, 6)
    const scene = sceneOf(plot)
    expect(scene.data.filter(({ series }) => series === 'head end').map(({ value }) => value)).toEqual(
      head.points.map(({ volume, pressure }) => [
        expect.closeTo(volume * 1000, 9),
        expect.closeTo(pressure / 1e5, 9),
      ]),
    )
  })

  it('draw the ideal cycle as one that was worked out, closed, between the pressures of the stage', () => {
    const plot = only(report, 'pv')
    expect(plot.notes.join(' ')).toMatch(/Worked out, not measured/)
    for (const { points } of plot.ends) expect(points[0]).toEqual(points.at(-1))
    expectScaled(sceneOf(plot))
  })
})

describe('ring gaps', () => {
  it('are bars from zero to their size, each with its limits', () => {
    const figure = (mm: number) => ({
      si: mm / 1000,
      kind: 'length',
      unit: 'mm',
      shown: mm.toFixed(3),
      text: `${mm.toFixed(3)} mm`,
    })
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.01, max: 5, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (sizes) => {
          const plot: PlotOf<'gaps'> = {
            kind: 'gaps',
            title: 'gaps',
            unit: 'mm',
            notes: [],
            bars: sizes.map((mm, i) => ({ label: `ring ${i + 1}`, value: figure(mm) })),
            lines: [{ label: 'at most', value: figure(3) }],
          }
          const scene = sceneOf(plot)
          const zero = scene.data[0]
          if (zero === undefined) throw new Error('no bars')
          for (const { px, value } of scene.data) {
            expect((px[0] - 170) / value[0]).toBeCloseTo((zero.px[0] - 170) / zero.value[0], 6)
            expect(px[0]).toBeLessThan(scene.width)
          }
        },
      ),
      { numRuns: 30 },
    )
  })
})

describe('inks', () => {
  /** WCAG 2.2, relative luminance and contrast ratio. */
  const luminance = (hex: string) => {
    const part = (i: number) => {
      const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
    }
    return 0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
  }
  const onWhite = (hex: string) => 1.05 / (luminance(hex) + 0.05)

  it.each([
    ...Object.entries(PAGE_INKS),
    ...Object.entries(INKS).filter(([name]) => !['grid', 'band', 'paper'].includes(name)),
  ])('%s is read on white', (_, hex) => {
    expect(onWhite(hex)).toBeGreaterThanOrEqual(4.5)
  })
})
