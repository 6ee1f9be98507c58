// Piston areas and displacement of each end of a cylinder, and piston speed. Geometry only.
import { ok, type Result, refuse } from '../lib/result.ts'
import { aboveZero, firstFault, sound, soundAll, within } from './guard.ts'

export interface CylinderSize {
  readonly boreM: number
  /** Zero only where a rod is truly absent or a book leaves it out. */
  readonly rodM: number
  /** Rod through the head end, if there is one. @default 0 */
  readonly tailRodM?: number
}

export interface PistonAreas {
  readonly headM2: number
  readonly crankM2: number
  readonly rodM2: number
  readonly tailRodM2: number
}

/**
 * A_he = pi/4 (D^2 - t^2), A_ce = pi/4 (D^2 - d^2); metres in, square metres out.
 * Source: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 394;
 * with a tail rod its section comes off the head end (the same equations with tail rod: R. N. Brown, Compressors:
 * Selection and Sizing, ch. 3). Bore above 0 to 5 m.
 * Refuses: a size missing or out of range, a rod not smaller than the bore.
 *
 * @example bore 12 in, rod 2.5 in: 113.097 in2 at the head end, 108.189 in2 at the crank end
 */
export function pistonAreas({ boreM, rodM, tailRodM = 0 }: CylinderSize): Result<PistonAreas> {
  const fault = firstFault(
    aboveZero('bore', boreM),
    within('bore in metres', boreM, 0, 5),
    within('rod in metres', rodM, 0, 5),
    within('tail rod in metres', tailRodM, 0, 5),
  )
  if (fault !== null) return fault
  if (rodM >= boreM || tailRodM >= boreM)
    return refuse('rod-too-big', 'The rod is not smaller than the bore: check both diameters.')
  const disc = (diameter: number) => (Math.PI / 4) * diameter * diameter
  return ok({
    headM2: disc(boreM) - disc(tailRodM),
    crankM2: disc(boreM) - disc(rodM),
    rodM2: disc(rodM),
    tailRodM2: disc(tailRodM),
  })
}

export interface Displacement {
  readonly headM3: number
  readonly crankM3: number
  readonly perRevM3: number
  readonly headM3PerS: number
  readonly crankM3PerS: number
  readonly totalM3PerS: number
}

/**
 * PD = (A_he + A_ce) S N; per end A S. Stroke in metres, speed in turns a second.
 * Source: Bloch & Hoefner 1996, p. 394; E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook, p. 271.
 * A single-acting cylinder uses the end that acts. Stroke to 5 m, speed to 100 turns a second.
 * Refuses: what pistonAreas refuses; a stroke or speed missing, not above zero or out of range.
 *
 * @example bore 6 in, rod 2.5 in, stroke 12 in, 300 rpm, both ends: 107.6 cfm
 */
export function displacement(size: CylinderSize, strokeM: number, speedPerS: number): Result<Displacement> {
  const fault = firstFault(strokeFault(strokeM), speedFault(speedPerS))
  if (fault !== null) return fault
  const areas = pistonAreas(size)
  if (!areas.ok) return areas
  const headM3 = areas.value.headM2 * strokeM
  const crankM3 = areas.value.crankM2 * strokeM
  return soundAll('displacement', {
    headM3,
    crankM3,
    perRevM3: headM3 + crankM3,
    headM3PerS: headM3 * speedPerS,
    crankM3PerS: crankM3 * speedPerS,
    totalM3PerS: (headM3 + crankM3) * speedPerS,
  })
}

/**
 * Mean piston speed 2 S N, metres a second; stroke in metres, speed in turns a second.
 * Source: McAllister, Pipeline Rules of Thumb Handbook, p. 272.
 * Refuses: a stroke or speed missing, not above zero or out of range.
 *
 * @example stroke 12 in, 300 rpm: 600 ft/min
 */
export function pistonSpeed(strokeM: number, speedPerS: number): Result<number> {
  const fault = firstFault(strokeFault(strokeM), speedFault(speedPerS))
  return fault ?? sound('piston speed', 2 * strokeM * speedPerS)
}

export function strokeFault(strokeM: number) {
  return aboveZero('stroke', strokeM) ?? within('stroke in metres', strokeM, 0, 5)
}

export function speedFault(speedPerS: number) {
  return aboveZero('speed', speedPerS) ?? within('speed in turns a second', speedPerS, 0, 100)
}
