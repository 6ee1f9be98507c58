// What goes into the checks of one job, and what comes out: a finding that also says which file it is in.
import type { Crew } from './crew.ts'
import type { Instrument, Instruments } from './instruments.ts'
import type { LimitBook } from './limit-book.ts'
import type { Finding } from './lint-common.ts'
import type { Machine } from './machine.ts'
import type { Procedure } from './procedure.ts'

export interface JobParts {
  readonly procedure: Procedure
  /** Procedures that `part` steps may use, by id. */
  readonly parts: ReadonlyMap<string, Procedure>
  /** Ids of every procedure lying beside, used or not; left out, those of `parts` stand for them in hints. */
  readonly beside?: readonly string[]
  readonly machine: Machine
  readonly instruments: Instruments
  readonly crew: Crew
  readonly limitBooks: readonly LimitBook[]
}

/** Which file of the job a finding is in; `id` tells parts and limit books apart. */
export type JobFile =
  | { readonly kind: 'procedure' | 'machine' | 'instruments' | 'crew' }
  | { readonly kind: 'part' | 'limit_book'; readonly id: string }

export interface JobFinding extends Finding {
  readonly in: JobFile
}

export function within(file: JobFile, findings: readonly Finding[]): JobFinding[] {
  return findings.map((one) => ({ ...one, in: file }))
}

/** The procedure and every part it comes to use, each once, with its file. Parts that are missing are left out. */
export function usedProcedures(job: JobParts): { readonly procedure: Procedure; readonly file: JobFile }[] {
  const used: { procedure: Procedure; file: JobFile }[] = [
    { procedure: job.procedure, file: { kind: 'procedure' } },
  ]
  const seen = new Set<string>([job.procedure.procedure])
  // The list grows while it is walked.
  for (const { procedure } of used) {
    for (const step of procedure.steps) {
      if (step.kind !== 'part' || seen.has(step.use)) continue
      seen.add(step.use)
      const part = job.parts.get(step.use)
      if (part !== undefined) used.push({ procedure: part, file: { kind: 'part', id: step.use } })
    }
  }
  return used
}

/** Only what measures a diameter need span the bore. `nominal` is in metres. */
export function spansBore(instrument: Instrument, nominal: number): boolean {
  if (instrument.kind !== 'inside_micrometer' && instrument.kind !== 'bore_gauge') return true
  return instrument.range.from.si <= nominal && nominal <= instrument.range.to.si
}
