// Tests over time: a reading at the start, a stand that the program counts, a reading or a look at the end. What the end says is
// said of that start and that stand, so where the start is read anew, both come again, and where the gas is off by then, the
// whole test does. Told by the order of the entries and never by words, so that it makes no difference in which way a reading
// fell: its instrument doubted, itself corrected, its step gone back to. What was begun by another machine record begins anew,
// whole, as its stand fell with that record, and how hard and how long it was tested may have come from it.
import { leftWords } from '../lib/duration.ts'
import { type Result, refuse } from '../lib/result.ts'
import { asKind, type Definitions, type PlacedStep, type PlacedTest, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import { momentMs } from './evidence-asked.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf } from './gate.ts'
import { fallsWith } from './lapse.ts'
import { applicability, isComplete } from './next.ts'
import { placesOf } from './places.ts'
import { type State, standing } from './state.ts'
import { wouldVoid } from './voids.ts'

/** Entries that an answer stands on, by seq: the first and the last. */
interface Span {
  readonly first: number
  readonly last: number
}

/** Null where nothing of the step stands. */
function spanOf(state: State, placed: PlacedStep): Span | null {
  if (placed.step.kind !== 'read') {
    const at = state.done[placed.id] === undefined ? undefined : state.doneAt[placed.id]
    return at === undefined ? null : { first: at.seq, last: at.seq }
  }
  const seqs = placesOf(asKind(placed, 'read')).flatMap(({ key }) => standing(state, key).map((r) => r.seq))
  return seqs.length === 0 ? null : { first: Math.min(...seqs), last: Math.max(...seqs) }
}

interface Running {
  readonly test: PlacedTest
  /** Its steps that are not left out by a rule, in order. */
  readonly run: readonly PlacedStep[]
  /** Seq of the last reading at its start that stands; before any entry where none does. */
  readonly begunAt: number
}

/** Every test whose start is not left out. */
function testsOf(defs: Definitions, state: State): Running[] {
  if (defs.loose === true || defs.overTime.length === 0) return []
  return defs.overTime.flatMap((test): Running[] => {
    const run = test.steps
      .map((id) => stepById(defs, id))
      .filter((placed) => applicability(defs, state, placed) !== 'skip')
    const starts = run.filter(({ id }) => test.start.includes(id))
    if (starts.length === 0) return []
    const begunAt = Math.max(
      ...starts.map((placed) => spanOf(state, placed)?.last ?? Number.NEGATIVE_INFINITY),
    )
    return [{ test, run, begunAt }]
  })
}

/** The first test, in order, of which something stands that has to be done anew, and what falls with it by name. */
export function testFallen(defs: Definitions, state: State): Extract<Body, { type: 'branch.left' }> | null {
  for (const running of testsOf(defs, state)) {
    const fallen = fallenOf(state, running).map(({ id }) => id)
    if (fallen.length === 0) continue
    const all = new Set([...fallen, ...wouldVoid(defs, state, ...fallen)])
    const voids = defs.steps.map(({ id }) => id).filter((id) => all.has(id))
    return { type: 'branch.left', voids, test: running.test.title }
  }
  return null
}

/** Titles of the tests of which something stands, in order. */
export function testsBegun(defs: Definitions, state: State): string[] {
  return testsOf(defs, state).flatMap(({ test, run }) =>
    run.some((placed) => spanOf(state, placed) !== null) ? [test.title] : [],
  )
}

function fallenOf(state: State, { test, run, begunAt }: Running): readonly PlacedStep[] {
  const hasSome = (placed: PlacedStep) => spanOf(state, placed) !== null
  const changedAt = state.records.at(-1)?.seq ?? Number.NEGATIVE_INFINITY
  if (run.some((placed) => (spanOf(state, placed)?.first ?? changedAt) < changedAt))
    return run.filter(hasSome)
  const open = run.findIndex((placed) => !isComplete(state, placed))
  const lastStart = run.findLastIndex(({ id }) => test.start.includes(id))
  const old = run.findIndex(
    (placed, n) => n > lastStart && (spanOf(state, placed)?.first ?? begunAt) < begunAt,
  )
  const from = Math.min(...[open < 0 ? run.length : open + 1, old < 0 ? run.length : old])
  const behind = run.slice(from).filter(hasSome)
  if (behind.length === 0) return []
  // Gas off, pressure out: nothing of it can be read again before it is put on again.
  const isOver = test.until !== null && state.done[test.until] !== undefined
  return isOver ? run.filter(hasSome) : behind
}

/** Waits that began before the start was read, each with its gate: they stood for another test, or for another start. */
export function standFallen(defs: Definitions, state: State): Extract<Body, { type: 'gate.closed' }> | null {
  for (const { test, run, begunAt } of testsOf(defs, state)) {
    const gate = gatesOf(defs).find(({ id }) => id === test.stand)
    if (gate === undefined) continue
    const early = standsOf(state, gate).filter((key) => {
      const { seq } = gateState(state, gate.id).begun[key] ?? { seq: begunAt }
      return seq < begunAt
    })
    if (early.length === 0) continue
    const read = run.find(
      (placed) => test.start.includes(placed.id) && spanOf(state, placed)?.last === begunAt,
    )
    const why = `${read?.step.title ?? test.title} was read after it had begun`
    return {
      type: 'gate.closed',
      step: gate.id,
      cause: 'again',
      items: fallsWith(defs, state, gate, early),
      why,
    }
  }
  return null
}

/** Keys of the waits at the gate that run or stand. */
export function standsOf(state: State, gate: GateStep): string[] {
  const { begun } = gateState(state, gate.id)
  return Object.keys(begun).filter((key) => evidenceByKey(gate, key)?.kind === 'wait')
}

/** Why the start of a test cannot be read yet, or null: what was put on has to settle, by the clock. */
export function notSettled(defs: Definitions, state: State, placed: PlacedStep): Result<never> | null {
  // On a sheet it is told by the times that stand there (paper-test.ts), and nobody waits for it at a desk.
  if (defs.loose === true || state.paper !== null) return null
  for (const { settlesMs, from, start } of defs.overTime) {
    if (settlesMs === null || !start.includes(placed.id)) continue
    const at = state.doneAt[from]?.atMs ?? Number.POSITIVE_INFINITY
    const left = at + settlesMs - momentMs(state)
    if (left <= 0) continue
    const since = stepById(defs, from).step.title
    return refuse(
      'too-soon',
      `Not yet: ${leftWords(left)} left since "${since}". Read it then, and key what it shows then.`,
    )
  }
  return null
}
