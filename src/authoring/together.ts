// Checks files as they lie in a folder: each for itself, procedures with the parts they use, and every procedure with
// every machine record as the job it would be. What a file names and was not given is fetched through a port.
import { misfits } from '../core/definition/lint-job.ts'
import { lintParts } from '../core/definition/lint-parts.ts'
import { list } from '../core/lib/wording.ts'
import { type Checked, type GoodJob, type GoodOf, inOrder, lintGoodJob, type TextFile } from './check.ts'
import { procedureIdIn } from './definition-file.ts'
import type { Diagnostic } from './diagnostic.ts'
import { type Disk, Folder } from './folder.ts'
import { inParts, type Using } from './in-part.ts'
import { locateFinding } from './locate.ts'
import { scenarioIn } from './scenario-in.ts'
import { usesOf } from './uses.ts'

export interface CheckedTogether extends Checked {
  /** Every file that was looked at: those given, then those that they name. */
  readonly files: readonly TextFile[]
  /** Procedure and machine of each job that was checked as a whole, by their ids. */
  readonly jobs: readonly { readonly procedure: string; readonly machine: string }[]
  /** Procedures given whose own errors keep them from being checked as jobs on the machines that were. */
  readonly waiting: readonly string[]
  /** Those of them that hold: what can be searched for a way past a gate. */
  readonly sound: readonly GoodJob[]
  /** Ids of procedures that hold and were checked as no job, since no machine record given is one they take. */
  readonly alone: readonly string[]
  /** One sentence for each procedure that refuses a machine, which is no problem of either. */
  readonly refusals: readonly string[]
  /** Errors ended the check of a file, or of a job, before its later checks were made. */
  readonly isStoppedEarly: boolean
}

export function checkTogether(given: readonly TextFile[], disk: Disk): CheckedTogether {
  const folder = new Folder(given, disk)
  const procedures = folder.goodOf('procedure')
  // A part that was only fetched is no job by itself.
  const jobsOf = procedures.filter((one) => given.some(({ path }) => path === one.yaml.file))
  const machines = folder.goodOf('machine')
  const found: Diagnostic[] = procedures.flatMap((one) => problemsOfParts(folder, one))
  const jobs: { procedure: string; machine: string }[] = []
  const sound: GoodJob[] = []
  const refusals = new Set<string>()
  for (const machine of machines) {
    const { job, problems } = usesOf(folder, machine)
    found.push(...problems)
    if (job === undefined) continue
    for (const procedure of jobsOf) {
      const reasons = misfits(procedure.value, machine.value)
      const parts = folder.partsOf(procedure)
      if (reasons.length > 0) refusals.add(refusal(procedure, machine, reasons))
      if (reasons.length > 0 || parts === undefined) continue
      const whole = { ...job, procedure, parts, beside: folder.procedureIdsBeside(procedure.yaml.file) }
      const wrong = lintGoodJob(whole)
      found.push(...wrong)
      if (wrong.every((d) => d.severity !== 'error')) sound.push(whole)
      jobs.push({ procedure: procedure.value.procedure, machine: machine.value.machine })
    }
  }
  // After the jobs: what a scenario names is fetched for it alone, and is no job of its own.
  for (const scenario of folder.goodOf('scenario')) found.push(...scenarioIn(folder, scenario))
  found.push(...folder.ownProblems())
  const more = inParts(
    procedures.map((one) => usingOf(folder, one)),
    found,
  )
  const waiting = machines.length === 0 ? [] : waitingIn(folder, given)
  const files = folder.files()
  const paths = files.map((file) => file.path)
  const diagnostics = inOrder(paths, [...found, ...more])
  const alone = jobsOf
    .map((one) => one.value.procedure)
    .filter((id) => !jobs.some((job) => job.procedure === id))
  return {
    diagnostics,
    kinds: folder.kinds(),
    files,
    jobs,
    sound: sound.filter((job) => holds(job, diagnostics)),
    alone,
    waiting,
    refusals: [...refusals],
    isStoppedEarly: folder.isStoppedEarly(),
  }
}

/** By id where the text still tells it, else by file. */
function waitingIn(folder: Folder, given: readonly TextFile[]): string[] {
  return given.flatMap(({ path, text }) => {
    const result = folder.at(path)?.result
    return result?.ok === false && result.kind === 'procedure' ? [procedureIdIn(text) ?? path] : []
  })
}

/** No file of the job has an error. */
function holds(job: GoodJob, diagnostics: readonly Diagnostic[]): boolean {
  const files = [job.procedure, ...job.parts, job.machine, job.instruments, job.crew, ...job.limitBooks]
  const paths = new Set(files.map((one) => one.yaml.file))
  return diagnostics.every((d) => d.severity !== 'error' || !paths.has(d.file))
}

function refusal(
  procedure: GoodOf<'procedure'>,
  machine: GoodOf<'machine'>,
  reasons: readonly string[],
): string {
  return `${procedure.value.procedure} does not take the machine ${machine.value.machine}: ${list(reasons)}.`
}

function usingOf(folder: Folder, { yaml, value }: GoodOf<'procedure'>): Using {
  return { yaml, procedure: value, fileOf: (id) => folder.partFile(yaml.file, id) }
}

/** What can be said of a procedure and its parts without a machine. */
function problemsOfParts(folder: Folder, procedure: GoodOf<'procedure'>): Diagnostic[] {
  const parts = folder.partsOf(procedure)
  if (parts === undefined) return []
  const byId = new Map(parts.map((one) => [one.value.procedure, one]))
  const values = new Map(parts.map((one) => [one.value.procedure, one.value]))
  const found = lintParts(procedure.value, values, folder.procedureIdsBeside(procedure.yaml.file))
  return found.map((one) => {
    const part = one.in.kind === 'part' ? byId.get(one.in.id) : undefined
    return locateFinding((part ?? procedure).yaml, one)
  })
}
