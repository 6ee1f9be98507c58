// What would become void by the answer to a question, in the first question of its kind: before anything happens, and in the question
// itself, as what was said above it may be out of sight on a low terminal.
import { fallsWithItem, findReading } from '../job/admit-change.ts'
import { lastGiven } from '../job/admit-gate.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { GateStep } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { nobodyIn } from '../job/nobody-in.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'
import { voidWarning } from './heard.ts'

/** A sentence each; none where nothing would. */
export function wouldVoidLines(defs: Definitions, state: State, question: Ask): string[] {
  switch (question.kind) {
    case 'correct-why': {
      const reading = findReading(state, question.of)
      return reading === null ? [] : voidWarning(defs, state, reading.step)
    }
    case 'take-back-why':
      return voidWarning(defs, state, question.place.split('.')[0] ?? '')
    case 'finding-why':
    case 'reopen-why':
      return voidWarning(defs, state, question.step)
    case 'sheet-why':
      return question.item.step === null ? [] : voidWarning(defs, state, question.item.step)
    case 'evidence-why': {
      const gate = asKind(stepById(defs, question.step), 'gate')
      const first = nobodyIn(defs, state)
        ? 'It is asked again; nobody was let in yet.'
        : 'The hold point would fall, and everybody comes out.'
      const [own, ...others] = fallsWithItem(defs, state, question.step, question.item)
      return [
        `${first} ${itemsLine(defs, gate, own?.items ?? [])}`,
        ...others.map((at) => `At hold point ${at.gate.number}: ${itemsLine(defs, at.gate, at.items)}`),
      ]
    }
    case 'ask-again-sure': {
      const gate = asKind(stepById(defs, question.step), 'gate')
      return [itemsLine(defs, gate, lastGiven(defs, state, gate))]
    }
    default:
      return []
  }
}

function itemsLine(defs: Definitions, gate: GateStep, items: readonly string[]): string {
  return `This would make void: ${items.map((key) => keyLabel(defs, gate, key)).join('; ')}.`
}
