// Why a STOP was called, from a short list, and who may release it. Common practice, no source: what can be put right where
// it stands may be released by a lead; what shows that a safeguard did not hold, or that somebody is hurt, never is. One that
// was called by mistake is a STOP like any other: a lead releases it, and all that was proved is proved again.
import type { State, StopState } from './state.ts'

export interface StopCauseWords {
  readonly id: string
  /** As it is listed on screen. */
  readonly says: string
  /** false: never released. A lead closes the job as STOP, and the work is opened anew from its first hold point. */
  readonly releasable: boolean
}

/** In the order of their numbers on screen, from 1. */
export const STOP_CAUSES = [
  { id: 'gas', says: 'gas: a smell or a meter alarm', releasable: true },
  { id: 'pressure', says: 'pressure: a hiss, a spray or a gauge that rose', releasable: true },
  { id: 'moved', says: 'it moved, turned or started', releasable: false },
  { id: 'safeguard', says: 'a lock, block or blind was off or wrong', releasable: false },
  { id: 'wrong-place', says: 'the wrong machine or the wrong cylinder', releasable: false },
  { id: 'hurt', says: 'somebody is hurt', releasable: false },
  { id: 'no-sense', says: 'a reading or a part that makes no sense', releasable: true },
  { id: 'other', says: 'something else', releasable: true },
  { id: 'mistake', says: 'called by mistake, nothing is wrong', releasable: true },
] as const satisfies readonly StopCauseWords[]

export type StopCause = (typeof STOP_CAUSES)[number]['id']

export const CAUSE_IDS: readonly StopCause[] = STOP_CAUSES.map((c) => c.id)

export function causeWords(cause: StopCause): StopCauseWords {
  // A cause that is not in the list comes from nowhere but a fault; it is never released then.
  return STOP_CAUSES.find((c) => c.id === cause) ?? { id: cause, says: cause, releasable: false }
}

export function isReleasable(cause: StopCause): boolean {
  return causeWords(cause).releasable
}

/** How much a cause says against going on: a mistake nothing, what is never released the most. */
function strictness(cause: StopCause): number {
  if (!isReleasable(cause)) return 2
  return cause === 'mistake' ? 0 : 1
}

/** Whether one cause says less against going on than another: what was once said of a STOP is never talked down. */
export function isSofter(cause: StopCause, than: StopCause): boolean {
  return strictness(cause) < strictness(than)
}

/** STOPs that are not released, oldest first. */
export function openStops(state: State): readonly StopState[] {
  return state.stops.filter((s) => s.releasedBy === null)
}

/** The oldest open STOP whose cause is not answered. One that an older Barover let be explained in words only has none. */
export function unexplainedStop(state: State): StopState | null {
  return openStops(state).find((s) => s.cause === null) ?? null
}

/** The first open STOP whose cause is never released; it holds all the others with it. */
export function lastingStop(state: State): StopState | null {
  return openStops(state).find((s) => s.cause !== null && !isReleasable(s.cause)) ?? null
}

export interface Barred {
  /** Who may not release, whatever their role: each with the reason as a clause. */
  readonly people: ReadonlyMap<string, string>
  /** Nobody may: it is known neither who raised it nor who called it, so anybody could be releasing their own. */
  readonly everybody: boolean
}

/** Who may not release what is open now. Whoever is not known to be somebody else counts as the one who called it. */
export function barredFromRelease(state: State): Barred {
  const people = new Map<string, string>()
  const bar = (person: string, why: string) => {
    if (!people.has(person)) people.set(person, why)
  }
  const open = openStops(state)
  for (const stop of open) {
    if (stop.by !== null) bar(stop.by, 'raised this STOP')
    for (const person of stop.calledBy) bar(person, 'called this STOP')
  }
  for (const stop of open) {
    if (!stop.callerUnknown) continue
    for (const person of stop.on)
      bar(person, 'was on the job when it was called, and who called it is not known')
  }
  return { people, everybody: open.some((s) => s.by === null && s.callerUnknown) }
}
