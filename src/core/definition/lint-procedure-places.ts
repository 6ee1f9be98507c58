// Temporary things that steps place: each under an id of its own, and what is left names one of them.
import { quote } from '../lib/wording.ts'
import { type Finding, finding, type Path, repeats, unknownId } from './lint-common.ts'
import type { Procedure } from './procedure.ts'

export function lintPlaces({ steps, leaves = [] }: Procedure): Finding[] {
  const all = steps.flatMap((step, n) =>
    step.kind === 'tell' || step.kind === 'confirm'
      ? (step.places ?? []).map(({ id }, m): { id: string; path: Path } => ({
          id,
          path: ['steps', n, 'places', m, 'id'],
        }))
      : [],
  )
  const ids = all.map(({ id }) => id)
  const twice = repeats(ids).map(({ at }) =>
    finding(
      all[at]?.path ?? [],
      'repeated-id',
      `${quote(ids[at] ?? '')} is already the id of a place in this procedure.`,
      'give each place an id of its own',
    ),
  )
  // What a part places is known with the part's own text only; its step is known here.
  const parts = steps.flatMap((step) => (step.kind === 'part' ? [`${step.id}__`] : []))
  const unknown = leaves.flatMap((id, n) =>
    ids.includes(id) || parts.some((part) => id.startsWith(part))
      ? []
      : [unknownId(['leaves', n], id, 'place', ids)],
  )
  return [...twice, ...unknown]
}
