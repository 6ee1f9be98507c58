// What is another in a review than before somebody acted: told above the list, so that nobody has to look for it.
import type { Exception } from './exception.ts'
import type { Review } from './review.ts'

/** Lines; empty where nothing of it is another. */
export function changedLines(before: Review, after: Review): string[] {
  const had = new Set(before.exceptions.map(keyOf))
  const has = new Set(after.exceptions.map(keyOf))
  const gone = before.exceptions.filter((one) => !has.has(keyOf(one)))
  const come = after.exceptions.filter((one) => !had.has(keyOf(one)))
  return [
    ...(before.standing === after.standing ? [] : [`Now ${after.standing}; was ${before.standing}.`]),
    ...gone.map(({ what }) => `Was: ${what}`),
    ...come.map(({ number, what, open }) => `Now ${number}: ${what}${open ? ', OPEN' : ''}`),
  ]
}

const keyOf = ({ kind, what, open }: Exception) => `${kind} ${open} ${what}`
