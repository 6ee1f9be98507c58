// How people word what they want to know of a job that went wrong. They stand before the other kinds, as a word of theirs would be caught
// there: a set-check that was off by one that asks for a day of calibration, a hold by one that asks for a decision.
import {
  cameFirstTold,
  didTold,
  droppedTold,
  startTold,
  toldOffTold,
  triedStartTold,
} from './asked-course.ts'
import { personSpanTold, repeatsTold, whoWasInTold } from './asked-desk.ts'
import type { OnRecord, Question } from './asked-entries.ts'
import { gaugeTold, meantIds } from './asked-gauge.ts'
import { whyHoldTold, wouldHavePassedTold } from './asked-holds.ts'
import { fellTold, judgedTold, nearTold, pistonTold, renewedTold, wearTold } from './asked-parts.ts'
import { correctionsTold } from './asked-readings.ts'

const any = (...patterns: readonly string[]) => patterns.map((one) => new RegExp(one))

const TAG = '[a-z]{1,3}[-_]?\\d{1,4}'
const ONE_TOOL =
  '(?:(?:bore |dial |feeler |plug |ring )?gauge|micrometers?|mics?|thermometer|indicator|torque wrench|meter)'
const GAUGE = `(?:${TAG}|set[- ]?checks?|${ONE_TOOL})`
const GOOD =
  '(?:calibrat\\w*|in date|out of date|good|ok(?:ay)?|alright|all right|fine|right|wrong|bad|faulty|accurate|true|sound|reliable|out|off|doubt\\w*|trust\\w*|within|pass(?:ed)?|fail\\w*|in order|drift\\w*|in tolerance|certificate)'
const NOT_THERE = '(?! (?:of the (?:bore|box|cylinder|machine)|the (?:machine|shelf|bench)|duty|loan|shift))'
const GAS = '(?:gas|air|oxygen|gas tests?)'

/** Of a gauge, and not of running: whether that is asked comes before all else. */
export const GAUGE_QUESTION: Question = {
  asked: any(
    `^(?!(?!(?:why|who)\\b).*\\b(?:run|start|load|go)\\b)(?:(?:so|and|but) )?(?:was|were|is|are|did|had|has|could|may|might|can|how|why|who|by how much)\\b.*\\b${GAUGE}\\b.*\\b${GOOD}\\b${NOT_THERE}`,
    `^(?!.*\\b(?:run|start|load|go)\\b)(?:was|is|were|are|could|can) (?:there )?(?:any )?(?:doubt|trust) (?:in|about|of) .*\\b${GAUGE}\\b`,
    `^(?!.*\\b(?:hang|hangs|hung|hanging|rest|rests|fell|falls|depend\\w*|hold|run|start|load)\\b).*\\b(?:set[- ]?|micrometer |gauge |mic )checks?\\b`,
    `^(?:was|were|did|has|have|is) .*\\b${GAUGE}\\b.*\\bcheck(?:ed)?\\b.*\\b(?:again|end|after(?:wards)?|before|twice)\\b`,
    `\\b${GAUGE}\\b.*\\b(?:on|against|to) (?:its|the|a|their) (?:setting )?(?:standards?|masters?|rings?)\\b`,
    '\\b(?:trust|rely on|believe|count on|good are|right are)\\b.*\\b(?:figures?|readings?|sizes?|measurements?|diameters?)\\b',
    '\\b(?:which|what) (?:readings?|figures?|sizes?|measurements?)\\b.*\\b(?:trust|rel(?:y|ied) on|believe|stand on)\\b',
    `\\b(?:how (?:far|much|bad(?:ly)?)) (?:was|is|were) .*\\b${GAUGE}\\b.*\\b(?:out|off)\\b`,
    `\\bhow (?:far|much|badly) (?:out|off) (?:was|is|were) .*\\b${GAUGE}\\b`,
    `\\bby how much (?:was|is) .*\\b${GAUGE}\\b`,
  ),
  like: 'was the micrometer any good',
  answer: gaugeTold,
}

