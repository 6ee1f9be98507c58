// Questions about the locks of a hold point: how many, who hangs them, whether one serves for two. Told from the machine record and from
// what is on record; that a lock hangs where it should is told by a look at it alone.
import type { EvidenceOf } from '../definition/evidence.ts'
import { gateBeingAsked } from '../job/admit-gate.ts'
import type { Definitions } from '../job/definitions.ts'
import { type GateStep, gateState, gatesOf, itemsOf } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { hanging, type Keyed } from '../job/locks-on.ts'
import { peopleOnJob } from '../job/people-on.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { atHandLines } from './at-hand.ts'
import { dangerNotes } from './danger-notes.ts'
import { NO_LOCK } from './missing-lines.ts'
import { termLines } from './terms.ts'
import { gateLine } from './where.ts'

/** Of a point, and not of a nut or a box. */
const LOCKS = '(?:pad ?)?locks?(?! ?(?:nuts?|wires?|washers?|box|rings?)\\b)'
const ONE = '(?:one|a single|1|a|the same|same|this|that)'
const TWO = '(?:two|both|2|several|three|3|all|more than one|every|more|different|other|another)'
const POINTS = '(?:valves?|points?|breakers?|places?|of them|things?|sources?|switches)'

/** Not what came off: that is another question. */
const HOW_MANY = [
  `^how many (?:\\w+ )?${LOCKS}(?!.*\\b(?:off|removed|come off)\\b)(?:$| .*)`,
  `^(?:(?:what|which)(?: is)? )?(?:the )?(?:number|count|amount) of ${LOCKS}\\b.*`,
  `^(?:are|is) (?:that|this|these|those|it|there) (?:all|every|enough|still|any|more)(?: (?:of|the|more|other))* ${LOCKS}\\b.*`,
  `^(?:are|is) (?:all|any|every|more)(?: (?:of|the|my|our|other))* ${LOCKS} (?:on|hung|in place|down|keyed|left|missing|there|to go|to come)\\b.*`,
  `^(?:what|which)(?: of the| other)? ${LOCKS} (?:is|are|do i|have i|still) (?:still )?(?:left|missing|to come|to go|open|not on|need|needed|not hung)\\b.*`,
  `^do (?:i|we) (?:need|want|have) (?:more|another|other|all|any more|\\d+|two|three|four|five|six|a (?:second|third))(?: (?:of|the|my))* ${LOCKS}\\b(?! (?:for|at|on) (?:both|two)).*`,
  `^${LOCKS} (?:needed|left|to go|missing)$`,
]
const WHO = [
  `^who(?:m|se job is it to|'s| is| has| does| should| must| may| can| will| is it that| is supposed| needs| are)*(?: (?:got|to|going|the one))*(?: to)? (?:put|puts|hang|hangs|hung|place|places|fit|fits|set|sets|apply|applies|attach|attaches|install|installs|bring|brings|do|does|lock|locks|add|adds)\\b.*\\b${LOCKS}\\b.*`,
  `^who(?: has to| should| must| may| is to)? locks? (?:out |up )?(?:it|this|the \\w+|them|that)\\b.*`,
  `^(?:do|should|must|can|may|am|is|does|could) (?:i|we|the \\w+|an? \\w+|my \\w+|somebody|someone|anybody|he|she|they)(?: else)?(?: (?:to|have to|need to|myself|the one to))* (?:put|hang|place|fit|set|apply|attach)\\b.*\\b${LOCKS}\\b.*`,
  `^whose ${LOCKS}\\b.*`,
  `^(?:is|are) (?:it|they|this|that|these|the locks?) my (?:own )?${LOCKS}$`,
]
const ONE_FOR_TWO = [
  `\\b${ONE} ${LOCKS}\\b.*\\b(?:for|on|at|across|between|through|over|do|serve|enough for|good for|cover|hold) .*\\b${TWO}\\b.*`,
  `\\b${ONE} ${LOCKS}\\b.*\\b(?:enough|twice|again|for both|for all|do it|serve)\\b.*`,
  `\\b(?:two|both|2|several|three|all)(?: of)?(?: the| my)? ${POINTS}\\b.*\\b(?:with|under|on|by|share|have|in) (?:just )?${ONE} ${LOCKS}\\b.*`,
  `\\b(?:share|sharing|double up|reuse|re-use)\\b.*\\b${LOCKS}\\b.*`,
  `\\btwo (?:people|men|mechanics|of us)\\b.*\\b${ONE} ${LOCKS}\\b.*`,
]

