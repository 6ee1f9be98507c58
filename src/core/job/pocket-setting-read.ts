// Which pocket is fitted and how far open it stands, from what was seen and read on the machine. The kind on record decides
// which of them tells; one that differs from what is fitted tells nothing.
import type { Machine } from '../definition/machine.ts'
import { type Definitions, stepById } from './definitions.ts'
import { applicability } from './next.ts'
import type { PocketJudgeStep } from './pocket-step.ts'
import { type OneRead, readOnce } from './read-once.ts'
import type { State } from './state.ts'

/** What was observed at a step, or null where it was not, or the step is not done on this job. */
function seenAt(defs: Definitions, state: State, judge: PocketJudgeStep, id: string): string | null {
  const placed = stepById(defs, judge.scope + id)
  if (applicability(defs, state, placed) !== 'do') return null
  return state.done[placed.id] ?? null
}

export function fittedHolds(defs: Definitions, state: State, judge: PocketJudgeStep): string[] {
  const fitted = seenAt(defs, state, judge, judge.step.inputs.fitted)
  const onRecord = defs.machine.pocket?.kind
  if (fitted === null) return ['Which pocket is fitted was not seen.']
  if (fitted === 'open') return ['The pocket fitted is always open: it has no setting to find.']
  if (fitted === 'none') return ['No pocket is fitted.']
  return fitted === onRecord
    ? []
    : [
        `The pocket fitted (${fitted.replaceAll('_', ' ')}) is not the one on record (${onRecord?.replaceAll('_', ' ') ?? 'none'}).`,
      ]
}

/** The present setting, 0 shut to 1 full open. */
export function settingNow(defs: Definitions, state: State, judge: PocketJudgeStep): OneRead {
  const { position } = judge.step.inputs
  const { pocket } = defs.machine
  if (pocket?.kind === 'hand_wheel') return wheelOrStem(defs, state, judge)
  if (pocket?.kind !== 'two_position') return { why: 'The pocket on record has no setting to read.' }
  const seen = position === undefined ? null : seenAt(defs, state, judge, position)
  if (seen === 'open') return { si: 1, u: 0 }
  if (seen === 'shut') return { si: 0, u: 0 }
  return { why: 'Whether the pocket stands open or shut is not known.' }
}

/** Either tells it; where both do they have to tell the same, or one of them is wrong and nobody knows which. */
function wheelOrStem(defs: Definitions, state: State, judge: PocketJudgeStep): OneRead {
  const { wheel, stem } = judge.step.inputs
  const none: OneRead = { why: 'The present setting of the pocket was not read.' }
  const byWheel =
    wheel === undefined ? none : openingBy(readOnce(defs, state, judge, wheel), wheelScale(defs.machine))
  const byStem =
    stem === undefined ? none : openingBy(readOnce(defs, state, judge, stem), stemScale(defs.machine))
  if ('why' in byWheel) return 'why' in byStem && wheel !== undefined ? byWheel : byStem
  if ('why' in byStem) return byWheel
  const step =
    (defs.machine.whole_compressor?.pocket?.least_step?.si ?? 0) / (2 * Math.PI * turnsOf(defs.machine))
  const apart = Math.abs(byWheel.si - byStem.si)
  if (apart <= step + (byWheel.u ?? 0) + (byStem.u ?? 0)) return byWheel
  return { why: 'Hand-wheel and stem tell different settings of the pocket.' }
}

/** What a scale shows shut and full open, SI; null where the record does not say. */
interface Scale {
  readonly shut: number
  readonly open: number
}

function turnsOf(machine: Machine): number {
  return machine.pocket?.turns ?? Number.NaN
}

function wheelScale(machine: Machine): Scale | null {
  return machine.pocket?.turns === undefined ? null : { shut: 0, open: 2 * Math.PI * turnsOf(machine) }
}

function stemScale(machine: Machine): Scale | null {
  const stem = machine.whole_compressor?.pocket?.stem
  return stem === undefined ? null : { shut: stem.shut.si, open: stem.open.si }
}

/** A reading beyond shut or full open by no more than its error is shut or full open; by more it is none of this pocket. */
function openingBy(read: OneRead, scale: Scale | null): OneRead {
  if ('why' in read) return read
  if (scale === null) return { why: 'What the setting reads shut and full open is not on record.' }
  const travel = scale.open - scale.shut
  const opening = (read.si - scale.shut) / travel
  const u = Math.abs((read.u ?? 0) / travel)
  if (!(opening >= -u && opening <= 1 + u))
    return { why: 'The setting that was read lies outside the travel of the pocket on record.' }
  return { si: Math.min(1, Math.max(0, opening)), u: read.u === null ? null : u }
}
