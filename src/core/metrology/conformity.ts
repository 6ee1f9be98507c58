// Judges one value against one limit with the measuring error allowed for. Missing or unsound input never passes.

import { formatNumber } from '../lib/decimal.ts'
import { normalBelow } from '../statistics/normal.ts'
import { inputFaults, type JudgeInput } from './judge-input.ts'
import type { Limit } from './limit.ts'
import { isAbove, nearestHalfUp, wholeBelow } from './steps.ts'
import { COVERAGE_K } from './uncertainty.ts'
import type { VerdictWord } from './verdict.ts'

export const TOO_CLOSE = 'too close to call: measure with a better instrument or more repeats'
export const ERROR_NOT_ALLOWED_FOR = 'instrument error not allowed for'

export interface Judgement {
  readonly verdict: VerdictWord
  /** True when value and limit were in fact compared, so that the word says something about the part. */
  readonly compared: boolean
  /** Share of the limit used (1 on the limit), or null when it cannot be said. */
  readonly used: number | null
  /** Distance to the limit, SI: positive inside, negative beyond. */
  readonly left: number | null
  /** Guard band that was applied, SI. */
  readonly guard: number | null
  /** The last whole step still accepted, SI (for an at-least limit: the least). Zero or less: nothing can be. */
  readonly acceptAtMost: number | null
  /** The decision rule that was used, in one sentence. */
  readonly rule: string
  readonly reasons: readonly string[]
  readonly note: string | null
}

interface Sound {
  readonly value: number
  readonly resolution: number
  readonly limit: Limit
  readonly startsAt: number
}

/**
 * Decides with guard bands on both sides of the limit, each as wide as U: accepted only inside the limit by U or
 * more, beyond only when outside by more than U, between the two HOLD.
 *
 * The value is rounded to whole steps of the resolution, halves to the unsafe side (rounding method, ASTM E29), the
 * guarded limit to the safe side. Rounding alone never decides: the value as it stood must lie on the same side
 * (absolute method, ASTM E29), or else the stated risk would not hold; where the two differ it is HOLD.
 *
 * Sources: JCGM 106:2012 clause 8.3 (guarded acceptance, guarded rejection; clause from memory);
 * ILAC-G8:09/2019 4.2.3 (guard band equal to U); ISO 14253-1:2017 (same shape, narrower default guard of 0.83 U).
 *
 * @example limit 0.0095 in, U 0.0003 in, step 0.0001 in: 0.0092 ACCEPT, 0.0093 to 0.0098 HOLD, 0.0099 REWORK
 */
export function judgeAgainst(input: JudgeInput): Judgement {
  const faults = inputFaults(input)
  if (faults.length > 0) return holdJudgement(faults)
  const sound: Sound = {
    value: input.value as number,
    resolution: input.resolution as number,
    limit: input.limit as Limit,
    startsAt: input.startsAt ?? 0,
  }
  const u = input.expandedU
  if (u !== null && u !== undefined) return judgeGuarded(sound, u, input.k ?? COVERAGE_K)
  if (input.simpleAcceptance?.by.trim()) return judgePlainly(sound, input.simpleAcceptance.by.trim())
  return { ...holdJudgement(['the measuring error U is not on record']), ...shareOf(sound) }
}

/** The judgement of something that may not be judged. */
export function holdJudgement(reasons: readonly string[]): Judgement {
  const rule = 'HOLD: what is missing or unsound is never passed.'
  return {
    verdict: 'HOLD',
    compared: false,
    used: null,
    left: null,
    guard: null,
    acceptAtMost: null,
    rule,
    reasons,
    note: null,
  }
}

function shareOf({ value, limit, startsAt }: Sound): { used: number | null; left: number } {
  const left = limit.bound === 'at-most' ? limit.value - value : value - limit.value
  const hasStart = startsAt > 0 || limit.bound === 'at-most'
  const used = hasStart ? (value - startsAt) / (limit.value - startsAt) : limit.value / value
  return { used: Number.isFinite(used) ? unsigned(used) : null, left }
}

/** Everything counted in steps, with the sign turned for an at-least limit so that greater is always worse. */
function inSteps({ value, resolution, limit }: Sound, guard: number) {
  const sign = limit.bound === 'at-most' ? 1 : -1
  const raw = (sign * value) / resolution
  const bar = (sign * limit.value) / resolution
  const rounded = nearestHalfUp(raw)
  const acceptBar = wholeBelow(bar - guard / resolution)
  const lastAccepted = limit.inclusive ? acceptBar : acceptBar - 1
  return { sign, raw, rounded, bar, lastAccepted, guardSteps: guard / resolution }
}

