// Judges one bore: form, each characteristic against its limit, what governs, what holds it up, what might be done.

import { type Governs, governing } from '../metrology/governing.ts'
import { expandedOfCentreAgainstEnds } from '../metrology/uncertainty.ts'
import { type VerdictWord, worst } from '../metrology/verdict.ts'
import type { FormUncertainty } from './axis-form.ts'
import {
  type CharacteristicJudgement,
  characteristicHolds,
  isSoundSize,
  judgeCharacteristics,
  withoutTrust,
} from './bore-characteristics.ts'
import { type BoreForm, boreForm } from './bore-form.ts'
import { boreHolds, trustHolds } from './bore-holds.ts'
import type { BoreCharacteristic, BoreJudgeInput, Hold } from './bore-judge-input.ts'
import { type Proposal, proposalsFor } from './bore-proposals.ts'
import {
  type ReboreRoom,
  reboreRoom,
  type WearFromDatum,
  wearFromDatum,
  wearFromNominal,
} from './bore-wear.ts'

export interface BoreVerdict {
  readonly verdict: VerdictWord
  /** Always all four. */
  readonly judged: readonly CharacteristicJudgement[]
  /** Those that use the largest share of their limit among those judged; more than one when they tie. */
  readonly governs: Governs<BoreCharacteristic> | null
  /** Each reason for HOLD in one sentence. */
  readonly holds: readonly string[]
  readonly proposals: readonly Proposal[]
  readonly form: BoreForm | null
  readonly wearFromNominalM: number | null
  readonly wearFromDatum: WearFromDatum | null
  /** Null when the counterbore is not on record, or contradicts the bore (then it is a hold). */
  readonly reboreRoom: ReboreRoom | null
}

/**
 * Judges out-of-round, taper and spread with the U of a difference and the largest diameter with the U of a reading.
 *
 * A hold on the measuring turns every word to HOLD, as no figure can be trusted then; a limit that is missing holds
 * its own characteristic, and with it the whole. The share of the diameter limit is counted from nominal: a share of
 * the whole diameter would always be nearly one and govern everything. A spread is the greatest of several noisy
 * differences, so it reads large rather than small: ACCEPT is safe, and the chance stated with it a ceiling.
 * Readings, characteristics and the rule that a hone corrects no form: Bloch & Hoefner, Reciprocating Compressors:
 * Operation and Maintenance, 1996, p. 256-260. Decision rule: see judgeAgainst.
 */
export function judgeBore(input: BoreJudgeInput): BoreVerdict {
  const shape = boreForm(input.readings, formUncertainty(input))
  const form = shape.ok ? shape.value : null
  const room = roomOf(input, form)
  const holds: Hold[] = [...boreHolds(input), ...room.holds]
  if (!shape.ok) holds.push({ about: 'measuring', say: shape.error.say })
  const reckoned = judgeCharacteristics(input, form)
  const judged = holds.length === 0 ? reckoned : withoutTrust(reckoned)
  holds.push(...characteristicHolds(reckoned))
  const words = [...judged.map(({ judgement }) => judgement.verdict), ...holds.map((): VerdictWord => 'HOLD')]
  const verdict = worst(words)
  return {
    verdict,
    judged,
    governs: governing(judged),
    holds: holds.map(({ say }) => say),
    proposals: proposalsFor({ verdict, judged, holds, lined: input.lined, room: room.room }),
    form,
    wearFromNominalM:
      form !== null && isSoundSize(input.nominalM) ? wearFromNominal(form, input.nominalM) : null,
    wearFromDatum: form === null ? null : wearFromDatum(input.readings, form.axes, input.datum, input),
    reboreRoom: room.room,
  }
}

/**
 * Of the holds that a verdict told, those that leave no size it was given to be trusted. What is only about a limit, or about a size on
 * record, says nothing against what was measured; a sentence that is known as neither counts against it.
 */
export function measuringHolds(input: BoreJudgeInput, told: readonly string[]): string[] {
  const shape = boreForm(input.readings, formUncertainty(input))
  const form = shape.ok ? shape.value : null
  const against = trustHolds(input)
  const others = [
    ...boreHolds(input)
      .filter(({ say }) => !against.includes(say))
      .map(({ say }) => say),
    ...roomOf(input, form).holds.map(({ say }) => say),
    ...characteristicHolds(judgeCharacteristics(input, form)).map(({ say }) => say),
  ]
  return [...new Set([...against, ...told.filter((say) => !others.includes(say))])]
}

/** An unsound U tells no form apart; that it is unsound is said where it is judged with. */
function formUncertainty({ readingU, differenceU }: BoreJudgeInput): FormUncertainty {
  const isSound = (u: number | null | undefined): u is number =>
    typeof u === 'number' && Number.isFinite(u) && u >= 0
  return {
    readingU: isSound(readingU) ? readingU : undefined,
    differenceU: isSound(differenceU) ? differenceU : undefined,
    centreU: isSound(readingU) ? expandedOfCentreAgainstEnds(readingU) : undefined,
  }
}

/** A counterbore that is not on record only leaves the room unknown; one that contradicts the bore is a hold. */
function roomOf(input: BoreJudgeInput, form: BoreForm | null): { room: ReboreRoom | null; holds: Hold[] } {
  if (form === null) return { room: null, holds: [] }
  const { counterboreM, maxBoreM } = input
  const room = reboreRoom({ largestM: form.largest.valueM, counterboreM, maxBoreM })
  if (room.ok) return { room: room.value, holds: [] }
  const isUnknown = room.error.code === 'counterbore-unknown'
  return { room: null, holds: isUnknown ? [] : [{ about: 'record', say: room.error.say }] }
}
