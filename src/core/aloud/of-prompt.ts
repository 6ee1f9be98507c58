// What is said aloud of what is asked now: the hazard first, then the step, where, how, and the question.
import type { Definitions } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Row } from '../sheet/block.ts'
import { type PromptView, promptView } from '../sheet/prompt-view.ts'
import { standingAsk } from '../talk/ask.ts'
import type { Talk } from '../talk/heard.ts'
import { spoken } from './of-entry.ts'

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
  const prompt = next(defs, state)
  const view = promptView(defs, state, talk, STYLE)
  const isQuestion = standingAsk(prompt, talk.ask) !== null
  const piece = (rows: readonly Row[], more: Partial<Piece> = {}): Piece => ({
    text: spoken(
      defs,
      rows.filter((r) => r.tone !== 'faint' && r.keep !== true).map((r) => r.text),
    ),
    hazard: false,
    once: true,
    ...more,
  })
  const [asked, with_] = askRows(prompt, view, isQuestion)
  const pieces = [
    piece(view.must, { hazard: true }),
    piece([{ text: view.title, tone: 'strong' }]),
    piece(rowsOf(prompt, view)),
    piece(asked, { once: false }),
    piece(with_),
  ]
  return { step: stepOf(prompt), pieces: pieces.filter(({ text }) => text !== '') }
}

function stepOf(prompt: Prompt): string {
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  return placed === null ? prompt.kind : placed.id
}

/** The boxes of a hold point are for the eye: what is asked says its line anyway. What fell is said. */
function rowsOf(prompt: Prompt, view: PromptView): readonly Row[] {
  return prompt.kind === 'evidence' ? view.rows.filter((r) => r.tone === 'caution') : view.rows
}

/** `1st taken: 9.5041 in; ` */
const TAKEN_BEFORE = /^(?:1st taken|Taken): [^;]*; /

/** The question, and what of it is said but once: at a reading its unit and instrument. */
function askRows(prompt: Prompt, view: PromptView, isQuestion: boolean): [readonly Row[], readonly Row[]] {
  const [first, ...rest] = view.ask
  if (prompt.kind !== 'read' || isQuestion || first === undefined) return [view.ask, []]
  // What was taken was read back when it was: whoever reads on reads afresh.
  const [what = '', ...how] = first.text.replace(TAKEN_BEFORE, '').split(/ (?=\()/)
  return [[{ ...first, text: what }, ...rest], how.length === 0 ? [] : [{ ...first, text: how.join(' ') }]]
}
