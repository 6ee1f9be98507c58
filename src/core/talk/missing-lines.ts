// What is told where something is missing: a thing of the work, which may lie where it hurts somebody, or a lock, without which nothing is shut off.
import { openThings, thingText } from '../job/register.ts'
import type { State } from '../job/state.ts'

const LOCK = /\b(?:pad)?locks?\b/i
export const NO_LOCK =
  'A point without its lock is not shut off: nobody goes in, and the hold point stays shut until one hangs there and its number is keyed.'

export function missingLines(state: State, question: string): string[] {
  const open = openThings(state)
  return [
    ...(LOCK.test(question) ? [NO_LOCK] : []),
    'Nothing is closed, turned or started until it is found. Common practice, no source.',
    'Nobody reaches in for it but as the sheet at hand allows. Count again, tell a lead; note puts it on record.',
    ...(open.length === 0
      ? ['Nothing placed is open in this job; placed puts a thing on its list, taken accounts for it.']
      : ['Placed and not accounted for:', ...open.map((thing) => `  ${thingText(thing)}`)]),
  ]
}
