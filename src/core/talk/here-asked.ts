// Questions about the very thing that is asked now: why a lock hangs at a point, how long a wait goes on, where the gauge is held, what
// would fall. Told from the procedure, the machine record and the job; of what they do not say that is said.
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import { waitEndsMs } from '../job/evidence-wait.ts'
import { gateState, gatesOf, itemByKey, provesAt } from '../job/gate.ts'
import { itemLabel, keyLabel } from '../job/item-label.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { leftWords } from '../lib/duration.ts'
import type { Instant } from '../lib/instant.ts'
import { quotedLines } from './answer-asked.ts'
import { givenLines } from './gate-list.ts'
import { placeName } from './names.ts'
import { verdictAt } from './offered.ts'
import { LEFT } from './word-asked.ts'

const WHY_LOCK =
  /^why\b.*\b(?:pad)?locks?\b.*\b(?:on|at|for|here|there|wanted|needed|want|need|hang)\b|^why\b.*\block(?:ed)? (?:out )?(?:the|this)\b/i
const WHY_MANY =
  /^why (?:(?:do|does|are|is|there|we|i|it|need|have|want|so|all|these|those|the|to|many|that|a|an|one|two|three|four|five|six|seven|eight|\d+|more than one|several|different|hang)\b ?)*(?:pad)?locks?(?: (?:on|at|for) (?:each|every|all)(?: of them| one| point)?)?$/i
const GAUGE = '(?:mikes?|mics?|micrometers?|gauges?|bore gauges?|thermometers?|probes?|instruments?)'
const WHERE_GAUGE = new RegExp(
  `^where\\b.*\\b(?:put|hold|place|set|goes|go|measure|read|stand)\\b(?:.*\\b${GAUGE}\\b| it$| this$)|^where (?:do|does|should) (?:an?|the|my|our|this|that) ${GAUGE}\\b|^where (?:do|should|must) (?:i|we) (?:measure|read)(?: it| this| here| now)?$`,
  'i',
)
const HOW_LONG =
  /^how (?:long|much longer|many minutes)\b.*\b(?:wait|stand|hold)(?:ing)?\b(?! point)|^how long is (?:the|this) wait\b|^when (?:is|does) (?:the|this) wait\b/i
const WHAT_FALLS =
  /^what (?:would|will|does|could|can|might)? ?(?:then )?(?:fall|falls|become void|becomes void|go void|be lost|be void|have to be done again)\b/i

/** Of the gas that was read, and not of a limit. */
const ON_RECORD =
  /^(?:what|which|how much|how many|show)\b.*\b(?:gas|oxygen|o2|lel|h2s|flammables?)\b.*\b(?:on record|keyed|taken|in there|inside|was read|did (?:i|we) (?:key|read))\b|^what (?:was|were|is) the (?:last |latest )?(?:gas|air|oxygen|o2|lel|h2s) (?:figures?|readings?|tests?)(?: on record)?$/i
const GOOD_OR_BAD =
  /^(?:is|was|are) (?:that|this|it|the (?:figure|reading|number|value|verdict|bore|liner|rod|piston)) (?:good or bad|good|bad|ok|okay|all right|fine|normal|a lot)(?: or (?:not|bad))?$/i
const IF_LEFT =
  /^what (?:would|will|does|happens?|falls?|becomes?|is lost)\b.*\bif (?:i|we) (?:leave|go|stop here|quit|close)(?: it| now| here| the job)*$/i

/** Null: the question is none of these. */
export function hereAskedLines(
  defs: Definitions,
  state: State,
  question: string,
  now: Instant,
): string[] | null {
  const text = question
    .trim()
    .replaceAll('\u2019', "'")
    .replace(/[\s?.!]+$/, '')
  if (WHY_MANY.test(text)) return manyLines(defs, state, text)
  if (WHY_LOCK.test(text)) return lockLines(defs, state, text)
  if (HOW_LONG.test(text)) return waitLines(defs, state, now)
  if (WHERE_GAUGE.test(text)) return gaugeLines(defs, state)
  const points =
    /^(?:where|which|what)\b/i.test(text) && !/\block/i.test(text) ? pointLines(defs, text) : null
  if (points !== null || /^where\b(?!.*\block)/i.test(text)) return points
  if (ON_RECORD.test(text)) return gasLines(defs, state)
  if (GOOD_OR_BAD.test(text)) return goodLines(defs, state)
  if (IF_LEFT.test(text)) return LEFT
  return WHAT_FALLS.test(text) ? FALLS : null
}

/** The point whose name shares a word with the question, or the one that is asked. */
function lockLines(defs: Definitions, state: State, text: string): string[] | null {
  const prompt = next(defs, state)
  const words: readonly string[] = text.toLowerCase().match(/[a-z]{4,}|[a-z]+-\d+/g) ?? []
  const known = defs.machine.site.isolation_points
  const named = known.filter(({ name }) => {
    const own = name.toLowerCase().match(/[a-z]+-\d+|[a-z]+/g) ?? []
    return own.some((word) => !COMMON.has(word) && words.includes(word))
  })
  const asked = prompt.kind === 'evidence' ? prompt.item.point?.id : undefined
  const points = named.length > 0 ? named : known.filter(({ id }) => id === asked)
  if (points.length === 0) return null
  const gates = gatesOf(defs).filter((gate) => gate.step.evidence.some(({ kind }) => kind === 'locks'))
  const gate = prompt.kind === 'evidence' ? prompt.gate : gates[0]
  const locks = gate?.step.evidence.find(({ kind }) => kind === 'locks')
  const against = gate === undefined || locks === undefined ? [] : provesAt(gate, locks)
  return [
    ...points.map(
      ({ name, comes_off }) =>
        `${name}: a point of the machine record, ${comes_off === 'before_start' ? 'as it can turn the machine' : 'as something is shut off there that can come back'}.`,
    ),
    ...(against.length === 0
      ? []
      : [
          `Hold point ${gate?.number}: its locks stand against ${against.map((id) => hazardName(defs, id)).join('; ')}.`,
        ]),
    'A switch or a valve can be worked by somebody who does not know you are in there; your lock cannot.',
  ]
}

