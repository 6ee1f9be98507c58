// The live part of the screen, cut to fit: always at least one row lower than the terminal, with the hazard and what to do in
// trouble on it whatever gives way. What has no room at once is folded into sides. When even that has no room, the screen says so and
// takes nothing but STOP.
import { widthOf } from '../lib/text.ts'
import { isSmall, type Line, layOut, type Row, row, type SheetStyle, textWidth } from './block.ts'
import { drawnAlone, drawnIn, stripIn } from './drawn-in.ts'
import { type FootText, footLines, footStands, withoutAge } from './foot.ts'
import { isPracticeHinted, leastHint, practiceTurningRow, safeHintOf, wordListsOf } from './foot-hints.ts'
import type { PromptView } from './prompt-view.ts'
import { stroke } from './ruling.ts'
import { besideSides, fold, LEAST } from './sides.ts'
import { countOf, turningRow } from './turning.ts'

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
  /** The side that is up, where it is folded. @default the first */
  readonly side?: SideUp
  /** Lines of a list that are wanted at the least. @default 3 */
  readonly least?: number
  /** Rows of what was last said above: to keep them in sight, words and drawing of the prompt give way. */
  readonly said?: number
  /** Rows of what came on record with the last line: a drawing gives way to them, words do not. */
  readonly taken?: number
  /** Keyed before all was turned over and heard by nobody, which is told. Empty: nothing of it may be drawn. */
  readonly unheard?: string | null
  /** Keyed before all was turned over, and put on the line when the question is up. */
  readonly kept?: string | null
  /** Sides that stand before all of these, and are counted with them. @default 0 */
  readonly before?: number
  /** Of those the first so many are counted with none: a refusal by itself makes no side more of a question. @default 0 */
  readonly uncounted?: number
  /** Rows of a refusal that is drawn over it. @default 0 */
  readonly over?: number
  /** What stands before the question was turned over at an earlier one: those sides are not counted, so that no count jumps. @default false */
  readonly frontRead?: boolean
}

/** Counted from the first of all, or from the first of the question: how many there are changes with what is said above. */
export interface SideUp {
  readonly of: 'front' | 'question'
  readonly n: number
}

export interface Turn {
  readonly at: number
  readonly of: number
  /** Sides before the question: they are not answered. */
  readonly front: number
  /** The question is more urgent than they are. */
  readonly isUrgent: boolean
  /** Tells those sides from others: where they were turned over once, the next question of the step does not show them first. */
  readonly key: string
  /** The first so many are what came with the last line, and have to be read each time. @default 0 */
  readonly toRead?: number
}

export interface Live {
  readonly above: readonly Line[]
  /** Margin of the line being keyed, and the columns left for it. */
  readonly inputMargin: string
  readonly inputWidth: number
  readonly below: readonly Line[]
  /** Null where all of it stands on the screen at once. */
  readonly turn: Turn | null
  /** How many of what is chosen from are on it. */
  readonly choices: number
  /** The terminal cannot hold what must be seen: only STOP and leaving are taken. */
  readonly tooSmall: boolean
}

interface Parts {
  readonly head: readonly Line[]
  readonly must: readonly Line[]
  readonly ask: readonly Line[]
}

/** Beyond it a terminal holds whatever a prompt has. */
const MOST_ROWS = 100

export function fitLive(input: LiveInput): Live {
  if (input.columns <= input.style.width) return tooSmall(input, `${input.style.width + 1} columns wide`)
  const live = fitted(input) ?? fitted({ ...input, least: 1 })
  if (live !== null) return live
  let rows = input.rows + 1
  while (rows < MOST_ROWS && fitted({ ...input, rows, least: 1 }) === null) rows++
  return tooSmall(input, `${rows} rows high`)
}

interface Foot {
  readonly lines: readonly string[]
  /** The hint for make safe stands on the line of the foot itself, so that the words have one of their own only where there is room. */
  readonly isInFoot: boolean
}

/**
 * The foot with all that it has, and with the hint for make safe: on its one line, or on a line under it, beside such words as have
 * room there. It gives way to nothing.
 */
export function wholeFoot(input: LiveInput): Foot {
  const { foot, style, view } = input
  const isOne = widthOf(`${foot.text}   ${safeHintOf(view)}`) <= textWidth(style)
  return withSafe(input, isOne ? [foot.text] : footLines(foot, textWidth(style)))
}

