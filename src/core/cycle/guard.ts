// Guards shared by the cycle functions: a number that cannot be used is refused by name before any arithmetic, and a
// result that is not finite is refused after it. Nothing is replaced by a default.
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'

/** What a record may hold where a number belongs. */
export type MaybeNumber = number | null | undefined

function fault(code: string, say: string): Refusal {
  return { code, say }
}

/** The fault of a number that is missing or not finite; null for a sound one. */
export function finite(what: string, value: MaybeNumber): Refusal | null {
  if (value === null || value === undefined) return fault('missing', `The ${what} is missing: give it.`)
  if (!Number.isFinite(value)) return fault('not-a-number', `The ${what} is not a number: give it again.`)
  return null
}

export function aboveZero(what: string, value: MaybeNumber): Refusal | null {
  const unsound = finite(what, value)
  if (unsound !== null) return unsound
  if ((value as number) > 0) return null
  return fault('not-above-zero', `The ${what} is not above zero: check it and its unit.`)
}

/** `least` and `most` are inclusive, and are shown as they stand. */
export function within(what: string, value: MaybeNumber, least: number, most: number): Refusal | null {
  const unsound = finite(what, value)
  if (unsound !== null) return unsound
  if ((value as number) >= least && (value as number) <= most) return null
  return fault('out-of-range', `The ${what} is not between ${least} and ${most}: check it and its unit.`)
}

/** The first fault of a list as a refused result; null when there is none. */
export function firstFault(
  ...faults: readonly (Refusal | null)[]
): { readonly ok: false; readonly error: Refusal } | null {
  const first = faults.find((one) => one !== null)
  return first === undefined || first === null ? null : { ok: false, error: first }
}

/** Inputs each in range can still run out of the range of a double together. */
export function sound(what: string, value: number): Result<number> {
  if (Number.isFinite(value)) return ok(value)
  return refuse(
    'not-finite',
    `The ${what} does not come to a finite number: check the inputs and their units.`,
  )
}

/** As `sound`, for a record of named numbers: the first that is not finite refuses the whole. */
export function soundAll<T extends Readonly<Record<string, number>>>(what: string, values: T): Result<T> {
  const bad = Object.entries(values).find(([, value]) => !Number.isFinite(value))
  return bad === undefined ? ok(values) : (sound(`${what} (${bad[0]})`, bad[1]) as Result<never>)
}

/** Greatest pressure ratio of one stage that is taken: judgement of the trade, no source; real stages stay below 5. */
export const GREATEST_RATIO = 50

/** A pressure ratio of one stage, 1 to 50. */
export function ratioFault(ratio: MaybeNumber): Refusal | null {
  return within('pressure ratio', ratio, 1, GREATEST_RATIO)
}

/** A polytropic or adiabatic exponent, 1 (isothermal) to 2. Real gases in cylinders lie between 1.05 and 1.67. */
export function exponentFault(n: MaybeNumber): Refusal | null {
  return within('exponent', n, 1, 2)
}

/** A compressibility factor, 0.1 to 3. */
export function compressibilityFault(where: string, z: MaybeNumber): Refusal | null {
  return within(`compressibility at ${where}`, z, 0.1, 3)
}
