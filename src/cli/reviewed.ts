// A job read for its review: what its log tells, what lies beside it, and what stands behind what a lead keys.
import { replay } from '../app/replay.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { defsNow, type Editions } from '../core/job/editions.ts'
import type { Entry } from '../core/job/entries.ts'
import { readEntries } from '../core/job/entry-schema.ts'
import type { State } from '../core/job/state.ts'
import { clean } from '../core/lib/text.ts'
import { capital } from '../core/lib/wording.ts'
import { questionBlocks } from '../core/review/asked.ts'
import type { Beside } from '../core/review/beside.ts'
import { entryAlone, itemBlocks } from '../core/review/item.ts'
import { actBlocks, itemOfTag, whyNotBlocks, wordBlocks } from '../core/review/keyed-words.ts'
import { rangeBlocks } from '../core/review/page.ts'
import { type Review, reviewOf } from '../core/review/review.ts'
import { type Block, layOut, type SheetStyle } from '../core/sheet/block.ts'
import type { Paged } from '../core/sheet/pages.ts'
import { deskOf, whyNotNow } from '../core/talk/desk-words.ts'
import type { JobFile } from '../node/job-folder.ts'
import { examine, tornText } from '../node/journal/examine.ts'
import { UserError } from '../node/user-error.ts'
import type { Values } from './args.ts'
import { jobsFolder } from './commands/run.ts'
import { crewBefore } from './crew-before.ts'
import { EXIT } from './exit.ts'
import type { LogCheck } from './log-check.ts'
import { editionsOf } from './open.ts'

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

/** Blocks behind what was keyed: a number, a run of them, an entry of the log, a word; null for a number that there is not. */
function behind(reviewed: Reviewed, keyed: string, style: SheetStyle): Block[] | null {
  const { editions, defs, entries, review, state } = reviewed
  const asked = keyed.trim().toLowerCase()
  if (/^[1-9]\d{0,3}$/.test(asked)) return itemBlocks(defs, entries, review, Number(asked), style, editions)
  const [, seq] = /^entry\s+(\d{1,6})$/.exec(asked) ?? []
  if (seq !== undefined) return entryAlone(entries, editions, Number(seq), style)
  if (/^(?:acts?|decide|do)$/.test(asked)) return actBlocks(review, deskOf(defs, state))
  const why = whyNotNow(defs, state, asked)
  if (why !== null) return whyNotBlocks(asked, why)
  const tagged = itemOfTag(review, keyed)
  if (tagged !== null) return itemBlocks(defs, entries, review, tagged, style, editions)
  return questionBlocks({ review, defs, entries, state, editions }, keyed) ?? wordBlocks(review, keyed)
}

/** What is behind a number, with its own line as the heading of each page; or a run of numbers, a line for each. */
export function opened(reviewed: Reviewed, keyed: string, style: SheetStyle): Paged | null {
  const lines = (blocks: readonly Block[]) => blocks.flatMap((block) => layOut(block, style))
  const range = rangeBlocks(reviewed.review, keyed)
  if (range !== null) return { head: [], body: lines(range) }
  const [first, ...rest] = behind(reviewed, keyed, style) ?? []
  if (first === undefined) return null
  const [heading, ...rows] = first.rows
  if (heading === undefined) return null
  return {
    head: lines([{ ...first, rows: [heading] }]),
    body: lines([{ margin: '', rows }, ...rest]),
  }
}
