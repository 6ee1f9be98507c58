// At 40 columns and 15 rows: whatever is read is drawn over the question of it, and no hazard gives way to that.
import { describe, expect, it } from 'vitest'
import { type Line, layOut, type Row } from '../../../src/core/sheet/block.ts'
import { foot } from '../../../src/core/sheet/foot.ts'
import { fitLive, type SideUp } from '../../../src/core/sheet/live.ts'
import { promptView } from '../../../src/core/sheet/prompt-view.ts'
import type { Walk } from '../../helpers/example.ts'
import { type Alone, everyReadAlone, readOnce, stepAlone } from '../../helpers/read-alone.ts'
import { shippedDefs } from '../../helpers/shipped-jobs.ts'
import { walkExample } from '../../helpers/walked.ts'

const SIZE = { rows: 15, columns: 40 }

const LAST = { of: 'question', n: 99 } as const

function shot(walk: Walk, { ascii = false, taken = 0, side = LAST as SideUp } = {}) {
  const style = { width: SIZE.columns - 1, record: 'EXAMPLE' as const, ascii }
  const { defs } = walk.engine
  const view = promptView(defs, walk.state, walk.talk, style)
  const input = { view, foot: foot(defs, walk.state, walk.now), style, ...SIZE, notice: null, taken }
  const live = fitLive({ ...input, side })
  const text = live.above.map((line: Line) => line.text)
  const has = (form: readonly Row[]) => form.every((row) => text.some((line) => line === row.text))
  const rows = live.above.length + 1 + live.below.length
  const lines = (list: readonly Row[]) => layOut({ margin: '', rows: list }, style).map((line) => line.text)
  return { view, live, text, rows, lines, isDrawn: [...view.drawings, ...view.strips].some(has) }
}

/** Each row of what must be seen whole, alone or in one run, or a line that says where it stands. */
function hazardsStand({ view, text, live }: ReturnType<typeof shot>): boolean {
  const flow = text.map((line) => line.trim()).join(' ')
  const [hazard, trouble] = view.must.map((row) => row.text)
  if (hazard === undefined) return true
  if (live.turn === null) return flow.includes(hazard) && (trouble === undefined || flow.includes(trouble))
  return flow.includes(hazard) || text.includes('Hazard: Up shows it')
}

/** Over the question, or on a side of its own that is turned over before it. */
function isDrawnOn(walk: Walk, options: { ascii?: boolean; taken?: number } = {}): boolean {
  const last = shot(walk, options)
  const sides = Array.from({ length: last.live.turn?.front ?? 0 }, (_, n) => ({ of: 'front', n }) as const)
  return last.isDrawn || sides.some((side) => shot(walk, { ...options, side }).isDrawn)
}

describe('at 40 columns and 15 rows', () => {
  it('each reading of the example is drawn over its question, with its hazard', () => {
    const places: string[] = []
    let from = 0
    walkExample((walk) => {
      const taken = Math.min(8, (walk.entries.length - from) * 3)
      from = walk.entries.length
      const { prompt } = walk
      if (prompt.kind !== 'read' || walk.talk.ask !== null) return
      const one = shot(walk, { taken })
      expect(one.rows).toBeLessThanOrEqual(SIZE.rows - 1)
      expect(hazardsStand(one)).toBe(true)
      if (one.view.strips.length === 0) return
      places.push(prompt.place.key)
      expect(one.isDrawn, one.text.join('\n')).toBe(true)
    })
    expect(places.length).toBeGreaterThan(15)
    expect(new Set(places).size).toBeGreaterThan(8)
  })

  const drawn = everyReadAlone().filter(({ step }) => step.drawing !== 'none')

  it.each(drawn.map((one): [string, Alone] => [one.name, one]))(
    '%s is drawn at its first reading and at its second',
    (_, { walk: of }) => {
      const walk = of.copy()
      for (const taken of [0, 4]) {
        if (walk.prompt.kind !== 'read' || walk.talk.ask !== null) return
        for (const ascii of [false, true]) {
          const one = shot(walk, { ascii, taken })
          expect(one.rows).toBeLessThanOrEqual(SIZE.rows - 1)
          expect(hazardsStand(one)).toBe(true)
          expect(isDrawnOn(walk, { ascii, taken }), one.text.join('\n')).toBe(true)
        }
        if (taken === 0) readOnce(walk)
      }
    },
  )
})

describe('a step where nothing is read', () => {
  it('has its picture on a side of a low screen, or the low one over its question', () => {
    const hollow = shippedDefs('hollow-piston.yaml')
    for (const { step } of hollow.steps) {
      if (!('drawing' in step) || step.drawing !== 'piston_plugs') continue
      const alone = stepAlone(hollow, step)
      const one = shot(alone)
      expect(one.view.drawings).toHaveLength(1)
      expect(one.view.strips).toHaveLength(1)
      expect(isDrawnOn(alone), one.text.join('\n')).toBe(true)
    }
  })
})
