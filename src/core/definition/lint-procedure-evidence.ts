// Cross-checks of single lines of evidence: what they prove, their seats, limits, lives and words.

import { a, list, quote } from '../lib/wording.ts'
import type { Evidence, EvidenceOf } from './evidence.ts'
import { READS } from './instruments.ts'
import { type Finding, finding, lintLongLife, type Path, unknownId } from './lint-common.ts'
import type { Procedure, Seat, StepOf } from './procedure.ts'

/** Findings about what the evidence of a gate proves: only hazards it holds, and each of those by something. */
export function lintProving(gate: StepOf<'gate'>, base: Path): Finding[] {
  const strange = gate.evidence.flatMap((evidence, n) =>
    ('against' in evidence ? (evidence.against ?? []) : []).flatMap((id, m) => {
      if (gate.holds.includes(id)) return []
      const path = [...base, 'evidence', n, 'against', m]
      const message = `${quote(id)} is not among what the gate ${quote(gate.id)} holds, so nothing here proves it.`
      return [finding(path, 'not-held-here', message, `it holds ${list(gate.holds)}`)]
    }),
  )
  // While a name is misspelled, nobody can tell which hazard it was meant to prove.
  if (strange.length > 0) return strange
  return gate.holds.flatMap((id, n) => {
    if (gate.evidence.some((evidence) => proves(evidence, id))) return []
    const message = `No evidence of the gate ${quote(gate.id)} proves anything about ${quote(id)}.`
    const hint = 'add evidence against it; a witness proves nothing alone'
    return [finding([...base, 'holds', n], 'not-proved', message, hint)]
  })
}

function proves(evidence: Evidence, hazard: string): boolean {
  return evidence.kind !== 'witness' && (evidence.against ?? [hazard]).includes(hazard)
}

/** Findings of one line of evidence; `path` is its own. Gas has more rules (lint-procedure-gate.ts). */
export function lintEvidence(procedure: Procedure, evidence: Evidence, path: Path): Finding[] {
  switch (evidence.kind) {
    case 'measured':
      return [
        ...lintSeatFor(
          procedure,
          evidence.with,
          READS[evidence.quantity],
          `read ${aQuantity(evidence)}`,
          path,
        ),
        ...lintBounds(evidence, path),
        ...lintLife(evidence.life, [...path, 'life']),
      ]
    case 'words':
      return [
        ...(evidence.life === undefined ? [] : lintLife(evidence.life, [...path, 'life'])),
        ...lintSaidOf(procedure, evidence, path),
      ]
    case 'wait':
      return [...lintAboveZero(evidence.lasts, [...path, 'lasts']), ...lintWaitWords(evidence, path)]
    case 'numbers':
      return lintTwoPeople(evidence, path)
    default:
      return []
  }
}

/** Counted by anything but people, two would never be counted at all. */
function lintTwoPeople({ at_least: least, per }: EvidenceOf<'numbers'>, path: Path): Finding[] {
  if (least === undefined || per === 'person') return []
  const message = 'at_least counts people, and this number is not asked of each person.'
  return [finding([...path, 'at_least'], 'not-of-people', message, 'write per: person')]
}

function aQuantity({ quantity }: EvidenceOf<'measured'>): string {
  return a(quantity.replaceAll('-', ' '))
}

/** Of an instrument in no seat nothing would ever fall. */
function lintSaidOf({ seats }: Procedure, { seat }: EvidenceOf<'words'>, path: Path): Finding[] {
  const known = seats.map((one) => one.id)
  return seat === undefined || known.includes(seat) ? [] : [unknownId([...path, 'seat'], seat, 'seat', known)]
}

/** A seat that is there and takes only kinds of instrument that can do it. */
export function lintSeatFor(
  procedure: Procedure,
  id: string,
  kinds: readonly Seat['kinds'][number][],
  what: string,
  path: Path,
): Finding[] {
  const where = [...path, 'with']
  const seat = procedure.seats.find((s) => s.id === id)
  if (seat === undefined) {
    const known = procedure.seats.map((s) => s.id)
    return [unknownId(where, id, 'seat', known)]
  }
  const wrong = seat.kinds.find((kind) => !kinds.includes(kind))
  if (wrong === undefined) return []
  const message = `The seat ${quote(seat.id)} takes ${a(wrong)}, which cannot ${what}.`
  const only =
    kinds.length === 1 ? `whose only kind is ${kinds[0] ?? ''}` : `whose kinds are among ${list(kinds)}`
  return [finding(where, 'wrong-seat', message, `name a seat ${only}`)]
}

function lintBounds(measured: EvidenceOf<'measured'>, path: Path): Finding[] {
  const { id, at_least: least, at_most: most, quantity } = measured
  if (least === undefined && most === undefined) {
    const message = `${quote(id)} has no limit, so any figure would pass.`
    return [finding([...path, 'id'], 'no-bound', message, 'add at_most, at_least or both')]
  }
  const found = (['at_least', 'at_most'] as const).flatMap((key) => {
    const bound = measured[key]
    if (bound === undefined || bound.kind === quantity) return []
    const message = `${quote(bound.text)} is no ${quantity.replaceAll('-', ' ')}, and that is what is measured.`
    return [finding([...path, key], 'wrong-quantity', message)]
  })
  if (found.length > 0 || least === undefined || most === undefined || least.si < most.si) return found
  const message = `${quote(least.text)} is not below ${quote(most.text)}, so no figure can pass.`
  return [finding([...path, 'at_least'], 'wrong-order', message)]
}

function lintLife(life: { readonly text: string; readonly si: number }, path: Path): Finding[] {
  return [...lintAboveZero(life, path), ...lintLongLife(life, path)]
}

function lintAboveZero(time: { readonly text: string; readonly si: number }, path: Path): Finding[] {
  return time.si > 0 ? [] : [finding(path, 'zero', `${quote(time.text)} is not above zero.`)]
}

/** With one set of words a second Enter would end what the first began. */
function lintWaitWords(wait: EvidenceOf<'wait'>, path: Path): Finding[] {
  if (wait.begin_words !== wait.words) return []
  const message = `${quote(wait.words)} both begins the wait and ends it.`
  return [finding([...path, 'words'], 'same-words', message, 'say in words what is seen at its end')]
}
