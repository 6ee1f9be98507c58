// Walks every state of a job that the engine can reach, as outlines, breadth first, so that the first breach found is on a
// shortest path. The engine itself is walked, not a model of it; only the word of a verdict is replaced by every word.
import { admit, type Engine } from '../job/admit.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import { NO_OTHERS } from '../job/elsewhere.ts'
import type { Entry } from '../job/entries.ts'
import { judgeStep } from '../job/judge-step.ts'
import { next, type Prompt } from '../job/next.ts'
import { peopleOnJob } from '../job/people-on.ts'
import { openPlace } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { openStops } from '../job/stop-causes.ts'
import { withWord } from '../job/verdict-record.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import { type Account, NOTHING_SEEN, type Watch, watched } from './account.ts'
import { aged } from './ages.ts'
import { afterAll, foundUnfit, hadBefore, likeFell, oneMore, putBack } from './before.ts'
import { firstWrong, type Wrong } from './invariants.ts'
import { type Move, movesFrom } from './moves.ts'
import { normal, withoutLooks } from './normal.ts'
import { outlineInFull, outlineOf } from './outline.ts'
import { FIXED, type Ruling, rulings, withRuling } from './rulings.ts'
import { testsAnew, tiesFell } from './ties.ts'
import { wordClasses } from './words.ts'

export interface PathLine {
  readonly says: string
  /** Id of the step that was asked, where one was. */
  readonly step: string | null
}

export interface Breach extends Wrong {
  /** What leads there, first to last. */
  readonly path: readonly PathLine[]
}

export interface Explored {
  readonly states: number
  readonly moves: number
  /** On a shortest path, or null. */
  readonly breach: Breach | null
  /** A bound that was hit before everything was seen: then nothing is proved. */
  readonly bound: string | null
  /** Outlines that each outline leads to by a move, and by what a state leaves open; empty unless asked for. */
  readonly edges: ReadonlyMap<string, ReadonlySet<string>>
  readonly open: ReadonlyMap<string, ReadonlySet<string>>
}

export interface ExploreOptions {
  readonly mostStates: number
  readonly keepEdges?: boolean
  /** False: only what a job can come to without going back. Never a proof; for a path that can be followed by hand. */
  readonly withBefore?: boolean
}

interface Node {
  readonly state: State
  readonly watch: Watch
  readonly now: number
  readonly ruling: Ruling
  readonly outline: string
  /** The outline, and the ruling with it: what the figures make of a rule stands though the readings are forgotten. */
  readonly key: string
}

export function explore(engine: Engine, start: State, options: ExploreOptions): Explored {
  return new Search(engine, options).run(start)
}

/** The judge of the engine, with its word replaced where one is named for the step. */
function saying(
  words: ReadonlyMap<string, VerdictWord>,
  judge: NonNullable<Engine['judge']> = judgeStep,
): NonNullable<Engine['judge']> {
  return (defs, state, placed, version) => {
    const verdict = judge(defs, state, placed, version)
    const word = words.get(placed.id)
    return word === undefined ? verdict : withWord(verdict, word)
  }
}

class Search {
  readonly #engine: Engine
  readonly #options: ExploreOptions
  readonly #from = new Map<string, { readonly key: string; readonly line: PathLine } | null>()
  readonly #edges = new Map<string, Set<string>>()
  readonly #open = new Map<string, Set<string>>()
  readonly #asked = new Set<string>()
  readonly #rulings = new Map<string, Engine>()
  #queue: Node[] = []
  #moves = 0
  #breach: Breach | null = null

  constructor(engine: Engine, options: ExploreOptions) {
    this.#engine = engine
    this.#options = options
  }

