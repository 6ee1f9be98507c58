// Which gas meter, and whether there is inert gas: the register says what each can see, the procedure whether this job sweeps with it; what
// is in the air only a meter tells. Nothing is chosen for anybody.
import type { GasMeter } from '../definition/instruments.ts'
import { refusedNow } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import { inertLetIn } from '../job/inert-let-in.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { atHandLines } from './at-hand.ts'
import { nothingRefuses } from './job-asked.ts'

const INERT = '(?:nitrogen|inert(?: gas)?|n2|purge gas|air without oxygen|gas without air)'
const IS_THERE = [
  `^(?:is|are|was|could|can|might|may|will|would|should) (?:there|it|this|that|the \\w+|we|i|they|somebody|gas)?\\b.*\\b${INERT}\\b.*`,
  `^(?:do|does|did|have|has) (?:i|we|they|somebody|it|the \\w+|this|that)\\b.*\\b(?:${INERT}|purged?|swept|inerted)\\b.*`,
  `^(?:how|where) (?:do|can|could|would|should|will) (?:i|we|one)(?: \\w+)* (?:know|tell|see|find out|check|notice)\\b.*\\b(?:${INERT}|purged|swept)\\b.*`,
  `^(?:was|is|has) (?:it|this|that|the \\w+)(?: been)? (?:purged|swept (?:out|with)|inerted|flushed|blown (?:out|through))\\b.*`,
  `^(?:what|which) gas (?:is|was|do (?:i|we) have|have (?:i|we))(?: (?:in|inside|it|there|here|used|left|now))*(?: .*)?$`,
]
const METER = '(?:gas ?)?(?:meter|monitor|detector|sniffer|tester|one)s?'
const WHICH = [
  `^(?:which|what)(?: of (?:these|them|the two|those))?(?: ${METER})?(?: (?:is|are|do|does|should|must|can|would|shall|for|goes|has))*(?: (?:i|we|you|it|the|one|to))*(?: (?:be|have to|need to))* ?(?:need|needed|want|use|used|take|taken|pick|key|choose|right|best|better|go(?:es)? (?:here|in)|right one|for (?:this|here|it|nitrogen|inert gas)|good)(?: (?:here|for .*|now|one|in .*))*$`,
  `^(?:do|does|should|must|is|will|can|may|could|would) (?:i|we|it|this|that|either|any|\\w+-?\\d+|the \\w+(?: \\w+)?)(?: (?:need|use|take|have to|want|pick|to|have|be))* ?(?:the |an? )?(?:(?:other|infrared|catalytic|first|second|normal|four-gas|right|special) )*(?:${METER}|\\w+-\\d+)?(?: (?:for|in|that reads (?:in|without)|without|work in|ok in|enough for|do for))? ?(?:${INERT}|air|oxygen|infrared)\\b.*`,
  `^(?:does|do) it matter which(?: .*)?$`,
  `^(?:is|are) (?:it all the same|either (?:of them )?(?:ok|fine|good|right)|any of them (?:ok|fine|good|right))$`,
  `^(?:can|may|could|should) (?:i|we) (?:use|take|pick|have) (?:either|any|the (?:first|second|other|infrared|catalytic|normal))(?: (?:one|of them|of these|meter|of the two))?(?: .*)?$`,
]

