// The setting standard of a gauge, from the register of instruments: which it is, its size and how far off it may be read, shown where the
// gauge is checked on it; and what to do where it was read further off.
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import type { ReadingAt } from '../job/entries.ts'
import { isCheckAfter, isSetCheck, offStandard } from '../job/off-standard.ts'
import { placeResult, placesOf } from '../job/places.ts'
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
export function offStandardRows(defs: Definitions, state: State, entry: ReadingAt): Row[] {
  const placed = defs.steps.find(({ id }) => id === entry.step)
  if (placed === undefined || !isSetCheck(placed)) return []
  const read = asKind(placed, 'read')
  const place = placesOf(read).find(({ key }) => key === entry.place)
  const si = place === undefined ? null : placeResult(read, place, state).si
  if (si === null) return []
  const off = offStandard(defs, placed, { instrument: entry.instrument, si })
  if (off === null) return []
  const side = off.off < 0 ? 'under' : 'over'
  return [
    row(
      `  ${workedText(defs, entry, Math.abs(off.off))} ${side} the standard, and ${off.within} is allowed: ${wayOn(defs, placed)}`,
      'caution',
    ),
  ]
}

/** Before anything was measured another gauge may be taken; after it, what it measured is in doubt. */
function wayOn(defs: Definitions, placed: PlacedStep): string {
  const again = 'wipe both, let them come to one warmth, and measure it once more, by the word correct.'
  return isCheckAfter(defs, placed)
    ? `${again} If it stays so, every size since the check before is in doubt and the verdict is HOLD: say so by the word instrument.`
    : `${again} If it stays so, measure nothing with it: the word instrument puts it aside, and another is picked. Measured with all the same, the verdict is HOLD.`
}
