// Checks the bytes of a whole journal and says where they first fail. Reads bytes only; touches no file.
import { isUtf8 } from 'node:buffer'
import { GENESIS, lineHash, readLine, type StoredEntry } from './chain.ts'
import { explainMisplaced } from './misplaced.ts'

export interface TornTail {
  /** Length of the unfinished piece in bytes. */
  readonly bytes: number
  /** Its text; bytes that are not UTF-8 show as replacement marks. The raw bytes are what gets set aside. */
  readonly text: string
  /**
   * True when only the newline is missing: the line proves itself and its place. It still counts as torn, because
   * the newline is part of the write, so the write was not acknowledged, or something was removed since.
   */
  readonly complete: boolean
}

export interface Fault {
  /** From 1. */
  readonly line: number
  /** One sentence: which check failed and what that shows. */
  readonly what: string
  /** Lines behind it in the file, an unfinished last one among them: nothing of them is read. */
  readonly behind: number
}

export interface Examination {
  /** The sound lines, up to the first fault. */
  readonly lines: readonly StoredEntry[]
  /** Hash of the last sound line, GENESIS if there is none. */
  readonly head: string
  /** Length in bytes of the sound lines with their newlines. */
  readonly soundBytes: number
  /** The piece after the last newline, if any. Never looked into further: only an end can be torn. */
  readonly torn: TornTail | null
  readonly fault: Fault | null
}

/** Examines a journal's bytes. Never throws: whatever is wrong comes back as `torn` or `fault`. */
export function examine(bytes: Buffer): Examination {
  const { pieces, rest } = splitAtNewlines(bytes)
  const lines: StoredEntry[] = []
  let head = GENESIS
  let soundBytes = 0
  let fault: Fault | null = null
  const faultAt = (index: number, what: string): Fault => {
    return { line: index + 1, what, behind: pieces.length - index - 1 + (rest.length > 0 ? 1 : 0) }
  }
  for (const [index, piece] of pieces.entries()) {
    const checked = checkPiece(piece, `Line ${index + 1}`)
    if (typeof checked === 'string') {
      fault = faultAt(index, checked)
      break
    }
    if (checked.seq !== index || checked.prev !== head) {
      fault = faultAt(index, explainMisplaced({ index, entry: checked, head, pieces }))
      break
    }
    lines.push(checked)
    head = lineHash(piece)
    soundBytes += piece.length + 1
  }
  const torn = rest.length === 0 ? null : describeTorn(rest, lines.length, head, fault === null)
  return { lines, head, soundBytes, torn, fault }
}

/** What stands behind a break, in a sentence; nobody knows more of it than how many lines it is. */
export function behindText(behind: number): string {
  if (behind === 0) return 'It is the last line.'
  return `${behind} ${behind === 1 ? 'line stands' : 'lines stand'} behind it and ${behind === 1 ? 'is' : 'are'} not read.`
}

/** What can be known of an unfinished last line, in sentences: not how it came about. */
export function tornText({ bytes, complete }: TornTail): string {
  const what = complete
    ? 'The last line lacks nothing but its line end'
    : `An unfinished last line of ${bytes} ${bytes === 1 ? 'byte' : 'bytes'} follows`
  return `${what}: it counts for nothing. A write that was cut off leaves one, and so does a file that was cut later; the log cannot tell which.`
}

function splitAtNewlines(bytes: Buffer): { pieces: Buffer[]; rest: Buffer } {
  const pieces: Buffer[] = []
  let from = 0
  for (let end = bytes.indexOf(0x0a); end >= 0; end = bytes.indexOf(0x0a, from)) {
    pieces.push(bytes.subarray(from, end))
    from = end + 1
  }
  return { pieces, rest: bytes.subarray(from) }
}

/** The entry, or a sentence on what is wrong with the line by itself. */
function checkPiece(piece: Buffer, called: string): StoredEntry | string {
  if (piece.length === 0) return `${called} is empty.`
  if (!isUtf8(piece)) return `${called} was changed: it holds bytes that are not UTF-8 text.`
  if (piece[0] === 0xef && piece[1] === 0xbb && piece[2] === 0xbf) {
    return `${called} begins with a byte order mark, which another program has put in.`
  }
  if (piece[piece.length - 1] === 0x0d) {
    return `${called} ends in a carriage return, so its line ends were changed by another program.`
  }
  const read = readLine(piece.toString('utf8'), called)
  return read.ok ? read.value : read.error.say
}

function describeTorn(rest: Buffer, seq: number, head: string, soundBefore: boolean): TornTail {
  const read = isUtf8(rest) ? readLine(rest.toString('utf8')) : null
  const complete = soundBefore && read?.ok === true && read.value.seq === seq && read.value.prev === head
  return { bytes: rest.length, text: rest.toString('utf8'), complete }
}
