// The prompt of every read step that is shipped, with its drawing, on a usual and on a small screen.
import { describe, expect, it } from 'vitest'
import { widthOf } from '../../../src/core/lib/text.ts'
import type { Row } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { type Alone, everyReadAlone, readOnce, settlePlace, stepAlone } from '../../helpers/read-alone.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'

const ALL = everyReadAlone()
const DRAWN = ALL.filter(({ step }) => step.drawing !== 'none')

function shot(walk: Walk, columns: number, rows: number, ascii = false) {
  const style = { width: columns - 1, record: 'PRACTICE' as const, ascii }
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, style)
  const live = fitLive({ view, foot: foot(defs, walk.state, walk.now), style, rows, columns, notice: null })
  const lines = [...live.above, { margin: live.inputMargin, text: '' }, ...live.below]
  const text = lines.map((line) => line.margin + line.text)
  return { view, text, whole: text.join('\n'), shown: view.drawings.filter((form) => isShown(form, text)) }
}

/** All rows of a form, one under the other. */
function isShown(form: readonly Row[], text: readonly string[]): boolean {
  const first = form[0]?.text ?? ''
  return text.some(
    (line, i) => line.endsWith(first) && form.every((row, n) => (text[i + n] ?? '').endsWith(row.text)),
  )
}

const copies = (): Alone[] => DRAWN.map((one) => ({ ...one, walk: one.walk.copy() }))

describe('what is drawn', () => {
  it('is every reading but those of which a picture tells nothing', () => {
    const without = ALL.filter(({ step }) => step.drawing === 'none').map(({ step }) => step.id)
    expect([...new Set(without)].sort()).toEqual([
      'dial_return',
      'gauge_set_after',
      'gauge_set_before',
      'gauge_temp_after',
      'gauge_temp_before',
      'leak_end',
      'leak_end_again',
      'leak_start',
      'leak_start_again',
      'load',
      'mic_set_after',
      'mic_set_before',
      'mic_temp_after',
      'mic_temp_before',
      'run_hours',
      'set_after',
      'set_before',
      'test_begin',
      'test_end',
      'water_end',
      'water_start',
      'weight',
    ])
    expect(DRAWN.length).toBeGreaterThan(60)
  })
})

describe.each([
  [80, 24],
  [40, 15],
])('at %i columns and %i rows', (columns, rows) => {
  it.each(DRAWN.map((one) => [one.name, one] as const))(
    '%s keeps within the screen',
    (_, { walk: fresh }) => {
      const walk = fresh.copy()
      for (let n = 0; n < 4 && walk.prompt.kind === 'read'; n += 1) {
        for (const ascii of [false, true]) {
          const { text } = shot(walk, columns, rows, ascii)
          expect(text.length).toBeLessThan(rows)
          for (const line of text) expect(widthOf(line)).toBeLessThan(columns)
          if (ascii) expect(text.join('')).toMatch(/^[ -~]*$/)
        }
        settlePlace(walk)
      }
    },
  )

  it('draws a form whole or not at all', () => {
    for (const { walk, name } of copies()) {
      const { whole, shown } = shot(walk, columns, rows)
      expect([name, shown.length > 0]).toEqual([name, /HERE/.test(whole.replace(/^.*instrument.*$/m, ''))])
    }
  })
})

describe('at 80 columns and 24 rows', () => {
  it.each(DRAWN.map((one) => [one.name, one] as const))(
    '%s shows where the instrument goes',
    (_, { walk }) => {
      const { shown, whole } = shot(walk, 80, 24)
      expect(shown).toHaveLength(1)
      expect(shown[0]?.length).toBeGreaterThan(2)
      expect(whole).toContain('HERE')
      expect(whole).toContain('# instrument, here')
    },
  )

  it('fills in the figure of a place once it is settled, and moves on', () => {
    let filled = 0
    for (const { walk, step } of copies()) {
      if (step.stations.length < 2) continue
      const before = shot(walk, 80, 30)
      for (let n = 0; n < (step.axes ?? [0]).length; n += 1) settlePlace(walk)
      const { prompt } = walk
      if (prompt.kind !== 'read') throw new Error(prompt.kind)
      const after = shot(walk, 80, 30)
      expect(before.shown[0]?.some((row) => /\bx\b/.test(row.text))).toBe(false)
      const figures = ({ shown }: typeof before) =>
        (shown[0] ?? []).flatMap(({ text }) => text.match(/\d[\d.]*/g) ?? []).length
      expect(after.shown[0]?.some((row) => /x/.test(row.text))).toBe(true)
      expect(figures(after)).toBeGreaterThan(figures(before))
      expect(after.whole).not.toBe(before.whole)
      filled += 1
    }
    expect(filled).toBeGreaterThan(20)
  })
})

describe('on a small screen', () => {
  const rod = () => (DRAWN.find(({ name }) => name === 'rod-sizes rod_top') as Alone).walk.copy()

  it('the words come before the drawing at the first reading of a step, and after it from the second on', () => {
    const walk = rod()
    const small = () => shot(walk, 60, 16)
    const lowest = () => shot(walk, 60, 12)
    expect(small().whole).toContain('Turn the rod until')
    expect(small().shown).toHaveLength(1)
    expect(lowest().whole).toContain('Turn the rod until')
    expect(lowest().shown).toHaveLength(0)
    readOnce(walk)
    expect(lowest().whole).not.toContain('Turn the rod until')
    expect(lowest().shown).toHaveLength(1)
  })
})

describe('the wear along the bore', () => {
  const bore = () => (DRAWN.find(({ name }) => name === 'bore-inspection bore') as Alone).walk.copy()

  it.each([24, 30, 40])(
    'is plotted at %i rows as soon as two stations have a figure, and not before',
    (rows) => {
      const walk = bore()
      const plot = /not to scale, bars|all readings the same/
      settlePlace(walk)
      settlePlace(walk)
      expect(shot(walk, 80, rows).whole).not.toMatch(plot)
      settlePlace(walk)
      const { whole, shown } = shot(walk, 80, rows)
      expect(whole).toMatch(plot)
      expect(shown).toHaveLength(1)
    },
  )
})

describe('a step where nothing is read', () => {
  const hollow = shippedDefs('hollow-piston.yaml')
  const pictured = hollow.procedure.steps.filter((step) => step.kind === 'observe' || step.kind === 'tell')

  it('has its picture at 80 by 24 where it asks for one, and only there', () => {
    const drawn = pictured.map((step) => {
      const { text, view } = shot(stepAlone(hollow, step), 80, 24)
      expect(text.length).toBeLessThan(24)
      expect(view.drawings).toHaveLength(step.drawing === undefined ? 0 : 1)
      return text.join('\n').includes('nobody in line: plug, vent') ? [step.id] : []
    })
    expect(drawn.flat()).toEqual(['plugs_seen', 'knock', 'vents', 'quarantined'])
  })
})
