// The verdict of a judge step. Here what a bore judge needs is gathered from the readings on record; figure-step.ts does
// the same for one that judges figures, pocket-step.ts for the setting of a pocket. What is missing goes in as missing: it is judged
// HOLD there, never filled in here.

import { judgeBore } from '../bore/bore-judge.ts'
import type { BoreJudgeInput } from '../bore/bore-judge-input.ts'
import { judgeReads } from '../definition/judge-reads.ts'
import type { StepOf } from '../definition/procedure.ts'
import { expandedOfDifference, expandedOfReading } from '../metrology/uncertainty.ts'
import { recordedDatum } from './bore-datum.ts'
import { boreFacts, type Gathered, gatherIf, type JudgeStep } from './bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { figuresVerdict } from './figure-step.ts'
import { limitsFor } from './limits.ts'
import { applicability } from './next.ts'
import { placesOf } from './places.ts'
import { pocketVerdict } from './pocket-step.ts'
import { setCheckOf } from './set-check.ts'
import { type State, standing } from './state.ts'
import type { VerdictRecord } from './verdict-record.ts'

export type AnyJudgeStep = PlacedStep & { readonly step: StepOf<'judge'> }

/** Works out the verdict of a judge step. `version` is stored with it. */
export function judgeStep(
  defs: Definitions,
  state: State,
  judge: AnyJudgeStep,
  version: string,
): VerdictRecord {
  const { step } = judge
  if (step.compute === 'figures') return figuresVerdict(defs, state, { ...judge, step }, version)
  if (step.compute === 'pocket_setting')
    return pocketVerdict(defs, state, { ...judge, step }, version, readingSeqs(defs, state, judge))
  const bore = { ...judge, step }
  const inputs = boreInput(defs, state, bore)
  return {
    compute: 'bore_form',
    version,
    inputs,
    result: judgeBore(inputs),
    readings: readingSeqs(defs, state, bore),
  }
}

export function boreInput(defs: Definitions, state: State, judge: JudgeStep): BoreJudgeInput {
  const { inputs } = judge.step
  const { bore } = defs.machine
  const readStep = (id: string) => asKind(stepById(defs, judge.scope + id), 'read')
  const { gauge, part, body, main, strip, error, reduce } = boreFacts(defs, state, judge)
  const counterbore =
    inputs.counterbore === undefined
      ? null
      : largestOf(gatherIf(defs, state, readStep(inputs.counterbore), reduce))
  const limits = limitsFor(defs, judge.step.against)
  const maxBoreM =
    limits['largest-diameter']?.from === 'machine' ? limits['largest-diameter'].value : undefined
  const expanded = error === null ? null : expandedOfReading(error)
  const u = expanded?.ok === true ? expanded.value : null
  return {
    readings: main.readings,
    missing: main.missing,
    nominalM: bore.nominal.si,
    limits,
    readingU: u,
    differenceU: u === null ? null : expandedOfDifference(u),
    k: 2,
    resolutionM: gauge?.resolution.si ?? null,
    simpleAcceptance:
      defs.machine.simple_acceptance === undefined ? null : { by: defs.machine.simple_acceptance.by },
    ...datumFor(defs, strip, readStep(inputs.diameters), u),
    counterboreM: counterbore ?? bore.counterbore?.si ?? null,
    ...(maxBoreM === undefined ? {} : { maxBoreM }),
    lined: bore.lined,
    setCheck: {
      before: setCheckOf(state, readStep(inputs.set_before), gauge),
      after: setCheckOf(state, readStep(inputs.set_after), gauge),
    },
    temperaturesKnown:
      part !== null && body !== null && bore.expansion !== undefined && gauge?.expansion !== undefined,
  }
}

function largestOf(gathered: Gathered | null): number | null {
  return gathered === null || gathered.readings.length === 0
    ? null
    : Math.max(...gathered.readings.map((r) => r.valueM))
}

/** The unswept strip where there is one, else the record of the same bore, else none, and why: never the counterbore. */
function datumFor(
  defs: Definitions,
  strip: Gathered | null,
  diameters: PlacedStep & { readonly step: StepOf<'read'> },
  readingU: number | null,
): Pick<BoreJudgeInput, 'datum' | 'noDatum'> {
  if (strip !== null && strip.readings.length > 0) {
    const errors = strip.readings.flatMap((r) => r.expandedU ?? readingU ?? [])
    return {
      datum: {
        from: 'unswept strip',
        byAxisM: Object.fromEntries(strip.readings.map((r) => [r.axis, r.valueM])),
        // Of several axes the greatest counts for each: on the safe side, and seldom another.
        ...(errors.length === 0 ? {} : { expandedU: Math.max(...errors) }),
      },
    }
  }
  const { datum, why } = recordedDatum(defs, diameters)
  return why === null ? { datum } : { datum, noDatum: `no unswept strip was read, and ${why}` }
}

function readingSeqs(defs: Definitions, state: State, judge: AnyJudgeStep): number[] {
  const { needed, optional } = judgeReads(judge.step)
  const ids = [...needed, ...optional]
  const steps = ids.map((id) => asKind(stepById(defs, judge.scope + id), 'read'))
  const seqs = steps
    .filter((s) => applicability(defs, state, s) === 'do')
    .flatMap((s) => placesOf(s).flatMap((p) => standing(state, p.key).map((r) => r.seq)))
  return seqs.sort((a, b) => a - b)
}
