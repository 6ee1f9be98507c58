// Whether a line of a hold point is about a lock or a blind that comes off, by what it asks for.
import type { Evidence } from '../definition/evidence.ts'
import { comesOff } from './gate.ts'

/** Asks for, or says, that a lock was taken off. */
export function tellsOff(evidence: Evidence): boolean {
  if (comesOff(evidence)) return true
  if (evidence.kind !== 'numbers' && evidence.kind !== 'words') return false
  const text = evidence.kind === 'words' ? `${evidence.ask} ${evidence.words}` : evidence.ask
  const sentences = text.split(/[.?!:;]/)
  return sentences.some(
    (one) => /\b(lock|blind)s?\b.*\boff\b/i.test(one) && !/\b(no|not|never|nobody)\b/i.test(one),
  )
}
