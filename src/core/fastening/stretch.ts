// How much a bolt or rod stretches under its tension, and how far its nut turns to get there.

import { refuseOverflow, refuseUnsound } from '../bore/sound.ts'
import { ok, type Result, refuse } from '../lib/result.ts'

/** A length of even section: a shank, a thread (on its stress area), or the clamped hub (as a spring). */
export interface Segment {
  readonly lengthM: number | null | undefined
  readonly areaM2: number | null | undefined
  readonly elasticityPa: number | null | undefined
}

/**
 * Compliance of segments in a row, m/N: the sum of L / (A E). Its inverse is their stiffness.
 * Source: Hooke's law; J. E. Shigley (Budynas & Nisbett), Mechanical Engineering Design, 9th ed., ch. 8.
 * Refuses: no segment; a figure missing or not above zero.
 */
export function compliance(segments: readonly Segment[], whose: string): Result<number> {
  if (segments.length === 0)
    return refuse('no-segment', `No length of the ${whose} is given: add its sections.`)
  const figures = segments.flatMap((segment, i): [string, number | null | undefined][] => [
    [`length of section ${i + 1} of the ${whose}`, segment.lengthM],
    [`area of section ${i + 1} of the ${whose}`, segment.areaM2],
    [`elasticity of section ${i + 1} of the ${whose}`, segment.elasticityPa],
  ])
  const fault = refuseUnsound(Object.fromEntries(figures))
  if (fault !== null) return fault
  const sum = segments.reduce(
    (total, { lengthM, areaM2, elasticityPa }) =>
      total + (lengthM as number) / ((areaM2 as number) * (elasticityPa as number)),
    0,
  )
  return refuseOverflow(sum, 1 / sum) ?? ok(sum)
}

/**
 * Stretch = F x sum of L / (A E), metres; stress on the smallest section = F / A, pascals.
 * Source: Hooke's law. Holds below the proof stress of the metal, which is not checked here.
 * Refuses: as compliance; a tension missing or not above zero.
 *
 * @example 7/8-9, 10 000 lbf, 5 in on 0.46 in2, 30e6 psi: 0.0036 in and 21 740 psi
 */
export function stretch(input: {
  readonly tensionN: number | null | undefined
  readonly segments: readonly Segment[]
}): Result<{ stretchM: number; stressPa: number }> {
  const fault = refuseUnsound({ tension: input.tensionN })
  if (fault !== null) return fault
  const soft = compliance(input.segments, 'bolt')
  if (!soft.ok) return soft
  const stretchM = (input.tensionN as number) * soft.value
  const smallest = Math.min(...input.segments.map(({ areaM2 }) => areaM2 as number))
  const stressPa = (input.tensionN as number) / smallest
  return refuseOverflow(stretchM, stressPa) ?? ok({ stretchM, stressPa })
}

/**
 * Angle a nut turns from snug (all play out, no tension yet) to a tension, radians:
 * 2 pi x (stretch of the bolt + squeeze of what it clamps) / pitch. Without the squeeze the nut is turned too little.
 * Source: mechanics; that an angle is used from a snug torque, Bloch & Hoefner 1996, p. 286.
 * Refuses: as compliance, for the bolt and for the joint; a tension or pitch missing or not above zero.
 *
 * @example 2-8 rod end, 110 825 lbf, 8 in grip, hub 6 in2 of 15e6 psi: 59 degrees, of which 31 for the rod alone
 */
export function nutAngle(input: {
  readonly tensionN: number | null | undefined
  readonly pitchM: number | null | undefined
  readonly bolt: readonly Segment[]
  readonly joint: readonly Segment[]
}): Result<{ angleRad: number; stretchM: number; squeezeM: number; boltOnlyRad: number }> {
  const fault = refuseUnsound({ tension: input.tensionN, 'thread pitch': input.pitchM })
  if (fault !== null) return fault
  const bolt = compliance(input.bolt, 'bolt')
  if (!bolt.ok) return bolt
  const joint = compliance(input.joint, 'joint')
  if (!joint.ok) return joint
  const stretchM = (input.tensionN as number) * bolt.value
  const squeezeM = (input.tensionN as number) * joint.value
  const perMetre = (2 * Math.PI) / (input.pitchM as number)
  const angleRad = (stretchM + squeezeM) * perMetre
  return refuseOverflow(angleRad) ?? ok({ angleRad, stretchM, squeezeM, boltOnlyRad: stretchM * perMetre })
}
