// A computation and its result as plain data for other programs: figures in the declared unit and in SI.
import { valueIn } from '../units/index.ts'
import type { Computation, Computed, Parameter, Value } from './computation.ts'
import type { Inputs } from './take.ts'

export function describeJson({ name, title, inputs, outputs, sources, validity }: Computation): object {
  return { name, title, inputs, outputs, sources, validity }
}

export function computedJson(computation: Computation, inputs: Inputs, computed: Computed): object {
  return {
    computation: computation.name,
    title: computation.title,
    inputs: valuesJson(computation.inputs, inputs),
    outputs: valuesJson(computation.outputs, computed.outputs),
    trace: computed.trace,
    warnings: computed.warnings,
    validity: computation.validity,
    sources: computation.sources,
  }
}

function valuesJson(parameters: readonly Parameter[], values: Inputs): Record<string, unknown> {
  const known = parameters.filter((p) => values[p.name] !== undefined)
  return Object.fromEntries(known.map((p) => [p.name, valueJson(p, values[p.name] as Value)]))
}

function valueJson({ type }: Parameter, value: Value): unknown {
  if (value.is === 'number') return value.number
  if (value.is === 'word') return value.word
  if (type.is !== 'quantity' && type.is !== 'quantities')
    throw new Error('a value does not fit what was declared for it')
  const one = (q: { kind: (typeof type)['kind']; si: number }) => ({
    ...{ value: valueIn(q, type.unit), unit: type.unit, kind: q.kind, si: q.si },
  })
  return value.is === 'quantity' ? one(value.quantity) : value.quantities.map(one)
}
