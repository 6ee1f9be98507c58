// Kinds of questions that the log itself answers, each by patterns of how it is asked. The order counts: what is told apart by one word
// more stands before what is not.
import { courseTold, decisionsTold, stopsTold, whoMayTold, whyOpenTold } from './asked-acts.ts'
import { type OnRecord, type Question, tagsIn } from './asked-entries.ts'
import { gasTold } from './asked-lapse.ts'
import { locksTold } from './asked-locks.ts'
import {
  allInstrumentsTold,
  correctionsTold,
  fixedTold,
  instrumentTold,
  madeTold,
  placeTold,
  wholeTold,
} from './asked-readings.ts'

const any = (...patterns: readonly string[]) => patterns.map((one) => new RegExp(one))

const MAY =
  '(?:may|can|could|should|must|might|shall|will|would|is (?:allowed|able|free|entitled)|are (?:allowed|able)|has to|have to|needs? to|gets? to|is to)'
const DECIDE = '(?:decid|sign|accept|reject|releas|approv|countersign|dispos|lift the stop)'
const JOB = '(?:it|this|that|the (?:job|log|record|review|work)|job|everything|us|me)'
const AIR = '(?:gas|air|atmosphere|oxygen|o2|lel|h2s|flammables?|toxics?)'
const TESTED = '(?:test|check|measur|sniff|sampl|read\\b|reading|taken|took|prov)'
const LOCK =
  '(?:locks?|padlocks?|tags?|blinds?|spades?|personal locks?)(?![- ]?(?:nut|washer|wire|plate|tab|ring|up))'
const HUNG =
  '(?:took|takes?|taken|taking|remov|hung|hangs?|hanging|put|plac|fit(?:s|ted)?\\b|lift|unlock|lock(?:ed|s)\\b|tagged|off\\b|on\\b|still|back\\b|told)'
const FIGURE = '(?:reading|figure|place|size|value|number|measurement|dimension|station)s?'
const WORD = '(?:monitor|rework|replace|reject|hold|accept|verdict|out\\b)'
const LOG = '(?:log|record|file|chain|job)'

