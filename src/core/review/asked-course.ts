// What came before what, asked at a review: what was keyed between two things or after one, who told of a lock that was off and what came
// of it, and when the machine was started. In the order of keying, each with its entry.
import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { itemByKey } from '../job/gate.ts'
import { hanging } from '../job/locks-on.ts'
import type { Block } from '../sheet/block.ts'
import { tellsOfHarm } from '../talk/safety-asked.ts'
import { anchorOf, lineOf } from './anchor.ts'
import { howLongTold } from './asked-desk.ts'
import {
  asItem,
  entriesText,
  heading,
  isTag,
  lineName,
  linesWhere,
  notTold,
  type OnRecord,
  said,
  tagsIn,
  wordsIn,
} from './asked-entries.ts'
import { isAbout } from './asked-locks.ts'
import { lookOf } from './asked-readings.ts'
import { heldIn, wordsAsked } from './asked-words.ts'
import { workedAfter } from './kinds/danger.ts'
import { count } from './look.ts'
import { runsIt, startsIt, startsOf } from './starts.ts'
import { namesPerson, wholeText } from './whole-text.ts'

const MOST = 14

const SAID: readonly Entry['type'][] = ['note.written', 'step.objected', 'stop.explained', 'remark.made']

const READ: readonly Entry['type'][] = [
  'reading.taken',
  'reading.doubted',
  'reading.late',
  'reading.corrected',
]

/** What was keyed between two things that the question names; of measuring alone, where it asks for that. */
export function betweenTold(record: OnRecord, asked: string): Block[] | null {
  const [, one = '', other = ''] = /\bbetween (.+?) and (.+?)\??$/.exec(asked) ?? []
  const first = anchorOf(record, one, -1)
  const last = first === null ? null : anchorOf(record, other, first.seq)
  // What is not found by its words is looked for in all of them together, and not said to be missing.
  if (first === null || last === null) return null
  const isMeasuring = /\b(?:measur|read|figure)/.test(asked.replace(/\bbetween .*/, ''))
  const inside = record.entries.filter(
    ({ seq, type }) => seq > first.seq && seq < last.seq && (!isMeasuring || READ.includes(type)),
  )
  const seqs = new Set(inside.map(({ seq }) => seq))
  const lines = linesWhere(record, ({ entry }) => seqs.has(entry.seq))
  const what = isMeasuring ? 'reading' : 'entry'
  return [
    heading(
      inside.length === 0
        ? `No ${what} was keyed between the two, by the order of the log`
        : `Keyed between the two, by the order of the log: ${isMeasuring ? count(inside.length, 'reading') : count(inside.length, 'entry', 'entries')}`,
    ),
    said(lineOf(record, first), ...cut(lines).map((text) => `  ${text}`), lineOf(record, last)),
    said('When a figure was read before it was keyed, the log does not tell.'),
  ]
}

const cut = (lines: readonly string[]): readonly string[] =>
  lines.length > MOST
    ? [...lines.slice(0, MOST), `and ${lines.length - MOST} more: barover show has all of it.`]
    : lines

/** What somebody keyed, or what was keyed, after a thing that the question names. Null: it names nobody, or nothing that is in the log. */
export function afterTold(record: OnRecord, asked: string): Block[] | null {
  const [, before = '', after = ''] = /^(.*?)\bafter (.+?)\??$/.exec(asked) ?? []
  const first = after === '' ? null : anchorOf(record, after, -1)
  if (first === null) return null
  const person = record.defs.crew.crew.find(({ id }) => new RegExp(`\\b${id}\\b`, 'i').test(before))
  const isMeasuring = /\b(?:readings?|figures?|sizes?|measur\w*)\b/.test(before)
  const is = (entry: Entry) =>
    entry.seq > first.seq &&
    (!isMeasuring || READ.includes(entry.type)) &&
    (person === undefined || entry.by === person.id || ('person' in entry && entry.person === person.id))
  const lines = linesWhere(record, ({ entry }) => is(entry))
  return [
    heading(
      `Keyed after this${person === undefined ? '' : `, by ${person.id}`}: ${isMeasuring ? count(lines.length, 'reading') : count(lines.length, 'entry', 'entries')}`,
    ),
    said(lineOf(record, first), ...cut(lines).map((text) => `  ${text}`)),
    said(
      'What a note tells of may have been before it was keyed. Who keyed is on record; whose hands did the work is not.',
    ),
  ]
}

/**
 * Who told that a lock was off, each once, and in the order of the log what came after it: work until people were called out, STOP, release,
 * and what was keyed since where that lock hangs.
 */
