// One expression, from its text to something that can be worked out: read, walked, its kinds checked, in that order.
// Unknown is told apart before anything is worked out: as soon as one name it refers to, in whatever branch, has no
// value, the whole of it is unknown (decision 8).
import {
  type Environment,
  TypeError as KindError,
  type ParseError,
  type ParseResult,
} from '@marcbachmann/cel-js'
import { addComputations, Refused } from './computation-run.ts'
import { explainParse, explainTypes } from './explain.ts'
import { language, MachineRecord } from './language.ts'
import { catchingFaults, fromValue, type Measured } from './measured.ts'
import { type RuleTerm, termOf } from './terms.ts'
import { typeOfName } from './type-names.ts'
import { type Range, type RuleRefusal, type RuleResult, refusalAt, type Scope, type Values } from './types.ts'
import { visit } from './walk.ts'
import type { Walk } from './walk-names.ts'

export type Outcome =
  | { readonly is: 'known'; readonly value: boolean | Measured }
  /** Each reason in a clause, about a name or about what could not be worked out. */
  | { readonly is: 'unknown'; readonly because: readonly string[] }

export interface Expression {
  readonly text: string
  /** Every name it refers to, in whatever branch, in alphabetical order. */
  readonly names: readonly string[]
  /** Type in the expression language: bool, or a kind. */
  readonly type: string
  /** Nodes; each is worked out once at most, as nothing loops. */
  readonly size: number
  /** What it asks, for telling it in words; a figure is only named. */
  term(): RuleTerm
  work(values: Values): Outcome
}

/** Longer than any line of a procedure may be. */
const MAX_LENGTH = 600

export function compileExpression(text: string, scope: Scope): RuleResult<Expression> {
  const whole: Range = { start: 0, end: text.length }
  const refused = (error: RuleRefusal) => ({ ok: false, error }) as const
  if (text.trim() === '') return refused(refusalAt(whole, 'rule', 'There is no rule here.'))
  if (text.length > MAX_LENGTH) return refused(refusalAt(whole, 'rule', 'The rule is too long to be read.'))
  const remark = remarkIn(text)
  if (remark !== null) return refused(remark)
  const parsed = parse(environment(scope), text)
  if (!parsed.ok) return parsed
  const walk: Walk = {
    text,
    scope,
    names: new Set(),
    notUnknown: new Set(),
    size: 0,
    visit: (node, position) => visit(walk, node, position),
  }
  const refusal = visit(walk, parsed.value.ast)
  if (refusal !== null) return refused(refusal)
  const checked = parsed.value.check()
  if (!checked.valid) return refused(typeRefusal(text, checked.error))
  const names = [...walk.names].sort()
  return {
    ok: true,
    value: {
      text,
      names,
      type: checked.type ?? '',
      size: walk.size,
      term: () => termOf(parsed.value.ast),
      work: (values) => work(parsed.value, { names, notUnknown: walk.notUnknown, scope }, values),
    },
  }
}

/** A remark (`// ...`) could hide half of a rule from a reader. */
function remarkIn(text: string): RuleRefusal | null {
  const start = text.replace(/"[^"]*"|'[^']*'/g, (quoted) => ' '.repeat(quoted.length)).indexOf('//')
  if (start < 0) return null
  const range = { start, end: text.length }
  return refusalAt(range, 'rule-word', 'A rule holds no remarks.', 'put the remark in the YAML behind a #')
}

/** Kept as long as the scope is: one scope serves many expressions in tests and in checks. */
const built = new WeakMap<Scope, Environment>()

function environment(scope: Scope): Environment {
  const known = built.get(scope)
  if (known !== undefined) return known
  const env = language()
  if (scope.computations.size > 0) addComputations(env, scope.computations)
  for (const [name, type] of scope.names)
    if (!name.startsWith('machine.')) env.registerVariable(name, typeOfName(type))
  built.set(scope, env)
  return env
}

function parse(env: Environment, text: string): RuleResult<ParseResult> {
  try {
    return { ok: true, value: env.parse(text) }
  } catch (error) {
    return { ok: false, error: explainParse(text, error as ParseError) }
  }
}

function typeRefusal(text: string, error: unknown): RuleRefusal {
  if (error instanceof Refused) return error.refusal
  if (error instanceof KindError) return explainTypes(text, error)
  throw error
}

interface Referring {
  readonly names: readonly string[]
  readonly notUnknown: ReadonlySet<string>
  readonly scope: Scope
}

function work(parsed: ParseResult, { names, notUnknown, scope }: Referring, values: Values): Outcome {
  const because: string[] = []
  const context: Record<string, unknown> = Object.create(null)
  const facts: Record<string, unknown> = {}
  for (const name of names) {
    const value = values.get(name)
    const taken = value === undefined ? null : fromValue(value)
    if (taken === null) because.push(`${name} is not known`)
    else if (notUnknown.has(name) && taken === unknownWordOf(scope, name))
      because.push(`${name} is on ${taken}`)
    else if (!isOfType(scope, name, taken))
      throw new Error(`the value of ${name} is of another kind than its name`)
    else if (name.startsWith('machine.')) facts[name.slice('machine.'.length)] = taken
    else context[name] = taken
  }
  if (because.length > 0) return { is: 'unknown', because }
  context.machine = new MachineRecord(facts)
  const outcome = catchingFaults(() => parsed(context) as boolean | Measured)
  return 'faults' in outcome
    ? { is: 'unknown', because: outcome.faults }
    : { is: 'known', value: outcome.value }
}

function unknownWordOf(scope: Scope, name: string): string | undefined {
  const type = scope.names.get(name)
  return type?.is === 'word' ? type.unknownWord : undefined
}

function isOfType(scope: Scope, name: string, taken: Measured | readonly Measured[] | string): boolean {
  const type = scope.names.get(name)
  if (type === undefined) return false
  if (typeof taken === 'string') return type.is === 'word' && type.words.includes(taken)
  if (type.is === 'word') return false
  return Array.isArray(taken)
    ? type.is === 'list' && taken.every((one: Measured) => one.of === type.of)
    : type.is === 'one' && (taken as Measured).of === type.of
}
