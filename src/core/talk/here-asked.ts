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
import { placeName } from './names.ts'

const WHY_LOCK =
  /^why\b.*\b(?:pad)?locks?\b.*\b(?:on|at|for|here|there|wanted|needed|want|need|hang)\b|^why\b.*\block(?:ed)? (?:out )?(?:the|this)\b/i
const GAUGE = '(?:mikes?|mics?|micrometers?|gauges?|bore gauges?|thermometers?|probes?|instruments?)'
const WHERE_GAUGE = new RegExp(
  `^where\\b.*\\b(?:put|hold|place|set|goes|go|measure|read|stand)\\b(?:.*\\b${GAUGE}\\b| it$| this$)|^where (?:do|does|should) (?:an?|the|my|our|this|that) ${GAUGE}\\b|^where (?:do|should|must) (?:i|we) (?:measure|read)(?: it| this| here| now)?$`,
  'i',
)
const HOW_LONG =
  /^how (?:long|much longer|many minutes)\b.*\b(?:wait|stand|hold)(?:ing)?\b(?! point)|^how long is (?:the|this) wait\b|^when (?:is|does) (?:the|this) wait\b/i
const WHAT_FALLS =
  /^what (?:would|will|does|could|can|might)? ?(?:then )?(?:fall|falls|become void|becomes void|go void|be lost|be void|have to be done again)\b/i

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
  if (WHY_LOCK.test(text)) return lockLines(defs, state, text)
  if (HOW_LONG.test(text)) return waitLines(defs, state, now)
  if (WHERE_GAUGE.test(text)) return gaugeLines(defs, state)
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
  return ['No wait runs now. Where one is asked its sheet says how long, and the clock counts it.']
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
