// As found against as left, and both against the overhauls of before: what was measured of one thing in one place, side by
// side. Readings as combined, not brought to 20 degC: it shows what was read, and no verdict rests on it.
import type { StepOf } from '../definition/procedure.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { list } from '../lib/wording.ts'
import { unitsOf } from '../units/index.ts'
import type { Renewal, WearHistory, WearReading } from '../wear/history.ts'
import { type WearRate, wearRate } from '../wear/rate.ts'
import { asBoreJudge } from './bore-facts.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import { measuringHoldOf, measuringHoldText } from './measuring-hold.ts'
import { applicability } from './next.ts'
import { type Place, placeResult, placesOf } from './places.ts'
import { beyondItsScale } from './plausible.ts'
import { sameBore } from './same-bore.ts'
import type { State } from './state.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }
type Overhaul = NonNullable<Definitions['machine']['overhauls']>[number]

export interface Taken {
  readonly si: number
  readonly step: ReadStep
  readonly place: Place
  /** Expanded uncertainty at k = 2 of the instrument, SI; null when none is stated. */
  readonly u: number | null
}

export interface Change {
  readonly of: string
  readonly found: Taken | null
  readonly left: Taken | null
  /** As left at the last overhaul that has this place. */
  readonly last: { readonly si: number; readonly on: string } | null
  /** Wear per running hour since then; null where the record has nothing to tell it from, a refusal where it cannot be. */
  readonly rate: Result<WearRate> | null
  /** The readings since it was last renewed that the rate is of, this job's own the last; null where there is no rate. */
  readonly history: WearHistory | null
  /** Why what stands here was measured on HOLD, with its sheet: as found, which wear is told from, and as left. Null: it was not. */
  readonly held: { readonly found: string | null; readonly left: string | null }
}

/** One for each place of a step with a stage, in the order of the job. A place that was read as left only stands too. */
export function changesOf(defs: Definitions, state: State): Change[] {
  const staged = defs.steps.filter((one) => one.step.kind === 'read' && one.step.stage !== undefined)
  const byPlace = new Map<string, { found: Taken | null; left: Taken | null }>()
  for (const placed of staged) {
    const read = asKind(placed, 'read')
    if (applicability(defs, state, read) !== 'do') continue
    for (const place of placesOf(read)) {
      const taken = takenAt(defs, state, read, place)
      if (taken === null) continue
      const key = keyOf(read.step.of, place.station.id, place.axis?.id)
      const known = byPlace.get(key) ?? { found: null, left: null }
      byPlace.set(
        key,
        read.step.stage === 'as_found' ? { ...known, found: taken } : { ...known, left: taken },
      )
    }
  }
  const hours = hoursRead(defs, state)
  const held = new Map<string, string | null>()
  const heldAt = (taken: Taken | null): string | null => {
    if (taken === null) return null
    const { id } = taken.step
    if (!held.has(id)) {
      const hold = measuringHoldOf(defs, state, taken.step)
      held.set(id, hold === null ? null : measuringHoldText(hold))
    }
    return held.get(id) ?? null
  }
  return [...byPlace.values()].flatMap(({ found, left }): Change[] => {
    const one = found ?? left
    if (one === null) return []
    const history = (defs.machine.overhauls ?? []).flatMap((overhaul) => recorded(overhaul, one))
    const last = history[history.length - 1]
    const worn = wearOf(isOfBore(defs, one.step) ? ofSameBore(defs, history) : history, one, hours)
    const rate = worn?.ok === true ? wearRate(worn.value) : worn
    return [
      {
        of: one.step.step.of,
        found,
        left,
        last: last === undefined ? null : { si: last.si, on: last.on },
        rate,
        history: worn?.ok === true ? worn.value : null,
        held: { found: heldAt(found), left: heldAt(left) },
      },
    ]
  })
}

function keyOf(of: string, station: string, axis: string | undefined): string {
  return [of.trim().toLowerCase(), station, axis ?? ''].join('\n')
}

