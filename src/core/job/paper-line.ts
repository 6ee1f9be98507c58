// What a line keyed from a sheet means: `06:52 RO 20.9` is a time, initials and what stands beside them; `-` is a blank box.
import { type Instant, readStamp } from '../lib/instant.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { OnSheet } from './paper.ts'

export const BLANK = '-'
/** Longest text that is taken of one box. */
const LONGEST = 300

/** When the keying happens, and what was keyed before. */
export interface LineContext {
  /** `2026-03-14`; null: the sheet names no day. */
  readonly day: string | null
  /** The last time keyed. */
  readonly last: string | null
  readonly now: Instant
}

export interface SheetLine {
  readonly paper: OnSheet
  /** Empty where nothing stands behind the initials. */
  readonly rest: string
}

export function isBlank(line: string): boolean {
  return line.trim() === BLANK
}

const HOW = 'Key time and initials as they stand: 06:52 RO; - for each that is blank'

/** Refuses with code `sheet-time` a time before the line above it, unless `sure`: that is asked about. */
export function readSheetLine(line: string, at: LineContext, sure: boolean): Result<SheetLine> {
  const found =
    /^(?:(\d{4}-\d{2}-\d{2})[ T])?(\d{1,2}[:.]\d{2}|-)(?:\s+([A-Za-z]{1,5}|-))?(?:\s+(.*))?$/.exec(
      line.trim(),
    )
  if (found === null) return refuse('sheet-line', `${HOW}.`)
  const [, day, clock = BLANK, who = BLANK, rest = ''] = found
  if (rest.length > LONGEST)
    return refuse('sheet-line', `At most ${LONGEST} signs of one box: the rest as a note.`)
  const time = clock === BLANK ? null : timeOf(clock, day ?? dayOfTime(at.last) ?? at.day)
  if (time !== null && 'error' in time) return { ok: false, error: time.error }
  const paper = { time: time?.text ?? null, who: who === BLANK ? null : who.toUpperCase() }
  const barred = time === null ? null : barsTime(time.text, at, sure)
  if (barred !== null) return barred
  const back = time !== null && isBefore(time.text, at.last)
  return ok({ paper: back ? { ...paper, back: true } : paper, rest: rest.trim() })
}

function barsTime(time: string, at: LineContext, sure: boolean): Result<never> | null {
  if (isLater(time, at.now))
    return refuse('sheet-future', `${time} is still to come by this clock: nothing was written then.`)
  if (!sure && isBefore(time, at.last))
    return refuse('sheet-time', `${time} is before ${at.last}, which stands above it.`)
  return null
}

/** `2026-03-14`, or with a time behind it. Never in the future. */
export function readSheetDay(line: string, now: Instant): Result<string> {
  const day = line.trim()
  if (readStamp(`${day} 00:00`) === null)
    return refuse('sheet-day', 'Key the day as 2026-03-14; - where the box is blank.')
  return isLater(`${day} 00:00`, now)
    ? refuse('sheet-future', `${day} is still to come by this clock.`)
    : ok(day)
}

function timeOf(
  clock: string,
  day: string | null,
): { readonly text: string } | { readonly error: { code: string; say: string } } {
  const text = `${clock.replace('.', ':').padStart(5, '0')}`
  const full = day === null ? text : `${day} ${text}`
  return sheetMs(full) === null
    ? { error: { code: 'sheet-line', say: `${clock} is no time of the day.` } }
    : { text: full }
}

function dayOfTime(time: string | null): string | null {
  return time === null || time.length < 16 ? null : time.slice(0, 10)
}

/** Milliseconds to reckon with between times of one sheet, by the wall clock it was written by; null for what is none. */
export function sheetMs(time: string | null): number | null {
  if (time === null) return null
  return readStamp(time.length < 16 ? `1970-01-01 ${time}` : time)?.ms ?? null
}

/** Times without a day are not held against those with one. */
function isBefore(time: string, last: string | null): boolean {
  if (last === null || time.length !== last.length) return false
  const [a, b] = [sheetMs(time), sheetMs(last)]
  return a === null || b === null || a < b
}

/** By the wall clock here. A time whose day is not known is never later: that cannot be told. */
function isLater(time: string, now: Instant): boolean {
  if (time.length < 16) return false
  const ms = sheetMs(time)
  return ms === null || !(ms <= now.ms + now.offsetMin * 60_000)
}

/** Minutes from one time on the sheet to another; null where either is not known, or one has a day and the other has none. */
export function minutesOnSheet(from: string | null, to: string | null): number | null {
  if (from === null || to === null || from.length !== to.length) return null
  const [a, b] = [sheetMs(from), sheetMs(to)]
  return a === null || b === null ? null : Math.round((b - a) / 60_000)
}
