// On whose authority something runs as it is: somebody else than who keys it, decides it or did the work, or a paper with its number.
import { ok, type Result, refuse } from '../lib/result.ts'
import { type Definitions, personById } from './definitions.ts'
import { words } from './refusals.ts'

const SELF = /^(?:me|my ?self|self|i|us|we|our ?selves|mine|same|the same)[.!]?$/i

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
  const ownName = SELF.test(text) ? 'whoever keys it' : isOwn(defs, text, own)
  if (ownName !== null)
    return refuse(
      'own-authority',
      `That is ${ownName}: the authority is somebody else than who keys it, decides it or did the work, or a paper with its number.`,
    )
  const person = personById(defs, text.toUpperCase())
  if (person?.role === 'trainee')
    return refuse('no-authority', `${person.id} is a trainee, and no authority.`)
  if (person === undefined && !/\d/.test(text) && !/\p{L}\.?\s+\p{L}/u.test(text))
    return refuse(
      'no-authority',
      'Key the initials of somebody of the crew, a name in full, or a paper with its number.',
    )
  return ok(text)
}

/** Whose own word the text is, also with more words about it; null where it is nobody's of these, or names a paper. */
function isOwn(defs: Definitions, text: string, own: ReadonlySet<string | null>): string | null {
  const whole = text.toUpperCase()
  const parts = text.split(/[^\p{L}\p{N}]+/u)
  for (const id of own) {
    if (id === null) continue
    if (whole === id) return id
    if (/\d/.test(text)) continue
    const name = personById(defs, id)?.name.toLowerCase()
    if (parts.includes(id) || (name !== undefined && text.toLowerCase().includes(name))) return id
  }
  return null
}
