// What came with the last line and is longer than the room above the question: it stands from its beginning on sides of its own, which
// are turned over one by one, before the question does. Nothing of it scrolls away unread.
import { type Line, layOut, row, textWidth } from './block.ts'
import { fitLive, type Live, type LiveInput, marginOf, wholeFoot } from './live.ts'
import { countOf, turningOnRow, turningRow } from './turning.ts'

/** Lines of a side: where there is no room for so many, what came is not held back. */
const LEAST = 4
/** Lines that a side may be shorter than it could, to keep a row together. */
const MOST_KEPT = 3

export interface ReadInput extends LiveInput {
  /** As laid out; none where all that came is in sight above. */
  readonly toRead: readonly Line[]
  /** It only says why the last line was not taken: its sides are not counted, so that no count jumps by it. @default false */
  readonly refusesOnly?: boolean
}

export function fitToRead({ toRead, refusesOnly = false, ...input }: ReadInput): Live {
  const sides = sidesOf(input, toRead)
  const side = input.side ?? { of: 'front', n: 0 }
  const shown = side.of === 'front' ? sides[side.n] : undefined
  if (sides.length === 0) return fitLive(input)
  const before = sides.length
  const over = side.of === 'front' ? { ...side, n: Math.max(0, side.n - before) } : side
  // What came is not above then, so nothing has to give way to it.
  const uncounted = refusesOnly ? before : 0
  const question = fitLive({ ...input, side: over, before, uncounted, said: 0, taken: 0 })
  if (question.tooSmall) return question
  const turn = question.turn ?? { at: before, of: before + 1, front: before, isUrgent: false, key: '' }
  if (shown === undefined) return { ...question, turn: { ...turn, toRead: before } }
  const { style, notice, unheard, kept } = input
  const told = notice === null ? [] : layOut({ margin: '', rows: [row(notice, 'caution')] }, style)
  const count = countOf(side.n, { before, front: turn.front, of: turn.of }, input.frontRead === true)
  const turning = refusesOnly
    ? turningOnRow(textWidth(style), unheard ?? null, kept ?? null)
    : turningRow(count.at, count.of, textWidth(style), unheard ?? null, kept ?? null)
  return {
    above: [
      ...warning(input),
      ...shown,
      ...(told.length < spareOf(input, shown) ? told : []),
      ...layOut({ margin: '', rows: [turning] }, style),
    ],
    inputMargin: marginOf('', style),
    inputWidth: textWidth(style),
    below: footOf(input),
    turn: { ...turn, at: side.n, toRead: before },
    choices: 0,
    tooSmall: false,
  }
}

/**
 * Rows above the question when all in it that may give way has done so, and it is parted no more than by itself; without end where the
 * question itself has no room.
 */
export function roomAbove(input: LiveInput): number {
  const under = (said: number) => fitLive({ ...input, said, side: { of: 'question', n: 0 } })
  const loose = under(0)
  if (loose.tooSmall) return Number.POSITIVE_INFINITY
  let close = under(Number.MAX_SAFE_INTEGER)
  for (let said = input.rows; said > 0 && sidesAsked(close) > sidesAsked(loose); said--)
    close = under(said - 1)
  return input.rows - 2 - close.above.length - close.below.length
}

/** Rows that a refusal may have over the last side of a folded question, which stays as many sides as it is; 0 where it is none. */
export function roomForRefusal(input: LiveInput): number {
  const under = (over: number) => fitLive({ ...input, said: over, over, side: LAST })
  const { turn } = under(0)
  if (turn === null) return 0
  for (let over = input.rows; over > 0; over--) {
    const live = under(over)
    const left = input.rows - 2 - live.above.length - live.below.length
    if (live.turn?.of === turn.of && left >= over) return over
  }
  return 0
}

/** However many sides it has. */
const LAST = { of: 'question', n: Number.MAX_SAFE_INTEGER } as const

/** Sides that the question itself has. */
function sidesAsked({ turn }: Live): number {
  return turn === null ? 1 : turn.of - turn.front
}

function sidesOf(input: LiveInput, toRead: readonly Line[]): Line[][] {
  const room = roomOf(input)
  if (input.columns <= input.style.width || room < LEAST) return []
  const sides: Line[][] = []
  for (let from = 0; from < toRead.length; ) {
    const to = endOfSide(toRead, from, room)
    sides.push(toRead.slice(from, to))
    from = to
  }
  return sides
}

/** A row that goes on in the next line is not parted where the side still has most of its room without it. */
function endOfSide(toRead: readonly Line[], from: number, room: number): number {
  const full = from + room
  let to = full
  while (to > full - MOST_KEPT && goesOn(toRead, to)) to--
  return goesOn(toRead, to) ? full : to
}

/** A line that is set further in than the one before it goes on from there, and one like it goes on from that; a row of its own may be set in too. */
function goesOn(lines: readonly Line[], at: number): boolean {
  const [own, before] = [indentOf(lines[at]), indentOf(lines[at - 1])]
  return own > before || (own > 0 && own === before && goesOn(lines, at - 1))
}

const indentOf = (line: Line | undefined): number => /^ */.exec(line?.text ?? '')?.[0].length ?? 0

/** Rows of a side: all but the row that turns over and the line being keyed, with its foot. */
function roomOf(input: LiveInput): number {
  return input.rows - 1 - 2 - footOf(input).length - warning(input).length
}

function spareOf(input: LiveInput, shown: readonly Line[]): number {
  return roomOf(input) - shown.length + 1
}

function footOf(input: LiveInput): Line[] {
  const rows = wholeFoot(input).lines.map((text) => row(text, 'faint'))
  return layOut({ margin: '', rows }, input.style)
}

function warning({ foot, style }: LiveInput): Line[] {
  return foot.warning === null ? [] : layOut({ margin: '', rows: [row(foot.warning, 'caution')] }, style)
}
