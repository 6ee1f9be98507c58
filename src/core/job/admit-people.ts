// Who works, on which machine, with which instrument.
import type { Instrument } from '../definition/instruments.ts'
import { dayOf, readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { barsInitials } from './admit-crew.ts'
import { type Definitions, instrumentById, personById } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { next } from './next.ts'
import { notAsked } from './refusals.ts'
import { unsuited } from './seats.ts'
import { signer, unknownPerson, waitAfterMisses } from './signature.ts'
import type { State } from './state.ts'

type Of<K extends Input['do']> = Extract<Input, { do: K }>

export function admitSignOn(defs: Definitions, state: State, input: Of<'sign-on'>): Result<readonly Body[]> {
  if (next(defs, state).kind !== 'sign-on') return notAsked()
  const barred = barsInitials(defs, state, input.person)
  if (barred !== null) return { ok: false, error: barred }
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  return ok([{ type: 'person.signed-on', person: person.id, signed }])
}

/** A wrong PIN goes on record by name; it opens nothing, and blocks nothing but further PINs of that person. */
export function admitMissedPin(defs: Definitions, state: State, typed: string): Result<readonly Body[]> {
  const person = personById(defs, typed.trim().toUpperCase())
  if (person === undefined) return refuse('unknown-person', unknownPerson(defs, typed))
  const now = readStamp(state.lastAt)?.ms ?? Number.NaN
  if (waitAfterMisses(state, person.id, now) !== null)
    return signer(defs, state, { person: person.id }) as Result<never>
  return ok([{ type: 'pin.missed', person: person.id }])
}

/** Their own PIN ends a row of wrong ones, also where what they signed was not taken. Nothing where there was no row. */
export function admitFittedPin(defs: Definitions, state: State, typed: string): Result<readonly Body[]> {
  const who = signer(defs, state, { person: typed, proved: true })
  if (!who.ok) return who
  const { person, signed } = who.value
  if (signed !== 'pin' || state.pinMisses[person.id] === undefined) return ok([])
  return ok([{ type: 'pin.fitted', person: person.id, signed }])
}

/**
 * The tag is keyed from the plate on the cylinder itself. A wrong one goes on record: it may be the wrong machine. One with the signs of
 * the plate and other strokes or gaps between them counts where whoever keyed it said that the plate is `meant`.
 */
export function admitTag(
  defs: Definitions,
  state: State,
  { typed, meant }: Of<'name-machine'>,
): Result<readonly Body[]> {
  if (next(defs, state).kind !== 'tag') return notAsked()
  const { machine } = defs.machine
  if (tagSigns(typed) === '')
    return refuse('no-tag', 'Key the tag as it stands on the plate of the cylinder.')
  const isIt = isSameTag(typed, machine) || (meant === true && tagSigns(typed) === tagSigns(machine))
  if (isIt) return ok([{ type: 'machine.named', typed: typed.trim() }])
  return ok([{ type: 'machine.mismatched', typed: typed.trim().slice(0, 40) }])
}

/** As it stands on the plate, but for capitals and gaps. */
export function isSameTag(typed: string, tag: string): boolean {
  return typed.trim().toUpperCase().replace(/\s+/g, '-') === tag.toUpperCase()
}

/** Letters and figures of a tag, without what stands between them. */
export function tagSigns(text: string): string {
  return text.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '')
}

export function admitPick(defs: Definitions, state: State, input: Of<'pick'>): Result<readonly Body[]> {
  const prompt = next(defs, state)
  if (prompt.kind !== 'pick' || prompt.seat.id !== input.seat) return notAsked()
  const instrument = prompt.options.find((i) => i.id === input.instrument)
  if (instrument === undefined)
    return refuse('unknown-instrument', 'That is not one of the instruments listed: key its number.')
  if (state.doubted[instrument.id] !== undefined)
    return refuse('doubted', `${instrument.id} was found out of calibration on this job: pick another.`)
  const unfit = unsuited(defs, input.seat, instrument) ?? unfitness(defs, instrument, state.lastAt)
  if (unfit !== null)
    return refuse('unfit', `${instrument.id} cannot be used on this job: ${unfit}. Pick another.`)
  return ok([{ type: 'instrument.picked', seat: input.seat, instrument: instrument.id }])
}

/** Why an instrument may not be used on the day, or null. Due today still stands; an unreadable day never does. */
export function unfitness(defs: Definitions, instrument: Instrument, at: string): string | null {
  const now = readStamp(at)
  if (now === null || !(dayOf(now) <= instrument.calibration.due))
    return `its calibration lapsed on ${instrument.calibration.due}`
  if (instrument.kind === 'inside_micrometer' || instrument.kind === 'bore_gauge') {
    const nominal = defs.machine.bore.nominal
    const covers = instrument.range.from.si <= nominal.si && nominal.si <= instrument.range.to.si
    if (!covers)
      return `its range ${instrument.range.from.text} to ${instrument.range.to.text} does not take in ${nominal.text}`
  }
  return null
}

/** Why an instrument is refused on this job as it stands, or null; `seat`: the use it is asked for, null for any. */
export function refusedNow(
  defs: Definitions,
  state: State,
  seat: string | null,
  instrument: Instrument,
): string | null {
  if (Object.hasOwn(state.doubted, instrument.id)) return 'it was found out of calibration on this job'
  const cannot = seat === null ? null : unsuited(defs, seat, instrument)
  return cannot ?? unfitness(defs, instrument, state.lastAt)
}

/** Why the instrument in a seat may not be used any more, or null. */
export function seatUnfitness(defs: Definitions, seatInstrument: string, at: string): string | null {
  const instrument = instrumentById(defs, seatInstrument)
  return instrument === undefined ? 'it is not in the register' : unfitness(defs, instrument, at)
}
