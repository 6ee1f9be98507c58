// Who is on the job now. The one place that says so: evidence that is counted by people asks here.
import type { State } from './state.ts'

/** Ids of everybody on the job. Whoever keys is on it, whatever else is known. */
export function peopleOnJob(state: State): readonly string[] {
  return [...new Set([...state.people, ...(state.doer === null ? [] : [state.doer])])]
}
