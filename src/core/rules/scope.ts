// What a rule or a value of a procedure may refer to: what stands before it, and what the machine record holds.
import type { Computation } from '../compute/computation.ts'
import type { Procedure, Step } from '../definition/procedure.ts'
import { a, quote } from '../lib/wording.ts'
import { VERDICT_WORDS } from '../metrology/verdict.ts'
import { FACT_TYPES } from './machine-facts.ts'
import { RESERVED_NAMES } from './reserved.ts'
import type { Barred, NameType, Scope } from './types.ts'

/** A named value of the procedure as far as others need to know of it. */
export interface NamedValue {
  readonly id: string
  readonly type: NameType
  /** Index of the last step it waits for; -1 when it waits for none. */
  readonly knownAfter: number
}

/** Names for an expression that stands before step `index` (all steps for one that stands behind them). */
export function scopeAt(
  procedure: Procedure,
  index: number,
  values: readonly NamedValue[],
  computations: ReadonlyMap<string, Computation>,
): Scope {
  const names = new Map<string, NameType>(FACT_TYPES)
  const barred = new Map<string, Barred>()
  const taken = new Set<string>(RESERVED_NAMES)
  procedure.steps.forEach((step, at) => {
    if (taken.has(step.id)) return
    taken.add(step.id)
    const type = typeOfStep(step)
    if (at >= index) barred.set(step.id, tooEarly(step.id, at === index))
    else if (type === null) barred.set(step.id, noOutcome(step))
    else names.set(step.id, type)
  })
  for (const { id, type, knownAfter } of values) {
    if (taken.has(id)) continue
    taken.add(id)
    if (knownAfter < index) names.set(id, type)
    else barred.set(id, valueTooEarly(id, procedure.steps[knownAfter]?.id ?? '', knownAfter === index))
  }
  return { names, barred, computations }
}

/** What a step comes to; null for one that comes to nothing that can be compared. */
export function typeOfStep(step: Step): NameType | null {
  switch (step.kind) {
    case 'confirm':
      return { is: 'word', words: ['seen'] }
    case 'observe':
      // Of several at once no one word tells what it came to.
      if (step.several === true) return null
      return { is: 'word', words: step.conditions.map((condition) => condition.id) }
    case 'judge':
      return { is: 'word', words: VERDICT_WORDS, unknownWord: 'HOLD' }
    case 'decide':
      return { is: 'word', words: step.choices }
    case 'read': {
      const places = step.stations.length * Math.max(1, step.axes?.length ?? 1)
      return { is: places === 1 ? 'one' : 'list', of: step.quantity }
    }
    default:
      return null
  }
}

/** `isOwn`: the rule stands in that very step, and there is nothing to move. */
function tooEarly(id: string, isOwn: boolean): Barred {
  return {
    code: 'used-too-early',
    say: `${quote(id)} does not stand before this step, so its outcome is not known yet.`,
    hint: isOwn ? 'a step cannot ask for its own outcome' : `move this step below ${quote(id)}`,
  }
}

function valueTooEarly(id: string, step: string, isOwn: boolean): Barred {
  return {
    code: 'used-too-early',
    say: `${quote(id)} waits for ${quote(step)}, which does not stand before this step.`,
    hint: isOwn ? 'a step cannot ask for its own outcome' : `move this step below ${quote(step)}`,
  }
}

function noOutcome(step: Step): Barred {
  if (step.kind === 'observe')
    return {
      code: 'no-outcome',
      say: `${quote(step.id)} may come to several conditions at once, so there is no one word to compare.`,
      hint: 'leave out several, or ask for what the rule needs in a step of its own',
    }
  return {
    code: 'no-outcome',
    say: `${quote(step.id)} is ${a(step.kind)} step, which has no outcome to compare.`,
    hint: 'a rule names steps of the kinds confirm, observe, read, judge and decide',
  }
}
