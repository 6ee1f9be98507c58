// What a name in a rule can stand for, and what a refused rule tells its author: a sentence and the place in the text.
import type { Computation, Value } from '../compute/computation.ts'
import type { Refusal, Result } from '../lib/result.ts'
import type { QuantityKind } from '../units/index.ts'

/** A kind of quantity, or a plain number without a unit. Each is a type of its own in the expression language. */
export type Operand = QuantityKind | 'number'

/** What a name stands for: one figure, several of one kind, or the outcome of a step as one of a few words. */
export type NameType =
  | { readonly is: 'one'; readonly of: Operand }
  | { readonly is: 'list'; readonly of: Operand }
  | {
      readonly is: 'word'
      readonly words: readonly string[]
      /** The word that says that it is not known (HOLD of a judge): no answer to any question but about itself. */
      readonly unknownWord?: string
    }

/** A name that is there and may not be used here, and why. */
export interface Barred {
  readonly code: string
  readonly say: string
  readonly hint?: string
}

/** Everything one expression may refer to. Facts of the machine are named `machine.` and the fact. */
export interface Scope {
  readonly names: ReadonlyMap<string, NameType>
  readonly barred: ReadonlyMap<string, Barred>
  readonly computations: ReadonlyMap<string, Computation>
}

/** Values by name. A name without a value is unknown; there is no other way to say so. */
export type Values = ReadonlyMap<string, Value>

/** Start and end offset in the text of the expression; the end is the first character behind. */
export interface Range {
  readonly start: number
  readonly end: number
}

export interface RuleRefusal extends Refusal {
  readonly range: Range
  readonly hint?: string
}

export type RuleResult<T> = Result<T, RuleRefusal>

export function refusalAt(range: Range, code: string, say: string, hint?: string): RuleRefusal {
  const { start, end } = range
  return hint === undefined
    ? { code, say, range: { start, end } }
    : { code, say, range: { start, end }, hint }
}
