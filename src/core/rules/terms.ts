// What a rule asks, as far as it can be told in words: which outcomes of which names. Comparisons of figures are only named.
import type { ASTNode } from '@marcbachmann/cel-js'
import { factName } from './walk-names.ts'

export type RuleTerm =
  | { readonly is: 'all' | 'any'; readonly of: readonly RuleTerm[] }
  /** The name came to one of these words; `not`: to any other. */
  | { readonly is: 'word'; readonly name: string; readonly words: readonly string[]; readonly not: boolean }
  /** Something else that rests on these names. */
  | { readonly is: 'other'; readonly names: readonly string[] }

/** `not`: the node turned round, so that no term has to say "not" of several others. */
export function termOf(node: ASTNode, not = false): RuleTerm {
  switch (node.op) {
    case '&&':
    case '||':
      return joined(
        (node.op === '&&') === not ? 'any' : 'all',
        node.args.map((side) => termOf(side, not)),
      )
    case '!_':
      return termOf(node.args, !not)
    case '==':
    case '!=':
    case 'in':
      return wordTerm(node, not) ?? other(node)
    default:
      return other(node)
  }
}

function wordTerm(node: Extract<ASTNode, { op: '==' | '!=' | 'in' }>, not: boolean): RuleTerm | null {
  const [left, right] = node.args
  const name = nameOf(left) ?? nameOf(right)
  const words = nameOf(left) === null ? wordsOf(left) : wordsOf(right)
  if (name === null || words.length === 0) return null
  return { is: 'word', name, words, not: (node.op === '!=') !== not }
}

function nameOf(node: ASTNode): string | null {
  return node.op === 'id' ? node.args : factName(node)
}

function wordsOf(node: ASTNode): readonly string[] {
  if (node.op === 'list') return node.args.flatMap((one) => wordsOf(one))
  return node.op === 'value' && typeof node.args === 'string' ? [node.args] : []
}

/** Joins within joins are one, and what is asked of one name twice is asked once: `a == "x" || a == "y"`. */
function joined(is: 'all' | 'any', terms: readonly RuleTerm[]): RuleTerm {
  const flat: RuleTerm[] = []
  for (const term of terms.flatMap((one) => (one.is === is ? one.of : [one]))) {
    if (flat.some((one) => one.is === 'other' && term.is === 'other' && `${one.names}` === `${term.names}`))
      continue
    const at = flat.findIndex(
      (one) =>
        one.is === 'word' &&
        term.is === 'word' &&
        one.name === term.name &&
        one.not === term.not &&
        term.not === (is === 'all'),
    )
    const same = flat[at]
    if (same?.is === 'word' && term.is === 'word')
      flat[at] = { ...same, words: [...new Set([...same.words, ...term.words])] }
    else flat.push(term)
  }
  const [only, ...more] = flat
  return only !== undefined && more.length === 0 ? only : { is, of: flat }
}

function other(node: ASTNode): RuleTerm {
  return { is: 'other', names: [...new Set(namesIn(node))] }
}

function namesIn(node: unknown): string[] {
  if (Array.isArray(node)) return node.flatMap(namesIn)
  if (typeof node !== 'object' || node === null || !('op' in node)) return []
  const one = node as ASTNode
  const name = nameOf(one)
  return name === null ? namesIn(one.args) : [name]
}
