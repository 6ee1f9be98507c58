// What the library found wrong, in the author's terms and at the author's column.
import type { ASTNode, TypeError as KindError, ParseError } from '@marcbachmann/cel-js'
import { quote } from '../lib/wording.ts'
import { takesOf, writerOf } from './functions.ts'
import { writtenUnits } from './literal.ts'
import { type ArithmeticOp, COMPARE_OPS } from './operators.ts'
import { reasonAgainst } from './refused-operations.ts'
import { spelledOut } from './spelled-out.ts'
import { operandOf, sayType } from './type-names.ts'
import { type Operand, type Range, type RuleRefusal, refusalAt } from './types.ts'
import { isYesOrNo } from './walk-names.ts'

/** Text that is no expression at all. */
export function explainParse(text: string, error: ParseError): RuleRefusal {
  const range = clamp(text, error.range)
  const word = text.slice(range.start, range.end)
  const no = (say: string, hint?: string) => refusalAt(range, 'rule', say, hint)
  const meant = spelledOut(text, range)
  switch (error.code) {
    case 'unterminated_string':
    case 'unterminated_triple_quoted_string':
    case 'newline_in_string':
      return no('A quote is opened here and not closed.')
    case 'reserved_identifier':
      return no(`${quote(word)} is a word that rules keep for themselves.`)
    case 'limit_exceeded':
      return no('The rule is too long or too deep to be read.', 'work parts of it out as values with names')
    case 'invalid_macro_argument':
      return no('A rule cannot go through a list.', 'use min, max, mean, spread or count')
    case 'unexpected_character':
    case 'unexpected_token':
    case 'expected_token':
      if (range.start >= text.trimEnd().length) return no('The rule stops before it is finished.')
      if (meant !== undefined)
        return refusalAt(meant.range, 'rule', notExpected(text, meant.range), meant.hint)
      if (word === '=') return no("A single '=' compares nothing.", 'write == for equal')
      return no(notExpected(text, range))
    default:
      return no(`${quote(word === '' ? text : word)} cannot be read as part of a rule.`)
  }
}

function notExpected(text: string, range: Range): string {
  return `${quote(text.slice(range.start, range.end))} is not expected here.`
}

/** Text whose kinds do not go together. */
export function explainTypes(text: string, error: KindError): RuleRefusal {
  const range = clamp(text, error.range)
  const no = (say: string, hint?: string) => refusalAt(range, 'rule-type', say, hint)
  const found = typesIn(error.summary)
  switch (error.code) {
    case 'no_such_overload':
      return explainOperator(range, error)
    case 'no_matching_overload':
      return explainCall(range, error.node as ASTNode | undefined, found)
    case 'invalid_logical_operand':
      return refusalAt(
        culprit(error.node, range),
        'rule-type',
        `&& and || join comparisons, and one side is ${sayType(found[0] ?? '')}.`,
      )
    case 'invalid_condition_type':
      return no(`What stands before ? is a comparison, and this is ${sayType(found[0] ?? '')}.`)
    case 'incompatible_ternary_branches':
      return no(
        `The two ways of a ? : come to different kinds: ${sayType(found[0] ?? '')} and ${sayType(found[1] ?? '')}.`,
      )
    case 'heterogeneous_list_element':
      return no(
        `A list holds one kind, and this is ${sayType(found[1] ?? '')} behind ${sayType(found[0] ?? '')}.`,
      )
    default:
      return no('The kinds in this rule do not go together.')
  }
}

/** The types in quotes in a message of the library. */
function typesIn(summary: string): string[] {
  return [...summary.matchAll(/'([^']*)'/g)].map((match) => match[1] ?? '')
}

/** Of two sides of && or ||, the one that is no comparison. */
function culprit(node: unknown, range: Range): Range {
  const { op, args } = (node ?? {}) as Partial<ASTNode>
  if (op !== '&&' && op !== '||') return range
  return (args as ASTNode[]).find((side) => !isYesOrNo(side)) ?? range
}

