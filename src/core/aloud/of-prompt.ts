// What is said aloud of what is asked now: the hazard first, then the step, where, how, and the question.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import type { Row } from '../sheet/block.ts'
import type { Talk } from '../talk/heard.ts'
import { spoken } from './of-entry.ts'
import { promptPieces } from './prompt-pieces.ts'

export interface Piece {
  readonly text: string
  /** Hazard and what to do in trouble. */
  readonly hazard: boolean
  /** Said once at each step; what is asked is said each time it is asked. */
  readonly once: boolean
}

export interface PromptAloud {
  /** Names what the pieces belong to: while it stays the same, what was said once is not said again. */
  readonly step: string
  readonly pieces: readonly Piece[]
}

/** No row is cut by it, and what is drawn is not said. */
const STYLE = { width: 80, record: 'EXAMPLE', ascii: true } as const

export function promptAloud(defs: Definitions, state: State, talk: Talk): PromptAloud {
  const told = promptPieces(defs, state, talk, STYLE)
  const piece = (rows: readonly Row[], more: Partial<Piece> = {}): Piece => ({
    text: spoken(
      defs,
      rows.filter((r) => r.tone !== 'faint' && r.keep !== true).map((r) => r.text),
    ),
    hazard: false,
    once: true,
    ...more,
  })
  const pieces = [
    piece(told.hazard, { hazard: true }),
    piece([{ text: told.view.title, tone: 'strong' }]),
    piece(told.what),
    piece(told.ask, { once: false }),
    piece(told.with),
  ]
  return { step: told.step, pieces: pieces.filter(({ text }) => text !== '') }
}
