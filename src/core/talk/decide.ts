// The questions of a lead's disposition and of a deviation permit.
import { deviable } from '../job/admit-deviation.ts'
import { type FINDING_CHOICES, findingChoices } from '../job/admit-disposition.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import type { Nonconformance } from '../job/nonconformance.ts'
import type { State } from '../job/state.ts'
import { numberIn } from './correct.ts'
import { ask, barredHere, type Heard, say, signing } from './heard.ts'
import { nonconformanceText } from './names.ts'

interface Disposing {
  readonly step: string
  readonly choice: string
  readonly person: string
  readonly why: string
}

interface Permitting {
  readonly step: string
  readonly what: string
  readonly why: string
  readonly authority: string
  readonly until: string
}

export type DecideAsk =
  /** What is done about a finding; `step` is where it was found. */
  | ({ readonly kind: 'finding-choice'; readonly choices: ReturnType<typeof findingChoices> } & Pick<
      Disposing,
      'step'
    >)
  | ({ readonly kind: 'dispose-who' } & Pick<Disposing, 'step' | 'choice'>)
  | ({ readonly kind: 'dispose-why' } & Pick<Disposing, 'step' | 'choice' | 'person'>)
  | ({ readonly kind: 'concession-authority' } & Disposing)
  | ({ readonly kind: 'concession-until'; readonly authority: string } & Disposing)
  | { readonly kind: 'deviation-which'; readonly steps: readonly string[] }
  | ({ readonly kind: 'deviation-what' } & Pick<Permitting, 'step'>)
  | ({ readonly kind: 'deviation-why' } & Pick<Permitting, 'step' | 'what'>)
  | ({ readonly kind: 'deviation-authority' } & Pick<Permitting, 'step' | 'what' | 'why'>)
  | ({ readonly kind: 'deviation-until' } & Omit<Permitting, 'until'>)
  | ({ readonly kind: 'deviation-who' } & Permitting)

export const DECIDE_QUESTIONS: Readonly<Record<DecideAsk['kind'], string>> = {
  'finding-choice': 'What is done about it? Its number',
  'dispose-who': 'Initials of the lead who decides; radio, if a lead only says it by radio',
  'dispose-why': 'The reason',
  'concession-authority': 'On whose authority? A person or a paper',
  'concession-until': 'Until when? A day YYYY-MM-DD, or running hours such as 4000 h',
  'deviation-which': 'For which step? Its number',
  'deviation-what': 'What may differ?',
  'deviation-why': 'Why?',
  'deviation-authority': 'On whose authority? A person or a paper',
  'deviation-until': 'Until when? A day YYYY-MM-DD, or running hours such as 4000 h',
  'deviation-who': 'Initials of the lead who permits it',
}

export function isDecideAsk(question: { readonly kind: string }): question is DecideAsk {
  return Object.hasOwn(DECIDE_QUESTIONS, question.kind)
}

/** Nothing comes after the end of a job that could measure it again, so that each word says what it means of the part. */
const FINDING_WORDS: Readonly<Record<(typeof FINDING_CHOICES)[number], string>> = {
  accept: 'fit as it is',
  rework: 'put right in this job, as it was made',
  repair: 'made fit in this job, not as it was made',
  replace: 'a new part went in, in this job',
  concession: 'runs on as it is: by whom, until when',
  hold: 'not fit: nothing goes on, or the job ends with HOLD',
}

/** The finding picked by its number, at the end of a job or where a gate asks for it, and what a lead may say of it. */
export function decideFinding(defs: Definitions, open: readonly Nonconformance[], number: number): Heard {
  const one = open[number - 1]
  if (one === undefined)
    return say(open.length === 1 ? 'Key 1.' : `Key the number of a finding, 1 to ${open.length}.`)
  const choices = findingChoices(stepById(defs, one.step).step.kind === 'judge' ? one.word : null)
  return ask(
    { kind: 'finding-choice', step: one.step, choices },
    `${open
      .filter(({ step }) => step === one.step)
      .map((nc) => nonconformanceText(defs, nc))
      .join('; ')}.`,
    ...choices.map((choice, i) => `${i + 1}  ${choice.padEnd(11)}${FINDING_WORDS[choice]}`),
  )
}

