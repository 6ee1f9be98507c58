// What a judgement is made from, and every reason it may not be made. Nothing unsound gets past this file.

import { normalBelow } from '../statistics/normal.ts'
import { type Limit, limitFault } from './limit.ts'

export interface JudgeInput {
  /** The value to judge, SI. */
  readonly value: number | null | undefined
  /** Expanded uncertainty of this value (of the difference, when it is one), SI. */
  readonly expandedU: number | null | undefined
  /** Coverage factor of `expandedU`; 2 when left out, as every U from uncertainty.ts is stated at k = 2. */
  readonly k?: number | undefined
  /** The step the value was read in, SI. */
  readonly resolution: number | null | undefined
  readonly limit: Limit | null | undefined
  /** The owner who accepted, by name, that U is unknown and is not allowed for. */
  readonly simpleAcceptance?: { readonly by: string } | null | undefined
  /** Where use of the limit starts, SI: nominal size for a diameter. Zero when left out. */
  readonly startsAt?: number | undefined
}

/** ISO 14253-1:2017 asks for 95 % unless agreed otherwise (from memory); a guard band that leaves more is no guard. */
const GREATEST_RISK = 0.05

/** Each reason why no judgement can be made, in a few words; empty when one can. */
export function inputFaults(input: JudgeInput): string[] {
  const { value, expandedU, resolution, limit, k, startsAt } = input
  const faults = [
    valueFault(value),
    resolutionFault(resolution),
    isUnsoundU(expandedU) ? 'the measuring error U is not a number of zero or more' : null,
    limitFault(limit),
    k !== undefined && !isGuard(k)
      ? 'a guard band of U at this k leaves more than 5 chances in 100 of being wrong'
      : null,
    isStartOutside(startsAt, limit)
      ? 'the size that use of the limit starts from is not inside the limit'
      : null,
  ].filter((fault) => fault !== null)
  if (faults.length === 0 && !isCountable(value, resolution, limit, expandedU))
    faults.push('the figures cannot be counted in steps of the resolution')
  return faults
}

function valueFault(value: number | null | undefined): string | null {
  if (value === null || value === undefined) return 'there is no value to judge'
  if (!Number.isFinite(value)) return 'the value is not a number'
  return value < 0 ? 'the value is below zero' : null
}

function resolutionFault(resolution: number | null | undefined): string | null {
  if (resolution === null || resolution === undefined) return 'the resolution of the reading is not on record'
  return Number.isFinite(resolution) && resolution > 0 ? null : 'the resolution is not a number above zero'
}

function isUnsoundU(u: number | null | undefined): boolean {
  return u !== null && u !== undefined && !(Number.isFinite(u) && u >= 0)
}

function isGuard(k: number): boolean {
  return Number.isFinite(k) && normalBelow(-k) <= GREATEST_RISK
}

function isStartOutside(startsAt: number | undefined, limit: Limit | null | undefined): boolean {
  if (startsAt === undefined) return false
  if (!Number.isFinite(startsAt) || startsAt < 0) return true
  if (limit === null || limit === undefined) return false
  return limit.bound === 'at-most' ? !(startsAt < limit.value) : !(startsAt > limit.value)
}

/** Finite numbers can still overflow when divided by a tiny step. */
function isCountable(...figures: (number | Limit | null | undefined)[]): boolean {
  const [value, resolution, limit, u] = figures as [number, number, Limit, number | null | undefined]
  return [value, limit.value, u ?? 0].every((x) => Number.isFinite(x / resolution) && Number.isFinite(x * 2))
}
