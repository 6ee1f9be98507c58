// Goes over a parsed expression before anything else does and lets through only what is listed here: default deny.
// It collects the names referred to, in whatever branch, and says in the author's terms what is not let through.
import type { ASTNode } from '@marcbachmann/cel-js'
import { list, nearest, quote } from '../lib/wording.ts'
import { checkWords } from './check-words.ts'
import { checkComputation, computationField } from './computation-check.ts'
import { CONVERSIONS, FUNCTIONS, WRITTEN_AS } from './functions.ts'
import { readLiteral, readNumber, readWord, writtenUnits } from './literal.ts'
import { made } from './measured.ts'
import { calledNot } from './spelled-out.ts'
import { type RuleRefusal, refusalAt } from './types.ts'
import { factName, findName, isYesOrNo, type Position, raw, type Walk } from './walk-names.ts'

type Op = ASTNode['op']
const OF_FIGURES: readonly Op[] = ['+', '-', '*', '/', '<', '<=', '>', '>=']

const FORBIDDEN: Partial<Record<Op, string>> = {
  '%': 'a remainder (%)',
  '[]': 'a place in a list ([ ])',
  '[?]': 'a place in a list ([ ])',
  '.?': 'an optional part (.?)',
  map: 'a map ({ })',
}

export function visit(w: Walk, node: ASTNode, position: Position = 'figure'): RuleRefusal | null {
  w.size += 1
  switch (node.op) {
    case 'value':
      return visitConstant(w, node)
    case 'id':
      return visitName(w, node, node.args, position)
    case '.':
      return visitField(w, node, position)
    case 'call':
      return visitCall(w, node)
    case 'list':
      return visitList(w, node, position)
    case '==':
    case '!=':
    case 'in':
      return checkWords(w, node)
    case '!_':
    case '-_':
      return visit(w, node.args)
    case '&&':
    case '||':
    case '?:':
      return visitAll(w, node.args)
    case 'rcall':
      return forbidden(node, `.${node.args[0]}()`)
    default:
      if (OF_FIGURES.includes(node.op)) return visitFigures(w, node, node.args as ASTNode[])
      return forbidden(node, FORBIDDEN[node.op] ?? quote(node.op))
  }
}

export function visitAll(w: Walk, nodes: readonly ASTNode[], position?: Position): RuleRefusal | null {
  for (const node of nodes) {
    const refusal = visit(w, node, position)
    if (refusal !== null) return refusal
  }
  return null
}

/** The library puts true above false; here neither is a figure. */
function visitFigures(w: Walk, node: ASTNode, sides: readonly ASTNode[]): RuleRefusal | null {
  const answer = sides.find(isYesOrNo)
  if (answer === undefined) return visitAll(w, sides)
  const say = `A comparison comes to yes or no, and stands beside ${node.op} where a figure is needed.`
  return refusalAt(answer, 'rule-type', say, 'join comparisons with && or ||')
}

function forbidden(node: ASTNode, what: string): RuleRefusal {
  const say = `A rule cannot use ${what}; it compares, reckons with + - * /, joins with && || ! and calls the functions of the guide.`
  return refusalAt(node, 'rule-word', say)
}

function visitConstant(w: Walk, node: Extract<ASTNode, { op: 'value' }>): RuleRefusal | null {
  if (typeof node.args === 'string') {
    const say = `The text ${quote(node.args)} stands where a figure is needed.`
    return refusalAt(
      node,
      'rule-type',
      say,
      'words are only compared with the outcome of a step, with == or !=',
    )
  }
  if (typeof node.args === 'boolean' || node.args === null) {
    const say = `${quote(raw(w, node))} in a rule makes it no rule.`
    return refusalAt(node, 'rule-constant', say, 'compare something that is found out at the machine')
  }
  const number =
    typeof node.args === 'number' || typeof node.args === 'bigint' ? readNumber(raw(w, node)) : null
  if (number === null) {
    const say = `${quote(raw(w, node))} is not a plain number.`
    return refusalAt(node, 'rule-literal', say, 'write it out in plain figures, as in 0.5 or 12')
  }
  // The language knows whole and broken numbers apart (1 / 3 would be 0); a rule has one kind of number.
  ;(node as { args: unknown }).args = made('number', number)
  return null
}

