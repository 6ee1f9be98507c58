// How steps, places and figures are called on screen.
import type { ReadQuantity } from '../definition/instruments.ts'
import { asKind, type Definitions, instrumentById, stepById } from '../job/definitions.ts'
import type { ReadingAt } from '../job/entries.ts'
import { fellWhen } from '../job/fell-with.ts'
import { fateOf, type Nonconformance } from '../job/nonconformance.ts'
import { type PlaceResult, placesOf } from '../job/places.ts'
import { decimalsIn, sizeOf } from '../job/plausible.ts'
import { type DispositionState, type Reading, type State, standing } from '../job/state.ts'
import {
  companion,
  formatBoth,
  formatFinish,
  formatQuantity,
  type QuantityKind,
  shownNumber,
  shownUp,
  unitNamed,
  valueIn,
} from '../units/index.ts'

/** `7.3`: sheet number of the step, and of the place within it when it has several. */
export function placeNumber(defs: Definitions, stepId: string, placeKey: string | null): string {
  const placed = stepById(defs, stepId)
  if (placeKey === null || placed.step.kind !== 'read') return String(placed.number)
  const places = placesOf(asKind(placed, 'read'))
  const place = places.find((p) => p.key === placeKey)
  return place === undefined || places.length === 1
    ? String(placed.number)
    : `${placed.number}.${place.number}`
}

/** `Bore, CENTRE of ring travel, TOP TO BOTTOM`. */
export function placeName(defs: Definitions, stepId: string, placeKey: string): string {
  const placed = asKind(stepById(defs, stepId), 'read')
  const place = placesOf(placed).find((p) => p.key === placeKey)
  if (place === undefined) return placed.step.title
  const where = placesOf(placed).length === 1 && place.axis === null ? [] : [place.station.label]
  return [placed.step.title, ...where, ...(place.axis === null ? [] : [place.axis.label])].join(', ')
}

/** A reading in its own unit and the other system's. */
export function readingText(defs: Definitions, reading: ReadingAt): string {
  const quantity = { kind: kindOf(reading.unit), si: reading.si }
  const decimals = Math.max(decimalsIn(defs, reading), decimalsTyped(reading))
  if (isFinish(defs, reading.instrument)) return formatFinish(reading.si, decimals)
  return companion(reading.unit) === undefined
    ? formatQuantity(quantity, reading.unit, decimals)
    : formatBoth(quantity, reading.unit, decimals)
}

/** The figure alone, in the unit and with the decimals it was keyed in, for places next to each other. */
export function bareReading(defs: Definitions, reading: ReadingAt): string {
  const decimals = Math.max(decimalsIn(defs, reading), decimalsTyped(reading))
  return shownNumber(valueIn({ kind: kindOf(reading.unit), si: reading.si }, reading.unit), decimals)
}

/**
 * What the repeats of a place come to, as read: lengths to the last place of the shop's gauges, all else as it was keyed. The
 * one figure of a place wherever it is shown: in its drawing, the bars, the lists and the verdict. What is brought to 20 degC
 * is another figure, is said to be so, and has a place more. Null where the repeats did not settle.
 */
export function placeFigure(
  defs: Definitions,
  { step }: Parameters<typeof placesOf>[0],
  { si, readings }: PlaceResult,
): string | null {
  const last = readings.at(-1)
  if (si === null || last === undefined) return null
  return step.quantity === 'length' && !isFinish(defs, last.instrument)
    ? bareLength(defs, si)
    : bareReading(defs, { ...last, si })
}

/** How far the readings of a place lie apart, with its unit: lengths in the shop's, all else in that of the instrument. */
export function spreadText(defs: Definitions, state: State, place: string, si: number): string {
  const last = standing(state, place).at(-1)
  if (last === undefined) return lengthText(defs, si)
  const kind = kindOf(last.unit)
  return kind === 'length' ? workedText(defs, last, si) : sizeOf(defs, kind as ReadQuantity, si, last)
}

/** `2nd`. */
export function nth(n: number): string {
  const teen = n % 100 >= 11 && n % 100 <= 13
  return `${n}${teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')}`
}

/**
 * Which of the readings of its place that stand this one is, where there are several: `2nd of 3`. One that was put right keeps the
 * number of the one it stands for.
 */
export function repeatName(
  state: State,
  reading: { readonly place: string; readonly seq: number },
): string | null {
  const all = inOrderTaken(state, reading.place)
  const at = all.findIndex(({ seq }) => seq === reading.seq)
  return at < 0 || all.length < 2 ? null : `${nth(at + 1)} of ${all.length}`
}

/** Readings of a place that stand, each where the first figure of it was taken. */
export function inOrderTaken(state: State, place: string): readonly Reading[] {
  const all = state.readings[place] ?? []
  const first = (one: Reading): number => {
    const before = all.find(({ seq }) => seq === one.corrects)
    return before === undefined ? one.seq : first(before)
  }
  return [...standing(state, place)].sort((a, b) => first(a) - first(b))
}

