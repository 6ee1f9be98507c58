// Locks, blinds and tags, asked at a review: by their own number, by the tag of the point where they hang, or all of them. Another number
// that was keyed where one hung is told beside it, as both may hang. Nothing is told off but by an entry.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { itemLabel } from '../job/item-label.ts'
import { hanging, type Keyed } from '../job/locks-on.ts'
import { type Block, row } from '../sheet/block.ts'
import { dangerNotes } from '../talk/danger-notes.ts'
import {
  eitherOf,
  heading,
  isTag,
  lineName,
  linesWhere,
  notTold,
  type OnRecord,
  said,
  saidOf,
  tagsIn,
} from './asked-entries.ts'
import { byWhom, clause, named, when } from './look.ts'

type Given = Extract<Entry, { type: 'evidence.given' }>
type Tried = Given | Extract<Entry, { type: 'evidence.failed' }>

/** Whether a tag is the number that was keyed, or the one of the point that the line is about: V-11 is the valve, L-103 hangs on it. */
export function isAbout(
  defs: Definitions,
  entry: Pick<Tried, 'step' | 'item' | 'shown'>,
  tag: string,
): boolean {
  return (
    entry.shown.split(/[\s,;]+/).some((word) => isTag(word, tag)) ||
    tagsIn(lineName(defs, entry)).some((one) => isTag(one, tag))
  )
}

/** Entries by which another number was keyed where this one hung. */
const inPlaceOf = (entries: readonly Entry[], shown: string): readonly Given[] =>
  entries.filter((e): e is Given => e.type === 'evidence.given' && e.was !== undefined && isTag(e.was, shown))

/** Of one lock, blind or tag by its number or its point's, or of all: where it hung, who keyed it on, who told it off. */
export function locksTold(record: OnRecord, asked: string): Block[] {
  const { defs, state } = record
  const { on, off } = hanging(defs, state)
  const tags = tagsIn(asked)
  const isAsked = ({ shown, item }: Keyed) =>
    tags.length === 0 ||
    tags.some((tag) => isTag(shown, tag) || tagsIn(itemLabel(defs, item)).some((one) => isTag(one, tag)))
  const blocks = [
    ...off.filter(({ what }) => isAsked(what)).map(({ what, told }) => lockBlock(record, what, told)),
    ...on.filter(isAsked).map((one) => lockBlock(record, one, null)),
  ]
  const all = linesWhere(
    record,
    ({ entry }) =>
      (entry.type === 'evidence.given' || entry.type === 'evidence.failed') &&
      tags.some((tag) => isAbout(defs, entry, tag)),
  )
  const numbers = [
    ...tags,
    ...[...on, ...off.map(({ what }) => what)].filter(isAsked).map(({ shown }) => shown),
  ]
  const notes = dangerNotes(state).filter((line) =>
    tags.length === 0 ? tagsIn(line).length > 0 || HANGS.test(line) : isOfAny(line, numbers),
  )
  // A note of danger stands by itself: once is enough.
  const words = saidOf(record, numbers).filter((line) => !notes.some((note) => sameWords(note, line)))
  if (blocks.length === 0 && all.length === 0)
    return [
      notTold(tags.length === 0 ? 'of any lock, blind or tag' : `of ${eitherOf(tags)}: no entry has it`),
      said('It tells of what was keyed at a hold point, and of nothing else that hung.'),
    ]
  const isOn = on.some(isAsked)
  return [
    heading(
      tags.length === 0
        ? 'Locks, blinds and tags, as they were keyed'
        : `What the log has of ${eitherOf(tags)}`,
    ),
    ...blocks,
    said(
      // Once, under all of them: a note of one lock is none of each.
      ...(isOn ? notes.map((line) => `But: ${line}. Words take no lock off the record: look at it.`) : []),
      ...(all.length === 0 ? [] : ['Each keying of it:', ...all]),
      ...(words.length === 0 ? [] : ['Said of it in words:', ...words]),
      'Whose hand hung it or took it off is on record only where it was asked; else it is who keyed it.',
    ),
  ]
}

const HANGS = /\b(?:locks?|padlocks?|tags?|blinds?|hasps?|valves?|breakers?|isolat\w+)\b/i

/** A note of what hangs that names no number may be of any lock, and is told of each. */
function isOfAny(text: string, numbers: readonly string[]): boolean {
  const own = tagsIn(text)
  return (
    (own.length === 0 && HANGS.test(text)) || own.some((one) => numbers.some((number) => isTag(number, one)))
  )
}

const sameWords = (note: string, line: string) => line.includes(note.replace(/^.*?: /, ''))

function lockBlock(record: OnRecord, what: Keyed, told: Keyed | null): Block {
  const { defs, entries } = record
  const others = inPlaceOf(entries, what.shown)
  const hung = `${what.shown}, ${itemLabel(defs, what.item)}, at hold point ${what.gate.number}: keyed on by ${what.by ?? 'nobody known'} (entry ${what.seq})`
  return {
    margin: '',
    rows: [
      row(
        told !== null
          ? `${hung}; ${offText(record, told)} (entry ${told.seq}).`
          : others.length === 0
            ? `${hung}. No entry has it taken off: by the record it is STILL ON.`
            : `${hung}. No hold point was keyed with it taken off, and ANOTHER was keyed in its place: look where it is.`,
      ),
      ...others.map((e) =>
        row(
          `  ${e.shown} was keyed in its place ${byWhom(record, e)} (entry ${e.seq})${e.why === undefined ? '' : `, because: ${clause(e.why)}`}.`,
          'caution',
        ),
      ),
    ],
  }
}

function offText(record: OnRecord, told: Keyed): string {
  const time = when(record, told)
  if (told.offBy !== undefined) return `off by ${told.offBy}, keyed by ${told.by ?? 'nobody known'} ${time}`
  return told.item.evidence.kind === 'words'
    ? `off by the words ${told.shown} at ${named(told.gate)}, keyed by ${told.by ?? 'nobody known'} ${time}; whose hand it was is not told`
    : `keyed off by ${told.by ?? 'nobody known'} ${time}`
}
