// A report of a walk, as the command makes it of a log on disk.
import { asOpened, type Editions } from '../../src/core/job/editions.ts'
import { reportOf } from '../../src/core/report/report.ts'
import type { Report } from '../../src/core/report/schema.ts'
import type { Beside } from '../../src/core/review/beside.ts'
import { reviewOf } from '../../src/core/review/review.ts'
import type { Walk } from './example.ts'
import { SOUND } from './reviewed.ts'
import { walkExample } from './walked.ts'

export const HEAD = 'ab'.repeat(32)

export function reported(
  walk: Walk,
  beside: Partial<Beside> = {},
  files = new Map<number, string>(),
): Report {
  const { defs } = walk.engine
  const editions: Editions = asOpened(defs)
  const review = reviewOf(defs, walk.entries, walk.state, { ...SOUND, ...beside }, editions)
  return reportOf(editions, walk.entries, walk.state, review, {
    head: HEAD,
    version: 'test',
    checks: [{ of: 'content', says: 'every line proves content and place.' }],
    files,
  })
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
