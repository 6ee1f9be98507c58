// Questions about the record itself and the instruments: is this real, what is keyed without a machine, which one is taken, and
// why an instrument is refused. Told from the job; nothing is chosen for anybody.
import type { Instrument } from '../definition/instruments.ts'
import { refusedNow } from '../job/admit-people.ts'
import { type Definitions, instrumentById } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { pointLines } from './gate-list.ts'
import { noneFits } from './none-fits.ts'
import { plainAskedLines } from './plain-asked.ts'

const REAL =
  /\bis (?:this|it|that) (?:for )?(?:real|practice|practise|(?:an? |the )?(?:example|exercise|game|test))\b|\b(?:break|damage|destroy|ruin|spoil) (?:something|anything|it|the (?:machine|compressor|program))\b/i
const NO_MACHINE =
  /\b(?:no|without a|without the|not at (?:a|the)|away from the) (?:machine|compressor|cylinder)\b/i
const WHICH = /^which\b.*\b(?:one|take|pick|use|key|choose|gauge|meter|thermometer|micrometer|instrument)\b/i
const GAUGE = /^which\b.*\b(?:gauge|thermometer|micrometer|instrument)\b/i
/** `is this the right micrometer`. */
const RIGHT =
  /^(?:is|are) (?:this|it|that|these|[a-z]{1,3}-?\d+) the (?:right|correct|proper) (?:one|gauge|meter|thermometer|micrometer|instrument)s?\b/i
/** These are of the standard, which has a passage of its own. */
const OF_STANDARD = /\b(?:standard|ring|set-check|size)\b/i

const LOCK = '(?:locks?|padlocks?|tags?)'
/** Which lock goes where, where do the locks go, where does this lock hang. */
const LOCK_PLACES = new RegExp(
  `\\b(?:which|what) ${LOCK}\\b.*\\b(?:where|which|what|point|place|valve|goes?|hangs?)\\b|\\bwhere (?:do|does|should|must|can|is|are)\\b.*\\b${LOCK}\\b|\\b(?:isolation|lock(?:ing)?(?:-?out)?) points?\\b`,
  'i',
)

const NONE_LEFT =
  /\b(?:no|none|not a) (?:\w+ )?(?:left|gauge|meter|micrometer|thermometer|instrument|one|other|fit|good|of (?:them|these))\b|\bwhat (?:now|then|do i do|can i do)\b|\bnothing left\b/i

/** Null: the question is none of these. */
export function jobAskedLines(defs: Definitions, state: State, question: string): string[] | null {
  const plain = plainAskedLines(defs, state, question)
  if (plain !== null) return plain
  if (NO_MACHINE.test(question)) return [...recordLines(state), ...withoutMachine(state)]
  if (REAL.test(question)) return [...recordLines(state), ...NOTHING_MOVES]
  if (LOCK_PLACES.test(question) && !/\bplate\b/i.test(question)) return pointLines(defs)
  const prompt = next(defs, state)
  if (prompt.kind === 'pick' && NONE_LEFT.test(question)) {
    const none = noneFits(defs, state, prompt)
    if (none !== null) return [none]
  }
  if (prompt.kind === 'pick' && (WHICH.test(question.trim()) || RIGHT.test(question.trim())))
    return [
      `Wanted: ${prompt.seat.for}. Barover chooses none: take the one in your hand, and key the number on its tag.`,
      ...prompt.options.map(
        (one) => `${one.id}: ${refusedNow(defs, state, prompt.seat.id, one) ?? nothingRefuses(state)}.`,
      ),
    ]
  const used = prompt.kind === 'read' ? instrumentById(defs, prompt.instrument) : undefined
  if (
    used !== undefined &&
    (GAUGE.test(question.trim()) || RIGHT.test(question.trim())) &&
    !OF_STANDARD.test(question)
  )
    return [
      `${used.id}, ${used.title}: it was chosen for this step, and what is keyed counts as read on it.`,
      'A figure of another one is not keyed here.',
    ]
  if (OF_STANDARD.test(question)) return null
  const named = defs.instruments.instruments.filter(({ id }) => isNamed(id, question))
  // `what is m3`: the dash is the first thing that is dropped.
  const asked =
    named.length > 0
      ? named
      : defs.instruments.instruments.filter(({ id }) => isNamed(id.replaceAll('-', ''), question))
  return asked.length === 0 ? null : asked.slice(0, 2).flatMap((one) => instrumentLines(defs, state, one))
}

function isNamed(id: string, question: string): boolean {
  if (!/\p{L}/u.test(id)) return false
  const word = id.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
  return new RegExp(`(?<![\\p{L}\\p{N}-])${word}(?![\\p{L}\\p{N}-])`, 'iu').test(question)
}

/** Its record: what it is, what it spans, until when it is calibrated, and why it is refused on the day of the job. */
function instrumentLines(defs: Definitions, state: State, one: Instrument): string[] {
  const span =
    'range' in one ? `, ${one.range.from.text} to ${one.range.to.text}, steps of ${one.resolution.text}` : ''
  const prompt = next(defs, state)
  const seat = prompt.kind === 'pick' && prompt.seat.kinds.includes(one.kind) ? prompt.seat.id : null
  const refused = refusedNow(defs, state, seat, one)
  return [
    `${one.id}, from the register of instruments: ${one.title}, ${one.kind.replaceAll('_', ' ')}${span}.`,
    `Calibrated until ${one.calibration.due}, certificate ${one.calibration.certificate}.`,
    refused === null ? `${one.id}: ${nothingRefuses(state)}.` : `Refused: ${refused}.`,
  ]
}

export const nothingRefuses = ({ lastAt }: State) =>
  `nothing on its record refuses it on ${lastAt.slice(0, 10)}`

function recordLines({ record }: State): string[] {
  return [
    record === 'REAL'
      ? 'This job is REAL: what is keyed stands for the machine on its plate.'
      : `This job is ${record}, as each of its sheets says: nothing in it counts for any machine.`,
  ]
}

const NOTHING_MOVES = [
  'Barover moves nothing on a machine: no key starts, opens or shuts anything.',
  'A slip is put right with back or correct; the first answer stays in the log.',
]

function withoutMachine({ record }: State): string[] {
  return record === 'REAL'
    ? [
        'Here only what stands at the machine is keyed. leave keeps the job; practice is begun where jobs are chosen.',
      ]
    : [
        'The ten lines of the README walk the example: tag, lock numbers, words and figures stand there.',
        'Alone you key what others would read out as well, and at witness and lead the initials and PINs that stand there.',
      ]
}
