// Opening a job: what may be opened at all, and as what kind of record.
import { misfit } from '../definition/lint-job.ts'
import { ok, type Refusal, type Result } from '../lib/result.ts'
import type { Definitions, RecordKind } from './definitions.ts'
import { type FileCopy, FORMAT, type OpenedBody } from './entries.ts'
import { isExampleKey } from './example-keys.ts'
import type { Practised } from './practice.ts'

export interface Opening {
  readonly record: RecordKind
  readonly job: string
  readonly version: string
  readonly zone: string
  readonly clock: 'system' | 'set'
  readonly answers: 'person' | 'script'
  readonly files: readonly FileCopy[]
  /** Keyed in from a paper sheet: no gate of it ever opens, so none is to be proved. */
  readonly paper?: true
  /** A practice session on a hidden machine. */
  readonly practice?: Practised
}

/** Why the gates of a job are not proved, or null when they are. It may take some seconds. */
export type Unproved = (defs: Definitions) => string | null

/**
 * Refuses machines the procedure is not for, and REAL jobs that are invented, unsigned, scripted or on a set clock. Last, a
 * REAL job is only opened when the gates of just this job are proved; who gives no proof opens none.
 */
export function openJob(
  defs: Definitions,
  opening: Opening,
  unproved: Unproved = NO_PROOF,
): Result<OpenedBody> {
  const barred = barsPractice(defs, opening) ?? barsOpening(defs, opening, unproved)
  if (barred !== null) return { ok: false, error: barred }
  const { version, ...rest } = opening
  return ok({ type: 'job.opened', format: FORMAT, ...rest, program: { name: 'barover', version } })
}

/** Why no job may be worked by these definitions, or null: asked when it is opened, and when a changed record is taken in. */
export function barsOpening(
  defs: Definitions,
  opening: Pick<Opening, 'record' | 'clock' | 'answers' | 'paper'>,
  unproved: Unproved,
): Refusal | null {
  const wrong = misfit(defs.procedure, defs.machine)
  if (wrong !== undefined) return { code: 'not-for', say: wrong }
  const refusal = opening.record === 'REAL' ? realRefusal(defs, opening, unproved) : null
  return refusal === null ? null : { code: refusal[0], say: refusal[1] }
}

/** Why this may be no practice session, or null: only PRACTICE is one, and only PINs that prove nothing sign it. */
function barsPractice({ crew, scenario }: Definitions, { record, practice }: Opening): Refusal | null {
  if (practice === undefined)
    return scenario === undefined
      ? null
      : { code: 'practice', say: 'A scenario is for a practice session only, and makes no job of its own.' }
  if (record !== 'PRACTICE')
    return {
      code: 'practice',
      say: `A hidden machine is for a PRACTICE record only, never for a ${record} one.`,
    }
  const own = crew.crew.filter((person) => !isExampleKey(person.pin))
  if (own.length === 0) return null
  return {
    code: 'own-key',
    say: `Practice is signed with the PINs of the example crew, which prove nothing: ${ids(own)} of this crew file has a key of their own.`,
  }
}

const NO_PROOF: Unproved = () => 'nothing was searched'

/** Why this may not be a REAL job, or null. */
function realRefusal(
  defs: Definitions,
  opening: Pick<Opening, 'clock' | 'answers' | 'paper'>,
  unproved: Unproved,
): readonly [string, string] | null {
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
  if (opening.paper === true) return null
  const why = unproved(defs)
  if (why === null) return null
  return ['not-proved', `A REAL job is opened only where its gates are proved, and these are not: ${why}.`]
}

/** The first of its files that is marked invented, so that nothing REAL is made of it; null for none. */
export function inventedFile({ machine, crew, instruments, invented }: Definitions): string | null {
  if (invented[0] !== undefined) return `procedure ${invented[0]}`
  if (machine.invented === true) return 'machine record'
  if (crew.invented === true) return 'crew file'
  return instruments.invented === true ? 'register of instruments' : null
}

function ids(people: readonly { readonly id: string }[]): string {
  return people.map((person) => person.id).join(', ')
}
