// What heads a question at the desk, where the job itself would ask which machine somebody stands at: nobody stands at one there.
import type { Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { openWords } from '../job/open-words.ts'
import type { State } from '../job/state.ts'
import type { Ask } from '../talk/ask.ts'
import { wordLine } from '../talk/radio-words.ts'
import { type Row, row } from './block.ts'

export interface DeskHead {
  readonly margin: string
  readonly title: string
  readonly rows: readonly Row[]
}

/** Null where what the job asks is the desk’s too. Who is called out of a hold point stays above it (`must`): only the name of it gives way. */
export function deskHead(defs: Definitions, state: State, prompt: Prompt, question: Ask): DeskHead | null {
  if (!state.atDesk) return null
  const isOfWork = prompt.kind === 'tag' || prompt.kind === 'clear'
  const head = (title: string, rows: readonly Row[] = []) => ({ margin: '', title, rows })
  switch (question.kind) {
    case 'countersign-who':
      return head(
        'Said by radio, and not signed for yet',
        openWords(state).map((word) => row(wordLine(defs, state, word), 'caution')),
      )
    case 'countersign-answer':
      return head(
        `Said by radio, by ${question.person}?`,
        openWords(state)
          .filter(({ lead }) => lead === question.person)
          .map((word) => row(wordLine(defs, state, word), 'caution')),
      )
    case 'note':
      return head('A note into the log of this job')
    case 'account-which':
    case 'account-who':
      return head('What was placed, looked at by two people')
    case 'pin':
      return isOfWork ? head(`Signed by ${question.person}`) : null
    default:
      return isOfWork ? head('A question at the desk') : null
  }
}
