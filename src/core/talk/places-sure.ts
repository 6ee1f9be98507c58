// A length keyed with fewer places than its instrument reads, or with more: 9.503 or 9.50334 on one that reads to 0.0001. It is asked for
// once in full, as a digit left off looks like a nought that was read and one too many is a slip; keyed so once more, it is taken as it
// stands. Noughts behind the last place say nothing else: a gauge that types for itself may send them.

import { isSetOnStandard } from '../definition/instruments.ts'
import { readingFrom } from '../job/admit-reading.ts'
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import { doubtOf } from '../job/doubtful.ts'
import type { Prompt } from '../job/next.ts'
import { decimalsIn } from '../job/plausible.ts'
import type { State } from '../job/state.ts'
import { shownNumber } from '../units/index.ts'
import { ask, type Heard, input } from './heard.ts'

export interface PlacesSureAsk {
  readonly kind: 'places-sure'
  readonly place: string
  /** With its places filled up; null where it has more than the instrument reads. */
  readonly full: string | null
  readonly places: number
  /** Keyed where a temperature is read: one digit alone (figure-sure.ts). */
  readonly digit?: string
}

/** Null where the line is taken as it stands: also one that is doubted anyway, which is a question of its own. */
export function sureOfPlaces(defs: Definitions, state: State, prompt: Prompt, line: string): Heard | null {
  if (prompt.kind !== 'read') return null
  const placed = asKind(prompt.step, 'read')
  const instrument = instrumentById(defs, prompt.instrument)
  // The leaves of a feeler gauge and the rings of a dial are named as they are, with as few places as they have.
  if (placed.step.quantity !== 'length' || instrument === undefined || !isSetOnStandard(instrument))
    return null
  const keyed = /^\d+(?:\.(\d*))?$/.exec(line.trim())
  if (keyed === null) return null
  const reading = readingFrom(defs, state, prompt.step, prompt.place.key, prompt.instrument, line)
  if (!reading.ok || doubtOf(defs, state, placed, reading.value) !== null) return null
  const places = decimalsIn(defs, reading.value)
  const given = keyed[1] ?? ''
  const isMore = given.length > places && !/^0*$/.test(given.slice(places))
  if (given.length >= places && !isMore) return null
  const full = isMore ? null : shownNumber(reading.value.value, places)
  return ask(
    { kind: 'places-sure', place: prompt.place.key, full, places },
    `${line.trim()}: nothing was taken yet, as ${prompt.instrument} reads to ${places} places.`,
  )
}

/** No question of yes or no: a figure answers it, never the number of a choice. */
export function placesSureText({ full, places, digit }: PlacesSureAsk): string {
  if (digit !== undefined)
    return `Temperature as the instrument shows it, in full; ${digit} once more if it is ${digit}`
  return full === null
    ? `The whole figure with ${places} places, as the instrument shows it`
    : `The whole figure as the instrument shows it, like ${full}`
}

export function hearPlacesSure(question: PlacesSureAsk, line: string): Heard {
  const { place, full, digit } = question
  if (digit === undefined && /^\d$/.test(line.trim()) && Number(line) !== Number(full))
    return ask(question, 'Nothing was taken: a figure is asked for here, not the number of a choice.')
  return input({ do: 'read', place, typed: line })
}
