// A figure while a rule is worked out: one class for each kind, since the expression language tells types by class.
// Nothing that is not finite is ever made: what would not be is a fault, and a fault makes the whole rule unknown.
import { EvaluationError } from '@marcbachmann/cel-js'
import type { Value } from '../compute/computation.ts'
import { fromSi, KIND_NAME, QUANTITY_KINDS } from '../units/index.ts'
import type { Operand } from './types.ts'

export class Measured {
  readonly of: Operand
  /** SI, or the number itself. */
  readonly si: number

  constructor(of: Operand, si: number) {
    this.of = of
    this.si = si
  }
}

export type MeasuredClass = new (of: Operand, si: number) => Measured

export const OPERANDS: readonly Operand[] = [...QUANTITY_KINDS, 'number']

/** The class of each kind. They differ in nothing but in being different. */
export const CLASS_OF: ReadonlyMap<Operand, MeasuredClass> = new Map(
  OPERANDS.map((of) => [of, class extends Measured {}]),
)

/** Something that could not be worked out; `message` is a clause that says what. */
export class Fault extends Error {}

/**
 * Faults of the evaluation under way. The language lets `true || x` be true though x fails; here a fault anywhere makes
 * the rule unknown, so each is written down as it happens. Evaluation is never entered twice at once.
 */
const raised: string[] = []

export function fault(say: string): Fault {
  raised.push(say)
  return new Fault(say)
}

/** A bug met on the way: the language would let `bug || true` be true, so it is kept and thrown when all is done. */
let bug: { readonly error: unknown } | null = null

/** Runs what is not the language's own, so that nothing it throws is lost. */
export function keepingBugs<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof Fault)) bug ??= { error }
    throw error
  }
}

/** Runs `work` and returns what it gives, or the faults that happened on the way, whatever became of them. */
export function catchingFaults<T>(
  work: () => T,
): { readonly value: T } | { readonly faults: readonly string[] } {
  raised.length = 0
  bug = null
  let value: T | undefined
  try {
    value = work()
  } catch (error) {
    // What the language itself could not work out is unknown; what came from a fault is among the raised.
    if (raised.length === 0 && error instanceof EvaluationError) raised.push('it cannot be worked out')
    if (raised.length === 0) bug ??= { error }
  }
  const faults = [...raised]
  raised.length = 0
  if (bug !== null) throw bug.error
  return faults.length > 0 ? { faults } : { value: value as T }
}

const NEVER_BELOW_ZERO: readonly Operand[] = ['temperature', 'pressure-absolute']

function isSound(of: Operand, si: number): boolean {
  return Number.isFinite(si) && (si >= 0 || !NEVER_BELOW_ZERO.includes(of))
}

/** A figure of a kind; a fault if it is not finite, or below the zero of a scale that has nothing below. */
export function made(of: Operand, si: number): Measured {
  const name = of === 'number' ? 'number' : KIND_NAME[of]
  if (!Number.isFinite(si)) throw fault(`the ${name} cannot be worked out (division by zero, or too large)`)
  if (!isSound(of, si)) throw fault(`the ${name} comes out below the zero of its scale`)
  const Class = CLASS_OF.get(of)
  if (Class === undefined) throw new Error(`no class for ${of}`)
  // Minus zero is a zero with a history nobody measured.
  return new Class(of, si === 0 ? 0 : si)
}

/** As the language sees a value. A figure that cannot be (not finite, below absolute zero) gives null: it is unknown. */
export function fromValue(value: Value): Measured | Measured[] | string | null {
  const one = (of: Operand, si: number) => (isSound(of, si) ? made(of, si) : null)
  switch (value.is) {
    case 'quantity':
      return one(value.quantity.kind, value.quantity.si)
    case 'number':
      return one('number', value.number)
    case 'word':
      return value.word
    case 'quantities': {
      const all = value.quantities.map((q) => one(q.kind, q.si)).filter((m) => m !== null)
      return all.length === value.quantities.length && all.length > 0 ? all : null
    }
  }
}

export function toValue(measured: Measured): Value {
  const { of, si } = measured
  return of === 'number' ? { is: 'number', number: si } : { is: 'quantity', quantity: fromSi(of, si) }
}
