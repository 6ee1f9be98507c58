// What would become void by the answer to a question, in the first question of its kind: before anything happens, and in the question
// itself, as what was said above it may be out of sight on a low terminal.
import { findReading } from '../job/admit-change.ts'
import { lastKey } from '../job/admit-gate.ts'
import type { Definitions } from '../job/definitions.ts'
import type { FallingAt } from '../job/falls-with.ts'
import { gateState } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { nobodyIn } from '../job/nobody-in.ts'
import { type Rehearsal, rehearsed } from '../job/rehearse.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'
import { voidWarning } from './heard.ts'

/** A sentence each; none where nothing would. */
export function wouldVoidLines(defs: Definitions, state: State, question: Ask): string[] {
  switch (question.kind) {
    case 'correct-why': {
      const reading = findReading(state, question.of)
      if (reading === null) return []
      return [
        ...voidWarning(defs, state, reading.step),
        ...falling(defs, state, { do: 'correct', of: question.of }),
      ]
    }
    case 'take-back-why':
      return [
        ...voidWarning(defs, state, question.place.split('.')[0] ?? ''),
        ...falling(defs, state, { do: 'take-back-not-applicable', place: question.place }),
      ]
    case 'finding-why':
      return [
        ...voidWarning(defs, state, question.step),
        ...falling(defs, state, { do: 'correct-finding', step: question.step }),
      ]
    case 'reopen-why':
      return [
        ...voidWarning(defs, state, question.step),
        ...falling(defs, state, { do: 'reopen', step: question.step }),
      ]
    case 'sheet-why':
      return question.item.step === null ? [] : voidWarning(defs, state, question.item.step)
    case 'evidence-why': {
      const first = nobodyIn(defs, state)
        ? 'It is asked again; nobody was let in yet.'
        : 'The hold point would fall, and everybody comes out.'
      const { step, item } = question
      const [own, ...others] = rehearsed(defs, state, { do: 'take-back-evidence', step, item })
      return [
        own === undefined
          ? first
          : `${first} This would make void what was keyed for: ${itemsText(defs, own)}.`,
        ...others.map((at) => fallsLine(defs, at)),
      ]
    }
    case 'ask-again-sure': {
      const [own, ...others] = rehearsed(defs, state, { do: 'ask-again', step: question.step })
      if (own === undefined) return []
      const last = lastKey(state, own.gate)
      const shown = last === null ? undefined : gateState(state, own.gate.id).given[last]?.shown
      return [
        ...(last === null
          ? []
          : [`Last: ${keyLabel(defs, own.gate, last)}${shown === undefined ? '' : `, ${shown}`}.`]),
        `This would make void what was keyed for: ${itemsText(defs, own)}.`,
        ...others.map((at) => fallsLine(defs, at)),
      ]
    }
    default:
      return []
  }
}

function falling(defs: Definitions, state: State, what: Rehearsal): string[] {
  // On a sheet no hold point opens, so none falls.
  return state.paper === null ? rehearsed(defs, state, what).map((at) => fallsLine(defs, at)) : []
}

function fallsLine(defs: Definitions, at: FallingAt): string {
  return `Hold point ${at.gate.number} would fall: ${itemsText(defs, at)}.`
}

function itemsText(defs: Definitions, { gate, items }: FallingAt): string {
  return items.map((key) => keyLabel(defs, gate, key)).join('; ')
}
