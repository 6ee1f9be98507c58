// Says which of content, tail and whole of a journal could be checked, and never more than that.
// A hash chain without a key stops slips and clumsy changes; only a head noted elsewhere shows a rewrite or a cut.
import { nth } from '../../core/talk/names.ts'
import { GENESIS, isHashText, lineHash } from './chain.ts'
import { behindText, type Examination, examine, type TornTail } from './examine.ts'

export interface ContentCheck {
  readonly state: 'sound' | 'fault'
  /** Line of the fault, from 1; null when sound. */
  readonly line: number | null
  /** Lines behind the fault, which are not read; 0 when sound. */
  readonly behind: number
  readonly what: string
}

export interface HeadCheck {
  readonly state: 'checked' | 'unknown' | 'fault'
  readonly what: string
}

export interface Verification {
  /** Count of sound lines. */
  readonly lines: number
  readonly head: string
  readonly torn: TornTail | null
  /** Does every line prove its own content and its place? */
  readonly content: ContentCheck
  /** Is nothing missing at the end? */
  readonly tail: HeadCheck
  /** Is this the journal it was, and not one rewritten from the start? */
  readonly whole: HeadCheck
  /** Sound entries added since the given head was noted; null when no head was given or it was not found. */
  readonly grownBy: number | null
}

const TAIL_UNKNOWN =
  'unknown: NOT PROVED that no lines were cut off the end; only a check number noted elsewhere shows that'
const WHOLE_UNKNOWN =
  'unknown: NOT PROVED that the log was not written anew; only a check number noted elsewhere shows that'

/**
 * Checks a journal's bytes, and against `expectedHead` (64 hex digits noted elsewhere: on a hand-over, a report, a
 * countersignature) if there is one. A head that cannot be read as one checks nothing; it never passes.
 */
export function verify(bytes: Buffer, expectedHead?: string): Verification {
  const seen = examine(bytes)
  const base = { lines: seen.lines.length, head: seen.head, torn: seen.torn, content: contentOf(seen) }
  if (expectedHead === undefined) {
    return { ...base, ...both('unknown', TAIL_UNKNOWN, WHOLE_UNKNOWN), grownBy: null }
  }
  // Written down by hand it stands in groups.
  const noted = expectedHead.replace(/\s+/g, '').toLowerCase()
  if (!isHashText(noted) || noted === GENESIS) {
    const why =
      'unknown: the check number given is not the hash of a line (64 hex digits), so nothing was checked against it'
    return { ...base, ...both('unknown', why, why), grownBy: null }
  }
  const at = lineWithHash(seen, noted)
  if (at === null) return { ...base, ...notFound(seen, noted), grownBy: null }
  return { ...base, ...foundAt(at, seen), grownBy: seen.lines.length - at }
}

function contentOf({ lines, torn, fault }: Examination): ContentCheck {
  if (fault !== null)
    return {
      state: 'fault',
      line: fault.line,
      behind: fault.behind,
      what: `${fault.what} ${behindText(fault.behind)}`,
    }
  if (lines.length === 0)
    return { state: 'fault', line: 1, behind: 0, what: 'There is no complete line in this file.' }
  const tail =
    torn === null ? '' : `, and an unfinished piece of ${torn.bytes} bytes at the end proves nothing`
  return {
    state: 'sound',
    line: null,
    behind: 0,
    what: `${count(lines.length, 'line')} prove content and place${tail}.`,
  }
}

/** Line number (from 1) of the sound line with this hash. A line's hash is the next line's `prev`. */
function lineWithHash({ lines, head }: Examination, hash: string): number | null {
  if (head === hash) return lines.length
  const next = lines.findIndex((line) => line.prev === hash)
  return next > 0 ? next : null
}

function foundAt(line: number, { lines, fault }: Examination) {
  const since = lines.length - line
  if (since === 0 && fault === null) {
    return both(
      'checked',
      'checked: the last line is the one noted',
      'checked: the noted check number proves every line',
    )
  }
  const grown =
    since === 0
      ? ''
      : `; the file has grown by ${count(since, 'entry', 'entries')} since that check number was noted`
  const after = `the noted check number is line ${line}${grown}`
  return both(
    'checked',
    `checked up to line ${line}: ${after}, and a tail removed after line ${lines.length} would not show`,
    `checked up to line ${line}: ${after}, and lines after it prove only content and place`,
  )
}

function notFound(seen: Examination, noted: string) {
  if (seen.torn?.complete === true && lineHash(seen.torn.text) === noted) {
    return both(
      'fault',
      `fault: the noted check number is line ${seen.lines.length + 1}, which has lost its newline since`,
      `fault: line ${seen.lines.length + 1} is no longer as it was noted; the lines before it are`,
    )
  }
  const reach = seen.fault === null ? '' : ` (lines from ${seen.fault.line} on could not be used)`
  const none = `fault: no sound line has the noted check number${reach}`
  const near = nearestLine(seen, noted)
  // Which sign it would have to be is not told: whoever compares is to read it where it was noted, and not from here.
  const compare =
    near === null
      ? 'compare it again, sign by sign, with where it was noted'
      : `it is that of line ${near.line} but for ${count(near.places.length, 'sign')} of 64, ${placesText(near.places)}: was it misread or mistyped? Compare it there with where it was noted`
  return both(
    'fault',
    `${none}: ${compare}; if it was given as it was noted, lines were removed at the end or changed`,
    `${none}; if it was given as it was noted, this is not the journal that was noted, or not all of it`,
  )
}

interface Near {
  readonly line: number
  /** Signs that differ, counted from 1. */
  readonly places: readonly number[]
}

/** More signs than this are no slip of the eye. By chance two hashes agree in 61 of 64 once in more than 10^68. */
const MOST_MISREAD = 3

/** The line whose hash is the noted one but for a few signs; the last of them where there are several. */
function nearestLine({ lines, head }: Examination, noted: string): Near | null {
  const hashes = [...lines.slice(1).map(({ prev }) => prev), ...(lines.length > 0 ? [head] : [])]
  const near = hashes.flatMap((hash, n): Near[] => {
    const places = [...hash].flatMap((sign, at) => (sign === noted[at] ? [] : [at + 1]))
    return places.length <= MOST_MISREAD ? [{ line: n + 1, places }] : []
  })
  return near.at(-1) ?? null
}

/** `the 5th`, `the 5th and 6th`. */
function placesText(places: readonly number[]): string {
  const named = places.map(nth)
  const last = named.pop() ?? ''
  return `the ${named.length === 0 ? last : `${named.join(', ')} and ${last}`}`
}

function both(state: HeadCheck['state'], tail: string, whole: string): { tail: HeadCheck; whole: HeadCheck } {
  return { tail: { state, what: tail }, whole: { state, what: whole } }
}

function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`
}
