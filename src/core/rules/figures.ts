// The figures of a judge step, compiled over what stands before it.
import type { Computation } from '../compute/computation.ts'
import { characteristicOf } from '../definition/characteristics.ts'
import type { Procedure } from '../definition/procedure.ts'
import { compileValueAt, type ProcedureValues } from './procedure-values.ts'
import type { RuleResult } from './types.ts'
import type { CompiledValue } from './value.ts'

/** Those of step `index`, in its order; none for a step that judges no figures. Refuses the first that does not hold. */
export function compileFigures(
  procedure: Procedure,
  index: number,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): RuleResult<CompiledValue[]> {
  const step = procedure.steps[index]
  if (step?.kind !== 'judge' || step.compute !== 'figures') return { ok: true, value: [] }
  const compiled: CompiledValue[] = []
  for (const { characteristic, is } of step.figures) {
    const { kind } = characteristicOf(characteristic)
    const one = compileValueAt(procedure, index, is, kind, values, computations)
    if (!one.ok) return one
    compiled.push(one.value)
  }
  return { ok: true, value: compiled }
}
