// A derived value of a procedure: an expression of a stated kind over what is measured, seen, judged or on record.
import type { Value } from '../compute/computation.ts'
import { compileExpression } from './expression.ts'
import { Measured, toValue } from './measured.ts'
import { sayType, typeOf } from './type-names.ts'
import { type Operand, type RuleResult, refusalAt, type Scope, type Values } from './types.ts'

export type ValueOutcome =
  | { readonly is: 'known'; readonly value: Value }
  | { readonly is: 'unknown'; readonly because: readonly string[] }

export interface CompiledValue {
  readonly text: string
  readonly kind: Operand
  readonly names: readonly string[]
  readonly size: number
  work(values: Values): ValueOutcome
}

/** Compiles a value. Refuses what `compileRule` refuses, another kind than the one stated, and a figure from nowhere. */
export function compileValue(text: string, kind: Operand, scope: Scope): RuleResult<CompiledValue> {
  const compiled = compileExpression(text, scope)
  if (!compiled.ok) return compiled
  const { type, names, size, work } = compiled.value
  const range = { start: 0, end: text.length }
  if (type !== typeOf(kind)) {
    const say = `This comes to ${sayType(type)}, and its kind is said to be ${sayType(typeOf(kind))}.`
    return { ok: false, error: refusalAt(range, 'value-kind', say, 'correct one of the two') }
  }
  if (names.length === 0) {
    const say = 'The value refers to nothing that is measured or on record.'
    const hint =
      'a figure that is always the same belongs in the machine record or a limit book, with its source'
    return { ok: false, error: refusalAt(range, 'rule-constant', say, hint) }
  }
  return {
    ok: true,
    value: {
      text,
      kind,
      names,
      size,
      work: (values) => {
        const outcome = work(values)
        if (outcome.is === 'unknown') return outcome
        if (!(outcome.value instanceof Measured)) throw new Error(`the value ${text} came to no figure`)
        return { is: 'known', value: toValue(outcome.value) }
      },
    },
  }
}
