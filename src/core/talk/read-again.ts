// By when a part that is on watch is to be read again, in the words of the lead who lets it run on: a day to come, running hours, or the
// words that none is given. A reason that says nothing of it is asked further; what is said is for the planner, and nothing lapses by it.
import { hoursRead } from '../job/changes.ts'
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { type DayNamed, daysNamed } from '../lib/days-named.ts'
import { deadlineNamed, hoursNamed } from '../lib/hours-named.ts'
import { dayOf, readStamp } from '../lib/instant.ts'

const NONE = /\bnone (?:is |was )?given\b/i

/** Null where the words say it; else what is missing in them, a sentence. `at` is the record's clock: a day lies after its own. */
export function whyNoReadAgain(words: string, at: string): string | null {
  const now = readStamp(at)
  if (NONE.test(words) || hoursNamed(words).some(({ hours }) => hours > 0)) return null
  const named = daysNamed(words)
  // One that can be two days is asked about whatever stands beside it: it may be the one that is meant.
  const two = named.find(({ doubt }) => doubt?.includes(' or ') === true)
  if (two !== undefined) return `${dayDoubt(two)} ${DAY_FORM}.`
  if (now !== null && named.some(({ day }) => day !== null && day > dayOf(now))) return null
  const open = named.findLast(({ doubt }) => doubt !== null)
  if (open !== undefined) return `${dayDoubt(open)} ${DAY_FORM}.`
  const past = named.findLast(({ day }) => day !== null)
  return past === undefined
    ? 'Not said yet: by when it is to be read again.'
    : `${dayText(past)} is not after today: by when is it to be read again?`
}

export const DAY_FORM = 'Key the day as YYYY-MM-DD, or in words with day, month and year'

/** `3/4/2026 can be 3 April or 4 March.` */
export function dayDoubt({ text, doubt }: DayNamed): string {
  if (doubt === null) return ''
  return doubt.includes(' or ') ? `${text} can be ${doubt}.` : `${text} is ${doubt}.`
}

const dayText = ({ text, day }: DayNamed) => (day === null || text === day ? text : `${text}, ${day},`)

/** A day that was written in words has behind it the day it was taken as, so that on record nobody has to read it again. */
export function withDays(words: string): string {
  // From the last on, so that those before keep their place.
  return wordedDays(words).reduceRight((so, { text, day, at }) => {
    const end = at + text.length
    return so.slice(end).startsWith(` (${day})`) ? so : `${so.slice(0, end)} (${day})${so.slice(end)}`
  }, words)
}

/** `14 September 2026 is taken as 2026-09-14`: said before it is signed; empty where each day is written as a number anyway. */
export function takenAs(words: string): string[] {
  const taken = wordedDays(words).map(({ text, day }) => `${text} is taken as ${day}`)
  return taken.length === 0 ? [] : [`${taken.join('; ')}. Another day: back.`]
}

function wordedDays(words: string): (DayNamed & { readonly day: string })[] {
  return daysNamed(words).flatMap((one) =>
    one.day === null || one.text === one.day ? [] : [{ ...one, day: one.day }],
  )
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

/** Which forms the answer takes, told with the question. Hours are offered only where somebody can tell later when they are over. */
export function readAgainHow(defs: Definitions, state: State): string {
  return hoursRead(defs, state) === null
    ? 'A day, as YYYY-MM-DD or in words with day, month and year; or the words none given. Rather no hours: nobody read the counter on this job.'
    : 'A day, as YYYY-MM-DD or in words with day, month and year; running hours from now, such as 4000 h; or the words none given.'
}

/** Whether words are a reason at all: a key of habit is none, nor is the day or the hours alone by which it is read again. */
export function isReason(line: string): boolean {
  const bare = daysNamed(line).reduce((rest, { text }) => rest.replace(text, ''), line)
  const words = bare.replace(NONE, '').replace(/\b(?:running )?hours?\b/gi, '')
  return (
    (words.match(/\p{L}/gu) ?? []).length > 3 && !/^\W*(?:yes|yeah|okay|fine|good|done|sure)\W*$/i.test(words)
  )
}
