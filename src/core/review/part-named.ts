// Which steps are of a part that a question names: by their own title, by the parts of the procedure they stand in, and by what a verdict
// names its figures. A rod is judged at a step that has no rod in its title.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { OnRecord } from './asked-entries.ts'
import { heldIn } from './asked-words.ts'
import { judgedIn } from './judged.ts'

/** How many of the words name the step. */
export function namesStep({ defs }: Pick<OnRecord, 'defs'>, id: string, words: readonly string[]): number {
  const placed = stepById(defs, id)
  return heldIn([placed, ...placed.inside].map(({ step }) => step.title).join(' '), words)
}

/** How many of the words name what a verdict is about. */
export function namesVerdict(
  record: Pick<OnRecord, 'defs'>,
  e: Extract<Entry, { type: 'verdict.given' }>,
  words: readonly string[],
): number {
  const figures = judgedIn(e.verdict).map(({ name }) => name)
  return namesStep(record, e.step, words) + heldIn(figures.join(' '), words)
}
