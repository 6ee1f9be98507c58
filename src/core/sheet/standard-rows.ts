// The setting standard of a gauge, from the register of instruments: which it is, its size and how far off it may be read, shown where the
// gauge is checked on it; and what to do where it was read further off.
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { placeResult, placesOf } from '../job/places.ts'
import { NOISE } from '../job/plausible.ts'
import { gaugeById } from '../job/seats.ts'
import type { State } from '../job/state.ts'
import { workedText } from '../talk/names.ts'
import { type Row, row } from './block.ts'

/** Beside the question; nothing where no standard is measured. */
export function standardRows(defs: Definitions, placed: PlacedStep, instrument: string): Row[] {
  const gauge = isSetCheck(placed) ? gaugeById(defs, instrument) : null
  if (gauge === null) return []
  const { standard, size, within } = gauge.set_check
  return [row(`Standard: ${standard}, ${size.text}. It may read up to ${within.text} off.`, 'strong')]
}

/** Where what was read of it is further off than it may be; nothing else. */
export function offStandardRows(
  defs: Definitions,
  state: State,
  entry: Extract<Entry, { type: 'reading.taken' }>,
): Row[] {
  const placed = defs.steps.find(({ id }) => id === entry.step)
  if (placed === undefined || !isSetCheck(placed)) return []
  const gauge = gaugeById(defs, entry.instrument)
  const read = asKind(placed, 'read')
  const place = placesOf(read).find(({ key }) => key === entry.place)
  const si = place === undefined ? null : placeResult(read, place, state).si
  if (gauge === null || si === null) return []
  const { size, within } = gauge.set_check
  const off = si - size.si
  if (Math.abs(off) <= within.si + NOISE) return []
  const side = off < 0 ? 'under' : 'over'
  return [
    row(
      `  ${workedText(defs, entry, Math.abs(off))} ${side} the standard, and ${within.text} is allowed: ${wayOn(defs, placed)}`,
      'caution',
    ),
  ]
}

function isSetCheck({ step }: PlacedStep): boolean {
  return step.kind === 'read' && step.plausible.from === 'standard'
}

/** Before anything was measured another gauge may be taken; after it, what it measured is in doubt. */
function wayOn(defs: Definitions, placed: PlacedStep): string {
  const again = 'wipe both, let them come to one warmth, and measure it once more, by the word correct.'
  return isAfter(defs, placed)
    ? `${again} If it stays so, every size since the check before is in doubt and the verdict is HOLD: say so by the word instrument.`
    : `${again} If it stays so, measure nothing with it: the word instrument puts it aside, and another is picked.`
}

/** A check with the same seat stands before it in the same part. */
function isAfter(defs: Definitions, placed: PlacedStep): boolean {
  const seat = asKind(placed, 'read').step.with
  return defs.steps.some(
    (one) =>
      one.number < placed.number &&
      one.scope === placed.scope &&
      isSetCheck(one) &&
      asKind(one, 'read').step.with === seat,
  )
}
