// What a hidden machine is made around: the figures of its record, and where the procedure measures. Only facts, no chance.
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { placesOf } from '../job/places.ts'
import { gaugeById } from '../job/seats.ts'
import { oncePer } from '../lib/once.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { BoreJudging, BorePlace } from './bore-truth.ts'
import { type PartFacts, partFactsOf } from './facts-parts.ts'
import type { Fault } from './fault.ts'
import { faultsFor } from './faults.ts'
import { isPractised } from './practised.ts'

/** An instrument that shows a figure, in SI. */
export interface Showing {
  readonly id: string
  readonly resolution: number
  /** Standard uncertainty of its certificate. */
  readonly standardU: number
  /** How far it may be off its setting standard; null for one that has none. */
  readonly setWithin: number | null
}

export interface BoreFacts {
  /** As made: from and to, metres. */
  readonly made: readonly [number, number]
  readonly counterboreM: number
  readonly judging: BoreJudging
}

/** The limits of a rod that its wear is drawn by, metres. */
export interface RodFacts {
  readonly nominalM: number
  readonly undersizeM: number
  readonly outOfRoundM: number
  readonly taperM: number
  readonly straightnessM: number
  readonly threadM: number
  readonly shoulderM: number
}

export interface Facts {
  readonly tag: string
  readonly points: readonly { readonly id: string; readonly name: string }[]
  readonly bore: BoreFacts | null
  readonly rod: RodFacts | null
  readonly parts: PartFacts
  /** 100 % LEL as a share of the volume. */
  readonly lelShare: number
  readonly instruments: readonly Showing[]
  /** What can be hidden where this job looks. */
  readonly faults: readonly Fault[]
}

/** Refuses a job in which nothing can be hidden, or whose records do not say enough to make a machine by. */
export const factsOf = oncePer((defs: Definitions): Result<Facts> => {
  const { machine, procedure } = defs
  const faults = faultsFor(defs)
  // A part of others has a machine only with them: what stands around it says what there is.
  if (!isPractised(procedure.procedure))
    return refuse(
      'not-practised',
      `Practice does not know ${procedure.title} yet, or only as a part of others.`,
    )
  const bore = boreFactsOf(defs)
  if (!bore.ok) return bore
  const rod = rodFactsOf(defs)
  if (!rod.ok) return rod
  const parts = partFactsOf(defs)
  if (!parts.ok) return parts
  return ok({
    tag: machine.machine,
    points: machine.site.isolation_points,
    bore: bore.value,
    rod: rod.value,
    parts: parts.value,
    lelShare: machine.site.gas.lel_basis.lower_limit.si,
    instruments: showings(defs),
    faults,
  })
})

function boreFactsOf(defs: Definitions): Result<BoreFacts | null> {
  const { bore } = defs.machine
  const judge = defs.steps.map(asBoreJudge).find((one) => one !== null) ?? null
  if (judge === null) return ok(null)
  const limits = limitsFor(defs, judge.step.against)
  const unknown = judge.step.against.filter((one) => limits[one] === undefined)
  if (unknown.length > 0)
    return refuse(
      'no-limit',
      `Practice needs a limit for ${unknown.join(', ')}: the machine record has none.`,
    )
  if (bore.expansion === undefined)
    return refuse(
      'no-expansion',
      'Practice needs the thermal expansion of the cylinder in the machine record.',
    )
  const read = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  const best = bestGauge(defs, ['inside_micrometer', 'bore_gauge'])
  if (best === null)
    return refuse('no-gauge', 'Practice needs a bore gauge with a stated uncertainty in the register.')
  const nominalM = bore.nominal.si
  return ok({
    made: [nominalM - (bore.as_made?.minus.si ?? 0), nominalM + (bore.as_made?.plus.si ?? 0)],
    counterboreM: bore.counterbore?.si ?? nominalM * COUNTERBORE,
    judging: {
      nominalM,
      places: placesOf(read).flatMap(({ station, axis }): BorePlace[] =>
        axis === null ? [] : [placeAt(station, axis)],
      ),
      limits,
      ...best,
      lined: bore.lined,
    },
  })
}

/** The finest of those that state an uncertainty, as a reading of it is judged: U at k = 2, and its step, metres. */
function bestGauge(
  defs: Definitions,
  kinds: readonly string[],
): { readonly readingU: number; readonly resolutionM: number } | null {
  const stated = defs.instruments.instruments.flatMap((one) => {
    const gauge = gaugeById(defs, one.id)
    const uncertainty = gauge?.uncertainty
    if (gauge === null || uncertainty === undefined || !kinds.includes(one.kind)) return []
    return [{ readingU: (2 * uncertainty.expanded.si) / uncertainty.k, resolutionM: gauge.resolution.si }]
  })
  return stated.sort((a, b) => a.resolutionM - b.resolutionM)[0] ?? null
}

const OF_ROD = [
  'rod-undersize',
  'rod-out-of-round',
  'rod-taper',
  'rod-straightness',
  'rod-thread-runout',
  'rod-shoulder-squareness',
] as const

/** Null where the job judges no rod. */
function rodFactsOf(defs: Definitions): Result<RodFacts | null> {
  const judged = new Set(
    defs.steps.flatMap(({ step }) =>
      step.kind === 'judge' && step.compute === 'figures'
        ? step.figures.map(({ characteristic }): string => characteristic)
        : [],
    ),
  )
  if (!OF_ROD.every((one) => judged.has(one))) return ok(null)
  const limits = limitsFor(defs, OF_ROD)
  const values = OF_ROD.flatMap((one) => limits[one]?.value ?? [])
  const [undersizeM, outOfRoundM, taperM, straightnessM, threadM, shoulderM] = values
  const { rod } = defs.machine
  if (rod === undefined || rod.expansion === undefined)
    return refuse('no-rod', 'Practice needs the rod with its thermal expansion in the machine record.')
  if (
    undersizeM === undefined ||
    outOfRoundM === undefined ||
    taperM === undefined ||
    straightnessM === undefined ||
    threadM === undefined ||
    shoulderM === undefined ||
    values.length !== OF_ROD.length
  )
    return refuse(
      'no-limit',
      'Practice needs a limit for each figure of the rod: the machine record has not all.',
    )
  return ok({ nominalM: rod.diameter.si, undersizeM, outOfRoundM, taperM, straightnessM, threadM, shoulderM })
}

/** Where a record has no counterbore, as a share of the bore: invented for practice. */
const COUNTERBORE = 1.026

export function placeAt(
  station: { readonly id: string; readonly at: number; readonly in_counterbore?: boolean | undefined },
  axis: { readonly id: string; readonly from: number; readonly to: number },
): BorePlace {
  return {
    station: station.id,
    at: station.at,
    inCounterbore: station.in_counterbore === true,
    axis: axis.id,
    from: axis.from,
    to: axis.to,
  }
}

function showings(defs: Definitions): Showing[] {
  return defs.instruments.instruments.flatMap((one): Showing[] => {
    if (one.kind === 'gas_meter') return []
    const { uncertainty } = one
    const standardU = uncertainty === undefined ? one.resolution.si : uncertainty.expanded.si / uncertainty.k
    const setWithin = 'set_check' in one ? one.set_check.within.si : null
    return [{ id: one.id, resolution: one.resolution.si, standardU, setWithin }]
  })
}
