// Load at the crosshead pin over one turn: gas at both ends from the ideal cycle, plus inertia of what reciprocates.
import { ok, type Result } from '../lib/result.ts'
import type { PistonAreas } from './cylinder-ends.ts'
import { aboveZero, exponentFault, firstFault, within } from './guard.ts'
import { type EndPressure, pressureAt } from './pv-cycle.ts'
import { netGasLoad } from './rod-load.ts'
import { type CrankGear, motionUnguarded, sliderCrank } from './slider-crank.ts'

export interface PinLoadInputs {
  readonly areas: PistonAreas
  readonly gear: CrankGear
  readonly head: EndPressure
  readonly crank: EndPressure
  /** Absolute pressure on the rod's outer ends; see rod-load.ts. */
  readonly outsidePa: number
  /**
   * Piston, rod, nut, crosshead and all else outboard of the pin, kg; not the connecting rod. 0: gas only, a screen.
   */
  readonly reciprocatingKg: number
}

export interface PinLoadPoint {
  /** Radians from outer dead centre. */
  readonly angle: number
  readonly headPa: number
  readonly crankPa: number
  readonly gasN: number
  readonly inertiaN: number
  /** Compression of the rod positive, tension negative. */
  readonly pinN: number
}

/** A quarter of a degree: crossings between points are then found to about a thousandth of a degree. */
export const PIN_STEPS = 1440

/**
 * F = (P_he A_he - P_ce A_ce - Po (A_rod - A_tail)) - m a, newtons, compression positive, at PIN_STEPS even angles
 * from outer dead centre. Pressures follow the ideal cycle with the stated exponents; a is exact.
 * Source: force balance on the reciprocating parts; combined (gas plus inertia) load at the crosshead pin is what
 * API Std 618 (5th ed., 6.6) judges (clause confirmed second-hand, text not seen). Friction of rings, packing and
 * crosshead, gravity, valve dynamics and pulsation are not in it.
 * Refuses: an input missing or out of range.
 */
export function pinLoad(inputs: PinLoadInputs): Result<readonly PinLoadPoint[]> {
  const fault = firstFault(
    ...endFaults('head', inputs.head),
    ...endFaults('crank', inputs.crank),
    within('outside pressure in Pa', inputs.outsidePa, 0, 2e5),
    within('reciprocating mass in kg', inputs.reciprocatingKg, 0, 1e5),
  )
  if (fault !== null) return fault
  const first = sliderCrank(inputs.gear, 0)
  if (!first.ok) return first
  return ok(Array.from({ length: PIN_STEPS }, (_, i) => pinPoint(inputs, (2 * Math.PI * i) / PIN_STEPS)))
}

function endFaults(which: string, end: EndPressure) {
  return [
    aboveZero(`suction pressure of the ${which} end`, end.suctionPa),
    within(`discharge pressure of the ${which} end in Pa`, end.dischargePa, end.suctionPa, 1e9),
    within(`clearance of the ${which} end`, end.clearance, 0, 10),
    exponentFault(end.n),
  ]
}

function pinPoint(inputs: PinLoadInputs, angle: number): PinLoadPoint {
  const { areas, gear } = inputs
  const motion = motionUnguarded(gear, angle)
  const travel = Math.min(1, Math.max(0, motion.positionM / (2 * gear.crankM)))
  const inwards = angle < Math.PI
  const headPa = pressureAt(inputs.head, travel, inwards)
  const crankPa = pressureAt(inputs.crank, 1 - travel, !inwards)
  const gasN = netGasLoad(areas, headPa, crankPa, inputs.outsidePa)
  const inertiaN = -inputs.reciprocatingKg * motion.acceleration
  return { angle, headPa, crankPa, gasN, inertiaN, pinN: gasN + inertiaN }
}
