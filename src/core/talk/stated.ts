// Sentences that are no answer and do not begin like a question: what somebody says who is stuck, or in doubt, or in danger. Where a
// number or a figure is asked they are answered; where words are asked they are those words, and are answered as well if they tell of
// danger.
import type { Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import type { Ask } from './ask.ts'
import { mendLines } from './last-taken.ts'
import { safetyAsked, saysWhoIsThere, tellsOfHarm } from './safety-asked.ts'
import { safetyLines } from './safety-lines.ts'
import { standingAsked } from './standing-asked.ts'
import { whyLines } from './tell-about.ts'
import { toldLines } from './told.ts'
import { wantedLine } from './wanted.ts'
import { NOT_NOTED } from './words.ts'

/** Prompts that take a number, a figure or Enter: three words in a row are none of them. */
const TAKES_NO_WORDS: readonly Prompt['kind'][] = [
  ...(['pick', 'decide', 'doubt', 'late', 'tell', 'confirm', 'observe', 'read', 'held', 'findings'] as const),
]
/** Evidence that is a number, a figure or set words; of the other sorts words are what is asked. */
const TYPED_AS_ASKED: readonly string[] = ['gas', 'measured', 'locks', 'numbers', 'words', 'lift', 'wait']

const UNSURE =
  /\b(?:not sure|unsure|no (?:idea|clue)|(?:do not|don['\u2019]?t|cannot|can['\u2019]?t) (?:know|understand|see what|tell what)|confus\w+|unclear|what (?:this|that|it) means|makes no sense|never (?:done|did|seen|used) (?:this|that|it|one)|first time|new (?:here|to (?:this|it|that)|at (?:this|it)))\b/i
const TROUBLE =
  /\b(?:stuck|jam(?:s|med)?|seized|brok(?:e|en)|cannot|can['\u2019]?t|won['\u2019]?t|will not|does(?:n['\u2019]?t| not)|do(?:n['\u2019]?t| not)|too (?:tight|big|small|long|short|hot|cold|heavy|deep)|bent|crack(?:s|ed)?|damaged?|slipp(?:ed|ing)|fell|loose|missing|wrong)\b/i

/** What somebody says who keyed what they did not mean. */
const SLIP =
  /\b(?:oops|(?:made|did) (?:a|an|some) (?:\w+ )?(?:mistake|error|slip)|swapped|mixed up|mis-?typed|mis-?keyed|misread|transposed|typo|by mistake|wrong (?:one|number|key|figure|reading|value|box)|(?:keyed|typed|pressed|entered|put in|gave)\b.*\bwrong)\b/i
const NOT_A_SLIP =
  'If it is the thing itself that is wrong, and not what was keyed: hands off, stand clear, say STOP.'

/** What somebody sees, feels or did, told as it is: of a part, of the machine, of what was keyed. */
const STATES = /^(?:i|we|it|he|she|they|there|this|that|these|those|the|my|our|some\w*)(?:['\u2019]\w+)?\b/i

const STOPS = 'stop blocks the job where anybody could be hurt.'
const PRACTISED = 'In practice look tells what is there, and hint where to look; a hint costs.'
const LOOK_UP = 'ask, and your words behind it, looks it up in the papers of this job.'

/** What a sentence at a prompt is told; null where the line is none, or nothing is known of it. */
export function statedLines(
  defs: Definitions,
  state: State,
  prompt: Prompt,
  line: string,
  now: Instant,
): string[] | null {
  const text = line.trim()
  const isHere =
    TAKES_NO_WORDS.includes(prompt.kind) ||
    (prompt.kind === 'evidence' && TYPED_AS_ASKED.includes(prompt.item.evidence.kind))
  if (!isHere || (text.match(/\p{L}+/gu) ?? []).length < 3) return null
  if (SLIP.test(text)) return [...mendLines(defs, state), NOT_A_SLIP]
  // A line with a figure may be one keyed wrong; that another instrument was used is none, whatever its number.
  if (/\d/.test(text) && standingAsked(text) !== 'instrument') return null
  const told = toldLines(defs, state, text, now)
  if (told !== null) return told
  const wanted = wantedLine(defs, state, prompt)
  if (UNSURE.test(text)) return [...whyLines(defs, state, prompt), wanted, LOOK_UP]
  return TROUBLE.test(text) || STATES.test(text)
    ? [
        ...(TROUBLE.test(text) ? troubleLines(prompt) : []),
        ...(state.practice === null ? [] : [PRACTISED]),
        `Nothing was taken. ${wanted}`,
        STOPS,
        NOT_NOTED,
        LOOK_UP,
      ]
    : null
}

function troubleLines(prompt: Prompt): string[] {
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : undefined
  const trouble = placed?.step.trouble
  return trouble === undefined ? [] : [`In trouble: ${trouble}`]
}

/** What words that tell of danger are told, wherever they are put down; null: they tell of none. */
export function dangerLines(
  defs: Definitions,
  state: State,
  question: Ask,
  line: string,
  now: Instant,
): string[] | null {
  if (question.kind === 'attach-path') return null
  const about = safetyAsked(line)
  const isDanger = tellsOfHarm(line) || saysWhoIsThere(line) || (about === 'missing' && OURS.test(line))
  return about === null || !isDanger ? null : safetyLines(defs, state, about, line, now)
}

/** A rag that was lost in the bore, and not a pin that is missing from a drawing. */
const OURS = /\b(?:i|we)\b/i
