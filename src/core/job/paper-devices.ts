// What a line of a sheet says of a lock, a blind, a tag or a part: its number, and who took it off where that is asked. And what was
// noted of it earlier on the same sheet. It is what was written: no evidence for anything.
import type { Evidence } from '../definition/evidence.ts'
import type { Definitions } from './definitions.ts'
import { isSameDevice, isSpelledAlike, sortOf } from './evidence-numbers.ts'
import { comesOff, type GateStep, gatesOf, type Item } from './gate.ts'
import { itemLabel } from './item-label.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { copiesOf, copyKey, copyOf } from './paper-rows.ts'

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

/**
 * Other lines of the hold point that bear the same number as this one, on this copy of its page or an earlier one that was not written
 * anew, each a clause: one lock cannot hang in two places. A permit is paper and may cover several.
 */
export function twiceOnSheet(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  items: readonly Item[],
  item: Item,
  line: SheetRow,
): string[] {
  const sort = sortOf(item.evidence)
  const number = line.text === null ? null : deviceOnSheet(line.text, item.evidence).number
  if (sort === null || sort === 'permit' || number === null) return []
  // Parts are stamped by their maker, and letters are all that tells some of them apart.
  const isSame = sort === 'part' ? isSpelledAlike : isSameDevice
  return items.flatMap((other) => {
    if (other.key === item.key || sortOf(other.evidence) !== sort) return []
    if (comesOff(other.evidence) !== comesOff(item.evidence)) return []
    const stood = rowsOfKey(paper, gate, other.key).findLast(
      (row) => copyOf(row.row) <= copyOf(line.row) && row.text !== null,
    )
    const its = stood?.text == null ? null : deviceOnSheet(stood.text, other.evidence).number
    return its !== null && isSame(its, number)
      ? [`${number} stands at ${itemLabel(defs, other)} too, and one thing is not in two places`]
      : []
  })
}