/** Why more than one hangs: each point shuts off another thing. Null: the record names no more than one. */
function manyLines(defs: Definitions, state: State, text: string): string[] | null {
  const { isolation_points: points } = defs.machine.site
  if (points.length < 2) return lockLines(defs, state, text)
  return [
    `The machine record names ${points.length} points, each with a lock of its own, as each lets another thing in: ${points.map(({ id }) => id).join(', ')}.`,
    'One that is open lets in what the others keep out. The number on each tells whose it is, and that it is off again at the end.',
    ...(lockLines(defs, state, text)?.slice(-1) ?? []),
  ]
}

/** Words of many points; none of them tells which is meant. */
const COMMON: ReadonlySet<string> = new Set([
  'main',
  'block',
  'valve',
  'supply',
  'breaker',
  'lock',
  'locks',
  'gas',
  'motor',
])

/** Sentences that tell how long. */
const TIMED = /[^.:;]*\b(?:minutes?|seconds?|hours?|min)\b[^.;]*[.;]?/gi

/** The words of what is asked now. */
function textHere(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  if (prompt.kind === 'evidence') return 'ask' in prompt.item.evidence ? [prompt.item.evidence.ask] : []
  if (!('step' in prompt)) return []
  const { step } = prompt.step
  return 'text' in step && step.text !== undefined ? [step.text] : []
}

function waitLines(defs: Definitions, state: State, now: Instant): string[] {
  const told = gatesOf(defs).flatMap((gate) => {
    const { begun, given } = gateState(state, gate.id)
    return Object.entries(begun).flatMap(([key, one]) => {
      const evidence = itemByKey(defs, gate, key)?.evidence
      if (given[key] !== undefined || evidence?.kind !== 'wait') return []
      const left = waitEndsMs(evidence, one) - now.ms
      return [
        `${keyLabel(defs, gate, key)}, hold point ${gate.number}: ${evidence.lasts.text} in all, ${left > 0 ? `${leftWords(left)} left by the clock` : 'over by the clock'}.`,
      ]
    })
  })
  if (told.length > 0) return told
  const prompt = next(defs, state)
  if (prompt.kind === 'evidence' && prompt.item.evidence.kind === 'wait')
    return [
      `${itemLabel(defs, prompt.item)}: ${prompt.item.evidence.lasts.text}, from the moment you type ${prompt.item.evidence.begin_words}.`,
    ]
  const said = textHere(defs, state).flatMap((text) => text.match(TIMED) ?? [])
  return said.length > 0
    ? ['The sheet says, and no clock of the program counts it:', ...said.map((text) => `  ${text.trim()}`)]
    : ['No wait runs now. Where one is asked its sheet says how long, and the clock counts it.']
}

/** A point of the machine record that the question names by the number on its plate. */
function pointLines(defs: Definitions, text: string): string[] | null {
  const named = defs.machine.site.isolation_points.filter(({ name }) =>
    (name.match(/\b\p{L}{1,3}-\d+\b/gu) ?? []).some((plate) =>
      new RegExp(`(?<![\\w-])${plate}(?![\\w-])`, 'i').test(text),
    ),
  )
  return named.length === 0
    ? null
    : [
        ...named.map(({ name }) => `${name}: an isolation point of the machine record.`),
        'Where it stands says the site’s isolation list; it is known by the tag on its plate.',
      ]
}

/** What was read of gas at each hold point and stands. */
function gasLines(defs: Definitions, state: State): string[] {
  const told = gatesOf(defs).flatMap((gate) =>
    givenLines(defs, state, gate)
      .filter((line) => line.startsWith('gas '))
      .map((line) => `Hold point ${gate.number}, ${line}`),
  )
  return told.length === 0 ? ['No gas reading stands on record now.'] : told
}

/** The verdict that is on the sheet; of a figure alone nobody can tell before the limits are held against it. */
function goodLines(defs: Definitions, state: State): string[] {
  const prompt = next(defs, state)
  const verdict = prompt.kind === 'decide' ? verdictAt(state, prompt.step) : null
  if (verdict === null)
    return [
      'Barover calls no figure good or bad by itself: at a hold point it passes its limit or not, and a size is judged with the others.',
      'why tells the limit of what is asked; what is out of it is said at once.',
    ]
  return [`The verdict is ${verdict}.`, ...(quotedLines(defs, state, `what does ${verdict} mean`) ?? [])]
}

function gaugeLines(defs: Definitions, state: State): string[] | null {
  const prompt = next(defs, state)
  if (prompt.kind !== 'read') return null
  const { step } = asKind(prompt.step, 'read')
  const kind = instrumentById(defs, prompt.instrument)?.kind
  return [
    `Here: ${placeName(defs, prompt.step.id, prompt.place.key)}.`,
    ...(step.text === undefined ? [] : [step.text]),
    ...(kind === undefined || step.how[kind] === undefined ? [] : [step.how[kind]]),
  ]
}

/** In the words of the procedure. */
function hazardName(defs: Definitions, id: string): string {
  return defs.hazards.find((one) => one.id === id)?.name ?? id
}

const FALLS = [
  'back and correct name all that would become void before you agree to it, and nothing falls until then.',
  'What lapses or falls by itself is named in the foot and at its hold point.',
]