function judgeGuarded(sound: Sound, u: number, k: number): Judgement {
  const { limit, resolution } = sound
  const steps = inSteps(sound, u)
  const inside = steps.rounded <= steps.lastAccepted && !isAbove(steps.raw, steps.bar - steps.guardSteps)
  const rejectBar = steps.bar + steps.guardSteps
  const outside = isAbove(steps.rounded, rejectBar) && isAbove(steps.raw, rejectBar)
  const base = {
    ...shareOf(sound),
    compared: true,
    guard: u,
    acceptAtMost: unsigned(steps.sign * steps.lastAccepted * resolution),
    rule: guardedRule(limit, k),
    note: null,
  }
  if (outside)
    return { ...base, verdict: limit.beyond, reasons: ['outside the limit by more than the measuring error'] }
  if (inside) return { ...base, ...acceptOrMonitor(sound, steps.sign * steps.rounded * resolution) }
  const nothing = steps.sign * steps.lastAccepted * resolution < sound.startsAt && limit.bound === 'at-most'
  const hopeless = nothing
    ? ['the measuring error is as large as the limit: nothing measured so can be accepted']
    : []
  return { ...base, verdict: 'HOLD', reasons: [TOO_CLOSE, ...hopeless] }
}

function judgePlainly(sound: Sound, by: string): Judgement {
  const { limit, resolution } = sound
  const steps = inSteps(sound, 0)
  const inside = steps.rounded <= steps.lastAccepted && !isAbove(steps.raw, steps.bar)
  const beyondBy = limit.inclusive ? isAbove : (a: number, bar: number) => !isAbove(bar, a)
  const outside = beyondBy(steps.rounded, steps.bar) && beyondBy(steps.raw, steps.bar)
  const base = {
    ...shareOf(sound),
    compared: true,
    guard: 0,
    acceptAtMost: unsigned(steps.sign * steps.lastAccepted * resolution),
    rule: `Plain comparison with the limit, no guard band, accepted by ${by}: near the limit the chance of being wrong is up to 50 in 100, so never better than MONITOR; ${limit.beyond} when beyond the limit.`,
    note: ERROR_NOT_ALLOWED_FOR,
  }
  if (outside) return { ...base, verdict: limit.beyond, reasons: ['beyond the limit', ERROR_NOT_ALLOWED_FOR] }
  if (inside) return { ...base, verdict: 'MONITOR', reasons: [ERROR_NOT_ALLOWED_FOR] }
  return { ...base, verdict: 'HOLD', reasons: [TOO_CLOSE, ERROR_NOT_ALLOWED_FOR] }
}

/** Zero without a sign, so that no reader is shown minus nothing. */
function unsigned(x: number): number {
  return x === 0 ? 0 : x
}

/** The worse of the value as it stood and as rounded decides, so that rounding cannot hide a share to be watched. */
function acceptOrMonitor(
  sound: Sound,
  rounded: number,
): { verdict: VerdictWord; reasons: readonly string[] } {
  const from = sound.limit.monitorFrom
  const shares = [shareOf(sound).used, shareOf({ ...sound, value: rounded }).used]
  const watched = from !== undefined && shares.some((share) => share === null || share >= from - 1e-9)
  return watched
    ? {
        verdict: 'MONITOR',
        reasons: ['inside the limit, at or over the share of it that the owner wants watched'],
      }
    : { verdict: 'ACCEPT', reasons: ['inside the limit with the measuring error allowed for'] }
}

/** A chance as so many in 100, two figures, rounded up: a stated risk is a ceiling. 0.02275 gives 2.3. */
export function inHundred(chance: number): string {
  const inAll = chance * 100
  if (inAll < 0.001) return '0.001'
  const digits = Math.max(0, 1 - Math.floor(Math.log10(inAll)))
  const scale = 10 ** digits
  return formatNumber(Math.ceil(inAll * scale - 1e-9) / scale, digits)
}

function guardedRule(limit: Limit, k: number): string {
  const by = limit.inclusive ? 'by U or more' : 'by more than U'
  const risk = inHundred(normalBelow(-k))
  return `Accepted only when inside the limit ${by} (guard band equal to U, k = ${k}), so that the chance of an accepted value being beyond the limit is at most ${risk} in 100; ${limit.beyond} only when outside by more than U; between, HOLD.`
}
