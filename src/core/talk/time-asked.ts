// How long what was shown at a hold point counts, before it is shown as well as after, and how long somebody has. Told from the rule of
// the site and the clock of the job; it never calls a test good.
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { lapsesOf } from '../job/lapse.ts'
import type { State } from '../job/state.ts'
import { clockOf, type Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { atHandLines, gatesAtHand } from './at-hand.ts'
import { gateLine, timeLines } from './where.ts'

const GAS =
  '(?:(?:the|this|our|my|a|an|that|one) )?(?:gas(?:es)?(?: tests?| readings?| figures?| checks?)?|air(?: tests?| readings?| checks?)?|(?:oxygen|lel|h2s)(?: tests?| readings?| figures?)?|tests?|meter readings?|hold point|it)'
const AIR =
  '(?:the |this |our |my |a )?(?:gas(?:es)?|air|oxygen|lel|h2s)(?: (?:tests?|readings?|figures?|checks?))?'
const LIFE = [
  `^(?:how long|how many (?:minutes|hours)|for how long) (?:is|are|does|do|will|can|may|would) ${GAS}(?: still)? ?(?:be )?(?:good|valid|last|lasts|count|counts|stand|keep|hold|run|stay|laps\\w*|ok|okay|enough|in date)?(?: (?:good|valid|for|then|now|once (?:taken|done|read)|after .*|before .*))*$`,
  `^how (?:often|soon|many times|quickly) (?:do|must|should|is|are|has|have|need|does)(?: (?:i|we|to|have|need|be))* (?:test|tested|retest|re-test|check|checked)(?: ${AIR})?(?: again)?$`,
  `^how (?:often|soon|many times|quickly) (?:do|must|should|is|are|has|have|need|does)(?: (?:i|we|to|have|need))* (?:read|measure|do|redo|repeat|take)? ?${AIR}(?: (?:again|have|has|to|be|tested|read|done|repeated|checked|anew))*$`,
  `^(?:when|how soon|at what time) (?:do|must|should|have|is|will)(?: (?:i|we|to|have|need))* (?:test|retest|re-test|check)(?: ${AIR})? ?(?:again|anew|next|the air)?$`,
  `^(?:do|must|should) (?:i|we)(?: (?:have to|need to))? (?:test|retest|re-test)(?: ${AIR})? ?(?:again|anew|the air again)?$`,
  `^(?:can|may|could|does|is) (?:i |we )?(?:use|take|count|rely on|key|go by|it ok to use)? ?(?:yesterday's|yesterdays|the last|the old|an old|an earlier|the earlier|his|their|somebody else's|this morning's|the morning's|last shift's|the previous) (?:gas )?(?:tests?|readings?|figures?)(?: .*)?$`,
  `^how old (?:can|may|must|is) ${GAS}(?: be| get)?$`,
  `^${AIR} (?:life|validity|lapse|expiry|good for how long|how long)$`,
]
const LEFT = [
  `^how (?:much time|long|many minutes|much longer|much)(?: is| do| have| does| are)?(?: (?:i|we|he|she|they))?(?: (?:still|have|got|do|left))*(?: (?:time|left|got))*(?: (?:in (?:here|there)|now|here|to (?:work|measure|finish|read)(?: .*)?|until .*|till .*|before .*|on (?:the|this) .*|for (?:this|it|that)))*$`,
  '^(?:how much )?time (?:left|remaining|do i have)(?: .*)?$',
  `^how (?:long|much time) (?:can|may|could) (?:i|we|he|somebody|you)(?: still)? (?:stay|be|work|go on|reach|measure|remain|keep)\\b.*`,
  `^(?:what time|when|by when|until when) (?:do|must|should|have) (?:i|we)(?: (?:have to|need to|to))? (?:be )?(?:out|come out|stop|leave|get out|finish|done)\\b.*`,
  `^(?:am i|are we) (?:running out of time|out of time|still in time|late)$`,
  `^(?:do|have) (?:i|we)(?: have| got)? (?:enough|any) time(?: left)?(?: .*)?$`,
  `^when (?:does|do|is|will) (?:it|this|that|my time|the time|the clock|time)(?: all)? (?:run out|laps\\w*|expire|up|be up|end|over)$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [LIFE_ASKED, LEFT_ASKED] = [compiled(LIFE), compiled(LEFT)]
/** Of a wait, of the work, of a lock, of a size: those are other questions. */
const ELSEWHERE =
  /\b(?:wait|waiting|locks?|rod|bore|stroke|piston|hold (?:the|it)|job|procedure|inspection|(?:it|this|that) takes?|wear|run another|warranty|calibration|left (?:of|on) the)\b|^how (?:long|much)(?: is)?(?: left)?$|^how (?:long|much longer) is (?:it|this|that)$|^how much is\b|^how long (?:is|does|will) it (?:last|take)?$/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function timeAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  if (ELSEWHERE.test(text)) return null
  if (LEFT_ASKED.some((one) => one.test(text)))
    return [
      ...leftLines(defs, state, now),
      ...lifeBefore(defs, state),
      ...timeLines(defs, state),
      ...atHandLines(defs, state, now),
    ]
  return LIFE_ASKED.some((one) => one.test(text))
    ? [...leftLines(defs, state, now), ...lifeLines(defs, state), ...gateLines(defs, state, now)]
    : null
}

/** What follows where it is asked when it lapses and nothing stands that could: the rule alone. */
export function lifeBefore(defs: Definitions, state: State): string[] {
  const stands = gatesOf(defs).some((gate) => lapsesOf(defs, state, gate).length > 0)
  return stands ? [] : lifeLines(defs, state)
}

/** When the first of all that was shown lapses. */
export function leftLines(defs: Definitions, state: State, now: Instant): string[] {
  const lapses = gatesOf(defs).flatMap((gate) =>
    // A time that cannot be told is past.
    lapsesOf(defs, state, gate).map(({ atMs }) => ({
      gate,
      atMs: Number.isNaN(atMs) ? Number.NEGATIVE_INFINITY : atMs,
    })),
  )
  const first = lapses.reduce<(typeof lapses)[number] | null>(
    (one, other) => (one === null || other.atMs < one.atMs ? other : one),
    null,
  )
  const fallen = gatesOf(defs).filter(({ id }) => gateState(state, id).mustClear)
  if (fallen.length > 0)
    return [
      `Nothing is left: hold point ${list(fallen.map((gate) => String(gate.number)))} has fallen. Everybody comes out.`,
    ]
  if (first === null) return ['No gas test stands now, so no clock runs.']
  const { number, id } = first.gate
  const left = first.atMs - now.ms
  const at = Number.isFinite(first.atMs)
    ? clockOf({ ms: first.atMs, offsetMin: now.offsetMin })
    : 'a time that cannot be told'
  if (!(left > 0))
    return [`Nothing is left: what was shown at hold point ${number} lapsed at ${at}. Everybody comes out.`]
  const then =
    gateState(state, id).status === 'open'
      ? `then hold point ${number} falls. Be out before it.`
      : `then what was shown first at hold point ${number} lapses, and is read anew.`
  return [`Until ${at}, ${minutes(left)} from now: ${then}`]
}

/** Rounded down: nobody is told more than there is. */
function minutes(ms: number): string {
  const whole = Math.floor(ms / 60_000)
  return whole < 1 ? 'less than a minute' : `${whole} min`
}

/** How long a figure counts, by the rule of the site; and what else at the hold point at hand has a life. */
export function lifeLines(defs: Definitions, state: State): string[] {
  const { life, warn_before: warn, source } = defs.machine.site.gas
  const asksGas = gatesOf(defs).some(({ step }) => step.evidence.some(({ kind }) => kind === 'gas'))
  const others = gatesAtHand(defs, state).flatMap((gate) =>
    gate.step.evidence.flatMap((evidence) =>
      (evidence.kind === 'measured' || evidence.kind === 'words') && evidence.life !== undefined
        ? [
            `${itemLabel(defs, { key: evidence.id, evidence, point: null, person: null, part: null })}, ${evidence.life.text}`,
          ]
        : [],
    ),
  )
  return [
    ...(asksGas
      ? [
          `A gas figure counts ${life.text} from the moment it is keyed; ${warn.text} before, the sheet warns. Source: ${source}.`,
          SOONER,
        ]
      : ['No hold point of this job asks for gas.']),
    ...(others.length === 0 ? [] : [`Here too: ${[...new Set(others)].join('; ')}.`]),
  ]
}

/** As `closeCause` has them in `entries.ts`. */
const SOONER =
  'It falls sooner at a figure out of its limit, STOP, leave, hand over, when somebody comes onto the job, or when a hazard is let in again.'

/** Those with anything shown. */
function gateLines(defs: Definitions, state: State, now: Instant): string[] {
  return gatesOf(defs)
    .filter((gate) => Object.keys(gateState(state, gate.id).given).length > 0)
    .flatMap((gate) => gateLine(defs, state, gate, now))
}
