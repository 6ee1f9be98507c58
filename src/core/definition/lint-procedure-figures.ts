// Cross-checks of a judge by figures: expressions that hold, each characteristic once, and sizes of a micrometer bracketed by
// set-checks and temperatures.
import type { Computation } from '../compute/computation.ts'
import { quote } from '../lib/wording.ts'
import { BROKEN, compileValueAt, type ProcedureValues } from '../rules/procedure-values.ts'
import { characteristicOf, FORM_CHARACTERISTICS } from './characteristics.ts'
import { earlierStep } from './earlier-step.ts'
import { type Finding, finding, type Path, repeats } from './lint-common.ts'
import type { FiguresJudge, Procedure, StepOf } from './procedure.ts'
import { type At20, at20Of } from './step-judge.ts'

export function lintFigures(
  procedure: Procedure,
  judge: FiguresJudge,
  index: number,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): Finding[] {
  const base = ['steps', index, 'figures']
  const named = judge.figures.map(({ characteristic }) => characteristic)
  const twice = repeats(named).map(({ at, first }) => {
    const message = `${quote(named[at] ?? '')} is judged already by figure ${first + 1} of this step.`
    return finding([...base, at, 'characteristic'], 'repeated-id', message)
  })
  const each = judge.figures.flatMap(({ characteristic, is }, n): Finding[] => {
    if (FORM_CHARACTERISTICS.some((one) => one === characteristic)) {
      const message = `${quote(characteristic)} is worked out by bore_form, from the readings of a bore.`
      return [finding([...base, n, 'characteristic'], 'wrong-compute', message, 'write compute: bore_form')]
    }
    const { kind } = characteristicOf(characteristic)
    const compiled = compileValueAt(procedure, index, is, kind, values, computations)
    if (compiled.ok || compiled.error.code === BROKEN) return []
    const { code, say, hint, range } = compiled.error
    return [{ ...finding([...base, n, 'is'], code, say, hint), within: range }]
  })
  return [...twice, ...each, ...lintEachAt20(procedure, judge, index)]
}

function lintEachAt20(procedure: Procedure, judge: FiguresJudge, index: number): Finding[] {
  const first = judge.at_20 === undefined ? 0 : 1
  return at20Of(judge).flatMap((at, n) => {
    const key: Path = n < first ? ['at_20'] : ['also_at_20', n - first]
    return lintAt20(procedure, at, index, ['steps', index, ...key])
  })
}

function lintAt20(procedure: Procedure, at: At20, index: number, base: Path): Finding[] {
  const found: Finding[] = []
  const read = (id: string, path: Path, quantity: 'length' | 'temperature') => {
    const step = earlierStep(procedure, id, index, path, 'read')
    if ('code' in step) found.push(step)
    else if (step.kind === 'read' && step.quantity === quantity)
      return { step, at: procedure.steps.indexOf(step) }
    else if (step.kind === 'read')
      found.push(
        finding(
          path,
          'wrong-quantity',
          `${quote(id)} reads a ${step.quantity}, and a ${quantity} is needed here.`,
        ),
      )
    return undefined
  }
  const sizes = at.readings.map((id, n) => read(id, [...base, 'readings', n], 'length'))
  for (const key of ['part', 'instrument'] as const)
    for (const [n, id] of at[key].entries()) read(id, [...base, key, n], 'temperature')
  for (const key of ['set_before', 'set_after'] as const) {
    const check = read(at[key], [...base, key], 'length')
    if (check === undefined) continue
    for (const size of sizes)
      if (size !== undefined) found.push(...lintBracket(key, check, size, [...base, key]))
  }
  return found
}

interface At {
  readonly step: StepOf<'read'>
  readonly at: number
}

/** A check before and after, with the very instrument that took the readings (decision 10). */
function lintBracket(key: 'set_before' | 'set_after', check: At, size: At, path: Path): Finding[] {
  const [name, other] = [quote(check.step.id), quote(size.step.id)]
  if (check.step.with !== size.step.with) {
    const message = `${name} is read with ${quote(check.step.with)}, and ${other} with ${quote(size.step.with)}.`
    return [finding(path, 'other-instrument', message, 'check the instrument that takes the readings')]
  }
  if (key === 'set_before' ? check.at < size.at : check.at > size.at) return []
  const side = key === 'set_before' ? 'before' : 'after'
  return [finding(path, 'wrong-order', `${name} does not stand ${side} ${other}.`)]
}
