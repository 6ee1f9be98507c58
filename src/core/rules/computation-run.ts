// How the expression language comes to run a named computation: `compute` as a macro of the library, whose inputs are
// checked one by one and whose result has a type of its own, with the outputs as fields.
import type { ASTNode, Environment } from '@marcbachmann/cel-js'
import type { Computation, Parameter, Value } from '../compute/computation.ts'
import { quote } from '../lib/wording.ts'
import { fault, fromValue, keepingBugs, Measured, toValue } from './measured.ts'
import { sayType, typeOf } from './type-names.ts'
import { type RuleRefusal, refusalAt } from './types.ts'

// What a macro of the library is handed and hands back (README of the library, "Custom macros").
interface Checked {
  readonly name: string
}
interface Checker {
  check(node: ASTNode, context: unknown): Checked
  getType(name: string): Checked
}
interface Runner {
  run(node: ASTNode, context: unknown): unknown
}

/** Thrown while types are checked, and caught where the check was asked for. */
export class Refused extends Error {
  readonly refusal: RuleRefusal

  constructor(refusal: RuleRefusal) {
    super(refusal.say)
    this.refusal = refusal
  }
}

type Entries = readonly { readonly input: Parameter; readonly node: ASTNode }[]

/** Adds `compute` with the computations given. Names and keys have been looked at by the walk before types are checked. */
export function addComputations(env: Environment, computations: ReadonlyMap<string, Computation>): void {
  const results = new Map<string, { readonly type: string; readonly Class: new (all: object) => object }>()
  for (const { name, outputs } of computations.values()) {
    const type = `computed_${name.replaceAll('-', '_')}`
    const Class = class {
      constructor(all: object) {
        Object.assign(this, all)
      }
    }
    const fields = Object.fromEntries(outputs.map((output) => [output.name, typeOfParameter(output)]))
    env.registerType(type, { ctor: Class, fields })
    results.set(name, { type, Class })
  }
  env.registerFunction('compute(ast, ast): dyn', ({ args: [name, inputs] }: { args: [ASTNode, ASTNode] }) => {
    const called = name.op === 'value' ? computations.get(String(name.args)) : undefined
    const result = called === undefined ? undefined : results.get(called.name)
    return {
      async: false,
      typeCheck(checker: Checker, _macro: unknown, context: unknown) {
        if (called === undefined || result === undefined) throw new Error('compute was not looked at')
        for (const { input, node } of entriesOf(called, inputs)) checkType(checker, context, input, node)
        return checker.getType(result.type)
      },
      evaluate(runner: Runner, _macro: unknown, context: unknown) {
        if (called === undefined || result === undefined) throw new Error('compute was not looked at')
        const taken = entriesOf(called, inputs).map(
          ({ input, node }) => [input.name, asValue(runner.run(node, context))] as const,
        )
        return new result.Class(keepingBugs(() => run(called, Object.fromEntries(taken))))
      },
    }
  })
}

function entriesOf(computation: Computation, inputs: ASTNode): Entries {
  if (inputs.op !== 'map') return []
  return inputs.args.flatMap(([key, node]) => {
    const input = computation.inputs.find((one) => key.op === 'value' && one.name === key.args)
    return input === undefined ? [] : [{ input, node }]
  })
}

function checkType(checker: Checker, context: unknown, input: Parameter, node: ASTNode): void {
  const wanted = typeOfParameter(input)
  const found = checker.check(node, context).name
  if (found === wanted) return
  const say = `${quote(input.name)} takes ${sayType(wanted)}, and this is ${sayType(found)}.`
  throw new Refused(refusalAt(node, 'rule-type', say, input.says))
}

function asValue(taken: unknown): Value {
  if (taken instanceof Measured) return toValue(taken)
  if (typeof taken === 'string') return { is: 'word', word: taken }
  const quantities = (taken as Measured[]).map(toValue)
  return {
    is: 'quantities',
    quantities: quantities.flatMap((v) => (v.is === 'quantity' ? [v.quantity] : [])),
  }
}

function run(computation: Computation, inputs: Readonly<Record<string, Value>>): Record<string, unknown> {
  const done = computation.run(inputs)
  if (!done.ok) throw fault(done.error.say)
  return Object.fromEntries(
    computation.outputs.map(({ name }) => {
      const value = done.value.outputs[name]
      const given = value === undefined ? null : fromValue(value)
      if (given === null) throw fault(`${computation.name} gave no ${name}`)
      return [name, given]
    }),
  )
}

/** The type of an input or output in the expression language. */
export function typeOfParameter({ type }: Pick<Parameter, 'type'>): string {
  switch (type.is) {
    case 'quantity':
      return typeOf(type.kind)
    case 'quantities':
      return `list<${typeOf(type.kind)}>`
    case 'number':
      return 'number'
    case 'word':
      return 'string'
  }
}