const FIRST = [
  `^(?:which|what)(?: of the| one of the| one)? (?:${LOCKS}|point|valve|one)(?: (?:do|should|must|is|does|has|to|goes|go|comes|come|i|we|be|hang|lock|put|set|on|hung|locked|out))* (?:first|last|next|before the others?)(?: .*)?$`,
  `^(?:in )?(?:what|which) (?:order|sequence)\\b.*\\b(?:${LOCKS}|lock|locked|hang|hung)\\b.*$`,
  `^(?:does|do|is|are)(?: (?:it|the|there))* (?:order|sequence|matter|any order|an order|important)\\b.*\\b(?:${LOCKS}|lock|hang|locked)\\b.*$`,
  `^(?:is|does)(?: there)? (?:an? |the |any )?(?:order|sequence) (?:of|for|to|in)(?: the)? ?(?:${LOCKS}|locking|hanging).*$`,
  `^(?:where|with which|with what|how|at which point|which point) (?:do|should|must|can) (?:i|we) (?:start|begin)(?: (?:with|hanging|locking|on))* (?:the |my )?(?:${LOCKS}|locking|hanging).*$`,
  `^${LOCKS} (?:order|first|sequence)$`,
]
/** By somebody else than the one who asks, and asked about, not told. */
const WHO_OFF = [
  `^(?:who|by whom)(?: (?:has|have|had|was))* (?:taken?|took|removed?|cut|unlocked|lifted)(?: off)? [a-z]{1,3}-\\d{1,5}\\b.*$`,
  `^(?:who|by whom)(?: (?:has|have|had|was|it))* (?:taken?|took|removed?|cut|unlocked|opened|lifted|pulled|got|taken off)\\b.*\\b${LOCKS}\\b.*$`,
  `^(?:who|by whom|when|where|which|what|are|is|was|were|has|have|did)\\b.*\\b${LOCKS}\\b.*\\b(?:taken off|come off|came off|removed|cut|took off|off already|off now|off yet|gone off|off)(?: .*)?$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [MANY_ASKED, WHO_ASKED, ONE_ASKED] = [compiled(HOW_MANY), compiled(WHO), compiled(ONE_FOR_TWO)]
const [FIRST_ASKED, OFF_ASKED] = [compiled(FIRST), compiled(WHO_OFF)]
/** Leave to take one off is another question, and a danger that is told is another still. */
const MAY_OFF =
  /^(?:when|who|which)(?: \w+)? (?:may|can|could|should|must|do|does|will|has to|is allowed)\b|^what if\b|\b(?:nut|wire)\b/i
/** Why one hangs there, or that it comes off or is missing, is heard elsewhere. */
const ELSEWHERE = /^(?:why|where|when|what if|if)\b|\b(?:off|cut|remove|lost|gone)\b/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function lockAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const is = (patterns: readonly RegExp[]) => patterns.some((one) => one.test(text))
  if (is(OFF_ASKED) && !MAY_OFF.test(text)) return offLines(defs, state, text, now)
  if (is(FIRST_ASKED)) return orderLines(defs, state, now)
  if (ELSEWHERE.test(text)) return null
  if (is(ONE_ASKED)) return [...ONE_EACH, ...countLines(defs, state, now)]
  if (is(MANY_ASKED)) return [...(/\bmissing\b/.test(text) ? [NO_LOCK] : []), ...countLines(defs, state, now)]
  return is(WHO_ASKED) ? whoLines(defs, state, now) : null
}

/** What keeps a lock from standing for two is 'lock-twice' in `evidence-numbers.ts`. */
const ONE_EACH = [
  'No: each point has a lock of its own, and a number that stands for one is refused at another.',
  'A lock goes on each isolating device: 29 CFR 1910.147(d)(4)(i). Nor do two people share one: its key stays with the one who depends on it.',
]

type Locks = EvidenceOf<'locks'>

/** The hold point that is asked, else the last at which any was shown, else the first: of those where locks go on. */
function gateOfLocks(defs: Definitions, state: State): { gate: GateStep; locks: Locks } | null {
  const all = gatesOf(defs).flatMap((gate) => {
    const locks = gate.step.evidence.find(
      (one): one is Locks => one.kind === 'locks' && one.taken_off === undefined,
    )
    return locks === undefined ? [] : [{ gate, locks }]
  })
  const asked = gateBeingAsked(defs, state)
  return (
    all.find(({ gate }) => gate.id === asked?.id) ??
    all.findLast(({ gate }) => gateState(state, gate.id).status !== 'never') ??
    all[0] ??
    null
  )
}

function countLines(defs: Definitions, state: State, now: Instant): string[] {
  const found = gateOfLocks(defs, state)
  if (found === null) return [NONE_ASKED, ...atHandLines(defs, state, now)]
  const { gate, locks } = found
  const { given } = gateState(state, gate.id)
  const items = itemsOf(defs, state, gate).filter(({ evidence }) => evidence.id === locks.id)
  const on = items.flatMap(({ key, point }) => {
    const one = given[key]
    return one === undefined ? [] : [`${one.shown} ${point?.name ?? ''}`.trim()]
  })
  const open = items.filter(({ key }) => given[key] === undefined).map(({ point }) => point?.name ?? '')
  return [
    `Hold point ${gate.number}: ${items.length} locks, one at each isolation point of the machine record.`,
    ...(on.length === 0 ? ['None is on record now.'] : [`On record, ${on.length}: ${on.join('; ')}.`]),
    ...(open.length === 0 ? [] : [`Still to come, ${open.length}: ${open.join('; ')}.`]),
    ...ownLocks(defs, state, gate),
    'Where the site’s isolation list has another point, stop and ask: the record is short of it.',
    ...gateLine(defs, state, gate, now),
  ]
}

const NONE_ASKED = 'No hold point of this job asks for a lock; what hangs there stays.'

/** A lock of each person, on the lock box. */
function ownLocks(defs: Definitions, state: State, gate: GateStep): string[] {
  const { given } = gateState(state, gate.id)
  const items = itemsOf(defs, state, gate).filter(
    ({ evidence }) =>
      evidence.kind === 'numbers' && evidence.of === 'personal_lock' && evidence.taken_off === undefined,
  )
  if (items.length === 0) return []
  const on = items.filter(({ key }) => given[key] !== undefined).length
  return [
    `Besides, each person's own lock: ${on} on record, of ${peopleOnJob(state).length} on the job; nobody hangs one for another.`,
  ]
}

