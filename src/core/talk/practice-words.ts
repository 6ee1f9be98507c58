// What is keyed in a practice session beside the job: asking the hidden machine, deciding before the sheet does, naming what was hidden.

import type { Definitions } from '../job/definitions.ts'
import { waitEndsMs } from '../job/evidence-wait.ts'
import { gateState } from '../job/gate.ts'
import type { Prompt } from '../job/next.ts'
import type { Manner, PracticeBody } from '../job/practice.ts'
import { isSigned } from '../job/signature.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { VERDICT_WORDS, type VerdictWord } from '../metrology/verdict.ts'
import { askMachine, hiddenMachine, measureAnew } from '../practice/ask.ts'
import type { Fault } from '../practice/fault.ts'
import { faultsFor } from '../practice/faults.ts'
import { FROM_WHERE, isForm } from '../practice/form-told.ts'
import { governsText, isHoldAsked, judgedBy } from '../practice/governable.ts'
import { hintFor } from '../practice/hint.ts'
import type { Ask } from './ask.ts'
import { ask, type Heard, input, refused, say } from './heard.ts'
import { limitLines } from './limits-asked.ts'
import { loadSums } from './practice-pocket.ts'
import { PIN_DROPPED } from './words.ts'

const ASKS = /^(look|measure)(?:\s+(quick(?:ly)?))?$/i
const PASSES = /^wait(?:\s+(\d{1,3}))?(?:\s*min(?:utes)?)?$/i
const NAMES = /^faults?(?:\s+(.+))?$/i

export const NOTHING_GOVERNS = 'nothing'

/** Words that a judgement may end in here; a trainee calls no STOP by a verdict. */
export const CALLED: readonly VerdictWord[] = VERDICT_WORDS.filter((word) => word !== 'STOP')

/** Null: not a practice session, or nothing that is only said in one. */
export function hearPractice(
  defs: Definitions,
  state: State,
  prompt: Prompt,
  line: string,
  now: Instant,
): Heard | null {
  if (state.practice === null || prompt.kind === 'closed') return null
  const { practice } = state
  const text = line.trim().replace(/\s+/g, ' ')
  const asks = ASKS.exec(text)
  const sums = asks === null || prompt.kind !== 'judge' ? null : loadSums(defs, state, prompt)
  if (sums !== null) return say(...sums)
  if (asks !== null) return asked(defs, state, asks[2] === undefined ? 'sheet' : 'quick', now)
  if (/^hint$/i.test(text))
    return put({ type: 'practice.hinted', step: stepOf(prompt), text: hintFor(defs, state) })
  const passes = PASSES.exec(text)
  if (passes !== null) return passed(state, prompt, passes[1], now)
  const names = NAMES.exec(text)
  const faults = faultsFor(defs)
  const hidden = () => hiddenMachine(defs, practice).faults
  if (names !== null) return named(faults, prompt, names[1] ?? '', hidden)
  if (prompt.kind === 'finish') return /^[\d ,]+$/.test(text) ? named(faults, prompt, text, hidden) : null
  return prompt.kind === 'judge' ? called(defs, state, prompt, text) : null
}

/**
 * A line while a question of several lines stands: the machine is asked anew for a reading that is being put right, and the question
 * stands as it was. Null: nothing that practice hears there.
 */
export function hearPracticeWithin(
  defs: Definitions,
  state: State,
  question: Ask,
  line: string,
  now: Instant,
): Heard | null {
  const asks = ASKS.exec(line.trim().replace(/\s+/g, ' '))
  if (state.practice === null || asks === null) return null
  switch (question.kind) {
    case 'correct-which':
      return ask(question, 'First the number of the reading; then measure shows a new figure for it.')
    case 'correct-why':
    case 'correct-value':
    case 'correct-kept': {
      const manner = asks[2] === undefined ? 'sheet' : 'quick'
      const seen = measureAnew(defs, state, question.of, manner, now)
      return seen.ok ? { ...put(seen.value), talk: { ask: question } } : refused(seen.error, question)
    }
    case 'evidence-why':
      return ask(question, 'First why; its line is asked anew then, and look or measure is heard there.')
    default:
      return null
  }
}

const AT_THE_PROMPT =
  'look, measure, hint and fault are heard at the prompt: back leaves this question first. Here it is your own words of what you saw.'

/**
 * What is keyed where words are asked for and is none of them: initials and a PIN, for which the question was a moment ago, and, in
 * practice, a word that asks the machine. Null: words.
 */
