// The part of the invariants that is about the work itself: what a verdict stands on, instruments found out of calibration,
// inspection points. Read off the entries like the others.
import type { StepOf } from '../../../src/core/definition/procedure.ts'
import type { Definitions, PlacedStep } from '../../../src/core/job/definitions.ts'
import type { Body, Entry } from '../../../src/core/job/entries.ts'
import { next } from '../../../src/core/job/next.ts'
import { readStamp } from '../../../src/core/lib/instant.ts'
import type { Moment } from './invariants.ts'

// --- 5. No verdict but HOLD stands on anything missing, not applicable, corrected, left behind or out of calibration. ---

export function verdictOnNothing({ defs, entries, state }: Moment): string[] {
  const counts = countedNow(entries)
  const missing = notApplicableNow(entries)
  return defs.steps.flatMap((placed) => {
    if (placed.step.kind !== 'judge') return []
    const given = entries.findLast((e) => e.type === 'verdict.given' && e.step === placed.id)
    const stood = given !== undefined && !entries.slice(given.seq + 1).some((e) => voids(e, placed.id))
    const live = state.verdicts[placed.id]
    if (stood !== (live !== undefined && !live.void)) return [`${placed.id} stands in one count only`]
    if (!stood || given.type !== 'verdict.given' || given.verdict.result.verdict === 'HOLD') return []
    const { verdict } = given
    const fallen = verdict.readings.filter((seq) => !counts.has(seq))
    const needed = neededBy(placed.step, defs.machine)
    return [
      ...fallen.map(
        (seq) => `${verdict.result.verdict} of ${placed.id} stands on reading ${seq}, which does not`,
      ),
      ...needed.flatMap((short) => {
        const read = defs.steps.find((s) => s.id === placed.scope + short)
        if (read?.step.kind !== 'read') return [`${short} is no reading`]
        const wanted = read.step.stations.length * (read.step.axes?.length ?? 1)
        const places = new Set(
          [...counts.values()].filter((r) => r.step === read.id && !missing.has(r.place)).map((r) => r.place),
        )
        return places.size === wanted
          ? []
          : [`${verdict.result.verdict} with ${places.size} of ${wanted} places of ${read.id}`]
      }),
    ]
  })
}

/** Read steps that a judge names outright; told from the step alone. */
function neededBy(step: StepOf<'judge'>, machine: Definitions['machine']): string[] {
  if (step.compute === 'figures') {
    const at = step.at_20
    return at === undefined ? [] : [...at.readings, at.set_before, at.set_after, ...at.part, ...at.instrument]
  }
  if (step.compute === 'pocket_setting') {
    const { suction, discharge, suction_temperatures: gas, driver_load } = step.inputs
    // As many gas temperatures as the compressor has stages.
    return [suction, discharge, ...gas.slice(0, machine.whole_compressor?.stages_in_all ?? 0), driver_load]
  }
  const { diameters, set_before, set_after, part_temperature, instrument_temperature } = step.inputs
  return [diameters, set_before, set_after, ...part_temperature, ...instrument_temperature]
}

function voids(e: Entry, step: string): boolean {
  return 'voids' in e && e.voids.includes(step)
}

export function doubtedInstruments(entries: readonly Entry[]): Set<string> {
  return new Set(entries.flatMap((e) => (e.type === 'instrument.doubted' ? [e.instrument] : [])))
}

interface Counted {
  readonly seq: number
  readonly step: string
  readonly place: string
  readonly instrument: string
}

/** Readings that count, by seq, told from the entries alone. */
export function countedNow(entries: readonly Entry[]): Map<number, Counted> {
  const counted = new Map<number, Counted>()
  let doubt: Counted | null = null
  let late: Counted | null = null
  const drop = (which: (r: Counted) => boolean) => {
    for (const [seq, r] of counted) if (which(r)) counted.delete(seq)
    if (doubt !== null && which(doubt)) doubt = null
    if (late !== null && which(late)) late = null
  }
  for (const e of entries) {
    if (e.type === 'reading.taken' || e.type === 'reading.corrected') counted.set(e.seq, e)
    if (e.type === 'reading.corrected') counted.delete(e.of)
    if (e.type === 'reading.doubted') doubt = e
    if (e.type === 'reading.late') late = e
    if (e.type === 'doubt.settled') {
      if (e.choice === 'kept' && doubt !== null) counted.set(doubt.seq, doubt)
      doubt = null
    }
    if (e.type === 'reading.not-applicable') doubt = null
    if (e.type === 'late.settled') {
      if (e.kept && late !== null) counted.set(late.seq, late)
      late = null
    }
    if (e.type === 'instrument.doubted')
      drop((r) => r.instrument === e.instrument || e.temperatures?.includes(r.seq) === true)
    if (e.type === 'branch.left') drop((r) => e.voids.includes(r.step))
    if (e.type === 'record.taken-in') [doubt, late] = [null, null]
  }
  return counted
}

