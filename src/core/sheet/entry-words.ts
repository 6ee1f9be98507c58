// Words that several blocks of entries share.
import { type Definitions, stepById } from '../job/definitions.ts'
import { voidName } from '../talk/heard.ts'
import { type Row, row } from './block.ts'

/** Stands under each verdict of a job that is at work. */
export const WHY_OFFERED = 'Type why for the sums.'

export function titleOf(defs: Definitions, stepId: string): string {
  return stepById(defs, stepId).step.title
}

export function voidRows(defs: Definitions, voids: readonly string[]): Row[] {
  if (voids.length === 0) return []
  return [row(`  void with it: ${voids.map((id) => voidName(defs, id)).join('; ')}`, 'caution')]
}
