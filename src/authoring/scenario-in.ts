// A scenario as it lies in a folder: the procedure and the machine that it names are fetched, and it is held against both.
import { finding } from '../core/definition/lint-common.ts'
import { misfits } from '../core/definition/lint-job.ts'
import { assemble } from '../core/job/definitions.ts'
import { list, quote } from '../core/lib/wording.ts'
import { type GoodJob, type GoodOf, lintGoodJob, partsOf } from './check.ts'
import { readDefinition } from './definition-file.ts'
import type { Diagnostic } from './diagnostic.ts'
import type { Folder } from './folder.ts'
import { locateFinding } from './locate.ts'
import { practiceRecord } from './practice-record.ts'
import { scenarioProblems } from './scenario.ts'
import { usesOf } from './uses.ts'

/** Only what can be put right in the scenario; what is wrong in a file it names is told of that file. */
export function scenarioIn(folder: Folder, scenario: GoodOf<'scenario'>): Diagnostic[] {
  const { yaml, value } = scenario
  const say = (key: 'procedure' | 'machine', code: string, message: string, hint?: string) => [
    locateFinding(yaml, finding([key], code, message, hint)),
  ]
  const found = { procedure: value.procedure, machine: value.machine }
  const problems: Diagnostic[] = []
  const get = <K extends 'procedure' | 'machine'>(kind: K): GoodOf<K> | undefined => {
    const result = folder.named(kind, yaml.file, found[kind])?.result
    if (result === undefined)
      problems.push(
        ...say(
          kind,
          'missing-file',
          `${quote(found[kind])} is not there, and nothing is shipped under that name.`,
        ),
      )
    else if (result.kind !== undefined && result.kind !== kind)
      problems.push(
        ...say(
          kind,
          'other-kind',
          `${quote(found[kind])} is a file of the kind ${quote(result.kind)}, and ${quote(kind)} is needed.`,
        ),
      )
    else if (!result.ok)
      problems.push(...say(kind, 'not-sound', `${quote(found[kind])} does not hold by itself.`))
    return result?.ok && result.kind === kind ? (result as GoodOf<K>) : undefined
  }
  const procedure = get('procedure')
  const machine = get('machine')
  if (procedure === undefined || machine === undefined) return problems
  const job = jobOf(folder, procedure, asPractised(machine))
  if (job === undefined)
    return say(
      'machine',
      'not-sound',
      `${quote(value.machine)}, or a file that it names, does not hold by itself.`,
    )
  const reasons = misfits(job.procedure.value, job.machine.value)
  if (reasons.length > 0)
    return say('procedure', 'not-for', `${quote(value.procedure)} is not for this machine: ${list(reasons)}.`)
  const assembled = assemble(partsOf(job))
  if (!assembled.ok || lintGoodJob(job).some(({ severity }) => severity === 'error'))
    return say(
      'procedure',
      'not-sound',
      'Its procedure and its machine do not hold together.',
      'check both of them with each other',
    )
  return scenarioProblems(assembled.value, scenario)
}

/** As a session takes it: without what earlier overhauls left. */
function asPractised(machine: GoodOf<'machine'>): GoodOf<'machine'> {
  const read = readDefinition(practiceRecord(machine.yaml.text), machine.yaml.file)
  return read.ok && read.kind === 'machine' ? read : machine
}

function jobOf(
  folder: Folder,
  procedure: GoodOf<'procedure'>,
  machine: GoodOf<'machine'>,
): GoodJob | undefined {
  const { job } = usesOf(folder, machine)
  const parts = folder.partsOf(procedure)
  if (job === undefined || parts === undefined) return undefined
  return { ...job, procedure, parts, beside: folder.procedureIdsBeside(procedure.yaml.file) }
}
