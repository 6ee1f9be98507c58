// Reasons why the measuring of a bore cannot be trusted, whatever the figures say. Each is one sentence.

import type { BoreJudgeInput, Hold, SetCheck } from './bore-judge-input.ts'

/** Floating noise, metres. */
const NOISE_M = 1e-9

const NEGATIVE_WEAR =
  'The smallest reading is below nominal by more than the measuring error, and a bore does not shrink: look for the wrong machine record, a micrometer set wrong, dirt, or a cold bore.'

/** Every hold on the measuring or on the record of the bore. An empty list means the figures may be judged. */
export function boreHolds(input: BoreJudgeInput): Hold[] {
  return [...placeHolds(input), ...setCheckHolds(input), ...temperatureHolds(input), ...nominalHolds(input)]
}

/** What leaves no size to be trusted, a sentence each. A check that nobody knows how far off it may be says no more than one not made. */
export function trustHolds(input: BoreJudgeInput): string[] {
  const measuring = nominalHolds(input).filter(({ about }) => about === 'measuring')
  return [...placeHolds(input), ...setCheckHolds(input), ...temperatureHolds(input), ...measuring].map(
    ({ say }) => say,
  )
}

function placeHolds({ missing }: BoreJudgeInput): Hold[] {
  return missing.map(({ station, axis, why }) =>
    measuring(`There is no settled reading at ${station}, ${axis}${why ? ` (${why})` : ''}.`),
  )
}

function temperatureHolds({ temperaturesKnown }: BoreJudgeInput): Hold[] {
  if (temperaturesKnown === true) return []
  return [measuring('The temperature of the bore or of the instrument is not on record.')]
}

function setCheckHolds({ setCheck }: BoreJudgeInput): Hold[] {
  const holds = [...oneSetCheck(setCheck.before, 'before'), ...oneSetCheck(setCheck.after, 'after')]
  const { before, after } = setCheck
  if (!isSound(before) || !isSound(after)) return holds
  // The tighter of the two allowances bounds the drift: no third figure is made up for it.
  const allowedM = Math.min(before.allowedM, after.allowedM)
  if (Math.abs(after.deviationM - before.deviationM) > allowedM + NOISE_M)
    holds.push(
      measuring('The set-checks before and after differ by more than is allowed: the instrument moved.'),
    )
  return holds
}

function oneSetCheck(check: SetCheck | null | undefined, when: 'before' | 'after'): Hold[] {
  if (check === null || check === undefined || check.deviationM === null || check.deviationM === undefined)
    return [measuring(`There is no set-check of the instrument ${when} the readings.`)]
  if (!Number.isFinite(check.deviationM))
    return [measuring(`The set-check ${when} the readings is not a number.`)]
  if (!isSound(check))
    return [
      { about: 'record', say: `How far off the set-check ${when} the readings may be is not on record.` },
    ]
  if (Math.abs(check.deviationM) > check.allowedM + NOISE_M)
    return [measuring(`The set-check ${when} the readings is out by more than is allowed.`)]
  return []
}

function isSound(check: SetCheck | null | undefined): check is { deviationM: number; allowedM: number } {
  if (check === null || check === undefined) return false
  const { deviationM, allowedM } = check
  if (typeof deviationM !== 'number' || typeof allowedM !== 'number') return false
  return Number.isFinite(deviationM) && Number.isFinite(allowedM) && allowedM > 0
}

/** Where U is not on record one step of the resolution stands in for it: below that nobody can see a difference. */
function nominalHolds({ readings, nominalM, readingU, resolutionM }: BoreJudgeInput): Hold[] {
  if (nominalM === null || nominalM === undefined || !(Number.isFinite(nominalM) && nominalM > 0))
    return [{ about: 'record', say: 'The nominal bore is not on record as a size above zero.' }]
  const margin = readingU ?? resolutionM ?? 0
  const isBelow = readings.some(
    ({ valueM, expandedU }) => nominalM - valueM > (expandedU ?? margin) + NOISE_M,
  )
  return isBelow ? [measuring(NEGATIVE_WEAR)] : []
}

function measuring(say: string): Hold {
  return { about: 'measuring', say }
}
