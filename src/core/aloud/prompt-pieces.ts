// What of a prompt is said to people who do not look at it, aloud or in plain lines, piece by piece: what is said once at a step is
// told from what is said each time it is asked. The one place that takes a prompt apart for the ear.
import type { Definitions } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Row, SheetStyle } from '../sheet/block.ts'
import { type PromptView, promptView } from '../sheet/prompt-view.ts'
import { standingAsk } from '../talk/ask.ts'
import type { Talk } from '../talk/heard.ts'

export interface PromptPieces {
  /** Names what the pieces belong to: while it stays the same, what was said once is not said again. */
  readonly step: string
  readonly prompt: Prompt
  readonly view: PromptView
  /** A question within the work stands. */
  readonly isQuestion: boolean
  /** Hazard and what to do in trouble. */
  readonly hazard: readonly Row[]
  readonly what: readonly Row[]
  /** Where the instrument is set, as the drawing shows it; a style that draws has none. */
  readonly where: readonly Row[]
  /** What is measured and to come beside it, and how far a hold point is. */
  readonly beside: readonly Row[]
  /** The question, said each time it is asked. */
  readonly ask: readonly Row[]
  /** At a reading its unit and instrument. */
  readonly with: readonly Row[]
}

export function promptPieces(defs: Definitions, state: State, talk: Talk, style: SheetStyle): PromptPieces {
  const prompt = next(defs, state)
  const view = promptView(defs, state, talk, style)
  const isQuestion = standingAsk(prompt, talk.ask) !== null
  const [where, ...near] = style.linear === true ? (view.drawings[0] ?? []) : []
  const profile = style.linear === true ? (view.profiles[0] ?? []) : []
  const [ask, with_] = askRows(prompt, view, isQuestion)
  const { said, left } = rowsOf(prompt, view)
  return {
    step: stepOf(prompt),
    prompt,
    view,
    isQuestion,
    hazard: view.must,
    what: said,
    where: where === undefined ? [] : [where],
    beside: [...near, ...profile, ...left],
    ask,
    with: with_,
  }
}

function stepOf(prompt: Prompt): string {
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  return placed === null ? prompt.kind : placed.id
}

/** The boxes of a hold point are for the eye: what is asked says its line anyway. Why it is asked again is said; what fell was told as it fell. */
function rowsOf(prompt: Prompt, { rows }: PromptView): { said: readonly Row[]; left: readonly Row[] } {
  if (prompt.kind !== 'evidence') return { said: rows, left: [] }
  const isSaid = (r: Row) => r.tone === 'caution' && !r.text.startsWith('[')
  const isAsked = (r: Row) => r.tone === 'strong'
  return { said: rows.filter(isSaid), left: rows.filter((r) => !isSaid(r) && !isAsked(r)) }
}

/** `1st taken: 9.5041 in; ` */
const TAKEN_BEFORE = /^(?:1st taken|Taken): [^;]*; /

/** The question, and what of it is said but once: at a reading its unit and instrument. */
function askRows(prompt: Prompt, view: PromptView, isQuestion: boolean): [readonly Row[], readonly Row[]] {
  const first = view.ask.findLast(({ tone }) => tone === 'strong')
  const rest = view.ask.filter((one) => one !== first)
  if (prompt.kind !== 'read' || isQuestion || first === undefined) return [view.ask, []]
  // What was taken was read back when it was: whoever reads on reads afresh.
  const [what = '', ...how] = first.text.replace(TAKEN_BEFORE, '').split(/ (?=\()/)
  return [[{ ...first, text: what }, ...rest], how.length === 0 ? [] : [{ ...first, text: how.join(' ') }]]
}
