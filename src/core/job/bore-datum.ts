// What wear of a bore is told from where no unswept strip was read: its size as bored, or as an overhaul left it. Only while it is
// the same bore: never across a reline, a rebore or another material of its running surface.
import type { BoreDatum } from '../bore/bore-wear.ts'
import type { StepOf } from '../definition/procedure.ts'
import { recorded } from './changes.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { placesOf } from './places.ts'
import { isOther, sameBore } from './same-bore.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export type RecordedDatum =
  | { readonly datum: BoreDatum; readonly why: null }
  /** Why the record gives none; null where nothing is on record. */
  | { readonly datum: null; readonly why: string | null }

/**
 * As bored before as left: the one tells all of the wear, the other what came since that day. Of several overhauls the earliest
 * counts, of which the wear is the greatest; one figure for each place, all places or none. Sizes of a record count as at 20 degC,
 * as a size without a temperature does (ISO 1:2022). What was read as left on this job is told from no record: what goes
 * back may have been cut.
 */
export function recordedDatum({ machine }: Pick<Definitions, 'machine'>, diameters: ReadStep): RecordedDatum {
  if (diameters.step.stage === 'as_left')
    return { datum: null, why: 'what is left now may have been cut on this job' }
  const bored = asBored(machine)
  if (bored.datum !== null) return bored
  const places = placesOf(diameters)
  for (const overhaul of sameBore(machine).overhauls) {
    const sizes = places.flatMap((place) =>
      recorded(overhaul, { step: diameters, place })
        .slice(0, 1)
        .map(({ si, u }) => ({
          station: place.station.id,
          axis: place.axis?.id ?? 'only',
          valueM: si,
          ...(u === null ? {} : { expandedU: u }),
        })),
    )
    if (sizes.length < places.length) continue
    const { day, report } = overhaul
    return { datum: { from: 'as-left record', byPlace: sizes, since: day, source: report }, why: null }
  }
  return bored
}

function asBored(machine: Definitions['machine']): RecordedDatum {
  const { as_bored: bored } = machine.bore
  if (bored === undefined) return { datum: null, why: null }
  const none = (why: string): RecordedDatum => ({ datum: null, why: `the size as bored is not used: ${why}` })
  if (isOther(machine, bored.material))
    return none(`it is of ${bored.material}, and the bore is ${machine.bore.material}`)
  const { cut } = sameBore(machine)
  if (cut !== null && bored.day === undefined)
    return none(`it has no day, and the bore was renewed or cut since (${cut.report})`)
  if (cut !== null && bored.day !== undefined && bored.day < cut.day)
    return none(`the bore was renewed or cut after it (${cut.report})`)
  return {
    datum: {
      from: 'as-bored record',
      singleM: bored.diameter.si,
      source: bored.source,
      ...(bored.day === undefined ? {} : { since: bored.day }),
      ...(bored.u === undefined ? {} : { expandedU: bored.u.si }),
    },
    why: null,
  }
}
