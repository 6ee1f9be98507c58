// What was put right or taken back after it had been keyed, with the old and the new.

import { findReading } from '../../job/admit-change.ts'
import { asKind, stepById } from '../../job/definitions.ts'
import { doubtOfCorrection } from '../../job/doubtful.ts'
import type { Entry, ReadingAt } from '../../job/entries.ts'
import { keyLabel } from '../../job/item-label.ts'
import { allOf, labelsOf } from '../../job/seen.ts'
import { stands } from '../../job/state.ts'
import { placeName, placeNumber, readingText } from '../../talk/names.ts'
import { repeatText } from '../became.ts'
import type { Found } from '../exception.ts'
import { byWhom, entriesOf, type Look, namedById, sentence } from '../look.ts'

export function corrections(look: Look): Found[] {
  return [
    ...readings(look),
    ...findings(look),
    ...otherNumbers(look),
    ...takenBack(look),
    ...reopened(look),
    ...left(look),
    ...dropped(look),
  ]
}

const isReading = (entry: Entry | undefined): entry is Entry & ReadingAt =>
  entry !== undefined && 'place' in entry && 'typed' in entry

const base = { kind: 'correction', open: false } as const

function readings(look: Look): Found[] {
  return entriesOf(look, 'reading.corrected').map((e) => {
    const defs = look.defsAt(e)
    const old = look.entries[e.of]
    const was = isReading(old) ? readingText(defs, old) : 'what is not in this log'
    const later = laterThan(look, e.seq)
    const judged = e.voids.filter((id) => stepById(defs, id).step.kind === 'judge')
    return {
      ...base,
      what: `${placeNumber(defs, e.step, e.place)} ${placeName(defs, e.step, e.place)}${repeatText(look, e).replace(/,$/, '')}: ${isReading(old) ? old.typed.trim() : '?'}, ${later === null ? 'now' : 'then'} ${e.typed.trim()}, ${byWhom(look, e)}${later === null ? '' : '; not any more'}`,
      sentences: [
        `Before: ${was}${isReading(old) ? ` with ${old.instrument}, ${byWhom(look, old)}` : ''}.`,
        `After: ${readingText(defs, e)} with ${e.instrument}, ${byWhom(look, e)}.`,
        sentence(`Because: ${e.why}`),
        ...(e.doubt === undefined ? [] : [sentence(`It was doubted then, and taken: it was ${e.doubt}`)]),
        ...(e.doubt === undefined || later !== null ? [] : doubtNow(look, e)),
        ...(later === null ? [] : [later]),
        ...(judged.length === 0 ? [] : ['It was changed after it had been judged.']),
        ...voids(look, e.voids),
      ],
      entries: [e.of, e.seq],
      grave: judged.length === 0 ? 1 : 0,
    }
  })
}

/** What became of the figure of a correction that does not stand any more; null where it does. */
function laterThan(look: Look, seq: number): string | null {
  const one = findReading(look.state, seq)
  if (one === null || stands(one)) return null
  const by = one.correctedBy === null ? undefined : look.entries[one.correctedBy]
  return by?.type === 'reading.corrected'
    ? `It was corrected once more, to ${by.typed.trim()}, ${byWhom(look, by)}: this figure counts no more.`
    : 'It became void since, and counts for nothing.'
}

/** Whether anything still speaks against it: the other of the two may have been put right after it. */
function doubtNow(look: Look, e: Extract<Entry, { type: 'reading.corrected' }>): string[] {
  const one = findReading(look.state, e.seq)
  const placed = look.defs.steps.find(({ id }) => id === e.step)
  if (one === null || placed?.step.kind !== 'read') return []
  return doubtOfCorrection(look.defs, look.state, asKind(placed, 'read'), one) === null
    ? ['By what stands now nothing speaks against it.']
    : []
}

