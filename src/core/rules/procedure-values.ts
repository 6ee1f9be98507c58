// The `values` of a procedure, compiled in their order: each may use steps, facts of the machine and earlier values.
import type { Computation } from '../compute/computation.ts'
import type { Procedure } from '../definition/procedure.ts'
import { quote } from '../lib/wording.ts'
import { type CompiledRule, compileRule } from './rule.ts'
import { type NamedValue, scopeAt } from './scope.ts'
import type { Barred, Operand, RuleRefusal, RuleResult, Scope } from './types.ts'
import { type CompiledValue, compileValue } from './value.ts'

export interface ProcedureValue extends NamedValue {
  readonly title: string
  /** Unit it is shown in; without one, the first of its kind. */
  readonly unit: string | undefined
  readonly compiled: CompiledValue
  /** Ids of every step it rests on, through other values too. */
  readonly steps: readonly string[]
}

export interface ProcedureValues {
  readonly values: readonly ProcedureValue[]
  /** Ids of those that do not hold, so that what uses them is not blamed for it. */
  readonly broken: ReadonlySet<string>
  readonly refused: readonly { readonly index: number; readonly refusal: RuleRefusal }[]
}

/** Said of a name whose own expression was refused; the checks leave it out, as the cause is told in its place. */
export const BROKEN = 'broken-value'

export function compileValues(
  procedure: Procedure,
  computations: ReadonlyMap<string, Computation>,
): ProcedureValues {
  const values: ProcedureValue[] = []
  const broken = new Set<string>()
  const refused: { index: number; refusal: RuleRefusal }[] = []
  const listed = procedure.values ?? []
  listed.forEach((value, index) => {
    const later = listed.slice(index).map((one) => one.id)
    const scope = withBarred(
      scopeAt(procedure, procedure.steps.length, values, computations),
      [...broken].map((id) => [id, brokenName(id)] as const),
      later.map((id) => [id, notYet(id)] as const),
    )
    const compiled = compileValue(value.is, value.kind, scope)
    if (!compiled.ok) {
      broken.add(value.id)
      refused.push({ index, refusal: compiled.error })
      return
    }
    const steps = restsOn(procedure, values, compiled.value.names)
    values.push({
      id: value.id,
      title: value.title,
      unit: value.unit,
      type: { is: 'one', of: value.kind },
      compiled: compiled.value,
      steps,
      knownAfter: Math.max(-1, ...steps.map((id) => procedure.steps.findIndex((step) => step.id === id))),
    })
  })
  return { values, broken, refused }
}

/** Compiles the rule of step `index` over what is known before it. */
export function compileRuleAt(
  procedure: Procedure,
  index: number,
  rule: string,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): RuleResult<CompiledRule> {
  return compileRule(rule, knownAt(procedure, index, values, computations))
}

/** Compiles an expression of a stated kind that stands in step `index`, over what is known before it. */
export function compileValueAt(
  procedure: Procedure,
  index: number,
  is: string,
  kind: Operand,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): RuleResult<CompiledValue> {
  return compileValue(is, kind, knownAt(procedure, index, values, computations))
}

/** What an expression in step `index` may name. A value that does not hold itself is barred, so that its user is not blamed. */
function knownAt(
  procedure: Procedure,
  index: number,
  { values, broken }: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): Scope {
  const scope = scopeAt(procedure, index, values, computations)
  return withBarred(
    scope,
    [...broken].map((id) => [id, brokenName(id)] as const),
    [],
  )
}

/** Ids of the steps behind a list of names. Facts of the machine do not change while a job goes on. */
export function restsOn(
  procedure: Procedure,
  values: readonly Pick<ProcedureValue, 'id' | 'steps'>[],
  names: readonly string[],
): string[] {
  const steps = names.flatMap((name) => {
    if (procedure.steps.some((step) => step.id === name)) return [name]
    return values.find((value) => value.id === name)?.steps ?? []
  })
  return [...new Set(steps)]
}

function withBarred(scope: Scope, ...more: readonly (readonly (readonly [string, Barred])[])[]): Scope {
  const added = more.flat().filter(([id]) => !scope.names.has(id) && !scope.barred.has(id))
  return { ...scope, barred: new Map([...scope.barred, ...added]) }
}

function brokenName(id: string): Barred {
  return { code: BROKEN, say: `The value ${quote(id)} does not hold itself.` }
}

function notYet(id: string): Barred {
  return {
    code: 'used-too-early',
    say: `${quote(id)} does not stand before this value in the list.`,
    hint: 'a value uses values that stand before it',
  }
}