function withSafe({ view, style }: LiveInput, lines: readonly string[]): Foot {
  const hint = safeHintOf(view)
  const fits = (text: string) => widthOf(text) <= textWidth(style)
  // Two columns between them are enough on a narrow sheet.
  const one =
    lines.length > 1 ? undefined : ['   ', '  '].map((gap) => `${lines.join('')}${gap}${hint}`).find(fits)
  if (one !== undefined) return { lines: [one], isInFoot: true }
  const beside = wordListsOf(view).map((words) => `${hint}   Words: ${words.join(' ')}`)
  return { lines: [...lines, beside.find(fits) ?? leastHint(view)], isInFoot: false }
}

/** On one line, where what was just taken would have none in sight else: when it lapses, without its age, and the word of make safe. */
function tightFoot({ view, foot, style }: LiveInput): Foot {
  const [line = ''] = footStands({ ...foot, stands: foot.stands.map(withoutAge) }, textWidth(style))
  const one = `${line}  ${safeHintOf(view).replace('make ', '')}`
  return { lines: [one], isInFoot: widthOf(one) <= textWidth(style) }
}

/** Null where the terminal cannot hold what must be seen. How to come to more is told where not all is listed. */
function fitted(input: LiveInput): Live | null {
  const { view } = input
  if (view.more.length === 0) return fittedAs(input)
  const whole = view.listsPart ? null : fittedAs({ ...input, view: { ...view, more: [] } })
  if (whole !== null && whole.choices === view.choices.length) return whole
  return fittedAs({ ...input, view: { ...view, more: [], ask: [...view.more, ...view.ask] } })
}

