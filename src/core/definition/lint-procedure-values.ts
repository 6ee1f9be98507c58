// Cross-checks of the values of a procedure, and of the rules that use them: everything the expression language refuses.
import type { Computation } from '../compute/computation.ts'
import { list, quote } from '../lib/wording.ts'
import { BROKEN, compileRuleAt, type ProcedureValues } from '../rules/procedure-values.ts'
import { RESERVED_NAMES } from '../rules/reserved.ts'
import type { CompiledRule } from '../rules/rule.ts'
import type { RuleRefusal } from '../rules/types.ts'
import { findUnit, unitNamed, unitsOf } from '../units/index.ts'
import { type Finding, finding, type Path, repeatedIds } from './lint-common.ts'
import type { Procedure } from './procedure.ts'

/** Findings of the `values` list. */
export function lintValues(procedure: Procedure, { refused }: ProcedureValues): Finding[] {
  const listed = procedure.values ?? []
  return [
    ...repeatedIds(['values'], listed, 'value'),
    ...listed.flatMap((value, index) => [
      ...lintId(procedure, value.id, ['values', index, 'id']),
      ...lintUnit(value, ['values', index, 'unit']),
    ]),
    ...refused.flatMap(({ index, refusal }) =>
      asFinding(['values', index, 'is'], refusal, 'as in: max(bore) - machine.nominal'),
    ),
  ]
}

/** The rule of step `index`, or why it does not hold. */
export function lintRule(
  procedure: Procedure,
  index: number,
  rule: string,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): { readonly rule: CompiledRule } | { readonly found: Finding[] } {
  const compiled = compileRuleAt(procedure, index, rule, values, computations)
  if (compiled.ok) return { rule: compiled.value }
  const word = bareOutcome(rule, compiled.error)
  if (word !== undefined) {
    const hint = `put an outcome in double quotes: "${word}"`
    return { found: asFinding(['steps', index, 'when', 'rule'], { ...compiled.error, hint }, HINT) }
  }
  return { found: asFinding(['steps', index, 'when', 'rule'], compiled.error, HINT) }
}

/** The unknown word behind == or !=, where an outcome stands and no step does. */
function bareOutcome(rule: string, { code, range }: RuleRefusal): string | undefined {
  const before = rule.slice(0, range.start)
  if (code !== 'unknown-step' || !/[^"'\s]\s*[=!]=\s*$/.test(before)) return undefined
  return rule.slice(range.start, range.end)
}

/** What uses a value that does not hold is not blamed for it. */
function asFinding(path: Path, { code, say, hint, range }: RuleRefusal, usual: string): Finding[] {
  if (code === BROKEN) return []
  const general = GENERAL.includes(code) ? usual : undefined
  return [{ ...finding(path, code, say, hint ?? general), within: range }]
}

/** For what is no rule at all, an example helps; for kinds that do not go together it would only distract. */
const GENERAL = ['rule', 'rule-word', 'rule-constant']
const HINT = 'a rule compares earlier steps, as in: strip == "present"'

function lintId(procedure: Procedure, id: string, path: Path): Finding[] {
  if (RESERVED_NAMES.has(id)) {
    const message = `${quote(id)} is a word that rules keep for themselves.`
    return [finding(path, 'reserved-word', message, 'choose another id')]
  }
  if (!procedure.steps.some((step) => step.id === id)) return []
  const message = `${quote(id)} is already the id of a step, and a rule could mean either.`
  return [finding(path, 'repeated-id', message, 'choose another id')]
}

function lintUnit(value: NonNullable<Procedure['values']>[number], path: Path): Finding[] {
  if (value.unit === undefined) return []
  if (value.kind === 'number') {
    const message = `${quote(value.id)} is a number, and a number has no unit.`
    return [finding(path, 'wrong-unit', message, 'delete unit, or say of which kind the value is')]
  }
  if (unitNamed(value.unit)?.kind === value.kind) return []
  const near = findUnit(value.unit, value.kind)
  const known = list(unitsOf(value.kind).map((unit) => unit.symbol))
  const message = `${quote(value.unit)} is not a unit of the kind ${value.kind}.`
  return [
    finding(
      path,
      'wrong-unit',
      message,
      near === undefined ? `its units are ${known}` : `did you mean ${near.symbol}?`,
    ),
  ]
}
