// Whether it may run on, and what is done at a plate that bears another tag. No leave is given here: a lead decides, and a wrong plate ends
// the work there.
import { type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import type { Instant } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { judgedIds } from '../papers/limit-passages.ts'
import { watchedLines } from './answer-asked.ts'
import { atHandLines } from './at-hand.ts'
import { DECISION_SAYS } from './decision-words.ts'
import { termLines } from './terms.ts'

const MACHINE =
  '(?:it|this|that|(?:the |this |that |my |our )?(?:machine|compressor|unit|cylinder|bore|liner|rod|piston|rings?|part|engine|thing|valves?|packing|one))'
const SPAN =
  '(?:another|one more|a(?: further| whole)?|the|until|till|to|for|next|through|\\d+|a few|some|how many|how long|longer|on)'
const RUN =
  '(?:run|runs|running|last|lasts|hold|holds|go|go on|carry on|do|make it|survive|stay|work|be used|be run|keep (?:going|running)|continue|serve)'
const RUN_ON = [
  `^(?:can|could|will|would|may|might|should|does|is it ok (?:if|to)|must) (?:i |we |they |you |somebody )?(?:let |leave |keep |have |put )?${MACHINE}? ?(?:still |just |safely |be )*${RUN}\\b.*\\b(?:${SPAN} )?(?:years?|months?|weeks?|days?|seasons?|hours?|overhauls?|shutdowns?|outages?|turnarounds?|winter|summer|longer|on|again|as it is|like (?:this|that))\\b.*`,
  `^how (?:long|much longer|many (?:more )?(?:hours|years|months)) (?:can|will|could|may|would|does) ${MACHINE} (?:still )?${RUN}\\b.*`,
  `^(?:is|will|are) ${MACHINE} (?:still )?(?:be )?(?:good|fit|ok|okay|enough|fine|all right|bad|worn out) (?:for|until|till|to (?:run|last|go)) .*`,
  `^(?:can|could|may|should) (?:i|we) (?:run|use|leave|keep|put|start|operate|restart) ${MACHINE} (?:back |again |on |in(?:to)? (?:service|use)|as it is|like (?:this|that)|another|for|until|till|a ).*`,
  `^(?:can|could|may|should|will) ${MACHINE} (?:go|be put|be taken|be) back (?:in|into|on|to)\\b.*`,
  `^(?:when|how soon) (?:does|must|should|will|do) (?:i |we )?${MACHINE} ?(?:have to |need to |has to )?(?:be )?(?:renewed|replaced|rebored|bored|honed|boring|honing|overhauled|changed|need (?:renewing|boring|a new)|come out|wear out)\\b.*`,
  `^(?:how many|how much) (?:hours|life|time|years|months|wear)(?: is| are| has| have| does)?(?: ${MACHINE})? ?(?:left|to go|remain\\w*|still)?(?: (?:in|on|of|for|have|got|left) ${MACHINE})?(?: (?:left|to go|still|have|got))*$`,
  `^(?:can|may|could|should|shall) (?:i|we|they|somebody) (?:run|start|use|operate|restart|leave|keep) ${MACHINE}(?: (?:up|again|now|running|on|going))*$`,
  `^(?:will|can|does|would|could) ${MACHINE} (?:still )?(?:run|work|hold|do|last|be used|be run)(?: (?:again|now|like (?:this|that)))*$`,
]
const FATE = [
  `^(?:does|do|will|must|should|is) ${MACHINE} (?:need|want|have to have|get|take|require|have to be|need to be|be|due for)(?: (?:to be|to have))? ?(?:an? |the )?(?:new )?(?:liner|sleeve|bore|boring|rebor\\w*|re-bor\\w*|bored|honing|honed|rings?|renew\\w*|replac\\w*|overhaul\\w*|scrap\\w*|worn out|finished|done for|past it)\\b.*`,
  `^is ${MACHINE} (?:scrap|worn out|finished|done for|past it|shot|gone|condemned|a write-off)(?: .*)?$`,
  `^(?:can|could|should|must) ${MACHINE} be (?:bored|rebored|re-bored|honed|relined|sleeved|saved|scrapped|repaired|reused|re-used|used again)\\b.*`,
]
const PLATE =
  '(?:(?:name ?|tag ?|data ?|rating ?)?plates?|tags?(?: numbers?)?|(?:machine|cylinder|compressor|throw|unit) (?:number|tag|name))'
const BAD =
  "(?:wrong|different|another|other|not (?:the )?(?:same|right|match\\w*|agree\\w*)|does(?: not|n't) (?:match|agree|fit)|do(?: not|n't) (?:match|agree)|mismatch\\w*|bad|swapped|something else)"
const WRONG_PLATE = [
  `^(?:can|may|could|should|shall|must|do|does|is|what|how|if|why|am|are|when|will)\\b.*\\b${BAD} ${PLATE}\\b.*`,
  `^(?:can|may|could|should|shall|must|do|does|is|what|how|if|am|are|when|will)\\b.*\\b${PLATE} (?:is|are|was|reads?|says?|shows?|bears?|of|on it)?(?: \\w+){0,3} ?${BAD}\\b.*`,
  `^(?:the |this |my )?${PLATE} (?:is|does|says|reads|shows|do)(?: \\w+){0,2} ?${BAD}\\b.*`,
  `^(?:am i|are we|is (?:this|it)) (?:at |on )?(?:the |a )?wrong (?:machine|compressor|cylinder|throw|unit|one)\\b.*`,
  `^what (?:if|when|do i do (?:if|when|at|on)) (?:i |it |this |we |its |it's |i'm |this is )?(?:am |are |is |'m )?(?:at |on )?(?:the |a )?(?:wrong|other|different) (?:machine|compressor|cylinder|throw|unit)\\b.*`,
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [RUN_ASKED, FATE_ASKED, PLATE_ASKED] = [compiled(RUN_ON), compiled(FATE), compiled(WRONG_PLATE)]

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function runOnLines(defs: Definitions, state: State, text: string, now: Instant): string[] | null {
  if (/\b(?:gas|test|meter|locks?|wait|tomorrow|lunch|tonight|overnight|shift|break)\b/.test(text))
    return null
  const isFate = FATE_ASKED.some((one) => one.test(text))
  if (!isFate && !RUN_ASKED.some((one) => one.test(text))) return null
  const verdicts = verdictLines(defs, state)
  if (isFate)
    return [FATE_IS, ...verdicts, ...beyondLines(defs), ...decideLines(defs, state), ...termsIn(text)]
  return [
    'Barover gives no leave to run, and tells no date. A lead decides, and names until when; the site hands the machine back.',
    ...(/\b(?:start|restart|run|running|operate|service)\b/.test(text) ? [START] : []),
    ...verdicts,
    ...decideLines(defs, state),
    ...(verdicts.some((line) => line.includes('MONITOR')) ? watchedLines(defs).slice(0, MOST) : []),
    'Wear in 1000 h and the hours left to the limit, from several overhauls: barover history, by its early end. They are no promise.',
    ...atHandLines(defs, state, now),
  ]
}

const START =
  'Nothing is started by this sheet: people, block and locks come first, and the word safe shows what hangs and stands.'
const NONE_YET = 'No verdict stands yet in this job.'
const FATE_IS =
  'Whether it is bored, honed, renewed, kept or scrapped a lead decides. A verdict only proposes, and stands on no single figure.'

function verdictLines(defs: Definitions, state: State): string[] {
  const judges = defs.steps.filter(({ step }) => step.kind === 'judge')
  const given = judges.flatMap(({ id, number, step }) => {
    const one = state.verdicts[id]
    return one === undefined ? [] : [`Sheet ${number}, ${step.title}: ${one.verdict.result.verdict}.`]
  })
  const open = judges.filter(({ id }) => state.verdicts[id] === undefined).length
  return [
    ...(given.length === 0 ? [NONE_YET] : given.slice(0, MOST)),
    ...(given.length > 0 && open > 0 ? [`Not judged yet: ${open} of ${judges.length}.`] : []),
  ]
}

/** What a verdict proposes beyond each limit that this job judges by. */
function beyondLines(defs: Definitions): string[] {
  const limits = Object.values(limitsFor(defs, judgedIds(defs, null))).flatMap((limit) => limit ?? [])
  const named = (word: 'REWORK' | 'REPLACE') =>
    limits
      .filter(({ beyond }) => beyond === word)
      .map(({ characteristic }) => characteristicOf(characteristic as CharacteristicId).label)
  return (['REWORK', 'REPLACE'] as const).flatMap((word) =>
    named(word).length === 0
      ? []
      : [
          `Beyond its limit ${word}: ${named(word)
            .slice(0, MOST + 2)
            .join(', ')}.`,
        ],
  )
}

/** What the words of the question mean. */
function termsIn(text: string): string[] {
  return [/\bhon/.test(text) ? 'hone' : '', /\b(?:liner|sleeve)/.test(text) ? 'liner' : ''].flatMap((term) =>
    term === '' ? [] : termLines(term),
  )
}

/** More would push the question off a small screen. */
const MOST = 3

/** Where a lead decides, and what would let it go on. */
function decideLines(defs: Definitions, state: State): string[] {
  const sheets = defs.steps.flatMap(({ number, step }) => (step.kind === 'decide' ? [String(number)] : []))
  const isHere = next(defs, state).kind === 'decide'
  return [
    ...(sheets.length === 0
      ? []
      : [`Decided at sheet ${list(sheets.slice(0, MOST), 'or')}, if it is asked.`]),
    ...(isHere ? [`accept: ${DECISION_SAYS.accept}`, `concession: ${DECISION_SAYS.concession}`] : []),
  ]
}

/** Null: no plate is asked about that bears another tag. */
export function wrongPlateLines(
  defs: Definitions,
  state: State,
  text: string,
  now: Instant,
): string[] | null {
  if (!PLATE_ASKED.some((one) => one.test(text)) || /\b(?:number|key|typed?|enter\w*) the wrong\b/.test(text))
    return null
  return [
    'No: where the plate bears another tag, nothing is done. It may be another machine, on which no lock of yours hangs.',
    'Draw back, go by the plate to the right one, and key what stands on it. Where it is missing, or both cannot be right, a lead finds out which machine it is before anything is done.',
    state.machineNamed
      ? 'If work was begun at another machine: everybody comes out, say STOP. What was shown and read there is of that machine: a lead finds out what of this record is void.'
      : 'A tag that is another goes on record as it was keyed, and opens nothing.',
    ...atHandLines(defs, state, now),
  ]
}
