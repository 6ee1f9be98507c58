// How a cycle computation takes its inputs, checked against its own list before the work sees any, and writes its
// figures.

import type { Result } from '../lib/result.ts'
import { fromSi, type QuantityKind } from '../units/index.ts'
import type { Computation, Computed, Value } from './computation.ts'
import { figured } from './figures.ts'
import { checkInputs, type Inputs } from './take.ts'

export interface Given {
  /** A quantity in SI, or a plain number. A required one is always there; asking for one that is not is a bug. */
  readonly si: (name: string) => number
  readonly maybe: (name: string) => number | undefined
  /** Empty where the list was left out. */
  readonly list: (name: string) => readonly number[]
  readonly word: <Word extends string>(name: string, words: readonly Word[]) => Word
}

/** A computation whose `run` looks at every input against `inputs` before `work` sees any. */
export function offer(spec: Omit<Computation, 'run'>, work: (given: Given) => Result<Computed>): Computation {
  const run: Computation['run'] = (inputs) => {
    const checked = checkInputs(spec.inputs, inputs)
    return checked.ok ? work(givenOf(checked.value)) : checked
  }
  return { ...spec, run }
}

function givenOf(inputs: Inputs): Given {
  const maybe = (name: string) => {
    const value = inputs[name]
    if (value?.is === 'quantity') return value.quantity.si
    return value?.is === 'number' ? value.number : undefined
  }
  return {
    maybe,
    si: (name) => {
      const value = maybe(name)
      if (value === undefined) throw new Error(`no input ${name}`)
      return value
    },
    list: (name) => {
      const value = inputs[name]
      return value?.is === 'quantities' ? value.quantities.map((one) => one.si) : []
    },
    word: (name, words) => {
      const value = inputs[name]
      const found = words.find((word) => value?.is === 'word' && value.word === word)
      if (found === undefined) throw new Error(`no word ${name}`)
      return found
    },
  }
}

export function quantityOut(kind: QuantityKind, si: number): Value {
  return { is: 'quantity', quantity: fromSi(kind, si) }
}

export function numberOut(number: number): Value {
  return { is: 'number', number }
}

export function wordOut(word: string): Value {
  return { is: 'word', word }
}

/** A figure in the arithmetic, six figures in plain decimals. */
export function fig(value: number): string {
  return figured(value, 6)
}
