// Cross-checks of judge and decide steps: everything they refer to is taken earlier, and is of the right sort.

import type { Computation } from '../compute/computation.ts'
import { assertNever } from '../lib/result.ts'
import { quote } from '../lib/wording.ts'
import type { ProcedureValues } from '../rules/procedure-values.ts'
import { earlierStep } from './earlier-step.ts'
import { datumsOf } from './judge-reads.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import { lintFigures } from './lint-procedure-figures.ts'
import { lintPocketJudge } from './lint-procedure-pocket.ts'
import type { FormJudge, Procedure, StepOf } from './procedure.ts'

type Read = StepOf<'read'>
interface Input {
  readonly id: string
  readonly path: Path
  readonly quantity: Read['quantity']
}

/** Findings of one judge step at `index`. */
export function lintJudge(
  procedure: Procedure,
  judge: StepOf<'judge'>,
  index: number,
  values: ProcedureValues,
  computations: ReadonlyMap<string, Computation>,
): Finding[] {
  switch (judge.compute) {
    case 'figures':
      return lintFigures(procedure, judge, index, values, computations)
    case 'pocket_setting':
      return lintPocketJudge(procedure, judge, index)
    case 'bore_form':
      return lintForm(procedure, judge, index)
    default:
      return assertNever(judge)
  }
}

function lintForm(procedure: Procedure, judge: FormJudge, index: number): Finding[] {
  const found: Finding[] = []
  for (const input of inputsOf(judge, ['steps', index, 'inputs'])) {
    const step = earlierStep(procedure, input.id, index, input.path, 'read')
    if ('code' in step) found.push(step)
    else if (step.kind === 'read' && step.quantity !== input.quantity) {
      const message = `${quote(input.id)} reads a ${step.quantity}, and a ${input.quantity} is needed here.`
      found.push(finding(input.path, 'wrong-quantity', message))
    }
  }
  return [...found, ...lintDiameters(procedure, judge, index), ...lintSetChecks(procedure, judge, index)]
}

/** `about` must name a judge step that stands earlier. */
export function lintDecide(procedure: Procedure, decide: StepOf<'decide'>, index: number): Finding[] {
  const step = earlierStep(procedure, decide.about, index, ['steps', index, 'about'], 'judge')
  return [...('code' in step ? [step] : []), ...lintWaits(decide, ['steps', index, 'waits_on'])]
}

/** Work waits after a choice that can be made, and there is one that it goes on after. */
function lintWaits({ choices, waits_on: waits = [] }: StepOf<'decide'>, base: Path): Finding[] {
  return waits.flatMap((one, n) => {
    if (!choices.includes(one))
      return [finding([...base, n], 'unknown-choice', `${quote(one)} is none of the choices of this step.`)]
    const message = `${quote(one)} is the first choice, after which work goes on.`
    return one === choices[0] ? [finding([...base, n], 'first-waits', message)] : []
  })
}

function inputsOf(judge: FormJudge, base: Path): Input[] {
  const { inputs } = judge
  const lengths = (['diameters', 'counterbore', 'set_before', 'set_after'] as const).flatMap((key) => {
    const id = inputs[key]
    return id === undefined ? [] : [{ id, path: [...base, key], quantity: 'length' as const }]
  })
  const strips = datumsOf(inputs).map((id, n) => ({
    id,
    path: [...base, 'datum', ...(Array.isArray(inputs.datum) ? [n] : [])],
    quantity: 'length' as const,
  }))
  const temperatures = (['part_temperature', 'instrument_temperature'] as const).flatMap((key) =>
    inputs[key].map((id, n) => ({ id, path: [...base, key, n], quantity: 'temperature' as const })),
  )
  return [...lengths, ...strips, ...temperatures]
}

function readAt(procedure: Procedure, id: string): { read: Read; at: number } | undefined {
  const at = procedure.steps.findIndex((s) => s.id === id)
  const read = procedure.steps[at]
  return read?.kind === 'read' ? { read, at } : undefined
}

function count(number: number, one: string, many: string): string {
  return `${number} ${number === 1 ? one : many}`
}

/** Out-of-round compares axes and taper compares stations, so one of either tells nothing. */
function lintDiameters(procedure: Procedure, judge: FormJudge, index: number): Finding[] {
  const found = readAt(procedure, judge.inputs.diameters)
  if (found === undefined) return []
  const { stations, axes = [] } = found.read
  if (stations.length >= 2 && axes.length >= 2) return []
  const message = `${quote(found.read.id)} has ${count(stations.length, 'station', 'stations')} and ${count(axes.length, 'axis', 'axes')}, and the form of a bore needs two of each.`
  return [finding(['steps', index, 'inputs', 'diameters'], 'too-few-places', message)]
}

/** The set check brackets the readings (decision 10) and is of the very instrument that took them. */
function lintSetChecks(procedure: Procedure, judge: FormJudge, index: number): Finding[] {
  const diameters = readAt(procedure, judge.inputs.diameters)
  if (diameters === undefined) return []
  const found: Finding[] = []
  for (const key of ['set_before', 'set_after'] as const) {
    const check = readAt(procedure, judge.inputs[key])
    if (check === undefined) continue
    const path = ['steps', index, 'inputs', key]
    const inOrder = key === 'set_before' ? check.at < diameters.at : check.at > diameters.at
    const [name, other] = [quote(check.read.id), quote(diameters.read.id)]
    if (!inOrder) {
      const side = key === 'set_before' ? 'before' : 'after'
      found.push(finding(path, 'wrong-order', `${name} does not stand ${side} ${other}.`))
    }
    if (check.read.with !== diameters.read.with) {
      const message = `${name} is read with ${quote(check.read.with)}, and ${other} with ${quote(diameters.read.with)}.`
      found.push(finding(path, 'other-instrument', message, 'check the instrument that takes the readings'))
    }
  }
  return found
}