export function deviation(defs: Definitions, state: State): Heard {
  if (state.doer === null) return say('Sign on first.')
  const steps = deviable(defs, state)
  if (steps.length === 0)
    return say('There is nothing left that a deviation could be permitted for beforehand.')
  return ask(
    { kind: 'deviation-which', steps: steps.map((s) => s.id) },
    'A deviation permit changes no limit, no verdict and no hold point. For:',
    ...steps.map((s, i) => `${String(i + 1).padStart(2)}  ${s.number} ${s.step.title}`),
  )
}

export function hearDecision(defs: Definitions, state: State, question: DecideAsk, line: string): Heard {
  switch (question.kind) {
    case 'finding-choice': {
      const choice = question.choices[numberIn(line) - 1]
      return choice === undefined
        ? ask(question, `Key a number, 1 to ${question.choices.length}, or back.`)
        : ask({ kind: 'dispose-who', step: question.step, choice })
    }
    case 'dispose-who':
      if (/^(by )?radio$/i.test(line.trim())) return ask({ ...question, kind: 'radio-lead' })
      return (
        barredHere(defs, state, { do: 'dispose', ...asking(question), person: line, why: '' }, question) ??
        ask({ ...question, kind: 'dispose-why', person: line })
      )
    case 'dispose-why':
      if (question.choice === 'concession')
        return ask({ ...question, kind: 'concession-authority', why: line })
      return dispose(defs, state, question, { ...question, why: line })
    case 'concession-authority':
      return ask({ ...question, kind: 'concession-until', authority: line })
    case 'concession-until':
      return dispose(defs, state, question, question, { authority: question.authority, until: line })
    case 'deviation-which': {
      const step = question.steps[numberIn(line) - 1]
      return step === undefined
        ? ask(question, `Key a number, 1 to ${question.steps.length}, or back.`)
        : ask({ kind: 'deviation-what', step }, `For ${stepById(defs, step).step.title}.`)
    }
    case 'deviation-what':
      return ask({ ...question, kind: 'deviation-why', what: line })
    case 'deviation-why':
      return ask({ ...question, kind: 'deviation-authority', why: line })
    case 'deviation-authority':
      return ask({ ...question, kind: 'deviation-until', authority: line })
    case 'deviation-until':
      return ask({ ...question, kind: 'deviation-who', until: line })
    case 'deviation-who': {
      const { step, what, why, authority, until } = question
      const permit = { do: 'permit-deviation', step, what, why, authority, until, person: line } as const
      return signing(defs, state, line, permit, question)
    }
  }
}

const asking = ({ step, choice }: Pick<Disposing, 'step' | 'choice'>) => ({ step, choice })

function dispose(
  defs: Definitions,
  state: State,
  question: DecideAsk,
  { step, choice, person, why }: Disposing,
  terms: { readonly authority?: string; readonly until?: string } = {},
): Heard {
  return signing(defs, state, person, { do: 'dispose', step, choice, person, why, ...terms }, question)
}

/** What is being decided, shown over each question of it: the choice would be out of sight by then. */
export function decidingText(defs: Definitions, state: State, question: DecideAsk): string | null {
  switch (question.kind) {
    case 'finding-choice':
    case 'deviation-which':
      return null
    case 'dispose-who':
    case 'dispose-why':
    case 'concession-authority':
    case 'concession-until':
      return disposingText(defs, state, question)
    default: {
      const { number, step } = stepById(defs, question.step)
      const what = question.kind === 'deviation-what' ? '' : `: ${question.what}`
      return `Deviation permit for ${number} ${step.title}${what}`
    }
  }
}

/** `18 What is to be done about it, HOLD: decided is hold`. */
export function disposingText(
  defs: Definitions,
  state: State,
  { step: id, choice }: Pick<Disposing, 'step' | 'choice'>,
): string {
  const { number, step, scope } = stepById(defs, id)
  const about = step.kind === 'decide' ? scope + step.about : id
  const verdict = state.verdicts[about]?.verdict.result.verdict
  const word = verdict === undefined ? '' : `, ${verdict}`
  return `${number} ${step.title}${word}. Chosen: ${choice.toUpperCase()}`
}
