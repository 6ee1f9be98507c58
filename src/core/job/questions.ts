// What is improbable of the readings of a step together, though none of them is by itself: asked once on the sheet when the
// step is complete. A question and no finding: it blocks nothing, accuses nobody, changes no figure and no verdict.
import { isSetOnStandard } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import { readStamp } from '../lib/instant.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import { openPlace, type Place, placeResult, placesOf } from './places.ts'
import { NOISE } from './plausible.ts'
import { type Reading, type State, standing } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/**
 * `axes`: side to side lies over top to bottom, where weight wears the other way. `alike`: every figure the same, to the
 * last place. `fast`: faster than anyone measures.
 */
export const QUESTIONS_ABOUT = ['axes', 'alike', 'fast'] as const
export type QuestionAbout = (typeof QUESTIONS_ABOUT)[number]

export interface Question {
  readonly about: QuestionAbout
  readonly text: string
}

/** Stands under each on the sheet. */
export const NO_FINDING = 'A question and no finding: what you know of it, put down with note.'

/** With fewer places all alike is nothing to ask about. Common practice, no source. */
const ALIKE_PLACES = 6
/** With fewer readings their time is nothing to ask about. Common practice, no source. */
const FAST_READINGS = 6
/** Nobody sets a gauge in a bore, swings it and reads it in less than this. Common practice, no source. */
const FAST_SECONDS = 5
/** Two figures differ for certain beyond this many times `repeats.within`: each of them may be off by one. */
const CLEAR = 2

/** The test behind each question with its threshold, as a review names them. All of them: common practice, no source. */
export const TEST_OF: Readonly<Record<QuestionAbout, string>> = {
  axes: `side to side over top to bottom by more than ${CLEAR} times what repeats may differ; bores that lie, from 2 stations on`,
  alike: `every reading the same to the last figure; gauges set on a standard, from ${ALIKE_PLACES} places on`,
  fast: `under ${FAST_SECONDS} s from reading to reading, on average; gauges set on a standard that do not type, from ${FAST_READINGS} readings on`,
}

/** Questions that stand on what was read at the step, as far as it has come. */
export function questionsOf(defs: Definitions, state: State, placed: ReadStep): Question[] {
  if (placed.step.quantity !== 'length') return []
  return [
    axesSwapped(defs, state, placed),
    allAlike(defs, state, placed),
    tooFast(defs, state, placed),
  ].filter((one) => one !== null)
}

/** Entries to add when what was just put on record makes a step of readings complete. */
export function questionsNow(
  defs: Definitions,
  before: State,
  after: State,
  bodies: readonly Body[],
): readonly Body[] {
  const steps = new Set(bodies.flatMap((body) => readAt(before, body) ?? []))
  return [...steps].flatMap((step): Body[] => {
    const placed = asKind(stepById(defs, step), 'read')
    if (openPlace(placed, before) === null || openPlace(placed, after) !== null) return []
    return questionsOf(defs, after, placed).map((one) => ({ type: 'readings.questioned', step, ...one }))
  })
}

function readAt(before: State, body: Body): string | null {
  switch (body.type) {
    case 'reading.taken':
    case 'reading.not-applicable':
      return body.step
    case 'doubt.settled':
      return before.doubt?.step ?? null
    case 'late.settled':
      return before.late?.step ?? null
    default:
      return null
  }
}

/**
 * Of a bore that lies: by its weight a piston wears the bottom, so top to bottom is the larger. Asked where side to side is
 * clearly larger at one station and clearly smaller at another, or clearly larger at all of two or more. It is not a doubt
 * of one reading: two figures that changed places are each of them right, and measuring one again tells nothing.
 */
function axesSwapped(defs: Definitions, state: State, placed: ReadStep): Question | null {
  if (placed.step.drawing !== 'bore' || defs.machine.cylinder.orientation !== 'horizontal') return null
  const clear = CLEAR * placed.step.repeats.within.si + NOISE
  const over = sidewaysOver(state, placed)
  const odd = over.filter((one) => one.by > clear)
  if (over.length < 2 || odd.length === 0) return null
  const text =
    'wear by weight makes top to bottom the larger. Were the two changed round, or does it run to a side?'
  if (odd.length === over.length)
    return { about: 'axes', text: `side to side is larger than top to bottom at every station, and ${text}` }
  if (!over.some(({ by }) => by < -clear)) return null
  const names = odd.map(({ label }) => label).join(', ')
  return {
    about: 'axes',
    text: `side to side is larger than top to bottom at ${names}, and not at the others; ${text}`,
  }
}

/** How far side to side is over top to bottom, SI, at each station where both have a figure. */
function sidewaysOver(state: State, placed: ReadStep): { readonly label: string; readonly by: number }[] {
  const figure = (place: Place | undefined) =>
    place === undefined ? null : placeResult(placed, place, state).si
  const places = placesOf(placed)
  return placed.step.stations.flatMap((station) => {
    const here = places.filter((place) => place.station === station)
    const down = figure(here.find((place) => isAlong(place, 12)))
    const across = figure(here.find((place) => isAlong(place, 3)))
    return down === null || across === null ? [] : [{ label: station.label, by: across - down }]
  })
}

/** By the clock seen from the head end: 12 is also 6, and 3 is also 9. */
function isAlong({ axis }: Place, hour: number): boolean {
  return axis !== null && axis.from % 6 === hour % 6
}

/** All readings of six places or more with a gauge that is set on a standard: feelers and dials do come out alike. */
function allAlike(defs: Definitions, state: State, placed: ReadStep): Question | null {
  const readings = gauged(defs, state, placed)
  const places = new Set(readings.map((r) => r.place)).size
  const [first] = readings
  if (first === undefined || places < ALIKE_PLACES) return null
  if (!readings.every((r) => Math.abs(r.si - first.si) <= NOISE)) return null
  const text = `all ${readings.length} readings of ${places} places are ${first.typed.trim()}, to the last figure. Can somebody else measure one of them again?`
  return { about: 'alike', text }
}

/** Never of answers out of a file, nor of a gauge that types for itself. */
function tooFast(defs: Definitions, state: State, placed: ReadStep): Question | null {
  const readings = gauged(defs, state, placed)
  // Keyed from a sheet, the time tells how somebody types.
  if (
    state.scripted ||
    state.paper !== null ||
    readings.length < FAST_READINGS ||
    readings.some((r) => types(defs, r))
  )
    return null
  const times = readings.flatMap((r) => readStamp(r.at)?.ms ?? [])
  const seconds = (Math.max(...times) - Math.min(...times)) / 1000
  if (!(seconds < FAST_SECONDS * (readings.length - 1))) return null
  const text = `${readings.length} readings in ${Math.round(seconds)} s. Were they measured now, or keyed from paper or by a gauge that types?`
  return { about: 'fast', text }
}

/** What stands of the step, read with a gauge that is set on a standard. */
function gauged(defs: Definitions, state: State, placed: ReadStep): Reading[] {
  return placesOf(placed)
    .flatMap(({ key }) => standing(state, key))
    .filter((r) => {
      const instrument = instrumentById(defs, r.instrument)
      return instrument !== undefined && isSetOnStandard(instrument)
    })
}

function types(defs: Definitions, { instrument }: Reading): boolean {
  const one = instrumentById(defs, instrument)
  return one !== undefined && isSetOnStandard(one) && one.types_itself === true
}
