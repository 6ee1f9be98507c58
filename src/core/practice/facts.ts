// What a hidden machine is made around: the figures of its record, and where the procedure measures. Only facts, no chance.
import { asBoreJudge } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { placesOf } from '../job/places.ts'
import { gaugeById } from '../job/seats.ts'
import { oncePer } from '../lib/once.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { BoreJudging, BorePlace } from './bore-truth.ts'

/** An instrument that shows a figure, in SI. */
export interface Showing {
  readonly id: string
  readonly resolution: number
  /** Standard uncertainty of its certificate. */
  readonly standardU: number
  /** How far it may be off its setting standard; null for one that has none. */
  readonly setWithin: number | null
}

export interface Facts {
  readonly tag: string
  readonly points: readonly { readonly id: string; readonly name: string }[]
  /** As made: from and to, metres. */
  readonly made: readonly [number, number]
  readonly counterboreM: number
  readonly bore: BoreJudging
  /** 100 % LEL as a share of the volume. */
  readonly lelShare: number
  readonly instruments: readonly Showing[]
}

/** Refuses a job with nothing that a hidden bore could be judged by: then no fault of it could be told. */
export const factsOf = oncePer((defs: Definitions): Result<Facts> => {
  const { machine } = defs
  const judge = defs.steps.map(asBoreJudge).find((one) => one !== null)
  if (judge === undefined || judge === null)
    return refuse(
      'no-bore',
      'Practice needs a procedure that judges the form of a bore: bore-inspection does.',
    )
  const read = asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read')
  const places = placesOf(read).flatMap(({ station, axis }): BorePlace[] =>
    axis === null ? [] : [placeAt(station, axis)],
  )
  const limits = limitsFor(defs, judge.step.against)
  const unknown = judge.step.against.filter((one) => limits[one] === undefined)
  if (unknown.length > 0)
    return refuse(
      'no-limit',
      `Practice needs a limit for ${unknown.join(', ')}: the machine record has none.`,
    )
  const { bore } = machine
  if (bore.expansion === undefined)
    return refuse(
      'no-expansion',
      'Practice needs the thermal expansion of the cylinder in the machine record.',
    )
  const instruments = showings(defs)
  const gauges = defs.instruments.instruments.flatMap((one) => {
    const gauge = gaugeById(defs, one.id)
    const isForBore = one.kind === 'inside_micrometer' || one.kind === 'bore_gauge'
    return gauge !== null && isForBore && gauge.uncertainty !== undefined ? [gauge] : []
  })
  const best = gauges.sort((a, b) => a.resolution.si - b.resolution.si)[0]
  if (best === undefined || best.uncertainty === undefined)
    return refuse('no-gauge', 'Practice needs a bore gauge with a stated uncertainty in the register.')
  return ok({
    tag: machine.machine,
    points: machine.site.isolation_points,
    made: [bore.nominal.si - (bore.as_made?.minus.si ?? 0), bore.nominal.si + (bore.as_made?.plus.si ?? 0)],
    counterboreM: bore.counterbore?.si ?? bore.nominal.si * COUNTERBORE,
    bore: {
      nominalM: bore.nominal.si,
      places,
      limits,
      readingU: (2 * best.uncertainty.expanded.si) / best.uncertainty.k,
      resolutionM: best.resolution.si,
      lined: bore.lined,
    },
    lelShare: machine.site.gas.lel_basis.lower_limit.si,
    instruments,
  })
})

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
