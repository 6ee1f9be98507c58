// Where a limit comes from, as the sheet says it: whose it is, then the source, and never the same words twice.
import type { Limit } from '../metrology/limit.ts'

export function limitSource({ from, source }: Limit): string {
  if (from === 'fallback') return `fallback, ${source}`
  return /^machine book\b/i.test(source) ? source : `machine book, ${source}`
}
