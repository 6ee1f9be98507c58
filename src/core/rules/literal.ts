// Figures written in a rule: `length("0.004 in")`, read by the same reader as an entry at the machine; and bare numbers.
import { ok, type Result, refuse } from '../lib/result.ts'
import {
  aKind,
  findUnit,
  fromSi,
  parseEntry,
  type Quantity,
  type QuantityKind,
  unitsOf,
} from '../units/index.ts'
import { writerOf } from './functions.ts'

/** Kinds of which there can be less than none. A mass or an absolute pressure with a minus is a slip. */
const SIGNED: readonly QuantityKind[] = [
  'length',
  'pressure-gauge',
  'pressure-difference',
  'temperature',
  'temperature-difference',
  'force',
  'torque',
  'speed',
  'angle',
  'power',
  'flow',
  'ratio',
]

/** The units an author can write for a kind. The plain ratio 1 is never written. */
export function writtenUnits(kind: QuantityKind): string[] {
  return unitsOf(kind)
    .map((unit) => unit.symbol)
    .filter((symbol) => symbol !== '1')
}

/** A figure with its unit; a unit is never assumed. Refusal codes are those of the reader, and `unit-missing`. */
export function readLiteral(kind: QuantityKind, text: string): Result<Quantity> {
  const units = writtenUnits(kind)
  const [first = ''] = units
  const unitPart = text.trim().replace(/^[+\-\u2212]?[\d.,\s]*/, '')
  const example = `${writerOf(kind)}("1 ${first}")`
  if (unitPart === '')
    return refuse('unit-missing', `A figure here carries its unit, as in ${example}: ${units.join(', ')}.`)
  const entry = parseEntry(text, { kind, unit: first, signed: SIGNED.includes(kind), what: aKind(kind) })
  if (!entry.ok) {
    const say = entry.error.say.replace('this box takes', `${writerOf(kind)} takes`)
    return refuse(entry.error.code, say)
  }
  if (findUnit(unitPart, kind) === undefined)
    return refuse('unit-unknown', `There is no unit here that can be read, as in ${example}.`)
  return ok(fromSi(kind, entry.value.si))
}

/** A double holds 15 figures faithfully. */
const PLAIN_NUMBER = /^(?:0|[1-9]\d*)(?:\.\d+)?$/
const MAX_FIGURES = 15

/** A bare number as written, or null: no powers of ten, no other base, no spare zero, not more figures than hold. */
export function readNumber(raw: string): number | null {
  if (!PLAIN_NUMBER.test(raw)) return null
  return raw.replace('.', '').replace(/^0+/, '').length > MAX_FIGURES ? null : Number(raw)
}

/** The text between plain quotes, or null: no escapes, no raw or triple quotes, so that what is read is what is seen. */
export function readWord(raw: string): string | null {
  const parts = /^(?:"([^"\\]*)"|'([^'\\]*)')$/.exec(raw)
  return parts === null ? null : (parts[1] ?? parts[2] ?? '')
}