export function noWords(defs: Definitions, { practice }: State, line: string): string | null {
  if (isSigned(defs, line)) return PIN_DROPPED
  const word = line.trim()
  return practice !== null && (ASKS.test(word) || /^(?:hint|fault(?:[ ,]+\d+)*)$/i.test(word))
    ? AT_THE_PROMPT
    : null
}

const put = (what: PracticeBody): Heard => input({ do: 'practice', what })

function stepOf(prompt: Prompt): string | null {
  if ('step' in prompt) return prompt.step.id
  return 'gate' in prompt && prompt.gate !== undefined ? prompt.gate.id : null
}

function asked(defs: Definitions, state: State, manner: Manner, now: Instant): Heard {
  const seen = askMachine(defs, state, manner, now)
  return seen.ok ? put(seen.value) : refused(seen.error, null)
}

/** A wait of a quarter of an hour teaches nothing while it lasts: here it is let go by. Alone: what is left of the one that was begun. */
function passed(state: State, prompt: Prompt, typed: string | undefined, now: Instant): Heard {
  const minutes = typed === undefined ? leftOf(state, prompt, now) : Number(typed)
  if (!(minutes > 0))
    return say('wait and minutes let that time go by, as in wait 10; a wait that was begun needs no minutes.')
  const told = `${minutes} ${minutes === 1 ? 'minute goes' : 'minutes go'} by.`
  return { ...say(told), passMs: minutes * 60_000 }
}

/** Whole minutes until the wait at this prompt is over; 0: none was begun. */
function leftOf(state: State, prompt: Prompt, now: Instant): number {
  if (prompt.kind !== 'evidence' || prompt.item.evidence.kind !== 'wait') return 0
  const begun = gateState(state, prompt.gate.id).begun[prompt.item.key]
  return begun === undefined ? 0 : Math.ceil((waitEndsMs(prompt.item.evidence, begun) - now.ms) / 60_000)
}

/** `3`, `3 7`, `0` for nothing. */
function named(all: readonly Fault[], prompt: Prompt, text: string, hidden: () => readonly string[]): Heard {
  if (text === '') return say(...faultLines(all))
  const numbers = text.split(/[ ,]+/).map(Number)
  const isNothing = numbers.length === 1 && numbers[0] === 0
  const faults = numbers.map((n) => all[n - 1])
  if (!isNothing && faults.some((fault) => fault === undefined))
    return say(
      `Key numbers from 1 to ${all.length}, a space between two, or 0 for nothing. fault alone lists them.`,
    )
  const ids = isNothing ? [] : [...new Set(faults.flatMap((fault) => fault?.id ?? []))]
  return put({ type: 'practice.named', step: stepOf(prompt), faults: ids, hidden: hidden() })
}

function faultLines(all: readonly Fault[]): string[] {
  return [
    'What can be hidden on a machine:',
    ...all.map(({ name }, n) => `${String(n + 1).padStart(2)}  ${name}`),
    ...(all.some(isForm) ? [FROM_WHERE] : []),
    'fault 3 names one, fault 3 7 two, fault 0 says that nothing was hidden.',
  ]
}

/** `MONITOR taper`, by number or by word. Of HOLD nothing governs, but for a load, where `HOLD nothing` says that no limit does. */
function called(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'judge' }>,
  text: string,
): Heard | null {
  const { id } = prompt.step
  const judged = judgedBy(defs, id)
  const [first = '', ...rest] = text.split(' ')
  const verdict = CALLED[Number(first) - 1] ?? CALLED.find((word) => word === first.toUpperCase())
  if (verdict === undefined) return null
  const about = rest.join(' ').toLowerCase()
  // `rework or replace?` asks, and decides nothing.
  const limits = /^or (?:rework|replace)\b/.test(about) ? limitLines(defs, state) : null
  if (limits !== null) return say(...limits)
  if (/\?$|^or\b/.test(about)) return null
  const plain = (name: string) => name.replaceAll('-', ' ')
  const governs = judged.filter((one) => [one, governsText(one)].some((name) => plain(name) === plain(about)))
  const names = judged.map(governsText)
  const isHold = verdict === 'HOLD'
  const isSaid = governs.length > 0 || (isHold && (!isHoldAsked(defs, id) || about === NOTHING_GOVERNS))
  if (!isSaid && judged.length > 0)
    return say(
      isHold
        ? `Say as well what holds it: HOLD ${names[0] ?? ''}, or another limit that nothing here keeps to; or HOLD ${NOTHING_GOVERNS}, where what was read does not go together and no limit is reached.`
        : `Say as well which limit governs, the one with the most of it used: ${verdict} and one of ${names.join(', ')}.`,
    )
  return put({ type: 'practice.called', step: id, verdict, governs })
}
