// Cross-checks between the files of one job: procedure and parts, machine, instruments, crew and limit books.
// Each file is taken to have passed its own checks.

import { list, nearest, quote } from '../lib/wording.ts'
import type { Crew } from './crew.ts'
import { type Finding, finding } from './lint-common.ts'
import { lintNames } from './lint-crew.ts'
import { lintJobGas } from './lint-job-gas.ts'
import { lintJobInstruments } from './lint-job-instruments.ts'
import { type JobFinding, type JobParts, usedProcedures, within } from './lint-job-shape.ts'
import { lintJobSteps } from './lint-job-steps.ts'
import { lintBurns } from './lint-machine-gas.ts'
import { lintRescue } from './lint-make-safe.ts'
import { lintParts } from './lint-parts.ts'
import type { Machine } from './machine.ts'
import type { Procedure } from './procedure.ts'

/** All findings between the files of one job, in no set order. */
export function lintJob(job: JobParts): JobFinding[] {
  return [
    ...lintFor(job),
    ...within({ kind: 'machine' }, lintFallback(job)),
    ...within({ kind: 'crew' }, [...lintPeople(job.crew), ...lintNames(job.crew)]),
    ...within({ kind: 'machine' }, lintBurns(job.machine)),
    ...lintRescue(job),
    ...lintParts(job.procedure, job.parts, job.beside),
    ...lintJobSteps(job),
    ...lintJobGas(job),
    ...lintJobInstruments(job),
  ]
}

/** Every reason why the procedure refuses this machine, as clauses; none when it fits. */
export function misfits(procedure: Procedure, machine: Machine): string[] {
  const { cylinder, service } = machine
  const reasons: string[] = []
  const check = <T>(accepts: readonly T[], is: T, say: string) => {
    if (!accepts.includes(is)) reasons.push(say)
  }
  check(procedure.for.orientation, cylinder.orientation, `its cylinder is ${cylinder.orientation}`)
  check(procedure.for.acting, cylinder.acting, `it is ${cylinder.acting} acting`)
  check(
    procedure.for.lubricated,
    cylinder.lubricated,
    `it ${cylinder.lubricated ? 'is' : 'is not'} lubricated`,
  )
  check(
    procedure.for.oxidising,
    service.oxidising,
    `its gas ${service.oxidising ? 'is' : 'is not'} oxidising`,
  )
  check(procedure.for.tandem, cylinder.tandem, `it ${cylinder.tandem ? 'is' : 'is not'} a tandem`)
  return reasons
}

/** Why the procedure refuses this machine, in one sentence; nothing when it fits. */
export function misfit(procedure: Procedure, machine: Machine): string | undefined {
  const reasons = misfits(procedure, machine)
  if (reasons.length === 0) return undefined
  return `${quote(procedure.procedure)} is not for the machine ${quote(machine.machine)}: ${list(reasons)}.`
}

function lintFor(job: JobParts): JobFinding[] {
  return usedProcedures(job).flatMap(({ procedure, file }) => {
    const message = misfit(procedure, job.machine)
    if (message === undefined) return []
    return within(file, [
      finding(['for'], 'not-for-machine', message, 'choose a procedure written for such a machine'),
    ])
  })
}

function lintFallback(job: JobParts): Finding[] {
  const book = job.machine.fallback?.book
  const known = job.limitBooks.map((one) => one.limit_book)
  if (book === undefined || known.includes(book)) return []
  const near = nearest(book, known)
  const hint = near === undefined ? `books given: ${list(known)}` : `did you mean ${near}?`
  return [finding(['fallback', 'book'], 'unknown-book', `${quote(book)} is not among the limit books.`, hint)]
}

/** A gate needs a second person, and somebody who may work without a teacher must be there. */
function lintPeople(crew: Crew): Finding[] {
  const found: Finding[] = []
  const [first] = crew.crew
  if (crew.crew.length < 2) {
    const message = `${quote(first?.name ?? '')} is alone on the crew list, and every gate takes two people.`
    found.push(finding(['crew', 0, 'name'], 'alone', message, 'add a second person'))
  }
  if (!crew.crew.some((person) => person.role !== 'trainee')) {
    const message = 'Everybody on the crew list is a trainee.'
    found.push(
      finding(['crew', 0, 'role'], 'no-mechanic', message, 'at least one person is a mechanic or a lead'),
    )
  }
  return found
}