  run(start: State): Explored {
    const { mostStates } = this.#options
    this.#reach(null, { says: '', step: null }, start, NOTHING_SEEN, start.lastMs, FIXED, this.#open)
    for (let level = this.#queue; level.length > 0; level = this.#queue) {
      this.#queue = []
      for (const node of level) {
        if (this.#breach === null && this.#from.size <= mostStates) this.#expand(node)
      }
    }
    const isFull = this.#breach === null && this.#from.size > mostStates
    return {
      states: this.#from.size,
      moves: this.#moves,
      breach: this.#breach,
      bound: isFull ? `${mostStates} states` : null,
      edges: this.#edges,
      open: this.#open,
    }
  }

  /** The engine with what rules over figures are taken to come to. */
  #ruled(ruling: Ruling): Engine {
    const known = this.#rulings.get(ruling.key)
    const engine = known ?? withRuling(this.#engine, ruling)
    this.#rulings.set(ruling.key, engine)
    return engine
  }

  #expand(node: Node): void {
    const engine = this.#ruled(node.ruling)
    const { defs } = engine
    const prompt = next(defs, node.state)
    const step = 'step' in prompt ? prompt.step.id : 'gate' in prompt ? prompt.gate.id : null
    const { withBefore = true } = this.#options
    const hads = withBefore
      ? [
          ...hadBefore(engine, node.state),
          ...afterAll(defs, node.state),
          ...foundUnfit(defs, node.state, node.now),
          ...likeFell(defs, node.state, node.now),
          ...testsAnew(defs, node.state),
          ...tiesFell(defs, node.state, node.now),
          ...oneMore(defs, node.state, node.now),
        ]
      : []
    for (const had of [...hads, ...putBack(defs, node.state)]) {
      const by = had.stopBy === null || had.stopBy === undefined ? [] : [had.stopBy]
      const stop =
        had.stopBy === undefined || node.watch.stop === null
          ? node.watch.stop
          : { ...node.watch.stop, barred: by, nameless: 0 }
      const entries = had.entries ?? []
      const watch = entries.reduce((w, e) => watched(defs, w, e), { ...node.watch, stop })
      this.#reach(node, { says: had.says, step }, had.state, watch, node.now, node.ruling, this.#open)
    }
    for (const { says, state, watch, now } of aged(defs, node.state, node.watch, node.now))
      this.#reach(node, { says, step }, state, watch, now, node.ruling, this.#open)
    for (const { ruling, says } of rulings(defs, node.state, node.ruling))
      this.#reach(node, { says, step }, node.state, node.watch, node.now, ruling, this.#open)
    for (const move of movesFrom(
      defs,
      node.state,
      node.watch,
      prompt,
      node.now,
      this.#isNew(prompt, node.state),
    )) {
      this.#moves++
      if (this.#breach !== null) return
      this.#make(engine, node, move, step)
    }
  }

  /** Whether nothing was refused yet in the face of this prompt, with the gates as they are. */
  #isNew(prompt: Prompt, state: State): boolean {
    const asked = [
      prompt.kind,
      'step' in prompt ? prompt.step.id : '',
      'gate' in prompt ? prompt.gate.id : '',
      'item' in prompt ? prompt.item.key : '',
      'place' in prompt ? prompt.place.key : '',
    ]
    const gates = Object.values(state.gates).map((g) => g.status)
    const key = [...asked, state.left, state.cutShort, state.doer === null, ...gates].join('|')
    const isNew = !this.#asked.has(key)
    this.#asked.add(key)
    return isNew
  }

