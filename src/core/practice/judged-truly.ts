// A verdict worked out again by the judge of every job, on readings that have no error: what the part is to be judged as in truth.
import { judgeReads } from '../definition/judge-reads.ts'
import type { StepOf } from '../definition/procedure.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from '../job/definitions.ts'
import { judgeStep } from '../job/judge-step.ts'
import { applicability } from '../job/next.ts'
import { type Place, placesOf } from '../job/places.ts'
import type { PracticeState } from '../job/practice.ts'
import { type Reading, type State, standing } from '../job/state.ts'
import { figureReads } from '../job/values.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { hiddenMachine, truthOf } from './ask.ts'

type ReadStep = PlacedStep & { readonly step: StepOf<'read'> }

/** The verdict of a judge step with each reading as a faultless instrument would show it, the check on a standard as it is. */
export function judgedTruly(
  defs: Definitions,
  state: State,
  practice: PracticeState,
  step: string,
  version: string,
): VerdictRecord {
  const judge = asKind(stepById(defs, step), 'judge')
  const { needed, optional, observed } = judgeReads(judge.step)
  const named = new Set([...[...needed, ...optional].map((id) => judge.scope + id), ...readsOf(defs, judge)])
  const reads = defs.steps.filter(
    (one) => named.has(one.id) && one.step.kind === 'read' && applicability(defs, state, one) === 'do',
  )
  const truths = reads.flatMap((one) => {
    const read = asKind(one, 'read')
    return placesOf(read).flatMap((place) => {
      const readings = truthsAt(defs, state, practice, read, place)
      return readings.length === 0 ? [] : [[place.key, readings] as const]
    })
  })
  // What is seen on the way counts as it is, too: a verdict that rests on a finding is not to rest on a wrong one.
  const seen = observed.flatMap((id) => {
    const placed = stepById(defs, judge.scope + id)
    const truth = state.done[placed.id] === undefined ? null : truthOf(defs, practice, placed, {}, Number.NaN)
    return truth?.kind === 'eye' && truth.conditions[0] !== undefined
      ? [[placed.id, truth.conditions[0]] as const]
      : []
  })
  const inTruth: State = {
    ...state,
    done: { ...state.done, ...Object.fromEntries(seen) },
    readings: { ...state.readings, ...Object.fromEntries(truths) },
    notApplicable: {},
  }
  return judgeStep(defs, inTruth, judge, version)
}

function readsOf(
  defs: Definitions,
  judge: PlacedStep & { readonly step: StepOf<'judge'> },
): readonly string[] {
  return judge.step.compute === 'figures' ? figureReads(defs, judge) : []
}

/** As many readings as the step asks for, all the same. */
function truthsAt(
  defs: Definitions,
  state: State,
  practice: PracticeState,
  read: ReadStep,
  place: Place,
): Reading[] {
  const last = standing(state, place.key).at(-1) ?? state.readings[place.key]?.at(-1)
  const instrument = last?.instrument ?? state.seats[read.step.with]
  if (instrument === undefined) return []
  const truth = truthOf(defs, practice, read, { place: place.key, instrument }, Number.NaN)
  if (truth?.kind !== 'figure') return []
  const si = truth.si + (isStandard(read) ? offOf(defs, practice, instrument, truth.isKnocked) : 0)
  return Array.from({ length: read.step.repeats.at_least }, () => ({
    step: read.id,
    place: place.key,
    instrument,
    typed: '',
    value: last?.value ?? si,
    unit: last?.unit ?? '',
    si,
    seq: last?.seq ?? state.seq,
    at: last?.at ?? state.lastAt,
    by: last?.by ?? null,
    keptBecause: null,
    correctedBy: null,
    corrects: null,
    voidBy: null,
  }))
}

function isStandard({ step }: ReadStep): boolean {
  return step.plausible.from === 'standard'
}

/** How far the instrument is off by itself: that is what its standard tells, and it belongs to the truth. */
function offOf(defs: Definitions, practice: PracticeState, instrument: string, isKnocked: boolean): number {
  const off = hiddenMachine(defs, practice).off[instrument]
  return off === undefined ? 0 : off.bias + (isKnocked ? off.knocked : 0)
}