function takenAt(defs: Definitions, state: State, step: ReadStep, place: Place): Taken | null {
  const { si, readings } = placeResult(step, place, state)
  // Kept beyond what its instrument shows: on record, and no measurement.
  if (si === null || readings.some((one) => beyondItsScale(defs, one) !== null)) return null
  const errors = readings.map(({ instrument }) => statedU(defs, instrument))
  return {
    si,
    step,
    place,
    u: errors.includes(null) ? null : Math.max(...errors.map((u) => u ?? Number.NaN)),
  }
}

/** Read with a comparator: a finish. */
export function isFinishStep(defs: Definitions, { step }: Taken): boolean {
  const kinds = defs.seats.find((one) => one.id === step.step.with)?.kinds ?? []
  return kinds.length > 0 && kinds.every((kind) => kind === 'roughness_comparator')
}

/** The unit that a place is shown in: the shop's, else that of the instrument. */
export function unitFor(defs: Definitions, { step }: Taken): string {
  const { quantity } = step.step
  if (quantity === 'length') return defs.machine.shop_units.length
  if (quantity === 'temperature') return defs.machine.shop_units.temperature
  const seat = defs.seats.find((one) => one.id === step.step.with)
  const instrument = defs.instruments.instruments.find((one) => seat?.kinds.includes(one.kind))
  return instrument === undefined || instrument.kind === 'gas_meter'
    ? (unitsOf(quantity)[0]?.symbol ?? '')
    : instrument.unit
}

/** Expanded uncertainty at k = 2, SI; null where none is stated. */
export function statedU(defs: Definitions, id: string): number | null {
  const instrument = instrumentById(defs, id)
  if (instrument === undefined || instrument.kind === 'gas_meter' || instrument.uncertainty === undefined)
    return null
  const { expanded, k } = instrument.uncertainty
  return (expanded.si * 2) / k
}

export interface Recorded {
  readonly si: number
  readonly on: string
  readonly hours: number
  readonly u: number | null
  readonly wears: 'larger' | 'smaller' | null
  readonly since: Renewal
  /** Why no wear reaches across it, as a clause; null: nothing was renewed then. */
  readonly why: string | null
}

/** What an overhaul of before left at the place, SI; nothing where it has no such figure. */
export function recorded(overhaul: Overhaul, { step, place }: Pick<Taken, 'step' | 'place'>): Recorded[] {
  const wanted = keyOf(step.step.of, place.station.id, place.axis?.id)
  return overhaul.left.flatMap((one) => {
    const key = keyOf(one.of, one.station ?? place.station.id, one.axis ?? place.axis?.id)
    if (key !== wanted || one.value.kind !== step.step.quantity) return []
    const isRenewed = (overhaul.renewed ?? []).length > 0
    return [
      {
        si: one.value.si,
        on: overhaul.day,
        hours: overhaul.hours.si / 3600,
        u: one.u?.si ?? null,
        wears: one.wears ?? null,
        // What was renewed is told by part, not by place: anything renewed may have been this.
        since: isRenewed ? 'unknown' : 'nothing',
        why: isRenewed
          ? `${list(overhaul.renewed ?? [])} made new or cut ${overhaul.day}, ${overhaul.report}, and it may have been this`
          : null,
      },
    ]
  })
}

/** Running hours read on this job before anything was disturbed; null when they were not. */
export function hoursRead(defs: Definitions, state: State): number | null {
  for (const one of defs.steps) {
    if (one.step.kind !== 'read' || one.step.quantity !== 'time' || one.step.stage !== 'as_found') continue
    const read = asKind(one, 'read')
    if (applicability(defs, state, read) !== 'do') continue
    const [place] = placesOf(read)
    const si = place === undefined ? null : placeResult(read, place, state).si
    if (si !== null) return si / 3600
  }
  return null
}

