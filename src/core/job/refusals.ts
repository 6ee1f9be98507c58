// Refusals that several rules share.
import { ok, type Result, refuse } from '../lib/result.ts'

export function notAsked(): Result<never> {
  return refuse('not-asked', 'That is not what is asked for now; nothing was recorded.')
}

/** Free text must say something: at least one letter, and nothing that could disturb a screen. */
export function words(text: string, what: string): Result<string> {
  const trimmed = text.trim()
  if (!/\p{L}/u.test(trimmed)) return refuse('no-words', `${what} needs words: type a short sentence.`)
  if (trimmed.length > 500)
    return refuse('too-long', `${what} is longer than 500 characters: say it shorter.`)
  return ok(trimmed)
}
