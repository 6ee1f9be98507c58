// What has become of a sheet that somebody misses or remembers: left out, by which rule and which answer; done; open; or still to come.
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { applicability, current, isComplete } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { capital } from '../lib/wording.ts'
import { foundBehind, isAhead, isLeftOut, leftOut, ruleShort } from './left-out.ts'
import { gateLine } from './where.ts'

const SHEET = '(?:sheets?|steps?|pages?|numbers?|no\\.?|hold points?)'
const N = '(\\d{1,4})'
const FATE = [
  `^(?:what|where) (?:happened|happens|became|has become|is|was|has happened|did (?:we|i|you) do|goes on|is going on)(?: (?:to|with|of|about|at|on|become of))* (?:the )?${SHEET} ?${N}(?: (?:gone|now|then|here|please|skipped|left out|missing|for|about))*$`,
  `^(?:why|how come|for what reason)(?: (?:is|was|are|were|did|do|does|has|have|had|i|we|it|you|there|the|been|not|no))* ?${SHEET} ?${N}(?: (?:is|was|been|not|there|here|on|never|ever|skipped|asked|left out|missing|gone|passed over|jumped|omitted|shown|done|come|came|needed|then|up|did|didn't|appear|for me|any ?more))*$`,
  `^(?:why|how come)(?: (?:did|do|does|is|was|has))* (?:it|we|i|you|barover|the (?:program|job|sheet)) (?:skip|skipped|leave out|left out|jump|jumped|miss|missed|pass|passed|omit|omitted|go|went|not ask|not do|not show)(?: (?:over|out|past|from|for|me))* ?(?:${SHEET} )?(?:\\d{1,4} to )?${N}(?: .*)?$`,
  `^(?:did|do|have|has|was|is|were|will|must|should) (?:i|we|it|he|she|the|they)? ?(?:have |need |to |miss |missed |skip |skipped |forget |forgot |do |done |fill in |finish |leave out |left out |still )*(?:the )?${SHEET} ?${N}(?: (?:been|not|done|skipped|left out|missed|forgotten|needed|finished|complete|still|to be|open|answered|to come|later|too))*$`,
  `^(?:and )?(?:what about|how about|and) (?:the )?${SHEET} ?${N}$`,
  `^(?:the )?${SHEET} ?${N}(?: (?:is|was|got|has been))* (?:missing|skipped|gone|left out|not there|not asked)$`,
]
/** By two numbers: the sheets between them are meant. */
const JUMPED =
  /^(?:(?:why|how come)(?: (?:did|do|does|has|is))* )?(?:it|the (?:program|job|numbers?)|we|i|this|barover)?(?: (?:has|have|just|did))* ?(?:jump|jumps|jumped|skip|skips|skipped|go|goes|went|gone|leap|leaps)(?: (?:straight|right|directly))? from (?:sheet |step )?(\d{1,4}) to (?:sheet |step )?(\d{1,4})(?: .*)?$/
const LEFT_OUT = [
  `^(?:which|what|how many|are there|were there|were|are|is|was|did (?:i|we|it)|have (?:i|we)|has it)(?: (?:any|of the|the))* ?(?:sheets?|steps?|pages?|things?|anything|something)?(?: (?:are|is|were|was|been|have|has|i|we|it|did|do))* ?(?:any )?(?:skip|skipped|left out|leave out|jumped over|passed over|omitted|missed out|missed)(?: (?:any|a|some|out|so far|on this job|sheets?|steps?|pages?|here|anything|something|of the job|by it))*$`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [FATE_ASKED, OUT_ASKED] = [compiled(FATE), compiled(LEFT_OUT)]

/** Null: no sheet is asked about. `text`: as `heardAs` gives it. */
export function sheetFateLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  if (OUT_ASKED.some((one) => one.test(text))) return allLines(defs, state)
  const jumped = JUMPED.exec(text)
  if (jumped !== null) return betweenLines(defs, state, Number(jumped[1]), Number(jumped[2]), now)
  const asked = FATE_ASKED.map((one) => one.exec(text)?.[1]).find((one) => one !== undefined)
  if (asked === undefined) return null
  const placed = defs.steps.find(({ number }) => number === Number(asked))
  const last = defs.steps.at(-1)?.number ?? 0
  return placed === undefined
    ? [`This job has no sheet ${asked}: they go from ${defs.steps[0]?.number ?? 1} to ${last}.`]
    : oneLines(defs, state, placed, now)
}

