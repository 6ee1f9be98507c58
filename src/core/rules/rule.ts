// A `when` rule: an expression in CEL (Common Expression Language) over what earlier steps came to. It is true, false or
// unknown, and what unknown does is always said beside it (`when.unknown`).
import { compileExpression } from './expression.ts'
import type { RuleTerm } from './terms.ts'
import { sayType } from './type-names.ts'
import { type RuleResult, refusalAt, type Scope, type Values } from './types.ts'

/** Outcome of a rule. Unknown is not a value: it is told apart so that `when.unknown` decides, never the evaluator. */
export type RuleOutcome = 'true' | 'false' | 'unknown'

export interface CompiledRule {
  readonly text: string
  /** Names the rule refers to: steps, values, and facts of the machine (`machine.nominal`). */
  readonly names: readonly string[]
  readonly size: number
  /** What it asks, as far as it can be told in words. */
  term(): RuleTerm
  /** Unknown as soon as any name it refers to, in whatever branch, has no value. */
  evaluate(values: Values): RuleOutcome
  /** Why it is unknown, in clauses; nothing when it is known. */
  unknownBecause(values: Values): readonly string[]
}

/**
 * Compiles a rule over the names of a scope. Refuses, in one sentence and with the place in the text, what is not a rule,
 * names nothing that is known then, mixes kinds, or could never change its mind.
 */
export function compileRule(text: string, scope: Scope): RuleResult<CompiledRule> {
  const compiled = compileExpression(text, scope)
  if (!compiled.ok) return compiled
  const expression = compiled.value
  const range = { start: 0, end: text.length }
  if (expression.type !== 'bool') {
    const say = `The rule comes to ${sayType(expression.type)}, and a rule must be true or false.`
    return { ok: false, error: refusalAt(range, 'rule-type', say, 'compare it with something: <, <=, >, >=') }
  }
  if (expression.names.length === 0) {
    const say = 'The rule refers to no step, so it could never change its mind.'
    return { ok: false, error: refusalAt(range, 'rule-constant', say) }
  }
  const { names, size, term } = expression
  return {
    ok: true,
    value: {
      text,
      names,
      size,
      term,
      evaluate: (values) => {
        const outcome = expression.work(values)
        if (outcome.is === 'unknown') return 'unknown'
        return outcome.value === true ? 'true' : outcome.value === false ? 'false' : 'unknown'
      },
      unknownBecause: (values) => {
        const outcome = expression.work(values)
        return outcome.is === 'unknown' ? outcome.because : []
      },
    },
  }
}
