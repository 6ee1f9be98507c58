// `why 7.3`, `why taper`: the sums behind one number, worked by the same named computations that `barover compute` and
// procedures use, on what is on record. A number that could not be worked out says why instead.

import { allowedFor } from '../bore/bore-characteristics.ts'
import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import type { Value } from '../compute/computation.ts'
import { compute, findComputation } from '../compute/registry.ts'
import { showComputed } from '../compute/show.ts'
import { datumsOf } from '../definition/judge-reads.ts'
import { asBoreJudge, type BoreFacts, boreFacts, errorAt, type JudgeStep } from '../job/bore-facts.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { placeResult, placesOf } from '../job/places.ts'
import { standingOut } from '../job/repeats-error.ts'
import type { State } from '../job/state.ts'
import { type BoreVerdictRecord, boreRecord } from '../job/verdict-record.ts'
import { nearest } from '../lib/wording.ts'
import { COVERAGE_LEVEL, expandedOfReading, type ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { fromSi, type QuantityKind } from '../units/index.ts'
import { alikeWithin } from './alike-within.ts'
import { axisName, withAxisNames } from './axis-names.ts'
import { whyFigure } from './figure-sums.ts'
import { lengthText, placeName, placeNumber, readingText } from './names.ts'
import { BY_OTHER_RULE, isByOtherRule } from './sums.ts'

/** Words for the figures of a verdict; each stands for one characteristic or the measuring error. */
const FIGURES: Readonly<Record<string, BoreCharacteristic | 'error'>> = {
  round: 'out-of-round',
  'out of round': 'out-of-round',
  'out-of-round': 'out-of-round',
  taper: 'taper',
  spread: 'spread',
  largest: 'largest-diameter',
  'largest-diameter': 'largest-diameter',
  error: 'error',
  u: 'error',
}

/** Columns a line of sums gets: what 80 leave beside the margin and the word for the kind of record. */
const WIDTH = 60

/** The lines for one number. Unknown words get the ones that would be known. */
export function whyNumber(defs: Definitions, state: State, asked: string): string[] {
  return whyKnown(defs, state, asked) ?? [unknown(defs, asked.trim().toLowerCase())]
}

/** The figure that a misspelled one is taken to mean, or undefined. */
export function nearFigure(asked: string): string | undefined {
  return nearest(asked.trim().toLowerCase(), Object.keys(FIGURES))
}

/** The same, or null where that is no number on the sheet and no figure. */
export function whyKnown(defs: Definitions, state: State, asked: string): string[] | null {
  const word = asked.trim().toLowerCase()
  const place = placeAt(defs, word)
  if (place !== null) return whyPlace(defs, state, place.step, place.key)
  const figure = Object.hasOwn(FIGURES, word) ? FIGURES[word] : undefined
  if (figure === undefined) return whyFigure(defs, state, word)
  const judged = lastJudged(defs, state)
  if (judged === null) return ['No verdict stands yet, so that figure has no sums.']
  const facts = boreFacts(defs, state, judged.judge)
  return figure === 'error'
    ? whyError(defs, facts, judged.record)
    : whyCharacteristic(defs, facts, judged.record, figure)
}

function unknown(defs: Definitions, word: string): string {
  const known = ['a number on the sheet, as 7.3', 'round', 'taper', 'spread', 'largest', 'error']
  const near = nearFigure(word)
  const first = defs.steps.find((s) => s.step.kind === 'read')
  const example = first === undefined ? '' : `; for example why ${first.number}`
  return near === undefined
    ? `Why of what? Known are ${known.join(', ')}${example}.`
    : `Did you mean why ${near}?`
}

function placeAt(defs: Definitions, word: string): { step: PlacedStep; key: string } | null {
  for (const step of defs.steps) {
    if (step.step.kind !== 'read') continue
    for (const { key } of placesOf(asKind(step, 'read')))
      if (placeNumber(defs, step.id, key) === word) return { step, key }
  }
  return null
}

/** A reading: each as keyed, how they were combined, and what they come to at 20 degC where a judge uses them so. */
function whyPlace(defs: Definitions, state: State, step: PlacedStep, key: string): string[] {
  const placed = asKind(step, 'read')
  const place = placesOf(placed).find((p) => p.key === key)
  const result = place === undefined ? null : placeResult(placed, place, state)
  if (result === null || result.readings.length === 0)
    return [`${placeNumber(defs, step.id, key)} ${placeName(defs, step.id, key)}: nothing is on record yet.`]
  const { at_least, at_most, within } = placed.step.repeats
  const lines = [
    `${placeNumber(defs, step.id, key)} ${placeName(defs, step.id, key)}`,
    ...result.readings.map((r, i) => `  ${i + 1}  ${readingText(defs, r)}, entry ${r.seq}`),
  ]
  if (result.si === null)
    return [
      ...lines,
      `  They do not settle: ${at_least} to ${at_most} readings, the middle ones within ${alikeWithin(defs, within)}.`,
    ]
  if (result.readings.length > 1)
    lines.push(
      `  The median counts; the middle readings lie within ${alikeWithin(defs, within)}. None is dropped.`,
    )
  const judge = judgeOf(defs, step)
  if (judge === null || placed.step.quantity !== 'length') return lines
  const facts = boreFacts(defs, state, judge)
  const { part, body, gauge } = facts
  if (part === null || body === null || gauge?.expansion === undefined)
    return [...lines, '  Not brought to 20 degC: a temperature or an expansion is not on record.']
  return [
    ...lines,
    ...worked('size-at-20c', {
      reading: si('length', result.si),
      part_temp: si('temperature', part.celsius + 273.15),
      instrument_temp: si('temperature', body.celsius + 273.15),
      part_alpha: number((defs.machine.bore.expansion?.per_kelvin ?? Number.NaN) * 1e6),
      instrument_alpha: number(gauge.expansion.per_kelvin * 1e6),
    }),
  ]
}

function whyCharacteristic(
  defs: Definitions,
  facts: BoreFacts,
  record: BoreVerdictRecord,
  characteristic: BoreCharacteristic,
): string[] {
  const judged = record.result.judged.find((c) => c.characteristic === characteristic)
  if (judged === undefined || judged.valueM === null)
    return [
      'That figure could not be worked out from what is on record.',
      ...record.result.holds.map((hold) => withAxisNames(defs, hold)),
    ]
  const { limit, judgement, valueM } = judged
  const lines =
    characteristic === 'largest-diameter'
      ? [`Largest of the diameters at 20 degC: ${lengthText(defs, valueM, 5)}.`]
      : [
          `Stations in order: ${stationsOf(record).map(spaced).join(', ')}.`,
          ...axesLine(defs, record),
          ...worked('bore-form', gridInputs(defs, facts, record)),
        ]
  if (limit === null) return [...lines, 'No limit is on record for it, so it is HOLD.']
  const from = limit.rule === undefined ? '' : `, ${limit.rule}`
  lines.push(
    `Limit ${lengthText(defs, limit.value)}${from}. Source: ${limit.source}. Approved: ${limit.approvedBy}.`,
  )
  const u = allowedFor(record.inputs, judged)
  if (u !== null && u > 0)
    lines.push(
      ...worked('guard-band', {
        limit: si('length', limit.value),
        bound: { is: 'word', word: limit.bound },
        u: si('length', u),
        k: number(record.inputs.k ?? 2),
      }),
    )
  return [...lines, judgement.rule, ...judgement.reasons]
}

/** The same readings, station by station, as the computation takes them; only places on both axes make a grid. */
function gridInputs(defs: Definitions, facts: BoreFacts, record: BoreVerdictRecord): Record<string, Value> {
  const { readings } = record.inputs
  const stations = stationsOf(record)
  const { from, to } = defs.machine.bore.ring_travel
  const on = (axis: string) =>
    stations.map(
      (station) => readings.find((r) => r.station === station && r.axis === axis)?.valueM ?? Number.NaN,
    )
  const axes = [...new Set(readings.map((r) => r.axis))]
  return {
    vertical: list(on(axes[0] ?? '')),
    horizontal: list(on(axes[1] ?? '')),
    at: list(
      stations.map(
        (s) => from.si + (readings.find((r) => r.station === s)?.at ?? Number.NaN) * (to.si - from.si),
      ),
    ),
    u: si('length', record.inputs.readingU ?? facts.error?.resolutionM ?? Number.NaN),
  }
}

/** What the computation calls vertical and horizontal, by the names at the bench. */
function axesLine(defs: Definitions, record: BoreVerdictRecord): string[] {
  const [first, second] = [...new Set(record.inputs.readings.map((r) => r.axis))]
  return first === undefined || second === undefined
    ? []
    : [`vertical is ${axisName(defs, first)}, horizontal ${axisName(defs, second)}.`]
}

function stationsOf(record: BoreVerdictRecord): string[] {
  return [...new Set(record.inputs.readings.map((r) => r.station))]
}

function spaced(id: string): string {
  return id.replaceAll('_', ' ')
}

/** The repeats as they were pooled, what a diameter's error is made of, and each place that carries its own. */
function whyError(defs: Definitions, facts: BoreFacts, record: BoreVerdictRecord): string[] {
  const { error, repeats, main, strip, gauge } = facts
  if (error === null)
    return ['The measuring error is not known: the records or the temperatures do not say enough.']
  const now = expandedOfReading(error)
  if (now.ok && isByOtherRule(record, now.value)) return [BY_OTHER_RULE]
  const read = [...main.repeats, ...(strip?.repeats ?? [])]
  const places = read.map(({ place }) => placeNumber(defs, place.slice(0, place.indexOf('.')), place))
  const pooled =
    repeats.s === null
      ? ['No place was read twice: how far readings lie apart is not in it.']
      : [
          `Places in order: ${places.join(', ')}.`,
          ...worked('pooled-repeats', {
            readings: list(read.flatMap(({ values }) => values)),
            counts: {
              is: 'quantities',
              quantities: read.map(({ values }) => fromSi('ratio', values.length)),
            },
            resolution: si('length', gauge?.resolution.si ?? Number.NaN),
          }),
        ]
  return [
    ...pooled,
    ...worked('reading-error', errorInputs(error)),
    ...standingOut(facts).flatMap((one) => [
      `${placeNumber(defs, one.place.slice(0, one.place.indexOf('.')), one.place)} stands out and carries its own:`,
      ...worked('reading-error', errorInputs(errorAt(error, one))),
    ]),
  ]
}

function errorInputs(error: ReadingUncertaintyInput): Record<string, Value> {
  const { expansion, repeats } = error
  return {
    instrument_u: si('length', error.instrumentU ?? Number.NaN),
    instrument_k: number(error.instrumentK ?? Number.NaN),
    size: si('length', error.lengthM),
    part_alpha: number(error.partAlpha * 1e6),
    instrument_alpha: number(error.instrumentAlpha * 1e6),
    part_temp_u: si('temperature-difference', error.partTempU),
    instrument_temp_u: si('temperature-difference', error.instrumentTempU),
    resolution: si('length', error.resolutionM),
    resolution_in_u: { is: 'word', word: error.resolutionInsideU ? 'yes' : 'no' },
    level: number(COVERAGE_LEVEL),
    ...(repeats === undefined
      ? {}
      : { repeats_u: si('length', repeats.u), repeats_dof: number(repeats.dof) }),
    ...(expansion === undefined
      ? {}
      : {
          part_alpha_u: number(expansion.partAlphaU * 1e6),
          part_from_20: si('temperature-difference', Math.abs(expansion.partC - 20)),
          instrument_alpha_u: number(expansion.instrumentAlphaU * 1e6),
          instrument_from_20: si('temperature-difference', Math.abs(expansion.instrumentC - 20)),
        }),
  }
}

function worked(name: string, inputs: Readonly<Record<string, Value>>): string[] {
  const found = findComputation(name)
  if (!found.ok) throw new Error(`there is no computation ${name}`)
  const computed = compute(found.value, inputs)
  if (!computed.ok) return [`It cannot be worked out: ${computed.error.say}`]
  return showComputed(found.value, inputs, computed.value, { width: WIDTH, ascii: false })
}

function si(kind: QuantityKind, value: number): Value {
  return { is: 'quantity', quantity: fromSi(kind, value) }
}

function list(metres: readonly number[]): Value {
  return { is: 'quantities', quantities: metres.map((m) => fromSi('length', m)) }
}

function number(value: number): Value {
  return { is: 'number', number: value }
}

/** The judge of a bore's form that this read step goes into, or null. */
function judgeOf(defs: Definitions, read: PlacedStep): JudgeStep | null {
  for (const placed of defs.steps) {
    const judge = asBoreJudge(placed)
    if (judge === null) continue
    const { diameters, datum, counterbore } = judge.step.inputs
    const ids = [diameters, ...datumsOf({ datum }), counterbore ?? []].flat()
    if (ids.some((id) => judge.scope + id === read.id)) return judge
  }
  return null
}

function lastJudged(defs: Definitions, state: State): { judge: JudgeStep; record: BoreVerdictRecord } | null {
  const judged = defs.steps.flatMap((placed) => {
    const judge = asBoreJudge(placed)
    const stands = state.verdicts[placed.id]
    const record = stands?.void === false ? boreRecord(stands.verdict) : undefined
    return judge === null || record === undefined ? [] : [{ judge, record }]
  })
  return judged[judged.length - 1] ?? null
}
