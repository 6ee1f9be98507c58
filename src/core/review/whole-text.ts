// All the words of an entry, as a question about it may have any of them: the sheet it stands at, what it tells, and whatever somebody keyed
// in it, reasons and notes among them.
import { stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { instrumentName } from '../talk/names.ts'
import { isTag, type OnRecord, tagsIn, toldOf } from './asked-entries.ts'
import { judgedIn } from './judged.ts'
import { type Move, named } from './look.ts'

/** Ids, times and hashes of the record, and none of the words of it. */
const NO_WORDS = new Set([
  'type',
  'seq',
  'at',
  'step',
  'item',
  'place',
  'seat',
  'voids',
  'inputs',
  'signed',
  'unit',
])

/** Words and initials that were keyed in an entry, in the order of its fields; the file copies of an opening are none. */
export function keyedIn(entry: Entry): string {
  if (entry.type === 'job.opened') return ''
  return stringsIn(entry).join(' ')
}

function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  if (Array.isArray(value)) return value.flatMap(stringsIn)
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, one]) => (NO_WORDS.has(key) ? [] : stringsIn(one)))
}

export function wholeText(record: OnRecord, move: Move): string {
  const { entry } = move
  const placed =
    'step' in entry && typeof entry.step === 'string' ? stepById(record.defs, entry.step) : undefined
  const of = placed?.step.kind === 'read' ? placed.step.of : ''
  const figures = entry.type === 'verdict.given' ? judgedIn(entry.verdict).map(({ name }) => name) : []
  // What a verdict was worked out from has its own entries.
  const keyed = entry.type === 'verdict.given' ? '' : keyedIn(entry)
  const name = placed === undefined ? '' : named(placed)
  const own = [name, of, toldOf(record, move) ?? '', keyed, ...figures].join(' ')
  // A figure is of what was read, and not of the gauge that read it.
  const isFigure = entry.type.startsWith('reading.') || entry.type.startsWith('evidence.')
  return [own, ...(isFigure ? [] : instrumentsIn(record, own)), ...lockIn(record, own)].join(' ')
}

/** A lock that is named by its number alone is asked for as one. */
function lockIn({ entries }: OnRecord, text: string): string[] {
  const tags = tagsIn(text)
  return entries.some((e) => e.type === 'evidence.given' && tags.some((tag) => isTag(e.shown, tag)))
    ? ['lock']
    : []
}

/** Names of the instruments that are told by their number alone: whoever asks for the micrometer means M-3. */
function instrumentsIn({ defs }: OnRecord, text: string): string[] {
  const tags = tagsIn(text)
  return defs.instruments.instruments
    .filter(({ id }) => tags.some((tag) => isTag(id, tag)))
    .map(({ id }) => instrumentName(defs, id))
}

/** Whether somebody is named in what was keyed, by initials; who was at the keys alone is not. */
export function namesPerson(entry: Entry, id: string): boolean {
  // The sources of its limits name who approved them.
  if (entry.type === 'verdict.given') return false
  const { by: _, ...rest } = entry as Entry & { readonly by?: string }
  return new RegExp(`\\b${id}\\b`).test(keyedIn(rest as Entry))
}
