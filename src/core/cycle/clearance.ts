// Clearance of one end: the sum of its parts, and what a pocket adds at its setting.
import { ok, type Result, refuse } from '../lib/result.ts'
import { aboveZero, firstFault, within } from './guard.ts'

/** The most an end's clearance can be of its swept volume: five strokes' worth is no cylinder, it is a slip of unit. */
export const GREATEST_CLEARANCE = 5

export interface ClearancePart {
  /** End space, valve ports, valves, fixed pocket, passages: as the drawing names them. */
  readonly name: string
  readonly volumeM3: number
}

export interface Clearance {
  readonly volumeM3: number
  /** Clearance over the swept volume OF THIS END. */
  readonly ratio: number
}

/**
 * C = (sum of the volumes left in this end at its dead centre) / (swept volume of this end). Cubic metres.
 * Source: GPSA Engineering Data Book, section 13, nomenclature (clearance as a share of displacement), here end by end.
 * Refuses: no parts, a part missing, negative or not a number, a ratio above 5.
 *
 * @example end space 20, ports 100, valves 38.5 cm3 in an end sweeping 1000 cm3: 158.5 cm3, 15.85 %
 */
export function clearanceFromParts(parts: readonly ClearancePart[], sweptM3: number): Result<Clearance> {
  if (parts.length === 0) return refuse('no-parts', 'No part of the clearance is given: list the volumes.')
  const fault = firstFault(
    aboveZero('swept volume', sweptM3),
    ...parts.map(({ name, volumeM3 }) => within(`volume of ${name} in cubic metres`, volumeM3, 0, 100)),
  )
  if (fault !== null) return fault
  const volumeM3 = parts.reduce((sum, part) => sum + part.volumeM3, 0)
  const bad = within('clearance over swept volume', volumeM3 / sweptM3, 0, GREATEST_CLEARANCE)
  return firstFault(bad) ?? ok({ volumeM3, ratio: volumeM3 / sweptM3 })
}

/** A pocket on one end. A fixed one is always open to the cylinder; the others are set. */
export type Pocket =
  | { readonly is: 'fixed'; readonly volumeM3: number }
  | { readonly is: 'open-or-shut'; readonly volumeM3: number }
  | {
      readonly is: 'variable'
      readonly volumePerTurnM3: number
      /** Turns of the hand-wheel from shut to full open. */
      readonly turns: number
      /** Smallest part of a turn the wheel is set to; left out, any. */
      readonly turnStep?: number
    }

/** What the pocket holds full open, cubic metres. Refuses a volume or turns missing or not above zero. */
export function fullPocketVolume(pocket: Pocket): Result<number> {
  if (pocket.is !== 'variable')
    return firstFault(aboveZero('pocket volume', pocket.volumeM3)) ?? ok(pocket.volumeM3)
  const step = pocket.turnStep
  const fault = firstFault(
    aboveZero('pocket volume per turn', pocket.volumePerTurnM3),
    aboveZero('turns of the pocket', pocket.turns),
    step === undefined ? null : aboveZero('least part of a turn', step),
  )
  return fault ?? ok(pocket.volumePerTurnM3 * pocket.turns)
}

/**
 * Volume a pocket adds at `opening`, 0 shut to 1 full open: all of a fixed one whatever is said, none or all of one
 * that is open or shut, turns times volume per turn of a hand-wheel.
 * Source: geometry; the volume per turn is the maker's figure or (pi/4) d^2 times the thread's lead.
 * Refuses: what fullPocketVolume refuses; an opening missing or outside 0 to 1; part opening of an open-or-shut one.
 *
 * @example 32.77 cm3 a turn, 12 turns, opening 0.5: 6 turns, 196.6 cm3
 */
export function pocketVolume(pocket: Pocket, opening: number): Result<number> {
  const full = fullPocketVolume(pocket)
  if (!full.ok) return full
  if (pocket.is === 'fixed') return full
  const fault = firstFault(within('pocket opening', opening, 0, 1))
  if (fault !== null) return fault
  if (pocket.is === 'open-or-shut' && opening !== 0 && opening !== 1)
    return refuse('half-open', 'This pocket is either open or shut: it has no place between.')
  return ok(full.value * opening)
}
