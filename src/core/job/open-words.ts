// What a lead said by radio and has not signed for yet. The job goes on with it and does not close on it.
import type { State } from './state.ts'

export interface OpenWord {
  /** Id of the decide step. */
  readonly step: string
  readonly choice: string
  /** The lead who spoke. */
  readonly lead: string
  readonly said: string
  /** Who keyed it. */
  readonly by: string
}

export function openWords(state: State): OpenWord[] {
  return Object.entries(state.dispositions).flatMap(([step, d]): OpenWord[] =>
    d.void || d.countersigned || d.radio === null
      ? []
      : [{ step, choice: d.choice, lead: d.person, said: d.why, by: d.radio }],
  )
}
