// The live part of the screen, cut to fit: always at least one row lower than the terminal, with the hazard and what to
// do in trouble on it whatever gives way. When even that has no room, the screen says so and takes nothing but STOP.
import { cut, widthOf } from '../lib/text.ts'
import { type Line, layOut, marginWidth, type Row, row, type SheetStyle, textWidth } from './block.ts'
import type { FootText } from './foot.ts'
import type { PromptView } from './prompt-view.ts'

export interface LiveInput {
  readonly view: PromptView
  readonly foot: FootText
  readonly style: SheetStyle
  /** Rows of the terminal. */
  readonly rows: number
  /** Something to say that is not on record, such as how to leave. */
  readonly notice: string | null
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

const HINT = 'Words: help why readings correct back note n/a leave stop'
const FOOT_RULE = 24

export function fitLive(input: LiveInput): Live {
  const { view, foot, style, rows } = input
  const most = Math.max(1, rows - 1)
  const lines = (list: readonly Row[]): Line[] =>
    list.length === 0 ? [] : layOut({ margin: '', rows: list }, style)
  const head = layOut({ margin: view.margin, rows: [row(view.title, 'strong')] }, style)
  const must = lines([...view.must, ...(foot.warning === null ? [] : [row(foot.warning, 'caution')])])
  const ask = lines([...view.ask, ...(input.notice === null ? [] : [row(input.notice, 'caution')])])
  const fixed = head.length + must.length + ask.length
  const footLine = lines([row(cut(foot.text, textWidth(style)), 'faint')])
  // The line being keyed and the foot are always there.
  let left = most - fixed - 1 - footLine.length
  if (left < 0) return tooSmall(style, fixed + 2 + footLine.length)
  const rule = left >= 1 ? [shortRule(style, 'under')] : []
  left -= rule.length
  const over = left >= 1 ? [shortRule(style, 'over')] : []
  left -= over.length
  const text = lines(view.rows)
  const showText = text.length <= left
  if (showText) left -= text.length
  const hint = widthOf(HINT) <= textWidth(style) && left >= 1 ? lines([row(HINT, 'faint')]) : []
  left -= hint.length
  const drawing = lines(view.drawing)
  const showDrawing = drawing.length > 0 && drawing.length <= left
  return {
    above: [...over, ...head, ...must, ...(showText ? text : []), ...(showDrawing ? drawing : []), ...ask],
    inputMargin: marginOf(view.unit, style),
    inputWidth: textWidth(style),
    below: [...rule, ...footLine, ...hint],
    tooSmall: false,
  }
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

function tooSmall(style: SheetStyle, needed: number): Live {
  const say = cut(`Screen too small: ${needed} rows needed. Stop and leave work.`, textWidth(style))
  return {
    above: layOut({ margin: '', rows: [row(say, 'caution')] }, style),
    inputMargin: marginOf('', style),
    inputWidth: textWidth(style),
    below: [],
    tooSmall: true,
  }
}
