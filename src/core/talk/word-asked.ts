// How something is done that one of the words does: hand over, sign off, a note, a photo. And what is left as it is over a break or a
// night. Each is told with the word that does it; none is done by asking.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { atHandLines } from './at-hand.ts'
import { whoLines } from './sheet-asked.ts'
import { termLines } from './terms.ts'
import { leftLines } from './time-asked.ts'

const HOW =
  '(?:how (?:do|can|could|should|would) (?:i|we)|how to|can (?:i|we)|may (?:i|we)|where (?:do|can) (?:i|we)|do (?:i|we) have to|what do i key to)'
/** As the README has them. */
const BY_WORD: readonly (readonly [RegExp, string])[] = [
  [
    new RegExp(
      `^${HOW} (?:do (?:a |the )?)?(?:hand (?:it |this |the job )?over|make a hand-?over|pass it on|give it to (?:the next|somebody|another)|change shift)\\b|^(?:can|could|may|must|should) (?:somebody|someone|anybody|anyone|another \\w+|he|she|my \\w+|the \\w+|\\w{2})(?: else)? (?:take (?:this |it |the job )?over|go on (?:with (?:it|this)|for me|in my place)|carry on (?:with (?:it|this)|for me)|finish (?:it|this|for me))\\b`,
      'i',
    ),
    'hand over, on a line of its own: one sheet shows what is done, next, locked and open; who goes and who comes both sign, and every hold point falls.',
  ],
  [
    new RegExp(
      `^${HOW} (?:sign|take|get|log) (?:him |her |them |me |myself |somebody |someone |my \\w+ |the \\w+ |\\w{2} )?(?:off|out)\\b(?!.*\\block)`,
      'i',
    ),
    'sign off, on a line of its own, takes somebody off the job by their own initials and PIN, and nobody by those of another; sign on brings somebody onto it, which voids the gas test and what was said in words.',
  ],
  [
    new RegExp(
      `^${HOW} (?:sign|log|bring|get|put) (?:him |her |them |me |myself |somebody |someone |my \\w+ |the \\w+ |\\w{2} |another \\w+ )?(?:on|in)(?: (?:to|onto) .*)?$`,
      'i',
    ),
    'sign on, on a line of its own, brings somebody onto the job by their initials and PIN; it voids the gas test and what was said in words.',
  ],
  [
    new RegExp(
      `^${HOW} (?:see|show|look at|get|read|find|list|view)(?: me)?(?: all| again)* (?:the |my |all the |all )?(?:readings?|figures?|numbers?|values?)(?: (?:again|so far|back|from before|i took))*$|^show (?:me )?(?:the |my |all )*(?:readings|figures)`,
      'i',
    ),
    'readings, on a line of its own, shows all that were taken; changes shows them beside the last overhaul.',
  ],
  [
    new RegExp(
      `^${HOW} (?:write|make|add|put(?: in)?|leave|key) (?:a |an |my |some )?(?:notes?|remarks?|comments?)\\b`,
      'i',
    ),
    'note, on a line of its own: then the words. It stands in the log with its time, and calls nobody.',
  ],
  [
    new RegExp(
      `^${HOW} (?:attach|add|put in|save|send|upload|take|include) (?:a |the |an |my |some )?(?:photos?|pictures?|scans?|sketch(?:es)?|files?|images?)\\b`,
      'i',
    ),
    'attach, on a line of its own: the path of the file, then a line of what it shows. It is evidence for nothing, and opens no hold point.',
  ],
  [
    new RegExp(
      `^${HOW} (?:stop|leave|pause|quit|exit|end|close|break off|put (?:it|this) away)(?: (?:it|this|here|now|the (?:job|program)|for (?:today|now|the day)))*$`,
      'i',
    ),
    'leave, on a line of its own, keeps the job to be taken up later; stop is another thing, and blocks it for everybody.',
  ],
]

const BREAK =
  '(?:lunch|a break|break|dinner|coffee|a smoke|the night|overnight|tonight|tomorrow|the weekend|over the weekend|monday|the shift|shift|the day|today|home|the end of (?:the )?shift|a while|an hour|a bit)'
const OVER_BREAK = [
  `^(?:how|can|may|could|should|what|do|must|is it ok|if|when|where)\\b.*\\b(?:stop|leave|go|break|pause|finish|knock off|carry on|continue|do it|do this|resume|come back)\\b.*\\b(?:for|till|until|at|to|on|over|in)? ?${BREAK}(?: .*)?$`,
  `^what (?:stays?|happens|is left|has to stay|remains?|do (?:i|we) leave|goes|must|comes off|falls)\\b.*\\b${BREAK}\\b.*`,
  `^(?:what|and) (?:if|when) (?:i|we|he|she) (?:have|has|need|needs|must|want)? ?(?:to )?(?:leave|go|stop|get called away|am called away|break off)(?: (?:it|now|here|away|for .*|the .*))*$`,
  `^(?:do|must|should|can) (?:i|we)(?: (?:have to|need to))? (?:lock|close|cover|shut|put|take|leave|clear)\\b.*\\b(?:before|when|while|if) (?:i|we) (?:go|leave|am away|are away|stop|knock off)\\b.*`,
  `^(?:do|must|will|have) (?:i|we)(?: (?:have to|need to|to))? (?:do|start|begin|show|test|measure)(?: (?:it|this|all|everything|of|again|anew|over|the \\w+))* (?:tomorrow|after ${BREAK}|when (?:i|we) (?:come|are) back)\\b.*`,
  `^(?:will|does|is) (?:it|this|the job|everything|what i keyed|the program)(?: \\w+)? (?:keep|kept|saved?|still be there|be there|lost|stay)\\b.*\\b(?:${BREAK}|leave|go|away|off)\\b.*`,
]
const WAIT_FOR = [
  `^(?:can|may|could|should|must|do) (?:i|we)(?: (?:have to|need to|just))? (?:wait (?:for|until|till)|get|fetch|find|bring|ask|call in|use|take) (?:him|her|them|he|she|they|somebody|someone|anybody|another|my \\w+|the \\w+|a (?:second|different|new)|else)\\b(?: (?:else|person|man|one|witness|mechanic|lead|partner|comes?|is|back|instead|in|over|here|now|to .*))*$`,
  `^(?:how long|until when) (?:can|may|should|do) (?:i|we) wait for (?:him|her|them|somebody|my \\w+|the \\w+)\\b.*`,
]
const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [BREAK_ASKED, WAIT_ASKED] = [OVER_BREAK, WAIT_FOR].map(compiled)
const NO_PERSON =
  /\b(?:gauge|meter|micrometer|thermometer|instrument|lock|reading|size|figure|temperature|liner|ring|part|one (?:lock|more))\b/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function wordAskedLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  const word = BY_WORD.find(([pattern]) => pattern.test(text))?.[1]
  if (word !== undefined) return [`The word ${word}`, ...atHandLines(defs, state, now)]
  if (is(BREAK_ASKED)) return [...LEFT, ...termLines('end of a shift'), ...atHandLines(defs, state, now)]
  return is(WAIT_ASKED) && !NO_PERSON.test(text)
    ? [
        'Nothing here is in a hurry but what lapses: the question waits for whoever is needed.',
        ...whoLines(defs, state),
        ...leftLines(defs, state, now),
      ]
    : null
}

/** What a job that is left keeps, and what not. */
export const LEFT = [
  'leave keeps all that was keyed. Every hold point falls, and is shown anew whole before anybody goes near again.',
  'Locks, blocks and all that was placed stay where they are, by number on the make-safe sheet that is shown then.',
]
