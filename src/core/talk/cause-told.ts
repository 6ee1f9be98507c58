// What the words of a STOP tell of, held against the cause that was picked by its number: a cause that a lead may lift is not to hide one
// that nobody may.
import { causeWords, isSofter, STOP_CAUSES, type StopCause } from '../job/stop-causes.ts'
import { type SafetyAsked, safetyAsked, tellsOfHarm } from './safety-asked.ts'

const TOLD: Readonly<Partial<Record<SafetyAsked, StopCause>>> = {
  hurt: 'hurt',
  starts: 'moved',
  off: 'safeguard',
  alarm: 'gas',
}

/** `nobody is hurt`: told of what did not happen. */
const DENIED = /\b(?:no|not|nobody|none|noone|never|nothing|without)\b|n['’]t\b/i

/** One thing is told at a time: `gas at the bleed, and the lock on V-11 is off`. */
const APART = /[,.;:]| and | but | when | while /i

/** A cause stricter than the one that was picked, told in the words; null where they tell of none. */
export function stricterTold(cause: StopCause, words: string): StopCause | null {
  const told = words.split(APART).flatMap((part) => {
    const about = DENIED.test(part) || !tellsOfHarm(part) ? null : safetyAsked(part)
    return (about === null ? undefined : TOLD[about]) ?? []
  })
  return told.reduce<StopCause | null>((worst, one) => (isSofter(worst ?? cause, one) ? one : worst), null)
}

/** `cause 4 in the list, a lock, block or blind was off or wrong`. */
export function causeByNumber(cause: StopCause): string {
  return `cause ${STOP_CAUSES.findIndex((one) => one.id === cause) + 1} in the list, ${causeWords(cause).says}`
}
