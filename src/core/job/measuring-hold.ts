// Whether the measuring of a size was on HOLD: a check on the standard out or not made, temperatures not known, repeats that do not
// agree, or no verdict left that says otherwise. Such a size is on record and tells nothing of the part. A HOLD that is only about a limit
// is none: what was measured is good, and could not be held against it.
import { measuringHolds } from '../bore/bore-judge.ts'
import { isSetOnStandard } from '../definition/instruments.ts'
import { judgeReads } from '../definition/judge-reads.ts'
import type { StepOf } from '../definition/procedure.ts'
import { at20Of } from '../definition/step-judge.ts'
import { assertNever } from '../lib/result.ts'
import { formatNumber, valueIn } from '../units/index.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep } from './definitions.ts'
import { applicability } from './next.ts'
import { isSetCheck, offStandard } from './off-standard.ts'
import { placeResult, placesOf } from './places.ts'
import { gaugeById } from './seats.ts'
import { setCheckOf } from './set-check.ts'
import { type State, standingVerdict } from './state.ts'
import { figureReads } from './values.ts'
import type { FigureVerdictRecord } from './verdict-record.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

export interface MeasuringHold {
  /** The sheet that says so: of its verdict, or, where none looks at it, of the readings themselves. */
  readonly sheet: PlacedStep
  /** Entry of the verdict; null where none stands. */
  readonly seq: number | null
  /** Each in a clause or a sentence. */
  readonly why: readonly string[]
}

/** Null where every verdict that the size went into trusts how it was measured. One that fell and was not given anew trusts nothing. */
export function measuringHoldOf(defs: Definitions, state: State, read: ReadStep): MeasuringHold | null {
  const judges = judgesOf(defs, state, read)
  for (const judge of judges) {
    const given = standingVerdict(state, judge.id)
    if (given === null) return { sheet: judge, seq: null, why: ['no verdict on it stands'] }
    const why = heldIn(defs, state, judge, given.verdict)
    if (why.length > 0)
      return { sheet: judge, seq: given.seq, why: [...why, ...checksOut(defs, state, checksOf(judge))] }
  }
  // A judge that takes it has held its checks against the register already.
  if (judges.length > 0) return null
  const why = unjudged(defs, state, read)
  return why.length === 0 ? null : { sheet: read, seq: null, why }
}

/** Judge steps that the size itself goes into and that are not passed over. */
export function judgesOf(defs: Definitions, state: State, { id }: PlacedStep): PlacedStep[] {
  return defs.steps.filter(
    (one) => one.step.kind === 'judge' && applicability(defs, state, one) !== 'skip' && takes(defs, one, id),
  )
}

/** `18 Bore judged (entry 87): The set-check before the readings is out by more than is allowed; ...`. */
export function measuringHoldText({ sheet, seq, why }: MeasuringHold): string {
  const entry = seq === null ? '' : ` (entry ${seq})`
  return `${sheet.number} ${sheet.step.title}${entry}: ${why.map((one) => one.replace(/\.$/, '')).join('; ')}`
}

/** Whether the size itself goes into the verdict: what only tells whether it is asked does not. */
function takes(defs: Definitions, judge: PlacedStep, id: string): boolean {
  const { needed, optional } = judgeReads(asKind(judge, 'judge').step)
  return (
    [...needed, ...optional].some((one) => judge.scope + one === id) || figureReads(defs, judge).includes(id)
  )
}

type Verdict = NonNullable<ReturnType<typeof standingVerdict>>['verdict']

function heldIn(defs: Definitions, state: State, judge: PlacedStep, verdict: Verdict): readonly string[] {
  switch (verdict.compute) {
    case 'bore_form':
      return measuringHolds(verdict.inputs, verdict.result.holds)
    case 'figures':
      return [...verdict.inputs.holds, ...unsettled(defs, state, judge), ...belowZero(verdict)]
    case 'pocket_setting':
      // It judges a setting by the whole machine, and says of no size how it was measured.
      return []
    default:
      return assertNever(verdict)
  }
}

