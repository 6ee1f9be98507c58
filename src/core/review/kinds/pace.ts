// A part that wore much faster, or much slower, since the last overhaul than it had before: asked, as a figure that was misread,
// hours that were, or a change in how the machine runs look alike from here.
import { changesOf, type Taken } from '../../job/changes.ts'
import { placeResult } from '../../job/places.ts'
import { wearFigures } from '../../talk/changes.ts'
import type { WearHistory, WearReading } from '../../wear/history.ts'
import { wornSide } from '../../wear/history.ts'
import type { Found } from '../exception.ts'
import type { Look } from '../look.ts'
import { A_QUESTION, NO_SOURCE } from './improbable.ts'

/** So many times as fast, or as slow, and further apart than measuring error tells. Common practice, no source. */
const TIMES = 2

export interface Pace {
  /** Metres per hour, wear counted positive. */
  readonly last: number
  readonly before: number
}

/** Null where there are not two intervals, or they are alike as far as they can be told. */
export function paceOf(history: WearHistory): Pace | null {
  const { readings } = history
  const [first, turn, now] = [readings[0], readings.at(-2), readings.at(-1)]
  if (readings.length < 3 || first === undefined || turn === undefined || now === undefined) return null
  const before = rate(history, first, turn)
  const last = rate(history, turn, now)
  // The reading between is in both with opposite signs, and its error so counts in full for each (JCGM 100:2008 5.1.2).
  const [h1, h2] = [turn.hours - first.hours, now.hours - turn.hours]
  const U = Math.hypot(first.U / h1, turn.U * (1 / h1 + 1 / h2), now.U / h2)
  const isApart = Math.abs(last - before) > U
  const isFar = last > TIMES * before || last < before / TIMES
  return isApart && isFar ? { last, before } : null
}

function rate(history: WearHistory, a: WearReading, b: WearReading): number {
  return (wornSide(history, b.value) - wornSide(history, a.value)) / (b.hours - a.hours)
}

export function unlikeBefore(look: Look): Found[] {
  const { defs, state } = look
  const things = new Map<string, { places: number; said: string[]; seqs: number[] }>()
  const hours = seqsOf(look, hoursStep(look))
  for (const { of, history, rate: worn, found } of changesOf(defs, state)) {
    const pace = history === null || worn?.ok !== true || found === null ? null : paceOf(history)
    if (pace === null || found === null || worn?.ok !== true) continue
    const per1000 = (perHour: number) => wearFigures(defs, found, { ...worn.value, perHour }).per1000
    const { station, axis } = found.place
    const where = [station.label, ...(axis === null ? [] : [axis.label])].join(', ')
    const known = things.get(of) ?? { places: 0, said: [], seqs: [] }
    known.said.push(
      `${where}: ${per1000(pace.last)} in 1000 h since the last overhaul, ${per1000(pace.before)} before.`,
    )
    known.seqs.push(...seqsOf(look, found))
    things.set(of, { ...known, places: known.places + 1 })
  }
  return [...things].map(([of, { places, said, seqs }]) => ({
    kind: 'improbable',
    open: false,
    what: `${of}: wear since the last overhaul unlike that before, at ${places === 1 ? 'one place' : `${places} places`}`,
    sentences: [
      ...said,
      'Were the figures and the hours read right, and does it run otherwise than it did?',
      `The test: ${TIMES} times as fast or as slow, and further apart than the measuring errors. ${NO_SOURCE}`,
      A_QUESTION,
    ],
    entries: [...hours, ...seqs],
  }))
}

/** What the hours of this job were read by, as wear is reckoned. */
function hoursStep({ defs, state }: Look): Taken | null {
  return changesOf(defs, state).find(({ found }) => found?.step.step.quantity === 'time')?.found ?? null
}

function seqsOf({ state }: Look, taken: Taken | null): number[] {
  return taken === null ? [] : placeResult(taken.step, taken.place, state).readings.map(({ seq }) => seq)
}
