// What a line of a sheet says of a lock, a blind, a tag or a part: its number, and who took it off where that is asked. And what was
// noted of it earlier on the same sheet. It is what was written: no evidence for anything.
import type { Evidence } from '../definition/evidence.ts'
import type { Definitions } from './definitions.ts'
import { isSpelledAlike } from './evidence-numbers.ts'
import { comesOff, type GateStep, gatesOf, type Item } from './gate.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { copiesOf, copyKey } from './paper-rows.ts'

export interface DeviceOnSheet {
  /** Null: nothing there can be taken for a number. */
  readonly number: string | null
  /** Initials behind it, where who took it off is asked; null where they are blank. */
  readonly offBy: string | null
}

/** `L-101 RO`: the first word with a figure in it is the number, and behind it stands who took it off. */
export function deviceOnSheet(text: string, evidence: Evidence | null): DeviceOnSheet {
  const words = text.trim().split(/\s+/)
  const at = words.findIndex((word) => /\d/.test(word))
  const behind = at < 0 ? undefined : words[at + 1]
  return {
    number: at < 0 ? null : (words[at] ?? null),
    offBy: comesOff(evidence) && behind !== undefined && /^[A-Za-z]{1,5}$/.test(behind) ? behind : null,
  }
}

/** The number that was noted for the same point or person further up on this sheet; null where none can be read. */
export function notedOnSheet(defs: Definitions, paper: PaperState, item: Item): string | null {
  const { evidence } = item
  const sameAs = 'same_as' in evidence ? evidence.same_as : undefined
  if (sameAs === undefined) return null
  const of = item.point?.id ?? item.person
  const found = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence
      .filter((one) => 'notes' in one && one.notes === sameAs)
      .flatMap((one) => rowsOfKey(paper, gate, of === null ? one.id : `${one.id}.${of}`)),
  )
  const text = found.findLast((row) => row.text !== null)?.text ?? null
  return text === null ? null : deviceOnSheet(text, null).number
}

function rowsOfKey(paper: PaperState, gate: GateStep, key: string): SheetRow[] {
  return copiesOf(paper, gate.id).flatMap((n) => rowOf(paper, gate.id, copyKey(key, n)) ?? [])
}

/** Why a line with a number does not say what it is asked to, a clause; null where no gap can be told. */
export function deviceFault(defs: Definitions, paper: PaperState, item: Item, text: string): string | null {
  const { number, offBy } = deviceOnSheet(text, item.evidence)
  const { same_as: sameAs } = { same_as: undefined, ...item.evidence }
  if (comesOff(item.evidence)) {
    if (number === null) return `${text}: no number can be read there`
    if (offBy === null) return `${number}: who took it off does not stand there`
  }
  if (sameAs === undefined) return null
  const noted = notedOnSheet(defs, paper, item)
  if (noted === null) return `${text}: no number noted before can be read, to hold it against`
  return number !== null && isSpelledAlike(noted, number) ? null : `${text}, and noted before is ${noted}`
}
