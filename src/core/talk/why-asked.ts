// Why something is asked that costs time: words typed out, the same thing twice, a second person, gas once more, another gauge than the old
// one. Told from the procedure, the record and the register; nothing is let go by it.
import { refusedNow } from '../job/admit-people.ts'
import { CAUSES } from '../job/close-causes.ts'
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import { type GateStep, gateState, gatesOf, type Item, itemsOf } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { alikeWithin } from './alike-within.ts'
import { atHandLines, gatesAtHand } from './at-hand.ts'
import { nothingRefuses } from './job-asked.ts'
import { termLines } from './terms.ts'
import { lifeLines } from './time-asked.ts'

const WHY = '(?:why|how come|what for|for what reason|what is the (?:point|sense|use|reason) (?:of|in|for))'
const MUST =
  "(?: (?:do|does|should|must|have|has|am|are|is|would|can't|cant|cannot|can|could|may|not))*(?: (?:i|we|you|he|she|it|one|people|somebody|everybody))?(?: (?:have|has|need|needs|to|made|asked|supposed|just|only|really|always|not|even|still|all))*"
const IT =
  '(?:it|this|that|these|them|those|all|all of (?:it|this)|words?|(?:the |these |those |such )?(?:same |whole |full |very )?(?:words?|sentences?|phrases?|thing|line|answer|figure|number)s?|no start|no flow|blocked both ways|meter answered)'
const TYPED = [
  `^${WHY}${MUST} (?:type|typing|typed|write|writing|spell|spelling|key|keying|enter)(?: in)? ${IT}(?: (?:out|in|in full|in words|by hand|letter by letter|so|like this|here|now|all|exactly|word for word|again))*$`,
  `^${WHY}${MUST} (?:just |simply )?(?:press|key|hit|push|say|tick|answer|put|use|type)(?: in)? (?:a |an |the |just |only )*(?:enter|one|1|y|yes|ok|okay|number|tick|key|box|x)\\b.*$`,
  `^${WHY} (?:typed|typing|words|the words|such words|whole words|no number|not (?:a number|just (?:yes|enter|1|a number|a tick)|yes|enter|1|one key|a tick))(?: (?:and not .*|instead of .*|here|in full|out))*$`,
]
const TWICE = [
  `^${WHY}${MUST} (?:key|type|enter|give|say|write|answer|do|show|put in|read|tell)(?: in)? (?:${IT}|oxygen|gas|locks?|the \\w+)(?: (?:out|all|here))* (?:twice|two times|a second time|again|once more|over|double|over again|anew)(?: (?:here|now|then))*$`,
  `^${WHY}(?: is| are| was| am)?(?: (?:it|this|that|i|the same(?: thing)?|everything))?(?: being)? (?:asked|keyed|wanted|typed|needed) (?:for )?(?:twice|again|a second time|two times|once more|anew)(?: (?:here|now))*$`,
  `^${WHY} (?:does|do|is|are) (?:it|you|barover|the program|the sheet|this thing) (?:ask(?:s|ing)?|want(?:s|ing)?)(?: me| us)?(?: for)?(?: (?:${IT}|oxygen|gas|locks?|the \\w+))? (?:twice|again|a second time|two times|once more|anew)$`,
  `^${WHY} (?:twice|the same (?:again|twice)|double|two times)(?: (?:here|now))*$`,
  "^(?:(?:did|have) (?:i|we) not|(?:didn'?t|haven'?t) (?:i|we)) (?:just |already )*(?:key|keyed|type|typed|do|done|give|given|answer|answered|said|say|enter|entered) (?:this|that|it)(?: (?:already|before|just now))*$",
  "^(?:i|we)(?:'ve| have)? (?:just |already )+(?:keyed|typed|did|done|gave|given|answered|said|entered) (?:this|that|it)(?: (?:already|before|just now))*$",
]
const PERSON = '(?:people|persons|men|mechanics|of us|pairs? of eyes|hands|signatures|initials|pins)'
const TWO_PEOPLE = [
  `^${WHY}(?: (?:do|does|must|should|is|are|there|the|i|we|you|it|have|has|need|needs|want|wants|take|takes|to|be|always|really))* (?:two|2|both|a second|second|two different|another|one more)(?: of)? ?(?:${PERSON}|person|man|mechanic|pair of eyes|one|signature|initials?)?(?: (?:here|now|for (?:this|it|that)|needed|wanted|asked|sign|signing|look|there|to sign|to look|of them|of us))*$`,
  `^${WHY}${MUST} (?:have |need |needs |get |want |wants |bring |fetch |wait for |ask for )?(?:for )?(?:a |an |the |my |another |somebody |someone |some )?(?:witness|partner|mate|second (?:man|person|mechanic)|other (?:man|person|one)|somebody else|someone else|else)(?: (?:here|now|for (?:this|it|that)|needed|wanted|sign|to sign|to look|look|looks|at all|there|watch|watches))*$`,
  `^${WHY}${MUST} (?:sign|witness|do|look|check) (?:it|this|that|for it|for myself|my own \\w+)?(?: ?(?:myself|alone|by myself|on my own|as well|too))+$`,
  `^${WHY} (?:is|are|was) (?:one|1|i|my (?:word|signature)|one (?:man|person|mechanic|signature)) not (?:enough|sufficient|do)$`,
  `^${WHY} (?:isn't|aren't|is not) (?:one|1|i|my (?:word|signature)|one (?:man|person|mechanic|signature)) enough$`,
]
const GAS =
  '(?:the |this |all the |all of the |that )?(?:gas(?: tests?| readings?)?|air(?: test)?|oxygen|o2|lel|h2s|flammables?|meter|sniff(?:ing)?|tests?)'
