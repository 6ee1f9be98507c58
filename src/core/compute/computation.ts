// A named computation as procedures, the command line and `why` share it: typed inputs and outputs, the arithmetic step
// by step, and where it comes from. The functions themselves are free and pure; this is only how they are offered.
import type { Result } from '../lib/result.ts'
import type { Quantity, QuantityKind } from '../units/index.ts'

export type Value =
  | { readonly is: 'quantity'; readonly quantity: Quantity }
  | { readonly is: 'quantities'; readonly quantities: readonly Quantity[] }
  | { readonly is: 'number'; readonly number: number }
  | { readonly is: 'word'; readonly word: string }

export interface Parameter {
  /** Small letters and underscores; the key on the command line and in procedures. */
  readonly name: string
  readonly says: string
  readonly type:
    | {
        readonly is: 'quantity'
        readonly kind: QuantityKind
        readonly unit: string
        readonly signed?: boolean
      }
    | {
        readonly is: 'quantities'
        readonly kind: QuantityKind
        readonly unit: string
        readonly least: number
      }
    | { readonly is: 'number'; readonly whole?: boolean; readonly least?: number; readonly most?: number }
    | { readonly is: 'word'; readonly words: readonly string[] }
  /** Left out only where the computation says what it does without it. */
  readonly optional?: boolean
}

/** One line of the arithmetic: `Fc = Pd Ahe - Ps Ace`, then the same with its figures, then what it comes to. */
export interface TraceStep {
  readonly says: string
  readonly formula: string
  readonly worked: string
}

export interface Computed {
  readonly outputs: Readonly<Record<string, Value>>
  readonly trace: readonly TraceStep[]
  /** What a careful engineer would say beside the figure; never left out when true. */
  readonly warnings: readonly string[]
}

export interface Computation {
  /** Trade words with dashes, for example `rod-load`. */
  readonly name: string
  readonly title: string
  readonly inputs: readonly Parameter[]
  readonly outputs: readonly Parameter[]
  /** Title, edition, page or clause; or "common practice, no source". */
  readonly sources: readonly string[]
  /** In words: for which sizes, gases, arrangements it holds. */
  readonly validity: string
  /** Refuses what is missing, out of range or contradictory. Never gives a figure that is not finite. */
  readonly run: (inputs: Readonly<Record<string, Value>>) => Result<Computed>
}
