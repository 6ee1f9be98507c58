// A `when` rule: an expression in CEL (Common Expression Language) over the outcomes of earlier steps.
// Only comparison and logic are let through: nothing that loops, matches patterns, reads a clock or leaves the rule.
import { type ASTNode, Environment } from '@marcbachmann/cel-js'
import { ok, type Result, refuse } from '../lib/result.ts'

/** Outcome of a rule. Unknown is not a value: it is told apart so that `when.unknown` decides, never the evaluator. */
export type RuleOutcome = 'true' | 'false' | 'unknown'

export interface CompiledRule {
  readonly text: string
  /** Names of the steps the rule refers to. */
  readonly names: readonly string[]
  /** Unknown as soon as any name it refers to, in whatever branch, has no value. */
  evaluate(values: ReadonlyMap<string, string>): RuleOutcome
}

const ALLOWED = new Set(['==', '!=', '&&', '||', '!_', 'in', 'list', 'value', 'id', '?:'])
const LIMITS = { maxAstNodes: 200, maxDepth: 20, maxListElements: 50, maxMapEntries: 1, maxCallArguments: 1 }

/** Compiles a rule over string-valued steps. Refuses, in one sentence, what is not a rule or names no earlier step. */
export function compileRule(text: string, variables: readonly string[]): Result<CompiledRule> {
  const env = new Environment({ limits: LIMITS })
  for (const name of variables) env.registerVariable(name, 'string')
  const checked = env.check(text)
  if (!checked.valid)
    return refuse('rule', `The rule does not hold together: ${firstLine(checked.error?.message)}.`)
  if (checked.type !== 'bool')
    return refuse('rule-type', `The rule gives a ${checked.type}, and a rule must be true or false.`)
  const parsed = env.parse(text)
  const names = new Set<string>()
  const forbidden = walk(parsed.ast, names)
  if (forbidden !== null)
    return refuse(
      'rule-word',
      `A rule cannot use ${forbidden}; it may compare with == and !=, and join with && and ||.`,
    )
  if (names.size === 0)
    return refuse('rule-constant', 'The rule refers to no step, so it could never change its mind.')
  return ok({ text, names: [...names].sort(), evaluate: (values) => evaluate(parsed, [...names], values) })
}

function evaluate(
  parsed: (context: Record<string, string>) => unknown,
  names: readonly string[],
  values: ReadonlyMap<string, string>,
): RuleOutcome {
  const context: Record<string, string> = {}
  for (const name of names) {
    const value = values.get(name)
    if (value === undefined) return 'unknown'
    context[name] = value
  }
  const outcome = parsed(context)
  return outcome === true ? 'true' : outcome === false ? 'false' : 'unknown'
}

function walk(node: ASTNode, names: Set<string>): string | null {
  if (node.op === 'call' || node.op === 'rcall') return `${node.args[0]}()`
  if (!ALLOWED.has(node.op)) return node.op
  if (node.op === 'id') {
    names.add(node.args)
    return null
  }
  if (node.op === 'value') return null
  const children = Array.isArray(node.args) ? node.args : [node.args]
  for (const child of children as ASTNode[]) {
    const found = walk(child, names)
    if (found !== null) return found
  }
  return null
}

function firstLine(message: string | undefined): string {
  return (message ?? 'it cannot be read').split('\n')[0]?.trim() ?? ''
}
