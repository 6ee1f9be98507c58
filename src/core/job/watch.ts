// From the log of a job to what other jobs on its machine have to know of it. Read entry by entry, so that a look costs
// only what is new.
import type { Definitions, PlacedStep } from './definitions.ts'
import { type Doing, lettingHazards, type NamedHazard, type OtherJob } from './elsewhere.ts'
import type { Entry } from './entries.ts'
import { fold, opening } from './fold.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf, hangs } from './gate.ts'
import { stoodBefore } from './locks-on.ts'
import { next } from './next.ts'
import { doingsOfRow, hungOnSheet, insideOnSheet, lettingOnSheet, placedBySheet } from './paper-watch.ts'
import { peopleOnJob } from './people-on.ts'
import { thingText } from './register.ts'
import { openStop, type State } from './state.ts'
import { lettingIn } from './voiding.ts'

export interface Watched {
  readonly state: State
  readonly letting: PlacedStep | null
  readonly doings: readonly Doing[]
}

export function watchFrom(entry: Extract<Entry, { type: 'job.opened' }>): Watched {
  return { state: opening(entry), letting: null, doings: [] }
}

export function watch(defs: Definitions, watched: Watched, entry: Entry): Watched {
  const { state: before } = watched
  const state = fold(before, entry)
  const letting = lettingNow(defs, state)
  const begun = letting !== null && letting.id !== watched.letting?.id ? [letting] : []
  const ended = lettingIn(defs, before, state, [entry])
  const doings: Doing[] = [
    ...[...begun, ...ended].map((placed) => letIn(defs, entry.seq, placed)),
    ...(entry.type === 'stop.raised' ? [{ what: 'stop' as const, seq: entry.seq }] : []),
    ...(entry.type === 'paper.row' ? doingsOfRow(defs, state, entry) : []),
    ...removals(defs, before, entry, state),
  ]
  return { state, letting, doings: doings.length === 0 ? watched.doings : [...watched.doings, ...doings] }
}

function letIn(defs: Definitions, seq: number, placed: PlacedStep): Doing {
  return { what: 'let-in', seq, step: placed.step.title, hazards: lettingHazards(defs, placed) }
}

/** The step that is asked now, or waits for other jobs, if it lets hazards in: whoever is told to do it may have begun. */
function lettingNow(defs: Definitions, state: State): PlacedStep | null {
  if (state.left) return null
  const prompt = next(defs, state)
  const isAsked =
    ['tell', 'confirm', 'observe', 'read', 'pick', 'doubt', 'late'].includes(prompt.kind) ||
    (prompt.kind === 'held' && prompt.elsewhere === true)
  if (!isAsked || !('step' in prompt)) return null
  return lettingHazards(defs, prompt.step).length === 0 ? null : prompt.step
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
      letting === null
        ? lettingOnSheet(defs, state)
        : { step: letting.step.title, hazards: lettingHazards(defs, letting) },
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

/** What may have come off the machine with this entry. */
function removals(defs: Definitions, before: State, entry: Entry, after: State): Doing[] {
  const removed = (clause: string, numbers: readonly string[], told: boolean): Doing[] => [
    { what: 'removed', seq: entry.seq, clause, numbers, told },
  ]
  if (entry.type === 'thing.accounted') {
    const thing = before.things.find((t) => t.seq === entry.of)
    if (thing === undefined) return []
    return removed(`${thingText(thing)} was taken off`, thing.number === null ? [] : [thing.number], false)
  }
  if (entry.type === 'gate.closed' && entry.cause === 'corrected') {
    const gate = gatesOf(defs).find((g) => g.id === entry.step)
    const numbers = gate === undefined ? [] : numbersAt(before, gate, (key) => entry.items.includes(key))
    return numbers.length === 0 ? [] : removed(`${numbers.join(', ')} was found wrong`, numbers, true)
  }
  if (entry.type === 'job.closed') {
    const numbers = gatesOf(defs).flatMap((gate) => [...hungAt(before, gate), ...hungOnSheet(before, gate)])
    return numbers.length === 0
      ? []
      : removed('that job has ended, and its locks may come off', numbers, true)
  }
  const on = peopleOnJob(after)
  const gone =
    entry.type === 'job.left' ? peopleOnJob(before) : peopleOnJob(before).filter((p) => !on.includes(p))
  if (gone.length === 0) return []
  const own = gatesOf(defs).flatMap((gate) =>
    numbersAt(before, gate, (key) => gone.some((person) => key.endsWith(`.${person}`))),
  )
  return own.length === 0
    ? []
    : removed(`${gone.join(', ')} went, and may have taken own locks off`, own, true)
}

/** Numbers of what hangs, of these items of the gate. Paper and slings hang nowhere. */
function numbersAt(state: State, gate: GateStep, which: (key: string) => boolean): string[] {
  return Object.entries(gateState(state, gate.id).given).flatMap(([key, given]) => {
    return hangs(evidenceByKey(gate, key)) && which(key) ? [given.shown] : []
  })
}

/** Everything that hung for the gate by its last keying, also where the evidence has fallen since. */
function hungAt(state: State, gate: GateStep): string[] {
  const fallen = gateState(state, gate.id).struck.flatMap(({ item, shown }) => {
    return hangs(evidenceByKey(gate, item)) ? [shown] : []
  })
  const before = stoodBefore(state, gate).map(({ shown }) => shown)
  return [...new Set([...numbersAt(state, gate, () => true), ...fallen, ...before])]
}