function oneLines(defs: Definitions, state: State, placed: PlacedStep, now: Instant): string[] {
  const { number, step, id } = placed
  const name = `Sheet ${number}, ${step.title}`
  if (current(defs, state)?.placed.id === id) return [`${name}: it is the one that lies open.`]
  if (isLeftOut(defs, state, placed))
    return [`${name}: left out by its own condition.`, ...why(defs, state, placed)]
  const rule = placed.rule === null ? [] : [`It is done ${ruleShort(defs, placed)}.`]
  if (isAhead(defs, state, placed)) return [`${name}: it is still to come.`, ...rule]
  if (step.kind === 'gate')
    return [`${name}: a hold point.`, ...gateLine(defs, state, { ...placed, step }, now)]
  const doneBy = state.done[id]
  if (step.kind === 'judge' && state.verdicts[id] !== undefined)
    return [`${name}: judged, ${state.verdicts[id]?.verdict.result.verdict}.`, ...rule]
  const isDone = doneBy !== undefined || isComplete(state, placed)
  return [
    isDone
      ? `${name}: it is done, and its answer is on record.`
      : `${name}: ${applicability(defs, state, placed) === 'hold' ? 'it cannot be told yet whether it is asked' : 'it is not done, and will be asked'}.`,
    ...rule,
    ...(isDone ? ['show and readings tell what was keyed; correct puts it right.'] : []),
  ]
}

function why(defs: Definitions, state: State, placed: PlacedStep): string[] {
  const by = leftOut(defs, state).find(({ steps }) => steps.some(({ id }) => id === placed.id))?.by ?? placed
  return [
    ...(by.id === placed.id ? [] : [`It is part of ${by.step.title}, which was left out whole.`]),
    `It is asked ${ruleShort(defs, by)}.`,
    ...foundBehind(defs, state, by).map((told) => `${capital(told)}.`),
    'If that answer is not so: correct puts it right, and the sheet is asked then.',
  ]
}

/** Each that lies between; of more than a few those alone that were left out. */
function betweenLines(defs: Definitions, state: State, from: number, to: number, now: Instant): string[] {
  const between = defs.steps.filter(
    ({ number, step }) => step.kind !== 'part' && number > Math.min(from, to) && number < Math.max(from, to),
  )
  if (between.length === 0) return [`No sheet lies between ${from} and ${to}.`]
  const out = between.filter((placed) => isLeftOut(defs, state, placed))
  return (out.length === 0 ? between : out)
    .slice(0, MOST)
    .flatMap((placed) => oneLines(defs, state, placed, now))
}

/** More would push the question off a small screen. */
const MOST = 3

function allLines(defs: Definitions, state: State): string[] {
  const all = leftOut(defs, state)
  if (all.length === 0) return ['By the record no sheet behind this one was left out.']
  return [
    'Left out so far, each by its own condition:',
    ...all.slice(0, MOST * 2).flatMap(({ by, steps }) => {
      const [first, last] = [steps[0]?.number, steps.at(-1)?.number]
      return [
        `  ${first === last ? first : `${first} to ${last}`}, ${by.step.title}: ${ruleShort(defs, by)}`,
        ...foundBehind(defs, state, by).map((told) => `    ${told}`),
      ]
    }),
    ...(all.length > MOST * 2 ? [`  and ${all.length - MOST * 2} more; the close lists all of them.`] : []),
  ]
}
