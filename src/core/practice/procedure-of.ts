// Which procedure a step of a job is written in.
import type { Definitions, PlacedStep } from '../job/definitions.ts'

/** That of the part it came with, or the whole. */
export function procedureOf(defs: Definitions, { inside }: PlacedStep): string {
  const around = inside.at(-1)?.step
  return around?.kind === 'part' ? around.use : defs.procedure.procedure
}
