// What one may do now, which gas figure is within its limit, what the wind does, how an instrument is read. The hold points are told as they
// stand, each limit with its source; none of it is leave, and no figure is called good.
import { asKind, type Definitions, gasLimitById, instrumentById } from '../job/definitions.ts'
import { gatesOf } from '../job/gate.ts'
import { next } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { gasPassage } from '../papers/limit-passages.ts'
import { quotedLines } from './answer-asked.ts'
import { atHandLines, gatesAtHand } from './at-hand.ts'
import { releaseLines } from './stop-lines.ts'
import { termLines } from './terms.ts'
import { wantedLine } from './wanted.ts'
import { gateLine } from './where.ts'

const WHEN =
  '(?:now|here|next|then|right now|at (?:this|the) (?:point|moment|step|sheet)|on this (?:sheet|step)|today|meanwhile|in the meantime|while (?:i|we) wait|already|so far|as it (?:is|stands))'
const MAY = [
  '^what else (?:may|can|could) (?:i|we|he|she|one) (?:do|work on)$',
  `^what (?:all )?(?:may|can|might|could|am|are|is)(?: else)?(?: (?:i|we|one|somebody|people|he|she|anybody))? ?(?:(?:be )?(?:allowed|permitted|free|able)(?: to)?|let)?(?: (?:do|be done|work on|touch|start on|start with|go on with|carry on with|get on with|begin with))?(?: else)?(?: ${WHEN})+$`,
  `^what (?:may|can|might|could) (?:i|we|he|she|one) (?:already |still |also )?(?:do|work on|touch|start on|go on with|get on with)$`,
  `^what (?:am i|are we|is (?:he|she|somebody|anybody)) (?:now |still |already |even )*(?:allowed|permitted|free|supposed|let|able)(?: (?:to|do|to do|here|work on|touch|now))*$`,
  `^what is (?:still |now |already )?(?:allowed|permitted|open to (?:me|us)|forbidden|not allowed)(?: ${WHEN})*$`,
  `^(?:what|which) (?:work|jobs?|steps?|sheets?|things?) (?:may|can|could|is|are|am)(?: (?:i|we|one|be))*(?: (?:allowed|permitted|do|done|go on|start|begin|to do|open))+(?: ${WHEN})*$`,
]
const GAS = {
  oxygen: '(?:oxygen|o2|oxigen|oxygene|oxgen)',
  hydrogen_sulfide: '(?:h2s|hydrogen sul(?:f|ph)ide|toxics?)',
  flammable: '(?:lel|flammables?|flamables?|burnables?|methane|combustibles?|explosives?|fuel gas)',
} as const
const ANY_GAS = `(?:${Object.values(GAS).join('|')}|gas|air)`
const FIGURE =
  '(?:readings?|figures?|values?|numbers?|levels?|ones?|results?|percent(?:age)?|amount|limits?|range|test)'
const FINE =
  '(?:good|normal|ok|okay|right|fine|safe|allowed|acceptable|bad|high|low|expected|usual|enough|correct|proper|healthy|dangerous|permitted|wrong|needed|wanted|breathable|passing|in (?:the )?limits?|within (?:the )?limits?)'
