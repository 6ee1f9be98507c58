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
import type { Place } from './bore-readings.ts'

export interface CharacteristicJudgement {
  readonly characteristic: BoreCharacteristic
  /** Metres; null when the readings do not give it. */
  readonly valueM: number | null
  /** Where the value comes from, the greater reading first. */
  readonly places: readonly Place[]
  readonly limit: Limit | null
  readonly judgement: Judgement
}

/** All four characteristics, always, in one order; what cannot be judged is HOLD with the reason. */
export function judgeCharacteristics(
  input: BoreJudgeInput,
  form: BoreForm | null,
): CharacteristicJudgement[] {
  return BORE_CHARACTERISTICS.map((characteristic) => {
    const limit = Object.hasOwn(input.limits, characteristic) ? (input.limits[characteristic] ?? null) : null
    const { valueM, places } = figure(characteristic, form)
    return {
      characteristic,
      valueM,
      places,
      limit,
      judgement: judgeOne(input, characteristic, valueM, limit),
    }
  })
}

function judgeOne(
  input: BoreJudgeInput,
  characteristic: BoreCharacteristic,
  valueM: number | null,
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
    expandedU: isSize ? input.readingU : input.differenceU,
    k: input.k,
    resolution: input.resolutionM,
    limit,
    simpleAcceptance: input.simpleAcceptance,
    startsAt: isSize && isSoundSize(input.nominalM) ? input.nominalM : undefined,
  })
}

export function isSoundSize(sizeM: number | null | undefined): sizeM is number {
  return typeof sizeM === 'number' && Number.isFinite(sizeM) && sizeM > 0
}

function figure(
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
