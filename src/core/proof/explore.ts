// Walks every state of a job that the engine can reach, as outlines: each class of answer at each prompt, and between any
// two answers a wait, a gas test lapsing, a clock that was moved, a STOP, the job left and taken up, the program killed.
// The engine itself is walked, not a model of it. What it does with readings is replaced by every verdict there is.
import { admit, type Engine } from '../job/admit.ts'
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { gatesOf, lapsesAt } from '../job/gate.ts'
import type { Input } from '../job/input.ts'
import { judgeStep } from '../job/judge-step.ts'
import type { State } from '../job/state.ts'
import { VERDICT_WORDS, type VerdictWord } from '../metrology/verdict.ts'
import { answersAt } from './answers.ts'
import { outlineOf } from './outline.ts'

export interface Move {
  readonly says: string
  readonly input: Input
  /** Milliseconds since the last entry. */
  readonly after: number
}

export interface Reached {
  readonly state: State
  readonly now: number
  readonly outline: string
  readonly from: string | null
  readonly move: string
}

export interface Breach {
  readonly rule: string
  /** The answers that lead there, first to last. */
  readonly path: readonly string[]
}

export interface Explored {
  readonly states: number
  readonly moves: number
  /** The shortest path to a breach, or null. */
  readonly breach: Breach | null
  /** A bound that was hit before everything was seen: then nothing is proved. */
  readonly bound: string | null
  readonly outlines: ReadonlySet<string>
  readonly edges: ReadonlySet<string>
}

/** A rule over one move: what is wrong with it, or null. */
export type Invariant = (step: {
  readonly defs: Definitions
  readonly before: State
  readonly after: State
  readonly now: number
  readonly entries: readonly Entry[]
}) => string | null

export interface ExploreOptions {
  readonly invariants: readonly Invariant[]
  readonly mostStates: number
  readonly keepEdges?: boolean
}

export function explore(engine: Engine, start: State, options: ExploreOptions): Explored {
  const { defs } = engine
  const first: Reached = {
    state: start,
    now: start.lastMs,
    outline: outlineOf(defs, start),
    from: null,
    move: '',
  }
  const reached = new Map<string, Reached>([[first.outline, first]])
  const edges = new Set<string>()
  const queue: Reached[] = [first]
  let moves = 0
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    for (const move of movesFrom(defs, at.state, at.now)) {
      for (const { state, entries, says, now } of outcomes(engine, at, move)) {
        moves++
        const outline = outlineOf(defs, state)
        const wrong = options.invariants
          .map((rule) => rule({ defs, before: at.state, after: state, now, entries }))
          .find((w) => w !== null)
        if (options.keepEdges === true) edges.add(`${at.outline} -> ${outline}`)
        if (wrong !== undefined && wrong !== null) {
          return {
            states: reached.size,
            moves,
            breach: { rule: wrong, path: [...pathTo(reached, at), says] },
            bound: null,
            outlines: new Set(reached.keys()),
            edges,
          }
        }
        if (reached.has(outline)) continue
        const next: Reached = { state, now, outline, from: at.outline, move: says }
        reached.set(outline, next)
        queue.push(next)
        if (reached.size > options.mostStates) {
          return {
            states: reached.size,
            moves,
            breach: null,
            bound: `${options.mostStates} states`,
            outlines: new Set(reached.keys()),
            edges,
          }
        }
      }
    }
  }
  return { states: reached.size, moves, breach: null, bound: null, outlines: new Set(reached.keys()), edges }
}

function pathTo(reached: ReadonlyMap<string, Reached>, to: Reached): string[] {
  const path: string[] = []
  for (let at: Reached | undefined = to; at !== undefined && at.from !== null; at = reached.get(at.from))
    path.unshift(at.move)
  return path
}

/** Every move open in a state. Each answer is tried at once, and after each gas test that can lapse has lapsed. */
export function movesFrom(defs: Definitions, state: State, now: number): Move[] {
  if (state.closed !== null) return []
  if (state.left) return [{ says: '(taken up again)', input: { do: 'take-up' }, after: 1 }]
  const lapses = [...new Set(gatesOf(defs).flatMap((gate) => lapsesAt(defs, state, gate) ?? []))].map((at) =>
    Math.max(1, at - now),
  )
  const waits = [1, ...lapses]
  const answers = [...answersAt(defs, state), { says: '(time passes)', input: { do: 'tick' } as const }]
  const others: Move[] = [
    { says: 'stop', input: { do: 'stop' }, after: 1 },
    { says: 'leave', input: { do: 'leave' }, after: 1 },
    { says: '(killed, and taken up again)', input: { do: 'take-up' }, after: 1 },
    { says: '(the clock was moved)', input: { do: 'clock-moved', seconds: 3600 }, after: 1 },
    { says: '(the clock went back)', input: { do: 'tick' }, after: -3_600_000 },
  ]
  return [
    ...waits.flatMap((after) =>
      answers.map((a) => ({ says: after === 1 ? a.says : `(gas lapses) ${a.says}`, input: a.input, after })),
    ),
    ...others,
  ]
}

interface Outcome {
  readonly state: State
  readonly entries: readonly Entry[]
  readonly says: string
  readonly now: number
}

/** What a move comes to; where a verdict falls, one outcome for each word it could be. */
function outcomes(engine: Engine, at: Reached, move: Move): Outcome[] {
  const now = at.now + move.after
  const run = (word: VerdictWord): Outcome => {
    const admitted = admit({ ...engine, judge: judgedAs(word) }, at.state, move.input, {
      ms: now,
      offsetMin: 0,
    })
    const judged = admitted.entries.some((e) => e.type === 'verdict.given')
    return {
      state: admitted.state,
      entries: admitted.entries,
      says: judged ? `${move.says} => ${word}` : move.says,
      now: Math.max(now, admitted.state.lastMs),
    }
  }
  const first = run('ACCEPT')
  if (!first.entries.some((e) => e.type === 'verdict.given')) return [first]
  return VERDICT_WORDS.map(run)
}

/** The judge of the engine with its word replaced: readings are not walked by size, so any verdict may fall. */
function judgedAs(word: VerdictWord): NonNullable<Engine['judge']> {
  return (defs, state, judge, version) => {
    const record = judgeStep(defs, state, judge, version)
    return { ...record, result: { ...record.result, verdict: word } }
  }
}
