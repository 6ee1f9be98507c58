// What a lead decides about, as it stands over each question of it: the choice would be out of sight by then.
import { mayKeyRadio } from '../job/admit-radio.ts'
import { hoursRead } from '../job/changes.ts'
import { type Definitions, stepById } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import { type Nonconformance, nonconformances } from '../job/nonconformance.ts'
import type { State } from '../job/state.ts'
import { hoursText } from '../units/index.ts'
import type { DecideAsk, Disposing } from './decide.ts'
import { nonconformanceText } from './names.ts'
import { hoursLine, nextLookLines } from './next-look.ts'
import { radioNeeds } from './radio-words.ts'
import { readAgainHow } from './read-again.ts'

/** What is being decided, shown over each question of it: the choice would be out of sight by then. */
export function decidingLines(defs: Definitions, state: State, question: DecideAsk): string[] {
  switch (question.kind) {
    case 'finding-choice':
    case 'deviation-which':
      return []
    case 'dispose-who':
      return [...disposingLines(defs, state, question), ...noRadioLine(defs, state, question)]
    case 'concession-authority':
      return disposingLines(defs, state, question)
    case 'dispose-why':
      return [
        ...disposingLines(defs, state, question),
        ...watchLines(defs, state, question),
        ...notKnownLines(defs, state, question),
      ]
    case 'concession-until':
    case 'concession-from':
    case 'concession-far':
      return [...disposingLines(defs, state, question), ...countLines(defs, state)]
    default: {
      const { number, step } = stepById(defs, question.step)
      const what = question.kind === 'deviation-what' ? '' : `: ${question.what}`
      return [`Deviation permit for ${number} ${step.title}${what}`]
    }
  }
}

/** Whoever is alone learns before a choice of words that a word by radio is somebody else's to key. */
function noRadioLine(defs: Definitions, state: State, about: Pick<Disposing, 'step' | 'choice'>): string[] {
  if (mayBeByRadio(defs, state, about)) return []
  return about.choice === 'concession'
    ? ['By radio it is not given: a lead who is here signs it.']
    : [`By radio: ${radioNeeds(defs, state, about)}`]
}

export function mayBeByRadio(
  defs: Definitions,
  state: State,
  { step, choice }: Pick<Disposing, 'step' | 'choice'>,
): boolean {
  return choice !== 'concession' && mayKeyRadio(defs, state, { step, choice }).length > 0
}

/** `18 What is to be done about it, HOLD. Chosen: HOLD`, of the sheet that lies open without its title; of a finding what was found, in the words of whoever found it. */
export function disposingLines(
  defs: Definitions,
  state: State,
  { step: id, choice }: Pick<Disposing, 'step' | 'choice'>,
): string[] {
  const { number, step } = stepById(defs, id)
  const verdict = recordAbout(defs, state, id)?.result.verdict
  const word = verdict === undefined ? '' : `, ${verdict}`
  const found = nonconformances(defs, state).filter(
    (nc) => nc.stands && nc.step === id && step.kind === 'observe',
  )
  return [
    ...(found.length === 0 ? [] : foundLines(defs, state, found)),
    `${isDecided(defs, state, id) ? (verdict ?? '') : `${number} ${step.title}${word}`}. Chosen: ${choice.toUpperCase()}`.replace(
      /^\. /,
      '',
    ),
  ]
}

/** Whether the sheet that lies open is the very step: its title stands right over the question. */
function isDecided(defs: Definitions, state: State, id: string): boolean {
  const prompt = next(defs, state)
  return prompt.kind === 'decide' && prompt.step.id === id
}

/** The verdict that a decide step, or the judge step itself, is about. */
function recordAbout(defs: Definitions, state: State, id: string) {
  const { step, scope } = stepById(defs, id)
  return state.verdicts[step.kind === 'decide' ? scope + step.about : id]?.verdict
}

export function isOnWatch(
  defs: Definitions,
  state: State,
  { step, choice }: Pick<Disposing, 'step' | 'choice'>,
): boolean {
  return recordAbout(defs, state, step)?.result.verdict === 'MONITOR' && choice === 'accept'
}

/** Of what is on watch and runs on: what the next look is asked for, and what is known for it. */
function watchLines(
  defs: Definitions,
  state: State,
  question: Extract<DecideAsk, { kind: 'dispose-why' }>,
): string[] {
  const { step, choice } = question
  const record = recordAbout(defs, state, step)
  if (record === undefined || !isOnWatch(defs, state, { step, choice })) return []
  return [
    question.why === undefined
      ? 'With the reason: by when it is to be read again. It is for the planner; nothing lapses by it.'
      : `Reason: ${question.why}`,
    readAgainHow(defs, state),
    ...nextLookLines(defs, state, record),
  ]
}

/** A part that could not be judged and is let run all the same: what nobody knows of it stands over the question for the reason. */
function notKnownLines(
  defs: Definitions,
  state: State,
  { step, choice }: Pick<Disposing, 'step' | 'choice'>,
) {
  const result = recordAbout(defs, state, step)?.result
  if (choice !== 'concession' || result?.verdict !== 'HOLD') return []
  const [first, ...more] = result.holds
  return [
    'HOLD: it could not be judged, so nobody knows whether it is inside its limits.',
    ...(first === undefined
      ? []
      : [`Not known: ${first.replace(/\.$/, '')}${more.length === 0 ? '' : `; and ${more.length} more`}.`]),
    'The reason has to say why it may run although that is not known.',
  ]
}

/** From which hours a running time counts. */
function countLines(defs: Definitions, state: State): string[] {
  const read = hoursRead(defs, state)
  return [
    hoursLine(defs, state),
    read === null
      ? 'A running time counts from what the counter shows now, which is asked with it.'
      : `A running time counts from these ${hoursText(read)} h.`,
  ]
}

/** All that was found at a step, and the own words of whoever found it, which are for all of it. */
export function foundLines(defs: Definitions, state: State, found: readonly Nonconformance[]): string[] {
  const noted = state.findings[found[0]?.step ?? '']
  return [
    `${found.map((nc) => nonconformanceText(defs, nc)).join('; ')}.`,
    ...(noted === undefined ? [] : [`Noted with it: ${noted}`]),
  ]
}
