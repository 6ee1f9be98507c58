// Who has to be there: who works, who witnesses, who signs at a point, who decides; and whether somebody on the crew list can.
import type { Person } from '../definition/crew.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { a, list } from '../lib/wording.ts'
import { once, type Steps, stepsText } from './steps.ts'

export interface Role {
  /** What they do, as a few words: `witnesses a hold point`. */
  readonly does: string
  readonly roles: readonly Person['role'][]
  /** Never whoever did the step, so there have to be two. */
  readonly second: boolean
  /** Whoever measured does not. */
  readonly decides: boolean
  /** Null where it is not about single steps. */
  readonly steps: Steps | null
  /** Ids of those on the crew list who can. */
  readonly can: readonly string[]
  /** What the job is not to be started without, as a clause with why; null where somebody can. */
  readonly held: string | null
}

interface Asked {
  readonly placed: PlacedStep
  readonly does: string
  readonly roles: readonly Person['role'][]
  /** Never whoever did the step: then there have to be two. */
  readonly second: boolean
}

const WORKS: readonly Person['role'][] = ['mechanic', 'lead']

const DECIDES = 'decides on a verdict'

const POINTS = {
  hold: 'signs at an inspection point, a hold',
  witness: 'is given notice and signs at an inspection point, a witness point',
  review: 'reads the records and signs for them',
} as const

export function kitRoles(defs: Definitions): Role[] {
  const { crew } = defs.crew
  const workers = crew.filter((person) => WORKS.includes(person.role))
  const works: Role = {
    does: 'does the work and keys it',
    roles: WORKS,
    second: false,
    decides: false,
    steps: null,
    can: workers.map((person) => person.id),
    held:
      workers.length > 0 ? null : 'a mechanic or lead, who does the work: nobody on the crew list is one.',
  }
  const asked = defs.steps.flatMap(askedAt).map((one) => ({
    key: `${one.does} ${[...one.roles].sort().join(' ')}`,
    placed: one.placed,
    thing: one,
  }))
  return [
    works,
    ...once(asked).flatMap(({ things: [one], steps }): Role[] =>
      one === undefined ? [] : [roleOf(one, steps, crew, workers)],
    ),
  ]
}

function askedAt(placed: PlacedStep): Asked[] {
  const { step } = placed
  const gate = step.kind === 'gate' ? step.evidence : []
  const witnesses = gate.flatMap((one): Asked[] =>
    one.kind === 'witness'
      ? [{ placed, does: 'witnesses a hold point', roles: one.roles, second: true }]
      : [],
  )
  const point = 'point' in step ? step.point : undefined
  return [
    ...witnesses,
    ...(point === undefined ? [] : [{ placed, does: POINTS[point.kind], roles: point.roles, second: true }]),
    ...(step.kind === 'decide' ? [{ placed, does: DECIDES, roles: ['lead'] as const, second: false }] : []),
  ]
}

function roleOf(
  { does, roles, second }: Asked,
  steps: Steps,
  crew: readonly Person[],
  workers: readonly Person[],
): Role {
  const able = crew.filter((person) => roles.includes(person.role))
  const hasOther = able.some((person) => workers.some((worker) => worker.id !== person.id))
  const decides = does === DECIDES
  const base = { does, roles, second, decides, steps, can: able.map((person) => person.id) }
  const where = stepsText(steps)
  if (able.length === 0)
    return {
      ...base,
      held: `${a(list(roles, 'or'))}, who ${does} (${where}): nobody on the crew list is one.`,
    }
  if (!second || hasOther) return { ...base, held: null }
  return {
    ...base,
    held: `a second person, who ${does} (${where}): only ${list(base.can)} could, and nobody vouches for their own work.`,
  }
}
