// How far apart the readings of one place may lie, as the procedure writes it, with the unit of whoever keys them beside it.
import type { WrittenQuantity } from '../definition/common.ts'
import type { Definitions } from '../job/definitions.ts'
import { companion, isMetric, shownNumber, unitNamed } from '../units/index.ts'

/**
 * `0.0003 in`; on a machine in millimetres `0.0003 in (0.0076 mm)`, and the like for all that has a unit of the other system. The figure
 * beside it is cut and not rounded up: what is told as alike is taken as alike.
 */
export function alikeWithin({ machine }: Definitions, { text, unit, si }: WrittenQuantity): string {
  const plain = text.replace('delta-', '')
  const isShopMetric = machine.shop_units.length === 'mm'
  const other = isMetric(unit) === isShopMetric ? undefined : unitNamed(companion(unit) ?? '')
  return other === undefined
    ? plain
    : `${plain} (${twoFigures(si / other.factor)} ${other.symbol.replace('delta-', '')})`
}

/** What binary leaves below a whole step. */
const NOISE = 1e-9

function twoFigures(value: number): string {
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(value)))
  const step = 10 ** decimals
  return shownNumber(Math.floor(value * step + NOISE) / step, decimals)
}
