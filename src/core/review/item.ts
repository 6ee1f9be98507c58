// One exception with every entry behind it: who, when, what was keyed, and the sheet as it stood then.
import type { Definitions } from '../job/definitions.ts'
import { asOpened, defsAt, type Editions } from '../job/editions.ts'
import type { Entry } from '../job/entries.ts'
import type { State } from '../job/state.ts'
import { type Block, row, type SheetStyle } from '../sheet/block.ts'
import { entryBlocks } from '../sheet/shown-block.ts'
import { sums } from '../talk/sums.ts'
import type { Exception } from './exception.ts'
import { heldUntil } from './held-until.ts'
import { type Move, movesOf, whoIn } from './look.ts'
import { boreErrorRows } from './measuring.ts'
import { exceptionRows } from './page.ts'
import type { Review } from './review.ts'
import { sectionsOf } from './sections.ts'

/** Null where there is no such number. */
export function itemBlocks(
  defs: Definitions,
  entries: readonly Entry[],
  review: Review,
  number: number,
  style: SheetStyle,
  editions: Editions = asOpened(defs),
): Block[] | null {
  const section = sectionsOf(review).find((one) => one.number === number)
  if (section !== undefined)
    return [{ margin: String(number), rows: section.rows(defs, stateOf(entries), style) }]
  const one = review.exceptions.find((e) => e.number === number)
  return one === undefined ? null : exceptionItem(editions, entries, one, style)
}

function stateOf(entries: readonly Entry[]): State {
  const last = movesOf(entries).at(-1)
  if (last === undefined) throw new Error('a job begins with an entry')
  return last.after
}

function exceptionItem(
  editions: Editions,
  entries: readonly Entry[],
  one: Exception,
  style: SheetStyle,
): Block[] {
  const wanted = new Set(one.entries)
  const moves = movesOf(entries).filter(({ entry }) => wanted.has(entry.seq))
  const head: Block = { margin: String(one.number), rows: exceptionRows(one) }
  if (moves.length === 0)
    return [
      head,
      { margin: '', rows: [row('There is no entry behind it: it is about what is not in the log.')] },
    ]
  return [
    head,
    ...moves.flatMap((move): Block[] => [
      { margin: '', rows: [row(''), row(aboutEntry(move.entry), 'faint')] },
      ...behind(defsAt(editions, move.entry.seq), move, style),
    ]),
  ]
}

/** One entry of the log by its number, whatever the review makes of it; null where there is none. */
export function entryAlone(
  entries: readonly Entry[],
  editions: Editions,
  seq: number,
  style: SheetStyle,
): Block[] | null {
  const move = movesOf(entries).find(({ entry }) => entry.seq === seq)
  if (move === undefined) return null
  return [
    { margin: '', rows: [row(aboutEntry(move.entry), 'strong')] },
    ...behind(defsAt(editions, seq), move, style),
    ...heldUntil(entries, (one) => defsAt(editions, one.seq), move),
  ]
}

/** The opening stands in every log alike and is not told whole; a verdict has its sums below it, as no word is keyed here for them. */
function behind(defs: Definitions, { entry, after }: Move, style: SheetStyle): Block[] {
  const blocks = entryBlocks(defs, after, entry, style, 'read-back')
  if (entry.type === 'job.opened')
    return blocks.map((block) => ({
      ...block,
      rows: block.rows.filter(({ text }) => !text.startsWith('Not for: ')),
    }))
  if (entry.type !== 'verdict.given') return blocks
  return [
    ...blocks,
    {
      margin: '',
      rows: [
        row('The sums, from unrounded figures', 'strong'),
        ...sums(defs, entry.verdict, undefined, 'named').map((line) => row(`  ${line}`)),
        ...boreErrorRows(defs, after, entry.step),
      ],
    },
  ]
}

/** `entry 214   2026-03-14 06:52:10 +00:00   RO   keyed "9.5033"`. */
function aboutEntry(entry: Entry): string {
  const { seq, at } = entry
  const keyed = keyedIn(entry)
  return [
    `entry ${seq}`,
    `${at.slice(0, 10)} ${at.slice(11, 19)} ${at.slice(23)}`,
    whoIn(entry),
    ...(keyed === null ? [] : [`keyed "${keyed}"`]),
  ].join('   ')
}

function keyedIn(entry: Entry): string | null {
  if ('typed' in entry) return entry.typed
  if ('reading' in entry && entry.reading !== undefined) return entry.reading.typed
  return 'shown' in entry && typeof entry.shown === 'string' ? entry.shown : null
}