/** Instruments that a question about what fell is of: those that are named, or were doubted; of a set-check, whatever was read on one. */
function fellWithIds(record: OnRecord, asked: string): string[] {
  const doubted = record.entries.flatMap((e) => (e.type === 'instrument.doubted' ? [e.instrument] : []))
  const isDropped = /\b(?:dropped|doubted|bad|put back|out of calibration)\b/.test(asked)
  if (isDropped && !new RegExp(`\\b${TAG}\\b`).test(asked)) return [...new Set(doubted)]
  return meantIds(record, asked) ?? []
}

/** What was found out of calibration, as what it read was taken again, and places that were read more often than asked. */
function measuredTwiceTold(record: OnRecord) {
  const doubted = [
    ...new Set(record.entries.flatMap((e) => (e.type === 'instrument.doubted' ? [e.instrument] : []))),
  ]
  return [...(fellTold(record, doubted) ?? []), ...repeatsTold(record)]
}

/** The start before the list of hold points, as that is what is asked about. */
function inAtStartTold(record: OnRecord, asked: string) {
  const [nobody, on, ...gates] = whoWasInTold(record, asked)
  return [nobody, on].flatMap((block) => block ?? []).concat(startTold(record), gates)
}

/** Text comes in small letters. */
export const PLAIN_QUESTIONS: readonly Question[] = [
  {
    asked: any(
      `\\bwhat (?:all )?(?:fell|falls|hung|hangs|hang|is hanging|was hanging|rests?|rested|depends?|went|is void|was void|became void|goes|counts)\\b.*\\b(?:with|on|by|off)\\b.*\\b${GAUGE}\\b`,
      `\\b(?:which|what) (?:readings?|figures?|sizes?|verdicts?)\\b.*\\b(?:hang|hangs|hung|rest|rests|depend|depends|fell|fall|void)\\b.*\\b${GAUGE}\\b`,
      `\\bwhat (?:did (?:they|he|she|we|\\w{2})|was done|became|has become|happened|happens)\\b.*\\b(?:readings?|figures?|sizes?|measurements?)\\b.*\\b(?:off|with|by|from|of)\\b.*\\b${GAUGE}\\b`,
      `\\b(?:was|were|is|are|has|have)\\b.*\\b(?:taken|read|measured|keyed) again\\b.*\\b${GAUGE}\\b`,
    ),
    like: 'what fell with the gauge',
    answer: (record, asked) => fellTold(record, fellWithIds(record, asked)),
  },
  {
    asked: any(
      '\\bwhy\\b(?!.*\\b(?:hold|holds) (?:the|a|on to|up|off|him|her|them|points?)\\b)(?!.*\\b(?:fell|fall|fallen)\\b).*\\bhold\\b',
      '\\b(?:what|who) (?:put|puts|made|makes|turned|holds?|caused?)\\b.*\\b(?:on hold|hold up|it hold|the hold)\\b',
      '\\bwhat (?:is|was) (?:it|the hold) (?:on hold )?(?:for|about)\\b',
      '\\b(?:what|anything|something|what all) (?:is |was |are |stands )?on hold\\b',
      '\\bwhy\\b.*\\b(?:couldn.?t|could not|cannot|can.?t|not|wasn.?t|isn.?t|never) (?:be |been )?judged\\b',
    ),
    like: 'why is it on hold',
    answer: whyHoldTold,
  },
  {
    asked: any(
      `\\bwho\\b.*\\b(?:said|says|told|reported|noted|wrote|saw|noticed|found|claims?|claimed)\\b.*\\b(?:locks?|padlocks?|tags?|blinds?)\\b.*\\b(?:off|gone|missing|not on|open)\\b`,
      '\\b(?:what|when)\\b.*\\b(?:said|told|reported|noted|wrote|saw|done|happened)\\b.*\\b(?:about|of|that) (?:the |a )?(?:locks?|padlocks?)\\b.*\\b(?:off|gone|missing)\\b(?! after)',
      '^(?:did|has|had) (?:anybody|anyone|somebody|someone|he|she|they)\\b.*\\b(?:say|tell|told|report(?:ed)?|note(?:d)?|see|seen)\\b.*\\b(?:locks?|padlocks?)\\b.*\\b(?:off|gone|missing)\\b',
    ),
    like: 'who said the lock was off',
    answer: toldOffTold,
  },
  {
    asked: any(
      `\\b(?:who|how long|was|were)\\b.*\\bin\\b.*\\b(?:on|with|under|behind|during)\\b.*\\b(?:dead|stale|old|lapsed|expired|out of date)\\b.*\\b${GAS}\\b`,
    ),
    like: 'how long were they in on dead gas',
    answer: whoWasInTold,
  },
  {
    asked: any(
      '^(?:(?:was|were|is) (?:anybody|anyone|somebody|someone|people|they|hands?)|who (?:was|were))\\b.*\\b(?:in|inside|behind|near)\\b.*\\b(?:start(?:ed)?|ran|running)\\b',
    ),
    like: 'was anybody in when it was started',
    answer: inAtStartTold,
  },
  {
    asked: any(
      '\\b(?:try|tries|tried)\\b (?:\\w+ ){0,2}(?:to )?(?:start|turn|run)\\b',
      '\\b(?:start|no start)\\b (?:was |been )?(?:tried|tested)\\b',
    ),
    like: 'did anybody try to start it',
    answer: triedStartTold,
  },
  {
    asked: any(
      '\\b(?:when|what time|who|how)\\b.*\\b(?:drivers?|motors?|engines?|compressors?|machines?|units?|cranks?|it)\\b.*\\b(?:start|started|starts|run up|set going|turn(?:ed)? over)\\b(?!.*\\bstart(?:ed)? (?:the |this )?(?:job|log|work|record)\\b)',
      '\\b(?:when|what time|who)\\b.*\\b(?:start|started|starts|set going)\\b.*\\b(?:it|drivers?|motors?|engines?|compressors?|machines?|units?)\\b(?! (?:off|anew|again from))',
      '\\bstarted?\\b.*\\b(?:with|while|before|under)\\b.*\\b(?:tags?|locks?|blinds?)\\b',
      '^(?:was|has|is|did) (?:it|the (?:driver|motor|engine|compressor|machine|unit)|they|anybody|somebody) (?:been )?start(?:ed)?\\b(?: (?:it|up|at all|again|then|yet))*\\??$',
    ),
    like: 'when was the driver started',
    answer: startTold,
  },
  {
    asked: any(
      '\\b(?:would|could|might|will)\\b.*\\b(?:have )?(?:pass(?:ed)?|been (?:accepted|good|in|out)|accept(?:ed)?|conform\\w*|fail(?:ed)?)\\b.*\\b(?:with|by|on|had|if|without)\\b',
      '\\bwhat (?:would|if)\\b.*\\b(?:old|other|first|uncorrected|another) (?:figure|number|reading|value)\\b',
      '\\b(?:did|does|has) (?:the |that |his |her )?(?:correction|change|new figure)\\b.*\\b(?:change|matter|alter|make|turn)\\b',
    ),
    like: 'would it have passed with the old figure',
    answer: wouldHavePassedTold,
  },
  {
    asked: any(
      '\\b(?:what|which) (?:numbers?|figures?|readings?|values?|sizes?)\\b.*\\b(?:change|changed|alter(?:ed)?|corrected?|put right|overwr\\w+|amend(?:ed)?)\\b',
      '\\b(?:did|has|had) (?:he|she|they|anybody|anyone|somebody|\\w{2}) (?:change|changed|alter|correct|fudge|overwrite)\\b.*\\b(?:numbers?|figures?|readings?|values?|sizes?|anything)\\b',
    ),
    like: 'what number did he change and why',
    answer: correctionsTold,
  },
  {
    asked: any(
      '\\b(?:any|anything|something|what|which|how|figures?|readings?)\\b.*\\b(?:nearly|near|close to|almost|just|only just|borderline|tight on|marginal)\\b ?(?:was|is|are|were)? ?(?:out|over|its limit|the limit|their limits?|a limit|limits?|in|worn out|at the limit)\\b',
      '\\b(?:any|anything|what) (?:was |is |were |are )?(?:marginal|borderline|to (?:be )?watch(?:ed)?|near (?:it|its|the))\\b',
      '\\bnear misses\\b',
      '\\bhow (?:near|close|far)\\b.*\\b(?:limits?|edge|\\d+\\.\\d+)(?: is| was| are)?\\b',
    ),
    like: 'any nearly out',
    answer: nearTold,
  },
  {
    asked: any(
      '\\b(?:what|which|was|were|is|are|did|has|have)\\b.*\\b(?:renew(?:ed)?|replaced|swapped(?: out)?)\\b',
      '^(?:did|have|has) (?:they|he|she|we|anybody|\\w{2}) (?:renew|replace|change|swap|fit (?:a )?new)\\b',
      '^(?:was|were|is|are|did) (?:the |that |an? )?old \\w+\\b.*\\b(?:back|again|reused|used|fitted|in)\\b',
      '\\bwhat (?:new )?parts? (?:was|were|is|went|came)\\b.*\\b(?:new|in|fitted|changed)\\b',
      '\\bwhat (?:is|was) new\\b',
    ),
    like: 'what was renewed',
    answer: renewedTold,
  },
  {
    asked: any(
      '\\bhow (?:bad|much|badly|far|great|big)\\b.*\\b(?:wear|worn|wore)\\b',
      '\\bwhat (?:is|was) the wear\\b',
      '^(?:is|was|are|were) (?:the )?wear (?:bad|much|high|ok|normal|too)\\b',
    ),
    like: 'how bad is the wear',
    answer: wearTold,
  },
  {
    asked: any(
      '^(?:was|were|is|are|did|has|had|how)\\b.*\\bpistons?\\b.*\\b(?:empty|hollow|solid|vent(?:ed|ing)?|pressure in|pressuri[sz]ed|gas|full|proved)\\b',
      '^(?:was|were|is|are|could)\\b.*\\b(?:gas|pressure|anything) (?:still )?(?:in|inside|trapped in) (?:the |a )?pistons?\\b',
    ),
    like: 'was the piston empty',
    answer: pistonTold,
  },
  {
    asked: any(
      "\\bwhy\\b.*(?:n['\u2019]?t\\b|\\bnot\\b|\\bnever\\b|\\bdidnt\\b).*\\b(?:measur|read|look|judg|check|gaug|test)\\w*\\b.*\\b(?:again|anew|afterwards?|after|twice|once more)\\b",
    ),
    like: 'why were the ring gaps not judged again',
    answer: judgedTold,
  },
  {
    asked: any(
      '\\bwhy\\b.*\\b(?:measured?|read|taken|done|keyed|judged)\\b.*\\b(?:twice|again|two times|a second time|once more|three times)\\b',
    ),
    like: 'why was the bore measured twice',
    answer: measuredTwiceTold,
  },
  {
    asked: any(`\\bwho (?:was it (?:that|who) )?(?:dropp?ed|knocked|damaged|broke|bent)\\b`),
    like: 'who dropped the gauge',
    answer: droppedTold,
  },
  {
    asked: any('\\bhow long (?:was|were|has|had|did|is) [a-z]{2}\\b(?<!\\b(?:it|he|we))'),
    like: 'how long was RO on the job',
    answer: personSpanTold,
  },
  {
    asked: any(
      '\\b(?:which|what|who)\\b.*\\bfirst\\b,? .+ or .+',
      '\\b(?:did|was|were)\\b.*\\b(?:come|came|off|out|done|opened) before .+',
    ),
    like: 'what came off first, the head or the valves',
    answer: cameFirstTold,
  },
  {
    asked: any(
      '^(?:did|has|had) (?!it\\b|he\\b|we\\b|the\\b|she\\b|they\\b|any\\b)[a-z]{2,4} (?:ever |really |himself |actually )?(?:agree|approve|accept|know|permit|allow|say|see|look|check|try|tried|checked|seen|agreed|approved|read|test|inspect|countersign)\\b',
    ),
    like: 'did KH check the lock himself',
    answer: didTold,
  },
  {
    asked: any(
      '^(?:is|are|was|were) (?!(?:it|this|that|they|everything)\\b(?! \\w+ (?:al|good|fine|in|within|bent|tight)))(?:the |that |this |those |its )?[\\w -]+? (?:ok(?:ay)?|alright|all right|fine|good|in toler\\w+|within (?:its |the |their )?(?:limits?|toler\\w+)|in limits?|bent|straight|round|tight|loose|worn(?: out)?|in spec\\w*)(?: (?:after|now|again|then|enough|at the end|as left))*\\??$',
      '^how (?:tight|loose|straight|round|worn|bent|big|true) (?:is|are|was|were|does|do|did) (?:the )?\\w+',
    ),
    like: 'are the new ring gaps alright',
    answer: judgedTold,
  },
]
