// The answer to a question in plain words: passages of this job's papers, word for word, each with where it stands. Nothing
// is made up, and nothing of it goes on record.

import { type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import { type Definitions, gasLimitById } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { current, next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { formatNumber } from '../lib/decimal.ts'
import { asksLimit } from '../papers/ask-words.ts'
import { findPassages } from '../papers/find.ts'
import { asksAnyLimit, judgedLimits, unlimited } from '../papers/judged-limits.ts'
import { gasPassage, judgedIds } from '../papers/limit-passages.ts'
import type { Passage } from '../papers/passages.ts'

export const NOTHING_FOUND =
  "Nothing in this job's papers answers that. Ask a lead, or look in the machine's own book."

export const WORD_FOR_WORD = "From this job's papers, word for word:"

export const FALLBACK = 'Fall-back limits: the maker’s manual comes first.'

/** Null where nothing fits. */
export function quotedLines(defs: Definitions, state: State, question: string): string[] | null {
  const at = current(defs, state)?.placed.number ?? null
  const asked = A_FIGURE.test(question.trim()) && gasHere(defs, state) !== undefined
  const limits =
    asksAnyLimit(question) && !asked ? limitLines(defs, state, at) : gasLineLimit(defs, state, question)
  if (limits.length > 0) return limits
  const found = findPassages(defs, question, at).filter((passage) => mayBeShown(defs, state, passage))
  if (found.length === 0) return null
  return [
    WORD_FOR_WORD,
    ...found.flatMap((passage) => [`${passage.from}${notYet(passage, at)}:`, `  "${passage.text}"`]),
    ...(found.some(({ name }) => name === 'MONITOR' || name === 'ACCEPT') ? watchedLines(defs) : []),
    ...(found.some(({ fallback }) => fallback) ? [FALLBACK] : []),
  ]
}

const GAS_NAMES = {
  oxygen: /\b(?:oxygen|o2)\b/i,
  flammable: /\b(?:flammables?|lel|burns?)\b/i,
  flammable_in_inert: /\b(?:flammables?|burns?)\b/i,
  hydrogen_sulfide: /\b(?:h2s|hydrogen sul(?:f|ph)ide)\b/i,
} as const

/** How much of the gas that is read at this very line: another place has another limit, and none of them serves here. */
function gasLineLimit(defs: Definitions, state: State, question: string): string[] {
  const gas = gasHere(defs, state)
  const isAbout =
    A_FIGURE.test(question.trim()) ||
    (gas !== undefined && asksLimit(question) && GAS_NAMES[gas.gas].test(question))
  return gas !== undefined && isAbout ? [THIS_LINE, `  ${gasPassage(defs, gas).text}`] : []
}

/** `is 12 too much`: a figure without a name is of the line that is asked. */
const A_FIGURE =
  /^(?:is|are|would|will) \d+(?:[.,]\d+)?(?: ?(?:%|percent|ppm|%?lel|%?vol))*(?: be)? (?:too |still |not )?(?:much|many|high|low|little|ok|okay|good|bad|fine|enough|allowed|all right|within)\b/i

const THIS_LINE = 'The limit of this line:'

function gasHere(defs: Definitions, state: State) {
  const prompt = next(defs, state)
  return prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas'
    ? gasLimitById(defs, prompt.item.evidence.limit)
    : undefined
}

/** From which share of its limit each figure of this job is MONITOR. */
export function watchedLines(defs: Definitions): string[] {
  const limits = limitsFor(defs, judgedIds(defs, null))
  return Object.values(limits).flatMap((limit) => {
    if (limit === undefined) return []
    const { label } = characteristicOf(limit.characteristic as CharacteristicId)
    const { monitorFrom: share } = limit
    return [
      share === undefined
        ? `In this job, ${label}: no share of its limit is on record, so none is watched.`
        : `In this job, ${label}: MONITOR from ${formatShare(share)} of its limit.`,
    ]
  })
}

export const formatShare = (share: number) => `${Number(formatNumber(share * 100, 1))} %`

export function answerLines(defs: Definitions, state: State, question: string): string[] {
  return quotedLines(defs, state, question) ?? [NOTHING_FOUND]
}

/** More would push the question off the screen. */
const MOST_LIMITS = 5

/** How far a part may go, asked without a name: what holds at this very prompt, then all that this job judges by. */
function limitLines(defs: Definitions, state: State, at: number | null): string[] {
  const gas = gasHere(defs, state)
  if (gas !== undefined) return [THIS_LINE, `  ${gasPassage(defs, gas).text}`]
  const judged = judgedLimits(defs, at)
  const without = unlimited(defs, at)
  if (judged.length + without.length === 0) return []
  const shown = judged.slice(0, MOST_LIMITS)
  const more = judged.slice(MOST_LIMITS).map(({ name }) => name)
  return [
    'This job judges by these limits:',
    ...shown.map(({ text, fallback }) => `  ${withoutRule(text)}${fallback ? ' (fall-back)' : ''}`),
    ...without.slice(0, MOST_LIMITS).map((label) => `  ${label}: no limit on record, so it is HOLD`),
    ...(more.length === 0 ? [] : [`And ${more.join(', ')}: ask for one by its name.`]),
    'Each with the measuring error allowed for: what is nearer to its limit than that is not accepted.',
    ...(shown.some(({ fallback }) => fallback) ? [FALLBACK] : []),
  ]
}

/** How a book comes to its figure is told where the limit is asked for by its name. */
function withoutRule(text: string): string {
  return text.replace(/ \([^)]*\)(?=\. Source: )/, '')
}

/** What is read of a later step is not to be done yet. */
function notYet({ step }: Passage, at: number | null): string {
  return step !== null && at !== null && step > at ? ' (not yet to be done)' : ''
}

/** Until the plate was read, its tag is nowhere on screen, so that it cannot be copied from here. */
function mayBeShown({ machine }: Definitions, { machineNamed }: State, { text, from }: Passage): boolean {
  return machineNamed || !`${from} ${text}`.toLowerCase().includes(machine.machine.toLowerCase())
}
