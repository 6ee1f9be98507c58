// What was put right or taken back after it had been keyed, with the old and the new.

import { CAUSES } from '../../job/close-causes.ts'
import { asKind, type Definitions, stepById } from '../../job/definitions.ts'
import { defsAt, type Editions } from '../../job/editions.ts'
import type { Entry, ReadingAt } from '../../job/entries.ts'
import { isTakenBack } from '../../job/fold-gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import type { Move } from '../../review/look.ts'
import { placeName, placeNumber, readingText } from '../../talk/names.ts'
import type { Report } from '../schema.ts'
import { numbered } from './readings.ts'

type Told = Report['corrections'][number]
type Said = Pick<Told, 'what' | 'was' | 'now' | 'why'> & { readonly voids: readonly string[] }

export function correctionsOf(editions: Editions, moves: readonly Move[]): Told[] {
  const entries = moves.map(({ entry }) => entry)
  return moves.flatMap((move): Told[] => {
    const { entry } = move
    const defs = defsAt(editions, entry.seq)
    const said = saidOf(defs, move, entries)
    if (said === null) return []
    const { voids, ...rest } = said
    return [
      {
        seq: entry.seq,
        at: entry.at,
        by: entry.by ?? null,
        ...rest,
        voids: voids.map((id) => numbered(stepById(defs, id))),
      },
    ]
  })
}

function saidOf(defs: Definitions, { entry, before }: Move, entries: readonly Entry[]): Said | null {
  switch (entry.type) {
    case 'reading.corrected': {
      const old = entries[entry.of]
      return {
        what: placeOf(defs, entry),
        was: isReading(old) ? `${readingText(defs, old)}, keyed "${old.typed.trim()}"` : null,
        now: `${readingText(defs, entry)}, keyed "${entry.typed.trim()}"`,
        why: entry.why,
        voids: entry.voids,
      }
    }
    case 'finding.corrected':
      return {
        what: numbered(stepById(defs, entry.step)),
        was: conditionOf(defs, entry.step, entry.was),
        now: conditionOf(defs, entry.step, entry.condition),
        why: entry.why,
        voids: entry.voids,
      }
    case 'gate.closed': {
      // What falls by itself stands with its hold point; here is what somebody took back.
      if (!isTakenBack(entry.cause)) return null
      const gate = asKind(stepById(defs, entry.step), 'gate')
      const given = before.gates[entry.step]?.given ?? {}
      return {
        what: `${numbered(gate)}: taken back, ${entry.items.map((key) => keyLabel(defs, gate, key)).join(', ')}`,
        was: entry.items.map((key) => given[key]?.shown ?? 'not there').join(', '),
        now: null,
        why: entry.why ?? CAUSES[entry.cause],
        voids: [],
      }
    }
    case 'not-applicable.taken-back':
      return { what: placeOf(defs, entry), was: 'n/a', now: null, why: entry.why, voids: entry.voids }
    case 'step.reopened':
      return {
        what: `Went back to ${numbered(stepById(defs, entry.step))}`,
        was: null,
        now: null,
        why: entry.why,
        voids: entry.voids,
      }
    case 'branch.left':
      return {
        what: 'Counts for nothing any more',
        was: null,
        now: null,
        why:
          entry.test === undefined
            ? 'it was done under a condition that was not met any more'
            : `what ${entry.test} begins with fell, so all of it was to be done anew`,
        voids: entry.voids,
      }
    case 'reading.dropped':
      return {
        what: placeOf(defs, entry),
        was: (before.doubt ?? before.late)?.typed.trim() ?? null,
        now: null,
        why: 'the job stood at another step before it was said what becomes of it',
        voids: [],
      }
    case 'record.taken-in':
      return {
        what: `Machine record changed, by ${entry.person}`,
        was: entry.changed.map(({ field, was }) => `${field}: ${was ?? 'not there'}`).join('; '),
        now: entry.changed.map(({ field, now }) => `${field}: ${now ?? 'not there'}`).join('; '),
        why: entry.why,
        voids: entry.voids,
      }
    default:
      return null
  }
}

function placeOf(
  defs: Definitions,
  { step, place }: { readonly step: string; readonly place: string },
): string {
  return `${placeNumber(defs, step, place)} ${placeName(defs, step, place)}`
}

const isReading = (entry: Entry | undefined): entry is Entry & ReadingAt =>
  entry !== undefined && 'place' in entry && 'typed' in entry

function conditionOf(defs: Definitions, id: string, condition: string): string {
  const { step } = stepById(defs, id)
  return step.kind === 'observe'
    ? (step.conditions.find((c) => c.id === condition)?.label ?? condition)
    : condition
}
