// On whose authority something runs as it is: somebody else than who keys it, decides it or did the work, or a paper with its number.
import { daysNamed } from '../lib/days-named.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { type Definitions, personById } from './definitions.ts'
import { words } from './refusals.ts'

/** Whoever says it: with nothing else in the line they name nobody else. */
const SELF: ReadonlySet<string> = new Set(
  'me my myself self i us we our own ourselves ourself mine same the by on say says so said word authority decision call initials'.split(
    ' ',
  ),
)
const FIRST_PERSON = /\b(?:me|my|myself|self|i|us|we|our|own|ourselves|ourself|mine|same)\b/i

/** Said of nobody, or of somebody who is still to be found. */
const NOBODY: ReadonlySet<string> = new Set(
  (
    'none no nobody one noone not nothing known unknown given yet tbd tba tbc na n a to be decided determined confirmed announced ' +
    'advised any anybody anyone somebody someone whoever who pending open later needed required applicable is was has been asked ask and or ' +
    'the for now at present as'
  ).split(' '),
)

/** Words of the line without figures; one letter beside a figure is a part of the number of a paper. */
function wordsIn(text: string): string[] {
  const all = text.toLowerCase().match(/\p{L}+/gu) ?? []
  return /\d/.test(text) ? all.filter((word) => word.length > 1 && word !== 'no') : all
}

const isAllOf = (words: readonly string[], set: ReadonlySet<string>) =>
  words.length > 0 && words.every((word) => set.has(word))

/**
 * As keyed. Initials of the crew, a name in more words than one, or anything with a number in it, which is taken for a paper. `own`:
 * people whose word is none here. Refuses `no-authority` and `own-authority`.
 */
export function authorityFrom(
  defs: Definitions,
  typed: string,
  own: ReadonlySet<string | null>,
  what: string,
): Result<string> {
  const said = words(typed, `The authority for ${what}`)
  if (!said.ok) return refuse('no-authority', said.error.say)
  const text = said.value
  const ownName = isSelf(text) ? 'whoever keys it' : isOwn(defs, text, own)
  if (ownName !== null)
    return refuse(
      'own-authority',
      `That is ${ownName}: the authority is somebody else than who keys it, decides it or did the work, or a paper with its number.`,
    )
  if (isAllOf(wordsIn(text), NOBODY) || !/\p{L}/u.test(text))
    return refuse('no-authority', `That names nobody. ${HOW}`)
  if (isEnd(text)) return refuse('no-authority', `That is an end, and until when is asked next. ${HOW}`)
  const person = personById(defs, text.toUpperCase())
  if (person !== undefined && person.role !== 'lead')
    return refuse('no-authority', `${person.id} is a ${person.role}, and no authority. ${HOW}`)
  // `the boss`, `our site engineer`: a part somebody has, and no name.
  if (/^(?:the|a|an|my|our|some)(?:\s+\S+){1,2}$/i.test(text) && !/\d/.test(text))
    return refuse('no-authority', `That names nobody. ${HOW}`)
  if (person === undefined && !/\d/.test(text) && !/\p{L}\.?\s+\p{L}/u.test(text))
    return refuse('no-authority', HOW)
  return ok(text)
}

/** As it stands on record; of one of the crew, that their name alone is there: nobody signs by being named. */
export function authorityText(defs: Definitions, authority: string): string {
  const person = personById(defs, authority.trim().toUpperCase())
  return person === undefined ? authority : `${person.id}, named and not signed`
}

const FOR_HOW_LONG =
  /^(?:for |until |till |up to |another )?\d[\d., ]*(?:h|hrs?|hours?|running hours?|days?|weeks?|months?|years?)\.?$/i

/** A day or a running time, keyed a question too soon: it has a figure in it, and is no paper. */
function isEnd(text: string): boolean {
  const [named, ...more] = daysNamed(text)
  return (
    FOR_HOW_LONG.test(text) || (named !== undefined && more.length === 0 && named.text.length === text.length)
  )
}

const HOW = 'Key the initials of a lead of the crew, a name in full, or a paper with its number.'

/** `I say so, it is a slip`; `I. Meyer` is a name. */
const SAYS_SO = /^(?:i|I|me|Me|we|We|myself|Myself)\s+\p{Ll}/u

/** `me`, `my own`, `on my say so`, also with a figure behind it: no paper and no name. */
function isSelf(text: string): boolean {
  return (FIRST_PERSON.test(text) && isAllOf(wordsIn(text), SELF)) || SAYS_SO.test(text)
}

/** Whose own word the text is, also with more words about it; null where it is nobody's of these, or names a paper. */
function isOwn(defs: Definitions, text: string, own: ReadonlySet<string | null>): string | null {
  const whole = text.toUpperCase()
  const parts = text.split(/[^\p{L}\p{N}]+/u)
  for (const id of own) {
    if (id === null) continue
    if (whole === id) return id
    // Initials with nothing but a figure are no paper: that has a word of its own.
    if (
      /\d/.test(text) &&
      parts.every((part) => part === '' || part.toUpperCase() === id || /^\d+$/.test(part))
    )
      return id
    if (/\d/.test(text)) continue
    const name = personById(defs, id)?.name.toLowerCase()
    if (parts.includes(id) || (name !== undefined && text.toLowerCase().includes(name))) return id
  }
  return null
}
