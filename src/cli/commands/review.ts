// barover review: what a lead who was not there has to know of a job, worst first. It reads and writes nothing.
import { replay } from '../../app/replay.ts'
import type { Definitions } from '../../core/job/definitions.ts'
import { defsNow, type Editions } from '../../core/job/editions.ts'
import type { Entry } from '../../core/job/entries.ts'
import { readEntries } from '../../core/job/entry-schema.ts'
import { markOf } from '../../core/job/paper.ts'
import type { State } from '../../core/job/state.ts'
import { clean } from '../../core/lib/text.ts'
import { capital } from '../../core/lib/wording.ts'
import type { Beside } from '../../core/review/beside.ts'
import { itemBlocks } from '../../core/review/item.ts'
import { reviewJson } from '../../core/review/json.ts'
import { wordBlocks } from '../../core/review/keyed-words.ts'
import { lastNumber, rangeBlocks, screenLines, wholeBlocks } from '../../core/review/page.ts'
import { type Review, reviewOf } from '../../core/review/review.ts'
import { type Block, layOut, plainText, type SheetStyle } from '../../core/sheet/block.ts'
import type { Paged } from '../../core/sheet/pages.ts'
import { makeSafeLines } from '../../core/talk/make-safe.ts'
import { findJob, type JobFile } from '../../node/job-folder.ts'
import { examine, tornText } from '../../node/journal/examine.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { crewBefore } from '../crew-before.ts'
import { EXIT } from '../exit.ts'
import { exitCodeOf } from '../finish.ts'
import { checkLog, headFrom, type LogCheck } from '../log-check.ts'
import { editionsOf } from '../open.ts'
import { canDraw, print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const reviewCommand: Command = {
  name: 'review',
  usage: 'barover review JOB [--item N] [--head HASH] [--jobs DIR]',
  summary:
    'What was out of the ordinary in a job, worst first, and the entries behind it. JOB: enough of its name, as eb06.',
  options: {
    item: { type: 'string', says: 'the entries behind this number of the review; or 3-9, a line for each' },
    head: { type: 'string', says: 'check number that was noted elsewhere: it proves the log whole' },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const file = findJob(jobsFolder(values), job ?? '')
    const check = checkLog(file.path, headFrom(values))
    const reviewed = reviewIn(values, file, check)
    const code = codeOf(check, reviewed.state)
    const { review, defs } = reviewed
    if (values.json === true) {
      print(JSON.stringify({ ...reviewJson(review), head: check.isSound ? check.found.head : null }))
      return code
    }
    const style = sheetStyle(values, markOf(review))
    const item = text(values, 'item')
    if (item !== undefined) {
      printBlocks(itemAsked(reviewed, item, values), style)
      return code
    }
    if (!canDraw(values)) {
      printBlocks(wholeBlocks(defs, review, reviewed.state, style), style)
      return code
    }
    const { drawPages } = await import('../../ui/draw-pages.tsx')
    const most = lastNumber(review)
    const interrupted = await drawPages({
      style,
      numbers: most === 0 ? null : `1 to ${most}`,
      home: (at, rows) => ({ head: [], body: screenLines(defs, review, at, rows) }),
      open: (keyed, at) => opened(reviewed, keyed, at),
      safe: () => makeSafeLines(defs, reviewed.state),
    })
    return interrupted ? EXIT.interrupted : code
  },
}

export interface Reviewed {
  readonly review: Review
  readonly editions: Editions
  readonly defs: Definitions
  readonly entries: readonly Entry[]
  readonly state: State
}

/**
 * Of a log that is not sound, what its sound lines tell, with that said first.
 * @throws UserError (exit 4) when not even its first line can be read.
 */
export function reviewIn(values: Values, file: JobFile, check: LogCheck): Reviewed {
  const read = readEntries(examine(check.bytes).lines)
  if (!read.ok || read.value.length === 0)
    throw new UserError(
      `${file.path}: ${read.ok ? check.found.content.what : read.error.say}`,
      EXIT.fileProblem,
      `barover verify ${file.path} says what could be checked.`,
    )
  const entries = read.value
  const editions = editionsOf(file.path, entries)
  const defs = defsNow(editions)
  const { state } = replay(entries)
  const at = entries[0]?.at ?? state.lastAt
  const before = crewBefore(jobsFolder(values), file, { at, machine: defs.machine.machine })
  const review = reviewOf(defs, entries, state, besideOf(check, before), editions)
  return { review, editions, defs, entries, state }
}

function besideOf({ found, inside, attached }: LogCheck, before: Beside['crewBefore']): Beside {
  const { content, tail, whole, grownBy, torn } = found
  const heads = [tail, whole]
    .filter((check) => check.state === 'fault')
    .map(({ what }) => `${capital(what.replace(/^fault: /, ''))}.`)
  const isProved = tail.state === 'checked' && whole.state === 'checked' && grownBy === 0
  return {
    log: {
      faults: [...(content.state === 'fault' ? [content.what] : []), ...heads, ...inside],
      head: tail.state === 'unknown' ? 'none' : grownBy === null ? 'unlike' : 'like',
      whole: isProved && content.state === 'sound' ? 'proved' : 'unknown',
      checked: [content.what, `Tail ${tail.what}.`, `Whole ${whole.what}.`],
      torn: torn === null || content.state === 'fault' ? null : tornText(torn),
      broken: content.line === null ? null : { line: content.line, behind: content.behind },
    },
    files: attached.files.map(({ seq, name, state, what }) => ({
      seq,
      name: clean(name),
      isAsAttached: state === 'as-attached',
      what,
    })),
    strays: attached.strays.map(clean),
    crewBefore: before,
  }
}

/** The worst of it: a damaged log, then a check that failed, then how the job ended. */
function codeOf(check: LogCheck, state: State): number {
  if (check.found.content.state === 'fault') return EXIT.fileProblem
  return check.isSound && check.isWhole && check.found.torn === null ? exitCodeOf(state) : EXIT.checkFailed
}

/** What is behind a number, with its own line as the heading of each page; or a run of numbers, a line for each. */
function opened(
  { editions, defs, entries, review }: Reviewed,
  keyed: string,
  style: SheetStyle,
): Paged | null {
  const lines = (blocks: readonly Block[]) => blocks.flatMap((block) => layOut(block, style))
  const range = rangeBlocks(review, keyed)
  if (range !== null) return { head: [], body: lines(range) }
  const blocks = /^[1-9]\d{0,3}$/.test(keyed)
    ? itemBlocks(defs, entries, review, Number(keyed), style, editions)
    : wordBlocks(review, keyed)
  const [first, ...rest] = blocks ?? []
  if (first === undefined) return null
  const [heading, ...rows] = first.rows
  if (heading === undefined) return null
  return {
    head: lines([{ ...first, rows: [heading] }]),
    body: lines([{ margin: '', rows }, ...rest]),
  }
}

function itemAsked({ editions, defs, entries, review }: Reviewed, item: string, values: Values): Block[] {
  const number = /^[1-9]\d{0,3}$/.test(item.trim()) ? Number(item) : 0
  const style = sheetStyle(values, markOf(review))
  const blocks = rangeBlocks(review, item) ?? itemBlocks(defs, entries, review, number, style, editions)
  if (blocks !== null) return blocks
  const most = lastNumber(review)
  throw new UserError(
    most === 0 ? 'This review has no numbers.' : `--item takes a number of this review, 1 to ${most}.`,
    EXIT.wrongUse,
  )
}

function printBlocks(blocks: readonly Block[], style: SheetStyle): void {
  for (const block of blocks) print(plainText(layOut(block, style)))
}
