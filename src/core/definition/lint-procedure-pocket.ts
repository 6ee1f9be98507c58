// Cross-checks of a judge of the pocket setting: each input is an earlier step of the right kind, quantity and conditions.
import { POCKET_FITTED } from '../cycle/pocket-words.ts'
import { list, quote } from '../lib/wording.ts'
import { earlierStep } from './earlier-step.ts'
import { type Finding, finding, type Path, repeats } from './lint-common.ts'
import type { PocketJudge, Procedure, StepOf } from './procedure.ts'

type Quantity = StepOf<'read'>['quantity']

interface Input {
  readonly id: string
  readonly path: Path
}

export function lintPocketJudge(procedure: Procedure, judge: PocketJudge, index: number): Finding[] {
  const { inputs } = judge
  const at = (...path: Path): Path => ['steps', index, 'inputs', ...path]
  const reads: [string | undefined, Path, Quantity][] = [
    [inputs.wheel, at('wheel'), 'angle'],
    [inputs.stem, at('stem'), 'length'],
    [inputs.suction, at('suction'), 'pressure-gauge'],
    [inputs.discharge, at('discharge'), 'pressure-gauge'],
    ...inputs.suction_temperatures.map((id, n): [string, Path, Quantity] => [
      id,
      at('suction_temperatures', n),
      'temperature',
    ]),
    [inputs.driver_load, at('driver_load'), 'power'],
  ]
  const named = reads.flatMap(([id, path, quantity]) => (id === undefined ? [] : [{ id, path, quantity }]))
  return [
    ...named.flatMap((input) => lintRead(procedure, input, input.quantity, index)),
    ...repeats(named.map(({ id }) => id)).flatMap(({ at: n }) => {
      const twice = named[n]
      if (twice === undefined) return []
      return [
        finding(twice.path, 'repeated-id', `${quote(twice.id)} is named twice, for two different figures.`),
      ]
    }),
    ...lintObserved(procedure, { id: inputs.fitted, path: at('fitted') }, POCKET_FITTED, index),
    ...(inputs.position === undefined
      ? []
      : lintObserved(procedure, { id: inputs.position, path: at('position') }, ['open', 'shut'], index)),
    ...(inputs.wheel === undefined && inputs.stem === undefined && inputs.position === undefined
      ? [
          finding(
            at(),
            'no-setting',
            'Nothing tells the present setting of the pocket.',
            'name a wheel, a stem or a position',
          ),
        ]
      : []),
  ]
}

function lintRead(procedure: Procedure, { id, path }: Input, quantity: Quantity, index: number): Finding[] {
  const step = earlierStep(procedure, id, index, path, 'read')
  if ('code' in step) return [step]
  if (step.kind !== 'read') return []
  if (step.quantity !== quantity) {
    const message = `${quote(id)} reads a ${step.quantity}, and a ${quantity} is needed here.`
    return [finding(path, 'wrong-quantity', message)]
  }
  const places = step.stations.length * Math.max(1, step.axes?.length ?? 1)
  if (places === 1) return []
  const message = `${quote(id)} is read at ${places} places, and one figure is needed here.`
  return [finding(path, 'too-many-places', message, 'give each figure a read step of its own')]
}

function lintObserved(
  procedure: Procedure,
  { id, path }: Input,
  wanted: readonly string[],
  index: number,
): Finding[] {
  const step = earlierStep(procedure, id, index, path, 'observe')
  if ('code' in step) return [step]
  if (step.kind !== 'observe') return []
  if (step.several === true)
    return [
      finding(path, 'no-condition', `${quote(id)} takes several conditions at once, and one is needed here.`),
    ]
  const has = new Set(step.conditions.map((condition) => condition.id))
  const missing = wanted.filter((word) => !has.has(word))
  if (missing.length === 0) return []
  const message = `${quote(id)} has no condition ${list(missing.map(quote), 'or')}, and it is told by that.`
  return [finding(path, 'no-condition', message)]
}