/** Places that figures rest on and that came to none, as a judge of the bore has them by itself. */
function unsettled(defs: Definitions, state: State, judge: PlacedStep): string[] {
  return figureReads(defs, judge).flatMap((id) => {
    const placed = defs.steps.find((one) => one.id === id)
    if (placed?.step.kind !== 'read' || applicability(defs, state, placed) !== 'do') return []
    const read = asKind(placed, 'read')
    const open = placesOf(read).filter((place) => placeResult(read, place, state).si === null)
    return open.length === 0
      ? []
      : [`${placed.number} ${placed.step.title} has a place without a settled reading`]
  })
}

/** Nothing wears to less than none: it is held as a bore is that reads smaller than it was made. */
function belowZero({ inputs, result }: FigureVerdictRecord): string[] {
  return inputs.figures.flatMap(({ characteristic, value }) => {
    const judged = result.judged.find((one) => one.characteristic === characteristic)
    if (value === null || value >= 0 || judged?.judgement.verdict !== 'HOLD') return []
    return [
      `${characteristic.replaceAll('-', ' ')} comes to less than nothing, so something was measured wrong`,
    ]
  })
}

/** Steps that check the gauge on its standard for a judge. */
function checksOf(judge: PlacedStep): readonly string[] {
  const { step } = asKind(judge, 'judge')
  if (step.compute === 'bore_form')
    return [step.inputs.set_before, step.inputs.set_after].map((id) => judge.scope + id)
  if (step.compute === 'pocket_setting') return []
  return at20Of(step).flatMap((at) => [judge.scope + at.set_before, judge.scope + at.set_after])
}

/** Of each check that was out: by how much, and who kept it with which reason. */
function checksOut(defs: Definitions, state: State, ids: readonly string[]): string[] {
  return [...new Set(ids)].flatMap((id) => {
    const placed = defs.steps.find((one) => one.id === id)
    if (placed === undefined || !isSetCheck(placed)) return []
    const read = asKind(placed, 'read')
    return placesOf(read).flatMap((place) => {
      const { si, readings } = placeResult(read, place, state)
      const last = readings.at(-1)
      if (si === null || last === undefined) return []
      const out = offStandard(defs, placed, { instrument: last.instrument, si })
      if (out === null) return []
      const kept = readings.findLast(({ keptBecause }) => keptBecause !== null)
      const size = formatNumber(valueIn({ kind: 'length', si: out.off }, last.unit), DECIMALS[last.unit] ?? 3)
      return [
        `${placed.number} ${placed.step.title}: ${size} ${last.unit} off, ${out.within} allowed${
          kept === undefined ? '' : `, kept by ${kept.by ?? 'nobody known'}: ${kept.keptBecause}`
        } (entry ${(kept ?? last).seq})`,
      ]
    })
  })
}

const DECIMALS: Readonly<Record<string, number>> = { in: 4, mm: 3 }

/** No verdict looks at it: a gauge that is set on a standard still has to have been read on it, before and after, in the same part. */
function unjudged(defs: Definitions, state: State, read: ReadStep): string[] {
  const used = new Set(
    placesOf(read).flatMap((place) => placeResult(read, place, state).readings.map((one) => one.instrument)),
  )
  return [...used].flatMap((id) => {
    const known = instrumentById(defs, id)
    if (known === undefined) return [`${id} is not in the register`]
    if (!isSetOnStandard(known)) return []
    const near = defs.steps.filter(
      (one) =>
        one.scope === read.scope &&
        isSetCheck(one) &&
        asKind(one, 'read').step.with === read.step.with &&
        applicability(defs, state, one) !== 'skip',
    )
    const before = near.findLast(({ number }) => number < read.number)
    const after = near.find(({ number }) => number > read.number)
    return [
      ...faultOf(defs, state, before, id, 'before'),
      ...faultOf(defs, state, after, id, 'after'),
      ...checksOut(
        defs,
        state,
        [before, after].flatMap((one) => one?.id ?? []),
      ),
    ]
  })
}

function faultOf(
  defs: Definitions,
  state: State,
  placed: PlacedStep | undefined,
  instrument: string,
  when: 'before' | 'after',
): string[] {
  const check =
    placed === undefined ? null : setCheckOf(state, asKind(placed, 'read'), gaugeById(defs, instrument))
  if (check === null) return [`there is no set-check of ${instrument} ${when} the readings`]
  return Math.abs(check.deviationM) <= check.allowedM + NOISE_M
    ? []
    : [`the set-check ${when} the readings is out by more than is allowed`]
}

/** Floating noise, metres. */
const NOISE_M = 1e-9
