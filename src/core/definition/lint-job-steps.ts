// Walks a procedure with its parts opened out: gas limits, witnesses, parts inside parts, and hazards held by a part.
import { a, type Finding, finding, list, nearest, type Path, quote } from './lint-common.ts'
import { type JobFile, type JobFinding, type JobParts, within } from './lint-job-shape.ts'
import type { Evidence, Procedure, Step, StepOf } from './procedure.ts'

/** Parts within parts can multiply; a job sheet of this many steps is a mistake. */
const MOST_STEPS = 2000

interface Walk {
  readonly job: JobParts
  readonly found: JobFinding[]
  steps: number
}

/** Findings about the steps of the job as a person would walk them. */
export function lintJobSteps(job: JobParts): JobFinding[] {
  const walk: Walk = { job, found: [], steps: 0 }
  open(walk, job.procedure, { kind: 'procedure' }, [job.procedure.procedure], new Set())
  return walk.found
}

/** Returns the hazards held once this procedure has been walked; `held` are those held when it starts. */
function open(
  walk: Walk,
  procedure: Procedure,
  file: JobFile,
  inside: readonly string[],
  held: ReadonlySet<string>,
): Set<string> {
  const now = new Set(held)
  procedure.steps.forEach((step, index) => {
    const path = ['steps', index]
    walk.steps += 1
    walk.found.push(...within(file, lintHeld(procedure, step, index, now)))
    if (step.kind === 'gate') {
      walk.found.push(...within(file, lintGateEvidence(walk.job, step, path)))
      for (const id of step.holds) now.add(id)
    }
    if (step.kind !== 'part') return
    const used = usable(walk, step, file, path, inside)
    if (used === undefined) return
    const after = open(walk, used, { kind: 'part', id: step.use }, [...inside, step.use], now)
    // A part with a condition may be skipped, and its gates with it.
    if (step.when === undefined) for (const id of after) now.add(id)
  })
  return now
}

function usable(walk: Walk, step: StepOf<'part'>, file: JobFile, path: Path, inside: readonly string[]) {
  const where = [...path, 'use']
  const say = (code: string, message: string, hint?: string) => {
    walk.found.push(...within(file, [finding(where, code, message, hint)]))
    return undefined
  }
  if (inside.includes(step.use)) return say('part-loop', `${quote(step.use)} would stand inside itself.`)
  if (walk.steps > MOST_STEPS)
    return say('too-many-steps', `With ${quote(step.use)} the job has over ${MOST_STEPS} steps.`)
  const used = walk.job.parts.get(step.use)
  if (used !== undefined) return used
  const known = [...walk.job.parts.keys()]
  const near = nearest(step.use, known)
  const hint = near === undefined ? `parts given: ${list(known)}` : `did you mean ${near}?`
  return say('unknown-part', `${quote(step.use)} is not among the procedures given.`, hint)
}

/** Only what the check of the file itself left open: a hazard that a part standing earlier was trusted to hold. */
function lintHeld(procedure: Procedure, step: Step, index: number, held: ReadonlySet<string>): Finding[] {
  if (!procedure.steps.slice(0, index).some((earlier) => earlier.kind === 'part')) return []
  return (step.exposes ?? []).flatMap((id, n) => {
    if (held.has(id)) return []
    const message = `${quote(id)} is held back by no gate before this step, in this file or in a part.`
    const hint = 'a gate inside a part with when does not count: the part may be skipped'
    return [finding(['steps', index, 'exposes', n], 'not-held', message, hint)]
  })
}

function lintGateEvidence(job: JobParts, gate: StepOf<'gate'>, base: Path): Finding[] {
  return gate.evidence.flatMap((evidence, n) => {
    const path = [...base, 'evidence', n]
    if (evidence.kind === 'gas') return lintGas(job, gate, evidence, path)
    if (evidence.kind !== 'witness') return []
    if (job.crew.crew.some((person) => evidence.roles.some((role) => role === person.role))) return []
    const message = `Nobody on the crew list is ${a(list(evidence.roles, 'or'))}, so nobody can give ${quote(evidence.id)}.`
    return [finding([...path, 'roles'], 'nobody-can', message)]
  })
}

type GasEvidence = Extract<Evidence, { kind: 'gas' }>

function lintGas(job: JobParts, gate: StepOf<'gate'>, gas: GasEvidence, path: Path): Finding[] {
  const { limits } = job.machine.site.gas
  const limit = limits.find((one) => one.id === gas.limit)
  if (limit === undefined) {
    const known = limits.map((one) => one.id)
    const near = nearest(gas.limit, known)
    const hint = near === undefined ? `its gas limits are ${list(known)}` : `did you mean ${near}?`
    const message = `${quote(gas.limit)} is not a gas limit of the machine ${quote(job.machine.machine)}.`
    return [finding([...path, 'limit'], 'unknown-gas-limit', message, hint)]
  }
  if (limit.gas !== 'flammable') return []
  if (gas.oxygen === undefined) {
    const message = `${quote(gas.id)} tests for flammables and names no oxygen test.`
    return [
      finding([...path, 'id'], 'oxygen-first', message, 'name the oxygen evidence taken at the same place'),
    ]
  }
  const first = gate.evidence.find((evidence) => evidence.id === gas.oxygen)
  const oxygen = first?.kind === 'gas' ? limits.find((one) => one.id === first.limit) : undefined
  if (oxygen === undefined) return []
  const where = [...path, 'oxygen']
  if (oxygen.gas !== 'oxygen') {
    return [
      finding(
        where,
        'not-oxygen',
        `${quote(gas.oxygen)} is tested against ${quote(oxygen.id)}, which is not for oxygen.`,
      ),
    ]
  }
  if (oxygen.place === limit.place) return []
  const message = `${quote(gas.oxygen)} is taken in another place than ${quote(gas.id)}.`
  const hint = `one is for ${oxygen.place}, the other for ${limit.place}`
  return [finding(where, 'other-place', message, hint)]
}
