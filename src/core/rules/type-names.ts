// Kinds as types of the expression language, and types in plain words.
import { quote } from '../lib/wording.ts'
import { aKind } from '../units/index.ts'
import { OPERANDS } from './measured.ts'
import type { NameType, Operand } from './types.ts'

/** The name of a kind as a type of the language. */
export function typeOf(operand: Operand): string {
  return operand.replaceAll('-', '_')
}

/** The other way: nothing for a type that is no kind (bool, string, a list). */
export function operandOf(type: string): Operand | undefined {
  for (const operand of OPERANDS) if (typeOf(operand) === type) return operand
  return undefined
}

export function typeOfName(type: NameType): string {
  if (type.is === 'word') return 'string'
  return type.is === 'list' ? `list<${typeOf(type.of)}>` : typeOf(type.of)
}

/** A type of the language in plain words, with its article. */
export function sayType(type: string): string {
  const item = /^list<(.+)>$/.exec(type)?.[1]
  if (item !== undefined) return `a list (each ${sayType(item)})`
  const operand = operandOf(type)
  if (operand === undefined) return { bool: 'a yes or no', string: 'a word' }[type] ?? `a ${quote(type)}`
  return operand === 'number' ? 'a number without a unit' : aKind(operand)
}
