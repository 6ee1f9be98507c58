// Which words of a step rules can tell apart, and which rules rest on figures: those are searched both ways.

import type { StepOf } from '../definition/procedure.ts'
import { type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { waitsFor } from '../job/next.ts'
import { oncePer, oncePerPair } from '../lib/once.ts'
import { VERDICT_WORDS } from '../metrology/verdict.ts'
import { isOpenRule } from './free.ts'

export interface WordClasses {
  /** One word of each class. */
  readonly examples: readonly string[]
  readonly isToldApart: boolean
  /** The class of a word; null where no rule looks at the step. */
  classOf(word: string): string | null
}

/** A verdict that no rule looks at: what may be decided on it, and what may fall with it, hangs on which of three it is. */
const BY_CHOICES: WordClasses = {
  examples: ['ACCEPT', 'REWORK', 'HOLD'],
  isToldApart: true,
  classOf: (word) => (word === 'HOLD' ? word : word === 'REWORK' || word === 'REPLACE' ? 'REWORK' : 'other'),
}

export const wordClasses = oncePerPair((defs: Definitions, placed: PlacedStep): WordClasses => {
  const words = wordsOf(placed)
  const own = rulesOf(defs).filter(
    (p) => !restsOnFigures(defs, p) && (p.rule?.names ?? []).some((name) => p.scope + name === placed.id),
  )
  if (own.length === 0 && placed.step.kind === 'judge') return BY_CHOICES
  const waits = (word: string) => placed.step.kind === 'decide' && waitsFor(placed.step, word)
  if (own.length === 0 && !words.some(waits))
    return { examples: words.slice(0, 1), isToldApart: false, classOf: () => null }
  // A rule over this step alone sorts its words; where other steps come in too, every word is a class of its own.
  const alone = own.every((p) => p.rule?.names.length === 1)
  const classOf = (word: string): string =>
    `${waits(word) ? 'waits ' : ''}${alone ? own.map((p) => actOf(p, word)).join('/') : word}`
  const examples = new Map(words.map((word) => [classOf(word), word]))
  return { examples: [...examples.values()], isToldApart: true, classOf }
})

/** Steps whose words rules can tell apart. */
export const wordedSteps = oncePer((defs: Definitions): readonly PlacedStep[] =>
  defs.steps.filter((placed) => wordClasses(defs, placed).isToldApart),
)

/** What becomes of a step with a rule over one word. */
function actOf({ rule, step }: PlacedStep, word: string): string {
  const outcome = rule?.evaluate(new Map([[rule.names[0] ?? '', { is: 'word', word }]])) ?? 'unknown'
  if (outcome === 'unknown') return step.when?.unknown ?? outcome
  return outcome === 'true' ? 'do' : 'skip'
}

/** Every word that the step can come to. */
function wordsOf({ step }: PlacedStep): readonly string[] {
  switch (step.kind) {
    case 'tell':
      return ['done']
    case 'confirm':
      return ['seen']
    case 'observe':
      return step.conditions.map((c) => c.id)
    case 'judge':
      return VERDICT_WORDS
    case 'decide':
      return step.choices
    case 'gate':
    case 'read':
    case 'part':
      return []
  }
}

/** Every step, or part, with a rule: each once. */
export const rulesOf = oncePer((defs: Definitions): readonly PlacedStep[] =>
  [...new Set(defs.steps.flatMap((placed) => [...placed.inside, placed]))].filter((p) => p.rule !== null),
)

/** Whether what the rule comes to hangs on how large something is: then it is searched as true, false and unknown. */
export function restsOnFigures(defs: Definitions, placed: PlacedStep): boolean {
  if (isOpenRule(placed)) return true
  return (placed.rule?.names ?? []).some((name) => {
    if (defs.values.some((v) => v.scope === placed.scope && v.id === name)) return true
    return defs.steps.find((s) => s.id === placed.scope + name)?.step.kind === 'read'
  })
}

/** The read steps behind a rule over figures, by id. */
export function readsBehind(defs: Definitions, placed: PlacedStep): string[] {
  const ids = (placed.rule?.names ?? []).flatMap((name) => {
    const value = defs.values.find((v) => v.scope === placed.scope && v.id === name)
    return value === undefined ? [placed.scope + name] : value.steps
  })
  return ids.filter((id) => defs.steps.some((s) => s.id === id && s.step.kind === 'read'))
}

/** The step that a decision is about. */
export function judgedBy(
  defs: Definitions,
  decide: PlacedStep & { readonly step: StepOf<'decide'> },
): PlacedStep {
  return stepById(defs, decide.scope + decide.step.about)
}
