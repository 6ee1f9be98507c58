// What a bore judge step is worked out from: the readings as combined, the gauge, the temperatures, the measuring error.
// The verdict uses it, and so does `why`, which shows the sums.

import type { MissingPlace } from '../bore/bore-judge-input.ts'
import type { BoreReading } from '../bore/bore-readings.ts'
import { datumsOf } from '../definition/judge-reads.ts'
import type { FormJudge, StepOf } from '../definition/procedure.ts'
import { type Result, refuse } from '../lib/result.ts'
import { reduceTo20 } from '../metrology/reduce-to-20.ts'
import {
  type PlaceReadings,
  type PlaceRepeats,
  type Repeatability,
  repeatability,
} from '../metrology/repeatability.ts'
import { expandedOfReading, type ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { applicability } from './next.ts'
import { placeResult, placesOf, WHY_NOT } from './places.ts'
import { beyondItsScale, nowDoubted } from './plausible.ts'
import { gaugeById } from './seats.ts'
import type { State } from './state.ts'
import { type Temperature, temperatureOver } from './temperature.ts'

export type JudgeStep = PlacedStep & { readonly step: FormJudge }

/** A judge of the form of a bore, or null for any other step. */
export function asBoreJudge(placed: PlacedStep): JudgeStep | null {
  const { step } = placed
  return step.kind === 'judge' && step.compute === 'bore_form' ? { ...placed, step } : null
}

/** What was measured for a bore judge step, with what, and how warm: everything its figures are worked out from. */
export interface BoreFacts {
  /** One gauge, or none: the error, the expansion and the set-checks of one say nothing about another. */
  readonly gauge: ReturnType<typeof gaugeById>
  readonly used: readonly string[]
  readonly part: Temperature | null
  readonly body: Temperature | null
  /** The diameters, each with its own U where that is not the one of `error`. */
  readonly main: Gathered
  /** The unswept strip; null where the procedure has none, or it was not to be read. */
  readonly strip: Gathered | null
  /** How far apart this gauge read the same place, over all diameters and the strip. */
  readonly repeats: Repeatability
  /** What the error of a diameter is made of whose repeats do not stand out. */
  readonly error: ReadingUncertaintyInput | null
  /** A diameter as read, brought to 20 degC. */
  readonly reduce: (readingM: number) => Result<number>
}

export function boreFacts(defs: Definitions, state: State, judge: JudgeStep): BoreFacts {
  const { inputs } = judge.step
  const { bore } = defs.machine
  const readStep = (id: string) => asKind(stepById(defs, judge.scope + id), 'read')
  const part = temperatureOver(defs, state, inputs.part_temperature.map(readStep))
  const body = temperatureOver(defs, state, inputs.instrument_temperature.map(readStep))
  const sizes = [inputs.diameters, ...datumsOf(inputs), inputs.counterbore ?? []].flat()
  const used = instrumentsOf(defs, state, sizes.map(readStep))
  const gauge = used.length === 1 ? gaugeById(defs, used[0] ?? '') : null
  const reduce = (readingM: number): Result<number> => {
    if (used.length > 1) return refuse('gauges', `read with more than one instrument: ${used.join(', ')}`)
    return reduceTo20({
      readingM,
      instrumentAlpha: gauge?.expansion?.per_kelvin ?? Number.NaN,
      instrumentC: body?.celsius,
      partAlpha: bore.expansion?.per_kelvin ?? Number.NaN,
      partC: part?.celsius,
    })
  }
  const main = gather(defs, state, readStep(inputs.diameters), reduce)
  const strips = datumsOf(inputs).flatMap((id) => gatherIf(defs, state, readStep(id), reduce) ?? [])
  const strip = strips.find((one) => one.readings.length > 0) ?? strips[0] ?? null
  const repeats = repeatability([...main.repeats, ...(strip?.repeats ?? [])], gauge?.resolution.si ?? 0)
  const error = errorInput(defs, gauge, part, body, repeats)
  const own = ownErrors(error, repeats)
  return {
    gauge,
    used,
    part,
    body,
    main: withOwn(main, own),
    strip: strip === null ? null : withOwn(strip, own),
    repeats,
    error,
    reduce,
  }
}

/** The error of a place that carries its own repeats, or a single reading; the common one for any other. */
export function errorAt(
  error: ReadingUncertaintyInput,
  { error: repeats }: PlaceRepeats,
): ReadingUncertaintyInput {
  return repeats === null ? error : { ...error, repeats }
}

/** By place, the U of those that do not have the common one. */
function ownErrors(
  error: ReadingUncertaintyInput | null,
  { places, error: common }: Repeatability,
): ReadonlyMap<string, number> {
  if (error === null) return new Map()
  return new Map(
    places.flatMap((one): [string, number][] => {
      if (one.error === null || one.error === common) return []
      const expanded = expandedOfReading(errorAt(error, one))
      return expanded.ok ? [[one.place, expanded.value]] : []
    }),
  )
}

function withOwn(gathered: Gathered, own: ReadonlyMap<string, number>): Gathered {
  return {
    ...gathered,
    readings: gathered.readings.map((reading, n) => {
      const expandedU = own.get(gathered.repeats[n]?.place ?? '')
      return expandedU === undefined ? reading : { ...reading, expandedU }
    }),
  }
}

export interface Gathered {
  readonly readings: readonly BoreReading[]
  readonly missing: readonly MissingPlace[]
  /** What each of the readings was combined from, in their order. */
  readonly repeats: readonly PlaceReadings[]
}

/** A step that was skipped because its condition was not met gives nothing; that is not the same as missing. */
export function gatherIf(
  defs: Definitions,
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  reduce: (m: number) => Result<number>,
): Gathered | null {
  return applicability(defs, state, placed) === 'do' ? gather(defs, state, placed, reduce) : null
}

function gather(
  defs: Definitions,
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  reduce: (m: number) => Result<number>,
): Gathered {
  const readings: BoreReading[] = []
  const missing: MissingPlace[] = []
  const repeats: PlaceReadings[] = []
  for (const place of placesOf(placed)) {
    const where = { station: place.station.id, axis: place.axis?.id ?? 'only' }
    const result = placeResult(placed, place, state)
    // Kept beyond what its gauge shows: on record, and no measurement.
    const off = result.readings.flatMap((one) => beyondItsScale(defs, one) ?? [])[0]
    const doubt = result.readings.flatMap((one) => nowDoubted(defs, placed, one) ?? [])[0]
    const why = off ?? (doubt === undefined ? WHY_NOT[result.state] : `by the record as it is now ${doubt}`)
    const reduced = result.si === null || off !== undefined || doubt !== undefined ? null : reduce(result.si)
    if (reduced === null) missing.push({ ...where, why })
    else if (!reduced.ok) missing.push({ ...where, why: reduced.error.say.replace(/\.$/, '') })
    else {
      readings.push({ ...where, at: place.station.at, valueM: reduced.value })
      repeats.push({ place: place.key, values: result.readings.map(({ si }) => si) })
    }
  }
  return { readings, missing, repeats }
}

/** Instruments that the standing readings of the steps were taken with; a skipped step has none. */
export function instrumentsOf(
  defs: Definitions,
  state: State,
  steps: readonly (PlacedStep & { readonly step: StepOf<'read'> })[],
): string[] {
  const asked = steps.filter((s) => applicability(defs, state, s) === 'do')
  const readings = asked.flatMap((s) => placesOf(s).flatMap((p) => placeResult(s, p, state).readings))
  return [...new Set(readings.map((r) => r.instrument))].sort()
}

/** What the measuring error of one diameter is reckoned from; null where the records do not say enough. */
function errorInput(
  defs: Definitions,
  gauge: ReturnType<typeof gaugeById>,
  part: Temperature | null,
  body: Temperature | null,
  repeats: Repeatability,
): ReadingUncertaintyInput | null {
  if (gauge === null || gauge.uncertainty === undefined || part === null || body === null) return null
  const { expansion } = defs.machine.bore
  return {
    instrumentU: gauge.uncertainty.expanded.si,
    instrumentK: gauge.uncertainty.k,
    lengthM: defs.machine.bore.nominal.si,
    partAlpha: expansion?.per_kelvin ?? Number.NaN,
    instrumentAlpha: gauge.expansion?.per_kelvin ?? Number.NaN,
    partTempU: part.standardU,
    instrumentTempU: body.standardU,
    ...(repeats.error === null ? {} : { repeats: repeats.error }),
    resolutionM: gauge.resolution.si,
    resolutionInsideU: gauge.uncertainty.includes_resolution,
    ...expansionDoubt(expansion, gauge.expansion, part, body),
  }
}

type Expansion = Definitions['machine']['bore']['expansion']

/** The doubt in the coefficients, where a record states any: it matters for a size. Nothing at all where none does. */
export function expansionDoubt(
  part: Expansion,
  instrument: Expansion,
  partTemp: Temperature,
  instrumentTemp: Temperature,
): Pick<ReadingUncertaintyInput, 'expansion'> {
  if (part?.u_per_kelvin === undefined && instrument?.u_per_kelvin === undefined) return {}
  return {
    expansion: {
      partAlphaU: part?.u_per_kelvin ?? 0,
      instrumentAlphaU: instrument?.u_per_kelvin ?? 0,
      partC: partTemp.celsius,
      instrumentC: instrumentTemp.celsius,
    },
  }
}