const GAS_AGAIN = [
  `^${WHY}${MUST} (?:do|doing|test|testing|read|reading|take|taking|key|keying|measure|measuring|sniff|show|repeat|repeating|check|retest|redo) ${GAS}(?: (?:all|here))* ?(?:again|anew|once more|twice|another time|over|over again|a second time|two times|every time)?(?: (?:now|here|then|already))*$`,
  `^${WHY} (?:gas|oxygen|air|the gas|the air|another gas test|a new gas test|a second gas test|another test|gas tests?) ?(?:again|twice|anew|once more|now|here|a second time)?$`,
  `^${WHY} (?:is|was|are|were|has|have|did) ${GAS} (?:been )?(?:asked|wanted|gone|void|fall|fallen|fell|lapsed?|no good|not good|not valid|no longer good|needed|to be done|to be read)(?: (?:for )?(?:again|any ?more|anew|now|once more|twice))*$`,
  `^${WHY} (?:does|do|did) ${GAS} (?:fall|lapse|not count|run out|not stand|not last|expire|go|count)(?: (?:any ?more|now|already|again|for nothing))*$`,
]
// One that is named by its number is told from the register.
const TOOL =
  '(?:micrometers?|gauges?|bore gauges?|instruments?|thermometers?|meters?|indicators?|feelers?|calipers?|one)'
const OLD =
  '(?:old|other|first|usual|own|same|previous|former|last|normal|good|second|favourite|broken|dropped|new|spare|inside|bore|gas|outside)'
