// What the steps of a job ask of its machine and crew: gas limits, witnesses, a lead, a counterbore to compare with.

import { a, list, quote } from '../lib/wording.ts'
import { type Finding, finding, type Path } from './lint-common.ts'
import { lintWithin } from './lint-job-repeats.ts'
import { type JobFinding, type JobParts, usedProcedures, within } from './lint-job-shape.ts'
import type { GasLimit } from './machine.ts'
import type { Evidence, EvidenceOf, Procedure, Step, StepOf } from './procedure.ts'

/** Findings about every step of the procedure and its parts, each in the file of the step. */
export function lintJobSteps(job: JobParts): JobFinding[] {
  const used = usedProcedures(job)
  const held = new Set(
    used.flatMap(({ procedure }) => procedure.steps.flatMap((s) => (s.kind === 'gate' ? s.holds : []))),
  )
  return used.flatMap(({ procedure, file }) => {
    // Without a part everything is seen in the file itself, and was told there.
    const isOpen = procedure.steps.some((step) => step.kind === 'part')
    return procedure.steps.flatMap((step, index) =>
      within(file, [
        ...lintStep(job, procedure, step, ['steps', index]),
        ...(isOpen ? lintLetIn(step, held, ['steps', index]) : []),
      ]),
    )
  })
}

function lintLetIn(step: Step, held: ReadonlySet<string>, base: Path): Finding[] {
  return ('lets_in' in step ? (step.lets_in ?? []) : []).flatMap((id, n) => {
    if (held.has(id)) return []
    const message = `${quote(id)} is let in here, and no gate holds it, in this file or in a part.`
    return [finding([...base, 'lets_in', n], 'not-held', message)]
  })
}

function lintStep(job: JobParts, procedure: Procedure, step: Step, base: Path): Finding[] {
  return [...lintKind(job, procedure, step, base), ...lintPoint(job, step, base)]
}

/** Somebody has to be there to sign; a notice without a length would run out at once. */
function lintPoint(job: JobParts, step: Step, base: Path): Finding[] {
  const point = step.kind === 'gate' || step.kind === 'part' ? undefined : step.point
  if (point === undefined) return []
  const found: Finding[] = []
  if (!job.crew.crew.some((person) => point.roles.some((role) => role === person.role))) {
    const message = `Nobody on the crew list is ${a(list(point.roles, 'or'))}, so nobody can sign the inspection point of ${quote(step.id)}.`
    found.push(finding([...base, 'point', 'roles'], 'nobody-can', message, whoCould(job, point.roles)))
  }
  if (point.kind === 'witness' && !(point.notice.si > 0)) {
    const message = `The notice of ${quote(step.id)} is no time at all.`
    found.push(
      finding([...base, 'point', 'notice'], 'no-notice', message, 'say how long it runs, or make it hold'),
    )
  }
  return found
}

function lintKind(job: JobParts, procedure: Procedure, step: Step, base: Path): Finding[] {
  if (step.kind === 'gate') return lintGateEvidence(job, step, base)
  if (step.kind === 'read')
    return [...lintCounterbore(job, step, base), ...lintWithin(job, procedure, step, base)]
  if (step.kind !== 'decide' || job.crew.crew.some((person) => person.role === 'lead')) return []
  const message = `Nobody on the crew list is a lead, so nobody can decide in ${quote(step.id)}.`
  return [finding([...base, 'id'], 'nobody-can', message, 'add a lead to the crew list')]
}

/** Without one on record every reading would be doubted for want of anything to compare it with. */
function lintCounterbore(job: JobParts, read: StepOf<'read'>, base: Path): Finding[] {
  if (read.plausible.from !== 'counterbore' || job.machine.bore.counterbore !== undefined) return []
  const message = `${quote(read.id)} is compared with a counterbore, and the record of ${quote(job.machine.machine)} has none.`
  return [
    finding([...base, 'plausible', 'from'], 'no-counterbore', message, 'put it into the machine record'),
  ]
}

/** A gate that asks for no lock at all would be open to whoever comes by. */
function lintLocksOff(
  { machine }: JobParts,
  { id, taken_off: off }: EvidenceOf<'locks'>,
  path: Path,
): Finding[] {
  const points = machine.site.isolation_points
  if (off === undefined || points.some((point) => (point.comes_off ?? 'before_gas') === off)) return []
  const message = `${quote(id)} asks for locks that come off ${off === 'before_gas' ? 'before gas' : 'before the start'}, and the record of ${quote(machine.machine)} has none.`
  const hint = 'say comes_off at the isolation points of the machine record: before_start for what turns it'
  return [finding([...path, 'taken_off'], 'no-such-lock', message, hint)]
}

function lintGateEvidence(job: JobParts, gate: StepOf<'gate'>, base: Path): Finding[] {
  return gate.evidence.flatMap((evidence, n) => {
    const path = [...base, 'evidence', n]
    if (evidence.kind === 'gas') return lintGas(job, gate, evidence, path)
    if (evidence.kind === 'locks') return lintLocksOff(job, evidence, path)
    if (evidence.kind !== 'witness') return []
    if (job.crew.crew.some((person) => evidence.roles.some((role) => role === person.role))) return []
    const message = `Nobody on the crew list is ${a(list(evidence.roles, 'or'))}, so nobody can give ${quote(evidence.id)}.`
    return [finding([...path, 'roles'], 'nobody-can', message, whoCould(job, evidence.roles))]
  })
}

/** Somebody more on the list, or a role that somebody on it has; a trainee can do neither. */
function whoCould(job: JobParts, roles: readonly string[]): string {
  const other = job.crew.crew.find((person) => person.role !== 'trainee')?.role
  const add = `add ${a(list(roles, 'or'))} to the crew list`
  return other === undefined ? add : `${add}, or ${other} to the roles here`
}

type GasEvidence = Extract<Evidence, { kind: 'gas' }>

function lintGas(job: JobParts, gate: StepOf<'gate'>, gas: GasEvidence, path: Path): Finding[] {
  const { limits } = job.machine.site.gas
  const limit = limits.find((one) => one.id === gas.limit)
  if (limit === undefined) {
    // The nearest spelling may be of another gas or another place, and a limit for one place never serves another.
    const known = limits.map((one) => `${one.id} (${spaced(one.gas)}, ${spaced(one.place)})`)
    const hint = `choose by gas and place: ${list(known, 'or')}`
    const message = `${quote(gas.limit)} is not a gas limit of the machine ${quote(job.machine.machine)}.`
    return [finding([...path, 'limit'], 'unknown-gas-limit', message, hint)]
  }
  if (limit.gas !== 'flammable') return []
  if (gas.oxygen === undefined) {
    const message = `${quote(gas.id)} tests for flammables and names no oxygen test.`
    return [finding([...path, 'id'], 'oxygen-first', message, oxygenHint(job, gate, gas, limit.place))]
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

/** The key to add, with the test that serves: of oxygen, at the same place, asked before. */
function oxygenHint(job: JobParts, gate: StepOf<'gate'>, gas: GasEvidence, place: GasLimit['place']): string {
  const { limits } = job.machine.site.gas
  const before = gate.evidence.slice(0, gate.evidence.indexOf(gas))
  const fit = before.find((evidence) => {
    const limit = evidence.kind === 'gas' ? limits.find((one) => one.id === evidence.limit) : undefined
    return limit?.gas === 'oxygen' && limit.place === place
  })
  const key = fit === undefined ? 'add the key oxygen: with the id of' : `add oxygen: ${fit.id},`
  return `${key} the oxygen evidence taken before it at the same place`
}

function spaced(id: string): string {
  return id.replaceAll('_', ' ')
}
