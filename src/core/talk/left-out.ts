// Which steps their own rule left out, by what it says, and what the steps that it speaks of came to: nothing is left out without a word.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { applicability, isComplete } from '../job/next.ts'
import { ruleWords } from '../job/rule-words.ts'
import { labelsOf, seenAt } from '../job/seen.ts'
import type { State } from '../job/state.ts'
import { stepsBehind } from '../job/values.ts'
import { factsOf } from '../rules/machine-facts.ts'

const FACT = 'machine.'

export interface LeftOut {
  /** The outermost part that its rule leaves out, or the step itself. */
  readonly by: PlacedStep
  readonly steps: readonly PlacedStep[]
}

export function leftOut(defs: Definitions, state: State): LeftOut[] {
  return byPart(
    defs,
    state,
    defs.steps.filter((placed) => isLeftOut(defs, state, placed)),
  )
}

/** A part that was left out as a whole is one. */
export function byPart(defs: Definitions, state: State, out: readonly PlacedStep[]): LeftOut[] {
  const groups = new Map<PlacedStep, PlacedStep[]>()
  for (const placed of out) {
    const by = placed.inside.find((part) => applicability(defs, state, part) === 'skip') ?? placed
    groups.set(by, [...(groups.get(by) ?? []), placed])
  }
  return [...groups].map(([by, steps]) => ({ by, steps }))
}

/** `9`, or `9 to 12`. */
export function numbersOf(steps: readonly PlacedStep[]): string {
  const [first, last] = [steps[0]?.number, steps.at(-1)?.number]
  return first === last ? `${first}` : `${first} to ${last}`
}

/** Of a job that is open the steps ahead are still to come, whatever their rule says by now. */
export function isLeftOut(defs: Definitions, state: State, placed: PlacedStep): boolean {
  return applicability(defs, state, placed) === 'skip' && !isAhead(defs, state, placed)
}

/** No step at hand or behind it was answered. */
export function isAhead(defs: Definitions, state: State, placed: PlacedStep): boolean {
  if (state.closed !== null) return false
  const first = defs.steps.find(
    (one) => applicability(defs, state, one) !== 'skip' && !isComplete(state, one),
  )
  return first !== undefined && placed.number > first.number
}

export function leftOutCount(all: readonly LeftOut[]): number {
  return all.reduce((sum, { steps }) => sum + steps.length, 0)
}

/** A chain of what it may be anything but is told by what it looks at: what that came to stands below. */
export function ruleShort(defs: Definitions, by: PlacedStep): string {
  const words = ruleWords(defs, by)
  return (words.match(/anything but/g)?.length ?? 0) > MOST_BUTS
    ? 'only where what was found and the machine record do not agree with any of several cases'
    : `only if ${words}`
}

const MOST_BUTS = 2

/** `it found: 7 Wear marks, "None"`; a figure is told by its step only. */
export function foundBehind(defs: Definitions, state: State, { rule, scope }: PlacedStep): string[] {
  if (rule === null) return []
  const isFact = (name: string) => name.startsWith(FACT)
  const ids = new Set(
    stepsBehind(
      defs,
      scope,
      rule.names.filter((name) => !isFact(name)),
    ),
  )
  const facts = factsOf(defs.machine)
  const told = [
    ...defs.steps.filter(({ id }) => ids.has(id)).flatMap((placed) => outcome(defs, state, placed)),
    ...rule.names.filter(isFact).flatMap((name) => {
      const value = facts.get(name)
      return value?.is === 'word'
        ? [
            `${name.slice(FACT.length).replaceAll('_', ' ')} by the machine record: ${value.word.replaceAll('_', ' ')}`,
          ]
        : []
    }),
  ]
  return told.length === 0 ? [] : [`it came to: ${[...new Set(told)].join('; ')}`]
}

function outcome(defs: Definitions, state: State, placed: PlacedStep): string[] {
  const { id, step } = placed
  const says = (word: string) => [`${placed.number} ${step.title}: ${word}`]
  if (applicability(defs, state, placed) === 'skip') return says('left out itself')
  const done = state.done[id]
  switch (step.kind) {
    case 'observe':
      return says(`"${labelsOf(defs, id, seenAt(state, id)) || 'not answered'}"`)
    case 'judge': {
      const verdict = state.verdicts[id]
      return says(
        verdict === undefined ? 'not judged' : verdict.void ? 'void' : verdict.verdict.result.verdict,
      )
    }
    case 'decide': {
      const decided = state.dispositions[id]
      return says(
        decided === undefined ? 'not decided' : decided.void ? 'void' : decided.choice.replaceAll('_', ' '),
      )
    }
    case 'confirm':
      return says(done === undefined ? 'not seen to be so' : 'seen to be so')
    default:
      return says('as it was read')
  }
}