const OLD_TOOL = [
  `^${WHY} (?:can't|cant|cannot|can|may|could|must|should|am|are|do|is|won't|does)(?: (?:i|we|it|you|he))*(?: (?:not|allowed|to|let|me|us|just|take|be))* (?:use|take|taking|pick|have|read with|measure with|go on with|work with|using|key|choose) (?:the |my |our |this |that |his )?(?:${OLD} )*${TOOL}(?: (?:here|now|again|any ?more|for (?:this|it|that)|any longer|instead|today|then))*$`,
  `^${WHY} (?:is|are|was) (?:the |my |our |this |that |his )?(?:${OLD} )*${TOOL} (?:not|no longer|out|refused|barred|off|gone)(?: (?:allowed|offered|in|on|the|list|there|good|here|any ?more|of date|of calibration|to be used|used|taken|accepted))*$`,
  `^${WHY} not (?:use |take )?(?:the |my |our |this |that |his )?(?:${OLD} )+${TOOL}(?: .*)?$`,
  `^(?:what is|what's|is (?:there )?(?:anything|something)) wrong with (?:the |my |our |this |that |his )?(?:${OLD} )+${TOOL}$`,
  `^${WHY}${MUST} (?:use|take|pick|have) (?:a |an |the )?(?:new|different|other|another) ${TOOL}(?: (?:here|now|for (?:this|it|that)))*$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [TYPED_ASKED, TWICE_ASKED, TWO_ASKED, GAS_ASKED, TOOL_ASKED] = [
  TYPED,
  TWICE,
  TWO_PEOPLE,
  GAS_AGAIN,
  OLD_TOOL,
].map(compiled)

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function whyAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  const prompt = next(defs, state)
  if (is(TOOL_ASKED)) return toolLines(defs, state, prompt)
  // Of two readings of one place the sheet itself tells.
  if (is(GAS_ASKED) && gatesOf(defs).some(asksGas)) return gasLines(defs, state, prompt, now)
  if (is(TYPED_ASKED) && typedHere(prompt) !== null) return typedLines(defs, state, prompt, now)
  if (is(TWICE_ASKED)) return twiceLines(defs, state, prompt, now)
  return is(TWO_ASKED) ? twoLines(defs, state, now) : null
}

const asksGas = ({ step }: GateStep) => step.evidence.some(({ kind }) => kind === 'gas')

/** The words that are to be typed out here, with what they say. */
function typedHere(prompt: Prompt): { readonly ask: string; readonly words: string } | null {
  if (prompt.kind === 'clear')
    return { ask: 'Is everybody out and clear?', words: prompt.gate.step.clear_words }
  if (prompt.kind !== 'evidence') return null
  const { evidence } = prompt.item
  return evidence.kind === 'words' || evidence.kind === 'wait'
    ? { ask: evidence.ask, words: evidence.kind === 'words' ? evidence.words : evidence.begin_words }
    : null
}

/** As decided for gates: no reflex, no single key. */
const NO_REFLEX =
  'So that nobody passes it from habit: a number or a single key is pressed before anybody looked, words are not. Common practice, no source.'

function typedLines(defs: Definitions, state: State, prompt: Prompt, now: Instant): string[] {
  const here = typedHere(prompt)
  return [
    NO_REFLEX,
    ...(here === null
      ? []
      : [
          `Asked here: ${here.ask}`,
          `${here.words} is typed only if it is so; your initials stand beside it.`,
        ]),
    ...whyOfGate(prompt),
    ...atHandLines(defs, state, now),
  ]
}

function whyOfGate(prompt: Prompt): string[] {
  if (!('gate' in prompt) || prompt.gate === undefined) return []
  const { number, step } = prompt.gate
  return step.why === undefined ? [] : [`Step ${number}, ${step.title}, why: "${step.why}"`]
}

/** Lines of one hold point that ask the like, each of another place or thing; of a figure, that a place is read more than once. */
function twiceLines(defs: Definitions, state: State, prompt: Prompt, now: Instant): string[] | null {
  if (prompt.kind === 'read') {
    const { repeats } = asKind(prompt.step, 'read').step
    return repeats.at_least < 2
      ? [`One reading is enough here: ${prompt.step.step.title}.`]
      : [
          `Here a place is read at least ${repeats.at_least} times, ${repeats.at_most} at the most, within ${alikeWithin(defs, repeats.within)}.`,
          ...termLines('repeats'),
        ]
  }
  if (prompt.kind !== 'evidence' && prompt.kind !== 'clear') return null
  const { gate } = prompt
  const { why, cause, struck } = gateState(state, gate.id)
  const fell = why ?? (cause === null ? null : CAUSES[cause])
  const alike = prompt.kind === 'evidence' ? alikeOf(defs, state, gate, prompt.item) : []
  return [
    ...(struck.length === 0 || fell === null
      ? [`Each line of hold point ${gate.number} is keyed once.`]
      : [
          `What was keyed here before counts no more: ${fell.replace(/\.+$/, '')}. It is shown anew, as it is now.`,
        ]),
    ...(alike.length < 2
      ? []
      : [`Alike, and each for itself: ${alike.join('; ')}. What is shown of one is nothing of another.`]),
    ...whyOfGate(prompt),
    ...atHandLines(defs, state, now),
  ]
}

/** Of a gas at several places, a lock at several points: all of that sort at this hold point. */
function alikeOf(defs: Definitions, state: State, gate: GateStep, item: Item): string[] {
  return itemsOf(defs, state, gate)
    .filter(({ evidence }) => evidence.kind === item.evidence.kind)
    .map((one) => itemLabel(defs, one))
}

const SEES_OWN_LAST =
  'A slip is seen last by whoever made it, and one alone has nobody to fetch help. Common practice, no source.'

function twoLines(defs: Definitions, state: State, now: Instant): string[] {
  const gates = gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((one) => {
      if (one.kind === 'witness') return [`Hold point ${gate.number}, witness: "${one.ask}"`]
      return one.kind === 'numbers' && one.per === 'person' && (one.at_least ?? 0) > 1
        ? [`Hold point ${gate.number}: at least ${one.at_least} people. "${one.ask}"`]
        : []
    }),
  )
  return [
    SEES_OWN_LAST,
    ...[...new Set(gates)].slice(0, MOST),
    ...(gates.length > MOST ? ['Later hold points ask for others too.'] : []),
    ...termLines('witness'),
    'The site permit may ask for more people; where it does, it counts.',
    ...atHandLines(defs, state, now),
  ]
}

/** More would push the question off a small screen. */
const MOST = 2

/** What made it fall, how long a figure counts, and at which places air is read apart. */
function gasLines(defs: Definitions, state: State, prompt: Prompt, now: Instant): string[] {
  const all = gatesAtHand(defs, state).filter(asksGas)
  const gates = all.length > 0 ? all : gatesOf(defs).filter(asksGas).slice(0, 1)
  const told = gates.flatMap((gate) => {
    const { status, why, cause } = gateState(state, gate.id)
    const fell = why ?? (cause === null ? null : CAUSES[cause])
    const items = itemsOf(defs, state, gate).filter(({ evidence }) => evidence.kind === 'gas')
    return [
      ...(status === 'closed' && fell !== null
        ? [
            `Hold point ${gate.number} fell: ${fell.replace(/\.+$/, '')}. Air that was read before is no air of now.`,
          ]
        : []),
      `Hold point ${gate.number} reads: ${items.map((one) => itemLabel(defs, one)).join('; ')}. Each place is another air.`,
    ]
  })
  return [
    ...told.slice(0, MOST + 1),
    ...lifeLines(defs, state),
    ...whyOfGate(prompt),
    ...atHandLines(defs, state, now),
  ]
}

/** What the register says of each of its kind on the day of the job. */
function toolLines(defs: Definitions, state: State, prompt: Prompt): string[] | null {
  const seat =
    prompt.kind === 'pick'
      ? prompt.seat
      : prompt.kind === 'read'
        ? defs.seats.find(({ id }) => {
            const { scope, step } = asKind(prompt.step, 'read')
            return id === `${scope}${step.with}` || id === step.with
          })
        : undefined
  if (seat === undefined) return null
  const used = prompt.kind === 'read' ? instrumentById(defs, prompt.instrument) : undefined
  const known = defs.instruments.instruments.filter(({ kind }) => seat.kinds.includes(kind))
  return [
    ...(used === undefined
      ? []
      : [
          `${used.id} was taken for this step, and reads every place of it: its error is the same in all of them then.`,
        ]),
    ...known
      .slice(0, MOST_TOOLS)
      .map((one) => `${one.id}: ${refusedNow(defs, state, seat.id, one) ?? nothingRefuses(state)}.`),
    ...(known.length > MOST_TOOLS
      ? [`and ${known.length - MOST_TOOLS} more: ${list(known.slice(MOST_TOOLS).map(({ id }) => id))}.`]
      : []),
    'One that is in no register here reads nothing on this job: nobody knows how far off it is.',
    ...termLines('calibration'),
  ]
}

const MOST_TOOLS = 4
