// Limits of a machine record as a hidden machine is made by them: every one of them has to be there.
import type { CharacteristicId } from '../definition/characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** Least and most of what passes, SI. */
export type Window = readonly [least: number, most: number]

/** The values of limits, in the order they are named, or which of them the record has none for. */
export function valuesOf(defs: Definitions, names: readonly CharacteristicId[]): Result<readonly number[]> {
  const limits = limitsFor(defs, names)
  const unknown = names.filter((name) => limits[name] === undefined)
  if (unknown.length > 0)
    return refuse(
      'no-limit',
      `Practice needs a limit for ${unknown.join(', ')}: the machine record has none.`,
    )
  return ok(names.flatMap((name) => limits[name]?.value ?? []))
}

export function windowOf(defs: Definitions, least: CharacteristicId, most: CharacteristicId): Result<Window> {
  const values = valuesOf(defs, [least, most])
  if (!values.ok) return values
  const [from = Number.NaN, to = Number.NaN] = values.value
  return from < to
    ? ok([from, to])
    : refuse(
        'no-room',
        `Practice needs a least ${least} below the most: the machine record has them crossed.`,
      )
}
