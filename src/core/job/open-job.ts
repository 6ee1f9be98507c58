// Opening a job: what may be opened at all, and as what kind of record.
import { misfit } from '../definition/lint-job.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions, RecordKind } from './definitions.ts'
import { type FileCopy, FORMAT, type OpenedBody } from './entries.ts'
import { isExampleKey } from './example-keys.ts'

export interface Opening {
  readonly record: RecordKind
  readonly job: string
  readonly version: string
  readonly zone: string
  readonly clock: 'system' | 'set'
  readonly answers: 'person' | 'script'
  readonly files: readonly FileCopy[]
}

/** Refuses REAL jobs (until gates are proved), scripted or clock-set REAL jobs ever, and machines the procedure is not for. */
export function openJob(defs: Definitions, opening: Opening): Result<OpenedBody> {
  if (opening.record === 'REAL') return refuse(...realRefusal(defs, opening))
  const wrong = misfit(defs.procedure, defs.machine)
  if (wrong !== undefined) return refuse('not-for', wrong)
  const { version, ...rest } = opening
  return ok({ type: 'job.opened', format: FORMAT, ...rest, program: { name: 'barover', version } })
}

/** Why this may not be a REAL job. The last reason falls away once the gates are proved; the others never do. */
function realRefusal(defs: Definitions, opening: Opening): [string, string] {
  const invented = inventedFile(defs)
  if (invented !== null)
    return ['invented', `This ${invented} is marked invented, so it can only be an EXAMPLE or PRACTICE.`]
  const { crew } = defs.crew
  const keyless = crew.filter((person) => person.pin === undefined)
  if (keyless.length > 0) {
    return [
      'no-pin',
      `A REAL job takes a key for everybody in the crew file, and ${ids(keyless)} has none: make it with barover pin.`,
    ]
  }
  const example = crew.filter((person) => isExampleKey(person.pin))
  if (example.length > 0) {
    return [
      'example-key',
      `The key of ${ids(example)} is one of the example crew's, whose PINs everybody knows: make another with barover pin.`,
    ]
  }
  if (opening.clock === 'set')
    return ['clock', 'A REAL job runs on the clock of this computer, not on one set by hand.']
  if (opening.answers === 'script') {
    return ['answers', 'A REAL job takes its answers from a person at a terminal, not from a file or a pipe.']
  }
  return [
    'real',
    'Barover takes no REAL jobs yet, because its gates are not proved: run it as practice with --as practice.',
  ]
}

function inventedFile({ machine, crew, instruments }: Definitions): string | null {
  if (machine.invented === true) return 'machine record'
  if (crew.invented === true) return 'crew file'
  return instruments.invented === true ? 'register of instruments' : null
}

function ids(people: readonly { readonly id: string }[]): string {
  return people.map((person) => person.id).join(', ')
}
