// The live part of the screen, cut to fit: always at least one row lower than the terminal, with the hazard and what to
// do in trouble on it whatever gives way. When even that has no room, the screen says so and takes nothing but STOP.
import { cut, widthOf } from '../lib/text.ts'
import { type Line, layOut, marginWidth, type Row, row, type SheetStyle, textWidth } from './block.ts'
import { drawnIn } from './drawn-in.ts'
import type { FootText } from './foot.ts'
import type { PromptView } from './prompt-view.ts'

export interface LiveInput {
  readonly view: PromptView
  readonly foot: FootText
  readonly style: SheetStyle
  /** Rows of the terminal. */
  readonly rows: number
  /** Columns of the terminal; a sheet wider than it would lose its right-hand side. */
  readonly columns: number
  /** Something to say that is not on record, such as how to leave. */
  readonly notice: string | null
  /** Rows of what was last said above: to keep them in sight, words and drawing of the prompt give way. */
  readonly said?: number
}

export interface Live {
  readonly above: readonly Line[]
  /** Margin of the line being keyed, and the columns left for it. */
  readonly inputMargin: string
  readonly inputWidth: number
  readonly below: readonly Line[]
  /** The terminal cannot hold what must be seen: only STOP and leaving are taken. */
  readonly tooSmall: boolean
}

const WORDS = ['help', 'why', 'ask', 'where', 'correct', 'back', 'note', 'n/a', 'leave', 'stop']
const FEW_WORDS = ['help', 'note', 'leave', 'stop']
/** Within a question the others are no words: what is keyed there is its answer. */
const WORDS_IN_QUESTION = ['back', 'safe', 'stop']
/** At one key, at any moment: the foot says so, or the line of words under it where the foot is full. */
const SAFE_HINT = 'Tab: make safe'
/** Where a path is keyed the first Tab completes it; the second is make safe all the same. */
const SAFE_HINT_AT_PATH = 'Tab twice: make safe'
const FOOT_RULE = 24

interface Parts {
  readonly head: readonly Line[]
  readonly must: readonly Line[]
  readonly ask: readonly Line[]
}

export function fitLive(input: LiveInput): Live {
  const { view, foot, style, rows } = input
  if (input.columns <= style.width) return tooSmall(input, `${style.width + 1} columns wide`)
  const most = Math.max(1, rows - 1)
  const lines = (list: readonly Row[]): Line[] => block(list, style)
  const safeHint = view.path ? SAFE_HINT_AT_PATH : SAFE_HINT
  const footWithSafe = `${foot.text}   ${safeHint}`
  const isInFoot = widthOf(footWithSafe) <= textWidth(style)
  const footLine = lines([row(cut(isInFoot ? footWithSafe : foot.text, textWidth(style)), 'faint')])
  const few = (view.inQuestion ? WORDS_IN_QUESTION : FEW_WORDS).join(', ')
  const all = (view.inQuestion ? WORDS_IN_QUESTION : WORDS).join(' ')
  const hints = isInFoot ? [`Words: ${all}`] : [`${safeHint}   Words: ${few}`, safeHint]
  // The line being keyed and the foot are always there.
  const room = most - 1 - footLine.length
  const tries = [parts(input, 0), parts(input, 1), parts(input, 2), parts(input, 3)]
  const fits = tries.find((p) => height(p) <= room)
  if (fits === undefined) {
    const least = Math.min(...tries.map(height))
    return tooSmall(input, `${least + 2 + footLine.length} rows high`)
  }
  const { head, must, ask } = fits
  let left = Math.max(0, room - height(fits) - (input.said ?? 0))
  const text = lines(view.rows)
  const hintText = hints.find((text) => widthOf(text) <= textWidth(style))
  const hinted = hintText === undefined ? [] : lines([row(hintText, 'faint')])
  const lowest = (view.drawings.at(-1)?.length ?? 0) + hinted.length
  // Words that were read at the first reading of a step give way to the drawing, not the other way about.
  const isDrawingFirst =
    view.wordsKnown && view.drawings.length > 0 && lowest <= left && lowest + text.length > left
  const showText = text.length <= left && !isDrawingFirst
  if (showText) left -= text.length
  const hint = left >= 1 ? hinted : []
  left -= hint.length
  const { rules, drawn } = drawnIn(left, view, style)
  const rule = rules >= 1 ? [shortRule(style, 'under')] : []
  const over = rules >= 2 ? [shortRule(style, 'over')] : []
  return {
    above: [...over, ...head, ...must, ...(showText ? text : []), ...drawn, ...ask],
    inputMargin: marginOf(view.unit, style),
    inputWidth: textWidth(style),
    below: [...rule, ...footLine, ...hint],
    tooSmall: false,
  }
}

function block(list: readonly Row[], style: SheetStyle): Line[] {
  return list.length === 0 ? [] : layOut({ margin: '', rows: list }, style)
}

/**
 * What never gives way, ever more closely set: 1 leaves out what is faint in the question, 2 shortens a title that only
 * names the step, 3 sets hazard and trouble in one run. Neither of the two ever loses a word.
 */
function parts({ view, foot, style, notice }: LiveInput, close: 0 | 1 | 2 | 3): Parts {
  const titled = layOut({ margin: view.margin, rows: [row(view.title, 'strong')] }, style)
  const must = close < 3 || view.must.length < 2 ? view.must : [runIn(view.must)]
  const ask = close === 0 ? view.ask : view.ask.filter((r) => r.tone !== 'faint')
  return {
    head: close >= 2 && view.titleMayShorten ? titled.slice(0, 1) : titled,
    must: block([...must, ...(foot.warning === null ? [] : [row(foot.warning, 'caution')])], style),
    ask: block([...ask, ...(notice === null ? [] : [row(notice, 'caution')])], style),
  }
}

function runIn(rows: readonly Row[]): Row {
  return row(rows.map((r) => r.text).join(' '), 'caution')
}

function height({ head, must, ask }: Parts): number {
  return head.length + must.length + ask.length
}

/** Sets what is asked off from what is on record, above, and from the foot. Short, so that no resize breaks it in two. */
function shortRule(style: SheetStyle, where: 'over' | 'under'): Line {
  const cross = style.ascii ? '+-' : where === 'over' ? '├─' : '┴─'
  const margin = style.record.padEnd(marginWidth(style) - 2) + cross
  return {
    margin,
    text: (style.ascii ? '-' : '─').repeat(Math.min(FOOT_RULE, textWidth(style))),
    tone: 'faint',
  }
}

function marginOf(unit: string, style: SheetStyle): string {
  return layOut({ margin: unit, rows: [row('x')] }, style)[0]?.margin ?? ''
}

function tooSmall({ style, rows, notice }: LiveInput, needed: string): Live {
  const say = row(
    `Screen too small: make it ${needed}. Until then only stop, leave and safe (Tab) are taken.`,
    'caution',
  )
  const told = block([say, ...(notice === null ? [] : [row(notice, 'caution')])], style)
  return {
    above: told.slice(0, Math.max(0, rows - 2)),
    inputMargin: marginOf('', style),
    inputWidth: textWidth(style),
    below: [],
    tooSmall: true,
  }
}
