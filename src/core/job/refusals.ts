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

/** Keyed from habit, or to be past the question: with nothing else in the line they give no reason. */
const EMPTY: ReadonlySet<string> = new Set(
  (
    'none no nothing nil na n a not applicable given known reason reasons yes yeah yep y ok okay k fine good done sure right any tbd x xx xxx ' +
    'then just please alright well go ahead'
  ).split(' '),
)

/** Why something goes on all the same: words that say something. `none`, `n/a` and `ok` are no reason of anything. */
export function reason(text: string, what: string): Result<string> {
  const said = words(text, what)
  if (!said.ok) return said
  const all = said.value.toLowerCase().match(/\p{L}+/gu) ?? []
  const isEmpty = all.every((word) => EMPTY.has(word)) || /^(?:i|we) says? so\W*$/i.test(said.value)
  return isEmpty && !/\d/.test(said.value)
    ? refuse('no-words', `${what} needs words of its own: ${said.value} says nothing of it.`)
    : said
}
