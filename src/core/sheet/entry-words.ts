// Words that several blocks of entries share.
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Signed } from '../job/signature.ts'
import { voidName } from '../talk/heard.ts'
import { type Row, row } from './block.ts'

/** A signature without a PIN says so; so do old entries, which had none. */
export function bySign(signed: Signed | undefined): string {
  return signed === 'pin' ? '' : ' (initials only)'
}

export function titleOf(defs: Definitions, stepId: string): string {
  return stepById(defs, stepId).step.title
}

export function voidRows(defs: Definitions, voids: readonly string[]): Row[] {
  if (voids.length === 0) return []
  return [row(`  void with it: ${voids.map((id) => voidName(defs, id)).join('; ')}`, 'caution')]
}
