// Everything a job was opened with, parsed: the flattened procedure and the records it refers to.
// A job keeps the exact texts of these files, so it never changes under the people working from it.
import type { Crew, Person } from '../definition/crew.ts'
import type { Instrument, Instruments } from '../definition/instruments.ts'
import type { LimitBook } from '../definition/limit-book.ts'
import type { GasLimit, Machine } from '../definition/machine.ts'
import { omitsWithin, omittedFault } from '../definition/omitted.ts'
import type { OverTime, Procedure, Seat, Step, StepOf } from '../definition/procedure.ts'
import type { Scenario } from '../definition/scenario.ts'
import { oncePer } from '../lib/once.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { COMPUTATIONS } from '../rules/computations.ts'
import { compileFigures } from '../rules/figures.ts'
import { compileRuleAt, compileValues, type ProcedureValue } from '../rules/procedure-values.ts'
import type { CompiledRule, RuleOutcome } from '../rules/rule.ts'
import type { CompiledValue } from '../rules/value.ts'
import { sound } from './sound.ts'
import type { State } from './state.ts'

export type RecordKind = 'REAL' | 'PRACTICE' | 'EXAMPLE'

/** A step in its place in the whole job. Steps of a part carry the part's id before theirs. */
export interface PlacedStep {
  readonly step: Step
  readonly id: string
  /** Number on the sheet, from 1. */
  readonly number: number
  readonly rule: CompiledRule | null
  /** Put before ids that the step's own text refers to. */
  readonly scope: string
  /** A part's own condition, which its steps inherit. */
  readonly inside: readonly PlacedStep[]
  /** The expressions of a judge by figures, in its order. */
  readonly figures?: readonly CompiledValue[]
}

/** A derived value in its place. `steps` are ids in the whole job, of all it rests on. */
export interface PlacedValue extends ProcedureValue {
  readonly scope: string
}

/** A test over time in its place; all ids are those in the whole job. */
export interface PlacedTest {
  readonly id: string
  readonly title: string
  /** Every step from its first to its last that is done by people, in order. */
  readonly steps: readonly string[]
  readonly from: string
  /** Null: the start may be read at once. */
  readonly settlesMs: number | null
  readonly start: readonly string[]
  readonly stand: string
  readonly end: readonly string[]
  readonly until: string | null
}

export type Hazard = Procedure['hazards'][number]

export interface Definitions {
  readonly procedure: Procedure
  readonly machine: Machine
  readonly instruments: Instruments
  readonly crew: Crew
  readonly limitBooks: readonly LimitBook[]
  readonly steps: readonly PlacedStep[]
  readonly values: readonly PlacedValue[]
  readonly overTime: readonly PlacedTest[]
  readonly seats: readonly Seat[]
  /** Every hazard that the procedure and its parts name; where two name one, the words of the whole. */
  readonly hazards: readonly Hazard[]
  /** What the procedure and its parts add to the make-safe sheet. */
  readonly makeSafe: readonly string[]
  /** Ids of those of its procedures that are marked invented. */
  readonly invented: readonly string[]
  /** Of a practice session that an instructor wrote; left out of every other, and of every job. */
  readonly scenario?: Scenario
  /** For the search over every branch: what a rule is taken to come to. Left out, as in every job: it is worked out. */
  readonly ruled?: (state: State, placed: PlacedStep) => RuleOutcome | undefined
  /** For the search, which leaves both open: tests over time tie nothing, and no gate asks for findings decided. */
  readonly loose?: true
}

export interface Sources {
  readonly procedure: Procedure
  /** Procedures that `part` steps may use, by id. */
  readonly parts: ReadonlyMap<string, Procedure>
  readonly machine: Machine
  readonly instruments: Instruments
  readonly crew: Crew
  readonly limitBooks: readonly LimitBook[]
  /** What rules and values may call; the program's own unless said. */
  readonly computations?: typeof COMPUTATIONS
}

/** Puts the pieces together and flattens parts. Refuses an unknown part, a part inside itself, or a rule that does not hold. */
export function assemble(sources: Sources): Result<Definitions> {
  const steps: PlacedStep[] = []
  const values: PlacedValue[] = []
  const overTime: PlacedTest[] = []
  const seats = new Map<string, Seat>()
  const hazards = new Map<string, Hazard>()
  const makeSafe = new Set<string>()
  const invented = new Set<string>()
  const placed = place(sources.procedure, {
    sources,
    scope: '',
    open: [sources.procedure.procedure],
    inside: [],
    omits: new Set(),
    steps,
    values,
    overTime,
    seats,
    hazards,
    makeSafe,
    invented,
  })
  if (!placed.ok) return placed
  // By name: whoever assembles may bring more than this, and definitions of the same files are to be the same.
  const { procedure, machine, instruments, crew, limitBooks } = sources
  return sound({
    procedure,
    machine,
    instruments,
    crew,
    limitBooks,
    steps,
    values,
    overTime,
    seats: [...seats.values()],
    hazards: [...hazards.values()],
    makeSafe: [...makeSafe],
    invented: [...invented],
  })
}

