// What becomes of a figure: one that is out of its limit, one that is doubted, one that does not stand still, and whether one may be left
// out. Told from the step, its rule of repeats and its instrument; none is dropped or averaged by anybody.
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import { next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { alikeWithin } from './alike-within.ts'
import { quotedLines } from './answer-asked.ts'
import { atHandLines } from './at-hand.ts'
import { whyLines } from './tell-about.ts'
import { termLines } from './terms.ts'

const IT =
  "(?:it|it's|its|this|that|they|one|(?:the|a|my|this|that|one|any) (?:\\w+ )?(?:reading|figure|value|number|size|bore|diameter|measurement|one)s?)"
const OVER =
  '(?:over|under|above|below|out|outside|beyond|past|too (?:big|large|small|high|low|much|worn|wide)|bad|off|out of (?:its |the )?(?:limits?|range|tolerance|spec)|worn|not (?:ok|good|right|in (?:limits?|spec|tolerance)))'
const OUT = [
  `^(?:and |so )?what(?: (?:do|should|must|can) (?:i|we) do)?(?: happens)?(?: (?:if|when|about|with))? ?${IT} (?:is |are |was |comes out |reads |gets |be )?(?:a bit |much |way |still )*${OVER}(?: .*)?$`,
  `^what(?: (?:do|should|must) (?:i|we) do)? (?:with|about|happens (?:to|with)|becomes of) (?:a |the |this |that |my )?(?:bad|wrong|big|high|low|worn|odd|strange|doubted|doubtful|out of \\w+) (?:one|reading|figure|value|size)s?\\b.*`,
  `^(?:is|are) ${IT} (?:out|over|under|beyond) (?:of )?(?:its |the )?(?:limits?|range|tolerance|spec)\\b.*`,
]
const LEFT_OUT = [
  `^(?:can|may|could|should|must|do|does|is it ok to|am i allowed to) (?:i|we|it|barover|you)? ?(?:just )?(?:average|mean|take the (?:mean|average|better|best|lower|higher|smaller|bigger|middle)|leave out|drop|ignore|throw (?:out|away)|delete|skip|not count|pick|choose|use only|keep only|discard|forget)\\b.*\\b(?:it|them|one|ones|readings?|figures?|two|both|three|bad|worst|best|odd|first|last|outlier)\\b.*`,
  `^(?:which|what) (?:of (?:the|these|those|them) ?(?:two|three|readings|figures)?|reading|figure|one) (?:counts?|is (?:taken|used|right|kept)|do (?:i|we) (?:key|take|use|keep)|should i .*)$`,
  `^(?:does|do|will|is|are) (?:it|barover|they|the readings|the program) (?:take|use|be|get)? ?(?:the )?(?:average|averaged|mean|median|middle)\\b.*`,
]
const DOUBTED = [
  `^(?:and )?(?:why|what)(?: (?:is|was|does|do|for|happens|makes|made))?(?: (?:it|this|that|they|the figure|the reading|if))? ?(?:doubted|doubtful|doubt|questioned|asking|not (?:taken|believed|accepted)|refused)\\b.*`,
  `^(?:why|how come) (?:does|did|is|won't|doesn't|will) (?:it|barover|the program)(?: not)? (?:take|accept|believe|doubt|want|like|ask|taken?|asking)\\b.*`,
  `^how (?:far|much) (?:off|out|over|under|above|below|apart) (?:is|was|are) (?:it|this|that|the figure|the reading|they)\\b.*`,
  `^what (?:if|happens if|happens when) (?:i|we) (?:keep|drop|take|accept|measure) (?:it|this|that|the figure|again)(?: .*)?$`,
]
const UNSTEADY = [
  `\\b(?:jumps?|jumping|swings?|swinging|flickers?|flickering|drifts?|drifting|wanders?|wandering|fluctuat\\w+|keeps? (?:changing|moving|climbing|falling|going)|keeps? on \\w+ing|goes up and down|going up and down|up and down|not (?:steady|stable|stand still|standing still|settle\\w*)|unsteady|unstable|(?:won't|will not|does not|doesn't) (?:settle|stand still|stop|stay))\\b`,
  `^(?:the |my )?(?:meter|gauge|micrometer|thermometer|it|reading|figure) (?:shows|reads|says|gives) -?[\\d.,]+ ?\\S* ?(?:then|and then|and|now|but then|or) -?[\\d.,]+.*`,
  `^how long (?:does|do|will|must|should) (?:it|i|we|the \\w+)(?: have to| need to)? (?:settle|stand still|to settle|take to settle|steady)\\b.*`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [OUT_ASKED, LEFT_OUT_ASKED, DOUBT_ASKED, UNSTEADY_ASKED] = [OUT, LEFT_OUT, DOUBTED, UNSTEADY].map(
  compiled,
)

/** Null: the question is none of these, or no figure is asked here. `text`: as `heardAs` gives it. */
export function readingFateLines(
  defs: Definitions,
  state: State,
  text: string,
  now: Instant,
): string[] | null {
  const prompt = next(defs, state)
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  if (is(UNSTEADY_ASKED)) return unsteadyLines(defs, state, prompt, now)
  if (prompt.kind === 'doubt' && (is(DOUBT_ASKED) || is(OUT_ASKED)))
    return [...whyLines(defs, state, prompt), ...STANDS]
  if (prompt.kind !== 'read' && prompt.kind !== 'doubt') return null
  if (is(DOUBT_ASKED))
    return [
      'No figure is doubted here now. One that lies outside what is believed is asked about: 1 measured again, 2 mistyped, 3 kept, with why.',
    ]
  if (is(LEFT_OUT_ASKED)) return [...ruleLines(defs, prompt), ...termLines('repeats')]
  return is(OUT_ASKED) ? [KEY_IT, DOUBT_SAID, ...STANDS, ...atHandLines(defs, state, now)] : null
}

const KEY_IT = 'Key what the instrument shows, whatever it comes to: a reading has no good or bad here.'
const DOUBT_SAID =
  'One outside what is believed of this part is asked about: 1 measured again, 2 mistyped, 3 kept, with why.'
const STANDS = [
  'Out of a limit is told by the verdict, on all readings; then a lead decides. No reading is dropped for it.',
]

/** The median of the repeats, as `combineRepeats` takes it. */
function ruleLines(defs: Definitions, prompt: Extract<Prompt, { kind: 'read' | 'doubt' }>): string[] {
  const { repeats, title } = asKind(prompt.step, 'read').step
  const { at_least: least, at_most: most, within } = repeats
  return [
    'Nobody averages or leaves out: all that are keyed stay, and the median counts once those in the middle agree.',
    `${title}: ${least} to ${most} readings, those in the middle within ${alikeWithin(defs, within)}.`,
    'One that was keyed wrong is put right with correct; one that cannot be taken is n/a, and what rests on it is HOLD.',
  ]
}

/** Null: nothing is read here. */
function unsteadyLines(defs: Definitions, state: State, prompt: Prompt, now: Instant): string[] | null {
  if (
    prompt.kind === 'evidence' &&
    (prompt.item.evidence.kind === 'gas' || prompt.item.evidence.kind === 'measured')
  ) {
    const { evidence } = prompt.item
    return [
      `Asked here: ${evidence.ask}`,
      ...(evidence.kind === 'gas'
        ? [WORST]
        : ['One that does not stand still is no figure yet: wait, and find out why.']),
      'A figure that climbs or falls is a change in there: come out and stand clear, and find out why. Common practice, no source.',
      ...atHandLines(defs, state, now),
    ]
  }
  if (prompt.kind !== 'read' && prompt.kind !== 'doubt') return null
  const { step } = asKind(prompt.step, 'read')
  const id = prompt.kind === 'read' ? prompt.instrument : (state.doubt?.instrument ?? '')
  const kind = instrumentById(defs, id)?.kind
  const how = kind === undefined ? undefined : step.how[kind]
  return [
    ...(step.text === undefined ? [] : [`The sheet says: "${step.text}"`]),
    ...(how === undefined ? [] : [`How: "${how}"`]),
    ...ruleLines(defs, prompt),
    ...(quotedLines(defs, state, 'what is a set-check')?.slice(1, 3) ?? []),
    ...atHandLines(defs, state, now),
  ]
}

const WORST =
  'Where it moves, the worse figure is keyed: of oxygen the one furthest from 20.9, of what burns or poisons the most. Common practice, no source.'
