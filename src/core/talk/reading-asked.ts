// What a figure would be at the reading that is asked: held against nominal, the datum, what is in of the same place and the limit. It is
// never judged alone, and nothing is taken by it.
import { datumsOf, judgeReads } from '../definition/judge-reads.ts'
import { readingFrom } from '../job/admit-reading.ts'
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from '../job/definitions.ts'
import type { ReadingAt } from '../job/entries.ts'
import { limitsFor } from '../job/limits.ts'
import { applicability, next, type Prompt } from '../job/next.ts'
import { type Place, placeResult, placesOf } from '../job/places.ts'
import { implausible, NOISE, sizeOf } from '../job/plausible.ts'
import type { State } from '../job/state.ts'
import { figureReads } from '../job/values.ts'
import { list } from '../lib/wording.ts'
import { limitPassage } from '../papers/limit-passages.ts'
import { writtenFact } from '../rules/machine-facts.ts'
import { alikeWithin } from './alike-within.ts'
import { lengthText, placeName, readingText } from './names.ts'

type ReadStep = Parameters<typeof placesOf>[0]
type AtRead = { readonly step: ReadStep; readonly place: Place; readonly instrument: string }

/** Where a reading is asked, or one is doubted. */
function atReading(defs: Definitions, prompt: Prompt, state: State): AtRead | null {
  if (prompt.kind === 'read')
    return { step: asKind(prompt.step, 'read'), place: prompt.place, instrument: prompt.instrument }
  if (prompt.kind !== 'doubt' || state.doubt === null) return null
  const step = asKind(stepById(defs, state.doubt.step), 'read')
  const place = placesOf(step).find(({ key }) => key === state.doubt?.place)
  return place === undefined ? null : { step, place, instrument: state.doubt.instrument }
}

/** Null: no reading is asked; `always` false: nor is it believed as one. */
export function readingFigureLines(
  defs: Definitions,
  state: State,
  typed: string,
  always = true,
): string[] | null {
  const at = atReading(defs, next(defs, state), state)
  if (at === null) return null
  const read = readingFrom(defs, state, at.step, at.place.key, at.instrument, typed)
  if (!read.ok) return always ? [`Nothing was taken. ${read.error.say}`] : null
  const reading = read.value
  const doubt = implausible(defs, at.step, reading)
  if (doubt !== null && !always) return null
  return [
    `Nothing was taken. ${placeName(defs, at.step.id, at.place.key)}: it would be ${readingText(defs, reading)}, as ${at.instrument} shows it.`,
    ...(doubt === null ? [] : [`It would be doubted: it is ${doubt}.`]),
    ...againstLines(defs, at, reading),
    ...datumLines(defs, state, at, reading),
    ...repeatLines(defs, state, at, reading),
    ...limitLines(defs, at.step, reading),
    ...needLines(defs, at.step),
  ]
}

/** The size on record that it is held against. */
function againstLines(defs: Definitions, { step }: AtRead, reading: ReadingAt): string[] {
  const { plausible } = step.step
  const { bore } = defs.machine
  if (plausible.from === 'nominal')
    return [apart(defs, step, reading, bore.nominal.si, `Nominal, ${bore.nominal.text}`)]
  if (plausible.from === 'counterbore' && bore.counterbore !== undefined)
    return [
      apart(defs, step, reading, bore.counterbore.si, `Counterbore on record, ${bore.counterbore.text}`),
    ]
  if (plausible.from === 'record') {
    const written = writtenFact(defs.machine, plausible.of)
    const name = `On record, ${plausible.of.replaceAll('_', ' ')}, ${written?.text ?? ''}`
    return written === undefined ? [] : [apart(defs, step, reading, written.si, name)]
  }
  if (plausible.from === 'range')
    return [
      `Believed from ${plausible.least.text} to ${plausible.most.text}; outside that it is asked about.`,
    ]
  const instrument = instrumentById(defs, reading.instrument)
  if (plausible.from !== 'standard' || instrument === undefined || !('set_check' in instrument)) return []
  const check = instrument.set_check
  if (check === undefined) return []
  const isWithin = Math.abs(reading.si - check.size.si) <= check.within.si + NOISE
  return [
    apart(defs, step, reading, check.size.si, `Its standard, ${check.standard}, ${check.size.text}`),
    `To be read within ${check.within.text}: ${isWithin ? 'not out of it' : 'OUT OF IT'}. Source: ${check.source}`,
  ]
}

function apart(defs: Definitions, { step }: ReadStep, reading: ReadingAt, si: number, name: string): string {
  const off = reading.si - si
  const size = sizeOf(defs, step.quantity, Math.abs(off), reading)
  return `${name}: ${Math.abs(off) < NOISE ? 'the same' : `${size} ${off > 0 ? 'above it' : 'BELOW it'}`}.`
}

