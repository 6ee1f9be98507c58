// Cross-checks of one procedure whose shape is right: ids, references, the order of steps, and what holds people back.
// What depends on the machine, or on the inside of a part, is checked with the job (lint-job.ts).

import { list, quote } from '../lib/wording.ts'
import { COMPUTATIONS } from '../rules/computations.ts'
import { compileValues, type ProcedureValues } from '../rules/procedure-values.ts'
import { RESERVED_NAMES } from '../rules/reserved.ts'
import type { CompiledRule } from '../rules/rule.ts'
import { type Finding, finding, type Path, repeatedIds, unknownId, warning } from './lint-common.ts'
import { lintBranches } from './lint-procedure-branches.ts'
import { lintGate } from './lint-procedure-gate.ts'
import { lintDecide, lintJudge } from './lint-procedure-judge.ts'
import { lintOverTime } from './lint-procedure-over-time.ts'
import { lintPlaces } from './lint-procedure-places.ts'
import { lintRead } from './lint-procedure-read.ts'
import { lintStepSafety } from './lint-procedure-safety.ts'
import { lintRule, lintValues } from './lint-procedure-values.ts'
import type { Procedure, Step } from './procedure.ts'

/** More than this is not read at a glance; the design sets it (text of a step, hazard and trouble apart). */
const MOST_WORDS = 40

/** All findings of one procedure, in no set order. */
export function lintProcedure(procedure: Procedure, computations = COMPUTATIONS): Finding[] {
  const rules = new Map<number, CompiledRule>()
  const values = compileValues(procedure, computations)
  const found = [
    ...repeatedIds(['hazards'], procedure.hazards, 'hazard'),
    ...repeatedIds(['seats'], procedure.seats, 'seat'),
    ...repeatedIds(['steps'], procedure.steps, 'step'),
    ...lintUnusedHazards(procedure),
    ...lintPlaces(procedure),
    ...lintOverTime(procedure),
    ...lintValues(procedure, values),
    ...procedure.steps.flatMap((step, index) => [
      ...lintCommon(procedure, step, index),
      ...lintWhen(procedure, step, index, { rules, values, computations }),
      ...lintKind(procedure, step, index, values, computations),
      ...lintStepSafety(procedure, step, ['steps', index]),
    ]),
  ]
  return [...found, ...lintBranches(procedure, rules)]
}

/** Declared and then forgotten: the crew would read of it and nothing would hold it back. */
function lintUnusedHazards({ hazards, steps }: Procedure): Finding[] {
  const named = steps.flatMap((step) => [
    ...(step.exposes ?? []),
    ...letsIn(step),
    ...(step.kind === 'gate' ? step.holds : []),
  ])
  // While a name is misspelled, nobody can tell which hazard it was meant to be.
  if (named.some((id) => !hazards.some((hazard) => hazard.id === id))) return []
  return hazards.flatMap(({ id }, n) => {
    if (named.includes(id)) return []
    const message = `${quote(id)} is declared, and no step exposes anybody to it and no gate holds it.`
    const hint = 'name it in exposes of each step that faces it, and in holds of a gate before; or delete it'
    return [warning(['hazards', n, 'id'], 'unused-hazard', message, hint)]
  })
}

function lintKind(
  procedure: Procedure,
  step: Step,
  index: number,
  values: ProcedureValues,
  computations: typeof COMPUTATIONS,
): Finding[] {
  const base = ['steps', index]
  if (step.kind === 'gate') return lintGate(procedure, step, base)
  if (step.kind === 'read') return lintRead(procedure, step, base)
  if (step.kind === 'observe') return repeatedIds([...base, 'conditions'], step.conditions, 'condition')
  if (step.kind === 'judge') return lintJudge(procedure, step, index, values, computations)
  if (step.kind === 'decide') return lintDecide(procedure, step, index)
  if (step.kind === 'part' && step.use === procedure.procedure) {
    const message = `${quote(step.use)} would stand inside itself.`
    return [finding([...base, 'use'], 'part-loop', message)]
  }
  return []
}

