// A point that has no lock, and in which position one is locked; whom to call. Nothing stands for a lock, and whom to call is the record's.
import { type Definitions, personById } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { atHandLines } from './at-hand.ts'
import { NO_CALL_OUT, siteLines } from './make-safe.ts'
import { peopleText } from './may-sign.ts'
import { NO_LOCK } from './missing-lines.ts'
import { termLines } from './terms.ts'
import { peopleLine } from './where.ts'

const LOCK = '(?:pad ?)?locks?(?! ?(?:nuts?|wires?)\\b)'
const NO_LOCKS = [
  `^(?!why\\b|who\\b|where\\b).*\\b(?:don't|do not|doesn't|does not|isn't|is not|aren't|can't|cannot|not enough|too few|no|none|short of|out of|without)\\b.*\\b${LOCK}(?! numbers?\\b)\\b(?!.*\\b(?:off|falls?|slips?|open|number)\\b).*`,
  `^(?:can|may|could|must|do|should) (?:i|we)(?: (?:just|also|have to))* (?:skip|leave out|miss out|do without|go without|leave off|omit|forget|pass)(?: (?:a|the|this|one|that|it))* ?(?:${LOCK}|point|valve|breaker)\\b.*`,
  `^(?:can|may|could|is|are|do|does|will|would) .*\\b(?:tags?|tape|chains?|cable tie|tie wrap|rope|sign|label|wire)\\b.*\\b(?:instead|enough|do|without|rather than|not|in place of|for)\\b.*\\b${LOCK}\\b.*`,
  `^(?:is|are|would|will) (?:a |the |one )?(?:tags?|tape|chain|sign|label)(?: alone)? (?:enough|ok|okay|sufficient|good enough|do)\\b.*`,
  `^(?:does|do|must|should|has|have) (?:every|each|all|the \\w+)(?: (?:of the|one|isolation))* (?:points?|valves?|breakers?|one) (?:need|have|get|want|to have|take)(?: to have)? ?(?:a |its own |an own |one )?${LOCK}\\b.*`,
  `^without (?:a )?${LOCK}\\b.*`,
]
const POSITION = [
  `^(?:do|should|must|is|are|does|has|which way|how|what position|in which position)\\b.*\\b(?:lock|locked|locks|hung|hang)\\b.*\\b(?:open|opened|closed|shut|on or off|off or on)\\b.*`,
  `^(?:open or (?:closed|shut)|(?:closed|shut) or open)(?: .*)?$`,
  `^(?:is|are|does|should|must|has) (?:it|the valves?|this|that|they|the \\w+ valves?|v-?\\d+)(?: (?:to|be|have|go|need|stay|supposed|left))* (?:open|closed|shut)(?: or (?:open|closed|shut))?(?: .*)?$`,
]
const CALL = [
  `^(?:who|whom|what number)(?: (?:do|can|should|must|would|shall|to|is it|could))*(?: (?:i|we))*(?: (?:to|have to))* (?:call|ring|phone|radio|contact|shout for|get hold of|alert|tell in an emergency)\\b.*`,
  `^how (?:do|can|should|could) (?:i|we) (?:call|ring|radio|get|raise|reach|contact|shout)(?: (?:for|up|the|a|an|some|hold of))* ?(?:help|control room|rescue|emergency|somebody|someone|supervisor|boss|ambulance)\\b.*`,
  `^(?:what|which|where)(?: is|'s)? (?:the |our )?(?:phone |radio |call |emergency )*(?:number|channel|contact|muster point|muster|rescue plan|rescue|gate)\\b(?: .*)?$`,
]
const ASK_WHOM = [
  `^(?:who|whom)(?: (?:do|can|should|must|would|shall|to|could))*(?: (?:i|we))* (?:ask|talk to|turn to|go to|tell|speak to|report to|see|get)\\b.*`,
  `^(?:who|whom) (?:knows?|can help|helps|is (?:the |a |my |our )?(?:lead|boss|supervisor|foreman|in charge|responsible))\\b.*`,
  `^(?:can|could) (?:somebody|someone|anybody) (?:help|show)(?: me| us)?(?: .*)?$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [NONE, WAY, CALLED, ASKED] = [NO_LOCKS, POSITION, CALL, ASK_WHOM].map(compiled)

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function noLockLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  if (is(CALLED)) return callLines(defs, state)
  if (is(ASKED)) return askWhomLines(defs, state)
  if (/\b(?:bleeds?|vents?|drains?)\b/.test(text)) return null
  if (is(WAY) && /\b(?:lock|locked|locks|valves?|breaker|v-?\d+|it|closed|shut)\b/.test(text))
    return [
      'In which position each point is locked says the site’s isolation list; the machine record has none, and Barover sees no valve.',
      ...termLines('isolation point'),
      ...termLines('bleed'),
      ...atHandLines(defs, state, now),
    ]
  return is(NONE)
    ? [NO_LOCK, NOTHING_FOR_IT, ...openPoints(defs, state), ...atHandLines(defs, state, now)]
    : null
}

/** What the employer may do where a device takes no lock is 29 CFR 1910.147(c)(3); here a hold point asks for numbers of locks. */
const NOTHING_FOR_IT =
  'Nothing stands for it: a tag, a chain or a word is no lock, no hold point has n/a, and nobody gives leave to pass one. Get one, or leave the job here.'

function openPoints(defs: Definitions, state: State): string[] {
  const open = gatesOf(defs).flatMap((gate) => {
    const { status, given } = gateState(state, gate.id)
    const locks = gate.step.evidence.find((one) => one.kind === 'locks' && one.taken_off === undefined)
    if (locks === undefined || status === 'open') return []
    const names = defs.machine.site.isolation_points
      .filter(({ id }) => given[`${locks.id}.${id}`] === undefined)
      .map(({ name }) => name)
    return names.length === 0 ? [] : [`Hold point ${gate.number}, without a number yet: ${names.join('; ')}.`]
  })
  return open.slice(0, 1)
}

/** Never held back, whatever was keyed before. */
function callLines(defs: Definitions, state: State): string[] {
  const { emergency, rescue } = defs.machine.site
  return [
    'If anybody may be hurt: come out, everybody, stand clear, and say STOP first.',
    ...(state.record === 'PRACTICE' ? [NO_CALL_OUT] : []),
    `Call: ${emergency}`,
    ...siteLines(rescue === undefined ? { emergency } : { emergency, rescue }).filter(
      (line) => !line.includes(emergency),
    ),
    'The word safe shows this sheet at any prompt.',
  ]
}

function askWhomLines(defs: Definitions, state: State): string[] {
  const leads = defs.crew.crew.filter(({ role }) => role === 'lead')
  const doer = state.doer === null ? undefined : personById(defs, state.doer)
  const others = state.people.filter((id) => id !== doer?.id)
  return [
    `Leads of the crew file: ${leads.length === 0 ? 'none' : peopleText(leads)}.`,
    others.length === 0 ? peopleLine(state) : `On the job with you: ${list(others)}.`,
    'What this job’s papers say of it: ask, and your words behind it. Whom to call in danger: the word safe.',
  ]
}
