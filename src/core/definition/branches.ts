// Which ways lead through a procedure, as far as rules can tell: every word that an observe, confirm, judge or decide
// step can come to is tried, in order, and a step whose rule is not met has no word. What this finds possible may still
// be ruled out by something it does not look at; what it finds impossible is impossible.
import type { CompiledRule, RuleOutcome } from '../rules/rule.ts'
import { typeOfStep } from '../rules/scope.ts'
import type { Procedure, Step } from './procedure.ts'

/** What becomes of a step with a rule on one way through. */
export type Act = 'do' | 'skip' | 'hold'

/** Words so far, by step id. A step that was skipped is not in it. */
export type Words = ReadonlyMap<string, string>

export interface Branches {
  readonly procedure: Procedure
  /** The rule of each step that has one that holds together, by index. */
  readonly rules: ReadonlyMap<number, CompiledRule>
}

/** Tries before giving up; a rule on three steps of four words each takes well under a hundred. */
const MOST_TRIES = 4000

/** Every word the step can come to, or undefined for a step that comes to none. */
export function wordsOf(step: Step | undefined): readonly string[] | undefined {
  const type = step === undefined ? null : typeOfStep(step)
  if (type?.is !== 'word') return undefined
  // A STOP is said by a person; no computation gives it.
  return step?.kind === 'judge' ? type.words.filter((word) => word !== 'STOP') : type.words
}

/** True when every name in the rule is a step that comes to one of a few words, so that all cases can be tried. */
export function canBeTried(branches: Branches, rule: CompiledRule): boolean {
  return rule.names.every((name) => wordsOf(stepNamed(branches, name)) !== undefined)
}

export function stepNamed({ procedure }: Branches, name: string): Step | undefined {
  return procedure.steps.find((step) => step.id === name)
}

/**
 * Calls `visit` once for each way through the steps above `index` that the rules at `about` hang on, directly or through
 * the rules of the steps they name. Ways that a hold ends before are left out: with `holds`, also a hold at a step that
 * nothing here hangs on. False if there are too many ways.
 */
export function eachWay(
  branches: Branches,
  about: readonly number[],
  index: number,
  visit: (words: Words) => void,
  options: { readonly fixed?: Words; readonly holds?: boolean } = {},
): boolean {
  const { fixed = new Map(), holds = false } = options
  const holding = holds ? [...branches.rules.keys()].filter((at) => at < index && mayHold(branches, at)) : []
  const order = new Set([...hangsOn(branches, [...about, ...holding]), ...holding])
  const inOrder = [...order].filter((at) => at < index).sort((a, b) => a - b)
  return walkInOrder(branches, inOrder, visit, fixed)
}

function mayHold({ procedure }: Branches, index: number): boolean {
  return procedure.steps[index]?.when?.unknown === 'hold'
}

function walkInOrder(
  branches: Branches,
  order: readonly number[],
  visit: (words: Words) => void,
  fixed: Words,
): boolean {
  let tries = 0
  const walk = (at: number, words: Words): boolean => {
    tries += 1
    if (tries > MOST_TRIES) return false
    const index = order[at] ?? -1
    const step = branches.procedure.steps[index]
    if (step === undefined) {
      visit(words)
      return true
    }
    return actsAt(branches, index, words).every((act) => {
      if (act === 'hold') return true
      const choices = act === 'skip' ? undefined : choicesOf(step, fixed)
      if (choices === undefined) return walk(at + 1, words)
      return choices.every((word) => walk(at + 1, new Map([...words, [step.id, word]])))
    })
  }
  return walk(0, new Map())
}

function choicesOf(step: Step, fixed: Words): readonly string[] | undefined {
  const only = fixed.get(step.id)
  return only === undefined ? wordsOf(step) : [only]
}

/** What may become of the step at `index` once these words are known; all three where its rule cannot be tried. */
export function actsAt(branches: Branches, index: number, words: Words): readonly Act[] {
  const step = branches.procedure.steps[index]
  if (step?.when === undefined) return ['do']
  const rule = branches.rules.get(index)
  if (rule === undefined || !canBeTried(branches, rule)) return ['do', 'skip', 'hold']
  const outcome = outcomeOf(rule, words)
  if (outcome === 'unknown') return [step.when.unknown]
  return [outcome === 'true' ? 'do' : 'skip']
}

/** Indices of the steps that the rules at `about` name, and of those that the rules of these name, and so on. */
function hangsOn(branches: Branches, about: readonly number[]): Set<number> {
  const found = new Set<number>()
  const visit = (index: number): void => {
    for (const name of branches.rules.get(index)?.names ?? []) {
      const at = branches.procedure.steps.findIndex((step) => step.id === name)
      if (at === -1 || at >= index || found.has(at)) continue
      found.add(at)
      visit(at)
    }
  }
  about.forEach(visit)
  return found
}

/** What the rule comes to with these words. */
export function outcomeOf(rule: CompiledRule, words: Words): RuleOutcome {
  return rule.evaluate(new Map([...words].map(([id, word]) => [id, { is: 'word', word }])))
}