export function toldOffTold(record: OnRecord): Block[] {
  const { entries, defs, state } = record
  const told = entries.filter((e) => SAID.includes(e.type) && isOfLock(record, wordsIn(e)))
  const first = told[0]
  if (first === undefined)
    return [
      notTold('that anybody said a lock was off'),
      said('Locks, as they were keyed: which locks are still on.'),
    ]
  const tags = told.flatMap((e) => tagsIn(wordsIn(e)))
  const lines = new Set(
    entries.flatMap((e) =>
      e.type === 'evidence.given' && isLock(defs, e) && tags.some((tag) => isAbout(defs, e, tag))
        ? [lineKey(e)]
        : [],
    ),
  )
  const isLater = (e: Entry) =>
    e.seq > first.seq &&
    (CAME.includes(e.type) ||
      told.includes(e) ||
      (e.type === 'evidence.given' && isLock(defs, e) && (lines.size === 0 || lines.has(lineKey(e)))))
  const work = new Set(workedAfter(entries, first.seq).map(({ seq }) => seq))
  const still = hanging(defs, state).on.filter((one) => tags.some((tag) => isTag(one.shown, tag)))
  return [
    heading(
      `${count(told.length, 'entry', 'entries')} told that a lock was off; what came after it, in the order of the log`,
    ),
    said(
      lineOf(record, first),
      ...(work.size === 0
        ? []
        : [
            `WORK WENT ON after it, before anybody was called out: ${count(work.size, 'answer')}.`,
            ...cut(linesWhere(record, ({ entry }) => work.has(entry.seq))).map((text) => `  ${text}`),
          ]),
      ...cut(linesWhere(record, ({ entry }) => isLater(entry))),
    ),
    said(
      ...still.map(({ shown, seq }) => `No entry has ${shown} taken off (entry ${seq}): look where it is.`),
      'Words take no lock off the record. Whether it was off, only somebody who looked can tell.',
    ),
  ]
}

const CAME: readonly Entry['type'][] = [
  ...(['stop.raised', 'stop.explained', 'stop.released', 'stop.stands', 'people.clear'] as const),
]

const lineKey = ({ step, item }: { readonly step: string; readonly item: string }) => `${step} ${item}`

const LOCK = /\b(?:locks?|padlocks?|tags?|blinds?|hasps?)\b/i

/** Also of one that is named by its number, or its point's, alone: whoever noted it may have written no more. */
function isOfLock({ defs, entries }: OnRecord, text: string): boolean {
  if (!tellsOfHarm(text) && !/\boff\b|\bmissing\b|\bgone\b/i.test(text)) return false
  const tags = tagsIn(text)
  return (
    LOCK.test(text) ||
    entries.some(
      (e) => e.type === 'evidence.given' && isLock(defs, e) && tags.some((tag) => isAbout(defs, e, tag)),
    )
  )
}

function isLock(defs: Definitions, e: Extract<Entry, { type: 'evidence.given' }>): boolean {
  const placed = stepById(defs, e.step)
  const item = placed.step.kind === 'gate' ? itemByKey(defs, asKind(placed, 'gate'), e.item) : undefined
  return item?.evidence.kind === 'locks' || item?.evidence.kind === 'numbers'
}

/** When the machine was set going, as far as a step of it was answered, and when the job was opened: two things, asked in the same words. */
export function startTold(record: OnRecord): Block[] {
  const { defs } = record
  const starts = startsOf(lookOf(record))
  const asked = defs.steps.filter((placed: PlacedStep) => startsIt(defs, placed) && runsIt(defs, placed))
  const runs = starts.filter(({ placed }) => runsIt(defs, placed))
  const seqs = new Set(runs.map(({ move }) => move.entry.seq))
  const items = record.review.exceptions.filter(
    ({ kind }) => kind === 'started' || kind === 'start-clear' || (runs.length > 0 && kind === 'hanging'),
  )
  const [head] = howLongTold(record)
  return [
    heading(
      runs.length > 0
        ? 'When the machine was started, by the steps that were answered'
        : asked.length === 0
          ? 'No entry tells that the machine was started: no step of this job starts it'
          : 'No entry tells that the machine was started: the step that does is not answered',
    ),
    said(
      ...linesWhere(record, ({ entry }) => seqs.has(entry.seq)),
      ...(runs.length > 0 && record.review.started !== null ? [`${record.review.started.what}.`] : []),
    ),
    ...items.map(asItem),
    said('The job itself:', ...(head?.rows.map(({ text }) => text) ?? [])),
    said('That is when it was keyed; who stood where, the log does not tell.'),
  ]
}

/** Each time that a start was tried before hands went in, and what came of it, as it was keyed. */
export function triedStartTold(record: OnRecord): Block[] {
  const lines = linesWhere(
    record,
    ({ entry }) =>
      (entry.type === 'evidence.given' || entry.type === 'evidence.failed') &&
      /\bstart\b/.test(lineName(record.defs, entry)),
  )
  return lines.length === 0
    ? [notTold('that a start was tried: no hold point was keyed with that')]
    : [
        heading('Starts that were tried before hands went in, as they were keyed'),
        said(...lines, 'Whether the panel was live then, the words alone tell.'),
      ]
}

