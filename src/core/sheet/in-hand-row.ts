// What the hidden machine showed and nobody has keyed yet stands with the question on the screen, once it is no longer right above it.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { inHand } from '../practice/in-hand.ts'
import type { Ask } from '../talk/ask.ts'
import { isSmall, row, type SheetStyle } from './block.ts'
import type { PromptView } from './prompt-view.ts'

export interface InHandInput {
  readonly view: PromptView
  readonly question: Ask | null
  readonly style: SheetStyle
  /** Entries from this one on stand right above the question. */
  readonly aboveFrom: number
}

/** On a small screen a figure only: what is seen there is longer than the question, and looking again costs nothing. */
export function withInHand(
  defs: Definitions,
  state: State,
  { view, question, style, aboveFrom }: InHandInput,
): PromptView {
  if (state.practice === null || view.secrecy !== 'open') return view
  const isOfReading =
    question?.kind === 'correct-why' ||
    question?.kind === 'correct-value' ||
    question?.kind === 'correct-kept'
  if (question !== null && !isOfReading) return view
  const held = inHand(defs, state, isOfReading ? question.of : null)
  if (held === null || held.seq >= aboveFrom || (!held.isFigure && isSmall(style))) return view
  return { ...view, ask: [row(held.text), ...view.ask] }
}
