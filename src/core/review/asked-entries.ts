// How an answer at a review names what it rests on: an entry of the log in one line, with its time, who, and the number by which it
// is opened. Nothing is told that stands in no entry.
import { CAUSES } from '../job/close-causes.ts'
import { type Definitions, instrumentById, stepById } from '../job/definitions.ts'
import { defsAt, type Editions } from '../job/editions.ts'
import type { Entry, ReadingAt } from '../job/entries.ts'
import { itemByKey } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { lapsedText } from '../job/lapsed-at.ts'
import { allOf, labelsOf } from '../job/seen.ts'
import type { State } from '../job/state.ts'
import { validityText } from '../job/validity.ts'
import { list } from '../lib/wording.ts'
import { type Block, row } from '../sheet/block.ts'
import { entryBlock } from '../sheet/entry-block.ts'
import { instrumentName, placeName, placeNumber, readingText } from '../talk/names.ts'
import type { Exception } from './exception.ts'
import { byWhom, clause, type Move, movesOf, named } from './look.ts'
import type { Review } from './review.ts'

/** What a question is answered from. */
export interface OnRecord {
  readonly review: Review
  readonly defs: Definitions
  readonly entries: readonly Entry[]
  readonly state: State
  /** Left out: the definitions are those of the opening throughout. */
  readonly editions?: Editions
}

/** A kind of question about the log. */
export interface Question {
  readonly asked: readonly RegExp[]
  /** As it is named where another was asked. */
  readonly like: string
  /** Null: what was asked names nothing that this kind is about, and the next one is tried. */
  readonly answer: (record: OnRecord, asked: string) => Block[] | null
}

/** Entries named in one place: more are told by how many they are. */
const MOST_NAMED = 8

/** `entry 214`, `entries 214, 220`. */
export function entriesText(seqs: readonly number[]): string {
  const all = [...new Set(seqs)].sort((a, b) => a - b)
  if (all.length === 1) return `entry ${all[0]}`
  if (all.length <= MOST_NAMED) return `entries ${all.join(', ')}`
  return `${all.length} entries, ${all[0]} to ${all.at(-1)}`
}

/** `06:52 RO: words (entry 214)`. */
export function entryLine({ entries }: Pick<OnRecord, 'entries'>, entry: Entry, text: string): string {
  const [who, time] = splitOff(byWhom({ entries }, entry))
  return `${time} ${who}: ${clause(text)} (entry ${entry.seq})`
}

/** Who stands before the time, which may have its day before it. */
function splitOff(text: string): [string, string] {
  const at = /^(.*?) ((?:\d{4}-\d\d-\d\d )?\d\d:\d\d)$/.exec(text)
  return [at?.[1] ?? text, at?.[2] ?? '']
}

/** What an entry says, in the words of the sheet; null for one that says nothing there. */
export function toldOf(
  record: Pick<OnRecord, 'defs' | 'entries' | 'editions'>,
  { entry, after }: Move,
): string | null {
  const defs = record.editions === undefined ? record.defs : defsAt(record.editions, entry.seq)
  switch (entry.type) {
    case 'verdict.given':
      return `${named(stepById(defs, entry.step))}: ${entry.verdict.result.verdict}`
    case 'finding.observed':
      return `${named(stepById(defs, entry.step))}: ${labelsOf(defs, entry.step, allOf(entry))}${entry.note === undefined ? '' : `; ${entry.note}`}`
    case 'disposition.set':
      return `${named(stepById(defs, entry.step))}: ${entry.choice}${entry.radio === undefined ? '' : ' by radio'}, by ${entry.person}, because: ${clause(entry.why)}${entry.authority === undefined ? '' : `, on the authority of ${clause(entry.authority)}`}${entry.valid === undefined ? '' : `, ${validityText(entry.valid)}`}`
    case 'step.objected':
      return `${named(stepById(defs, entry.step))}: not so, ${entry.remark}`
    case 'stop.explained': {
      const told = entryBlock(defs, after, entry)?.rows[0]?.text.trim() ?? ''
      return `${told}${entry.why === '' ? '' : `, ${clause(entry.why)}`}${entry.called_by === undefined ? '' : `; called by ${entry.called_by}`}`
    }
    case 'stop.stands':
      return `The STOP stands: ${entry.person} closes the job under it; before a new job is opened: ${clause(entry.first)}`
    case 'gate.closed': {
      const why = entry.why ?? CAUSES[entry.cause]
      const lapsed = lapsedText(defs, after, entry)
      return `hold point ${named(stepById(defs, entry.step))} fell: ${why}${lapsed === null ? '' : `, ${lapsed}`}`
    }
    case 'point.signed':
      return `${named(stepById(defs, entry.step))}: ${entry.point} point signed by ${entry.person}`
    case 'evidence.given': {
      const told = entryBlock(defs, after, entry)?.rows[0]?.text.trim() ?? null
      if (told === null || entry.was === undefined) return told
      return `${told}; ${entry.was} before${entry.why === undefined ? '' : `, not so now: ${clause(entry.why)}`}`
    }
    case 'reading.taken':
    case 'reading.doubted':
      return readingTold(defs, entry)
    case 'doubt.settled':
    case 'late.settled': {
      const told = entryBlock(defs, after, entry)?.rows[0]?.text.trim() ?? null
      const about = record.entries.findLast(
        (e) => e.seq < entry.seq && (e.type === 'reading.doubted' || e.type === 'reading.late'),
      )
      if (told === null || (about?.type !== 'reading.doubted' && about?.type !== 'reading.late')) return told
      const how = about.type === 'reading.late' ? 'keyed after a hold point fell' : 'doubted'
      return `${placeOf(defs, about)}: ${readingText(defs, about).replace(/\s+/g, ' ')}, ${how}, ${told}`
    }
    case 'instrument.doubted': {
      const known = instrumentById(defs, entry.instrument)
      const name = known === undefined ? entry.instrument : instrumentName(defs, entry.instrument)
      return `${name}: out of calibration, ${clause(entry.why)}, says ${clause(entry.says)}`
    }
    case 'reading.corrected': {
      const old = record.entries[entry.of]
      const was = old !== undefined && 'place' in old && 'typed' in old ? `${old.typed.trim()} to ` : ''
      return `${placeOf(defs, entry)}: corrected from ${was}${entry.typed.trim()}, ${entry.why}`
    }
    default:
      return entryBlock(defs, after, entry)?.rows[0]?.text.trim() ?? null
  }
}