function findings(look: Look): Found[] {
  return entriesOf(look, 'finding.corrected').map((e) => {
    const was = labelsOf(look.defs, e.step, [e.was, ...(e.was_also ?? [])])
    const now = labelsOf(look.defs, e.step, allOf(e))
    const old = look.entries.findLast(
      (o) =>
        (o.type === 'finding.observed' || o.type === 'finding.corrected') &&
        o.step === e.step &&
        o.seq < e.seq,
    )
    return {
      ...base,
      what: `${namedById(look, e.step)}: ${was}, now ${now}, ${byWhom(look, e)}`,
      sentences: [
        `Before: ${was}${old === undefined ? '' : `, ${byWhom(look, old)}`}.`,
        `After: ${now}${e.note === undefined ? '' : `, ${e.note}`}.`,
        sentence(`Because: ${e.why}`),
        ...voids(look, e.voids),
      ],
      entries: [...(old === undefined ? [] : [old.seq]), e.seq],
      grave: e.voids.length > 0 ? 0 : 1,
    }
  })
}

/** Another lock, blind or tag than before the hold point fell. */
function otherNumbers(look: Look): Found[] {
  return entriesOf(look, 'evidence.given').flatMap((e) => {
    if (e.was === undefined) return []
    const gate = asKind(stepById(look.defs, e.step), 'gate')
    return [
      {
        ...base,
        // The numbers first: where the row is cut, what is lost is the name of the hold point.
        what: `${e.shown} in place of ${e.was}, ${keyLabel(look.defs, gate, e.item)}, ${byWhom(look, e)}; ${namedById(look, e.step)}`,
        sentences: [sentence(`Because: ${e.why ?? 'no reason keyed'}`)],
        entries: [e.seq],
        grave: 0,
      },
    ]
  })
}

function takenBack(look: Look): Found[] {
  const { defs } = look
  return entriesOf(look, 'not-applicable.taken-back').map((e) => ({
    ...base,
    what: `${placeNumber(defs, e.step, e.place)} ${placeName(defs, e.step, e.place)}: n/a taken back, ${byWhom(look, e)}`,
    sentences: [sentence(`Because: ${e.why}`), ...voids(look, e.voids)],
    entries: [
      ...entriesOf(look, 'reading.not-applicable')
        .filter((n) => n.place === e.place && n.seq < e.seq)
        .slice(-1)
        .map((n) => n.seq),
      e.seq,
    ],
    grave: 1,
  }))
}

function reopened(look: Look): Found[] {
  return entriesOf(look, 'step.reopened').map((e) => ({
    ...base,
    what: `Went back to ${namedById(look, e.step)}, ${byWhom(look, e)}`,
    sentences: [sentence(`Because: ${e.why}`), ...voids(look, e.voids)],
    entries: [e.seq],
    grave: 1,
  }))
}

function left(look: Look): Found[] {
  return entriesOf(look, 'branch.left').map((e) => ({
    ...base,
    what: `Counts for nothing any more, ${byWhom(look, e)}: ${e.voids.map((id) => namedById(look, id)).join('; ')}`,
    sentences: [
      e.test === undefined
        ? 'It was done under a condition that was not met any more. Its readings stay in the log.'
        : `${e.test}: what it begins with fell, was read anew, or was by another machine record, so all that rests on it was done anew. Its readings stay in the log.`,
    ],
    entries: [e.seq],
    grave: 1,
  }))
}

function dropped(look: Look): Found[] {
  return look.moves.flatMap(({ entry, before }): Found[] => {
    if (entry.type !== 'reading.dropped') return []
    const waited = before.doubt ?? before.late
    return [
      {
        ...base,
        what: `${placeNumber(look.defs, entry.step, entry.place)} ${placeName(look.defs, entry.step, entry.place)}: ${waited?.typed.trim() ?? 'a reading'} not used, ${byWhom(look, entry)}`,
        sentences: ['The job stood at another step before it was said what becomes of it.'],
        entries: [...(waited === null ? [] : [waited.seq]), entry.seq],
        grave: 1,
      },
    ]
  })
}

function voids(look: Look, ids: readonly string[]): string[] {
  return ids.length === 0 ? [] : [`Void with it: ${ids.map((id) => namedById(look, id)).join('; ')}.`]
}
