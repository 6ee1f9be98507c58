// Who was on the job, and every signature in its log.
import { type Definitions, personById } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import type { Signed } from '../../job/signature.ts'
import type { State } from '../../job/state.ts'
import type { Review } from '../../review/review.ts'
import type { Report } from '../schema.ts'

type Signature = Report['signatures'][number]

const HOW: Readonly<Record<Signed, Signature['how']>> = { pin: 'PIN', initials: 'initials only' }

/** `told`: what the sheet says of an entry, in its first row. */
export function signaturesOf(entries: readonly Entry[], told: (entry: Entry) => string): Signature[] {
  return entries.flatMap((entry): Signature[] => {
    const base = { seq: entry.seq, at: entry.at, keyedBy: entry.by ?? null, what: told(entry) }
    if (entry.type === 'job.handed-over')
      return [
        { ...base, person: entry.from, how: HOW[entry.signedFrom] },
        { ...base, person: entry.to, how: HOW[entry.signedTo] },
      ]
    if (!('signed' in entry) || entry.signed === undefined) return []
    const radio = 'radio' in entry ? entry.radio : undefined
    const person = radio?.by ?? ('person' in entry ? entry.person : undefined)
    return person === undefined ? [] : [{ ...base, person, how: HOW[entry.signed] }]
  })
}

export function peopleOf(
  defs: Definitions,
  state: State,
  { people, since }: Pick<Review, 'people' | 'since'>,
  signatures: readonly Signature[],
): Report['people'] {
  return [...people, ...since].map((id) => {
    const person = personById(defs, id)
    return {
      id,
      name: person?.name ?? 'in no crew file of this job',
      role: person?.role ?? 'not known',
      onJob: state.everOn.includes(id),
      since: since.includes(id),
      signed: signatures.filter((one) => one.person === id).length,
    }
  })
}
