// A lift plan, one part at a time. The load is held against the rating as soon as both are in.
import { ok, type Result, refuse } from '../lib/result.ts'
import { parseEntry } from '../units/index.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { type Asked, failed, given } from './evidence-asked.ts'
import { slingGiven } from './evidence-numbers.ts'
import { wordsGiven } from './evidence-words.ts'
import { gateState, inspectedWords } from './gate.ts'
import { fallsWith } from './lapse.ts'

/** The unit in which a weight is keyed where none is typed. */
export function massUnit(defs: Definitions): 'lb' | 'kg' {
  return defs.machine.shop_units.length === 'in' ? 'lb' : 'kg'
}

export function liftGiven(asked: Asked<'lift'>): Result<readonly Body[]> {
  switch (asked.item.part) {
    case 'load':
    case 'rating':
      return weightGiven(asked, asked.item.part)
    case 'sling':
      return slingGiven(asked)
    case 'inspected':
      return wordsGiven(asked, inspectedWords(asked.evidence))
    case null:
      throw new Error(`${asked.item.key} is no part of a lift plan`)
  }
}

function weightGiven(asked: Asked<'lift'>, part: 'load' | 'rating'): Result<readonly Body[]> {
  const { defs, state, gate, evidence, typed } = asked
  const decimalComma = defs.machine.decimal_comma ?? false
  const what = part === 'load' ? 'a load' : 'a rating'
  const entry = parseEntry(typed, { kind: 'mass', unit: massUnit(defs), decimalComma, what })
  if (!entry.ok) return entry
  const { value, unit, si } = entry.value
  const shown = `${value} ${unit}`
  if (!(si > 0 && Number.isFinite(si)))
    return refuse('zero', `${shown} cannot be ${what}: key what the plate, the drawing or the tag says.`)
  const reading = { typed, value, unit, si }
  const before = gateState(state, gate.id).given[`${evidence.id}.${part === 'load' ? 'rating' : 'load'}`]
  if (before === undefined) return ok([given(asked, shown, { reading })])
  const [load, rating] = part === 'load' ? [{ shown, si }, before] : [before, { shown, si }]
  // A weight that was not kept as a figure carries nothing.
  if ((load.si ?? Number.NaN) <= (rating.si ?? Number.NaN)) return ok([given(asked, shown, { reading })])
  const why = `the load of ${load.shown} is more than the ${rating.shown} it is rated for`
  const key = `${evidence.id}.${part === 'load' ? 'rating' : 'load'}`
  return ok([
    failed(asked, shown, why, { reading }),
    {
      type: 'gate.closed',
      step: gate.id,
      cause: 'overload',
      items: fallsWith(defs, state, gate, [key]),
      why,
    },
  ])
}
