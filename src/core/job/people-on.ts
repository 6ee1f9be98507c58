// Who is on the job now. The one place that says so: evidence that is counted by people asks here.
import type { Entry } from './entries.ts'
import type { State } from './state.ts'

/** Ids of everybody on the job. Whoever keys is on it, whatever else is known. */
export function peopleOnJob(state: State): readonly string[] {
  return [...new Set([...state.people, ...(state.doer === null ? [] : [state.doer])])]
}

/**
 * Everybody whose initials stand for something in a job: those who signed on first, then those who signed. `since`: who only signed
 * for what its log took after the close, and was no part of the job.
 */
export function everybodyIn(
  state: State,
  entries: readonly Entry[],
): { readonly people: readonly string[]; readonly since: readonly string[] } {
  const closed = entries.findIndex(({ type }) => type === 'job.closed')
  const end = closed < 0 ? entries.length : closed + 1
  const people = [...new Set([...state.everOn, ...entries.slice(0, end).flatMap(signers)])]
  const since = [...new Set(entries.slice(end).flatMap(signers))].filter((id) => !people.includes(id))
  return { people, since }
}

function signers(entry: Entry): string[] {
  if (!('signed' in entry) || entry.signed === undefined) return []
  return 'person' in entry && entry.person !== undefined ? [entry.person] : []
}
