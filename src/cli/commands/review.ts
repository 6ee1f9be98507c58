// barover review: what a lead who was not there has to know of a job, worst first, and what they do about it from there. By itself
// it reads and writes nothing: only a word that is keyed opens the log.
import { markOf } from '../../core/job/paper.ts'
import type { State } from '../../core/job/state.ts'
import { entryAlone, itemBlocks } from '../../core/review/item.ts'
import { reviewJson } from '../../core/review/json.ts'
import { lastNumber, rangeBlocks, wholeBlocks } from '../../core/review/page.ts'
import type { Block } from '../../core/sheet/block.ts'
import { findJob } from '../../node/job-folder.ts'
import { UserError } from '../../node/user-error.ts'
import { type Command, SHARED, text, type Values } from '../args.ts'
import { deskInLines, deskOnScreen, printBlocks, type Read } from '../desk-loop.ts'
import { EXIT } from '../exit.ts'
import { exitCodeOf } from '../finish.ts'
import { checkLog, headFrom, type LogCheck } from '../log-check.ts'
import { type Reviewed, reviewIn } from '../reviewed.ts'
import { canDraw, isListened, print, sheetStyle } from '../terminal.ts'
import { jobsFolder } from './run.ts'

export const reviewCommand: Command = {
  name: 'review',
  usage: 'barover review JOB [--item N] [--head HASH] [--act] [--jobs DIR]',
  summary:
    'What was out of the ordinary in a job, worst first, and the entries behind it; on a terminal a lead acts on it too. JOB: enough of its name, as eb06.',
  options: {
    item: {
      type: 'string',
      says: 'the entries behind this number of the review; or 3-9, a line for each; or "entry 214"',
    },
    head: { type: 'string', says: 'check number that was noted elsewhere: it proves the log whole' },
    act: {
      type: 'boolean',
      says: 'without a terminal: take what a lead keys from the pipe; never for a REAL job',
    },
    ...SHARED,
  },
  positionals: { least: 1, most: 1 },
  run: async (values, [job]) => {
    const read = (): Read => {
      const file = findJob(jobsFolder(values), job ?? '')
      const check = checkLog(file.path, headFrom(values))
      const reviewed = reviewIn(values, file, check)
      return {
        ...reviewed,
        file,
        code: codeOf(check, reviewed.state),
        head: check.isSound ? check.found.head : null,
      }
    }
    const item = text(values, 'item')
    if (values.json === true || item !== undefined) return printed(values, read(), item)
    if (canDraw(values)) return deskOnScreen(values, read)
    if (isListened(values) || values.act === true) return deskInLines(values, read)
    const { defs, review, state, code } = read()
    const style = sheetStyle(values, markOf(review))
    printBlocks(wholeBlocks(defs, review, state, style), style)
    return code
  },
}

function printed(values: Values, reviewed: Read, item: string | undefined): number {
  const { review, code, head } = reviewed
  if (values.json === true) print(JSON.stringify({ ...reviewJson(review), head }))
  else printBlocks(itemAsked(reviewed, item ?? '', values), sheetStyle(values, markOf(review)))
  return code
}

/** The worst of it: a damaged log, then a check that failed, then how the job ended. */
function codeOf(check: LogCheck, state: State): number {
  if (check.found.content.state === 'fault') return EXIT.fileProblem
  return check.isSound && check.isWhole && check.found.torn === null ? exitCodeOf(state) : EXIT.checkFailed
}

function itemAsked({ editions, defs, entries, review }: Reviewed, item: string, values: Values): Block[] {
  const number = /^[1-9]\d{0,3}$/.test(item.trim()) ? Number(item) : 0
  const style = sheetStyle(values, markOf(review))
  const [, seq] = /^entry\s+(\d{1,6})$/i.exec(item.trim()) ?? []
  const blocks =
    rangeBlocks(review, item) ??
    (seq === undefined
      ? itemBlocks(defs, entries, review, number, style, editions)
      : entryAlone(entries, editions, Number(seq), style))
  if (blocks !== null) return blocks
  const most = lastNumber(review)
  throw new UserError(
    most === 0 ? 'This review has no numbers.' : `--item takes a number of this review, 1 to ${most}.`,
    EXIT.wrongUse,
  )
}
