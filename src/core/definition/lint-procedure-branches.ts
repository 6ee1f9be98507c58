// Branches that can never be taken, steps that can never be reached, and verdicts of HOLD that nobody is asked about.

import { list, quote } from '../lib/wording.ts'
import type { CompiledRule } from '../rules/rule.ts'
import {
  actsAt,
  type Branches,
  canBeTried,
  eachWay,
  outcomeOf,
  stepNamed,
  type Words,
  wordsOf,
} from './branches.ts'
import { type Finding, finding, type Path, warning } from './lint-common.ts'
import type { Procedure, StepOf } from './procedure.ts'

/** `rules` holds the rule of each step that has one that holds together, by index. */
export function lintBranches(procedure: Procedure, rules: ReadonlyMap<number, CompiledRule>): Finding[] {
  const left = new Map(rules)
  const branches: Branches = { procedure, rules: left }
  const spoiled = new Set<string>()
  const found: Finding[] = []
  for (const [index, rule] of rules) {
    const id = procedure.steps[index]?.id ?? ''
    // What hangs on a step that is itself never reached would only repeat the complaint, so its rule is left out.
    if (!canBeTried(branches, rule) || rule.names.some((name) => spoiled.has(name))) continue
    const one = lintRule(branches, index)
    if (one === undefined) continue
    found.push(one)
    spoiled.add(id)
    left.delete(index)
  }
  procedure.steps.forEach((step, index) => {
    if (step.kind === 'judge') found.push(...lintHoldRoute(branches, step, index, spoiled))
    if (step.kind === 'decide') found.push(...lintChoices(step, ['steps', index, 'choices']))
  })
  return found
}

function lintRule(branches: Branches, index: number): Finding | undefined {
  const rule = branches.rules.get(index)
  const step = branches.procedure.steps[index]
  if (rule === undefined || step === undefined) return undefined
  const path = ['steps', index, 'when', 'rule']
  const outcomes = independent(branches, index)
  const about = list(rule.names.map(quote))
  const told = list(
    rule.names.map((name) => `${name} is ${list(wordsOf(stepNamed(branches, name)) ?? [], 'or')}`),
  )
  if (outcomes !== undefined && !outcomes.has('true'))
    return finding(path, 'never-true', `The rule is never true, whatever comes of ${about}.`, told)
  if (outcomes !== undefined && !outcomes.has('false'))
    return finding(
      path,
      'always-true',
      `The rule is true whatever comes of ${about}.`,
      `${told}; or delete when`,
    )
  let isReached = false
  const look = (words: Words) => {
    isReached ||= actsAt(branches, index, words).includes('do')
  }
  const isWhole =
    eachWay(branches, [index], index, look, { holds: true }) || eachWay(branches, [index], index, look)
  if (outcomes === undefined || !isWhole) {
    const message = `The rule hangs on more cases than can be tried, so ${quote(step.id)} may never be reached.`
    return warning(path, 'not-tried', message, 'use fewer steps in one rule')
  }
  if (isReached) return undefined
  const message = `${quote(step.id)} can never be reached: no way through the steps above makes its rule true.`
  return finding(
    path,
    'never-reached',
    message,
    'a step that was skipped has no outcome; look at their rules',
  )
}

/** What the rule can come to if each step it names had any of its words; undefined if there are too many cases. */
function independent(branches: Branches, index: number): Set<string> | undefined {
  const rule = branches.rules.get(index)
  const outcomes = new Set<string>()
  if (rule === undefined) return outcomes
  const bare = { procedure: branches.procedure, rules: new Map([[index, rule]]) }
  const free: Branches = { ...bare, procedure: withoutRules(branches.procedure, index) }
  const isWhole = eachWay(free, [index], index, (words) => outcomes.add(outcomeOf(rule, words)))
  return isWhole ? outcomes : undefined
}

function withoutRules(procedure: Procedure, except: number): Procedure {
  const steps = procedure.steps.map((step, index) => {
    if (index === except || step.when === undefined) return step
    const { when: _when, ...rest } = step
    return rest as typeof step
  })
  return { ...procedure, steps }
}

/** Whatever else comes of the steps above, a HOLD must reach a decide step: a job may not end on it in silence. */
function lintHoldRoute(
  branches: Branches,
  judge: StepOf<'judge'>,
  index: number,
  spoiled: ReadonlySet<string>,
): Finding[] {
  const { steps } = branches.procedure
  const decides = steps.flatMap((step, at) => (step.kind === 'decide' && at > index ? [{ step, at }] : []))
  const own = decides.filter(({ step }) => step.about === judge.id)
  const hint = `add a decide step with about: ${judge.id}, and let any rule of it be true for "HOLD"`
  if (own.length === 0) {
    // A decide step about nothing that is there may have been meant for this one.
    const isDoubtful = decides.some(
      ({ step }) => !steps.some((one) => one.kind === 'judge' && one.id === step.about),
    )
    if (isDoubtful) return []
    const message = `Nobody decides what is done when ${quote(judge.id)} comes to HOLD.`
    return [finding(['steps', index, 'id'], 'no-hold-route', message, hint)]
  }
  if (own.some(({ step }) => spoiled.has(step.id))) return []
  const at = own.map((one) => one.at)
  let isMissed = false
  const look = (words: Words) => {
    if (words.get(judge.id) === undefined && wasSkipped(branches, index, words)) return
    const known = new Map([...words, [judge.id, 'HOLD']])
    isMissed ||= !at.some((one) => actsAt(branches, one, known).includes('do'))
  }
  eachWay(branches, [...at, index], Math.max(...at), look, { fixed: new Map([[judge.id, 'HOLD']]) })
  if (!isMissed) return []
  const message = `A HOLD of ${quote(judge.id)} can pass this step by, and nobody decides what is done.`
  return [
    finding(
      ['steps', at[0] ?? index, 'when', 'rule'],
      'no-hold-route',
      message,
      'let the rule be true for "HOLD", and unknown do',
    ),
  ]
}

function wasSkipped(branches: Branches, index: number, words: Words): boolean {
  return !actsAt(branches, index, words).includes('do')
}

/** Beyond a limit neither `accept` nor `hold` is open to the lead, so something else must be. */
function lintChoices(decide: StepOf<'decide'>, path: Path): Finding[] {
  if (decide.choices.some((choice) => choice !== 'accept' && choice !== 'hold')) return []
  const message = `For a verdict of REWORK or REPLACE nothing is left to choose in ${quote(decide.id)}.`
  return [finding(path, 'no-choice', message, 'add rework, repair, replace or concession')]
}
