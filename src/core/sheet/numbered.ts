// What is chosen from by its number, a line each.
import type { StepOf } from '../definition/procedure.ts'
import { type Row, row } from './block.ts'

export function numbered(labels: readonly string[]): Row[] {
  return labels.map((label, i) => row(`${i + 1}  ${label}`))
}

export function observeRows({ conditions, several }: StepOf<'observe'>): Row[] {
  const rows = numbered(conditions.map((c) => c.label))
  return several === true
    ? [...rows, row(`Several: their numbers with a space between, as 2 ${conditions.length}`)]
    : rows
}
