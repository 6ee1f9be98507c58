// Gathers what a bore judge step needs from the readings on record. What is missing goes in as missing: it is judged
// HOLD there, never filled in here.

import { judgeBore } from '../bore/bore-judge.ts'
import type { BoreJudgeInput, MissingPlace, SetCheck } from '../bore/bore-judge-input.ts'
import type { BoreReading } from '../bore/bore-readings.ts'
import type { BoreDatum } from '../bore/bore-wear.ts'
import type { StepOf } from '../definition/procedure.ts'
import { type Result, refuse } from '../lib/result.ts'
import { reduceTo20 } from '../metrology/reduce-to-20.ts'
import { expandedOfDifference, expandedOfReading } from '../metrology/uncertainty.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { limitsFor } from './limits.ts'
import { applicability } from './next.ts'
import { placeResult, placesOf } from './places.ts'
import { gaugeById } from './seats.ts'
import { type State, standing } from './state.ts'
import { type Temperature, temperatureOver } from './temperature.ts'
import type { BoreVerdictRecord } from './verdict-record.ts'

type JudgeStep = PlacedStep & { readonly step: StepOf<'judge'> }

/** Works out the verdict of a judge step. `version` is stored with it. */
export function judgeStep(
  defs: Definitions,
  state: State,
  judge: JudgeStep,
  version: string,
): BoreVerdictRecord {
  const inputs = boreInput(defs, state, judge)
  return {
    compute: 'bore_form',
    version,
    inputs,
    result: judgeBore(inputs),
    readings: readingSeqs(defs, state, judge),
  }
}

export function boreInput(defs: Definitions, state: State, judge: JudgeStep): BoreJudgeInput {
  const { inputs } = judge.step
  const { bore } = defs.machine
  const readStep = (id: string) => asKind(stepById(defs, judge.scope + id), 'read')
  const part = temperatureOver(defs, state, inputs.part_temperature.map(readStep))
  const body = temperatureOver(defs, state, inputs.instrument_temperature.map(readStep))
  const sizes = [inputs.diameters, inputs.datum, inputs.counterbore].flatMap((id) => id ?? [])
  const used = instrumentsOf(defs, state, sizes.map(readStep))
  // One gauge, or none: the error, the expansion and the set-checks of one say nothing about another.
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
  const main = gather(state, readStep(inputs.diameters), reduce)
  const counterbore =
    inputs.counterbore === undefined
      ? null
      : largestOf(gatherIf(defs, state, readStep(inputs.counterbore), reduce))
  const limits = limitsFor(defs, judge.step.against)
  const maxBoreM =
    limits['largest-diameter']?.from === 'machine' ? limits['largest-diameter'].value : undefined
  const u = readingU(defs, gauge, part, body, main.spreadM)
  return {
    readings: main.readings,
    missing: main.missing,
    nominalM: bore.nominal.si,
    limits,
    readingU: u,
    differenceU: u === null ? null : expandedOfDifference(u),
    k: 2,
    resolutionM: gauge?.resolution.si ?? null,
    simpleAcceptance:
      defs.machine.simple_acceptance === undefined ? null : { by: defs.machine.simple_acceptance.by },
    datum: datumFor(
      defs,
      inputs.datum === undefined ? null : gatherIf(defs, state, readStep(inputs.datum), reduce),
    ),
    counterboreM: counterbore ?? bore.counterbore?.si ?? null,
    ...(maxBoreM === undefined ? {} : { maxBoreM }),
    lined: bore.lined,
    setCheck: {
      before: setCheck(state, readStep(inputs.set_before), gauge),
      after: setCheck(state, readStep(inputs.set_after), gauge),
    },
    temperaturesKnown:
      part !== null && body !== null && bore.expansion !== undefined && gauge?.expansion !== undefined,
  }
}

interface Gathered {
  readonly readings: BoreReading[]
  readonly missing: MissingPlace[]
  readonly spreadM: number
}