function fittedAs(input: LiveInput): Live | null {
  const { view, foot, style, rows } = input
  // Fewer lines of a list are little to choose from; under a long hazard one at a time is better than none.
  const listedLeast = Math.min(input.least ?? 3, view.choices.length)
  const most = Math.max(1, rows - 1)
  const lines = (list: readonly Row[]): Line[] => block(list, style)
  const whole = wholeFoot(input)
  const tries = [parts(input, 0), parts(input, 1), parts(input, 2), parts(input, 3)]
  const text = lines(view.rows)
  // The line being keyed and the foot are always there.
  const roomOver = ({ lines: under }: Foot) => most - 1 - under.length
  const fitting = (footText: Foot) => tries.find((p) => height(p) + listedLeast <= roomOver(footText))
  // The number of the sheet gives way before a question is parted; the step has its own in the margin.
  const narrow = withSafe(input, footStands(foot, textWidth(style)))
  // On a small screen what was just taken is in sight, and where the instrument goes is drawn, if in one line: strokes, the hint and
  // the number of the sheet give way to both.
  const taken = isSmall(style) ? (input.taken ?? 0) : 0
  const strip = isSmall(style) && (input.said ?? 0) === 0 ? stripIn(1, view, style).length : 0
  const wanted = Math.min(1, taken) + strip
  // Words that nobody has read yet give way to neither.
  const unread = view.wordsKnown ? 0 : text.length
  const isWhole = (footText: Foot) =>
    fitting(footText) !== undefined && !losesWords(input, roomOver(footText) - text.length - strip)
  const spareOver = (footText: Foot) => {
    const set = fitting(footText)
    return set === undefined ? 0 : roomOver(footText) - height(set) - listedLeast - unread
  }
  const isRoomy = (footText: Foot) => spareOver(footText) >= wanted
  const tight = tightFoot(input)
  const isTight =
    !isRoomy(whole) && !isRoomy(narrow) && tight.isInFoot && spareOver(tight) > spareOver(narrow)
  // Of a list every line that it can have is worth more than what else the foot tells.
  const isListed = view.choices.length > listedLeast && isSmall(style) && tight.isInFoot
  const feet = isListed
    ? [tight, narrow, whole]
    : wanted === 0 || isRoomy(whole)
      ? [whole, narrow]
      : [...(isTight ? [tight] : []), narrow, whole]
  // A list on a small screen has the lowest foot before it has none: whoever put a slip there has to come to it.
  const isLow =
    wanted > 0 || (view.choices.length > 0 && isSmall(style) && !feet.some((f) => fitting(f) !== undefined))
  const footText = feet.find(isWhole) ?? (isLow ? (tight.isInFoot ? tight : narrow) : whole)
  const footLine = lines(footText.lines.map((line) => row(line, 'faint')))
  const room = roomOver(footText)
  // Hazard and trouble are set in one run before the picture is left out; neither loses a word by it.
  const closer = [wanted, Math.min(1, wanted)].flatMap((more) =>
    strip === 0 ? [] : tries.filter((p) => height(p) + listedLeast + unread + more <= room),
  )
  const tightest = isListed ? tries.findLast((p) => height(p) + listedLeast <= room) : undefined
  const fits = closer[0] ?? tightest ?? fitting(footText)
  // What is chosen from is seen whole lines at a time, or not at all.
  if (fits === undefined && view.choices.length > 0) return null
  if (fits === undefined || !isWhole(footText)) {
    // Folded on a small screen it has always the same foot, the lowest: how many sides there are hangs on no line before.
    const under = !isSmall(style) ? footText : tight.isInFoot ? tight : narrow
    const underLine = lines(under.lines.map((line) => row(line, 'faint')))
    return (
      folded(input, roomOver(under), underLine) ??
      // Lower than any screen it is made for: there make safe is told by the words of the foot no more.
      (under.isInFoot ? null : folded(input, roomOver(under) + 1, underLine.slice(0, -1)))
    )
  }
  const { head, must, ask } = fits
  const free = room - height(fits) - (input.said ?? 0)
  const listed = lines(view.choices.slice(0, Math.max(listedLeast, free)))
  let left = Math.max(0, free - listed.length)
  // Less than all of the words is not worth the line that a drawing could have.
  const hintText = wordListsOf(view)
    .slice(0, view.isPractice ? 2 : 1)
    .map((words) => `Words: ${words.join(' ')}`)
    .find((words) => widthOf(words) <= textWidth(style))
  const hinted = footText.isInFoot && hintText !== undefined ? lines([row(hintText, 'faint')]) : []
  const lowest = (view.drawings.at(-1)?.length ?? 0) + hinted.length
  // Words that were read at the first reading of a step give way to the drawing, not the other way about.
  const isDrawingFirst =
    view.wordsKnown && view.drawings.length > 0 && lowest <= left && lowest + text.length > left
  const isTakenFirst = view.wordsKnown && taken + strip > 0 && text.length + taken + strip > left
  const showText = text.length <= left && !isDrawingFirst && !isTakenFirst
  if (showText) left -= text.length
  // The words that work stay under the question: what was said above goes up by their one line.
  const spare = room - height(fits) - listed.length - (showText ? text.length : 0)
  const hint = spare - wanted >= 1 ? hinted : []
  // On a narrow sheet of practice the words that ask the machine have the line of the sheet's number, or sides are made for them.
  const isUnsaid = isPracticeHinted(view) && isSmall(style) && footText.isInFoot && hint.length === 0
  const isNumbered = footText.lines[0]?.startsWith(foot.sheet) === true
  if (isUnsaid && !isNumbered) {
    const sides = folded(input, room, footLine)
    if (sides !== null) return sides
  }
  const lastLines =
    isUnsaid && isNumbered ? [...lines([row(leastHint(view), 'faint')]), ...footLine.slice(1)] : footLine
  left = Math.max(0, left - hint.length)
  const overTaken = Math.max(0, left - (input.taken ?? 0))
  const full = drawnIn(overTaken, view, style)
  // One line of it is worth more than all that was taken: the last line of that, or the question itself, tells the figure. More than
  // one is not worth the strokes.
  const least = Math.min(1, strip === 0 ? overTaken : left)
  const low = stripIn(Math.max(overTaken - 2, least), view, style)
  const drawn = full.drawn.length > 0 ? full.drawn : low
  const spareRules = low.length === 0 ? left - taken : overTaken - low.length
  const rules = drawn === low ? Math.min(2, Math.max(0, spareRules)) : full.rules
  const rule = rules >= 1 ? [ruled(style)] : []
  const over = rules >= 2 ? [ruled(style)] : []
  return {
    above: [...over, ...head, ...must, ...(showText ? text : []), ...drawn, ...listed, ...ask],
    inputMargin: marginOf(view.unit, style),
    inputWidth: textWidth(style),
    below: [...rule, ...lastLines, ...hint],
    turn: null,
    choices: listed.length,
    tooSmall: false,
  }
}

/** Words that were not read yet have no room at all; where something was said above they give way to it all the same. */
function losesWords(input: LiveInput, room: number): boolean {
  const { view, said = 0 } = input
  return (
    view.rows.length > 0 &&
    view.choices.length === 0 &&
    !view.wordsKnown &&
    said === 0 &&
    height(parts({ ...input, notice: null }, 3)) > room
  )
}

/**
 * What is asked where it is parted. Enter, which turned all its sides, then says nothing of what was done: what is to be done stands with the
 * word that says it.
 */
export function askFolded({ byEnter, ask, rows }: PromptView): readonly Row[] {
  return byEnter ? [...ask.slice(0, -1), ...rows, row('Key done when it is done', 'strong')] : ask
}