/** `CENTRE, TOP TO BOTTOM`: what tells a place from the others of its step, for one line beside the number of its sheet. */
export function placeShort(defs: Definitions, stepId: string, placeKey: string): string {
  const placed = asKind(stepById(defs, stepId), 'read')
  const place = placesOf(placed).find((p) => p.key === placeKey)
  if (place === undefined) return placed.step.title
  const { station, axis } = place
  const where = placed.step.stations.length === 1 ? placed.step.title : (station.short ?? station.label)
  return axis === null ? where : `${where}, ${axis.label}`
}

function decimalsTyped(reading: ReadingAt): number {
  const text = String(reading.value)
  const point = text.indexOf('.')
  return point < 0 || text.includes('e') ? 0 : Math.min(6, text.length - point - 1)
}

function kindOf(unit: string): QuantityKind {
  return unitNamed(unit)?.kind ?? 'length'
}

/** Whether it reads the finish of a surface, which is a length and never told in the shop's unit of lengths. */
export function isFinish(defs: Definitions, instrument: string): boolean {
  return instrumentById(defs, instrument)?.kind === 'roughness_comparator'
}

/** What a length that was worked out of readings comes to: of diameters and gaps in the shop's unit, a finish as a finish. */
export function workedText(defs: Definitions, reading: ReadingAt, metres: number, decimals?: number): string {
  return isFinish(defs, reading.instrument)
    ? formatFinish(metres, decimalsIn(defs, reading))
    : lengthText(defs, metres, decimals)
}

/** The same without its unit where the reading beside it names one; of a finish with it. */
export function bareWorked(defs: Definitions, reading: ReadingAt, metres: number): string {
  return isFinish(defs, reading.instrument)
    ? formatFinish(metres, decimalsIn(defs, reading))
    : bareLength(defs, metres)
}

/** A length in the shop's unit, with the decimals of the resolution. */
export function lengthText(defs: Definitions, metres: number, decimals?: number): string {
  const unit = defs.machine.shop_units.length
  return formatQuantity({ kind: 'length', si: metres }, unit, decimals ?? (unit === 'in' ? 4 : 3))
}

/** The same without its unit, for columns that name it once. */
export function bareLength(defs: Definitions, metres: number, decimals?: number): string {
  const unit = defs.machine.shop_units.length
  const perUnit = unit === 'in' ? 0.0254 : 0.001
  return shownNumber(metres / perUnit, decimals ?? (unit === 'in' ? 4 : 3))
}

/** A measuring error without its unit, rounded up. */
export function bareError(defs: Definitions, metres: number): string {
  const unit = defs.machine.shop_units.length
  return shownUp(metres / (unit === 'in' ? 0.0254 : 0.001), unit === 'in' ? 4 : 3)
}

export function instrumentName(defs: Definitions, id: string): string {
  const instrument = instrumentById(defs, id)
  return instrument === undefined ? id : `${id}, ${instrument.title}`
}

/** `NC-1 Bore judged: HOLD; fell when sheet 8.3, Bore, was corrected; ACCEPT since, and no decision is due on it`; null where it stands. */
export function fellText(defs: Definitions, state: State, nc: Nonconformance): string | null {
  const fate = fateOf(state, nc)
  if (fate === null) return null
  const word = fate.now === null ? null : wordOf(defs, nc.step, fate.now)
  const since = word === null ? 'not told anew since' : `${word} since`
  return `${nonconformanceText(defs, nc)}; fell ${fellWhen(defs, nc.step, fate.fellWith)}; ${since}, and no decision is due on it`
}

/** `KH`; of a word by radio who heard it, and whether the lead who spoke has signed for it since. */
export function deciderText({
  person,
  radio,
  countersigned,
}: Pick<DispositionState, 'person' | 'radio' | 'countersigned'>): string {
  if (radio === null) return person
  return `${person} by radio, heard by ${radio}, ${countersigned ? `countersigned by ${person}` : 'NOT YET COUNTERSIGNED'}`
}

/** `NC-1 Bore judged: REWORK`. */
export function nonconformanceText(defs: Definitions, { name, step: id, word }: Nonconformance): string {
  return `${name} ${stepById(defs, id).step.title}: ${wordOf(defs, id, word)}`
}

/** The same of one that stands, with the own words of whoever found it. */
export function findingText(defs: Definitions, state: State, nc: Nonconformance): string {
  const noted = nc.stands ? state.findings[nc.step] : undefined
  return `${nonconformanceText(defs, nc)}${noted === undefined ? '' : `, noted: ${noted}`}`
}

/** A finding as its list calls it; a verdict is its own word. */
export function wordOf(defs: Definitions, id: string, word: string): string {
  const { step } = stepById(defs, id)
  return step.kind === 'observe' ? (step.conditions.find((c) => c.id === word)?.label ?? word) : word
}
