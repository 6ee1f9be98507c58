// What made a verdict or a finding fall, in words: nobody looks up the number of an entry to learn it.
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import type { Entry } from './entries.ts'
import { placesOf } from './places.ts'

/** What an entry says of itself that tells why something fell with it. */
export interface FellWith {
  readonly type: Entry['type']
  readonly step: string | null
  readonly place: string | null
  readonly instrument: string | null
}

export function fellWithOf(entry: Entry): FellWith {
  return {
    type: entry.type,
    step: 'step' in entry ? (entry.step ?? null) : null,
    place: 'place' in entry ? entry.place : null,
    instrument: 'instrument' in entry ? (entry.instrument ?? null) : null,
  }
}

/** `when sheet 8.3, Bore, was corrected`; `own`: the step that fell. */
export function fellWhen(
  defs: Definitions,
  own: string,
  { type, step, place, instrument }: FellWith,
): string {
  const other = sheetOf(defs, step, place)
  switch (type) {
    case 'reading.corrected':
      return `when ${other} was corrected`
    case 'finding.corrected':
      return step === own ? 'when it was corrected' : `when ${other} was corrected`
    case 'step.reopened':
      return step === own ? 'when it was gone back to' : `when somebody went back to ${other}`
    case 'not-applicable.taken-back':
      return `when the n/a of ${other} was taken back`
    case 'instrument.doubted':
      return `when ${instrument ?? 'an instrument'} was found out of calibration`
    case 'record.taken-in':
      return 'when the machine record was changed'
    case 'branch.left':
      return 'when what it rests on was not needed any more, or began anew'
    case 'disposition.countersigned':
      return 'when a lead said that it was not so by radio'
    case 'verdict.given':
      return 'when it was judged anew'
    case 'finding.observed':
      return 'when it was looked at anew'
    default:
      return 'when something that it rests on was taken back'
  }
}

/** `sheet 8.3, Bore,`: the place has its own number where the step has several. */
function sheetOf(defs: Definitions, id: string | null, key: string | null): string {
  const placed = defs.steps.find((one) => one.id === id)
  return placed === undefined ? 'what it rests on' : `sheet ${numberOf(placed, key)}, ${placed.step.title},`
}

function numberOf(placed: PlacedStep, key: string | null): string {
  if (placed.step.kind !== 'read') return String(placed.number)
  const places = placesOf(asKind(placed, 'read'))
  const place = places.length < 2 ? undefined : places.find((one) => one.key === key)
  return place === undefined ? String(placed.number) : `${placed.number}.${place.number}`
}
