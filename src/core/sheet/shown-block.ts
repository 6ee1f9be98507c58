// What the transcript shows for an entry or for words that are on no record.
import type { Definitions } from '../job/definitions.ts'
import { asKind, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { openPlace } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { type Block, isSmall, type Row, row, type SheetStyle, textWidth } from './block.ts'
import { profileRows } from './drawing-rows.ts'
import { entryBlock } from './entry-block.ts'
import { WHY_OFFERED } from './entry-words.ts'
import { letsIn } from './gate-block.ts'
import { passedByRows } from './left-out.ts'
import { lessonBlock } from './practice-block.ts'
import { takenUpRows } from './taken-up-rows.ts'

export function saidBlock(lines: readonly string[], refusal: boolean): Block {
  return { margin: '', rows: lines.map((text) => row(text, refusal ? 'caution' : 'plain')) }
}

/**
 * A verdict that has fallen since, marked so at its head and beside its word: read back, it would look as live as the one that
 * stands. `now`: the state at the end of what is shown.
 */
export function markedVoid(blocks: readonly Block[], entry: Entry, now: State): readonly Block[] {
  if (entry.type !== 'verdict.given') return blocks
  const fellBy = now.raised.find(({ seq }) => seq === entry.seq)?.voidBy ?? null
  if (fellBy === null) return blocks
  const mark = (one: Row): Row =>
    one.tone === 'stamp' ? row(`${one.text}  VOID since entry ${fellBy}`, 'caution') : one
  return blocks.map((block, i) => ({
    ...block,
    rows: [
      ...(i === 0
        ? [row(`VOID since entry ${fellBy}: it counts for nothing, and is kept to be read.`, 'caution')]
        : []),
      ...block.rows.map(mark),
    ],
  }))
}

/**
 * A verdict told anew, short: what stands word for word in the one of this step before is not told again, limits among it. Its
 * word, what governs and every caution are. `before`: the blocks of that one; none where there is none on the sheet.
 */
export function toldShort(blocks: readonly Block[], before: readonly Block[]): readonly Block[] {
  const told = new Set(before.flatMap(({ rows }) => rows.map(({ text }) => text)))
  if (told.size === 0) return blocks
  return blocks.map((block) => {
    const isNew = ({ text, tone }: Row, i: number) =>
      i === 0 || tone === 'stamp' || tone === 'caution' || / governs: /.test(text) || !told.has(text)
    // A row that hangs on the one above it says nothing by itself, and neither does that without it.
    let group = 0
    const groups = block.rows.map(({ text }) => (text.startsWith(' ') ? group : ++group))
    const kept = new Set(groups.filter((_, i) => isNew(block.rows[i] as Row, i)))
    const rows = block.rows.filter((_, i) => kept.has(groups[i] ?? 0))
    return rows.length === block.rows.length ? block : { ...block, rows: [...rows, row(AS_BEFORE, 'faint')] }
  })
}

const AS_BEFORE = 'All else, its limits too, as in the verdict before. Type why for the sums.'

/** A word that is keyed on the sheet is not offered where nothing is. */
function withoutWords(block: Block): Block {
  return { ...block, rows: block.rows.filter(({ text }) => text !== WHY_OFFERED) }
}

/** What an entry means for whoever stands there now. */
function withNow(defs: Definitions, state: State, entry: Entry, block: Block): Block {
  switch (entry.type) {
    case 'gate.opened':
      return { ...block, rows: [...block.rows, ...letsIn(defs, state, entry.step, entry.at)] }
    case 'job.taken-up':
      return { ...block, rows: [...block.rows, ...takenUpRows(defs, state)] }
    default:
      return block
  }
}

/** Blocks of an entry; `read-back` is a log read back, where no word is taken. Its own, and the wear drawn out once the last place of a bore step is settled. */
export function entryBlocks(
  defs: Definitions,
  state: State,
  entry: Entry,
  style: SheetStyle,
  how: 'live' | 'read-back' = 'live',
): Block[] {
  const own = entryBlock(defs, state, entry, textWidth(style))
  const lesson = lessonBlock(defs, state, entry)
  const passed = how === 'live' ? passedByRows(defs, state, entry) : []
  const beside = passed.length === 0 ? [] : [{ margin: '', rows: passed }]
  const blocks = [
    // On a low screen the last rows alone are in sight, and those are what was taken.
    ...(isSmall(style) ? beside : []),
    ...(own === null ? [] : [how === 'live' ? withNow(defs, state, entry, own) : withoutWords(own)]),
    ...(isSmall(style) ? [] : beside),
    ...(lesson === null ? [] : [lesson]),
  ]
  if (entry.type !== 'reading.taken') return blocks
  const placed = stepById(defs, entry.step)
  if (placed.step.kind !== 'read' || placed.step.drawing !== 'bore' || placed.step.stations.length < 2)
    return blocks
  if (openPlace(asKind(placed, 'read'), state) !== null) return blocks
  const rows = profileRows(defs, state, entry.step, style)
  return rows.length === 0 ? blocks : [...blocks, { margin: '', rows }]
}