/** Which of two that a question names was done first, by the first step answered with its words and, where they are asked, of taking it off. */
export function cameFirstTold(record: OnRecord, asked: string): Block[] | null {
  const [, either, one = '', other = ''] =
    /\bfirst\b(,?) (?:the )?(.+?),? or (?:the )?(.+?)\??$/.exec(asked) ??
    /()^(?:did|was|were) (?:the )?(.+?) (?:come |came |done |opened )?(?:off |out )?before (?:the )?(.+?)\??$/.exec(
      asked,
    ) ??
    []
  if (either === undefined) return null
  const isOff = /\b(?:off|out|opened|removed)\b/.test(asked)
  const found = [one, other].map((words) => ({ words, entry: firstDone(record, words, isOff) }))
  const [a, b] = [...found].sort((x, y) => (x.entry?.seq ?? Infinity) - (y.entry?.seq ?? Infinity))
  if (a?.entry == null) return null
  const missing = found.filter(({ entry }) => entry === null).map(({ words }) => words)
  return [
    heading(
      missing.length > 0
        ? `Which came first no entry tells: no step answered has ${missing.join(' or ')} in its name`
        : `By the order of keying the ${a.words} before the ${b?.words ?? ''}`,
    ),
    said(...found.flatMap(({ entry }) => (entry === null ? [] : [lineOf(record, entry)]))),
    said('The first step of each that was answered; the order of keying is that of the sheet.'),
  ]
}

const OFF = /\b(?:off|out|slack\w*|lifted|drawn?|opened|removed?)\b/i

function firstDone(record: OnRecord, words: string, isOff: boolean): Entry | null {
  const wanted = wordsAsked(words)
  const done = record.entries.filter(
    (e) =>
      (e.type === 'step.confirmed' || e.type === 'step.done') &&
      wanted.length > 0 &&
      heldIn(stepById(record.defs, e.step).step.title, wanted) === wanted.length,
  )
  const off = done.find((e) => 'step' in e && OFF.test(stepById(record.defs, e.step as string).step.title))
  return (isOff ? off : undefined) ?? done[0] ?? null
}

/** Whose hand dropped a thing no log tells, but for what somebody keyed of it. */
export function droppedTold(record: OnRecord, asked: string): Block[] | null {
  const words = wordsAsked(asked)
  const tags = tagsIn(asked)
  const all = linesWhere(
    record,
    ({ entry }) =>
      entry.type === 'instrument.doubted' &&
      (tags.length === 0 || tags.some((tag) => isTag(entry.instrument, tag))),
  )
  const others = linesWhere(
    record,
    (move) => SAID.includes(move.entry.type) && heldIn(wordsIn(move.entry), words) > 0,
  )
  if (all.length + others.length === 0) return null
  return [
    heading('Whose hand it was no entry tells, but in these words; who stands before them keyed them'),
    said(...all, ...others),
  ]
}

const ID = /\b(?:did|has|had|was) ([a-z]{2,4})\b/

/** Whether somebody did, saw or agreed to a thing: what is in the log with them named and the words of it. Null: nobody is named. */
export function didTold(record: OnRecord, asked: string): Block[] | null {
  const { defs, entries } = record
  const id = ID.exec(asked)?.[1]?.toUpperCase() ?? ''
  const isIn = defs.crew.crew.some((one) => one.id.toUpperCase() === id)
  const named = (e: Entry) => e.by?.toUpperCase() === id || namesPerson(e, id)
  const own = entries.filter(named)
  if (id === '' || (!isIn && own.length === 0)) return null
  const words = wordsAsked(asked).filter(
    (word) => word.toUpperCase() !== id && !/^(?:himself|herself|agre|approv|permit|allow)/.test(word),
  )
  if (words.length === 0 && own.length > MOST) return null
  const seqs = new Set(own.map(({ seq }) => seq))
  const all = linesWhere(record, ({ entry }) => seqs.has(entry.seq))
  const held = linesWhere(
    record,
    (move) => seqs.has(move.entry.seq) && heldIn(wholeText(record, move), words) > 0,
  )
  const signed = own.filter((e) => 'signed' in e && e.signed === 'pin' && 'person' in e && e.person === id)
  return [
    heading(
      held.length > 0
        ? `Whether ${id} did, no entry tells but in these words`
        : `No entry tells that ${id} did, by the words of the question`,
    ),
    said(
      ...(held.length === 0 && all.length > 0 ? [`What ${id} is named in or keyed:`] : []),
      ...cut(held.length > 0 ? held : all),
      ...authorityLines(record, id),
      ...(isIn ? [] : [`${id} is not in the crew file of this job and signed nothing in it.`]),
      ...(isIn && own.every((e) => e.by !== id) ? [`${id} keyed nothing on this job.`] : []),
      signed.length === 0
        ? 'Words keyed of somebody are no signature; whose eyes looked, the log does not tell.'
        : `Signed by PIN: ${entriesText(signed.map(({ seq }) => seq))}. Words keyed of somebody are no signature; whose eyes looked, the log does not tell.`,
    ),
  ]
}

const nameIn = (e: Entry, id: string) =>
  'authority' in e && typeof e.authority === 'string' && new RegExp(`\\b${id}\\b`).test(e.authority)

function authorityLines({ entries }: OnRecord, id: string): string[] {
  return entries.flatMap((e) =>
    nameIn(e, id) && 'person' in e
      ? [`Named as the authority by ${e.person ?? 'nobody'}, and not signed by ${id} (entry ${e.seq}).`]
      : [],
  )
}