  /** One move; where a verdict falls, once for each word that could make a difference. */
  #make(engine: Engine, node: Node, move: Move, step: string | null): void {
    const now = { ms: node.now + move.after, offsetMin: 0 }
    const admitted = admit(engine, node.state, move.input, now, NO_OTHERS)
    if (admitted.entries.length === 0) {
      // Nothing was taken and nothing fell: the state is the same one. Only STOP may not be without effect.
      if (move.input.do !== 'stop') return
    }
    this.#arrive(engine, node, move, step, admitted.entries, admitted.state)
    this.#vary(engine, node, move, step, admitted.entries, new Map())
  }

  /**
   * Sizes are not searched, so any verdict may fall: the same one with another word, and each of several that fall in one
   * move by itself. `said` are the words of those before it.
   */
  #vary(
    engine: Engine,
    node: Node,
    move: Move,
    step: string | null,
    entries: readonly Entry[],
    said: ReadonlyMap<string, VerdictWord>,
  ): void {
    const judged = entries.find((e) => e.type === 'verdict.given' && !said.has(e.step))
    if (judged?.type !== 'verdict.given') return
    const placed = engine.defs.steps.find((s) => s.id === judged.step)
    if (placed === undefined) return
    const { examples, classOf } = wordClasses(engine.defs, placed)
    const own = judged.verdict.result.verdict
    this.#vary(engine, node, move, step, entries, new Map([...said, [judged.step, own]]))
    for (const example of examples) {
      if (classOf(example) === classOf(own)) continue
      const words = new Map([...said, [judged.step, example as VerdictWord]])
      const now = { ms: node.now + move.after, offsetMin: 0 }
      const other = admit(
        { ...engine, judge: saying(words, engine.judge) },
        node.state,
        move.input,
        now,
        NO_OTHERS,
      )
      const says = `${move.says} (${[...words.values()].join(', ')})`
      this.#arrive(engine, node, { ...move, says }, step, other.entries, other.state)
      this.#vary(engine, node, move, step, other.entries, words)
    }
  }

  #arrive(
    { defs }: Engine,
    node: Node,
    move: Move,
    step: string | null,
    entries: readonly Entry[],
    after: State,
  ): void {
    const watch = entries.reduce(
      (w, e) => watched(defs, w, e, readThrough(defs, node.state, after, e)),
      node.watch,
    )
    const now = node.now + move.after
    const wrong = firstWrong({
      defs,
      before: node.state,
      input: move.input,
      entries,
      after,
      prompt: next(defs, after),
      watchBefore: node.watch,
      watch,
      now,
    })
    const line = { says: move.says, step }
    if (wrong !== null) this.#breach ??= { ...wrong, path: [...this.#pathTo(node.key), line] }
    else {
      this.#reach(node, line, after, watch, Math.max(now, after.lastMs), node.ruling, this.#edges)
      // What had been given behind a missing line is as if it were given when it is asked.
      const isGiven = entries.every((e) => e.type === 'evidence.given' && e.person === undefined)
      if (isGiven) this.#reach(node, line, after, watch, Math.max(now, after.lastMs), node.ruling, this.#open)
    }
  }

  #reach(
    from: Node | null,
    line: PathLine,
    raw: State,
    seen: Watch,
    now: number,
    ruling: Ruling,
    kept: Map<string, Set<string>>,
  ): void {
    const { defs } = this.#ruled(ruling)
    const { withBefore = true } = this.#options
    const state = withBefore ? normal(defs, raw) : withoutLooks(defs, raw)
    const onJob = peopleOnJob(state)
    const watch = withBefore ? forgetting(raw, state, seen, onJob) : seen
    const outline = withBefore ? outlineOf(defs, state, watch) : outlineInFull(defs, state, watch)
    if (from !== null && this.#options.keepEdges === true) {
      const to = kept.get(from.outline) ?? new Set()
      kept.set(from.outline, to.add(outline))
    }
    const key = `${outline} ${ruling.key}`
    if (this.#from.has(key)) return
    this.#from.set(key, from === null ? null : { key: from.key, line })
    if (state.closed === null) this.#queue.push({ state, watch, now, ruling, outline, key })
  }

  #pathTo(key: string): PathLine[] {
    const path: PathLine[] = []
    for (let at = this.#from.get(key); at !== undefined && at !== null; at = this.#from.get(at.key))
      path.unshift(at.line)
    return path
  }
}

/** The account without what the normal form has forgotten: people, who called a STOP, evidence behind a missing line. */
function forgetting(raw: State, state: State, seen: Watch, onJob: readonly string[]): Watch {
  const named = new Set(openStops(state).flatMap((s) => [s.by, ...s.calledBy]))
  const gates = [...seen.gates].map(([id, account]): [string, Account] => {
    const was = raw.gates[id]
    const is = state.gates[id]
    const stays = (key: string) =>
      (was?.given[key] === undefined && was?.begun[key] === undefined) ||
      is?.given[key] !== undefined ||
      is?.begun[key] !== undefined
    return [
      id,
      {
        ...account,
        given: new Map([...account.given].filter(([key]) => stays(key))),
        begun: new Map([...account.begun].filter(([key]) => stays(key))),
      },
    ]
  })
  return {
    gates: new Map(gates),
    people: seen.people.filter((id) => onJob.includes(id)),
    stop:
      seen.stop === null ? null : { ...seen.stop, barred: seen.stop.barred.filter((id) => named.has(id)) },
  }
}

/** Hazards let in by a read step that came to its end with this entry, as it is the last of it in these. */
function readThrough(defs: Definitions, before: State, after: State, entry: Entry): readonly string[] {
  if (!entry.type.startsWith('reading.') && !entry.type.endsWith('.settled')) return []
  return defs.steps.flatMap((placed) => {
    const { step } = placed
    if (step.kind !== 'read' || step.lets_in === undefined) return []
    const read = asKind(placed, 'read')
    return openPlace(read, before) !== null && openPlace(read, after) === null ? step.lets_in : []
  })
}

/** For tests: where a state of the small job stands in what was searched. */
export function whereIs(defs: Definitions, raw: State, watch: Watch): string {
  const state = normal(defs, raw)
  return outlineOf(defs, state, forgetting(raw, state, watch, peopleOnJob(state)))
}
