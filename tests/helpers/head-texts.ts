// The lines above the list of a review, as one string.
import { wholeBlocks } from '../../src/core/review/page.ts'
import type { Review } from '../../src/core/review/review.ts'
import { SMALL_DEFS, smallStart } from './reviewed.ts'

export function headTexts(review: Review): string {
  const style = { width: 79, record: 'EXAMPLE', ascii: true } as const
  const [head] = wholeBlocks(
    SMALL_DEFS,
    { ...review, changes: [], measuredWith: 0, leftOut: 0 },
    smallStart().state,
    style,
  )
  return (head?.rows ?? []).map(({ text }) => text).join(' ')
}
