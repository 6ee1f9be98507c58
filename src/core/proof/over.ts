// Verdicts that nothing looks at any more, in the normal form.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { withWord } from '../job/verdict-record.ts'
import { oncePer } from '../lib/once.ts'
import { rulesOf } from './words.ts'

/** A verdict that is decided on already is as if it had been ACCEPT: from that more is forbidden than from HOLD. */
export function decidedOver(
  defs: Definitions,
  at: PlacedStep | null,
  verdicts: State['verdicts'],
): State['verdicts'] {
  const until = at === null ? defs.steps.length : defs.steps.indexOf(at)
  return Object.fromEntries(
    Object.entries(verdicts).map(([id, v]) => {
      const isOver = (lastWord(defs).get(id) ?? 0) < until && isUnruled(defs, id)
      // Somebody may always decide who was not there: who was bars nothing in the search.
      return [id, { ...v, on: [], ...(isOver ? { verdict: withWord(v.verdict, 'ACCEPT') } : {}) }]
    }),
  )
}

function isUnruled(defs: Definitions, id: string): boolean {
  return !rulesOf(defs).some((p) => p.rule?.names.some((name) => p.scope + name === id) === true)
}

/** Where in the job each verdict is given or, later, last decided on. */
const lastWord = oncePer((defs: Definitions): ReadonlyMap<string, number> => {
  const last = new Map<string, number>()
  for (const [index, { id, scope, step }] of defs.steps.entries())
    if (step.kind === 'judge') last.set(id, index)
    else if (step.kind === 'decide') last.set(scope + step.about, index)
  return last
})