function whoLines(defs: Definitions, state: State, now: Instant): string[] {
  const found = gateOfLocks(defs, state)
  if (found === null) return [NONE_ASKED, ...atHandLines(defs, state, now)]
  const { gate, locks } = found
  return [
    'Those who work behind them, trained for it and entitled to by the site (29 CFR 1910.147(d)(4)(i)); who that is stands in the permit.',
    ...termLines('lock out'),
    `Step ${gate.number}, ${gate.step.title}: "${locks.ask}"`,
    'It goes on record under whoever keys it; who hung it is not asked there.',
    ...gateLine(defs, state, gate, now),
  ]
}

/** No order stands in any record: the site's own list has it. */
function orderLines(defs: Definitions, state: State, now: Instant): string[] {
  const found = gateOfLocks(defs, state)
  if (found === null) return [NONE_ASKED, ...atHandLines(defs, state, now)]
  const { gate, locks } = found
  const { given } = gateState(state, gate.id)
  const open = itemsOf(defs, state, gate).filter(
    ({ key, evidence }) => evidence.id === locks.id && given[key] === undefined,
  )
  const names = open.map(({ point }) => point?.name ?? '')
  return [
    'In which order they are hung says the site’s isolation list; the machine record names none.',
    open.length === 0
      ? `Hold point ${gate.number}: every lock is on record.`
      : `Asked here in the order of the machine record: ${names.join('; ')}. All of them before anybody goes in.`,
    ...atHandLines(defs, state, now),
  ]
}

/** What the record tells of locks that came off: by whom it was keyed. Barover sees no lock. */
function offLines(defs: Definitions, state: State, text: string, now: Instant): string[] {
  const { on, off } = hanging(defs, state)
  const isLock = ({ item }: Keyed) => item.evidence.kind === 'locks' || item.evidence.kind === 'numbers'
  const named = (text.toUpperCase().match(/\b[A-Z]{1,4}-\d{1,5}\b/g) ?? []) as readonly string[]
  const isMeant = ({ shown }: Keyed) => named.length === 0 || named.includes(shown.toUpperCase())
  const [gone, there] = [
    off.filter(({ what }) => isLock(what) && isMeant(what)),
    on.filter((one) => isLock(one) && isMeant(one)),
  ]
  return [
    'Barover sees no lock. If one is off that should hang: everybody comes out, stand clear, say STOP.',
    ...(gone.length === 0
      ? ['By the record none was taken off on this job.', ...dangerNotes(state)]
      : gone
          .slice(0, MOST_OFF)
          .map(
            ({ what, told }) =>
              `By the record, ${what.shown} at ${itemLabel(defs, what.item)}: told off, ${told.offBy === undefined ? '' : `by ${told.offBy}, `}keyed by ${told.by ?? 'nobody known'}.`,
          )),
    ...(gone.length > MOST_OFF ? [`and ${gone.length - MOST_OFF} more.`] : []),
    ...(there.length === 0
      ? []
      : [
          `Keyed as on, and not told off: ${there
            .slice(0, MOST_ON)
            .map(({ shown, by }) => `${shown} (${by ?? 'nobody known'})`)
            .join(', ')}${there.length > MOST_ON ? ` and ${there.length - MOST_ON} more` : ''}.`,
        ]),
    'Whoever a lock belongs to takes it off by their own hand, and nobody else: 29 CFR 1910.147(e)(3).',
    ...atHandLines(defs, state, now),
  ]
}

const MOST_OFF = 3
const MOST_ON = 8
