// What holds a verdict up, in few lines: the first two, and how many more the sheet above has.
import { type Row, row } from './block.ts'

const MOST = 2

export function holdsInFew(holds: readonly string[]): Row[] {
  const rest = holds.length - MOST
  const more = rest > 0 ? [row(`  and ${rest} more, on the sheet`)] : []
  return [...holds.slice(0, MOST).map((hold) => row(`  ${hold}`, 'caution')), ...more]
}
