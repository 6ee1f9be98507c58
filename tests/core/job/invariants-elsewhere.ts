// What must hold between two jobs on one machine at every moment, read off what both have written, in its order. Nothing
// here asks the engine what it saw of the other: a look that sees too little would otherwise excuse itself.
import type { Definitions, PlacedStep } from '../../../src/core/job/definitions.ts'
import type { Body, Entry } from '../../../src/core/job/entries.ts'
import type { GateStep } from '../../../src/core/job/gate.ts'
import { next } from '../../../src/core/job/next.ts'
import type { State } from '../../../src/core/job/state.ts'
import { presented } from './invariants.ts'

export interface Side {
  readonly defs: Definitions
  readonly state: State
}

export interface Written {
  readonly who: number
  readonly entry: Entry
}

/** What is amiss with sending people to where `us` sends them, for what `them` did or is at. Both are of one kind. */
export function voidElsewhere(us: Side, them: Side, who: number, written: readonly Written[]): string[] {
  const step = presented(next(us.defs, us.state))
  const exposes = step?.step.exposes ?? []
  if (step === null || exposes.length === 0) return []
  const theirs = written.filter((w) => w.who !== who).map((w) => w.entry)
  const found: string[] = []
  if (isStopped(theirs)) found.push(`${step.id} is asked under a STOP of the other job`)
  const at = asked(them)
  for (const hazard of exposes) {
    if (at !== null && letsInAny(us.defs, them.defs, at, [hazard]))
      found.push(`${step.id} is asked while the other lets in ${hazard}`)
    if (offAsked(them).includes(hazard))
      found.push(`${step.id} is asked while the other takes off what holds ${hazard}`)
    if (
      !us.defs.steps.some(
        (s) => s.step.kind === 'gate' && proves(us, them, s as GateStep, hazard, who, written),
      )
    )
      found.push(`${step.id} is asked, and what held ${hazard} is void by the other job`)
  }
  return found
}

/** Nobody is told to let in what people of the other job may stand behind: let in by its log, and not called out since. */
export function letInOnPeople(us: Side, them: Side, who: number, written: readonly Written[]): string[] {
  const step = asked(us)
  const { kind } = next(us.defs, us.state)
  const theirs = written.filter((w) => w.who !== who).map((w) => w.entry)
  const off = offAsked(us)
  // What waits to be settled was done before.
  if (kind === 'doubt' || kind === 'late' || theirs.some((e) => e.type === 'job.closed')) return []
  return them.defs.steps.flatMap((s) => {
    if (s.step.kind !== 'gate') return []
    const isLetIn = step !== null && letsInAny(them.defs, us.defs, step, s.step.holds)
    if (!isLetIn && !s.step.holds.some((hazard) => off.includes(hazard))) return []
    const last = (type: Body['type']) =>
      theirs.findLastIndex((e) => e.type === type && 'step' in e && e.step === s.id)
    return last('gate.opened') > last('people.clear')
      ? [`${step?.id ?? 'a lock off'} is asked with people behind ${s.id}`]
      : []
  })
}

/** The step the other is sent to do, whether it exposes people or not. */
function asked({ defs, state }: Side): PlacedStep | null {
  const prompt = next(defs, state)
  if (state.left || !['tell', 'confirm', 'observe', 'read', 'doubt', 'late', 'pick'].includes(prompt.kind))
    return null
  return 'step' in prompt ? prompt.step : null
}

/** Hazards that the lock holds back which is asked for as it comes off: by the line that noted it. */
function offAsked({ defs, state }: Side): readonly string[] {
  const prompt = next(defs, state)
  if (state.left || prompt.kind !== 'evidence') return []
  const { evidence } = prompt.item
  if (evidence.kind !== 'locks' || evidence.taken_off === undefined) return []
  return defs.steps.flatMap(({ step }) =>
    step.kind === 'gate'
      ? step.evidence.flatMap((e) =>
          e.kind === 'locks' && e.notes === evidence.same_as ? (e.against ?? step.holds) : [],
        )
      : [],
  )
}

/** Locks by the items of our gate that bear the number which the other keyed as off, swapped or gone. */
function offHere(us: Side, them: Side, gate: GateStep, hazard: string, entry: Entry): readonly string[] {
  if (entry.type !== 'evidence.given') return []
  const theirs = them.defs.steps.find((s) => s.id === entry.step)?.step
  const line =
    theirs?.kind === 'gate' ? theirs.evidence.find((e) => e.id === entry.item.split('.')[0]) : undefined
  const isOff = line?.kind === 'locks' && line.taken_off !== undefined
  const numbers = isOff ? [entry.shown] : entry.was === undefined ? [] : [entry.was]
  return gate.step.evidence.flatMap((e) =>
    e.kind === 'locks' && e.taken_off === undefined && (e.against ?? gate.step.holds).includes(hazard)
      ? Object.entries(us.state.gates[gate.id]?.given ?? {}).flatMap(([key, { shown }]) =>
          key.startsWith(`${e.id}.`) && numbers.includes(shown) ? [key] : [],
        )
      : [],
  )
}

function isStopped(entries: readonly Entry[]): boolean {
  const last = (type: Body['type']) => entries.findLastIndex((e) => e.type === type)
  return last('stop.raised') > last('stop.released') && last('job.closed') < 0
}

/** Whether the step lets in any of these hazards of ours: by id, or by one that we have no name for. */
function letsInAny(
  ours: Definitions,
  theirs: Definitions,
  placed: PlacedStep,
  hazards: readonly string[],
): boolean {
  const ids = 'lets_in' in placed.step ? (placed.step.lets_in ?? []) : []
  const nameOf = (id: string) => theirs.procedure.hazards.find((h) => h.id === id)?.name
  return ids.some((id) => {
    const own = ours.procedure.hazards.filter((h) => h.id === id || h.name === nameOf(id))
    return own.length === 0 || own.some((h) => hazards.includes(h.id))
  })
}

/** The gate is open, and everything in it that proves the hazard was given after the other last let it in. */
function proves(
  us: Side,
  them: Side,
  gate: GateStep,
  hazard: string,
  who: number,
  written: readonly Written[],
): boolean {
  if (!gate.step.holds.includes(hazard) || us.state.gates[gate.id]?.status !== 'open') return false
  const given = new Map<string, number>()
  let since = -1
  for (const [n, w] of written.entries()) {
    const { entry } = w
    if (w.who === who && entry.type === 'evidence.given' && entry.step === gate.id) given.set(entry.item, n)
    if (w.who !== who && voids(us.defs, them.defs, entry, hazard)) since = n
    if (w.who !== who && offHere(us, them, gate, hazard, entry).length > 0) since = n
  }
  const proving = gate.step.evidence.filter(
    (e) => e.kind === 'witness' || (e.against ?? gate.step.holds).includes(hazard),
  )
  return proving.every((e) => [...given].every(([key, n]) => key !== e.id || n > since))
}

const DONE: readonly Body['type'][] = [
  'step.done',
  'step.confirmed',
  'step.objected',
  'finding.observed',
  'reading.taken',
  'reading.not-applicable',
]

function voids(ours: Definitions, theirs: Definitions, e: Entry, hazard: string): boolean {
  if (e.type === 'stop.raised') return true
  // Nothing that these jobs place has a number that stands in a gate.
  if (e.type === 'thing.accounted') return true
  if (!DONE.includes(e.type) || !('step' in e) || e.step === null) return false
  const placed = theirs.steps.find((s) => s.id === e.step)
  return placed !== undefined && letsInAny(ours, theirs, placed, [hazard])
}