/** A name that is not a word, where a figure or a list stands. */
export function visitName(w: Walk, node: ASTNode, name: string, position: Position): RuleRefusal | null {
  const refusal = findName(w, node, name)
  if (refusal !== null) return refusal
  const type = w.scope.names.get(name)
  if (type?.is === 'word') {
    const say = `${quote(name)} is a word, and stands where a figure or a comparison is needed.`
    return refusalAt(
      node,
      'rule-type',
      say,
      `a rule compares earlier steps, as in: ${name} == "${type.words[0]}"`,
    )
  }
  if (type?.is === 'list' && position !== 'list') {
    const say = `${quote(name)} is a reading at several places, and stands where one figure is needed.`
    return refusalAt(
      node,
      'rule-type',
      say,
      `take one of it, as in max(${name}), mean(${name}) or spread(${name})`,
    )
  }
  return null
}

function visitField(w: Walk, node: Extract<ASTNode, { op: '.' }>, position: Position): RuleRefusal | null {
  const fact = factName(node)
  if (fact !== null) return visitName(w, node, fact, position)
  const output = computationField(w, node)
  if (output === null) return forbidden(node, `.${node.args[1]}`)
  if (!output.ok) return output.error
  const { type, name } = output.value
  if (type.is === 'word')
    return refusalAt(node, 'rule-type', `${quote(name)} is a word, and stands where a figure is needed.`)
  if (type.is === 'quantities' && position !== 'list')
    return refusalAt(node, 'rule-type', `${quote(name)} is a list, and stands where one figure is needed.`)
  return null
}

function visitCall(w: Walk, node: Extract<ASTNode, { op: 'call' }>): RuleRefusal | null {
  const [name, args] = node.args
  const kind = WRITTEN_AS.get(name)
  if (kind !== undefined) {
    const [only] = args
    const text = args.length === 1 && only?.op === 'value' ? readWord(raw(w, only)) : null
    if (text === null || only === undefined) {
      const say = `${name}() takes one figure with its unit, written in quotes and nothing else.`
      return refusalAt(only ?? node, 'rule-literal', say, `as in ${name}("1 ${writtenUnits(kind)[0]}")`)
    }
    const read = readLiteral(kind, text)
    return read.ok ? null : refusalAt(only, 'rule-literal', read.error.say)
  }
  if (name === 'compute') {
    const called = checkComputation(w, node)
    if (!called.ok) return called.error
    const outputs = called.value.outputs.map((output) => output.name)
    return refusalAt(
      node,
      'rule-type',
      `compute(${quote(called.value.name)}) gives several figures, and one must be named.`,
      `write .${outputs[0]} behind it: ${list(outputs)}`,
    )
  }
  if (CONVERSIONS.some((one) => one.name === name)) return visitAll(w, args)
  const fn = FUNCTIONS.find((one) => one.name === name)
  if (fn === undefined) {
    const known = [...[...FUNCTIONS, ...CONVERSIONS].map((one) => one.name), ...WRITTEN_AS.keys(), 'compute']
    const refusal = forbidden(node, `${name}()`)
    const not = calledNot(name)
    if (not !== undefined) return { ...refusal, hint: not }
    const near = nearest(name, known)
    return near === undefined ? refusal : { ...refusal, hint: `did you mean ${near}?` }
  }
  return visitAll(w, args, args.length === 1 && fn.forms.includes('list') ? 'list' : 'figure')
}

function visitList(w: Walk, node: Extract<ASTNode, { op: 'list' }>, position: Position): RuleRefusal | null {
  if (position !== 'list')
    return refusalAt(node, 'rule-type', 'A list stands where one figure is needed.', 'as in max([a, b])')
  if (node.args.length === 0) return refusalAt(node, 'rule-type', 'The list is empty.')
  return visitAll(w, node.args)
}
