// What makes most of the measuring error of a verdict that is too close to call: it says what to better before measuring again.

import type { CharacteristicJudgement } from '../bore/bore-characteristics.ts'
import type { Place } from '../bore/bore-readings.ts'
import type { Judgement } from '../metrology/conformity.ts'
import { TOO_CLOSE } from '../metrology/conformity.ts'
import { type ErrorSource, partsOfReading, type ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { asBoreJudge, boreFacts, errorAt, type JudgeStep } from './bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { readsOf } from './figure-step.ts'
import { placesOf } from './places.ts'
import type { State } from './state.ts'
import type { Temperature } from './temperature.ts'
import type { BoreVerdictRecord, FigureVerdictRecord, VerdictRecord } from './verdict-record.ts'

export interface MainError {
  readonly from: ErrorSource
  /** Its part of the variance, 0 to 1. */
  readonly share: number
  /** Instrument that read it. */
  readonly instrument: string
  /** What was measured, in a word: bore, rod, piston. Empty where nothing is brought to 20 degC. */
  readonly of: string
  readonly part: Temperature | null
  readonly body: Temperature | null
}

/** The same error made at several places counts as often as it was made there. */
interface Share extends Omit<MainError, 'share'> {
  readonly variance: number
}

/** Null where no figure of the verdict is too close to call, or where its error cannot be taken apart. */
export function mainError(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  record: VerdictRecord,
): MainError | null {
  const bore = asBoreJudge(judge)
  if (bore !== null && record.compute === 'bore_form') return greatest(boreShares(defs, state, bore, record))
  return record.compute === 'figures' ? greatest(figureShares(defs, state, judge, record)) : null
}

const isTooClose = ({ verdict, reasons }: Judgement) => verdict === 'HOLD' && reasons.includes(TOO_CLOSE)

function boreShares(
  defs: Definitions,
  state: State,
  judge: JudgeStep,
  { result }: BoreVerdictRecord,
): readonly Share[] {
  const { error, gauge, part, body, repeats } = boreFacts(defs, state, judge)
  if (error === null || gauge === null) return []
  const read = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  const keyAt = ({ station, axis }: Place) =>
    placesOf(read).find((one) => one.station.id === station && (one.axis?.id ?? 'only') === axis)?.key
  const places = result.judged
    .filter(({ judgement }) => isTooClose(judgement))
    .flatMap((one: CharacteristicJudgement) => one.places)
  return places.flatMap((place) => {
    const own = repeats.places.find((one) => one.place === keyAt(place))
    return sharesOf(own === undefined ? error : errorAt(error, own), 1).map((one) => ({
      ...one,
      instrument: gauge.id,
      of: 'bore',
      part,
      body,
    }))
  })
}

/** Each reading counts by how far it moves the figure. */
function figureShares(
  defs: Definitions,
  state: State,
  judge: PlacedStep,
  { inputs, result }: FigureVerdictRecord,
): readonly Share[] {
  const { step } = judge
  if (step.kind !== 'judge' || step.compute !== 'figures') return []
  const { places } = readsOf(defs, state, { ...judge, step })
  const close = new Set(
    result.judged.filter(({ judgement }) => isTooClose(judgement)).map((one) => one.characteristic),
  )
  return inputs.figures
    .filter(({ characteristic }) => close.has(characteristic))
    .flatMap(({ parts }) =>
      parts.flatMap(({ place, moves, expandedU, instruments }) => {
        const read = places.get(place)
        if (read === undefined || typeof read === 'string' || moves === null || !expandedU) return []
        return read.errors.flatMap((error, n) =>
          sharesOf(error, (moves / expandedU) ** 2).map((one) => ({
            ...one,
            instrument: instruments[n] ?? instruments[0] ?? '',
            of: read.at20?.of ?? '',
            part: read.at20?.part ?? null,
            body: read.at20?.body ?? null,
          })),
        )
      }),
    )
}

function sharesOf(error: ReadingUncertaintyInput, weight: number): { from: ErrorSource; variance: number }[] {
  const parts = partsOfReading(error)
  return parts.ok ? parts.value.map(({ from, u }) => ({ from, variance: weight * u * u })) : []
}

function greatest(shares: readonly Share[]): MainError | null {
  const all = shares.reduce((sum, { variance }) => sum + variance, 0)
  const sums = new Map<string, Share>()
  for (const one of shares) {
    const key = `${one.from} ${one.instrument} ${one.of}`
    sums.set(key, { ...one, variance: (sums.get(key)?.variance ?? 0) + one.variance })
  }
  const [most] = [...sums.values()].sort((a, b) => b.variance - a.variance)
  if (most === undefined || !(all > 0)) return null
  const { variance, ...rest } = most
  return { ...rest, share: variance / all }
}