/** What wear is told from, where this reading goes into the form of a bore: only what is read on this job already. */
function datumLines(defs: Definitions, state: State, { step, place }: AtRead, reading: ReadingAt): string[] {
  const judge = boreJudgeOf(defs, step)
  if (judge === null || stepIs(judge, step) !== 'diameters') return []
  const strips = datumsOf(judge.step.inputs).flatMap((id) => {
    const strip = defs.steps.find((one) => one.id === judge.scope + id)
    return strip === undefined || applicability(defs, state, strip) === 'skip' ? [] : [asKind(strip, 'read')]
  })
  if (datumsOf(judge.step.inputs).length === 0) return []
  if (strips.length === 0) return ['Datum: no unswept strip, so wear is told from the record, or not at all.']
  const read = strips.flatMap((strip) => {
    const same = placesOf(strip).find(({ axis }) => axis?.id === place.axis?.id)
    const si = same === undefined ? null : placeResult(strip, same, state).si
    return si === null || same === undefined ? [] : [{ strip, same, si }]
  })
  const [first] = read
  const numbers = list(
    strips.map(({ number }) => String(number)),
    'or',
  )
  return first === undefined
    ? [
        `Datum: the unswept strip of sheet ${numbers}, not read yet; wear is told from it and not from nominal.`,
      ]
    : [
        apart(
          defs,
          step,
          reading,
          first.si,
          `Datum, ${placeName(defs, first.strip.id, first.same.key)}, ${lengthText(defs, first.si)}`,
        ),
      ]
}

/** Those of the same place that are in. */
function repeatLines(defs: Definitions, state: State, { step, place }: AtRead, reading: ReadingAt): string[] {
  const { readings } = placeResult(step, place, state)
  if (readings.length === 0) return []
  return [
    ...readings.map(({ si }, i) => apart(defs, step, reading, si, `Reading ${i + 1} of this place`)),
    `Readings of one place are to lie within ${alikeWithin(defs, step.step.repeats.within)}.`,
  ]
}

type BoreJudge = NonNullable<ReturnType<typeof asBoreJudge>>

function boreJudgeOf(defs: Definitions, step: PlacedStep): BoreJudge | null {
  for (const one of defs.steps) {
    const judge = one.step.kind === 'judge' ? asBoreJudge(one) : null
    if (judge !== null && stepIs(judge, step) !== null) return judge
  }
  return null
}

function stepIs({ scope, step: { inputs } }: BoreJudge, { id }: PlacedStep): 'diameters' | 'other' | null {
  if (id === scope + inputs.diameters) return 'diameters'
  const others = [...datumsOf(inputs), inputs.counterbore, inputs.set_before, inputs.set_after]
  return [...others, ...inputs.part_temperature, ...inputs.instrument_temperature].some(
    (one) => one !== undefined && id === scope + one,
  )
    ? 'other'
    : null
}

/** The one limit that a single diameter can be held against; all others are of several places. */
function limitLines(defs: Definitions, step: ReadStep, reading: ReadingAt): string[] {
  const judge = boreJudgeOf(defs, step)
  if (judge === null || stepIs(judge, step) !== 'diameters') return []
  const largest = judge.step.against.includes('largest-diameter')
    ? limitsFor(defs, ['largest-diameter'])['largest-diameter']
    : undefined
  const others = judge.step.against
    .filter((id) => id !== 'largest-diameter')
    .map((id) => id.replaceAll('-', ' '))
  const [limit] = (limitPassage(defs, 'largest-diameter')[0]?.text ?? '').split('. Source: ')
  return [
    ...(largest === undefined
      ? ['Limit of one diameter: none on record, so none is told.']
      : [
          `Limit, ${limit}; ${beside(defs, step, reading, largest.value)}, measuring error and temperature not allowed for. Source: ${largest.source}.`,
        ]),
    ...(others.length === 0
      ? []
      : [`${capitalList(others)}: told from all places together, and from no single figure.`]),
  ]
}

/** Of a limit from above. */
function beside(defs: Definitions, { step }: ReadStep, reading: ReadingAt, limit: number): string {
  const off = reading.si - limit
  if (Math.abs(off) < NOISE) return 'ON IT'
  const size = sizeOf(defs, step.quantity, Math.abs(off), reading)
  return off > 0 ? `OVER IT by ${size}` : `${size} under it`
}

const capitalList = (words: readonly string[]) =>
  words.map((word, i) => (i === 0 ? word.charAt(0).toUpperCase() + word.slice(1) : word)).join(', ')

/** More would push the question off a small screen. */
const MOST = 2

/** That no verdict stands on one figure, and what it takes; of a verdict by figures, the limits that it is held against. */
function needLines(defs: Definitions, step: ReadStep): string[] {
  const judges = defs.steps.filter((one) => restsOn(defs, one, step.id))
  const [first] = judges
  if (first === undefined) return ['No figure is called good or bad by itself here.']
  const { number, step: judge } = first
  // A temperature and a set-check go into it, and are no size of the part.
  const isSize = step.step.quantity !== 'temperature' && step.step.plausible.from !== 'standard'
  const figures = isSize && judge.kind === 'judge' && judge.compute === 'figures' ? judge.figures : []
  const limits = [...new Set(figures.map(({ characteristic }) => characteristic))].flatMap((id) =>
    limitPassage(defs, id),
  )
  return [
    ...limits.slice(0, MOST).map(({ text }) => `Held against there: ${text}.`),
    ...(limits.length > MOST ? [`and ${limits.length - MOST} more: ask for a limit by its name.`] : []),
    `No verdict stands on one figure: sheet ${number}, ${judge.title}, wants all of its readings, temperatures and checks.`,
  ]
}

/** Whether a judgement rests on what is read at this step. */
export function restsOn(defs: Definitions, judge: PlacedStep, id: string): boolean {
  if (judge.step.kind !== 'judge') return false
  const { needed, optional } = judgeReads(judge.step)
  return [...[...needed, ...optional].map((one) => judge.scope + one), ...figureReads(defs, judge)].includes(
    id,
  )
}
