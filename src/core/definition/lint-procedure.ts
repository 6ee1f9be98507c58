// Cross-checks of one procedure whose shape is right: ids, references, the order of steps, and what holds people back.
// What depends on the machine, or on the inside of a part, is checked with the job (lint-job.ts).
import { compileRule } from '../rules/rule.ts'
import {
  type Finding,
  finding,
  list,
  type Path,
  quote,
  repeatedIds,
  unknownId,
  warning,
} from './lint-common.ts'
import { lintGate } from './lint-procedure-gate.ts'
import { lintDecide, lintJudge } from './lint-procedure-judge.ts'
import { lintRead } from './lint-procedure-read.ts'
import type { Procedure, Step } from './procedure.ts'

/** More than this is not read at a glance; the design sets it (text of a step, hazard and trouble apart). */
const MOST_WORDS = 40

/** Words the expression language keeps for itself (CEL language definition, "Reserved words"; listed from memory). */
const RESERVED = new Set(
  (
    'true false null in as break const continue else for function if import let loop package namespace return ' +
    'var void while'
  ).split(' '),
)

/** All findings of one procedure, in no set order. */
export function lintProcedure(procedure: Procedure): Finding[] {
  return [
    ...repeatedIds(['hazards'], procedure.hazards, 'hazard'),
    ...repeatedIds(['seats'], procedure.seats, 'seat'),
    ...repeatedIds(['steps'], procedure.steps, 'step'),
    ...procedure.steps.flatMap((step, index) => [
      ...lintCommon(procedure, step, index),
      ...lintKind(procedure, step, index),
    ]),
  ]
}

function lintKind(procedure: Procedure, step: Step, index: number): Finding[] {
  const base = ['steps', index]
  if (step.kind === 'gate') return lintGate(procedure, step, base)
  if (step.kind === 'read') return lintRead(procedure, step, base)
  if (step.kind === 'observe') return repeatedIds([...base, 'conditions'], step.conditions, 'condition')
  if (step.kind === 'judge') return lintJudge(procedure, step, index)
  if (step.kind === 'decide') return lintDecide(procedure, step, index)
  return []
}

function lintCommon(procedure: Procedure, step: Step, index: number): Finding[] {
  const base = ['steps', index]
  const found = [...lintExposure(procedure, step, index), ...lintWhen(procedure, step, index)]
  if (RESERVED.has(step.id)) {
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

function lintWhen(procedure: Procedure, step: Step, index: number): Finding[] {
  if (step.when === undefined) return []
  const path = ['steps', index, 'when']
  if (step.kind === 'gate') {
    const message = `The gate ${quote(step.id)} has a condition, and a gate always stands.`
    return [
      finding(path, 'conditional-gate', message, 'delete when; put a condition on the steps behind the gate'),
    ]
  }
  const strangers = lintRuleWords(procedure, step.when.rule, index, [...path, 'rule'])
  if (strangers.length > 0) return strangers
  const earlier = procedure.steps.slice(0, index).map((s) => s.id)
  const usable = [...new Set(earlier)].filter((id) => !RESERVED.has(id))
  const rule = compileRule(step.when.rule, usable)
  if (rule.ok) return []
  const hint =
    usable.length === 0
      ? 'no step stands before this one'
      : 'a rule compares earlier steps, as in: strip == "present"'
  return [finding([...path, 'rule'], rule.error.code, rule.error.say, hint)]
}

/** Names in a rule that are no earlier step; said in the author's terms before the rule is compiled. */
function lintRuleWords(procedure: Procedure, rule: string, index: number, path: Path): Finding[] {
  const bare = rule.replace(/"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/g, ' ')
  // A name behind a dot or in front of a bracket is no step; the compiler says what it thinks of those.
  const names = new Set([...bare.matchAll(/(?<![\w.])[A-Za-z_]\w*(?!\s*\(|\w)/g)].map((match) => match[0]))
  const ids = procedure.steps.map((s) => s.id)
  const earlier = new Set(ids.slice(0, index))
  const strangers = [...names].filter((name) => !earlier.has(name) && !RESERVED.has(name))
  return strangers.slice(0, 1).map((name) => {
    if (!ids.includes(name)) return unknownId(path, name, 'step', [...earlier])
    const message = `${quote(name)} does not stand before this step, so its outcome is not known yet.`
    return finding(path, 'used-too-early', message, 'a rule names steps that stand before its own')
  })
}