function notApplicableNow(entries: readonly Entry[]): Set<string> {
  const places = new Map<string, string>()
  for (const e of entries) {
    if (e.type === 'reading.not-applicable') places.set(e.place, e.step)
    if (e.type === 'not-applicable.taken-back') places.delete(e.place)
    if (e.type === 'branch.left')
      for (const [place, step] of places) if (e.voids.includes(step)) places.delete(place)
  }
  return new Set(places.keys())
}

// --- 6. An instrument found out of calibration is not used again, and the state counts what its entries count. --------

export function doubtedInstrumentUsed({ entries, state }: Moment): string[] {
  const found: string[] = []
  const bad = new Set<string>()
  for (const e of entries) {
    if (e.type !== 'instrument.doubted' && 'instrument' in e && bad.has(e.instrument ?? ''))
      found.push(`${e.instrument} is used after it was doubted, entry ${e.seq}`)
    if (e.type === 'instrument.doubted') bad.add(e.instrument)
  }
  const counts = countedNow(entries)
  const live = Object.values(state.readings)
    .flat()
    .filter((r) => r.correctedBy === null && r.voidBy === null)
  if (live.length !== counts.size || !live.every((r) => counts.has(r.seq)))
    found.push(`${live.length} readings count, and ${counts.size} should`)
  return found
}

// --- 7. Nothing goes on past an inspection point, and nobody signs for their own work. --------------------------------

/** Entries that change what a point of their step was signed for. */
const CHANGES: readonly Body['type'][] = [
  ...(['step.done', 'step.confirmed', 'step.reopened', 'finding.observed', 'finding.corrected'] as const),
  ...(['reading.taken', 'reading.corrected', 'doubt.settled', 'not-applicable.taken-back'] as const),
  ...(['verdict.given', 'disposition.set'] as const),
]

export function pastAPoint({ defs, entries, state }: Moment): string[] {
  const prompt = next(defs, state)
  const at = 'step' in prompt && prompt.kind !== 'held' ? prompt.step.number : Number.NEGATIVE_INFINITY
  // A job that ends under a STOP which is never released goes past nothing: it ends there.
  const stands = entries.some((e) => e.type === 'stop.stands')
  const goesOn =
    prompt.kind === 'finish' || prompt.kind === 'open-things' || (prompt.kind === 'closed' && !stands)
  const closedLate = entries.findIndex((e) => e.type === 'job.closed')
  const upTo = closedLate < 0 ? entries : entries.slice(0, closedLate)
  return defs.steps.flatMap((placed) => {
    const { step } = placed
    if (step.kind === 'gate' || step.kind === 'part' || step.point === undefined) return []
    const of = (e: Entry) => 'step' in e && e.step === placed.id
    // What a lead decides about a finding changes nothing of what was found.
    const changes = (e: Entry) =>
      of(e) && CHANGES.includes(e.type) && (e.type !== 'disposition.set' || step.kind === 'decide')
    const changed = upTo.findLastIndex((e) => changes(e) || voids(e, placed.id))
    if (changed < 0) return []
    const passed = goesOn || (step.point.kind !== 'review' && at > placed.number)
    // Nothing was done in it, or its branch was left: there is nothing to inspect.
    if (!passed || voids(upTo[changed] as Entry, placed.id)) return passes(defs, entries, placed)
    const given = upTo.findLastIndex(
      (e) => of(e) && (e.type === 'point.signed' || e.type === 'point.not-attended'),
    )
    // How long was waited for an inspector is told by a clock that was right at both ends.
    const isWaited = upTo[given]?.type === 'point.not-attended'
    const moved = isWaited && upTo.slice(given).some((e) => e.type === 'clock.moved')
    return given > changed && !moved
      ? passes(defs, entries, placed)
      : [`${placed.id} is passed, and its point is not signed`]
  })
}

function passes(defs: Definitions, entries: readonly Entry[], placed: PlacedStep): string[] {
  const { step } = placed
  const point = step.kind === 'gate' || step.kind === 'part' ? undefined : step.point
  return entries.flatMap((e, n) => {
    if (e.type === 'point.signed' && e.step === placed.id) {
      const role = defs.crew.crew.find((p) => p.id === e.person)?.role
      const did = entries
        .slice(0, n)
        // Whoever only went back to a step that others did has done none of it.
        .filter((d) => d.type !== 'step.reopened')
        .some((d) => 'step' in d && d.step === e.step && CHANGES.includes(d.type) && d.by === e.person)
      return role === undefined ||
        role === 'trainee' ||
        !point?.roles.some((r) => r === role) ||
        did ||
        e.by === e.person
        ? [`${e.person} signed the point of ${e.step}, entry ${n}`]
        : []
    }
    if (e.type !== 'point.not-attended' || e.step !== placed.id) return []
    const notice = entries[e.notice]
    const moved = entries.slice(e.notice, n).some((d) => d.type === 'clock.moved')
    const ran = (readStamp(e.at)?.ms ?? Number.NaN) - (readStamp(notice?.at ?? '')?.ms ?? Number.NaN)
    return notice?.type === 'point.notice-given' &&
      !moved &&
      point?.kind === 'witness' &&
      ran >= point.notice.si * 1000
      ? []
      : [`${e.step} went on unattended, entry ${n}`]
  })
}
