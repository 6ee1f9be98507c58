// By when a part that is on watch is to be read again, in the words of the lead who lets it run on: a day to come, running hours, or the
// words that none is given. A reason that says nothing of it is asked further; what is said is for the planner, and nothing lapses by it.
import { day } from '../definition/common.ts'
import { hoursRead } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { deadlineNamed, hoursNamed } from '../lib/hours-named.ts'
import { dayOf, readStamp } from '../lib/instant.ts'

const NONE = /\bnone (?:is |was )?given\b/i
const DAYS = /(?<!\d)\d{4}-\d{2}-\d{2}(?!\d)/g

/** Null where the words say it; else what is missing in them, a sentence. `at` is the record's clock: a day lies after its own. */
export function whyNoReadAgain(words: string, at: string): string | null {
  const now = readStamp(at)
  const days = (words.match(DAYS) ?? []).filter((one) => day.safeParse(one).success)
  if (NONE.test(words) || hoursNamed(words).some(({ hours }) => hours > 0)) return null
  if (now !== null && days.some((one) => one > dayOf(now))) return null
  const [past] = days
  return past === undefined
    ? 'Not said yet: by when it is to be read again.'
    : `${past} is not after today: by when is it to be read again?`
}

/** Added to the reason. Hours alone are from now on, as they were asked for: on record nobody sees the question any more. */
export function withReadAgain(reason: string, line: string): string {
  const when = line.trim()
  const isBare = hoursNamed(when)[0]?.text === when
  return `${reason.trim()}; to be read again: ${when}${isBare ? ' from now' : ''}`
}

/** What is to be said of hours on a counter that nobody read on this job; null where no hours are named, or it was read. */
export function counterUnread(defs: Definitions, state: State, words: string): string | null {
  const named = deadlineNamed(words)
  if (named === null || hoursRead(defs, state) !== null) return null
  return `${named}: nobody read the counter of the machine on this job, so nobody can tell later when they are over. Better a day, by back; or a lead puts the counter on record, by barover remark.`
}

export const READ_AGAIN_HOW =
  'A day YYYY-MM-DD, running hours from now such as 4000 h, or the words none given.'

/** Whether words are a reason at all: a key of habit is none, nor is the day or the hours alone by which it is read again. */
export function isReason(line: string): boolean {
  const words = line.replace(NONE, '').replace(/\b(?:running )?hours?\b/gi, '')
  return (
    (words.match(/\p{L}/gu) ?? []).length > 3 && !/^\W*(?:yes|yeah|okay|fine|good|done|sure)\W*$/i.test(words)
  )
}
