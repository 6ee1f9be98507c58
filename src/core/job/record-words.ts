// A changed machine record in words, the same before it is signed, on the sheet, at a hand-over and in a review.
import { clockOf, readStamp } from '../lib/instant.ts'
import type { ChangedField } from './record-changes.ts'
import type { State } from './state.ts'

/** `bore, nominal: 9.500 in, now 9.750 in`. */
export function changedText({ field, was, now }: ChangedField): string {
  if (was === null) return `${field}: not there before, now ${now}`
  return now === null ? `${field}: ${was}, now not there any more` : `${field}: ${was}, now ${now}`
}

/** A line for each record that was taken in, for whoever takes over or reads how the job ended. */
export function takenInLines({ records }: Pick<State, 'records'>): string[] {
  return records.map(({ at, person, why, changed }) => {
    const read = readStamp(at)
    const when = read === null ? 'at a time that cannot be read' : `${at.slice(0, 10)} ${clockOf(read)}`
    return `Machine record changed on the job ${when} by ${person}, ${why}: ${changed.join('; ')}`
  })
}
