// What a gate asks for, and what of it is missing. When it lapses is in lapse.ts.
import { type Evidence, type EvidenceOf, INSPECTED_WORDS } from '../definition/evidence.ts'
import type { StepOf } from '../definition/procedure.ts'
import { oncePer, oncePerPair } from '../lib/once.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { peopleOnJob } from './people-on.ts'
import { EMPTY_GATE, type GateState, type State } from './state.ts'

export type GateStep = PlacedStep & { readonly step: StepOf<'gate'> }

export type LiftPart = 'load' | 'rating' | 'sling' | 'inspected'

/** In the order they are asked. */
export const LIFT_PARTS: readonly LiftPart[] = ['load', 'rating', 'sling', 'inspected']

/** One thing to be shown. Locks come to one item per isolation point, a lift plan to one per part of it. */
export interface Item {
  readonly key: string
  readonly evidence: Evidence
  readonly point: { readonly id: string; readonly name: string } | null
  /** Whose number it is, where each person has one. */
  readonly person: string | null
  readonly part: LiftPart | null
}

export function itemsOf(defs: Definitions, state: State, gate: GateStep): readonly Item[] {
  return itemsFor(defs, gate, peopleOnJob(state))
}

/** The items of a gate with these people on the job. */
export function itemsFor(defs: Definitions, gate: GateStep, people: readonly string[]): readonly Item[] {
  const { isCounted, known } = itemsKnown(defs, gate)
  const key = isCounted ? people.join(' ') : ''
  let items = known.get(key)
  if (items === undefined) {
    items = gate.step.evidence.flatMap((evidence) => itemsOfEvidence(defs, evidence, people))
    known.set(key, items)
  }
  return items
}

/** The items of a gate by the people on the job, ids hold no space; where it asks nothing of each person, once for all. */
const itemsKnown = oncePerPair((_defs: Definitions, gate: GateStep) => ({
  isCounted: gate.step.evidence.some((e) => e.kind === 'numbers' && e.per === 'person'),
  known: new Map<string, readonly Item[]>(),
}))

function itemsOfEvidence(defs: Definitions, evidence: Evidence, people: readonly string[]): Item[] {
  const { id } = evidence
  if (evidence.kind === 'lift')
    return LIFT_PARTS.map((part) => ({ key: `${id}.${part}`, evidence, point: null, person: null, part }))
  if (evidence.kind === 'numbers' && evidence.per === 'person')
    return [
      ...people.map((person) => ({ key: `${id}.${person}`, evidence, point: null, person, part: null })),
      // Nobody can give it: it is there until somebody else has come onto the job.
      ...(people.length < (evidence.at_least ?? 0)
        ? [{ key: `${id}.another`, evidence, point: null, person: null, part: null }]
        : []),
    ]
  if (evidence.kind === 'locks' || (evidence.kind === 'numbers' && evidence.per === 'isolation_point'))
    return pointsAsked(defs, evidence).map((point) => ({
      key: `${id}.${point.id}`,
      evidence,
      point,
      person: null,
      part: null,
    }))
  return [{ key: id, evidence, point: null, person: null, part: null }]
}

/** The isolation points it asks of: all, or, where locks come off, those whose lock comes off then, last on first off. */
export function pointsAsked(
  { machine }: Pick<Definitions, 'machine'>,
  evidence: Evidence,
): Definitions['machine']['site']['isolation_points'] {
  const { isolation_points: all } = machine.site
  const off = evidence.kind === 'locks' ? evidence.taken_off : undefined
  return off === undefined ? all : all.filter((point) => (point.comes_off ?? 'before_gas') === off).reverse()
}

/** Whether it tells that a lock, a blind or a tag was taken off. */
export function comesOff(evidence: Evidence | null): boolean {
  return (evidence?.kind === 'locks' || evidence?.kind === 'numbers') && evidence.taken_off !== undefined
}

/** The line of evidence that an item belongs to; ids hold no dot. */
export function evidenceByKey(gate: GateStep, key: string): Evidence | null {
  const [id] = key.split('.', 1)
  return gate.step.evidence.find((evidence) => evidence.id === id) ?? null
}

/**
 * The item an entry speaks of; also that of somebody who has left the job since, or of a point that a record before this one
 * had. Null for one the gate never asks.
 */
