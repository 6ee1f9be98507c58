// How people word questions that the clock of the log answers. They stand first: `between`, `how long` and a time of day are caught by
// other kinds for a word that only stands beside them.
import { afterTold, betweenTold } from './asked-course.ts'
import type { Question } from './asked-entries.ts'
import { lapsesTold } from './asked-lapse.ts'
import { atTimeTold, beforeOrAfterTold, calledOutTold, howLongBetweenTold } from './asked-times.ts'

const any = (...patterns: readonly string[]) => patterns.map((one) => new RegExp(one))

const TIME = '\\d{1,2}[:.]\\d{2}'
const GAS = '(?:gas|air|oxygen)'

/** Text comes in small letters. */
export const TIME_QUESTIONS: readonly Question[] = [
  {
    asked: any(`\\b(?:before or after|after or before)\\b`),
    like: 'was the note keyed before or after the verdict',
    answer: beforeOrAfterTold,
  },
  {
    asked: any(
      `^(?!.*\\b(?:they|anybody|anyone|people|he|she|somebody|hands) (?:in|inside)\\b).*\\bhow (?:long|many (?:hours?|minutes?|min))\\b.*\\b(?:no|without|bad|dead|stale)\\b.*\\b${GAS}\\b`,
      `\\bhow (?:long|many (?:hours?|minutes?|min))\\b.*\\b${GAS}\\b.*\\b(?:out of date|dead|stale|past|old|over|lapsed|expired|out)\\b`,
    ),
    like: 'how long was the gas test out of date',
    answer: (record, asked) => lapsesTold(record, `gas ${asked}`),
  },
  {
    asked: any(
      '\\bhow long\\b.*\\b(?:from|between) .+ (?:till|til|until|untill|to|and|before) .+',
      '\\bhow long (?:did|was|were|had) .+ (?:before|till|til|until) .+',
      '\\bhow long after .+ (?:did|was|were) .+',
    ),
    like: 'how long from the stop till they measured again',
    answer: howLongBetweenTold,
  },
  {
    asked: any('\\bbetween .+ and .+'),
    like: 'did anyone measure between the note and the stop',
    answer: betweenTold,
  },
  {
    asked: any(
      '^what (?:did|was|has)\\b.*\\b(?:do|did|done|key|keyed|happen|happened)\\b ?\\w* ?(?:right |straight |just )?\\bafter\\b',
      '^what (?:came|happened|was done|was keyed) (?:right |straight |just )?after\\b',
      '^(?:which|what|were (?:any|some)) (?:readings?|figures?|sizes?)\\b.*\\bafter\\b',
    ),
    like: 'what did RO do after the note',
    answer: afterTold,
  },
  {
    asked: any(
      `\\b(?:at|around|about) ${TIME}\\b`,
      `^${TIME}\\??$`,
      `\\bwhat (?:happened|was (?:keyed|done)|is|was)\\b.*\\b${TIME}\\b`,
    ),
    like: 'what was keyed at 07:05',
    answer: atTimeTold,
  },
  {
    asked: any(
      '\\bhow (?:many times|often)\\b.*\\b(?:come|came|get|got|go|went|called|called|keyed) (?:out|clear)\\b',
      '\\bhow (?:many times|often)\\b.*\\bhold points?\\b.*\\b(?:fell|fall)\\b',
    ),
    like: 'how often did they come out',
    answer: calledOutTold,
  },
]
