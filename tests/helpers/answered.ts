// What a review answers to a question about a walk, as lines.
import { questionBlocks } from '../../src/core/review/asked.ts'
import type { Walk } from './example.ts'
import { reviewed } from './reviewed.ts'

/** Empty where it is no question. */
export function answered(of: Walk, keyed: string): string {
  const { defs } = of.engine
  const blocks = questionBlocks({ review: reviewed(of), defs, entries: of.entries, state: of.state }, keyed)
  return (blocks ?? []).flatMap(({ rows }) => rows.map(({ text }) => text.trim())).join('\n')
}
