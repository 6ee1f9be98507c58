// What stands in the log between a verdict or a finding and the next one of its step: what made it another. A figure that was only
// keyed otherwise is told as that, as nobody measured anything again.

import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { labelsOf } from '../job/seen.ts'
import { list } from '../lib/wording.ts'
import { placeName, placeNumber, repeatName } from '../talk/names.ts'
import { byWhom, clause, count, type Look, named, namedById } from './look.ts'

type Told = { readonly seq: number; readonly text: string }

/** Each a clause with its entry, in the order of the log. `to`: the seq of what came to be instead; null: nothing did. */
export function madeOther(look: Look, step: string, from: number, to: number | null): readonly Told[] {
  const until = to ?? Number.POSITIVE_INFINITY
  const between = look.entries.filter(({ seq }) => seq > from && seq < until)
  const rested = readingsOf(look.entries[from])
  const told = between.flatMap((entry): Told[] => {
    const text = clauseOf(look, entry, step, rested)
    return text === null ? [] : [{ seq: entry.seq, text }]
  })
  const later = to === null ? [] : takenSince(look, rested, to)
  if (later.length > 0) {
    const [first] = later
    return [...told, { seq: first?.seq ?? from, text: `${count(later.length, 'new reading')} since` }]
  }
  return told
}

/** One sentence of it without the entries; null where the log does not tell it. */
export function madeOtherText(look: Look, step: string, from: number, to: number | null): string | null {
  const told = madeOther(look, step, from, to)
  if (told.length === 0) return null
  const isKeyedOnly =
    to !== null &&
    look.entries[to]?.type === 'verdict.given' &&
    takenSince(look, readingsOf(look.entries[from]), to).length === 0
  return `What made it so: ${told.map(({ text }) => text).join('; ')}${isKeyedOnly ? '; no new reading' : ''}.`
}

const readingsOf = (entry: Entry | undefined): readonly number[] =>
  entry?.type === 'verdict.given' ? entry.verdict.readings : []

/** Readings that the later verdict rests on and the one before did not; a correction is no reading. */
function takenSince(look: Look, rested: readonly number[], to: number): Entry[] {
  return readingsOf(look.entries[to])
    .filter((seq) => !rested.includes(seq))
    .flatMap((seq) => look.entries[seq] ?? [])
    .filter((entry) => entry.type !== 'reading.corrected')
}

function clauseOf(look: Look, entry: Entry, step: string, rested: readonly number[]): string | null {
  const doesFell = 'voids' in entry && entry.voids.includes(step)
  switch (entry.type) {
    case 'reading.corrected':
      return doesFell || rested.includes(entry.of) ? correctedText(look, entry) : null
    case 'finding.corrected': {
      if (!doesFell && entry.step !== step) return null
      const was = labelsOf(look.defs, entry.step, [entry.was, ...(entry.was_also ?? [])])
      const now = labelsOf(look.defs, entry.step, [entry.condition, ...(entry.also ?? [])])
      return `${namedById(look, entry.step)} corrected from ${was} to ${now} by ${byWhom(look, entry)}, ${clause(entry.why)}`
    }
    case 'step.reopened':
      return doesFell || entry.step === step
        ? `gone back to ${namedById(look, entry.step)} by ${byWhom(look, entry)}, ${clause(entry.why)}`
        : null
    case 'not-applicable.taken-back':
      return doesFell
        ? `n/a of ${placeNumber(look.defs, entry.step, entry.place)} taken back by ${byWhom(look, entry)}, ${clause(entry.why)}`
        : null
    case 'instrument.doubted':
      return doesFell
        ? `${entry.instrument} found out of calibration, ${byWhom(look, entry)}, ${clause(entry.why)}`
        : null
    case 'record.taken-in':
      return doesFell ? `machine record changed by ${entry.person}, ${clause(entry.why)}` : null
    case 'disposition.countersigned':
      return doesFell ? `${entry.person} said that it was not so by radio` : null
    case 'branch.left':
      return doesFell
        ? `${list(entry.voids.map((id) => named(stepById(look.defs, id))))} counted no more`
        : null
    default:
      return null
  }
}

type Corrected = Extract<Entry, { type: 'reading.corrected' }>

/** `7.3 Bore, CENTRE, 2nd of 2, corrected from 9.5680 to 9.5068 by RO 06:31, misread`. */
export function correctedText(look: Look, entry: Corrected): string {
  const old = look.entries[entry.of]
  const was = old !== undefined && 'typed' in old ? old.typed.trim() : 'what is not in this log'
  return `${placeNumber(look.defs, entry.step, entry.place)} ${placeName(look.defs, entry.step, entry.place)}${repeatText(look, entry)} corrected from ${was} to ${entry.typed.trim()} by ${byWhom(look, entry)}, ${clause(entry.why)}`
}

/** `, 2nd of 2,` as the place stood then; nothing where one reading alone stands there. */
export function repeatText(look: Look, entry: Corrected): string {
  const after = look.moves.find((move) => move.entry.seq === entry.seq)?.after
  const name = after === undefined ? null : repeatName(after, entry)
  return name === null ? '' : `, ${name},`
}