function gather(
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  reduce: (m: number) => Result<number>,
): Gathered {
  const readings: BoreReading[] = []
  const missing: MissingPlace[] = []
  let spreadM = 0
  for (const place of placesOf(placed)) {
    const where = { station: place.station.id, axis: place.axis?.id ?? 'only' }
    const result = placeResult(placed, place, state)
    const why = {
      more: 'not measured',
      unsettled: 'the repeats do not agree',
      'not-applicable': 'entered as not applicable',
      settled: '',
    }[result.state]
    const reduced = result.si === null ? null : reduce(result.si)
    if (reduced === null) missing.push({ ...where, why })
    else if (!reduced.ok) missing.push({ ...where, why: reduced.error.say.replace(/\.$/, '') })
    else {
      readings.push({ ...where, at: place.station.at, valueM: reduced.value })
      spreadM = Math.max(spreadM, result.spread ?? 0)
    }
  }
  return { readings, missing, spreadM }
}

/** A step that was skipped because its condition was not met gives nothing; that is not the same as missing. */
function gatherIf(
  defs: Definitions,
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  reduce: (m: number) => Result<number>,
): Gathered | null {
  return applicability(defs, state, placed) === 'do' ? gather(state, placed, reduce) : null
}

function largestOf(gathered: Gathered | null): number | null {
  return gathered === null || gathered.readings.length === 0
    ? null
    : Math.max(...gathered.readings.map((r) => r.valueM))
}

/** The unswept strip where there is one, else the as-bored record, else none: never the counterbore. */
function datumFor(defs: Definitions, strip: Gathered | null): BoreDatum | null {
  if (strip !== null && strip.readings.length > 0) {
    return {
      from: 'unswept strip',
      byAxisM: Object.fromEntries(strip.readings.map((r) => [r.axis, r.valueM])),
    }
  }
  const recorded = defs.machine.bore.as_bored
  return recorded === undefined ? null : { from: 'as-bored record', singleM: recorded.diameter.si }
}

/** Instruments that the standing readings of the steps were taken with; a skipped step has none. */
function instrumentsOf(
  defs: Definitions,
  state: State,
  steps: readonly (PlacedStep & { readonly step: StepOf<'read'> })[],
): string[] {
  const asked = steps.filter((s) => applicability(defs, state, s) === 'do')
  const readings = asked.flatMap((s) => placesOf(s).flatMap((p) => placeResult(s, p, state).readings))
  return [...new Set(readings.map((r) => r.instrument))].sort()
}

/** Null when the check was not made, or not with the gauge that measured. */
function setCheck(
  state: State,
  placed: PlacedStep & { readonly step: StepOf<'read'> },
  gauge: ReturnType<typeof gaugeById>,
): SetCheck | null {
  const place = placesOf(placed)[0]
  if (place === undefined) return null
  const result = placeResult(placed, place, state)
  if (result.si === null || gauge === null) return null
  if (result.readings.some((r) => r.instrument !== gauge.id)) return null
  return { deviationM: result.si - gauge.set_check.size.si, allowedM: gauge.set_check.within.si }
}

function readingU(
  defs: Definitions,
  gauge: ReturnType<typeof gaugeById>,
  part: Temperature | null,
  body: Temperature | null,
  repeatsSpread: number,
): number | null {
  if (gauge === null || gauge.uncertainty === undefined || part === null || body === null) return null
  const u = expandedOfReading({
    instrumentU: gauge.uncertainty.expanded.si,
    instrumentK: gauge.uncertainty.k,
    lengthM: defs.machine.bore.nominal.si,
    partAlpha: defs.machine.bore.expansion?.per_kelvin ?? Number.NaN,
    instrumentAlpha: gauge.expansion?.per_kelvin ?? Number.NaN,
    partTempU: part.standardU,
    instrumentTempU: body.standardU,
    repeatsSpread,
    resolutionM: gauge.resolution.si,
    resolutionInsideU: gauge.uncertainty.includes_resolution,
  })
  return u.ok ? u.value : null
}

function readingSeqs(defs: Definitions, state: State, judge: JudgeStep): number[] {
  const { inputs } = judge.step
  const ids = [
    inputs.diameters,
    inputs.datum,
    inputs.counterbore,
    inputs.set_before,
    inputs.set_after,
    ...inputs.part_temperature,
    ...inputs.instrument_temperature,
  ]
  const steps = ids
    .filter((id) => id !== undefined)
    .map((id) => asKind(stepById(defs, judge.scope + id), 'read'))
  const seqs = steps
    .filter((s) => applicability(defs, state, s) === 'do')
    .flatMap((s) => placesOf(s).flatMap((p) => standing(state, p.key).map((r) => r.seq)))
  return seqs.sort((a, b) => a - b)
}