const readingTold = (defs: Definitions, one: ReadingAt) =>
  `${placeOf(defs, one)}: ${readingText(defs, one)} with ${one.instrument}${one.paper === undefined ? '' : `, on the sheet by ${one.paper.who ?? 'nobody named'}`}`

/** `7.3 Bore, CENTRE of ring travel, TOP TO BOTTOM`. */
export function placeOf(defs: Definitions, { step, place }: Pick<ReadingAt, 'step' | 'place'>): string {
  return `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}`
}

/** What the line of a hold point asks for, by the entry that answers it: `lock at suction block valve, V-11`; empty where it is no gate's. */
export function lineName(
  defs: Definitions,
  { step, item }: { readonly step: string; readonly item: string },
): string {
  const placed = stepById(defs, step)
  if (placed.step.kind !== 'gate') return ''
  const found = itemByKey(defs, { ...placed, step: placed.step }, item)
  return found === null ? '' : itemLabel(defs, found)
}

/** Each entry that is wanted, in the order of the log, as a line. */
export function linesWhere(record: OnRecord, wanted: (move: Move) => boolean): string[] {
  return movesOf(record.entries)
    .filter(wanted)
    .flatMap((move) => {
      const text = toldOf(record, move)
      return text === null ? [] : [entryLine(record, move.entry, text)]
    })
}

export const heading = (text: string): Block => ({ margin: '', rows: [row(text, 'strong')] })
export const said = (...texts: string[]): Block => ({ margin: '', rows: texts.map((text) => row(text)) })

/** An item of the review with its number and the entries behind it. */
export const asItem = ({ number, what, open, entries }: Exception): Block => ({
  margin: String(number),
  rows: [
    row(
      `${open ? 'OPEN: ' : ''}${what}${entries.length === 0 ? '' : ` (${entriesText(entries)})`}`,
      open ? 'caution' : 'plain',
    ),
  ],
})

/** What somebody said in words of their own, by note, remark, objection or at a STOP; empty where an entry has none of that. */
export function wordsIn(entry: Entry): string {
  switch (entry.type) {
    case 'note.written':
    case 'remark.made':
      return entry.text
    case 'step.objected':
      return entry.remark
    case 'stop.explained':
      return entry.why
    case 'stop.released':
      return entry.answer
    default:
      return ''
  }
}

/** What somebody said that names one of these numbers: a note that a gauge fell is of no reading, and is asked for with it. */
export function saidOf(record: OnRecord, numbers: readonly string[]): string[] {
  return linesWhere(record, ({ entry }) =>
    tagsIn(wordsIn(entry)).some((tag) => numbers.some((one) => isTag(one, tag))),
  )
}

/** Numbers of locks, tags and instruments that are named in a question: `L-103`, `T-9`, `M-1`, and whole ones of two parts: `P-JD1`. */
export function tagsIn(asked: string): string[] {
  return [...asked.toUpperCase().matchAll(/\b(?:[A-Z]{1,3}[-_])?[A-Z]{1,4}[-_]?\d{1,5}[A-Z]?\b/g)].map(
    ([tag]) => tag,
  )
}

/** Whether one that was keyed is the one that is asked about: `L103` is `L-103`. */
export function isTag(keyed: string, tag: string): boolean {
  const plain = (text: string) => text.toUpperCase().replace(/[-_ ]/g, '')
  return plain(keyed) === plain(tag)
}

const GASES = [/\b(?:oxygen|o2)\b/, /\b(?:h2s|toxics?)\b/, /\b(?:lel|flammables?)\b/]

/** Of the air the one gas that a question names; undefined where it names none, or several. */
export function gasNamed(asked: string): RegExp | undefined {
  const named = GASES.filter((one) => one.test(asked))
  return named.length === 1 ? named[0] : undefined
}

export const notTold = (what: string): Block => heading(`The log does not tell ${what}`)

export const eitherOf = (words: readonly string[]) => list(words, 'or')
