// How the questions of a lead who was not there are worded. They stand before those of the log where a word of theirs would be caught there.
import {
  apartTold,
  calibrationTold,
  howLongTold,
  leftInsideTold,
  leftUndoneTold,
  paceTold,
  personTold,
  repeatsTold,
  whoseLimitsTold,
  whoWasInTold,
  witnessesTold,
} from './asked-desk.ts'
import type { Question } from './asked-entries.ts'
import { lapsesTold } from './asked-lapse.ts'
import { isClosedTold, stillOnTold } from './asked-stands.ts'

const any = (...patterns: readonly string[]) => patterns.map((one) => new RegExp(one))

const JOB =
  '(?:it|this|that|(?:the )?(?:whole )?(?:thing|job|work|pull|inspection|day|overhaul|shift)|they|everything|all (?:of )?(?:it|this))'
const TOOL =
  '(?:instruments?|gauges?|meters?|micrometers?|mics?|tools?|thermometers?|indicators?|torque wrench(?:es)?|kit)'

/** Initials, and no short word. */
const ID =
  '(?!(?:they|it|its|we|he|she|was|were|did|this|that|the|all|you|has|had|one|who|any|some|each|on|in|at|out|done|not)\\b)[a-z]{2,4}'

/** Text comes in small letters. */
export const DESK_QUESTIONS: readonly Question[] = [
  {
    asked: any(
      '\\bwho (?:was|were|is|had been|had (?:a |his |their )?(?:hands?|arms?|head)) (?:still )?(?:in|inside|in there|behind|exposed|near|at the bore when|at the machine when)\\b',
      '\\bhow long (?:was|were) (?:anybody|anyone|somebody|they|he|she|people|hands?|arms?|the men|a man|\\w{2}) (?:in|inside|behind|exposed|at)\\b',
      '^(?:was|were) (?:anybody|anyone|somebody|people|hands?|they|he|she) (?:still )?(?:in|inside|in there|alone|by (?:him|her|them)sel(?:f|ves)|behind|exposed)\\b',
      '\\b(?:did|was) (?:anybody|anyone|somebody|he|she|\\w{2}) (?:work|working|go in|left|do it) (?:alone|by (?:him|her)self|on (?:his|her) own)\\b',
    ),
    like: 'who was in',
    answer: (record, asked) => whoWasInTold(record, asked),
  },
  {
    asked: any(
      `\\bhow long (?:did|has|had|was|were) ${JOB}\\b(?!.*\\b(?:left|last until|run)\\b)`,
      `\\b(?:when|what time) (?:did|was|were|has|had) (?:${JOB}|the (?:night|day|late|early|next|first|second) (?:shift|crew|team)|somebody|\\w{2})(?: \\w+)? ?(?:start|started|begin|began|begun|finish|finished|end|ended|over|opened|closed|leave|left|go home|hand|handed|come on|came on|sign(?:ed)? (?:on|off))\\b`,
      '\\bwho (?:handed|hands) (?:it |the job )?over\\b|\\bhand-?overs?\\b|\\b(?:which|what) shifts?\\b|\\bshift change',
      '\\bwho (?:was|were|came|signed) (?:on|off|signed on)(?: (?:it|the job|this job|when|at|shift))*\\??$',
    ),
    like: 'how long did it take',
    answer: (record) => howLongTold(record),
  },
  {
    asked: any(
      `^(?:is|was|has) ${JOB}(?: been)?(?: now| really| already)? (?:closed|finished|ended|completed?|over|over and done(?: with)?)\\??$`,
    ),
    like: 'is it closed',
    answer: (record) => isClosedTold(record),
  },
  {
    asked: any(
      '\\b(?:anything|something|what)\\b(?: \\w+)? (?:still|left) (?:on|hanging|hung|fitted|attached|in place)\\b',
      '\\b(?:anything|something|what) (?:is |hangs |hanging )?(?:still )?on (?:the )?(?:machine|compressor|unit|cylinder|driver)\\b',
    ),
    like: 'is anything still on the machine',
    answer: (record) => stillOnTold(record),
  },
  {
    asked: any(
      '^(?!.*\\b(?:calibrat\\w*|certificates?|permits?|concessions?)\\b).*\\b(?:laps(?:e|es|ed|ing)|expir(?:e|es|ed|y)|past (?:its|their) life|too old|stale)\\b',
      '\\b(?:gas|air|oxygen|tests?)\\b.*\\b(?:ran|runs|run) out\\b',
      '\\bwhen\\b.*\\b(?:gas|air|oxygen) (?:test|reading|check)s?\\b.*\\b(?:fell|fall|over|end(?:ed)?|invalid)\\b',
    ),
    like: 'when did the gas test lapse',
    answer: (record, asked) => lapsesTold(record, asked),
  },
  {
    asked: any(
      '\\b(?:left|forgotten|lost|lying|still|remain\\w*) (?:in|inside|behind|in there|within)\\b',
      '\\b(?:anything|something|what) (?:still )?(?:inside|in there|in it|in the (?:bore|cylinder|machine))\\b',
      '\\b(?:tools?|rags?|things?|parts?) (?:counted|accounted|out|back|missing|in and out|all out)\\b',
      '\\b(?:count|counted|account|accounted)(?: for)?(?: \\w+){0,3} (?:tools?|rags?|things?)\\b',
      '\\b(?:were|are|was) (?:all )?(?:the )?(?:tools?|rags?)\\b',
    ),
    like: 'is anything left inside',
    answer: (record) => leftInsideTold(record),
  },
  {
    asked: any(
      '\\b(?:skip|skipped|left out|leave out|leave undone|left undone|omit|omitted|passed over|missed out|forgot|forgotten|not looked at)\\b',
      '\\bwhat (?:did|has|was) (?:nobody|no one|they not|he not|she not|not)\\b',
      "\\bwhat (?:was|were|is|did they) (?:not|never|n't)(?: \\w+)? ?(?:done|checked|measured|read|looked at|tested|judged|do|check|measure)\\b",
      '\\b(?:any|anything|something|a) ?(?:step|sheet|thing|place|check|test)?s? (?:that )?(?:was|were|is|are)? ?(?:n/a|not applicable|not done|undone|missing)\\b',
    ),
    like: 'what was left out',
    answer: (record) => leftUndoneTold(record),
  },
  {
    asked: any(
      '\\b(?:third|3rd|fourth|4th|another|extra|one more|more) (?:reading|repeat|time|figure|measurement)s?\\b',
      '\\b(?:read|measured|taken|keyed) (?:more than|three|3|four|4|several|too often|again and again|so often|a third)\\b',
      '\\b(?:which|what|any) (?:places?|readings?|figures?|values?)\\b.*\\b(?:doubt|doubted|apart|disagree\\w*|agree|scatter\\w*|differ\\w*|unsure)\\b',
      '\\b(?:did|do) (?:the |their )?(?:readings?|repeats?|figures?) (?:agree|scatter|differ|disagree|match)\\b',
      '^(?:was|were) (?:any|anything|a|some)(?:thing)? ?(?:reading|figure|value|of (?:it|them))?s? doubted\\b',
    ),
    like: 'which places were read once more',
    answer: (record) => repeatsTold(record),
  },
  {
    asked: any(
      '\\bwhere (?:does|do|did|is) (?:the |that |this |their )?(?:limit|figure|tolerance|\\d+\\.\\d+)(?: \\w+)? ?(?:of \\d+\\.\\d+ )?(?:come|came|from|taken|stand)\\b',
      '\\b(?:whose|which|what|any) (?:limits?|tolerances?)\\b.*\\b(?:book|fall-?back|not (?:ours|our own|from us)|source|from|borrowed|handbook|rule of thumb|apply|applied|used|count\\w*)\\b',
      '\\b(?:right|wrong|correct|proper|own) (?:limits?|tolerances?)\\b',
      '\\bwhose limits?\\b|\\bfall-?backs?\\b|\\brules? of thumb\\b',
      '\\b(?:source|origin) of (?:the |that |this )?(?:limits?|figures?|tolerances?)\\b',
    ),
    like: 'whose limits are these',
    answer: (record, asked) => whoseLimitsTold(record, asked),
  },
  {
    asked: any(
      '^(?!.*\\bwitness).*\\b(?:same (?:man|person|one|mechanic|people|lead|hand)|himself|herself|one and the same|own work|their own)\\b.*(?:\\b(?:sign|measur|decid|accept|check|read|key)\\w*|\\?|$)',
      '\\b(?:did|has|was) (?:whoever|who|the one who|he who) (?:measured|read|keyed)\\b.*\\b(?:sign|decid|accept)\\w*',
      '\\b(?:independen\\w+|four eyes|second pair of eyes|marked (?:his|her|their) own)\\b',
    ),
    like: 'did the same one measure and decide',
    answer: (record) => apartTold(record),
  },
  {
    asked: any(
      '\\bwho (?:was|were|is|acted as) (?:the |a )?witness\\w*\\b',
      '\\bwho(?: has| had)? witness\\w*\\b',
      '^(?:was|were|is) (?:it|that|this|the [\\w ]+|everything|all of it) witness\\w*',
      '\\bwhich hold points? (?:was|were|has|had)\\b.*\\bwitness',
      '\\bwitness(?:es)? (?:at|of|for|to)\\b',
      '\\bsame\\b.*\\bwitness',
    ),
    like: 'who was the witness',
    answer: (record, asked) => witnessesTold(record, asked),
  },
  {
    asked: any(
      `\\b(?:was|were|is|are|did|had|has|could|may|might|can)\\b.*\\b${TOOL}\\b.*\\b(?:calibrat\\w*|in date|out of date|valid|due|past|certificate|right|wrong|checked|good|proper)\\b`,
      `^(?!.*\\b[a-z]{1,3}-\\d).*\\b(?:calibrat\\w*|certificates?|in date|out of date)\\b`,
      `\\b(?:right|wrong|proper|correct|good) ${TOOL}\\b`,
    ),
    like: 'were the gauges calibrated',
    answer: (record) => calibrationTold(record),
  },
  {
    asked: any(
      '\\b(?:rush\\w*|hurr(?:y|ied)|too (?:fast|quick(?:ly)?)|fast|pace|pencil-?whip\\w*|made up|invent\\w*|fudg\\w*|copied|copy|fak\\w*|guess\\w*|improbable|suspicious|odd|strange|believ\\w*|plausib\\w*)\\b',
    ),
    like: 'was anything rushed',
    answer: (record) => paceTold(record),
  },
  {
    asked: any(
      `^what (?:did|has|had|was|were) ${ID} (?:do|done|doing|key|keyed|sign|signed|witness\\w*|find|found|measure|measured|say|said)\\b`,
      `^who (?:is|was) ${ID}\\b`,
      `^(?:was|is|did|has) ${ID} (?:even |really |ever |actually )?(?:sign(?:ed)?|com(?:e|ing)|came) (?:on|onto)\\b`,
      `^(?:where|when|what) (?:was|is) ${ID}(?: (?:on|at|in|doing|there|for|named))*\\??$`,
      `^(?:did|was|has) ${ID} (?:do|done|sign|key|witness|measure|there|on the job|on it|in it|take part|named)\\b`,
      `\\b(?:part|work|entries|signatures) of ${ID}\\??$`,
    ),
    like: 'what did ML do',
    answer: (record, asked) => personTold(record, asked),
  },
]
