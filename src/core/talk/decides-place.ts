// Of which places the figure of a bore is that decides, where it is not the greatest of its kind: places whose repeats lie far apart may be
// the worst in truth, and hold a verdict up with a figure that is small.
import { type CharacteristicJudgement, greatestOf } from '../bore/bore-characteristics.ts'
import type { BoreForm } from '../bore/bore-form.ts'
import type { Place } from '../bore/bore-readings.ts'
import type { Definitions } from '../job/definitions.ts'
import { list } from '../lib/wording.ts'
import { axisName } from './axis-names.ts'
import { bareLength } from './names.ts'

/** `of crank end; the greatest is 0.0033, of centre`; null where it is the greatest. */
export function decidesPlace(
  defs: Definitions,
  form: BoreForm | null,
  { characteristic, valueM, places }: Pick<CharacteristicJudgement, 'characteristic' | 'valueM' | 'places'>,
): string | null {
  const greatest = greatestOf(characteristic, form)
  if (valueM === null || greatest.valueM === null || Math.abs(greatest.valueM - valueM) < LEAST_M) return null
  const named = (of: readonly Place[]) => placesText(defs, characteristic === 'out-of-round', of)
  return `of ${named(places)}; the greatest is ${bareLength(defs, greatest.valueM)}, of ${named(greatest.places)}`
}

/** Below this two figures are the same, metres. */
const LEAST_M = 1e-12

function placesText(defs: Definitions, isRound: boolean, places: readonly Place[]): string {
  const station = (one: Place) => one.station.replaceAll('_', ' ')
  const all = places.map((one) => (isRound ? station(one) : `${station(one)} ${axisName(defs, one.axis)}`))
  return list([...new Set(all)])
}
