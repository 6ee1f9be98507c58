// One characteristic of a bore against its own limit: which figure, from which places, with which U.

import { holdJudgement, type Judgement, judgeAgainst } from '../metrology/conformity.ts'
import type { Limit } from '../metrology/limit.ts'
import type { BoreForm } from './bore-form.ts'
import {
  BORE_CHARACTERISTICS,
  type BoreCharacteristic,
  type BoreJudgeInput,
  type Hold,
} from './bore-judge-input.ts'
import { type BoreReading, differenceUOf, type Place } from './bore-readings.ts'

export interface CharacteristicJudgement {
  readonly characteristic: BoreCharacteristic
  /** Metres; null when the readings do not give it. */
  readonly valueM: number | null
  /** Where the value comes from, the greater reading first. */
  readonly places: readonly Place[]
  readonly limit: Limit | null
  readonly judgement: Judgement
}

/** A figure that a characteristic may be decided by: each is the greatest of several. */
interface Candidate {
  readonly valueM: number | null
  readonly places: readonly Place[]
  readonly expandedU: number | null | undefined
}

/** All four characteristics, always, in one order; what cannot be judged is HOLD with the reason. */
export function judgeCharacteristics(
  input: BoreJudgeInput,
  form: BoreForm | null,
): CharacteristicJudgement[] {
  return BORE_CHARACTERISTICS.map((characteristic) => {
    const limit = Object.hasOwn(input.limits, characteristic) ? (input.limits[characteristic] ?? null) : null
    const { valueM, places, judgement } = deciding(
      candidates(input, characteristic, form).map((one) => ({
        ...one,
        judgement: judgeOne(input, characteristic, one, limit),
      })),
    )
    return { characteristic, valueM, places, limit, judgement }
  })
}

type Judged = Candidate & { readonly judgement: Judgement }

/**
 * Which of several decides, the greatest figure first: one that is beyond for sure; else one that cannot be told inside, since its
 * places may be the worst in truth; else the greatest.
 */
function deciding(judged: readonly Judged[]): Judged {
  const word = (one: Judged) => one.judgement.verdict
  const beyond = judged.find((one) => word(one) === 'REWORK' || word(one) === 'REPLACE')
  const decides = beyond ?? judged.find((one) => word(one) === 'HOLD') ?? judged[0]
  if (decides === undefined) throw new Error('a characteristic without any figure, not even a missing one')
  return decides
}

/** One, where all readings have one error; else every two that it could be told from, each with the U of its own two. */
function candidates(
  input: BoreJudgeInput,
  characteristic: BoreCharacteristic,
  form: BoreForm | null,
): Candidate[] {
  const worst = greatestOf(characteristic, form)
  const isSize = characteristic === 'largest-diameter'
  if (form === null || input.readings.every(({ expandedU }) => expandedU === undefined))
    return [{ ...worst, expandedU: isSize ? input.readingU : input.differenceU }]
  const all = isSize
    ? input.readings.map((one) => ({
        valueM: one.valueM,
        places: [placeOf(one)],
        expandedU: one.expandedU ?? input.readingU,
      }))
    : pairsFor(input.readings, characteristic).map(([a, b]) => ({
        valueM: Math.abs(a.valueM - b.valueM),
        places: (b.valueM > a.valueM ? [b, a] : [a, b]).map(placeOf),
        expandedU: differenceUOf(a, b, input),
      }))
  const isWorst = ({ places }: Candidate) => JSON.stringify(places) === JSON.stringify(worst.places)
  // Where two tie, the one that the form names comes first.
  return all.sort((a, b) => b.valueM - a.valueM || Number(isWorst(b)) - Number(isWorst(a)))
}

function pairsFor(
  readings: readonly BoreReading[],
  characteristic: BoreCharacteristic,
): [BoreReading, BoreReading][] {
  return readings.flatMap((a, n) =>
    readings
      .slice(n + 1)
      .filter(
        (b) =>
          characteristic === 'spread' ||
          (characteristic === 'taper' ? a.axis === b.axis : a.station === b.station),
      )
      .map((b): [BoreReading, BoreReading] => [a, b]),
  )
}

function placeOf({ station, axis }: Place): Place {
  return { station, axis }
}

