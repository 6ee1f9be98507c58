// Rules of a job as the search takes them. No invariant looks at what a rule says, and no gate is opened or waited for by one:
// a rule only says which step is next. So a step with a rule is taken as one that is always there, and that it was left out is
// as if it had been answered before (`hadBefore`); that it is to be done after all is a move of its own (`afterAll`). A gate
// cannot be answered without anybody noticing, so whether it is asked in its turn is left open at every moment (`rulings`).
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { CompiledRule } from '../rules/rule.ts'

/** Of a step that had a rule: it is done, or was answered before. */
const ALWAYS: CompiledRule = {
  text: 'it may be left out',
  names: [],
  size: 1,
  term: () => ({ is: 'all', of: [] }),
  evaluate: () => 'true',
  unknownBecause: () => [],
}

/** Of a gate with a condition: what it comes to is left open. */
const OPEN: CompiledRule = { ...ALWAYS, text: 'the gate is asked in its turn', evaluate: () => 'unknown' }

/** The step with its own condition, and those of the parts that it stands in, left open. */
export function freed(placed: PlacedStep): PlacedStep {
  if (!hasCondition(placed)) return placed
  const { when: _when, ...step } = placed.step
  if (placed.step.kind !== 'gate')
    return { ...placed, step: step as PlacedStep['step'], rule: ALWAYS, inside: [] }
  const when = { rule: OPEN.text, unknown: 'do' as const }
  return { ...placed, step: { ...placed.step, when }, rule: OPEN, inside: [] }
}

export function freedJob(whole: Definitions): Definitions {
  return { ...whole, steps: whole.steps.map(freed) }
}

export function hasCondition({ step, inside }: PlacedStep): boolean {
  return step.when !== undefined || inside.some((part) => part.step.when !== undefined)
}

/** A quiet step that stands for some with a condition. */
export function asLeftOut(placed: PlacedStep): PlacedStep {
  return { ...placed, rule: ALWAYS }
}

/** Whether the step may have been left out, and may turn out to be needed after all. */
export function mayBeLeftOut({ rule }: PlacedStep): boolean {
  return rule === ALWAYS
}

export function isOpenRule({ rule }: PlacedStep): boolean {
  return rule === OPEN
}
