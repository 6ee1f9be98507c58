// Readings that were not believed as keyed, or keyed after their hold point had fallen, and what became of each.
import { findReading } from '../../job/admit-change.ts'
import { stands } from '../../job/state.ts'
import { capital } from '../../lib/wording.ts'
import { placeName, placeNumber, readingText } from '../../talk/names.ts'
import type { Found } from '../exception.ts'
import { byWhom, type Look, type Move, sentence } from '../look.ts'

export function doubted(look: Look): Found[] {
  return look.moves.flatMap((move) => one(look, move))
}

function one(look: Look, { entry }: Move): Found[] {
  if (entry.type !== 'reading.doubted' && entry.type !== 'reading.late') return []
  const defs = look.defsAt(entry)
  const isDoubt = entry.type === 'reading.doubted'
  const waits = (state: Move['before']) => (isDoubt ? state.doubt : state.late)?.seq === entry.seq
  const end = look.moves.find(({ before, after }) => waits(before) && !waits(after))?.entry
  const isKept =
    (end?.type === 'doubt.settled' && end.choice === 'kept') || (end?.type === 'late.settled' && end.kept)
  const where = `${placeNumber(defs, entry.step, entry.place)} ${placeName(defs, entry.step, entry.place)}`
  const why = isDoubt ? entry.why : 'keyed after the hold point had fallen'
  const since = isKept === true ? sinceThen(look, entry.seq) : null
  return [
    {
      kind: 'doubted',
      // What became of it stands first, and by how much: a list cut at the width of the terminal loses what stands last.
      what: `${since === null ? headOf(end) : capital(since.short)}: ${entry.typed.trim()}, ${why}; ${where}`,
      sentences: [
        sentence(
          `Keyed ${byWhom(look, entry)} with ${entry.instrument}: ${readingText(defs, entry)}, ${why}`,
        ),
        ...(isDoubt && entry.shown !== undefined ? [sentence(entry.shown)] : []),
        sentence(`It was ${became(end)}${end === undefined ? '' : `, ${byWhom(look, end)}`}`),
        ...(end?.type === 'doubt.settled' && end.why !== undefined ? [sentence(`Because: ${end.why}`)] : []),
        ...(since === null ? [] : [since.says]),
      ],
      entries: [entry.seq, ...(end === undefined ? [] : [end.seq]), ...(since?.entries ?? [])],
      open: false,
      grave: isKept === true && since === null ? 0 : 1,
    },
  ]
}

/** What became of one that was kept at first and does not stand any more; null where it stands: told as kept, it would read as both. */
function sinceThen(look: Look, seq: number) {
  const kept = findReading(look.state, seq)
  if (kept === null || stands(kept)) return null
  if (kept.correctedBy === null)
    return {
      short: 'kept at first, void since',
      says: 'It became void since, and counts for nothing.',
      entries: kept.voidBy === null ? [] : [kept.voidBy],
    }
  const by = look.entries[kept.correctedBy]
  const now = by?.type === 'reading.corrected' ? by.typed.trim() : 'another figure'
  return {
    short: `kept at first, corrected to ${now} since`,
    says: `It was corrected to ${now} since${by === undefined ? '' : `, ${byWhom(look, by)}`}: this figure counts no more.`,
    entries: [kept.correctedBy],
  }
}

function headOf(end: Move['entry'] | undefined): string {
  return end?.type === 'doubt.settled' && end.choice === 'kept' ? 'DOUBTED AND KEPT' : capital(became(end))
}

function became(end: Move['entry'] | undefined): string {
  switch (end?.type) {
    case 'doubt.settled':
      return {
        kept: 'KEPT',
        again: 'measured again',
        mistyped: 'mistyped, keyed again',
        unreadable: 'cannot be read on the sheet',
      }[end.choice]
    case 'late.settled':
      return end.kept ? 'confirmed as taken before' : 'not used'
    case 'reading.not-applicable':
      return 'entered as n/a'
    case 'instrument.doubted':
      return 'void with its instrument'
    case 'record.taken-in':
      return 'not used, as the machine record was changed'
    case undefined:
      return 'never answered'
    default:
      return 'not used'
  }
}
