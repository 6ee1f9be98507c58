// What a job wants beside instruments: lifting gear, tools, parts, consumables, papers, and what carries a number.
import type { EvidenceOf, Need } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { once, type Steps, stepsOf } from './steps.ts'

export interface Thing {
  readonly what: string
  /** What it has to be, each as a step says it. */
  readonly notes: readonly string[]
  readonly steps: Steps
}

/** Locks, blinds, tags and papers by their number. */
export interface Numbered extends Thing {
  readonly of: 'lock' | EvidenceOf<'numbers'>['of']
  /** Null: one for each person on the job. */
  readonly count: number | null
  /** Names of the isolation points, where there is one for each. */
  readonly points: readonly string[]
}

/** What steps list under `needs`, of one kind. Needs of a part stand with the first of its steps. */
export function neededThings(defs: Definitions, kind: Need['kind']): Thing[] {
  const wanted = allNeeds(defs).filter(({ need }) => need.kind === kind)
  const keyed = wanted.map(({ need, placed }) => ({ key: keyOf(need.what), placed, thing: need }))
  return once(keyed).map(({ things, steps }) => ({
    what: things[0]?.what ?? '',
    notes: [...new Set(things.flatMap((need) => need.note ?? []))],
    steps,
  }))
}

/** Capitals and spaces make no other thing of it. */
function keyOf(what: string): string {
  return what.trim().toLowerCase().replace(/\s+/g, ' ')
}

function allNeeds(defs: Definitions): { readonly need: Need; readonly placed: PlacedStep }[] {
  const seen = new Set<PlacedStep>()
  return defs.steps.flatMap((placed) => {
    const parts = placed.inside.filter((part) => !seen.has(part))
    for (const part of parts) seen.add(part)
    return [...parts, placed].flatMap(({ step }) => (step.needs ?? []).map((need) => ({ need, placed })))
  })
}

/** Temporary things that steps put in and the register wants back. */
export function placedThings(defs: Definitions): Thing[] {
  const put = defs.steps.flatMap((placed) =>
    'places' in placed.step
      ? (placed.step.places ?? []).map(({ what }) => ({ key: keyOf(what), placed, thing: what }))
      : [],
  )
  return once(put).map(({ things, steps }) => ({ what: things[0] ?? '', notes: [], steps }))
}

/** Lift plans: gear that carries the load asked, as both are asked at the hold point. */
export function lifts(defs: Definitions): Thing[] {
  const plans = evidenceOf(defs, 'lift').map(({ placed, evidence }) => ({
    key: keyOf(`${evidence.load} ${evidence.rating} ${evidence.sling}`),
    placed,
    thing: evidence,
  }))
  return once(plans).map(({ things, steps }) => {
    const plan = things[0]
    return {
      what: 'Sling, numbered, rated for the load or more',
      notes: plan === undefined ? [] : [`load: ${plan.load}`, `rating: ${plan.rating}`],
      steps,
    }
  })
}

/** What the record has of weights, beside the lift plans; what it has not has to be found out before anything is slung. */
export function weightsOnRecord(defs: Definitions): Thing[] {
  const plans = evidenceOf(defs, 'lift').map(({ placed }) => placed)
  if (plans.length === 0) return []
  const { piston, rod } = defs.machine
  const said = (what: string, written: string | undefined) =>
    written === undefined ? `${what}: not on record, from its drawing` : `${what}: ${written}`
  return [
    {
      what: 'Weights on record',
      notes: [said('piston', piston?.mass?.text), said('rod', rod?.mass?.text)],
      steps: stepsOf(plans),
    },
  ]
}

/** Everything whose number a hold point asks for. The same line in several gates is the same thing. */
export function numberedThings(defs: Definitions): Numbered[] {
  const points = defs.machine.site.isolation_points.map((point) => point.name)
  const locks = evidenceOf(defs, 'locks').map(({ placed }) => ({ key: '', placed, thing: null }))
  const numbers = evidenceOf(defs, 'numbers').map(({ placed, evidence }) => ({
    key: `${evidence.of} ${evidence.per} ${evidence.id}`,
    placed,
    thing: evidence,
  }))
  return [
    ...once(locks).map(
      ({ steps }): Numbered => ({ of: 'lock', what: 'lock', notes: [], count: points.length, points, steps }),
    ),
    ...once(numbers).flatMap(({ things: [one], steps }): Numbered[] => {
      if (one === undefined) return []
      const base = { of: one.of, what: one.of.replaceAll('_', ' '), notes: [one.ask], steps }
      if (one.per === 'isolation_point') return [{ ...base, count: points.length, points }]
      return [{ ...base, count: one.per === 'once' ? 1 : null, points: [] }]
    }),
  ]
}

type Held<K extends 'lift' | 'locks' | 'numbers'> = {
  readonly placed: PlacedStep
  readonly evidence: EvidenceOf<K>
}

function evidenceOf<K extends 'lift' | 'locks' | 'numbers'>(defs: Definitions, kind: K): Held<K>[] {
  return defs.steps.flatMap((placed) =>
    placed.step.kind !== 'gate'
      ? []
      : placed.step.evidence.flatMap((one) =>
          one.kind === kind ? [{ placed, evidence: one as EvidenceOf<K> }] : [],
        ),
  )
}