export function itemByKey(defs: Definitions, gate: GateStep, key: string): Item | null {
  const evidence = evidenceByKey(gate, key)
  if (evidence === null) return null
  const behind = key === evidence.id ? [] : [key.slice(evidence.id.length + 1)]
  const known = itemsOfEvidence(defs, evidence, behind).find((item) => item.key === key)
  return known ?? itemAtFormerPoint(defs, evidence, key, behind)
}

/**
 * At a point that the record has no more, or whose lock comes off at another time, since another was taken in: what was hung
 * there may hang there all the same.
 */
function itemAtFormerPoint(
  { machine }: Definitions,
  evidence: Evidence,
  key: string,
  behind: readonly string[],
): Item | null {
  const isPerPoint =
    evidence.kind === 'locks' || (evidence.kind === 'numbers' && evidence.per === 'isolation_point')
  const [id] = behind
  if (!isPerPoint || id === undefined) return null
  const name = `${id.replaceAll('_', ' ')}, a point that the record has no more`
  const point = machine.site.isolation_points.find((one) => one.id === id) ?? { id, name }
  return { key, evidence, point, person: null, part: null }
}

/** Whether its number is that of something which hangs on the machine: a lock, a tag, a blind. A part is what it hangs on. */
export function hangs(evidence: Evidence | null): boolean {
  if (comesOff(evidence)) return false
  if (evidence?.kind === 'locks') return true
  return evidence?.kind === 'numbers' && evidence.of !== 'permit' && evidence.of !== 'part'
}

/** The seat of the instrument that the line is read with or said of, which is picked before it is asked; null: none. */
export function seatOf(evidence: Evidence): string | null {
  if ('with' in evidence) return evidence.with
  return evidence.kind === 'words' ? (evidence.seat ?? null) : null
}

/** Whether the item only says that somebody else has to come onto the job. */
export function wantsAnother({ evidence, person }: Item): boolean {
  return evidence.kind === 'numbers' && evidence.per === 'person' && person === null
}

export function gateState(state: State, id: string): GateState {
  return state.gates[id] ?? EMPTY_GATE
}

export function missingItem(defs: Definitions, state: State, gate: GateStep): Item | null {
  const { given } = gateState(state, gate.id)
  return itemsOf(defs, state, gate).find((item) => given[item.key] === undefined) ?? null
}

/** Everybody who gave any of the evidence that stands, or began a wait. */
export function doersAt(gate: GateState): ReadonlySet<string | null> {
  return new Set([...Object.values(gate.given), ...Object.values(gate.begun)].map((one) => one.by))
}

/** The words typed for a sling that was looked over. */
export function inspectedWords(lift: EvidenceOf<'lift'>): string {
  return lift.words ?? INSPECTED_WORDS
}

/** Hazards that evidence of this gate proves. The witness vouches for all of it. */
export function provesAt(gate: GateStep, evidence: Evidence): readonly string[] {
  return evidence.kind === 'witness' ? gate.step.holds : (evidence.against ?? gate.step.holds)
}

/** What was shown or begun at the gate against any of these hazards; what is known no more counts as against each. */
export function provingAny(state: State, gate: GateStep, hazards: ReadonlySet<string>): string[] {
  const { given, begun } = gateState(state, gate.id)
  return Object.keys({ ...given, ...begun }).filter((key) => {
    const evidence = evidenceByKey(gate, key)
    return evidence === null || provesAt(gate, evidence).some((hazard) => hazards.has(hazard))
  })
}

export const gatesOf = oncePer((defs: Definitions): readonly GateStep[] =>
  defs.steps.filter((s): s is GateStep => s.step.kind === 'gate'),
)

/** Gates that hold back any hazard the step exposes people to. */
export const gatesBefore = oncePerPair((defs: Definitions, placed: PlacedStep): readonly GateStep[] => {
  const exposes = placed.step.exposes ?? []
  return gatesOf(defs).filter(
    (gate) => gate.id !== placed.id && gate.step.holds.some((h) => exposes.includes(h)),
  )
})

/** Hazards a step exposes people to that no other step, a gate, holds back: such a step is never presented. */
export const unheld = oncePerPair((defs: Definitions, placed: PlacedStep): readonly string[] => {
  const others = gatesOf(defs).filter((gate) => gate.id !== placed.id)
  return (placed.step.exposes ?? []).filter((h) => !others.some((gate) => gate.step.holds.includes(h)))
})