function judgeOne(
  input: BoreJudgeInput,
  characteristic: BoreCharacteristic,
  { valueM, expandedU }: Candidate,
  limit: Limit | null,
): Judgement {
  if (limit !== null && limit.characteristic !== characteristic)
    return holdJudgement([`the limit on record is for ${limit.characteristic}, not for this`])
  if (limit !== null && limit.bound !== 'at-most')
    return holdJudgement(['the limit on record is a least value, and a bore wears larger'])
  const isSize = characteristic === 'largest-diameter'
  if (isSize && !isSoundSize(input.nominalM))
    return holdJudgement(['there is no nominal bore to count the use of the limit from'])
  return judgeAgainst({
    value: valueM,
    expandedU,
    k: input.k,
    resolution: input.resolutionM,
    limit,
    simpleAcceptance: input.simpleAcceptance,
    startsAt: startOf(input, characteristic) ?? undefined,
  })
}

export function isSoundSize(sizeM: number | null | undefined): sizeM is number {
  return typeof sizeM === 'number' && Number.isFinite(sizeM) && sizeM > 0
}

/** The greatest figure of it, and its places, the greater reading first. */
export function greatestOf(
  characteristic: BoreCharacteristic,
  form: BoreForm | null,
): { valueM: number | null; places: readonly Place[] } {
  if (form === null) return { valueM: null, places: [] }
  const { worstRound: round, worstTaper: taper, largest, smallest } = form
  const place = (station: string, axis: string): Place => ({ station, axis })
  switch (characteristic) {
    case 'out-of-round':
      return {
        valueM: round.outOfRoundM,
        places: [place(round.station, round.widestOn), place(round.station, round.narrowestOn)],
      }
    case 'taper':
      return {
        valueM: taper.taperM,
        places: [place(taper.widestAt, taper.axis), place(taper.narrowestAt, taper.axis)],
      }
    case 'spread':
      return {
        valueM: form.spreadM,
        places: [place(largest.station, largest.axis), place(smallest.station, smallest.axis)],
      }
    case 'largest-diameter':
      return { valueM: largest.valueM, places: [place(largest.station, largest.axis)] }
  }
}

/** What the share of a limit used is counted from, metres: a size from nominal, a difference from nothing, which is null. */
export function startOf(
  { nominalM }: Pick<BoreJudgeInput, 'nominalM'>,
  characteristic: BoreCharacteristic,
): number | null {
  return characteristic === 'largest-diameter' && isSoundSize(nominalM) ? nominalM : null
}

/** U of the figure that decides a characteristic, metres: of its own places. Null where no error is on record. */
export function allowedFor(
  { readingU, differenceU }: Pick<BoreJudgeInput, 'readingU' | 'differenceU'>,
  { characteristic, judgement }: Pick<CharacteristicJudgement, 'characteristic' | 'judgement'>,
): number | null {
  const common = (characteristic === 'largest-diameter' ? readingU : differenceU) ?? null
  return common === null ? null : (judgement.guard ?? common)
}

/** The same judgements when the measuring is on hold: no word about the part is left standing. */
export function withoutTrust(judged: readonly CharacteristicJudgement[]): CharacteristicJudgement[] {
  return judged.map((one) => ({
    ...one,
    judgement: {
      ...one.judgement,
      verdict: 'HOLD',
      compared: false,
      reasons: [...new Set([...holdReasons(one), 'the measuring or the record of this bore is on hold'])],
    },
  }))
}

/** One sentence for each reason that holds characteristics up, naming all that it holds. */
export function characteristicHolds(judged: readonly CharacteristicJudgement[]): Hold[] {
  const byReason = new Map<string, { names: string[]; compared: boolean }>()
  for (const one of judged) {
    for (const reason of holdReasons(one)) {
      const entry = byReason.get(reason) ?? { names: [], compared: one.judgement.compared }
      entry.names.push(one.characteristic)
      byReason.set(reason, entry)
    }
  }
  return [...byReason].map(([reason, { names, compared }]) => ({
    about: compared ? 'measuring' : 'record',
    say: `${sentenceStart(names.join(', '))}: ${reason}.`,
  }))
}

/** A value that is missing is held by its places, which say more. */
function holdReasons({ valueM, judgement }: CharacteristicJudgement): readonly string[] {
  if (judgement.verdict !== 'HOLD') return []
  return judgement.reasons.filter((reason) => valueM !== null || reason !== 'there is no value to judge')
}

function sentenceStart(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
