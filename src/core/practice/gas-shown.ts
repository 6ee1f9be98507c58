// What a portable gas meter shows of the air where it is held: in its steps, half-way where it is read too soon, nothing where its sensor is
// blind, and the end of its scale where there is more.
import type { GasMeter } from '../definition/instruments.ts'
import type { Manner } from '../job/practice.ts'
import { formatNumber } from '../units/index.ts'
import type { Chance } from './chance.ts'
import { CLEAN_AIR } from './machine.ts'
import type { Gas, Truth } from './tell.ts'

/** As it is keyed, and as it is read with its unit. */
export interface Figure {
  readonly keyed: string
  readonly text: string
  /** It is the end of what the instrument shows, and more, or less, is there: as it is told. */
  readonly past?: string
}

/** Steps of portable meters: 0.1 %vol, 1 %LEL, 1 ppm (common practice, no source). */
const GAS_STEPS = {
  oxygen: [100, 1],
  flammable: [100, 0],
  flammable_in_inert: [100, 1],
  hydrogen_sulfide: [1e6, 0],
} as const

/** Where a scale of %LEL ends: at what burns (common practice, no source; the register states no range of a gas meter). */
const LEL_ENDS = 100

/** Told by burning it, where the sensor is a hot wire. */
const BURNT: readonly Gas[] = ['flammable', 'flammable_in_inert']

/** A catalytic sensor without the oxygen it needs shows nought, whatever is there. One that is read too soon is half-way. */
export function gasShown(
  { gas, share, oxygen }: Extract<Truth, { kind: 'gas' }>,
  meter: GasMeter,
  lelShare: number,
  { unit, manner, chance }: { readonly unit: string; readonly manner: Manner; readonly chance: Chance },
): Figure {
  const clean = { oxygen: CLEAN_AIR.oxygen, flammable: 0, flammable_in_inert: 0, hydrogen_sulfide: 0 }[gas]
  const come = manner === 'quick' ? chance.between(0.1, 0.35) : 1
  const there = clean + (share - clean) * come
  const isBlind = BURNT.includes(gas) && !(oxygen >= meter.needs_oxygen.at_least.si)
  const [factor, decimals] = GAS_STEPS[gas]
  const value = isBlind ? 0 : (gas === 'flammable' ? there / lelShare : there) * factor
  const isOver = gas === 'flammable' && !(value <= LEL_ENDS)
  const keyed = formatNumber(isOver ? LEL_ENDS : value, decimals)
  const text = `${keyed} ${unit}`
  return isOver
    ? {
        keyed,
        text,
        past: `${meter.id} stands at ${text} with the mark that it is over its range: there is more than burns, and it may be far more. Out, and clear.`,
      }
    : { keyed, text }
}