/** Asked of the log. Text comes in small letters. */
export const LOG_QUESTIONS: readonly Question[] = [
  {
    asked: any(
      '^(?:.*\\b(?:sheet|place|step|at|of|about|is|was|show|reading) )?\\d{1,4}\\.\\d{1,3}(?: (?:read|reading|measured?|about|then|now|come to))*\\??$',
    ),
    like: 'what is 7.3',
    answer: (record, asked) => placeTold(record, asked),
  },
  {
    asked: any(
      `\\bwho\\b(?: else)?(?: all)? ${MAY}\\b.*\\b${DECIDE}`,
      `\\b(?:may|can|could|am|is|should|must) (?:i|we|he|she|\\w{2,4}|the lead|a lead|the mechanic|a mechanic)(?: allowed to| able to| permitted to)? ${DECIDE}`,
      `\\bwhose (?:decision|call|signature|word) (?:is|would|will)\\b`,
      `\\bwho (?:is|are) (?:left|there) to ${DECIDE}`,
      `\\bwho\\b.*\\ballowed to ${DECIDE}`,
    ),
    like: 'who may decide',
    answer: (record) => whoMayTold(record),
  },
  {
    asked: any(
      `\\bwhy\\b.*(?:\\bnot\\b|n[’']t\\b|\\bcannot\\b|\\bcant\\b|\\bwont\\b|\\bdoesnt\\b|\\bisnt\\b).*\\b(?:clos(?:e|es|ed|ing)|finish|be over|end|ended|done|complete)\\b`,
      `\\b(?:what|anything|something)\\b.*\\b(?:stop|keep|hold|block|prevent|in the way|missing|left|need|wait)\\w*\\b.*\\b(?:clos(?:e|es|ed|ing)|finishing)\\b`,
      `\\bwhy is ${JOB} (?:still )?(?:open|not closed|not over)\\b`,
      `\\b(?:how|when) (?:do|can|does|is|will|could) (?:i|we|${JOB})\\b.*\\bclose`,
      `\\b(?:what )?(?:is|stands|are|s) (?:still )?in the way(?: of (?:the|its|a) close)?\\??$`,
    ),
    like: 'why can it not close',
    answer: (record) => whyOpenTold(record),
  },
  {
    asked: any(
      `\\b(?:who|when|how often|what time|by whom)\\b.*\\b${AIR}\\b.*\\b${TESTED}`,
      `\\b(?:who|when|how often|what time|by whom)\\b.*\\b${TESTED}\\w*\\b.*\\b${AIR}\\b`,
      `^(?:was|were|is|has|had|did)\\b.*\\b${AIR}\\b.*\\b${TESTED}`,
      `^(?:did|has|have)\\b.*\\b${TESTED}\\w*\\b.*\\b${AIR}\\b`,
      `\\b(?:last|first|latest|all) (?:the )?(?:gas|air|oxygen) (?:test|reading|check)s?\\b`,
      `\\bwhat (?:was|were|did|is)\\b.*\\b(?:oxygen|o2|lel|h2s|gas (?:test|reading|figure)s?)\\b`,
      '\\bwhen\\b.*\\bsniff\\w*',
      '\\b(?:any|did|was|were|has)\\b.*\\b(?:gas|flammables?|flammable meter|lel|h2s|oxygen|o2)\\b.*\\b(?:meters?|above|over|below|under|zero|shows?|shown|showed|read|rise|rose|high|low)\\b',
      `\\b${AIR}\\b.*\\b(?:done|taken|good|fine|keyed|proved|clean|clear|right|ok(?:ay)?)\\b.*\\b(?:again|anew|after(?:wards?)?|since|before)\\b`,
    ),
    like: 'when was the gas tested',
    // A leak test is of joints, and no meter's.
    answer: (record, asked) => (/\bleak/.test(asked) ? null : gasTold(record, asked)),
  },
  {
    asked: any(
      '\\bwho\\b.*\\b(?:releas|lift|cancel|reset|clear|end)(?:ed|s|e)?\\b.*\\bstops?\\b',
      '\\bwho\\b.*\\b(?:call|raise?|key|press|order|made|gave|shout|caus)(?:ed|s|e)?\\b.*\\bstops?\\b',
      '\\bwho stopp?ed\\b',
      '\\b(?:when|why|what time|how often)\\b.*\\b(?:did|was|were|had|made)\\b.*\\bstop(?:ped|s)?(?: (?:it|for|work|working|measuring|(?:the )?(?:job|work)))?\\??$',
      '^(?:did|have|had) (?:they|he|she|anybody|somebody|anyone|someone) (?:ever )?(?:call(?:ed)? (?:a )?)?stop(?:ped)?\\??$',
      '\\bhow long (?:was|did|were)\\b.*\\bstop(?:s|ped)?\\??$',
      '^(?:was|were|is) (?:the |that |this )?stops? (?:about|for|because|over|due|on account|to do)\\b',
      '\\bwho (?:releas|lifted|cancel)(?:ed|led|es)?(?: it| them)?\\b(?!.*\\b(?:lock|tag|blind|part)s?\\b)',
      '\\bwho (?:lets?|allow(?:s|ed)?|told|said) (?:to |that )?(?:them|him|her|us|they|(?:the )?(?:crew|men|people|others)|everybody|anybody)(?: to| could| may| can| might)? (?:carry(?:ing)? on|go(?:ing)? on|go back|continue|restart|resume|(?:back )?in again)',
      '\\bstops?\\b.*\\b(?:releas|lifted|cancel|answered|released)\\w*',
      '\\bwhy (?:was|is|were) (?:there )?(?:a |the |it |work |the (?:job|work) )?(?:stop|stopped|stops)\\b',
      '\\b(?:was|were|is|are) there (?:a|any) stops?\\b',
      '\\bwhat (?:was|were) the stops?\\b',
    ),
    like: 'who released the stop',
    answer: (record) => stopsTold(record),
  },
  {
    asked: any(
      `\\b(?:is|was|has|can|are|were)\\b (?:it|this|that|the (?:whole )?${LOG}|all of (?:it|this)|everything)\\b.*\\b(?:proved?|proven|whole|untouched|tamper\\w*|genuine|intact|forged|faked|doctored|cut off|trusted)\\b`,
      `\\b${LOG}\\b.*\\b(?:trust\\w*|sound|altered|tamper\\w*|proved?|proven|cut)\\b`,
      `\\b(?:trust|prove|tamper\\w*|doctor\\w*|forge\\w*)\\b.*\\b${LOG}\\b`,
      '\\bproved? (?:to be )?whole\\b',
      '\\b(?:is|was|were) (?:anything|something|a line|lines|any of it) (?:cut|missing from the log|taken out|tampered|forged)',
      '\\bcheck number\\b',
    ),
    like: 'is it proved whole',
    answer: (record) => wholeTold(record),
  },
  {
    asked: any(
      '\\b(?:in )?(?:what|which) (?:order|sequence)\\b(?!.*\\b(?:nut|stud|bolt|tighten|torque|part|spare|fitted|assembl))(?!.*\\border (?:was|did|has) (?:given|placed|the lead|a lead))',
      '\\b(?:order|sequence|course) of (?:events|things|the (?:job|work|day)|what happened)\\b',
      '\\btime ?line\\b',
      '\\bchronolog\\w*',
      '\\bwhat happened (?:first|when|next|after|before|then|in order|that day|and when)\\b',
      '\\bone (?:thing )?after (?:the other|another)\\b',
      '\\bhow did (?:it all|it|the job|the day|the work|things) (?:go|run|come about|unfold|happen)\\b',
      '\\bwhat (?:came|was done|was keyed) (?:first|after what|when)\\b',
    ),
    like: 'in what order did it happen',
    answer: (record) => courseTold(record),
  },
  {
    asked: any(
      `\\b(?:which|what) ${FIGURE}\\b.*\\b(?:ma[dk]es?|gave|gives?|caus\\w*|led|turned|brought|tipped|decided)\\b.*\\b${WORD}`,
      `\\b(?:which|what) ${FIGURE}\\b.*\\b(?:behind|govern\\w*|past its|over its|over the limit|past the limit|is out|was out|are out|were out)\\b`,
      `\\b(?:which|what)\\b (?:one )?(?:made|makes|governs?|governed|tipped|turned|caused|gave|brought)\\b.*\\b${WORD}`,
      `\\bwhat does (?:the |it )?(?:verdict |monitor |rework |replace |hold )?(?:rest|hang|stand) on\\b`,
      `\\bwhy did (?:the verdict|it) (?:change|become|turn)\\b`,
    ),
    like: 'which reading made it REPLACE',
    answer: (record, asked) => madeTold(record, asked),
  },
  {
    asked: any(
      `\\b(?:who|when|where|which|what|was|is|were|are|has|did|does)\\b.*\\b${LOCK}\\b.*\\b${HUNG}`,
      `\\b(?:who|when|where|which|what|was|is|were|are|has|did)\\b.*\\b${HUNG}\\w*\\b.*\\b${LOCK}`,
      `\\b(?:where|which|how many)\\b.*\\b${LOCK}\\b`,
    ),
    like: 'who took lock L-103 off',
    answer: (record, asked) => (isInstrument(record, asked) ? null : locksTold(record, asked)),
  },
  {
    asked: any(
      `\\b(?:who|when|where|was|is|has|did|does)\\b.*\\b[a-z]{1,4}[-_]?\\d{1,5}[a-z]?\\b.*\\b${HUNG}`,
      `\\b(?:who|when|where|was|has|did)\\b.*\\b${HUNG}\\w*\\b.*\\b[a-z]{1,4}[-_]?\\d{1,5}[a-z]?\\b`,
      '\\b(?:where|what|whose|which) (?:is|was)\\b.*\\b[a-z]{1,4}[-_]\\d{1,5}[a-z]?\\b',
    ),
    like: 'is T-9 still on',
    answer: (record, asked) => (isInstrument(record, asked) ? null : locksTold(record, asked)),
  },
  {
    asked: any(
      '\\b(?:was|were|is|did|has|have|had|who|what|which|where|when|how|why)\\b.*\\b[a-z]{1,4}[-_]?\\d{1,5}[a-z]?\\b',
    ),
    like: 'was M-1 used',
    answer: (record, asked) => instrumentTold(record, asked),
  },
  {
    asked: any(
      '\\b(?:which|what) (?:instruments?|gauges?|meters?|micrometers?|tools?)\\b.*\\b(?:us|measur|read|pick|taken)\\w*',
      '\\bwith (?:what|which) (?:instruments?|gauges?|meters?|micrometers?)\\b',
    ),
    like: 'which instruments were used',
    answer: (record) => allInstrumentsTold(record),
  },
  {
    asked: any(
      '\\b(?:what|which|who|where|when|was|were|anything|something|any|how (?:many|often))\\b.*\\b(?:corrected|corrections?|altered|put right|keyed (?:again|anew|otherwise)|overwritten|amended|re-?keyed|taken back|mistyped)\\b',
      '\\bwhat was changed (?:after|since|later|in the (?:log|record))',
    ),
    like: 'what was corrected',
    answer: (record) => correctionsTold(record),
  },
  {
    asked: any(
      '^(?:is|are|was|were|did|has|have|had|do|does)\\b.*\\b(?:fix(?:ed)?|repaired?|mend(?:ed)?|cured?|put right|sorted|solved|remedied|done about|seen to)\\b',
      '\\bwhat (?:was|has been|did they|did we) (?:done|do) (?:about|with|to|against)\\b',
      '\\bwhat (?:became|came|has become) of\\b',
    ),
    like: 'is the pocket leak fixed',
    answer: (record, asked) => fixedTold(record, asked),
  },
  {
    asked: any(
      '\\bwho\\b.*\\b(?:took|takes?|made|makes?|gave|gives?|signed|keyed)\\b.*\\bdecisions?\\b',
      '\\bwho\\b.*\\b(?:decid|chose|chosen|accepted|approved|reject|concession)\\w*',
      '\\bwhat (?:did|has|was|were)\\b.*\\bdecided?\\b',
      '\\bwhy (?:was|were|is|did) the (?!job|log|verdict)[\\w ]+? (?:be )?(?:accept(?:ed)?|kept|rework(?:ed)?|replac(?:ed)?|repair(?:ed)?|passed|let go)\\b',
      '\\b(?:what|when|how|why)\\b.*\\b(?:did|was|has|were)\\b.*\\bdecided?\\b.*\\b(?:who|why|when)\\b',
      '\\b(?:what|when) (?:did \\w+ decide|was (?:it|that|this) decided)\\b',
      '\\b(?:what|which) decisions?\\b',
      '\\bwho (?:said|says|let|lets|allow(?:s|ed)?|told)\\b.*\\b(?:runs? on|stays? (?:in|on)|goes? back|go on as|may stay|can stay|was good|is good)\\b',
      '\\bby whom was (?:it|that|this) (?:decided|accepted|approved)\\b',
    ),
    like: 'who decided and why',
    answer: (record, asked) => decisionsTold(record, asked),
  },
]

function isInstrument({ defs, entries }: OnRecord, asked: string): boolean {
  const plain = (text: string) => text.toUpperCase().replace(/[-_ ]/g, '')
  const all = [
    ...defs.instruments.instruments.map(({ id }) => id),
    ...entries.flatMap((e) => ('instrument' in e && e.instrument !== undefined ? [e.instrument] : [])),
  ].map(plain)
  const named = tagsIn(asked).map(plain)
  const hung = entries.some(
    (e) => e.type === 'evidence.given' && named.includes(plain(e.shown.split(/[\s,]/)[0] ?? '')),
  )
  return !hung && named.some((tag) => all.includes(tag))
}
