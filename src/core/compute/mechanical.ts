// How the computations of the piston end are written down: plain SI figures in and out, arithmetic shown in the declared
// units. No formula lives here.

import { ok, type Result, refuse } from '../lib/result.ts'
import { fromSi, type QuantityKind } from '../units/index.ts'
import type { Computation, Parameter, TraceStep, Value } from './computation.ts'
import { figured, inUnit } from './figures.ts'
import { n, siValue, type Take, taking, w } from './take.ts'

/** SI figures or words by output name, with the arithmetic. */
export interface Worked {
  readonly gives: Readonly<Record<string, number | string | readonly number[] | undefined>>
  readonly trace: readonly TraceStep[]
  readonly warnings?: readonly string[]
}

export interface Offer extends Omit<Computation, 'run'> {
  readonly work: (given: Given) => Result<Worked>
}

/** Inputs that have been checked, and how each reads in its declared unit. */
export interface Given extends Take {
  /** SI figure or plain number, or nothing where an optional one was left out. */
  readonly maybe: (name: string) => number | undefined
  readonly show: (name: string) => string
}

/** A computation from its offer: inputs are checked against what is declared, outputs made from what is declared. */
export function offer({ work, ...about }: Offer): Computation {
  const run = taking(about.inputs, (take) => {
    const worked = work(givenFrom(about.inputs, take))
    if (!worked.ok) return worked
    const { gives, trace, warnings = [] } = worked.value
    const figures = Object.values(gives).flat()
    if (!figures.every((one) => typeof one !== 'number' || Number.isFinite(one)))
      return refuse(
        'result-not-finite',
        'These figures are too far apart in size to reckon with: check each.',
      )
    const outputs = about.outputs.flatMap((output): [string, Value][] => {
      const given = gives[output.name]
      return given === undefined && output.optional ? [] : [[output.name, asValue(output, given)]]
    })
    return ok({ outputs: Object.fromEntries(outputs), trace, warnings })
  })
  return { ...about, run }
}

function asValue({ name, type }: Parameter, given: Worked['gives'][string]): Value {
  if (type.is === 'word' && typeof given === 'string') return w(given)
  if (type.is === 'number' && typeof given === 'number') return n(given)
  if (type.is === 'quantity' && typeof given === 'number') return siValue(type.kind, given)
  if (type.is === 'quantities' && Array.isArray(given))
    return { is: 'quantities', quantities: given.map((si: number) => fromSi(type.kind, si)) }
  throw new Error(`the output ${name} is not a ${type.is}`)
}

function givenFrom(parameters: readonly Parameter[], take: Take): Given {
  const typeOf = (name: string): Parameter['type'] => {
    const found = parameters.find((one) => one.name === name)
    if (found === undefined) throw new Error(`no input ${name} is declared`)
    return found.type
  }
  return {
    ...take,
    maybe: (name) => {
      const { is } = typeOf(name)
      if (!take.has(name)) return undefined
      return is === 'number' ? take.number(name) : take.si(name)
    },
    show: (name) => {
      const type = typeOf(name)
      return type.is === 'quantity' ? inUnit(take.quantity(name), type.unit) : plain(take.number(name))
    },
  }
}

/** `0.0191 in`: an SI figure in a unit. */
export function shown(si: number, kind: QuantityKind, unit: string): string {
  return inUnit(fromSi(kind, si), unit)
}

export function inches(si: number): string {
  return shown(si, 'length', 'in')
}

/** A plain number to five figures, without idle noughts. */
export function plain(x: number): string {
  const text = figured(x)
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

export function step(says: string, formula: string, worked: string): TraceStep {
  return { says, formula, worked }
}

interface More {
  readonly signed?: boolean
  readonly optional?: boolean
}

export function length(name: string, says: string, more: More = {}): Parameter {
  return quantityOf('length', 'in', name, says, more)
}

export function quantityOf(
  kind: QuantityKind,
  unit: string,
  name: string,
  says: string,
  { signed, optional }: More = {},
): Parameter {
  const type = { is: 'quantity', kind, unit, ...(signed ? { signed } : {}) } as const
  return { name, says, type, ...(optional ? { optional } : {}) }
}

export function numberOf(
  name: string,
  says: string,
  {
    optional,
    ...range
  }: { whole?: boolean; least?: number; most?: number; optional?: boolean | undefined } = {},
): Parameter {
  return { name, says, type: { is: 'number', ...range }, ...(optional ? { optional } : {}) }
}

export function wordOf(
  name: string,
  says: string,
  words: readonly string[],
  { optional }: More = {},
): Parameter {
  return { name, says, type: { is: 'word', words }, ...(optional ? { optional } : {}) }
}

/** An output in words. */
export function textOf(name: string, says: string): Parameter {
  return wordOf(name, says, [])
}

export const FALL_BACK = "A fall-back rule: it stands only where the machine's own book is silent."