const GOOD_GAS = [
  `^(?:what|which|how much|how high|how low)(?: (?:is|are|was|would be|counts as|do (?:i|we) need as))?(?: (?:an?|the|some|too|still|not|as))* ?${FINE} (?:for )?(?:the )?${ANY_GAS}(?: ${FIGURE})?(?: (?:here|now|for (?:this|it)|in (?:there|here|the bore)|inside|to (?:go in|work|breathe|pass|have)))*$`,
  `^(?:what|which|how much)(?: (?:is|are|was))?(?: (?:an?|the|some))* ?${FINE} ${FIGURE} (?:for|of) (?:the )?${ANY_GAS}(?: .*)?$`,
  `^(?:what|which|how much|how high|how low)(?: an?)? ?(?:${FIGURE} (?:of |for )?)?(?:the )?${ANY_GAS}(?: ${FIGURE})? (?:is|are|would be|counts as|is still|must|should|may|can|has to|do (?:i|we))(?: (?:it|there|i|we|be|have|need|want|see|get|read|to|still|too|not|as|at (?:least|most)|show))* ?(?:${FINE})?(?: (?:here|now|for (?:this|it)|in (?:there|here)|inside|to (?:go in|work|breathe|pass)))*$`,
  `^(?:what|how much|how high|how low) (?:must|should|may|can|does|do|has|is|are|ought)(?: to)? (?:i |we |it )?(?:the |my )?(?:${FIGURE} (?:of |for )?)?(?:the )?${ANY_GAS}(?: ${FIGURE})?(?: (?:have|has|need|needs|to|be|read|show|allowed|at (?:least|most)|supposed|normally|usually|like|here|now))*$`,
  `^(?:what|which) ${FIGURE}(?: (?:is|are|do i|do we|should i|should it|must it|must|should|would be|am i|i))* ?(?:be |have |get |need |want |looking for|after|hope for|see |read )?(?:${FINE}|to (?:get|see|have|read)|looking for|after|be)?(?: (?:here|now|for (?:this|it)))*$`,
  `^(?:good|normal|safe|ok|right|allowed) ${ANY_GAS}(?: ${FIGURE})?$`,
  `^(?:what|how) (?:is|are) (?:the )?(?:limits?|range) (?:of|for|on) (?:the )?${ANY_GAS}(?: .*)?$`,
  `^(?:when|from (?:where|what|which(?: figure)?)|at what(?: figure)?) is (?:the )?${ANY_GAS}(?: ${FIGURE})? (?:too |still |not )*${FINE}(?: .*)?$`,
]
const WIND = [
  '^(?:what|how|does|do|is|can|may|could|should|must|will|would|and|if|when|its (?=windy))\\b(?!.*\\b(?:out of|from|coming|through|into)\\b).*\\b(?:winds?|windy|draughts?|drafts?|draughty|drafty|breeze|breezy|gusts?|gusty|blowing outside|fans? (?:is |are )?(?:on|running|blowing))\\b.*$',
]
const HOW_READ =
  /^how (?:do|does|should|can|would|must|to)(?: (?:i|we|you|one))? (?:read|use|work with|work|take a (?:reading|figure|measurement) (?:with|on|off)|measure with|read off)(?: (?:it|off))? ?(?:from |on |off |with )?(?:an? |the |this |my |these |our |such an? )?(?:(inside|internal|outside|bore|dial bore|cylinder|feeler|feelers|thickness|telescopic) ?)?(micrometers?|gauges?|blades?|this|it|instrument)?(?: (?:correctly|properly|right|here|then|at all|scale|for (?:this|it)))*$/

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [MAY_ASKED, GOOD_ASKED, WIND_ASKED] = [MAY, GOOD_GAS, WIND].map(compiled)

/** What the word means is a term of the trade; what was read stands on record. */
const MEANS = new RegExp(
  `^what (?:is|are) (?:an? |the )?${ANY_GAS}$|^how (?:much|high|low|many) .* is (?:there )?(?:in there|inside|on record)$`,
  'i',
)
const GOOD_SIZE = new RegExp(
  `^what (?:(?:is|would be|counts as|do (?:i|we) need as) (?:an? |the )?${FINE} ${FIGURE}|(?:should|must|ought|does) (?:it|the ${FIGURE}|my ${FIGURE}|this) (?:have to |to )?(?:be|read|show|come to))(?: (?:here|now|for (?:this|it)))*$`,
  'i',
)

/** A good, safe or normal figure of a gas that is named or read here. Null: it is none. */
export function goodGasLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const isAsked = !MEANS.test(text) && [...(GOOD_ASKED ?? []), GOOD_SIZE].some((one) => one.test(text))
  return isAsked ? goodLines(defs, state, text, now) : null
}

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function mayAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  if (is(MAY_ASKED)) return mayLines(defs, state, now)
  const good = goodGasLines(defs, state, text, now)
  if (good !== null) return good
  if (GOOD_SIZE.test(text) && next(defs, state).kind === 'read')
    return [NO_FIGURE_GOOD, ...(quotedLines(defs, state, 'what is the limit') ?? [])]
  if (is(WIND_ASKED) && gatesOf(defs).some(({ step }) => step.evidence.some((one) => one.kind === 'gas')))
    return [...termLines('wind'), ...askedHere(defs, state), ...atHandLines(defs, state, now)]
  return howReadLines(defs, state, text)
}

const NO_FIGURE_GOOD =
  'Key what the instrument shows. Barover calls no figure good or bad by itself: a size is judged with the others.'

/** What is asked now, and behind which hold points: no more is let in by them. */
function mayLines(defs: Definitions, state: State, now: Instant): string[] {
  const prompt = next(defs, state)
  const isStopped = openStop(state) !== null
  const gates = gatesAtHand(defs, state)
  const open = gatesOf(defs).filter((gate) => !gates.includes(gate))
  return [
    ...(isStopped ? ['Nothing but what makes it safe: the job is stopped.'] : []),
    `What the sheet asks, and nothing else. ${wantedLine(defs, state, prompt)}`,
    ...(isStopped ? releaseLines(defs, state) : []),
    ...(gates.length === 0 ? ['No hold point stands before what is asked: it asks nobody in.'] : []),
    ...atHandLines(defs, state, now),
    ...(gates.length === 0 ? open.slice(0, 1).flatMap((gate) => gateLine(defs, state, gate, now)) : []),
    'No hold point is passed by leave of anybody. next shows what comes after.',
  ]
}