/** Of two sides, the one that is a bare number in the text, if one is. */
function numberSide(node: unknown, range: Range): Range {
  const { args } = (node ?? {}) as Partial<ASTNode>
  return Array.isArray(args) ? ((args as ASTNode[]).find((side) => side.op === 'value') ?? range) : range
}

function clamp(text: string, range: Range | undefined): Range {
  const start = Math.min(Math.max(0, range?.start ?? 0), text.length)
  return { start, end: Math.min(Math.max(start, range?.end ?? text.length), text.length) }
}

function explainOperator(range: Range, error: KindError): RuleRefusal {
  const said = error.summary.replace(/^no such overload: /, '')
  const binary = /^(\S+(?:<\S+>)?) (\S+) (\S+)$/.exec(said)
  if (binary === null) {
    const [sign = '', type = ''] = [said.slice(0, 1), said.slice(1)]
    const say =
      sign === '!'
        ? `! turns a comparison round, and this is ${sayType(type)}.`
        : `There is no minus of ${sayType(type)}.`
    return refusalAt(range, 'rule-type', say)
  }
  const [, left = '', op = '', right = ''] = binary
  const [a, b] = [operandOf(left), operandOf(right)]
  const pair = `${sayType(left)} ${WORDS[op] ?? op} ${sayType(right)}`
  if (a === undefined || b === undefined) return refusalAt(range, 'rule-type', `Nothing is known as ${pair}.`)
  const compares = COMPARE_OPS.some((one) => one === op)
  if ((compares || op === '+' || op === '-') && (a === 'number') !== (b === 'number')) {
    const kind = a === 'number' ? b : a
    if (kind !== 'number') return bareNumber(numberSide(error.node, range), kind)
  }
  const why = compares ? undefined : reasonAgainst(a, op as ArithmeticOp, b)
  if (why !== undefined) return refusalAt(range, 'rule-type', `Refused: ${pair}; ${why}.`)
  if (compares) {
    const say = `Refused: ${pair}; only two of one kind are compared.`
    return refusalAt(range, 'rule-type', say, hintFor(a, b))
  }
  const adds = op === '+' || op === '-'
  const say = adds
    ? `Refused: ${pair}; only what is of one kind is added or taken away.`
    : `Refused: ${pair}; that is no kind of quantity known here.`
  return refusalAt(range, 'rule-type', say)
}

const WORDS: Readonly<Record<string, string>> = {
  '+': 'plus',
  '-': 'minus',
  '*': 'times',
  '/': 'divided by',
  '<': 'below',
  '>': 'above',
  '<=': 'at most',
  '>=': 'at least',
}

function bareNumber(range: Range, kind: Exclude<Operand, 'number'>): RuleRefusal {
  const say = `A bare number does not say of what, and ${sayType(kind.replaceAll('-', '_'))} has a unit.`
  const units = writtenUnits(kind)
  return refusalAt(
    range,
    'rule-type',
    say,
    `write it as ${writerOf(kind)}("1 ${units[0]}"): ${units.join(', ')}`,
  )
}

function hintFor(a: Operand, b: Operand): string | undefined {
  const pair = [a, b].sort().join(' ')
  return pair === 'pressure-absolute pressure-gauge'
    ? 'gauge and absolute are counted from different zeros'
    : undefined
}

function explainCall(range: Range, node: ASTNode | undefined, found: readonly string[]): RuleRefusal {
  const name = node?.op === 'call' ? node.args[0] : (found[0]?.split('(')[0] ?? '')
  const takes = takesOf(name)
  const given = /\((.*)\)$/.exec(found[0] ?? '')?.[1]?.split(/, (?![^<]*>)/) ?? []
  const said = given.length === 0 || given[0] === '' ? 'nothing' : given.map(sayType).join(' and ')
  const say = `${quote(name)} is given ${said}.`
  return refusalAt(range, 'rule-type', say, takes === undefined ? undefined : `it takes ${takes}`)
}
