// What the walk over an expression keeps, and how it finds the names in it.
import type { ASTNode } from '@marcbachmann/cel-js'
import { list, nearest, quote } from '../lib/wording.ts'
import { type RuleRefusal, refusalAt, type Scope } from './types.ts'

/** Lists stand only where a function or a computation takes one: there is no arithmetic on them. */
export type Position = 'figure' | 'list'

export interface Walk {
  readonly text: string
  readonly scope: Scope
  /** Every name referred to. */
  readonly names: Set<string>
  /** Names whose unknown word (HOLD) makes the rule unknown, because they are asked about other words. */
  readonly notUnknown: Set<string>
  /** Looks at a part of the expression; here so that the checks of words and computations can call it. */
  readonly visit: (node: ASTNode, position: Position) => RuleRefusal | null
  /** Nodes visited. */
  size: number
}

const YES_OR_NO: readonly ASTNode['op'][] = ['==', '!=', 'in', '<', '<=', '>', '>=', '&&', '||', '!_']

/** Whether a part is true or false rather than a figure. No name is, so the shape tells. */
export function isYesOrNo(node: ASTNode): boolean {
  return node.op === '?:' ? isYesOrNo(node.args[1]) : YES_OR_NO.includes(node.op)
}

export function raw(w: Walk, node: ASTNode): string {
  return w.text.slice(node.start, node.end)
}

/** Writes the name down, or says why it cannot be used. */
export function findName(w: Walk, node: ASTNode, name: string): RuleRefusal | null {
  if (w.scope.names.has(name)) {
    w.names.add(name)
    return null
  }
  if (name === 'machine')
    return refusalAt(node, 'unknown-fact', 'No fact of the machine is named here.', 'as in machine.nominal')
  const barred = w.scope.barred.get(name)
  if (barred !== undefined) return refusalAt(node, barred.code, barred.say, barred.hint)
  const isFact = name.startsWith('machine.')
  const known = [...w.scope.names.keys()].filter((one) => one.startsWith('machine.') === isFact)
  const near = nearest(name, [...known, ...w.scope.barred.keys()])
  const others =
    known.length === 0 ? 'nothing is known before this' : `known here: ${list(known.slice(0, 12))}`
  const hint = near === undefined ? others : `did you mean ${near}?`
  const word = isFact ? name.slice('machine.'.length) : name
  if (isFact)
    return refusalAt(node, 'unknown-fact', `${quote(word)} is not a fact of the machine record.`, hint)
  return refusalAt(node, 'unknown-step', `${quote(word)} is not a step or value declared here.`, hint)
}

/** The name of a fact (`machine.nominal`), or null when the node is something else. */
export function factName(node: ASTNode): string | null {
  if (node.op !== '.') return null
  const [owner, field] = node.args
  return owner.op === 'id' && owner.args === 'machine' ? `machine.${field}` : null
}