function lintCommon(procedure: Procedure, step: Step, index: number): Finding[] {
  const base = ['steps', index]
  const found = [...lintExposure(procedure, step, index), ...lintLetsIn(procedure, step, index)]
  if (RESERVED_NAMES.has(step.id)) {
    const message = `${quote(step.id)} is a word that rules keep for themselves.`
    found.push(finding([...base, 'id'], 'reserved-word', message, 'choose another id'))
  }
  const words = step.text?.trim().split(/\s+/).length ?? 0
  if (words > MOST_WORDS) {
    const message = `The text of ${quote(step.id)} has ${words} words, and ${MOST_WORDS} is the most a person reads at a glance.`
    found.push(warning([...base, 'text'], 'long-text', message, 'split the step, or move the reason to why'))
  }
  return found
}

function lintExposure(procedure: Procedure, step: Step, index: number): Finding[] {
  const base: Path = ['steps', index]
  const exposes = step.exposes ?? []
  const found = exposes.flatMap((id, n) => lintHazard(procedure, id, index, [...base, 'exposes', n]))
  const missing = (['hazard', 'trouble'] as const).filter((key) => step[key] === undefined)
  if (missing.length > 0 && (exposes.length > 0 || step.kind === 'gate')) {
    const reason = step.kind === 'gate' ? 'is a gate' : 'exposes people to something'
    const message = `${quote(step.id)} ${reason} and has no ${list(missing, 'or')} line.`
    found.push(
      finding(
        [...base, 'id'],
        'no-hazard-line',
        message,
        'say what can hurt (hazard) and what to do then (trouble)',
      ),
    )
  }
  return found
}

function letsIn(step: Step): readonly string[] {
  return 'lets_in' in step ? (step.lets_in ?? []) : []
}

/** What is let in again has to be held by some gate; which of them shut is then the engine's to see. */
function lintLetsIn(procedure: Procedure, step: Step, index: number): Finding[] {
  const declared = procedure.hazards.map((hazard) => hazard.id)
  return letsIn(step).flatMap((id, n): Finding[] => {
    const path = ['steps', index, 'lets_in', n]
    if (!declared.includes(id)) return [unknownId(path, id, 'hazard', declared)]
    // Inside a part may be a gate that holds it; that is seen only with its text, in the checks of the job.
    if (procedure.steps.some((s) => s.kind === 'part' || (s.kind === 'gate' && s.holds.includes(id))))
      return []
    const message = `${quote(id)} is let in here, and no gate holds it.`
    return [finding(path, 'not-held', message, 'name it in holds of a gate before the steps that face it')]
  })
}

function lintHazard(procedure: Procedure, id: string, index: number, path: Path): Finding[] {
  const declared = procedure.hazards.map((hazard) => hazard.id)
  if (!declared.includes(id)) return [unknownId(path, id, 'hazard', declared)]
  const earlier = procedure.steps.slice(0, index)
  if (earlier.some((s) => s.kind === 'gate' && s.holds.includes(id))) return []
  // A part that stands earlier may hold it; that is seen only with its text, in the checks of the job.
  if (earlier.some((s) => s.kind === 'part')) return []
  const later = procedure.steps.slice(index).find((s) => s.kind === 'gate' && s.holds.includes(id))
  const message =
    later === undefined
      ? `${quote(id)} is held back by no gate before this step.`
      : `${quote(id)} is held back only by ${quote(later.id)}, which does not stand before this step.`
  return [
    finding(
      path,
      'not-held',
      message,
      'put a gate that holds it before the first step that exposes people to it',
    ),
  ]
}

interface Rules {
  readonly rules: Map<number, CompiledRule>
  readonly values: ProcedureValues
  readonly computations: typeof COMPUTATIONS
}

/** Puts the rule in `rules` if it holds together. */
function lintWhen(
  procedure: Procedure,
  step: Step,
  index: number,
  { rules, values, computations }: Rules,
): Finding[] {
  if (step.when === undefined) return []
  if (step.kind === 'gate') {
    const path = ['steps', index, 'when']
    const message = `The gate ${quote(step.id)} has a condition, and a gate always stands.`
    return [
      finding(path, 'conditional-gate', message, 'delete when; put a condition on the steps behind the gate'),
    ]
  }
  const compiled = lintRule(procedure, index, step.when.rule, values, computations)
  if ('found' in compiled) return compiled.found
  rules.set(index, compiled.rule)
  return []
}
