// The readings that figures rest on, each with how far it may be off: by its instrument, by temperatures, and by how far apart
// that instrument reads one place.
import { isSetOnStandard, type Reader } from '../definition/instruments.ts'
import type { StepOf } from '../definition/procedure.ts'
import {
  type PlaceReadings,
  type Repeatability,
  type RepeatsError,
  repeatability,
} from '../metrology/repeatability.ts'
import { expandedOfReading, type ReadingUncertaintyInput } from '../metrology/uncertainty.ts'
import { type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import type { At20 } from './figure-at-20.ts'
import { applicability } from './next.ts'
import { placeResult, placesOf } from './places.ts'
import { beyondItsScale, nowDoubted } from './plausible.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/** A settled place that figures may rest on, with the value that goes in and what it was read on. */
export interface Read {
  readonly place: string
  readonly si: number
  readonly expandedU: number | null
  readonly resolution: number
  readonly instruments: readonly string[]
  /** What the error of each instrument is made of; none where one has none stated, or the measuring is on hold. */
  readonly errors: readonly ReadingUncertaintyInput[]
  readonly at20: At20 | null
}

/** A settled place whose readings may be judged by: what it was read with, and how each of them stands. */
interface Accepted extends PlaceReadings {
  readonly read: ReadStep
  readonly si: number
  readonly used: readonly Reader[]
  readonly at20: At20 | null
}

/**
 * Each settled place of the steps that are to be done, or the reason why nothing read there can be trusted. A place without a
 * settled value is left out: the figure is then unknown, and says so itself. Repeats are pooled over all places of one quantity that
 * one instrument read.
 */
export function readsAt(
  defs: Definitions,
  state: State,
  reads: readonly ReadStep[],
  brackets: readonly At20[],
): { readonly places: ReadonlyMap<string, Read | string>; readonly pools: readonly Repeatability[] } {
  const found = reads
    .filter((read) => applicability(defs, state, read) === 'do')
    .flatMap((read) => [...acceptedAt(defs, state, read, brackets)])
  const accepted = found.flatMap(([, one]) => (typeof one === 'string' ? [] : [one]))
  const pools = poolsOf(accepted)
  return {
    places: new Map(
      found.map(([key, one]) => [key, typeof one === 'string' ? one : readOf(one, pools)] as const),
    ),
    pools: [...pools.values()],
  }
}

const poolKey = (one: Reader, { read }: Accepted) => `${one.id} ${read.step.quantity}`

/** By instrument and quantity. A place that two instruments read says of neither how well it repeats. */
function poolsOf(accepted: readonly Accepted[]): ReadonlyMap<string, Repeatability> {
  const alone = accepted.flatMap((place) => {
    const [one, ...others] = place.used
    return one === undefined || others.length > 0 ? [] : [{ one, place, key: poolKey(one, place) }]
  })
  return new Map(
    alone.map(({ one, key }) => {
      const places = alone.filter((other) => other.key === key).map(({ place }) => place)
      return [key, repeatability(places, one.resolution.si)] as const
    }),
  )
}

function readOf(place: Accepted, pools: ReadonlyMap<string, Repeatability>): Read {
  const { si, used, at20 } = place
  const isHeld = at20 !== null && at20.holds.length > 0
  const errors = used.flatMap((one) =>
    isHeld ? [null] : repeatsAt(place, one, pools).map((repeats) => errorOf(one, si, repeats, at20)),
  )
  const known = errors.filter((one) => one !== null)
  const isKnown = known.length === errors.length
  return {
    place: place.place,
    si,
    expandedU: isKnown ? Math.max(...known.map(expandedOr)) : null,
    errors: isKnown ? known : [],
    at20,
    resolution: Math.max(...used.map((one) => one.resolution.si)),
    instruments: used.map(({ id }) => id),
  }
}

/** The repeats of the place as the pool of its instrument has them; where two read it, those of its own beside each pool. */
function repeatsAt(
  place: Accepted,
  one: Reader,
  pools: ReadonlyMap<string, Repeatability>,
): (RepeatsError | null)[] {
  const pool = pools.get(poolKey(one, place))
  if (place.used.length === 1)
    return [pool?.places.find((other) => other.place === place.place)?.error ?? null]
  return [repeatability([place], one.resolution.si).error, pool?.error ?? null]
}

function* acceptedAt(
  defs: Definitions,
  state: State,
  read: ReadStep,
  brackets: readonly At20[],
): Generator<[string, Accepted | string]> {
  const at20 = brackets.find((one) => one.covers(read)) ?? null
  for (const place of placesOf(read)) {
    const { si, readings } = placeResult(read, place, state)
    if (si === null) continue
    const instruments = [...new Set(readings.map((one) => one.instrument))].sort()
    const known = instruments.map((id) => instrumentById(defs, id))
    const used = known.filter((one): one is Reader => one !== undefined && one.kind !== 'gas_meter')
    if (used.length < known.length || used.length === 0) {
      yield [place.key, `${instruments.join(', ')} is not in the register, so what it read cannot be judged.`]
      continue
    }
    // It was doubted, and kept all the same: on record, and no measurement.
    const off = readings.map((one) => beyondItsScale(defs, one)).find((why) => why !== null)
    if (off !== undefined) {
      yield [place.key, `A reading at ${place.station.label} is ${off}, so it cannot be judged.`]
      continue
    }
    const doubt = readings.map((one) => nowDoubted(defs, read, one)).find((why) => why !== null)
    if (doubt !== undefined) {
      yield [
        place.key,
        `A reading at ${place.station.label} is by the record as it is now ${doubt}, so it cannot be judged.`,
      ]
      continue
    }
    const bare = used.find((one) => isSetOnStandard(one) && at20 === null)
    if (bare !== undefined) {
      yield [
        place.key,
        `${bare.id} measured here without a set-check before and after and without temperatures: its figures cannot be judged.`,
      ]
      continue
    }
    const reduced = at20 === null ? { ok: true as const, value: si } : at20.reduce(si)
    if (!reduced.ok) {
      yield [place.key, reduced.error.say]
      continue
    }
    const values = readings.map((one) => one.si)
    yield [place.key, { place: place.key, values, read, si: reduced.value, used, at20 }]
  }
}

/** What the error of one combined reading is made of; null where nobody has stated any. */
function errorOf(
  one: Reader,
  si: number,
  repeats: RepeatsError | null,
  at20: At20 | null,
): ReadingUncertaintyInput | null {
  if (one.uncertainty === undefined) return null
  const { uncertainty } = one
  const warm = at20 === null ? COLD : at20.error(one)
  return {
    instrumentU: uncertainty.expanded.si,
    instrumentK: uncertainty.k,
    // The size only matters with an expansion; any size above nought does without one.
    lengthM: at20 === null ? 1 : Math.abs(si),
    ...warm,
    ...(repeats === null ? {} : { repeats }),
    resolutionM: one.resolution.si,
    resolutionInsideU: 'includes_resolution' in uncertainty && uncertainty.includes_resolution,
  }
}

/** Expanded uncertainty at the level of k = 2; what cannot be reckoned with is NaN, which no judgement passes. */
function expandedOr(error: ReadingUncertaintyInput): number {
  const expanded = expandedOfReading(error)
  return expanded.ok ? expanded.value : Number.NaN
}

/** Expanded uncertainty, k = 2, of one reading as good as it can be: no scatter, no doubt in temperatures. Null: unstated. */
export function oneReadingU(one: Reader): number | null {
  const error = errorOf(one, 1, null, null)
  return error === null ? null : expandedOr(error)
}

const COLD = { partAlpha: 0, instrumentAlpha: 0, partTempU: 0, instrumentTempU: 0 }
