// Which side of what is asked is up, of how many, and how it is turned over: one line on any sheet.
import { cutSeen, widthOf } from '../lib/text.ts'
import { type Row, row } from './block.ts'

/**
 * A side as it is counted: those before the question that were read at an earlier one are passed by, and not counted. Such a one is
 * before the first (`at` below 0) when it is turned back to.
 */
export function countOf(
  at: number,
  { before, front, of }: { readonly before: number; readonly front: number; readonly of: number },
  frontRead: boolean,
): { readonly at: number; readonly of: number } {
  if (!frontRead) return { at, of }
  const passed = front - before
  if (at < before) return { at, of: of - passed }
  return { at: at < front ? at - front : at - passed, of: of - passed }
}

/**
 * Which side is up and how to turn it over, in one line on any sheet. `unheard` was keyed before all was turned over and is gone,
 * `kept` waits for the question.
 */
export function turningRow(
  at: number,
  of: number,
  width: number,
  unheard: string | null,
  kept: string | null = null,
): Row {
  if (unheard !== null && at < of - 1) return untakenRow(at, of, width, unheard)
  if (kept !== null && at < of - 1) return keptRow(at, of, width, kept)
  if (at < 0) return row('Read before; Enter turns over', 'strong')
  if (of === 1) return row('Up: turn back', 'faint')
  const [wide, narrow] =
    at === of - 1
      ? [`${at + 1} of ${of}   Up: turn back`, `${at + 1} of ${of}  Up: back`]
      : [`Enter turns over: ${at + 1} of ${of}`, `Enter: over, ${at + 1} of ${of}`]
  return row(widthOf(wide) <= width ? wide : narrow, at === of - 1 ? 'faint' : 'strong')
}

/** In the place of the row that turns over, so that it has room wherever that has. */
export function untakenRow(at: number, of: number, width: number, unheard: string): Row {
  if (at < 0) return row('Not taken. Enter turns over', 'caution')
  const side = `${at + 1} of ${of}`
  const over = `Enter turns over first: ${side}`
  const long = `Not taken: ${unheard}. ${over}`
  if (unheard !== '' && widthOf(long) <= width) return row(long, 'caution')
  const end = `Enter: ${at + 1}/${of}`
  const kept = cutSeen(`Not taken: ${unheard}.`, width - widthOf(` ${end}`))
  if (unheard !== '' && widthOf(kept) >= LEAST_KEPT) return row(`${kept} ${end}`, 'caution')
  const whole = `Not taken. ${over}`
  return row(widthOf(whole) <= width ? whole : `Not taken. Enter: ${side}`, 'caution')
}

/** Under a side that is counted with none: what is asked comes behind it. */
export function turningOnRow(width: number, unheard: string | null, kept: string | null): Row {
  if (unheard !== null) return untakenRow(-1, 1, width, unheard)
  return kept === null ? row('Enter turns over', 'strong') : keptRow(-1, 1, width, kept)
}

function keptRow(at: number, of: number, width: number, kept: string): Row {
  const over = at < 0 ? 'Enter turns over' : `Enter turns over: ${at + 1} of ${of}`
  const long = `Kept: ${kept}. ${over}`
  if (widthOf(long) <= width) return row(long, 'strong')
  const end = at < 0 ? 'Enter: over' : `Enter: ${at + 1}/${of}`
  return row(`${cutSeen(`Kept: ${kept}.`, width - widthOf(` ${end}`))} ${end}`, 'strong')
}

/** Columns with what was keyed: less of it tells nobody which line it was. */
const LEAST_KEPT = 14
