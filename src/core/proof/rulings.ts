// What rules over figures are taken to come to. Figures are not searched by size, so such a rule may be true, false or
// unknown as soon as everything it rests on has been read, and is unknown until then: each is a state of its own.
import type { Engine } from '../job/admit.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { openPlace } from '../job/places.ts'
import type { State } from '../job/state.ts'
import type { RuleOutcome } from '../rules/rule.ts'
import { readsBehind, restsOnFigures, rulesOf } from './words.ts'

export interface Ruling {
  readonly key: string
  readonly outcomes: ReadonlyMap<string, RuleOutcome>
}

export const FIXED: Ruling = { key: '', outcomes: new Map() }

/** The engine under a ruling. A rule that has not been ruled on is unknown. */
export function withRuling(engine: Engine, ruling: Ruling): Engine {
  const { defs } = engine
  const figures = new Set(rulesOf(defs).filter((p) => restsOnFigures(defs, p)))
  if (figures.size === 0) return engine
  const ruled = (state: State, placed: PlacedStep): RuleOutcome | undefined => {
    if (!figures.has(placed)) return undefined
    return areRead(defs, state, placed) ? (ruling.outcomes.get(placed.id) ?? 'unknown') : 'unknown'
  }
  return { ...engine, defs: { ...defs, ruled } }
}

function areRead(defs: Definitions, state: State, placed: PlacedStep): boolean {
  return readsBehind(defs, placed).every(
    (id) => openPlace(asKind(stepById(defs, id), 'read'), state) === null,
  )
}

/** Every other ruling that one more look at the figures could give. */
export function rulings(
  defs: Definitions,
  state: State,
  ruling: Ruling,
): { readonly ruling: Ruling; readonly says: string }[] {
  const open = rulesOf(defs).filter((p) => restsOnFigures(defs, p) && areRead(defs, state, p))
  return open.flatMap((p) =>
    (['true', 'false', 'unknown'] as const).map((outcome) => {
      const outcomes = new Map([...ruling.outcomes, [p.id, outcome]])
      const key = [...outcomes]
        .map(([id, o]) => `${id}=${o}`)
        .sort()
        .join(' ')
      return { ruling: { key, outcomes }, says: `(the figures make ${p.rule?.text ?? p.id} ${outcome})` }
    }),
  )
}
