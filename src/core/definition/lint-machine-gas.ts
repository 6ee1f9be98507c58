// Cross-checks of one gas limit: the unit its gas is read in, and the bounds without which it would let anything through.

import { quote } from '../lib/wording.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import { BURNS, type GasLimit, type Machine } from './machine.ts'

const UNIT: Readonly<Record<GasLimit['gas'], string>> = {
  oxygen: '%vol',
  flammable: '%LEL',
  flammable_in_inert: '%vol',
  hydrogen_sulfide: 'ppm',
}

/** Findings of one gas limit; `path` is its place in the record. */
export function lintGasLimit(limit: GasLimit, path: Path): Finding[] {
  const found: Finding[] = []
  for (const key of ['at_least', 'at_most'] as const) {
    const bound = limit[key]
    if (bound !== undefined && bound.unit !== UNIT[limit.gas]) {
      const message = `${quote(bound.text)} is not in ${UNIT[limit.gas]}, the unit of ${named(limit.gas)}.`
      found.push(finding([...path, key], 'wrong-unit', message))
    }
  }
  return [...found, ...lintBounds(limit, path)]
}

/** Limits that would let people go where the gas burns; told with the job, as the engine passes no such reading anyway. */
export function lintBurns(machine: Machine): Finding[] {
  return machine.site.gas.limits.flatMap(({ gas, at_most }, n) => {
    if (gas !== 'flammable' || at_most === undefined || at_most.si < BURNS) return []
    const message = `${quote(at_most.text)} would let people go where the gas burns.`
    const hint = '100 %LEL is where it burns; write the limit of the site'
    return [finding(['site', 'gas', 'limits', n, 'at_most'], 'burns', message, hint)]
  })
}

function lintBounds(limit: GasLimit, path: Path): Finding[] {
  const { at_least, at_most } = limit
  const id = [...path, 'id']
  if (limit.gas !== 'oxygen') {
    const found: Finding[] = []
    if (at_least !== undefined) {
      const message = `${quote(limit.id)} asks for at least some ${named(limit.gas)}.`
      found.push(finding([...path, 'at_least'], 'wrong-bound', message, 'delete at_least; write at_most'))
    }
    if (at_most === undefined) {
      found.push(finding(id, 'no-bound', `${quote(limit.id)} has no at_most, so any figure would pass.`))
    }
    return found
  }
  const isPartial = at_least === undefined || at_most === undefined
  if (limit.place === 'breathing_zone' && isPartial) {
    const message = `${quote(limit.id)} is for oxygen where people breathe and needs both at_least and at_most.`
    return [finding(id, 'no-bound', message)]
  }
  if (at_least === undefined && at_most === undefined) {
    const message = `${quote(limit.id)} has neither at_least nor at_most, so any figure would pass.`
    return [finding(id, 'no-bound', message)]
  }
  if (at_least === undefined || at_most === undefined || at_least.si < at_most.si) return []
  const message = `at_least is ${quote(at_least.text)}, not below at_most, which is ${quote(at_most.text)}.`
  return [finding([...path, 'at_least'], 'wrong-order', message)]
}

function named(gas: GasLimit['gas']): string {
  if (gas === 'flammable_in_inert') return 'flammable gas in inert gas'
  return gas === 'flammable' ? 'flammable gas' : gas.replace('_', ' ')
}
