// What a hidden machine comes to, worked out before anybody works on it: where the work stops, what is seen at each observe step, and the
// verdict of each judge step. What an instructor expects is held against it.
import type { Instrument } from '../definition/instruments.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { opening } from '../job/fold.ts'
import { applicability } from '../job/next.ts'
import { placesOf } from '../job/places.ts'
import { type Practised, practiceOpened } from '../job/practice.ts'
import { unsuited } from '../job/seats.ts'
import type { State } from '../job/state.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import { hiddenMachine, truthOf } from './ask.ts'
import { faultById } from './faults.ts'
import { governing } from './governable.ts'
import { judgedTruly } from './judged-truly.ts'

export interface Worth {
  readonly verdict: VerdictWord
  readonly governs: readonly string[]
}

export interface Expected {
  /** What stops the work, and where it is met; null: the work goes to its end. */
  readonly stop: { readonly fault: string; readonly at: readonly string[] } | null
  /** By step; a step that is left out on this machine, or that hangs on what is not known before, has none. */
  readonly findings: ReadonlyMap<string, readonly string[]>
  readonly verdicts: ReadonlyMap<string, Worth>
}

/** No session: only so much of one that truths can be asked for. */
function asIfOpened(practised: Practised): State {
  const entry: Extract<Entry, { type: 'job.opened' }> = {
    type: 'job.opened',
    format: 1,
    record: 'PRACTICE',
    job: '',
    program: { name: 'barover', version: '' },
    zone: 'UTC',
    clock: 'set',
    answers: 'script',
    files: [],
    seq: 0,
    at: '',
  }
  return { ...opening(entry), practice: practiceOpened(practised) }
}

export function expectedOf(defs: Definitions, practised: Practised): Expected {
  const machine = hiddenMachine(defs, practised)
  const stopping = machine.faults.map(faultById).find(({ shows }) => shows === 'stop')
  const findings = new Map<string, readonly string[]>()
  const verdicts = new Map<string, Worth>()
  const opened = asIfOpened(practised)
  let state: State = { ...opened, seats: firstSuited(defs, opened) }
  for (const placed of defs.steps) {
    if (applicability(defs, state, placed) !== 'do') continue
    const seen = placed.step.kind === 'observe' ? seenAt(defs, state, placed) : null
    if (seen !== null) {
      findings.set(placed.id, seen)
      state = { ...state, done: { ...state.done, [placed.id]: seen[0] ?? '' } }
    }
    if (placed.step.kind === 'judge') {
      const worth = worthAt(defs, state, placed)
      if (worth !== null) verdicts.set(placed.id, worth)
    }
  }
  return {
    stop: stopping === undefined ? null : { fault: stopping.id, at: stopping.at },
    findings,
    verdicts,
  }
}

/** For each seat the first instrument that may sit there and whose range has all that is read with it. */
function firstSuited(defs: Definitions, state: State): State['seats'] {
  return Object.fromEntries(
    defs.seats.flatMap(({ id, kinds }) => {
      const fit = defs.instruments.instruments.filter(
        (one) => kinds.some((kind) => kind === one.kind) && unsuited(defs, id, one) === null,
      )
      const best = fit.find((one) => reaches(defs, state, id, one)) ?? fit[0]
      return best === undefined ? [] : [[id, best.id] as const]
    }),
  )
}

function reaches(defs: Definitions, { practice }: State, seat: string, instrument: Instrument): boolean {
  if (practice === null || instrument.kind === 'gas_meter' || !('range' in instrument)) return true
  const { from, to } = instrument.range
  return defs.steps.every((placed) => {
    if (placed.step.kind !== 'read' || placed.step.with !== seat) return true
    return placesOf(asKind(placed, 'read')).every(({ key }) => {
      const truth = truthOf(defs, practice, placed, { place: key, instrument: instrument.id }, Number.NaN)
      return truth?.kind !== 'figure' || (truth.si >= from.si && truth.si <= to.si)
    })
  })
}

function seenAt(defs: Definitions, state: State, placed: PlacedStep): readonly string[] | null {
  if (state.practice === null) return null
  const truth = truthOf(defs, state.practice, placed, {}, Number.NaN)
  return truth?.kind === 'eye' ? truth.conditions : null
}

function worthAt(defs: Definitions, state: State, placed: PlacedStep): Worth | null {
  if (state.practice === null) return null
  const record = judgedTruly(defs, state, state.practice, asKind(placed, 'judge').id, '')
  return { verdict: record.result.verdict, governs: governing(record) }
}
