// Comparisons of words: the outcome of a step with an outcome it can have. Nothing else is ever compared for being equal.
import type { ASTNode } from '@marcbachmann/cel-js'
import { list, nearest, quote } from '../lib/wording.ts'
import { computationField } from './computation-check.ts'
import { readWord } from './literal.ts'
import { type NameType, type RuleRefusal, type RuleResult, refusalAt } from './types.ts'
import { factName, findName, raw, type Walk } from './walk-names.ts'

type Comparison = Extract<ASTNode, { op: '==' | '!=' | 'in' }>

interface Word {
  readonly name: string
  readonly type: Extract<NameType, { is: 'word' }>
}

export function checkWords(w: Walk, node: Comparison): RuleRefusal | null {
  const [left, right] = node.args
  const a = wordOf(w, left)
  if (a !== null && !a.ok) return a.error
  if (node.op === 'in') return a === null ? noWord(w, node) : checkIn(w, a.value, right)
  const b = wordOf(w, right)
  if (b !== null && !b.ok) return b.error
  if (a !== null && b !== null) return checkTwo(w, node, a.value, b.value)
  if (a !== null) return checkAgainst(w, a.value, [right])
  if (b !== null) return checkAgainst(w, b.value, [left])
  return noWord(w, node)
}

/** The word a node stands for, or null when it stands for none; refused when its name cannot be used. */
function wordOf(w: Walk, node: ASTNode): RuleResult<Word> | null {
  const name = node.op === 'id' ? node.args : factName(node)
  if (name !== null) {
    const type = w.scope.names.get(name)
    if (type !== undefined && type.is !== 'word') return null
    const refusal = findName(w, node, name)
    if (refusal !== null) return { ok: false, error: refusal }
    w.size += 1
    return type === undefined ? null : { ok: true, value: { name, type } }
  }
  const output = node.op === '.' ? computationField(w, node) : null
  if (output === null) return null
  if (!output.ok) return output
  const { name: field, type } = output.value
  return type.is === 'word'
    ? { ok: true, value: { name: field, type: { is: 'word', words: type.words } } }
    : null
}

function checkIn(w: Walk, word: Word, right: ASTNode): RuleRefusal | null {
  if (right.op !== 'list' || right.args.length === 0) {
    const example = word.type.words.slice(0, 2).map((one) => `"${one}"`)
    const say = `${quote(word.name)} can be in a list of words, written out.`
    return refusalAt(right, 'rule-type', say, `as in: ${word.name} in [${example.join(', ')}]`)
  }
  w.size += 1
  return checkAgainst(w, word, right.args)
}

function checkAgainst(w: Walk, word: Word, others: readonly ASTNode[]): RuleRefusal | null {
  const { words, unknownWord } = word.type
  const asked: string[] = []
  for (const node of others) {
    w.size += 1
    const text = node.op === 'value' && typeof node.args === 'string' ? readWord(raw(w, node)) : null
    if (text === null) {
      const say = `${quote(word.name)} is a word, and is compared with a word in quotes.`
      return refusalAt(node, 'rule-type', say, `it can be ${list(words, 'or')}`)
    }
    if (!words.includes(text)) {
      const near = nearest(text, words)
      const hint = near === undefined ? `it can be ${list(words, 'or')}` : `did you mean ${near}?`
      const say = `${quote(word.name)} can never be ${quote(text)}.`
      return refusalAt(node, 'unknown-outcome', say, hint)
    }
    asked.push(text)
  }
  // Asked whether it is on HOLD, it answers; asked for any other word, a HOLD is no answer (decision 8).
  if (unknownWord !== undefined && !asked.includes(unknownWord)) w.notUnknown.add(word.name)
  return null
}

function checkTwo(w: Walk, node: ASTNode, a: Word, b: Word): RuleRefusal | null {
  if (!a.type.words.some((word) => b.type.words.includes(word))) {
    const say = `${quote(a.name)} and ${quote(b.name)} have no word in common.`
    return refusalAt(node, 'unknown-outcome', say)
  }
  for (const word of [a, b]) if (word.type.unknownWord !== undefined) w.notUnknown.add(word.name)
  return null
}

/** Equality of figures. Two measured figures are never equal to the last place, so the answer would be chance. */
function noWord(w: Walk, node: Comparison): RuleRefusal {
  const [left, right] = node.args
  const inside = left.op === 'value' ? null : w.visit(left, 'figure')
  const first = inside ?? (right.op === 'value' || right.op === 'list' ? null : w.visit(right, 'figure'))
  if (first !== null) return first
  const isText = [left, right].some((one) => one.op === 'value' && typeof one.args === 'string')
  if (isText || node.op === 'in') {
    const say = 'Only the outcome of a step, or a word of the machine record, is compared with a word.'
    return refusalAt(node, 'rule-type', say)
  }
  return refusalAt(
    node,
    'rule-equal',
    `Figures are not compared with ${node.op}: two of them are equal only by chance.`,
    'compare the difference with a tolerance, as in: abs(a - b) < length("0.001 in")',
  )
}
