// What was measured with: calibration, stated error, and whether it was found out of calibration.
import { type Definitions, instrumentById } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import { type State, stands } from '../../job/state.ts'
import type { Report } from '../schema.ts'

/** Every instrument that a reading or a line of evidence names, in the order of their numbers. */
export function instrumentsOf(
  defs: Definitions,
  state: State,
  entries: readonly Entry[],
): Report['instruments'] {
  const readings = Object.values(state.readings).flat()
  const doubts = entries.flatMap((entry) => (entry.type === 'instrument.doubted' ? [entry] : []))
  const shown = entries.flatMap((entry) =>
    entry.type === 'evidence.given' && entry.instrument !== undefined
      ? [{ id: entry.instrument, counts: !doubts.some(({ readings: of }) => of.includes(entry.seq)) }]
      : [],
  )
  const ids = [
    ...new Set([
      ...readings.map((one) => one.instrument),
      ...shown.map((one) => one.id),
      ...doubts.map((one) => one.instrument),
    ]),
  ].sort()
  return ids.map((id) => {
    const one = instrumentById(defs, id)
    const doubt = doubts.find(({ instrument }) => instrument === id)
    return {
      id,
      title: one?.title ?? 'in no register of this job',
      kind: (one?.kind ?? 'not known').replaceAll('_', ' '),
      due: one?.calibration.due ?? null,
      certificate: one?.calibration.certificate ?? null,
      error: errorOf(one),
      readings: readings.filter((reading) => reading.instrument === id && stands(reading)).length,
      evidence: shown.filter((one) => one.id === id && one.counts).length,
      doubted: doubt === undefined ? null : `${doubt.why}; says ${doubt.says}`,
    }
  })
}

function errorOf(one: ReturnType<typeof instrumentById>): string {
  if (one === undefined || one.kind === 'gas_meter' || one.uncertainty === undefined)
    return 'nobody has stated its error'
  const { expanded, k, source } = one.uncertainty
  return `U ${expanded.text} (k = ${k}), ${source}`
}