const OURS = [
  `^(?:does|do|can|may|is|are|will|would|could|should|must) .*\\b(?:personal|own|pocket|clip-on|clip on|belt|my|his|phone)(?: \\w+)? (?:gas )?(?:monitors?|meters?|detectors?|alarms?|sniffers?|testers?)\\b.*`,
  `^(?:what|and)(?: (?:if|when|about))? (?:the |my |our |this )?(?:gas )?(?:meter|monitor|detector|battery)(?: (?:battery|sensor))? ?(?:is|has|was|goes|gets|does|dies|died|needs)\\b.*\\b(?:calibrat\\w+|expired|date|dead|flat|broken|off|faulty|empty|bumped|answer|charged|low|lapsed|charge)\\b.*`,
  `^(?:is|are|was|does) (?:the |my |this |our )?(?:gas )?(?:meter|monitor|detector) (?:in |out of |still |been )*(?:calibrated|calibration|date|ok|good|valid|charged|accurate|allowed)\\b.*`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [THERE_ASKED, WHICH_ASKED, OURS_ASKED] = [compiled(IS_THERE), compiled(WHICH), compiled(OURS)]
/** What the word means is a term of the trade. */
const MEANS =
  /^what (?:is|does|are) (?:an? |the )?(?:nitrogen|inert gas|inert|purge)(?: mean)?$|\bmean\b|\bwhy\b|\bhow (?:much|long|many)\b/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function meterAskedLines(
  defs: Definitions,
  state: State,
  text: string,
  now: Instant,
): string[] | null {
  if (MEANS.test(text)) return null
  if (
    THERE_ASKED.some((one) => one.test(text)) &&
    /\b(?:nitrogen|inert|inerted|purge|purged|flushed|(?:swept|blown) (?:out|through|with)|gas)\b/.test(text)
  )
    return inertLines(defs, state, now)
  if (OURS_ASKED.some((one) => one.test(text)) && meters(defs).length > 0) return oursLines(defs, state, now)
  return isAtMeter(defs, state) && WHICH_ASKED.some((one) => one.test(text))
    ? whichLines(defs, state, now)
    : null
}

/** The list of gas meters lies open. */
function isAtMeter(defs: Definitions, state: State): boolean {
  const prompt = next(defs, state)
  return prompt.kind === 'pick' && prompt.options.some(({ kind }) => kind === 'gas_meter')
}

function meters({ instruments, seats }: Definitions): GasMeter[] {
  const isAsked = seats.some(({ kinds }) => kinds.includes('gas_meter'))
  return isAsked ? instruments.instruments.filter((one) => one.kind === 'gas_meter') : []
}

/** What the day of the job has against it, and what it can see. */
function meterLine(defs: Definitions, state: State, one: GasMeter): string {
  const needs = one.needs_oxygen.at_least
  const sees =
    needs.si > 0
      ? `It needs at least ${needs.text} of oxygen to see what burns`
      : 'It sees what burns without oxygen'
  const inert = one.reads_in_inert === undefined ? 'is not for gas without air' : 'reads in gas without air'
  const prompt = next(defs, state)
  const refused = refusedNow(defs, state, prompt.kind === 'pick' ? prompt.seat.id : null, one)
  const standing = refused === null ? nothingRefuses(state) : `REFUSED, ${refused}`
  return `${one.id}: ${standing}. ${sees}, and ${inert}. Source: ${one.needs_oxygen.source}.`
}

function whichLines(defs: Definitions, state: State, now: Instant): string[] {
  const prompt = next(defs, state)
  return [
    ...(prompt.kind === 'pick' ? [`Wanted: ${prompt.seat.for}.`] : []),
    `Barover chooses none: key the number on the tag of the one in your hand.`,
    ...meters(defs).map((one) => meterLine(defs, state, one)),
    ...sweptLines(defs, state),
    IN_DOUBT,
    ...atHandLines(defs, state, now),
  ]
}

function inertLines(defs: Definitions, state: State, now: Instant): string[] {
  const all = meters(defs)
  return [
    'Barover cannot tell: it sees no gas. Nobody can breathe inert gas, smell it or feel it: only a meter tells, oxygen first.',
    ...sweptLines(defs, state),
    IN_DOUBT,
    ...all.map((one) => meterLine(defs, state, one)),
    ...atHandLines(defs, state, now),
  ]
}

/** A meter of one's own, or one that is not as it should be: which of them count. */
function oursLines(defs: Definitions, state: State, now: Instant): string[] {
  return [
    'At a hold point counts what is read on a gas meter of the register, picked by the number on its tag, and nothing else:',
    ...meters(defs).map((one) => `${meterLine(defs, state, one)} Calibrated until ${one.calibration.due}.`),
    'A personal alarm is worn besides, and opens nothing; when it sounds, come out. Common practice, no source.',
    'One that is past its day, flat, or did not answer on test gas reads nothing: back, where it has read nothing yet, else the word instrument.',
    ...atHandLines(defs, state, now),
  ]
}

const IN_DOUBT =
  'In doubt inert gas counts as there, and a meter that reads without air is taken. Common practice, no source.'

/** More would push the question off a small screen. */
const MOST = 3
const SWEEPS = /\b(?:purg(?:e|es|ed|ing)|inert gas|nitrogen)\b/i

/** Sheets of this job that speak of it, by their own words. */
function sweptLines(defs: Definitions, state: State): string[] {
  const letIn = inertLetIn(defs, state)
  const sheets = defs.steps.flatMap(({ number, step }) => {
    const own = [step.title, 'text' in step ? step.text : undefined, step.hazard].join(' ')
    return SWEEPS.test(own) ? [`${number}, ${step.title}`] : []
  })
  return [
    letIn === null
      ? 'By this log no inert gas was let in.'
      : `BY THIS LOG INERT GAS WAS LET IN, sheet ${letIn}: a meter that reads without air is taken.`,
    sheets.length === 0
      ? 'No sheet of this job sweeps with inert gas; whether it was swept before stands in the permit and in the job that opened it.'
      : `Sheets of this job that speak of purging: ${sheets.slice(0, MOST).join('; ')}${sheets.length > MOST ? '; and others' : ''}.`,
  ]
}
