// The one figure of a read step that has one place, as it may go into a verdict, or why there is none.
import { asKind, type Definitions, type PlacedStep, stepById } from './definitions.ts'
import { readsAt } from './figure-reads.ts'
import { applicability } from './next.ts'
import { placeResult, placesOf, WHY_NOT } from './places.ts'
import type { State } from './state.ts'

/** One figure read: SI and its expanded error at k = 2 (null: nobody has stated one), or why there is none. */
export type OneRead = { readonly si: number; readonly u: number | null } | { readonly why: string }

/** The one place of a read step, as it may go into a verdict. */
export function readOnce(defs: Definitions, state: State, judge: PlacedStep, id: string): OneRead {
  const read = asKind(stepById(defs, judge.scope + id), 'read')
  const name = read.step.title
  if (applicability(defs, state, read) !== 'do') return { why: `${name}: not asked for on this job.` }
  const [place, ...others] = placesOf(read)
  if (place === undefined || others.length > 0) return { why: `${name}: not one figure.` }
  const [found] = readsAt(defs, state, [read], []).places
  if (found === undefined) return { why: `${name}: ${WHY_NOT[placeResult(read, place, state).state]}.` }
  const [, one] = found
  if (typeof one === 'string') return { why: `${name}: ${one}` }
  if (one.expandedU !== null && !Number.isFinite(one.expandedU))
    return { why: `${name}: its measuring error cannot be worked out.` }
  return { si: one.si, u: one.expandedU }
}
