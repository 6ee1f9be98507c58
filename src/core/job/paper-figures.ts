// What a line of a hold point on a sheet measures or weighs, held against its limit as a live one is: a figure on an instrument, and the
// load and the rating of a lift. What cannot be told is a fault.
import type { EvidenceOf } from '../definition/evidence.ts'
import { READS } from '../definition/instruments.ts'
import { parseEntry, unitsOf } from '../units/index.ts'
import { unfitness } from './admit-people.ts'
import { type Definitions, instrumentById } from './definitions.ts'
import { massUnit } from './evidence-lift.ts'
import { type GateStep, type Item, inspectedWords } from './gate.ts'
import { judgeMeasured, type Measuring } from './measured-limit.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { atNoon } from './paper-instrument.ts'
import { copyKey, copyOf, FRONT } from './paper-rows.ts'

/** Why the line would have held, each a clause: its limit first, also where nobody wrote which instrument read it. */
export function measuredFaults(
  defs: Definitions,
  paper: PaperState,
  evidence: EvidenceOf<'measured'>,
  text: string,
): string[] {
  const { instrument, figure } = measuredOnSheet(defs, paper, evidence, text)
  const named = instrument === null ? `${text}: no instrument that measures this is named` : null
  const entry = parseEntry(figure, {
    kind: evidence.quantity,
    unit: instrument?.unit ?? unitsOf(evidence.quantity)[0]?.symbol ?? '',
    signed: evidence.quantity !== 'length',
    decimalComma: defs.machine.decimal_comma ?? false,
    what: evidence.place,
  })
  const only = (...all: (string | null)[]) => all.filter((one): one is string => one !== null)
  if (!entry.ok) return only(`${text} is no figure of it`, named)
  const { value, unit, si } = entry.value
  const shown = `${value} ${unit}`
  // Without its instrument nobody knows the unit of a bare figure.
  if (instrument === null && !/[A-Za-z%]/.test(figure)) return only(named)
  if (instrument === null) return only(outside(evidence, si, shown), named)
  const outcome = judgeMeasured(evidence, instrument satisfies Measuring, si)
  const day = rowOf(paper, null, FRONT.day)?.text ?? null
  const unfit = day === null ? 'no day on the sheet' : unfitness(defs, instrument, atNoon(day))
  return only(
    outcome.kind === 'passes' ? null : `${shown}, ${outcome.why}`,
    unfit === null ? null : `${instrument.id}: ${unfit}`,
  )
}

/** By the bare limit, where nothing tells how far off the figure may be. */
function outside({ at_least: least, at_most: most }: EvidenceOf<'measured'>, si: number, shown: string) {
  if (least !== undefined && !(si >= least.si)) return `${shown}, below ${least.text}`
  return most !== undefined && !(si <= most.si) ? `${shown}, above ${most.text}` : null
}

/** `0.2 psig P-6`, in either order; without a number the instrument of the front counts. */
function measuredOnSheet(
  defs: Definitions,
  paper: PaperState,
  evidence: EvidenceOf<'measured'>,
  text: string,
): { readonly figure: string; readonly instrument: Measuring | null } {
  const words = text.trim().split(/[\s;]+/)
  const known = defs.instruments.instruments.map(({ id }) => id.toUpperCase())
  const at = words.findLastIndex((word) => known.includes(word.toUpperCase()) && /[A-Za-z]/.test(word))
  const number = at < 0 ? rowOf(paper, null, `seat.${evidence.with}`)?.text : words[at]
  const listed = defs.instruments.instruments.find(
    ({ id }) => id.toUpperCase() === number?.trim().toUpperCase(),
  )
  const found = listed === undefined ? undefined : instrumentById(defs, listed.id)
  const fits =
    found !== undefined && found.kind !== 'gas_meter' && READS[evidence.quantity].includes(found.kind)
  return {
    figure: words.filter((_word, n) => n !== at).join(' '),
    instrument: fits ? found : null,
  }
}

/** The load is held against the rating on the same copy of the page; a weight that cannot be read carries nothing. */
export function liftFaults(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  { key, part }: Item,
  evidence: EvidenceOf<'lift'>,
  { row }: SheetRow,
  text: string,
): string[] {
  switch (part) {
    case 'load': {
      const load = weight(defs, text)
      const other = rowOf(paper, gate.id, copyKey(key.replace(/load$/, 'rating'), copyOf(row)))?.text ?? null
      const rating = other === null ? null : weight(defs, other)
      if (load === null) return [`${text} is no weight`]
      if (rating === null) return [`${text}: no rating can be read, to hold it against`]
      return load <= rating ? [] : [`the load of ${text} is more than the ${other} it is rated for`]
    }
    case 'rating':
      return weight(defs, text) === null ? [`${text} is no weight`] : []
    case 'sling':
      return /\d/.test(text) ? [] : [`${text}: no number can be read there`]
    case 'inspected': {
      const asked = inspectedWords(evidence)
      return plain(text) === plain(asked) ? [] : [`it says ${text}, and asked is ${asked}`]
    }
    case null:
      throw new Error(`${key} is no part of a lift plan`)
  }
}

/** Kilograms; null for what is no weight, or none. */
function weight(defs: Definitions, text: string): number | null {
  const unit = massUnit(defs)
  const decimalComma = defs.machine.decimal_comma ?? false
  const entry = parseEntry(text, { kind: 'mass', unit, decimalComma, what: 'a weight' })
  return entry.ok && entry.value.si > 0 && Number.isFinite(entry.value.si) ? entry.value.si : null
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ')
