// Handing a computation its inputs: what is missing, of another kind or out of range is refused before any arithmetic.
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { aKind, fromSi, type Quantity, type QuantityKind, quantity } from '../units/index.ts'
import type { Computation, Computed, Parameter, Value } from './computation.ts'

export type Inputs = Readonly<Record<string, Value>>

/** Inputs that have been checked. Asking for a name or type that was not declared is a bug and throws. */
export interface Take {
  has(name: string): boolean
  quantity(name: string): Quantity
  /** In the SI unit of the kind. */
  si(name: string): number
  list(name: string): readonly number[]
  number(name: string): number
  word(name: string): string
}

/** The `run` of a computation: checks the inputs against what it declares, then works. */
export function taking(
  inputs: readonly Parameter[],
  work: (take: Take) => Result<Computed>,
): Computation['run'] {
  return (given) => {
    const checked = checkInputs(inputs, given)
    return checked.ok ? work(takeFrom(given)) : checked
  }
}

/** Refuses: an input that is not declared, missing, of another type or kind, not finite, or out of its range. */
export function checkInputs(parameters: readonly Parameter[], given: Inputs): Result<Inputs> {
  const spare = Object.keys(given).find((name) => parameters.every((p) => p.name !== name))
  if (spare !== undefined) return refuse('unknown-input', `${spare} is no input of this computation.`)
  for (const parameter of parameters) {
    const value = given[parameter.name]
    if (value === undefined) {
      if (parameter.optional !== true) return refuse('missing-input', `${parameter.name} is missing.`)
      continue
    }
    const fault = faultOf(parameter, value)
    if (fault !== undefined) return { ok: false, error: fault }
  }
  return ok(given)
}

/** Why a value is not what a parameter takes; undefined when it is. */
export function faultOf({ name, type }: Parameter, value: Value): Refusal | undefined {
  if (type.is === 'quantity' && value.is === 'quantity')
    return quantityFault(name, type.kind, type.signed === true || isSigned(type.kind), value.quantity)
  if (type.is === 'quantities' && value.is === 'quantities') {
    if (value.quantities.length < type.least)
      return {
        code: 'too-few',
        say: `${name} needs ${type.least} or more, and ${value.quantities.length} came.`,
      }
    return value.quantities
      .map((q) => quantityFault(name, type.kind, isSigned(type.kind), q))
      .find((fault) => fault !== undefined)
  }
  if (type.is === 'number' && value.is === 'number') return numberFault(name, type, value.number)
  if (type.is === 'word' && value.is === 'word') {
    if (type.words.includes(value.word)) return undefined
    return { code: 'unknown-word', say: `${name} is one of: ${type.words.join(', ')}.` }
  }
  return { code: 'wrong-type', say: `${name} is not of the type this computation takes.` }
}

/** Gauge pressures go below zero as vacuum; a temperature is held in kelvin and cannot. */
export function isSigned(kind: QuantityKind): boolean {
  return kind === 'pressure-gauge'
}

function quantityFault(name: string, kind: QuantityKind, signed: boolean, q: Quantity): Refusal | undefined {
  if (q.kind !== kind)
    return { code: 'wrong-kind', say: `${name} takes ${aKind(kind)}, not ${aKind(q.kind)}.` }
  if (!Number.isFinite(q.si)) return { code: 'not-finite', say: `${name} is not a number.` }
  return q.si < 0 && !signed ? { code: 'below-zero', say: `${name} cannot be below zero.` } : undefined
}

function numberFault(
  name: string,
  type: Extract<Parameter['type'], { is: 'number' }>,
  number: number,
): Refusal | undefined {
  if (!Number.isFinite(number)) return { code: 'not-finite', say: `${name} is not a number.` }
  if (type.whole === true && !Number.isInteger(number))
    return { code: 'not-whole', say: `${name} is a whole number.` }
  const isLow = type.least !== undefined && number < type.least
  const isHigh = type.most !== undefined && number > type.most
  return isLow || isHigh
    ? { code: 'out-of-range', say: `${name} lies ${rangeWords(type)}, not at ${number}.` }
    : undefined
}

export function rangeWords({ least, most }: { least?: number; most?: number }): string {
  if (least !== undefined && most !== undefined) return `between ${least} and ${most}`
  if (least !== undefined) return `at ${least} or more`
  return most === undefined ? 'anywhere' : `at ${most} or less`
}

function takeFrom(given: Inputs): Take {
  const get = <Is extends Value['is']>(name: string, is: Is): Extract<Value, { is: Is }> => {
    const value = given[name]
    if (value?.is !== is) throw new Error(`"${name}" was not declared as a ${is}`)
    return value as Extract<Value, { is: Is }>
  }
  return {
    has: (name) => given[name] !== undefined,
    quantity: (name) => get(name, 'quantity').quantity,
    si: (name) => get(name, 'quantity').quantity.si,
    list: (name) => get(name, 'quantities').quantities.map((q) => q.si),
    number: (name) => get(name, 'number').number,
    word: (name) => get(name, 'word').word,
  }
}

/** A quantity, a number and a word as values. */
export function q(value: number, unit: string): Value {
  return { is: 'quantity', quantity: quantity(value, unit) }
}
export function siValue(kind: QuantityKind, si: number): Value {
  return { is: 'quantity', quantity: fromSi(kind, si) }
}
export function n(number: number): Value {
  if (!Number.isFinite(number)) throw new Error('a result is not a finite number')
  return { is: 'number', number }
}
export function w(word: string): Value {
  return { is: 'word', word }
}