/** Each limit of the gas that is named, that of the line first; without a name, of the line. Null: no gas is asked about here. */
function goodLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const prompt = next(defs, state)
  const here =
    prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas'
      ? gasLimitById(defs, prompt.item.evidence.limit)
      : undefined
  const named = Object.entries(GAS).find(([, words]) => new RegExp(`\\b${words}\\b`, 'i').test(text))?.[0]
  const isAnyGas = named === undefined && /\b(?:gas|air)\b/i.test(text)
  if (named === undefined && !isAnyGas && here === undefined) return null
  const asked = new Set(
    gatesOf(defs).flatMap(({ step }) =>
      step.evidence.flatMap((one) => (one.kind === 'gas' ? [one.limit] : [])),
    ),
  )
  const all = defs.machine.site.gas.limits.filter(({ id, gas }) => {
    if (!asked.has(id)) return false
    return named === undefined ? isAnyGas || id === here?.id : gas.startsWith(named)
  })
  const own = all.filter(({ id }) => id === here?.id)
  const others = all.filter(({ id }) => id !== here?.id)
  if (all.length === 0) return null
  return [
    ...(own.length === 0 ? [] : ['The limit of this line:']),
    ...own.map((limit) => `  ${gasPassage(defs, limit).text}`),
    ...(others.length === 0
      ? []
      : [own.length === 0 ? 'Limits of this site:' : 'At other places, and not for this line:']),
    ...others.slice(0, MOST).map((limit) => `  ${gasPassage(defs, limit).text}`),
    ...(others.length > MOST ? [`  and ${others.length - MOST} more`] : []),
    ...(named === 'oxygen' ? termLines('oxygen') : []),
    'A limit is no word that it is safe: key what the meter shows, also where it is out.',
    ...atHandLines(defs, state, now),
  ]
}

/** More would push the question off a small screen. */
const MOST = 3

function askedHere(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  if (prompt.kind !== 'evidence' || prompt.item.evidence.kind !== 'gas') return []
  const limit = gasLimitById(defs, prompt.item.evidence.limit)
  return [
    `Asked here: ${prompt.item.evidence.ask}`,
    ...(limit === undefined ? [] : [`Limit, ${gasPassage(defs, limit).text}`]),
  ]
}

const READ_TERMS: readonly (readonly [RegExp, string])[] = [
  [/^(?:feelers?|thickness)$/, 'reading a feeler gauge'],
  [/^(?:bore|dial bore|cylinder|telescopic)$/, 'bore gauge'],
  [/^(?:inside|internal)$/, 'reading an inside micrometer'],
]
const KINDS: Readonly<Record<string, string>> = {
  inside_micrometer: 'reading an inside micrometer',
  bore_gauge: 'bore gauge',
  outside_micrometer: 'reading a micrometer',
  feeler_gauge: 'reading a feeler gauge',
}

/** How it is read, and what the sheet says of it where it is in use. Null: no instrument that a term is of. */
function howReadLines(defs: Definitions, state: State, text: string): string[] | null {
  const found = HOW_READ.exec(text)
  if (found === null) return null
  const [, sort, thing = ''] = found
  const prompt = next(defs, state)
  const used = prompt.kind === 'read' ? instrumentById(defs, prompt.instrument) : undefined
  const isThis = sort === undefined && /^(?:this|it|gauges?|instrument)?$/.test(thing)
  const kind = used === undefined || !isThis ? null : (KINDS[used.kind] ?? null)
  const term =
    kind ??
    READ_TERMS.find(([pattern]) => sort !== undefined && pattern.test(sort))?.[1] ??
    (/^micrometers?$/.test(thing) ? 'reading a micrometer' : null)
  if (term === null || (thing === '' && sort === undefined)) return null
  const lines = termLines(term)
  if (term === 'reading a micrometer' && sort === undefined && used?.kind === 'inside_micrometer')
    lines.push(...termLines('reading an inside micrometer'))
  if (used === undefined || prompt.kind !== 'read' || !term.includes(used.kind.replaceAll('_', ' ')))
    return lines.length === 0 ? quotedLines(defs, state, text) : lines
  const how = asKind(prompt.step, 'read').step.how[used.kind]
  return how === undefined ? lines : [...lines, `Here, with ${used.id}: ${how}`]
}