function folded(input: LiveInput, room: number, footLine: readonly Line[]): Live | null {
  const { view, foot, style, notice } = input
  const { head } = parts(input, 2)
  const rowsOf = (list: readonly Row[]) => list.map((r) => block([r], style))
  const urgent = foot.warning === null ? [] : [row(foot.warning, 'caution')]
  const over = [...block(urgent, style), ...head]
  const told = notice === null ? [] : block([row(notice, 'caution')], style)
  const most = room - over.length - 1
  // What is on no record gives way before the question does.
  if (most - told.length < LEAST && notice !== null) return folded({ ...input, notice: null }, room, footLine)
  if (most < LEAST) return null
  const must = rowsOf(view.must)
  const text = view.wordsKnown || view.byEnter ? [] : rowsOf(view.rows)
  const ask = rowsOf(askFolded(view).filter((r) => r.tone !== 'faint'))
  const pointer = view.must.length === 0 ? [] : block([pointerTo(view.must)], style)
  const side = input.side ?? { of: 'front', n: 0 }
  const { over: refused = 0, taken = 0, said = 0, before = 0 } = input
  const foldTo = (lines: number, over: number) => {
    const drawn = drawnAlone(lines, view, style)
    const words = drawn.length === 0 ? text : [...text, drawn]
    const strip = (free: number) => stripIn(free, view, style)
    return fold({ must, text: words, ask, room: lines, pointer, taken, over, strip })
  }
  const beside = refused + told.length
  const { sides, front, at } = besideSides(foldTo, side, beside, most, said + told.length)
  const shown = sides[at] ?? []
  const toldHere = shown.length + beside > most ? [] : told
  const isLast = at === sides.length - 1
  const of = before + sides.length
  const counted = before - (input.uncounted ?? 0)
  const count = countOf(
    counted + at,
    { before: counted, front: counted + front, of: counted + sides.length },
    input.frontRead === true,
  )
  const turning =
    isLast && isPracticeHinted(view)
      ? practiceTurningRow(view, count.at, count.of, textWidth(style))
      : turningRow(count.at, count.of, textWidth(style), input.unheard ?? null, input.kept ?? null)
  return {
    above: [...over, ...toldHere, ...shown, ...block([turning], style)],
    inputMargin: marginOf(isLast ? view.unit : '', style),
    inputWidth: textWidth(style),
    below: footLine,
    turn: {
      at: before + at,
      of,
      front: before + front,
      isUrgent: view.ask[0]?.tone === 'caution',
      key: [...must, ...text]
        .flat()
        .map((l) => l.text)
        .join('\n'),
    },
    choices: 0,
    tooSmall: false,
  }
}

/** Where the hazard stands that has no room over the question. It was turned over before, so the key that turns back shows it. */
function pointerTo([first]: readonly Row[]): Row {
  return row(
    first?.text.startsWith('Hazard: ') === true ? 'Hazard: Up shows it' : 'Warning: Up shows it',
    'caution',
  )
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
    head: close >= 2 && view.titleMayShorten ? shortTitle(view, style) : titled,
    must: block([...must, ...(foot.warning === null ? [] : [row(foot.warning, 'caution')])], style),
    ask: block([...ask, ...(notice === null ? [] : [row(notice, 'caution')])], style),
  }
}

function shortTitle({ margin, title }: PromptView, style: SheetStyle): Line[] {
  return layOut({ margin, rows: [{ ...row(title, 'strong'), keep: 'words' }] }, style)
}

function runIn(rows: readonly Row[]): Row {
  return row(rows.map((r) => r.text).join(' '), 'caution')
}

function height({ head, must, ask }: Parts): number {
  return head.length + must.length + ask.length
}

function ruled(style: SheetStyle): Line {
  return { margin: marginOf('', style), text: stroke(style.ascii, textWidth(style)), tone: 'faint' }
}

export function marginOf(unit: string, style: SheetStyle): string {
  return layOut({ margin: unit, rows: [row('x')] }, style)[0]?.margin ?? ''
}

function tooSmall({ style, rows, columns, notice }: LiveInput, needed: string): Live {
  const say = row(
    `Screen too small: make it ${needed}. Until then only stop, leave and safe (Tab) are taken.`,
    'caution',
  )
  const seen = { ...style, width: Math.min(style.width, columns - 1) }
  const told = block([say, ...(notice === null ? [] : [row(notice, 'caution')])], seen)
  return {
    above: told.slice(0, Math.max(0, rows - 2)),
    inputMargin: marginOf('', style),
    inputWidth: textWidth(style),
    below: [],
    turn: null,
    choices: 0,
    tooSmall: true,
  }
}
