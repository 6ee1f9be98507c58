// Numbers that were held against one noted before: each stands only as long as that one does, whatever hold point it was keyed at.
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { isSpelledAlike } from './evidence-numbers.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf } from './gate.ts'
import { fallsWith } from './lapse.ts'
import type { State } from './state.ts'
import { shownAfter, type TakenBack } from './voiding.ts'

/** A line that stands, by where it was keyed. */
export interface LineAt {
  readonly gate: GateStep
  readonly key: string
}

/** The name of what is noted, or held against, at the line: each point and each person has its own. */
function nameAt({ gate, key }: LineAt, of: 'notes' | 'same_as'): string | null {
  const evidence = evidenceByKey(gate, key)
  if (evidence?.kind !== 'locks' && evidence?.kind !== 'numbers') return null
  const name = evidence[of]
  return name === undefined ? null : name + key.slice(evidence.id.length)
}

/**
 * What was held against these lines, and against what was held against those: of whatever order they were keyed in, as a number may
 * have been noted once more since.
 */
export function heldTo(defs: Definitions, state: State, lines: readonly LineAt[]): LineAt[] {
  const all = gatesOf(defs).flatMap((gate) =>
    Object.keys(gateState(state, gate.id).given).map((key) => ({ gate, key })),
  )
  const isIn = (list: readonly LineAt[], { gate, key }: LineAt) =>
    list.some((one) => one.gate.id === gate.id && one.key === key)
  const found: LineAt[] = []
  for (let last = lines; last.length > 0; ) {
    const names = last.flatMap((line) => nameAt(line, 'notes') ?? [])
    last = all.filter((line) => {
      const name = nameAt(line, 'same_as')
      return name !== null && names.includes(name) && !isIn(lines, line) && !isIn(found, line)
    })
    found.push(...last)
  }
  return found
}

/** The same line as one that is taken back. */
export function takenBackAt(state: State, { gate, key }: LineAt): TakenBack {
  const { given, begun } = gateState(state, gate.id)
  const seq = given[key]?.seq ?? begun[key]?.seq ?? Number.NaN
  return { gate, evidence: evidenceByKey(gate, key), seq }
}

/** Hold points that fall when another number is noted at the line than what was held against it. */
export function closedByNoting(defs: Definitions, state: State, line: LineAt, number: string): Body[] {
  const held = heldTo(defs, state, [line]).filter(
    ({ gate, key }) => !isSpelledAlike(gateState(state, gate.id).given[key]?.shown ?? '', number),
  )
  const taken = held.map((one) => takenBackAt(state, one))
  return gatesOf(defs).flatMap((gate): Body[] => {
    const own = held.flatMap((one) => (one.gate.id === gate.id ? [one.key] : []))
    const keys = [...own, ...taken.flatMap((one) => shownAfter(defs, state, gate, one))]
    if (keys.length === 0) return []
    const why = `${number} is noted now, and another number was held against it before`
    return [
      {
        type: 'gate.closed',
        step: gate.id,
        cause: 'corrected',
        items: fallsWith(defs, state, gate, keys),
        why,
      },
    ]
  })
}
