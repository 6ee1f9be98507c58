// `compute("name", {"input": figure, ...}).output`: a named computation, checked as far as it can be before it is run:
// the name, every input by name and kind, and the output.
import type { ASTNode } from '@marcbachmann/cel-js'
import type { Computation, Parameter } from '../compute/computation.ts'
import { list, nearest, quote } from '../lib/wording.ts'
import { readWord } from './literal.ts'
import { type RuleRefusal, type RuleResult, refusalAt } from './types.ts'
import { raw, type Walk } from './walk-names.ts'

type Call = Extract<ASTNode, { op: 'call' }>
type Field = Extract<ASTNode, { op: '.' }>
export type Output = Pick<Parameter, 'name' | 'type'>

/** The output that a field of a call names; null when the node is no such field. */
export function computationField(w: Walk, node: Field): RuleResult<Output> | null {
  const [owner, field] = node.args
  if (owner.op !== 'call' || owner.args[0] !== 'compute') return null
  w.size += 1
  const called = checkComputation(w, owner)
  if (!called.ok) return called
  const output = called.value.outputs.find((one) => one.name === field)
  if (output !== undefined) return { ok: true, value: output }
  const names = called.value.outputs.map((one) => one.name)
  const near = nearest(field, names)
  const hint = near === undefined ? `it gives ${list(names)}` : `did you mean ${near}?`
  const say = `${quote(field)} is not what ${quote(called.value.name)} gives.`
  return {
    ok: false,
    error: refusalAt({ start: node.end - field.length, end: node.end }, 'unknown-output', say, hint),
  }
}

export function checkComputation(w: Walk, node: Call): RuleResult<Computation> {
  const [, [nameNode, inputs, ...more]] = node.args
  const no = (at: ASTNode, code: string, say: string, hint?: string) =>
    ({ ok: false, error: refusalAt(at, code, say, hint) }) as const
  const name = nameNode === undefined ? null : readWord(raw(w, nameNode))
  if (nameNode === undefined || name === null || inputs?.op !== 'map' || more.length > 0) {
    const say = 'compute() takes the name of a computation in quotes and its inputs by name.'
    return no(node, 'rule-type', say, 'as in: compute("rod-load", {"input": bore}).output')
  }
  w.size += 2
  const known = [...w.scope.computations.keys()]
  const computation = w.scope.computations.get(name)
  if (computation === undefined) {
    const near = nearest(name, known)
    const others = known.length === 0 ? 'there is none yet' : `known: ${list(known.slice(0, 12))}`
    const hint = near === undefined ? others : `did you mean ${near}?`
    return no(nameNode, 'unknown-computation', `${quote(name)} is not a computation.`, hint)
  }
  const refusal = checkInputs(w, computation, inputs)
  return refusal === null ? { ok: true, value: computation } : { ok: false, error: refusal }
}

function checkInputs(
  w: Walk,
  computation: Computation,
  inputs: Extract<ASTNode, { op: 'map' }>,
): RuleRefusal | null {
  const given = new Set<string>()
  for (const [key, value] of inputs.args) {
    w.size += 1
    const name = readWord(raw(w, key))
    const input = computation.inputs.find((one) => one.name === name)
    if (name === null || input === undefined) {
      const names = computation.inputs.map((one) => one.name)
      const near = name === null ? undefined : nearest(name, names)
      const hint = near === undefined ? `its inputs are ${list(names)}` : `did you mean ${near}?`
      const word = quote(raw(w, key).replace(/^["']|["']$/g, ''))
      return refusalAt(key, 'unknown-input', `${word} is not an input of ${quote(computation.name)}.`, hint)
    }
    if (given.has(name)) return refusalAt(key, 'repeated-input', `${quote(name)} is given twice.`)
    given.add(name)
    const refusal = checkInput(w, input, value)
    if (refusal !== null) return refusal
  }
  const missing = computation.inputs.filter((one) => one.optional !== true && !given.has(one.name))
  if (missing.length === 0) return null
  const names = missing.map((one) => quote(one.name))
  const say = `${quote(computation.name)} needs ${list(names)} as well.`
  return refusalAt(inputs, 'missing-input', say, missing[0]?.says)
}

function checkInput(w: Walk, { name, type }: Parameter, value: ASTNode): RuleRefusal | null {
  if (type.is !== 'word') return w.visit(value, type.is === 'quantities' ? 'list' : 'figure')
  w.size += 1
  const word = value.op === 'value' ? readWord(raw(w, value)) : null
  if (word !== null && type.words.includes(word)) return null
  const near = word === null ? undefined : nearest(word, type.words)
  const hint = near === undefined ? `it can be ${list(type.words, 'or')}` : `did you mean ${near}?`
  return refusalAt(value, 'unknown-outcome', `${quote(name)} is one of a few words in quotes.`, hint)
}
