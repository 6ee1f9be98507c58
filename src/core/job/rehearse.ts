// What would fall at the hold points if this were answered: the engine's own rules, tried on the state and thrown away.
import { readStamp } from '../lib/instant.ts'
import type { Result } from '../lib/result.ts'
import type { Engine } from './admit.ts'
import {
  admitCorrectedFinding,
  admitReopening,
  admitTakenBackEvidence,
  admitTakenBackNotApplicable,
  findReading,
} from './admit-change.ts'
import { admitAskAgain } from './admit-gate.ts'
import { asKind, type Definitions, stepById } from './definitions.ts'
import { NO_OTHERS } from './elsewhere.ts'
import type { Body } from './entries.ts'
import type { FallingAt } from './falls-with.ts'
import { fold } from './fold.ts'
import { settle } from './settle.ts'
import { stampEntry } from './stamp.ts'
import type { State } from './state.ts'
import { wouldVoid } from './voids.ts'

/** What may be answered, as far as it is known before: a figure in place of another is not. */
export type Rehearsal =
  | { readonly do: 'correct'; readonly of: number }
  | { readonly do: 'take-back-not-applicable'; readonly place: string }
  | { readonly do: 'correct-finding'; readonly step: string }
  | { readonly do: 'reopen'; readonly step: string }
  | { readonly do: 'take-back-evidence'; readonly step: string; readonly item: string }
  | { readonly do: 'ask-again'; readonly step: string }

/** Stands in for words that are keyed after: it is never kept. */
const WHY = 'as it will be said'
/** Each round of settling shuts something; a job has not that many hold points. */
const MOST = 200

/**
 * Hold points that would fall, in the order they do, each with all that would fall there.
 *
 * @returns empty where the answer would not be taken, or where no hold point is touched
 */
export function rehearsed(defs: Definitions, state: State, what: Rehearsal): readonly FallingAt[] {
  const now = readStamp(state.lastAt) ?? { ms: state.lastMs, offsetMin: 0 }
  const engine: Engine = { defs, version: '' }
  const falls = new Map<string, string[]>()
  for (const first of answers(defs, state, what)) {
    let after = state
    const add = (bodies: readonly Body[]) => {
      for (const body of bodies) {
        after = fold(after, stampEntry(after, body, now))
        if (body.type === 'gate.closed')
          falls.set(body.step, [...new Set([...(falls.get(body.step) ?? []), ...body.items])])
      }
    }
    add(first)
    for (let n = 0; n < MOST; n += 1) {
      const [next] = settle(engine, after, NO_OTHERS, now)
      // Whatever falls comes before anything opens, is judged or closes.
      if (next === undefined || !(next.type === 'gate.closed' || next.type === 'branch.left')) break
      add([next])
    }
  }
  return [...falls].map(([id, items]) => ({ gate: asKind(stepById(defs, id), 'gate'), items }))
}

function answers(defs: Definitions, state: State, what: Rehearsal): (readonly Body[])[] {
  const taken = (result: Result<readonly Body[]>) => (result.ok ? [result.value] : [])
  switch (what.do) {
    case 'correct': {
      const old = findReading(state, what.of)
      if (old === null) return []
      // The figure itself does not matter: it is another one, of the same place.
      const voids = wouldVoid(defs, state, old.step)
      return [[{ ...old, type: 'reading.corrected', of: old.seq, why: WHY, voids }]]
    }
    case 'take-back-not-applicable':
      return taken(admitTakenBackNotApplicable(defs, state, { ...what, why: WHY }))
    case 'correct-finding': {
      const { conditions } = asKind(stepById(defs, what.step), 'observe').step
      return conditions.flatMap(({ id: condition }) =>
        taken(admitCorrectedFinding(defs, state, { ...what, condition, note: WHY, why: WHY })),
      )
    }
    case 'reopen':
      return taken(admitReopening(defs, state, { ...what, why: WHY }))
    case 'take-back-evidence':
      return taken(admitTakenBackEvidence(defs, state, { ...what, why: WHY }))
    case 'ask-again':
      return taken(admitAskAgain(defs, state, what))
  }
}
