// One measured value against the limit of a gate, and against what the instrument can tell. Pure.
//
// The rule: the reading has to lie inside the limit by at least G, where G is the larger of the smallest step of the
// instrument and its expanded uncertainty at k = 2. A guard band of U is guarded acceptance (JCGM 106:2012 clause 8.3,
// clause from memory); the whole step is common practice, no source. The reason: between two marks an instrument shows
// the same, so "0" on a gauge with steps of 5 psi is also what nearly 5 psi look like, and says nothing about 0.5 psi.
import type { EvidenceOf } from '../definition/evidence.ts'
import type { Reader } from '../definition/instruments.ts'

export type Measuring = Reader

export type MeasuredOutcome =
  | { readonly kind: 'passes' }
  /** Outside the limit, or too close to it: the place is not as it must be. */
  | { readonly kind: 'fails'; readonly why: string }
  /** The instrument can say nothing here: no statement about the place. */
  | { readonly kind: 'not-valid'; readonly why: string }

/** Binary noise of a figure that was keyed in one unit and is held in another. */
const NOISE = 1e-9

/** `si` in Pa above the air outside, m or K. A value or a bound that is not a number never passes. */
export function judgeMeasured(
  evidence: EvidenceOf<'measured'>,
  instrument: Measuring,
  si: number,
): MeasuredOutcome {
  const { at_least: least, at_most: most, quantity } = evidence
  const fails = (why: string): MeasuredOutcome => ({ kind: 'fails', why })
  const notValid = (why: string): MeasuredOutcome => ({ kind: 'not-valid', why })
  if (!Number.isFinite(si)) return fails('not a number')
  if ([least, most].some((bound) => bound !== undefined && bound.kind !== quantity))
    return fails('its limit is not in a unit of what is measured')
  if (least === undefined && most === undefined) return fails('its limit has no bound')
  if (least !== undefined && !(si >= least.si)) return fails(`below ${least.text}`)
  if (most !== undefined && !(si <= most.si)) return fails(`above ${most.text}`)
  const { from, to } = instrument.range
  if (!(si >= from.si && si <= to.si))
    return notValid(`${instrument.id} reads ${from.text} to ${to.text}, so its figure here means nothing`)
  const guard = guardOf(instrument)
  if (guard === null) return notValid(`nobody has stated how far off ${instrument.id} may be`)
  const needed = guard.si * (1 - NOISE)
  const lowest = quantity === 'pressure-gauge' ? Math.max(from.si, 0) : from.si
  const widest = least === undefined ? (most?.si ?? Number.NaN) - lowest : (most?.si ?? to.si) - least.si
  // At the best place between two bounds the reading is half the width from either.
  if (!((least !== undefined && most !== undefined ? widest / 2 : widest) >= needed)) {
    const limit = [least, most].flatMap((bound) => bound?.text ?? []).join(' to ')
    return notValid(`${guard.say}, too coarse for a limit of ${limit}`)
  }
  if (least !== undefined && !(si - least.si >= needed))
    return fails(`too close to ${least.text}, as ${guard.say}`)
  if (most !== undefined && !(most.si - si >= needed))
    return fails(`too close to ${most.text}, as ${guard.say}`)
  return { kind: 'passes' }
}

/** How far the truth may lie from what is shown, in SI, and a clause that says so. Null where nobody has stated it. */
function guardOf(instrument: Measuring): { readonly si: number; readonly say: string } | null {
  const { id, resolution, uncertainty } = instrument
  if (uncertainty === undefined) return null
  const { expanded, k } = uncertainty
  const unread =
    'includes_resolution' in uncertainty && !uncertainty.includes_resolution ? resolution.si / 2 : 0
  const u = expanded.si * Math.max(1, 2 / k) + unread
  if (!(u > 0 && resolution.si > 0 && Number.isFinite(u + resolution.si))) return null
  return u > resolution.si
    ? { si: u, say: `${id} may be off by ${expanded.text} (k = ${k})` }
    : { si: resolution.si, say: `${id} reads in steps of ${resolution.text}` }
}
