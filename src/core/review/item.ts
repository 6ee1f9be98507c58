// One exception with every entry behind it: who, when, what was keyed, and the sheet as it stood then.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { type Block, row, type SheetStyle } from '../sheet/block.ts'
import { entryBlocks } from '../sheet/shown-block.ts'
import { changesInFull, changesInWords } from './changes-rows.ts'
import type { Exception } from './exception.ts'
import { movesOf, whoIn } from './look.ts'
import { changesNumber, exceptionRows } from './page.ts'
import type { Review } from './review.ts'

/** Null where there is no such number. */
export function itemBlocks(
  defs: Definitions,
  entries: readonly Entry[],
  review: Review,
  number: number,
  style: SheetStyle,
): Block[] | null {
  if (number === changesNumber(review) && review.changes.length > 0) return changesItem(defs, review)
  const one = review.exceptions.find((e) => e.number === number)
  return one === undefined ? null : exceptionItem(defs, entries, one, style)
}

function changesItem(defs: Definitions, review: Review): Block[] {
  return [
    {
      margin: String(changesNumber(review)),
      rows: [
        row('As found, as left and the last overhaul', 'strong'),
        row(
          'As read, not brought to 20 degC: no verdict rests on it. Hours: left to the limit, the early end, to plan by.',
        ),
        ...changesInFull(defs, review.changes),
        ...changesInWords(defs, review.changes),
      ],
    },
  ]
}

function exceptionItem(
  defs: Definitions,
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
    ...moves.flatMap(({ entry, after }): Block[] => [
      { margin: '', rows: [row(''), row(aboutEntry(entry), 'faint')] },
      ...entryBlocks(defs, after, entry, style),
    ]),
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
