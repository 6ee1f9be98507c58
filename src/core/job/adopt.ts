// What a closed job leaves for the next one: the figures of the parts that went back, which a lead adopts as the baseline that
// wear is measured from at the next overhaul, and words a lead adds after the close. Neither changes what the job came to.
import { ok, type Result, refuse } from '../lib/result.ts'
import { COVERAGE_K } from '../metrology/uncertainty.ts'
import { formatNumber, valueIn } from '../units/index.ts'
import { coursesOf, readBeforeWork } from './as-left.ts'
import { changesOf, isFinishStep, type Taken, unitFor } from './changes.ts'
import { asKind, type Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { Input } from './input.ts'
import { judgesOf } from './measuring-hold.ts'
import { applicability } from './next.ts'
import { decidedAbout } from './nonconformance.ts'
import { placesOf } from './places.ts'
import { words } from './refusals.ts'
import { madeText, type Renewed, renewedByLog, renewedWith } from './renewed-parts.ts'
import { signer } from './signature.ts'
import { type State, standing, standingVerdict, stands } from './state.ts'
import { partsOf } from './trade-words.ts'
import { refersTo } from './values.ts'
import { boreRecord } from './verdict-record.ts'

/** Parts that an overhaul may make new or cut, as a machine record names them. */
export const RENEWED = ['bore', 'liner', 'rings', 'riders', 'rod', 'piston'] as const
export type RenewedPart = (typeof RENEWED)[number]

/** A figure for the machine record, written as that record writes it. */
export interface LeftFigure {
  readonly of: string
  readonly station: string
  readonly axis?: string
  /** With its unit: `9.5119 in`. */
  readonly value: string
  /** Measuring error U at k = 2, with its unit: of a bore that of its verdict, of all else that of the instrument. */
  readonly u?: string
  readonly wears?: 'larger' | 'smaller'
  /** Read as left; or as found, of a part that a lead let go back as it was. */
  readonly from: 'left' | 'found'
  /** Where its verdict was HOLD, and not for how it was measured: `HOLD, concession by KH`. Left out: no verdict on it was HOLD. */
  readonly judged?: string
}

/** What was measured and is no figure of the parts that went back, and why. */
export interface NotLeft {
  readonly of: string
  readonly why: string
  /** It was measured on HOLD, or its instrument was found out: measured anew it may be adopted yet. */
  readonly measuring?: true
}

export interface LeftFigures {
  readonly figures: readonly LeftFigure[]
  readonly not: readonly NotLeft[]
}

/** Quantities that a machine record keeps as left. */
const KEPT: readonly string[] = ['length', 'mass', 'torque', 'angle']

/**
 * Every figure that stands of what went back, in the order of the job. As left where it was read so. As found only where a
 * verdict looked at it, nobody measured it again and the part was neither worked on nor renewed: any other may be a part that
 * lies in the scrap.
 */
export function leftFigures(defs: Definitions, state: State): LeftFigures {
  const figures: LeftFigure[] = []
  const not = new Map<string, NotLeft>()
  const renewed = renewedByLog(defs, state)
  const before = readBeforeWork(defs, state)
  for (const { of, found, left, held } of changesOf(defs, state)) {
    const one = left ?? found
    if (one === null || !KEPT.includes(one.step.step.quantity)) continue
    const onHold = left === null ? held.found : held.left
    const why =
      left === null
        ? (whyNotBack(defs, state, one) ?? whyRenewed(renewed, of))
        : before.has(left.step.id)
          ? 'it was worked on or renewed after that, and not read again'
          : null
    if (why !== null) not.set(`${of} ${why}`, { of, why })
    else if (onHold !== null)
      not.set(`${of} ${onHold}`, { of, why: `it was measured on HOLD, ${onHold}`, measuring: true })
    else {
      const figure = figureOf(defs, at20(defs, state, one), left === null ? 'found' : 'left')
      const judged = heldBack(defs, state, one)
      figures.push(judged === null ? figure : { ...figure, judged })
    }
  }
  return { figures, not: [...not.values(), ...fellWithGauge(defs, state)] }
}

/** What is left to do about a size that was measured on HOLD. */
export const MEASURE_ANEW =
  'What was measured on HOLD is no baseline: it is measured anew, on a job of its own, or the record stays as it is.'

/** What a HOLD on a size says that was measured well, and what a lead decided about it; null where none was HOLD. */
function heldBack(defs: Definitions, state: State, { step }: Taken): string | null {
  const judge = judgesOf(defs, state, step).find(
    ({ id }) => standingVerdict(state, id)?.verdict.result.verdict === 'HOLD',
  )
  if (judge === undefined) return null
  const decided = decidedAbout(state, judge.id)
  return decided === null ? 'HOLD, not decided' : `HOLD, ${decided.choice} by ${decided.person}`
}

/** Sizes that stand no more because their instrument was found out of calibration, and that were not read again with another. */
function fellWithGauge(defs: Definitions, state: State): NotLeft[] {
  const out = new Map(Object.entries(state.doubted).map(([id, seq]) => [seq, id]))
  const all = defs.steps.flatMap((one): NotLeft[] => {
    if (one.step.kind !== 'read' || one.step.stage === undefined) return []
    if (!KEPT.includes(one.step.quantity) || applicability(defs, state, one) === 'skip') return []
    const { of } = one.step
    return placesOf(asKind(one, 'read')).flatMap(({ key }) => {
      const fell = state.readings[key]?.findLast(({ voidBy }) => voidBy !== null && out.has(voidBy))
      if (fell === undefined || standing(state, key).length > 0) return []
      const why = `${fell.instrument}, which read it, was found out of calibration (entry ${fell.voidBy}): ${one.number} ${one.step.title}`
      return [{ of, why, measuring: true }]
    })
  })
  return [...new Map(all.map((one) => [`${one.of} ${one.why}`, one])).values()]
}

/** Read before the part it is of was made new or cut in this job; null where the log has no such decision. */
function whyRenewed(renewed: readonly Renewed[], of: string): string | null {
  const by = renewedWith(renewed, of)
  return by === null
    ? null
    : `it was read before ${madeText(by)}: ${by.about}, ${by.choice}, decided by ${by.person} (entry ${by.seq})`
}

/** Why what was found is not what went back, or null. */
function whyNotBack(defs: Definitions, state: State, { step }: Taken): string | null {
  const courses = coursesOf(defs, state).filter(({ judge }) => refersTo(defs, judge).includes(step.id))
  if (courses.length === 0) return 'no verdict says that it went back as it was found'
  if (courses.some(({ left }) => left === null)) return 'it was to be worked on or renewed'
  if (courses.some(({ again }) => again !== null)) return 'it was measured again'
  return null
}

/** A bore is on record at 20 degC with the error of its place, as its verdict had both; without a verdict, and all else, as it was read. */
function at20(defs: Definitions, state: State, taken: Taken): Taken {
  const { step, place } = taken
  for (const { id, step: judge, scope } of defs.steps) {
    if (judge.kind !== 'judge' || judge.compute !== 'bore_form' || scope + judge.inputs.diameters !== step.id)
      continue
    const verdict = boreRecord(standingVerdict(state, id)?.verdict)
    const axis = place.axis?.id ?? 'only'
    const found = verdict?.inputs.readings.find(
      (one) => one.station === place.station.id && one.axis === axis,
    )
    if (found === undefined) continue
    const { readingU, k = COVERAGE_K } = verdict?.inputs ?? {}
    const u = found.expandedU ?? readingU ?? null
    return { ...taken, si: found.valueM, u: u === null ? null : (u * COVERAGE_K) / k }
  }
  return taken
}

/** A place more than is shown anywhere, as what two repeats come to may lie between two figures. */
const DECIMALS: Readonly<Record<string, number>> = { in: 5, mm: 4, um: 2 }

function figureOf(defs: Definitions, taken: Taken, from: LeftFigure['from']): LeftFigure {
  const { step, place, si, u } = taken
  const { of, quantity } = step.step
  const unit = isFinishStep(defs, taken) ? 'um' : unitFor(defs, taken)
  const written = (figure: number) =>
    `${formatNumber(valueIn({ kind: quantity, si: figure }, unit), DECIMALS[unit] ?? 1)} ${unit}`
  const wears = wearsBefore(defs, of)
  return {
    of,
    station: place.station.id,
    ...(place.axis === null ? {} : { axis: place.axis.id }),
    value: written(si),
    ...(u === null || quantity !== 'length' ? {} : { u: written(u) }),
    ...(wears === null || quantity !== 'length' ? {} : { wears }),
    from,
  }
}

/** Which way wear takes it, as earlier overhauls on record say; never guessed. */
function wearsBefore({ machine }: Definitions, of: string): 'larger' | 'smaller' | null {
  const all = (machine.overhauls ?? []).flatMap(({ left }) => left.filter((one) => one.of === of))
  return all.findLast(({ wears }) => wears !== undefined)?.wears ?? null
}

/** Why there is nothing to adopt, whoever signs. */
export function nothingLeft({ not }: LeftFigures): string {
  const none = 'No figure of this job is left to adopt.'
  return not.some(({ measuring }) => measuring === true) ? `${none} ${MEASURE_ANEW}` : none
}

type Of<K extends Input['do']> = Extract<Input, { do: K }>

/** Why these figures may not be adopted, whoever signs, or null. */
export function barsAdopting(state: State): Result<null> {
  if (state.closed === null)
    return refuse('open', 'This job is still open: its figures are adopted once it is closed.')
  if (state.practice !== null)
    return refuse('practice', 'These figures are of a hidden machine: no machine has them as its baseline.')
  if (state.closed === 'STOP')
    return refuse('stopped', 'This job ended in STOP: nothing of it is a baseline.')
  if (state.adopted !== null && !state.adopted.void)
    return refuse(
      'adopted',
      `Its figures were adopted by ${state.adopted.person} on ${state.adopted.at.slice(0, 10)}.`,
    )
  return ok(null)
}

/** A part cannot both have gone back as it was found and have been made new or cut: wear would be counted from a worn size. */
function wornThoughRenewed(figures: readonly LeftFigure[], renewed: readonly RenewedPart[]): string | null {
  for (const { of, from } of figures) {
    if (from !== 'found') continue
    const part = partsOf(of).find((one) => renewed.includes(one))
    if (part !== undefined)
      return `${of} is as found, and the ${part} is said to be made new or cut: one of the two is wrong. Leave the figure out, or the part.`
  }
  return null
}

/** What the log's own decisions had made new or cut cannot be left out: wear would be counted across it. Null: nothing is. */
export function notSaidRenewed(defs: Definitions, state: State, said: readonly RenewedPart[]): string | null {
  const by = renewedByLog(defs, state).find(({ parts }) => !parts.some((part) => said.includes(part)))
  return by === undefined
    ? null
    : `By entry ${by.seq} ${by.person} decided ${by.choice} on ${by.about}, so ${madeText(by)}: name it, or nothing is adopted.`
}

/** Refuses: a job that is open, stopped or adopted; nobody of the crew, no lead, or the lead whose own readings they are. */
export function admitAdopt(defs: Definitions, state: State, input: Of<'adopt'>): Result<readonly Body[]> {
  const barred = barsAdopting(state)
  if (!barred.ok) return barred
  const left = leftFigures(defs, state)
  const { figures } = left
  const kept = figures.filter((_, n) => !input.without.includes(n + 1))
  if (kept.length === 0) return refuse('nothing', nothingLeft(left))
  if (!Number.isFinite(input.hours) || input.hours < 0)
    return refuse('no-hours', 'Running hours are a figure of zero or more.')
  const before = Math.max(0, ...(defs.machine.overhauls ?? []).map(({ hours }) => hours.si / 3600))
  if (input.hours < before)
    return refuse(
      'hours-back',
      `The last overhaul on record was at ${before} running hours, and ${input.hours} are fewer: was the meter changed?`,
    )
  const silent = notSaidRenewed(defs, state, input.renewed)
  if (silent !== null) return refuse('not-renewed', silent)
  const worn = wornThoughRenewed(kept, input.renewed)
  if (worn !== null) return refuse('contradiction', worn)
  const who = byLead(defs, state, input, 'the next baseline is adopted by a lead')
  if (!who.ok) return who
  const own = Object.values(state.readings)
    .flat()
    .some((one) => stands(one) && one.by === who.value.person)
  if (own)
    return refuse(
      'own-work',
      `${who.value.person} took readings on this job, so another lead adopts its figures.`,
    )
  return ok([
    {
      type: 'left.adopted',
      hours: input.hours,
      renewed: RENEWED.filter((part) => input.renewed.includes(part)),
      figures: kept,
      without: figures.filter((one) => !kept.includes(one)),
      file: input.file,
      ...who.value,
    },
  ])
}

/** Words of a lead on a job that is closed. They are read with it, and take nothing back. */
export function admitRemark(defs: Definitions, state: State, input: Of<'remark'>): Result<readonly Body[]> {
  const who = byLead(defs, state, input, 'a remark on a closed job is a lead’s')
  if (!who.ok) return who
  const text = words(input.text, 'The remark')
  return text.ok ? ok([{ type: 'remark.made', text: text.value, ...who.value }]) : text
}

function byLead(
  defs: Definitions,
  state: State,
  input: Of<'adopt' | 'remark'>,
  rule: string,
): Result<{ readonly person: string; readonly signed: 'pin' | 'initials' }> {
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  return person.role === 'lead'
    ? ok({ person: person.id, signed })
    : refuse('not-lead', `${person.id} is a ${person.role}, and ${rule}.`)
}