interface Placing {
  readonly sources: Sources
  readonly scope: string
  readonly open: readonly string[]
  readonly inside: readonly PlacedStep[]
  /** Ids of steps of this procedure that are left out. */
  readonly omits: ReadonlySet<string>
  readonly steps: PlacedStep[]
  readonly values: PlacedValue[]
  readonly overTime: PlacedTest[]
  readonly seats: Map<string, Seat>
  readonly hazards: Map<string, Hazard>
  readonly makeSafe: Set<string>
  readonly invented: Set<string>
}

function place(procedure: Procedure, p: Placing): Result<null> {
  for (const seat of procedure.seats) if (!p.seats.has(seat.id)) p.seats.set(seat.id, seat)
  for (const hazard of procedure.hazards) if (!p.hazards.has(hazard.id)) p.hazards.set(hazard.id, hazard)
  for (const line of procedure.make_safe ?? []) p.makeSafe.add(line)
  if (procedure.invented === true) p.invented.add(procedure.procedure)
  const { computations = COMPUTATIONS } = p.sources
  const values = compileValues(procedure, computations)
  const [refused] = values.refused
  if (refused !== undefined) return { ok: false, error: refused.refusal }
  const gone = omittedFault(procedure, p.omits)
  if (gone !== null) return refuse('part-omits', gone)
  for (const value of values.values)
    p.values.push({ ...value, scope: p.scope, steps: value.steps.map((id) => p.scope + id) })
  for (const [index, step] of procedure.steps.entries()) {
    let rule: CompiledRule | null = null
    if (step.when !== undefined) {
      const compiled = compileRuleAt(procedure, index, step.when.rule, values, computations)
      if (!compiled.ok) return compiled
      rule = compiled.value
    }
    if (p.omits.has(step.id)) continue
    const figures = compileFigures(procedure, index, values, computations)
    if (!figures.ok) return figures
    const here = {
      step,
      id: p.scope + step.id,
      rule,
      scope: p.scope,
      inside: p.inside,
      ...(figures.value.length === 0 ? {} : { figures: figures.value }),
    }
    if (step.kind !== 'part') {
      p.steps.push({ ...here, number: p.steps.length + 1 })
      continue
    }
    const used = p.sources.parts.get(step.use)
    if (used === undefined)
      return refuse('part', `The part ${step.id} uses ${step.use}, which is not among the procedures.`)
    if (p.open.includes(step.use))
      return refuse('part-loop', `The part ${step.id} would put ${step.use} inside itself.`)
    const inside = [...p.inside, { ...here, number: 0 }]
    const within = place(used, {
      ...p,
      scope: `${p.scope}${step.id}__`,
      open: [...p.open, step.use],
      inside,
      omits: omitsWithin(step, p.omits),
    })
    if (!within.ok) return within
  }
  for (const test of procedure.over_time ?? []) p.overTime.push(placedTest(p, test))
  return ok(null)
}

/** Of a step that the files do not have nothing comes: `check` and sound.ts refuse it. */
function placedTest({ scope, steps }: Placing, test: OverTime): PlacedTest {
  const own = (id: string) => scope + id
  const at = (id: string) => steps.findIndex((one) => one.id === own(id))
  const last = Math.max(...[...test.end, test.until ?? ''].map(at))
  const isDone = ({ step }: PlacedStep) =>
    ['tell', 'confirm', 'observe', 'read'].some((kind) => kind === step.kind)
  return {
    id: own(test.id),
    title: test.title,
    steps: steps
      .slice(Math.max(0, at(test.from)), last + 1)
      .filter(isDone)
      .map(({ id }) => id),
    from: own(test.from),
    settlesMs: test.settles === undefined ? null : test.settles.si * 1000,
    start: test.start.map(own),
    stand: own(test.stand),
    end: test.end.map(own),
    until: test.until === undefined ? null : own(test.until),
  }
}

/** What the hazard is called where people read it; an id that no procedure names is at least not program text. */
export function hazardName({ hazards }: Pick<Definitions, 'hazards'>, id: string): string {
  return hazards.find((hazard) => hazard.id === id)?.name ?? id.replaceAll('_', ' ')
}

/** Every step by its id; a part is none. */
export const stepsById = oncePer(
  (defs: Definitions): ReadonlyMap<string, PlacedStep> => new Map(defs.steps.map((s) => [s.id, s])),
)

export function stepById(defs: Definitions, id: string): PlacedStep {
  const found = stepsById(defs).get(id)
  if (found === undefined) throw new Error(`no step ${id} in the procedure`)
  return found
}

/** Narrows a placed step to one kind; asking for another kind is a bug. */
export function asKind<K extends Step['kind']>(
  placed: PlacedStep,
  kind: K,
): PlacedStep & { readonly step: StepOf<K> } {
  if (placed.step.kind !== kind) throw new Error(`step ${placed.id} is a ${placed.step.kind}, not a ${kind}`)
  return placed as PlacedStep & { readonly step: StepOf<K> }
}

export function instrumentById(defs: Definitions, id: string): Instrument | undefined {
  return defs.instruments.instruments.find((i) => i.id === id)
}

export function personById(defs: Definitions, id: string): Person | undefined {
  return defs.crew.crew.find((p) => p.id === id)
}

export function gasLimitById(defs: Definitions, id: string): GasLimit | undefined {
  return defs.machine.site.gas.limits.find((l) => l.id === id)
}
