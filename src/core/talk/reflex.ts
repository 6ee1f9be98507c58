// Words that people key out of habit and that mean nothing here: each is told which word does it. None of them does anything,
// as nobody knows what was meant: the question stands as it stood.
import { asKind, type Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { type Ask, questionText } from './ask.ts'
import { whyNoChange } from './correct.ts'
import { backDoes, questionBefore } from './one-back.ts'
import { helpLines } from './tell-about.ts'
import { wantedLine } from './wanted.ts'

type Reflex = 'what' | 'undo' | 'skip' | 'yes' | 'quit'

const REFLEXES: Readonly<Record<Exclude<Reflex, 'what'>, readonly string[]>> = {
  undo: ['undo', 'redo', 'cancel', 'delete', 'revert', 'oops'],
  skip: ['skip', 'ignore'],
  yes: ['ok', 'okay', 'y', 'yes', 'yep', 'n', 'no', 'nope', 'enter', 'continue', 'go on'],
  quit: ['quit', 'exit', 'q', 'bye'],
}

function reflexIn(line: string): Reflex | null {
  const text = line.trim().toLowerCase()
  if (/^\?+$/.test(text)) return 'what'
  const word = text.replace(/[\s.!?]+$/, '')
  const found = Object.entries(REFLEXES).find(([, words]) => words.includes(word))
  return (found?.[0] as Reflex | undefined) ?? null
}

/** A yes or a no, or what stands for one. */
export function isYes(line: string): boolean {
  return reflexIn(line) === 'yes'
}

/** At a prompt; null: the line is none of them. Whatever answers the prompt was heard as that before. */
export function reflexLines(defs: Definitions, state: State, prompt: Prompt, line: string): string[] | null {
  const reflex = reflexIn(line)
  if (reflex === null) return null
  const word = line.trim().toLowerCase()
  switch (reflex) {
    case 'what':
      return [...helpLines(defs, state), ASKED]
    case 'yes':
      return [`Nothing was taken: ${word} answers nothing here. ${wantedLine(defs, state, prompt)}`]
    case 'undo':
      return [
        `Nothing was changed: ${word} is no word here.`,
        whyNoChange(state) ?? 'back goes to the last answer; correct mends any reading, finding or evidence.',
      ]
    case 'skip':
      return [
        `Nothing was left out: ${word} is no word here.`,
        whyNoNotApplicable(prompt) ?? 'n/a, with the reason, is the word for a reading that cannot be taken.',
      ]
    case 'quit':
      return [`Nothing was ended: ${word} is no word here. leave keeps the job, to be taken up later.`]
  }
}

const ASKED = 'Ask in plain words: how far am I, who is signed on, when does the gas lapse, what is runout?'

/** Why there is no n/a at this prompt; null where there is. */
export function whyNoNotApplicable(prompt: Prompt): string | null {
  if (prompt.kind === 'read')
    return asKind(prompt.step, 'read').step.not_applicable === 'never'
      ? 'This reading has no n/a: measure it, or leave the job here with a note.'
      : null
  if (prompt.kind === 'evidence' || prompt.kind === 'clear')
    return 'A hold point has no n/a: without this evidence it stays shut.'
  return 'Only a reading can be n/a.'
}

/** Questions of several lines that take such a word as their answer. */
const ANSWERED_BY: Readonly<Partial<Record<Ask['kind'], readonly Reflex[]>>> = {
  'ask-again-sure': ['yes'],
  'leave-sure': ['yes'],
  'stop-caller': ['what'],
  'stop-caller-nobody': ['what'],
  'stop-caller-too': ['what'],
}

/** Within a question of several lines. `words`: it takes words, and yes could be some; a note that only says undo is none. */
export function reflexWithin(question: Ask, takes: 'words' | 'short', line: string): string[] | null {
  const reflex = reflexIn(line)
  if (reflex === null || ANSWERED_BY[question.kind]?.includes(reflex)) return null
  if (takes === 'words' && reflex === 'yes') return null
  return [
    `Nothing was taken: ${line.trim()} answers nothing here. Asked is: ${questionText(question)}`,
    `${backDoes(question)}${questionBefore(question) === null ? ' as it was' : ''}.`,
  ]
}