/** The last that the counter was read at on this job, as found or as left: what went back went back at these. Null: nobody read it. */
export function hoursAtEnd(defs: Definitions, state: State): number | null {
  const read = defs.steps.flatMap((one) => {
    if (one.step.kind !== 'read' || one.step.quantity !== 'time' || one.step.stage === undefined) return []
    const step = asKind(one, 'read')
    const [place] = placesOf(step)
    if (applicability(defs, state, step) !== 'do' || place === undefined) return []
    const { si, readings } = placeResult(step, place, state)
    return si === null ? [] : [{ si, seq: Math.max(...readings.map(({ seq }) => seq)) }]
  })
  const last = read.reduce<(typeof read)[number] | null>(
    (a, b) => (a !== null && a.seq > b.seq ? a : b),
    null,
  )
  return last === null ? null : last.si / 3600
}

/** The last overhaul on record: its day, and the running hours then; null where there is none. */
export function lastOverhaul({
  machine,
}: Definitions): { readonly day: string; readonly hours: number } | null {
  const all = (machine.overhauls ?? []).map(({ day, hours }) => ({ day, hours: Math.round(hours.si / 3600) }))
  return all.reduce<(typeof all)[number] | null>((a, b) => (a !== null && a.hours > b.hours ? a : b), null)
}

/** Whether the step reads the bore: a judge of its form takes it. */
function isOfBore(defs: Definitions, { id }: PlacedStep): boolean {
  return defs.steps.some((one) => {
    const judge = asBoreJudge(one)
    return judge !== null && judge.scope + judge.step.inputs.diameters === id
  })
}

function ofSameBore(defs: Definitions, history: readonly Recorded[]): readonly Recorded[] {
  const days = new Set(sameBore(defs.machine).overhauls.map(({ day }) => day))
  return history.filter(({ on }) => days.has(on))
}

/**
 * What overhauls of before left at the place and wear may be told from, each with its report. Of a bore that was relined, cut or given
 * another surface since, only those after that; the first of them says so.
 */
export function recordedSame(
  defs: Definitions,
  one: Pick<Taken, 'step' | 'place'>,
): (Recorded & { readonly report: string })[] {
  const all = (defs.machine.overhauls ?? []).flatMap((overhaul) =>
    recorded(overhaul, one).map((figure) => ({ ...figure, report: overhaul.report })),
  )
  if (!isOfBore(defs, one.step)) return all
  const { overhauls, cut } = sameBore(defs.machine)
  const days = new Set(overhauls.map(({ day }) => day))
  const same = all.filter(({ on }) => days.has(on))
  if (cut === null || same.length === all.length) return same
  const why = `the bore is another since ${cut.day}, ${cut.report}`
  return same.map((figure, n) => (n === 0 ? { ...figure, since: 'unknown', why: figure.why ?? why } : figure))
}

/** Only sizes wear, and only as found tells of it. The first reading after something was renewed begins anew: nothing before it counts. */
function wearOf(history: readonly Recorded[], now: Taken, hours: number | null): Result<WearHistory> | null {
  const { stage, quantity } = now.step.step
  if (quantity !== 'length' || stage !== 'as_found' || now.u === null) return null
  const since = history.slice(
    Math.max(
      0,
      history.findLastIndex((one) => one.since !== 'nothing'),
    ),
  )
  const [wears] = since.map((one) => one.wears)
  if (wears === undefined || wears === null || since.some((one) => one.wears !== wears || one.u === null))
    return null
  if (hours === null) return refuse('no-hours', 'the running hours were not read on this job.')
  const readings = [
    ...since.map(
      (one, n): WearReading => ({
        hours: one.hours,
        value: one.si,
        U: one.u ?? Number.NaN,
        since: n === 0 ? 'nothing' : one.since,
      }),
    ),
    { hours, value: now.si, U: now.u, since: 'nothing' as const },
  ]
  return ok({ readings, wears })
}
