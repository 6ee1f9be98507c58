// What is said aloud of an entry once it is on record, and of words that are on none. A PIN is in neither, so none is said.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import type { State } from '../job/state.ts'
import type { Row } from '../sheet/block.ts'
import { entryBlock } from '../sheet/entry-block.ts'
import { titleOf } from '../sheet/entry-words.ts'
import { becauseRows } from '../sheet/verdict-block.ts'
import { SAFE_ALWAYS } from '../talk/make-safe.ts'
import { asSentences, inWords } from './in-words.ts'

/** A warning is said at once and never dropped; all else gives way to what comes after it. */
export interface Aloud {
  readonly text: string
  readonly warning: boolean
}

const WARNINGS: readonly Entry['type'][] = [
  'stop.raised',
  'stop.stands',
  'gate.closed',
  'evidence.failed',
  'machine.mismatched',
  'clock.moved',
]

/** After these, people come to the work anew: its hazards are said once more. */
const INTERRUPTS: readonly Entry['type'][] = [
  ...WARNINGS,
  'stop.released',
  'gate.opened',
  'elsewhere.seen',
  'elsewhere.gone',
  'job.taken-up',
  'job.handed-over',
  'person.came-on',
  'step.reopened',
  'reading.dropped',
  'late.settled',
]

export function interrupts(entry: Entry): boolean {
  // A line that was taken back by the one who keyed it is no interruption.
  return INTERRUPTS.includes(entry.type) && !(entry.type === 'gate.closed' && isSlip(entry))
}

/** Taken back while nobody can be behind a hold point. */
function isSlip({ cause, nobody_in }: Extract<Entry, { type: 'gate.closed' }>): boolean {
  return cause === 'again' || nobody_in === true
}

/** Null where there is nothing to say. `state` is the one after the entry. */
export function entryAloud(defs: Definitions, state: State, entry: Entry): Aloud | null {
  const lines = linesOf(defs, state, entry)
  return lines.length === 0 ? null : { text: spoken(defs, lines), warning: isWarning(defs, state, entry) }
}

/** Lines that were only said on the sheet: an answer to a word, a refusal, the make-safe sheet. */
export function saidAloud(defs: Definitions, lines: readonly string[]): Aloud {
  return { text: spoken(defs, lines), warning: lines[0] === SAFE_ALWAYS[0] }
}

/** Lines as they are said, with the initials of the crew spelled. */
export function spoken(defs: Definitions, lines: readonly string[]): string {
  const initials = defs.crew.crew.map((person) => person.id)
  return asSentences(lines.map((line) => inWords(line, initials)))
}

function isWarning(defs: Definitions, state: State, entry: Entry): boolean {
  // A line that was taken back by the one who keyed it is no alarm.
  if (entry.type === 'gate.closed') return !isSlip(entry)
  if (entry.type === 'elsewhere.seen') return rowsOf(defs, state, entry).some((r) => r.tone === 'caution')
  return WARNINGS.includes(entry.type)
}

function linesOf(defs: Definitions, state: State, entry: Entry): string[] {
  const rows = rowsOf(defs, state, entry)
  switch (entry.type) {
    case 'job.opened':
      return texts(rows.filter((r) => r.tone === 'strong' || r.tone === 'caution'))
    case 'reading.taken':
      return takenLines(entry, rows)
    case 'reading.doubted':
      // What would fit is for the eye; the ways on come with the question that follows.
      return [`${figure(entry)} is doubted`]
    case 'evidence.given':
      return texts(rows).map((line) =>
        entry.instrument === undefined ? line : line.replace(new RegExp(`  ${entry.instrument}$`), ''),
      )
    case 'machine.mismatched':
      // Figures alone may be a PIN keyed in the wrong place.
      return /^[\d\s]{4,}$/.test(entry.typed) ? texts(rows.slice(1)) : texts(rows)
    case 'verdict.given':
      return [
        `Verdict on ${titleOf(defs, entry.step)}: ${entry.verdict.result.verdict}`,
        ...texts(becauseRows(defs, entry.verdict)),
      ]
    case 'job.closed':
      return texts(rows.filter((r, i) => i === 0 || r.tone === 'caution'))
    default:
      return texts(rows.filter((r) => r.tone !== 'faint'))
  }
}

function rowsOf(defs: Definitions, state: State, entry: Entry): readonly Row[] {
  return entryBlock(defs, state, entry)?.rows ?? []
}

function texts(rows: readonly Row[]): string[] {
  return rows.filter((r) => r.keep !== true).map((r) => r.text)
}

/** Read back as it was keyed, in its own unit: the partner holds it against what was called. Then how repeats agree. */
function takenLines(entry: Extract<Entry, { type: 'reading.taken' }>, rows: readonly Row[]): string[] {
  const spread = rows.flatMap((r) => / {2}(spread \S+)/.exec(r.text)?.[1] ?? [])
  return [figure(entry), ...spread, ...texts(rows.filter((r) => r.tone === 'caution'))]
}

function figure({ typed, unit }: { readonly typed: string; readonly unit: string }): string {
  const keyed = typed.trim()
  return /^[-\d.,]+$/.test(keyed) ? `${keyed} ${unit === '1' ? '' : unit}` : keyed
}
