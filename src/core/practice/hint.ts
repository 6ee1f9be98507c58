// A hint at the prompt that stands: where to look, never what is there. It costs.
import type { Definitions } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import type { PracticeState } from '../job/practice.ts'
import type { State } from '../job/state.ts'
import { hiddenMachine } from './ask.ts'
import { faultById } from './faults.ts'
import { judgedBy } from './governable.ts'

export function hintFor(defs: Definitions, state: State): string {
  if (state.practice === null) return ''
  const prompt = next(defs, state)
  const here = hereOf(prompt)
  const own = defs.scenario?.hints?.find(({ at }) => at === here)?.says
  if (own === undefined) return listedHint(defs, state.practice, prompt, here)
  // What an instructor says never takes the place of what the list says of a hold point.
  const isHeld = prompt.kind === 'evidence' || prompt.kind === 'tag'
  return isHeld ? `${own} And: ${listedHint(defs, state.practice, prompt, here)}` : own
}

const MOST_USED = 'Which figure has used most of its limit? Divide each by its own.'
/** As `judgeBore` counts it. */
const FROM_NOMINAL =
  'The largest is no share of the whole size: count how far it is from nominal to its limit.'

function listedHint(defs: Definitions, practice: PracticeState, prompt: Prompt, here: string): string {
  const fault = hiddenMachine(defs, practice)
    .faults.map(faultById)
    .find(({ at }) => at.includes(here))
  if (fault !== undefined) return fault.hint
  if (prompt.kind === 'judge')
    return judgedBy(defs, prompt.step.id).includes('largest-diameter')
      ? `${MOST_USED} ${FROM_NOMINAL}`
      : MOST_USED
  return 'Nothing more than the sheet says: do that, and look at all of it.'
}

function hereOf(prompt: Prompt): string {
  switch (prompt.kind) {
    case 'tag':
      return 'plate'
    case 'evidence':
      return `${prompt.gate.step.id}/${prompt.item.evidence.id}`
    default:
      return 'step' in prompt ? prompt.step.step.id : ''
  }
}
