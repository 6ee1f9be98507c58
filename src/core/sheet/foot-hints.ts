// The words and the key that the foot names, as many of them as there is room for.
import { widthOf } from '../lib/text.ts'
import { type Row, row } from './block.ts'
import type { PromptView } from './prompt-view.ts'

const WORDS = ['help', 'why', 'ask', 'where', 'correct', 'back', 'note', 'n/a', 'leave', 'stop']
/** In a practice session those that ask its machine stand first: `look`, or `measure` in its place where an instrument is read. */
const PRACTICE_WORDS = 'look hint wait fault help correct back leave stop'.split(' ')
/** Beside the hint for make safe: what is looked for most, where the foot is full and all have no room. */
const SHORT_WORDS = ['help', 'why', 'ask', 'correct', 'back', 'leave', 'stop']
/** Of a practice session: nothing is keyed there before the machine was asked. */
const SHORT_PRACTICE_WORDS = 'look hint wait fault help back stop'.split(' ')
const LEAST_PRACTICE_WORDS = ['look', 'hint', 'wait', 'help']
const FEW_WORDS = ['help', 'back', 'leave', 'stop']
/** They change what was said before, and are named where that may be changed. */
const CHANGES = ['correct', 'back']
/** Within a question the others are no words: what is keyed there is its answer. */
const WORDS_IN_QUESTION = ['back', 'safe', 'stop']
/** At one key, at any moment: the foot says so, or the line of words under it where the foot is full. */
const SAFE_HINT = 'Tab: make safe'
/** Where a path is keyed the first Tab completes it; the second is make safe all the same. */
const SAFE_HINT_AT_PATH = 'Tab twice: make safe'

/** The first that fits is shown. */
export function wordListsOf({
  inQuestion,
  isPractice,
  isMeasured,
  mayChange,
}: PromptView): readonly (readonly string[])[] {
  if (inQuestion) return [WORDS_IN_QUESTION]
  const lists = isPractice
    ? [PRACTICE_WORDS, SHORT_PRACTICE_WORDS, FEW_WORDS].map((words) => askedBy(isMeasured, words))
    : [WORDS, SHORT_WORDS, FEW_WORDS]
  return mayChange ? lists : lists.map((words) => words.filter((word) => !CHANGES.includes(word)))
}

/** Within a question the words of practice are none. */
export const isPracticeHinted = (view: PromptView) => view.isPractice && !view.inQuestion && !view.path

/** Where an instrument is read there is no wait to go by, and no room for the word on a narrow sheet. */
const LEAST_MEASURED_WORDS = ['measure', 'hint', 'help']

const leastOf = (isMeasured: boolean) => (isMeasured ? LEAST_MEASURED_WORDS : LEAST_PRACTICE_WORDS)

function askedBy(isMeasured: boolean, words: readonly string[]): readonly string[] {
  return isMeasured ? words.map((word) => (word === 'look' ? 'measure' : word)) : words
}

/** What one line has on the narrowest sheet: in practice with the key for make safe, in the columns that it has beside its margin. */
export function leastHint(view: PromptView): string {
  if (!isPracticeHinted(view)) return safeHintOf(view)
  return `${leastOf(view.isMeasured).join(' ')} Tab: safe`
}

/** On the last side, where the question stands: beside how to turn back, the words that ask the machine. */
export function practiceTurningRow({ isMeasured }: PromptView, at: number, of: number, width: number): Row {
  const words = leastOf(isMeasured).join(' ')
  const side = `${at + 1} of ${of}   Up: turn back   Words: ${words}`
  return row(widthOf(side) <= width ? side : `${at + 1}/${of} Up ${words}`, 'faint')
}

export function safeHintOf({ path }: PromptView): string {
  return path ? SAFE_HINT_AT_PATH : SAFE_HINT
}
