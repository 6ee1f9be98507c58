// A report of a walk, as the command makes it of a log on disk.

import { expect } from 'vitest'
import { asOpened, type Editions } from '../../src/core/job/editions.ts'
import { nonconformances } from '../../src/core/job/nonconformance.ts'
import { widthOf } from '../../src/core/lib/text.ts'
import { paperOf } from '../../src/core/report/paper-of.ts'
import { sceneOf } from '../../src/core/report/plot/of.ts'
import { reportOf } from '../../src/core/report/report.ts'
import type { Report } from '../../src/core/report/schema.ts'
import { reportSchema } from '../../src/core/report/schema.ts'
import { reportText } from '../../src/core/report/write/text.ts'
import type { Beside } from '../../src/core/review/beside.ts'
import { reviewOf } from '../../src/core/review/review.ts'
import { exampleDefs, type Walk } from './example.ts'
import { SOUND } from './reviewed.ts'
import { walkExample } from './walked.ts'

export const HEAD = 'ab'.repeat(32)

export function reported(
  walk: Walk,
  beside: Partial<Beside> = {},
  files = new Map<number, string>(),
): Report {
  const { defs } = walk.engine
  const editions = editionsOf(walk)
  const review = reviewOf(defs, walk.entries, walk.state, { ...SOUND, ...beside }, editions)
  return reportOf(editions, walk.entries, walk.state, review, {
    head: HEAD,
    version: 'test',
    checks: [{ of: 'content', says: 'every line proves content and place.' }],
    files,
  })
}

/** The definitions of the opening are of no account to what tests look at, but for the record that was changed since. */
function editionsOf({ engine, entries }: Walk): Editions {
  const taken = entries.find(({ type }) => type === 'record.taken-in')
  if (taken === undefined) return asOpened(engine.defs)
  return [
    { from: 0, defs: exampleDefs() },
    { from: taken.seq, defs: engine.defs },
  ]
}

/** What the report of any finished job has to hold, whatever its answers come to: the structure, and no counts. */
export function expectReported(walk: Walk): Report {
  const { defs } = walk.engine
  const report = reported(walk)
  expect(reportSchema.parse(report)).toEqual(report)
  expect(report.log.length).toBe(walk.entries.length)
  expect(report.decisions.flatMap(({ name }) => name ?? [])).toEqual(
    nonconformances(defs, walk.state)
      .filter(({ stands }) => stands)
      .map(({ name }) => name),
  )
  const out = walk.entries.flatMap((one) => (one.type === 'instrument.doubted' ? [one.instrument] : []))
  expect(report.instruments.flatMap(({ id, doubted }) => (doubted === null ? [] : [id]))).toEqual(out)
  // Every point of every plot lies inside it.
  for (const plot of report.plots) {
    const { data, width, height } = sceneOf(plot)
    expect(data.length).toBeGreaterThan(1)
    for (const {
      px: [x, y],
    } of data)
      expect([x > 0, x < width, y > 0, y < height]).toEqual([true, true, true, true])
  }
  for (const line of reportText(paperOf(report)).slice(0, -1).split('\n')) {
    if (!line.startsWith('EXAMPLE')) throw new Error(`not marked: ${line}`)
    if (widthOf(line) > 79) throw new Error(`too wide: ${line}`)
  }
  return report
}

let example: Walk | undefined

/** The bore example to its end, walked once. */
export function exampleWalk(): Walk {
  example ??= walkExample(() => undefined)
  return example
}

/** What the mapper makes of every text of a report, whatever key it stands under. */
export function withTexts<T>(value: T, map: (text: string) => string): T {
  if (typeof value === 'string') return map(value) as T
  if (Array.isArray(value)) return value.map((one) => withTexts(one, map)) as T
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withTexts(inner, map)])) as T
}
