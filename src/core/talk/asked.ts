// What is a question in plain words, and what is not. A line that could be an answer where it was keyed is never one; nor
// is anything keyed for a PIN; and where words are asked for, the line is those words, unless `ask` stands before it.
import { type Definitions, personById } from '../job/definitions.ts'
import { spaced } from '../job/evidence-asked.ts'
import { type Item, inspectedWords } from '../job/gate.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Ask } from './ask.ts'
import { namesOffer, offersAt } from './offered.ts'
import { pickedFrom } from './picked.ts'
import { saysWhoIsThere, tellsOfHarm } from './safety-asked.ts'
import { openerMended } from './slips-in.ts'

const FIRST_WORDS =
  /^(?:(?:in|at|by|with|on|to|for|from) (?:what|which|whom)|what|why|how|where|when|which|who|whom|whose|is|can|do|does|explain|tell me)(?:['\u2019]?s)?\s+\S/i
/** Asks as well, and begins with a thing. */
const OF_TWO = /^(?:the )?differences? (?:between\s+)?\S/i

/** Whoever or whatever such a word asks about; without one, `was` or `may` begins an answer as well. */
const ABOUT_WHOM =
  '(?:i|we|you|he|she|it|they|this|that|these|those|there|the|an?|my|our|his|her|some(?:body|one|thing)|any(?:body|one|thing)|nobody|every(?:body|one)|people|one|barover|[a-z]{1,3}-\\d+)'
const HELPS =
  '(?:is|are|am|do|does|did|was|were|has|have|had|can|could|may|might|must|should|shall|will|would)'
const TURNED_ROUND = new RegExp(`^${HELPS}(?:n['\u2019]t)? ${ABOUT_WHOM}\\b`, 'i')
/** Begins like a question where words are asked for: there a word such as where begins many a note. */
const LIKE_ONE = new RegExp(
  `^(?:(?:what|why|how|which|who)(?:['\u2019]s)? \\S|(?:where|when) ${HELPS}\\b)`,
  'i',
)

/** Said for a question, and no answer to anything. */
const BARE = /^(?:too (?:much|big|worn|far|large|small)|(?:what )?limits?|(?:which|what) limit|tolerances?)$/i

/** How a question of several lines takes a line: as the very words, as a figure, a number or initials, or unseen. */
const TAKES: Readonly<Record<Ask['kind'], 'words' | 'short' | 'secret'>> = {
  pin: 'secret',
  'word-meant': 'short',
  'attach-path': 'words',
  'attach-looking': 'short',
  'attach-newest': 'short',
  'attach-caption': 'words',
  note: 'words',
  object: 'words',
  'finding-note': 'words',
  'keep-why': 'words',
  'not-applicable-why': 'words',
  'not-applicable-who': 'short',
  'correct-which': 'short',
  'correct-value': 'short',
  'correct-why': 'words',
  'correct-kept': 'words',
  'take-back-why': 'words',
  'finding-which': 'short',
  'finding-changed-note': 'words',
  'finding-why': 'words',
  'evidence-why': 'words',
  'doubt-which': 'short',
  'doubt-why': 'words',
  'doubt-says': 'words',
  'reopen-why': 'words',
  'finding-choice': 'short',
  'dispose-who': 'short',
  'dispose-why': 'words',
  'concession-authority': 'words',
  'concession-until': 'words',
  'concession-from': 'short',
  'concession-far': 'words',
  'deviation-which': 'short',
  'deviation-what': 'words',
  'deviation-why': 'words',
  'deviation-authority': 'words',
  'deviation-until': 'words',
  'deviation-who': 'short',
  'notice-which': 'short',
  'notice-whom': 'words',
  'stop-which': 'short',
  'stop-cause': 'short',
  'stop-why': 'words',
  'stop-caller': 'short',
  'stop-caller-nobody': 'short',
  'stop-caller-too': 'short',
  'close-who': 'short',
  'close-first': 'words',
  'place-what': 'words',
  'place-where': 'words',
  'place-number': 'words',
  'step-where': 'words',
  'step-number': 'words',
  'account-which': 'short',
  'account-who': 'short',
  'hand-who': 'short',
  'hand-to': 'words',
  'ask-again-sure': 'short',
  'figure-sure': 'short',
  'number-sure': 'short',
  'number-why': 'words',
  'number-again': 'short',
  'places-sure': 'short',
  'tag-sure': 'short',
  'leave-sure': 'short',
  'release-who': 'short',
  'release-answer': 'words',
  'radio-lead': 'short',
  'radio-said': 'words',
  'radio-by': 'short',
  'countersign-who': 'short',
  'countersign-answer': 'short',
  'come-on': 'short',
  'sign-off': 'short',
  'hand-over-to': 'short',
  'sheet-sure': 'short',
  'sheet-which': 'short',
  'sheet-rest': 'short',
  'sheet-again': 'short',
  'sheet-why': 'words',
}

export function takesOf({ kind }: Ask): 'words' | 'short' | 'secret' {
  return TAKES[kind]
}

/** `is 8 ok`, `is 19 ok?`. */
const SHORT_ONE = /^is \d+(?:[.,]\d+)? ok\??$/i
/** `9.5033 ok?`, `71.2 degF too high`: no figure is keyed so. */
const FIGURE_FIRST =
  /^-?\d+(?:[.,]\d+)?(?: ?(?:in|inch|mm|%|ppm|lel|vol|deg ?[fc]|psig?|barg?))* (?:is |still |too |not |all |be )*(?:ok|okay|good|bad|fine|right|wrong|normal|enough|much|big|small|high|low|worn|(?:with)?in (?:spec|tolerance|limits?|the limit)|out of (?:spec|tolerance|limits?))(?: or (?:bad|not|no|too \w+))?\??$/i

/** `70 % of what`: nothing is read so. */
const OF_WHAT = /^-?\d+(?:[.,]\d+)? ?(?:%|\p{L}+)* of (?:what|which(?: \p{L}+)?)\??$/iu

/** `would 9.5033 pass`, `i got 9.51, is that right`. */
const OF_FIGURE =
  /^(?:(?:is|are|was|would|will|does|do|can|could) -?\d[\d.,]* .*\p{L}{2}|(?:i|we) (?:got|get|have|read|measured?) -?\d[\d.,]*.*\b(?:is|are|would) (?:that|it|this|they)\b)/iu

/** What a sentence ends in that is put as a question. */
const ENDS_ASKING =
  /^\p{L}.*\s.*\b(?:which one|what now|what then|what do (?:i|we) do(?: now)?|is (?:that|this|it) (?:ok|okay|good|bad|right|wrong|normal|enough|allowed)|does (?:that|this|it) (?:matter|count))$/iu

/** Of a figure, or a sentence that ends in a question. */
function isFigureAsked(text: string): boolean {
  return (
    text.length <= LONGEST && [FIGURE_FIRST, OF_WHAT, OF_FIGURE, ENDS_ASKING].some((one) => one.test(text))
  )
}

/** Longer lines are put down, or refused, as what they are. */
const LONGEST = 240

/** The question in a line that looks like one, or null. It takes a word: initials, a figure or a number are none. */
export function questionIn(line: string): string | null {
  const text = line.trim()
  if (isFigureAsked(text)) return text
  if (!/\p{L}{3}/u.test(text)) return SHORT_ONE.test(text) ? text : null
  const after = afterAsk(text)
  if (after !== null) return after
  if (/\?$/.test(text)) return /^\p{L}/u.test(text) ? text : null
  if (BARE.test(text)) return text
  // What follows the first word has to hold a word as well: IS 401 2 is a tag.
  const opened = openerMended(text)
  const begins = FIRST_WORDS.test(opened) || OF_TWO.test(text) || TURNED_ROUND.test(text.replace(/\s+/g, ' '))
  return (begins && /\s.*\p{L}{2}/u.test(text)) || tellsOfHarm(text) || saysWhoIsThere(text) ? text : null
}

/** Whether words keyed where words are asked for may be a question all the same: they are asked about, as a lone word is. */
export function mayBeAsked(question: Ask, line: string): boolean {
  const text = line.trim().replace(/\s+/g, ' ')
  if (takesOf(question) !== 'words' || question.kind === 'attach-path') return false
  if (afterAsk(text) !== null || questionIn(text) === null) return false
  return text.endsWith('?') || TURNED_ROUND.test(text) || LIKE_ONE.test(text)
}

/** What stands behind the word `ask`. */
function afterAsk(text: string): string | null {
  const rest = /^ask[:,]?\s+(.+)$/i.exec(text)?.[1]?.trim()
  return rest !== undefined && /\p{L}{3}/u.test(rest) ? rest : null
}

/** The question, where one of several lines is being answered; null: the line is its answer. */
export function askedWithin(defs: Definitions, question: Ask, line: string): string | null {
  const takes = TAKES[question.kind]
  if (takes === 'secret') return null
  if (takes === 'words') {
    const rest = afterAsk(line.trim())
    // A note may begin with ask as well: "ask KH to look at it" is the note.
    return rest === null ? null : questionIn(rest)
  }
  return isPerson(defs, line) ? null : questionIn(line)
}

/** No tag begins with such a word and has another behind it. */
const NO_TAG = /^(?:(?:what|why|how|where|when|which|who|whom|whose)(?:['\u2019]?s)?|explain|tell me) \p{L}/iu

/** The question keyed at a prompt; null: the line answers the prompt, or is refused there as it always was. */
export function askedAt(defs: Definitions, state: State, prompt: Prompt, line: string): string | null {
  const asked = questionIn(line)
  // Two words may be a wrong tag, but not these.
  if (prompt.kind === 'tag' && (tellsOfHarm(line, 'as keyed') || saysWhoIsThere(line))) return asked
  return asked === null || couldAnswer(defs, state, prompt, line) ? null : asked
}

/** Whether a line with words in it could be taken, or put on record, at this prompt. */
export function couldAnswer(defs: Definitions, state: State, prompt: Prompt, line: string): boolean {
  return answers(defs, state, prompt, line) || (prompt.kind === 'tag' && couldBeTag(line))
}

/** Whether the line is the very thing that is asked for: then it is that, whatever else it could mean. */
export function answers(defs: Definitions, state: State, prompt: Prompt, line: string): boolean {
  switch (prompt.kind) {
    case 'tag':
      return line.trim().toUpperCase().replace(/\s+/g, '-') === defs.machine.machine.toUpperCase()
    case 'sign-on':
    case 'countersign':
      return isPerson(defs, line)
    case 'point':
    case 'review':
      return isPerson(defs, line) || /^not attended$/i.test(line.trim())
    case 'pick':
      return pickedFrom(prompt.options, line.trim()) !== undefined
    case 'decide':
      return namesOffer(offersAt(state, prompt.step), line)
    case 'clear':
      return spaced(line) === prompt.gate.step.clear_words
    case 'sheet':
      // A box is a time, a figure or a sign of its own; words at one are still heard as words.
      return /^\s*(?:[-?]|\d)/.test(line)
    case 'sheet-sign':
      return isPerson(defs, line)
    case 'evidence':
      return isPerson(defs, line) || wordsAt(prompt.item).includes(spaced(line))
    default:
      return false
  }
}

function isPerson(defs: Definitions, line: string): boolean {
  return personById(defs, line.trim().toUpperCase()) !== undefined
}

/**
 * A wrong tag goes on record, as it may be the wrong machine: only what can be the tag of nothing is a question here. What is neither for
 * certain is asked about (`tag-sure.ts`).
 */
function couldBeTag(line: string): boolean {
  const text = line.trim()
  const words = (text.match(/\p{L}{2,}/gu) ?? []).length
  if (/\d/.test(text)) return !NO_TAG.test(text) || words < 3
  return !text.endsWith('?') && !NO_TAG.test(text) && text.split(/\s+/).length < 3
}

/** The words that this line of evidence takes, typed in full. */
function wordsAt({ evidence, part }: Item): readonly string[] {
  if (evidence.kind === 'words') return [evidence.words]
  if (evidence.kind === 'wait') return [evidence.begin_words, evidence.words]
  return evidence.kind === 'lift' && part === 'inspected' ? [inspectedWords(evidence)] : []
}
