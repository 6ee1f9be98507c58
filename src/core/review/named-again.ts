// What else the log has of a lock, a valve or an instrument that somebody named in words of their own: a note that a lock is off and a release
// that says it is on stand pages apart, and nobody but a reader would put them together.
import type { Entry } from '../job/entries.ts'
import { stands } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { stem } from '../papers/ask-words.ts'
import { entriesText, entryLine, isTag, lineName, placeOf, tagsIn, toldOf, wordsIn } from './asked-entries.ts'
import { asAsked, wordsAsked } from './asked-words.ts'
import { figuresIn, isReadAs } from './figures-in.ts'
import { formOf, formsIn } from './forms.ts'
import { clause, count, type Look } from './look.ts'

/** More of one thing are told by how many they are: keying its number shows them all. */
const MOST = 4

/** Sentences about what `words` name; nothing of the entries that are told already. */
export function namedAgain(look: Look, words: string, told: readonly Entry[]): string[] {
  const tags = [...new Set(tagsIn(words))]
  return [
    ...tags.flatMap((tag) => [...instrumentText(look, tag, told), ...alsoOf(look, tag, told)]),
    ...figuresAgain(look, words),
  ]
}

/** A figure in a note is mostly that of a reading: a gauge that stuck at it, or one that was thought wrong. */
function figuresAgain(look: Look, words: string): string[] {
  return figuresIn(words).flatMap((figure) => {
    const read = look.entries.flatMap((e) => (isReadAs(e, figure) ? [e] : []))
    const places = [...new Set(read.map((one) => placeOf(look.defs, one)))]
    return read.length === 0
      ? []
      : [`${figure} was keyed at ${list(places)} (${entriesText(read.map(({ seq }) => seq))}).`]
  })
}

/** Entries on either side of a note that are about what it is about. By eye on three logs, no source. */
const BESIDE = 12

/**
 * The same by the words of a note: a plug that hissed, and a piston that was found to have none. Words of harm are of no part, and name
 * nothing.
 */
export function partAgain(look: Look, note: Extract<Entry, { type: 'note.written' }>): string[] {
  // What has a number is told by that.
  if (tagsIn(note.text).length > 0) return []
  const others = look.moves.flatMap((move) => {
    const { entry } = move
    const isBeside = entry.seq !== note.seq && Math.abs(entry.seq - note.seq) <= BESIDE
    const isTold = entry.type.startsWith('finding.') || freeWords(entry) !== ''
    const text = isBeside && isTold ? toldOf(look, move) : null
    return text === null ? [] : [{ entry, text, forms: formsIn(text) }]
  })
  const words = wordsAsked(note.text).filter((word) => !HARM.has(word))
  return others.flatMap(({ entry, text, forms }) => {
    const has = words.filter((word) => forms.has(formOf(word)))
    return has.length === 0
      ? []
      : [`Beside it, of ${asAsked(note.text, has)}: ${entryLine(look, entry, text)}.`]
  })
}

/** Words of what happened, in whatever part. Chosen by hand from the words that harm is heard by. */
const HARM = new Set(
  (
    'gas smell smells smelt hiss hissed hisses hissing leak leaks leaking blow blows blowing alarm hurt cut off on lock locks ' +
    'little bit first last after before stopped stop started start turned turn moved move second minute step again still'
  )
    .split(' ')
    .map(stem),
)

function alsoOf(look: Look, tag: string, told: readonly Entry[]): string[] {
  // A valve is known by the locks that were keyed at it, and a lock by its own number.
  const locks = look.entries.flatMap((entry) => numberAt(look, entry, tag) ?? [])
  const all = [tag, ...locks]
  const found = look.moves.filter(
    ({ entry }) =>
      !told.some(({ seq }) => seq === entry.seq) &&
      (numberAt(look, entry, tag) !== null ||
        (entry.type === 'evidence.given' && isTag(entry.shown, tag)) ||
        tagsIn(freeWords(entry)).some((one) => all.some((other) => isTag(one, other)))),
  )
  const lines = found.flatMap((move) => {
    const text = toldOf(look, move)
    return text === null ? [] : [entryLine(look, move.entry, `${text}${addedTo(move.entry, text)}`)]
  })
  const more = lines.length - MOST
  return [
    ...lines.slice(0, MOST).map((line) => `Also of ${tag}: ${line}.`),
    ...(more > 0 ? [`${count(more, 'more entry', 'more entries')} of ${tag}: key ${tag}.`] : []),
  ]
}

/** The number that was keyed for this valve or breaker; null for any other entry. */
function numberAt({ defs }: Look, entry: Entry, tag: string): string | null {
  if (entry.type !== 'evidence.given') return null
  return tagsIn(lineName(defs, entry)).some((one) => isTag(one, tag)) ? entry.shown : null
}

/** What it read before the words were put down and after them: which of it they bear on a reader has to say. */
function instrumentText({ defs, state }: Look, tag: string, [put]: readonly Entry[]): string[] {
  const known = defs.instruments.instruments.find(({ id }) => isTag(id, tag))
  if (known === undefined || put === undefined) return []
  const read = Object.values(state.readings)
    .flat()
    .filter((one) => stands(one) && one.instrument === known.id)
  const before = read.filter(({ seq }) => seq < put.seq)
  const after = read.length - before.length
  return [
    `${known.id} had taken ${count(before.length, 'reading')} that stand when this was put down, and took ${after === 0 ? 'none' : after} after it.`,
  ]
}

/** What somebody keyed in words of their own, and why an entry is as it is; empty where it says neither. */
function freeWords(entry: Entry): string {
  const {
    why = '',
    note = '',
    first = '',
  } = entry as Entry & Partial<Record<'why' | 'note' | 'first', string>>
  const said = wordsIn(entry)
  return (said === '' ? [why, note, first] : [said]).filter((one) => one !== '').join('; ')
}

/** Why an entry is as it is, where its line does not say so. */
function addedTo(entry: Entry, text: string): string {
  const words = freeWords(entry)
  return words === '' || text.includes(clause(words)) ? '' : `; ${words}`
}
