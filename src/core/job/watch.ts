// From the log of a job to what other jobs on its machine have to know of it. Read entry by entry, so that a look costs
// only what is new.
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { type Doing, holdsGate, lettingHazards, type NamedHazard, type OtherJob } from './elsewhere.ts'
import type { Entry } from './entries.ts'
import { fold, opening } from './fold.ts'
import { type GateStep, gateState, gatesOf, missingItem } from './gate.ts'
import { asksOff, letInByOff, offTitle } from './lock-off.ts'
import { next, type Prompt } from './next.ts'
import { doingsOfRow, insideOnSheet, lettingOnSheet, placedBySheet } from './paper-watch.ts'
import { peopleOnJob } from './people-on.ts'
import { removals } from './removals.ts'
import { openStop, type State } from './state.ts'
import { lettingIn } from './voiding.ts'

export interface Watched {
  readonly state: State
  readonly letting: Letting | null
  readonly doings: readonly Doing[]
}

/** What it is at, or waits to begin, that lets hazards in. `key` tells one from the next. */
interface Letting {
  readonly key: string
  readonly step: string
  readonly hazards: readonly NamedHazard[]
}

export function watchFrom(entry: Extract<Entry, { type: 'job.opened' }>): Watched {
  return { state: opening(entry), letting: null, doings: [] }
}

export function watch(defs: Definitions, watched: Watched, entry: Entry): Watched {
  const { state: before } = watched
  const state = fold(before, entry)
  const letting = lettingNow(defs, state)
  const begun = letting !== null && letting.key !== watched.letting?.key ? [letting] : []
  const ended = lettingIn(defs, before, state, [entry]).map((placed) => lettingOf(defs, placed))
  const doings: Doing[] = [
    ...[...begun, ...ended].map(({ step, hazards }) => letIn(entry.seq, step, hazards)),
    ...(entry.type === 'stop.raised' ? [{ what: 'stop' as const, seq: entry.seq }] : []),
    ...(entry.type === 'paper.row' ? doingsOfRow(defs, state, entry) : []),
    ...removals(defs, before, entry, state),
  ]
  return { state, letting, doings: doings.length === 0 ? watched.doings : [...watched.doings, ...doings] }
}

function letIn(seq: number, step: string, hazards: readonly NamedHazard[]): Doing {
  return { what: 'let-in', seq, step, hazards }
}

function lettingOf(defs: Definitions, placed: PlacedStep): Letting {
  return { key: placed.id, step: placed.step.title, hazards: lettingHazards(defs, placed) }
}

/** The step that is asked now, or waits for other jobs, if it lets hazards in: whoever is told to do it may have begun. */
function lettingNow(defs: Definitions, state: State): Letting | null {
  if (state.left) return null
  const prompt = next(defs, state)
  const off = takingOff(defs, state, prompt)
  if (off !== null) return { key: `${off.id}.off`, step: offTitle(off), hazards: letInByOff(defs, off) }
  const isAsked =
    ['tell', 'confirm', 'observe', 'read', 'pick', 'doubt', 'late'].includes(prompt.kind) ||
    (prompt.kind === 'held' && prompt.elsewhere === true)
  if (!isAsked || !('step' in prompt)) return null
  return lettingHazards(defs, prompt.step).length === 0 ? null : lettingOf(defs, prompt.step)
}

/** The hold point where a lock or a blind is asked for as it comes off, or waits until nobody of another job rests on it. */
function takingOff(defs: Definitions, state: State, prompt: Prompt): GateStep | null {
  if (prompt.kind === 'evidence') return asksOff(prompt.item.evidence) ? prompt.gate : null
  if (prompt.kind !== 'held' || prompt.elsewhere !== true || prompt.step.step.kind !== 'gate') return null
  const gate = asKind(prompt.step, 'gate')
  const item = missingItem(defs, state, gate)
  // Held for what the other lets in itself, it has not come to it yet: each would wait for the other.
  const isNext = item !== null && asksOff(item.evidence) && holdsGate(defs, state, gate.step.holds) === null
  return isNext ? gate : null
}

/** How it stands for others, without where its log was read from. */
export function standingOf(
  defs: Definitions,
  { state, letting, doings }: Watched,
): Pick<
  OtherJob,
  | 'procedure'
  | 'written'
  | 'people'
  | 'left'
  | 'stop'
  | 'inside'
  | 'names'
  | 'letting'
  | 'closed'
  | 'placed'
  | 'doings'
> {
  const stop = openStop(state)
  return {
    procedure: state.paper === null ? defs.procedure.title : `${defs.procedure.title}, from paper`,
    written: state.lastAt,
    // Whoever keys a sheet in is at a desk.
    people: state.left || state.paper !== null ? [] : peopleOnJob(state),
    left: state.left,
    stop: stop === null ? null : (stop.why ?? 'its cause is not told yet'),
    inside: state.closed === null ? (insideOnSheet(defs, state) ?? insideOf(defs, state)) : [],
    names: defs.procedure.hazards.map(({ id, name }) => ({ id, name })),
    letting:
      letting === null ? lettingOnSheet(defs, state) : { step: letting.step, hazards: letting.hazards },
    closed: state.closed,
    ...placedBySheet(state),
    doings,
  }
}

function insideOf(defs: Definitions, state: State): NamedHazard[] {
  const ids = gatesOf(defs).flatMap((gate) => {
    const { status, mustClear } = gateState(state, gate.id)
    return status === 'open' || mustClear ? gate.step.holds : []
  })
  return defs.procedure.hazards.filter((h) => ids.includes(h.id)).map(({ id, name }) => ({ id, name }))
}
