// What a lead asks where a decision is to be made: why the verdict is what it is, who measured with what, what it was before, what is open,
// what is to be written. Told from the record; nothing is decided by it.
import { judgeReads } from '../definition/judge-reads.ts'
import { asKind, type Definitions, instrumentById, type PlacedStep, stepById } from '../job/definitions.ts'
import { gateState, gatesOf } from '../job/gate.ts'
import { next, type Prompt } from '../job/next.ts'
import { placesOf } from '../job/places.ts'
import { type State, standing } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { list } from '../lib/wording.ts'
import { watchedLines } from './answer-asked.ts'
import { changeLines } from './changes.ts'
import { DECISION_SAYS } from './decision-words.ts'
import { verdictAt } from './offered.ts'
import { openLines } from './open-items.ts'
import { whyLines } from './tell-about.ts'

const VERDICT = '(?:accept|monitor|rework|replace|hold|stop)'
const WHY = [
  `^(?:why|how come|what makes|because of what)(?: (?:is|was|does|did))?(?: (?:it|this|that|the verdict|the bore|it's))?(?: (?:is|be|say|says|a|an|on|to))* ?(?:only )?(?:${VERDICT}(?:ed)?|not (?:ok|good|accepted|accept)|this|so(?! (?:many|much|few|long|often)\\b)|the verdict)\\b.*`,
  '^what (?:governs|governed|is governing|decides it|is the worst|is the problem|is wrong with (?:it|the bore|the verdict))\\b.*',
  '^how (?:close|near|far|much|tight|big)\\b.*\\b(?:limits?|margin|over|under|left on)\\b.*',
  '^how (?:sure|certain|accurate|exact|reliable|good) (?:is|are) (?:it|this|that|the \\w+|they)(?: \\w+)?$',
  '^what (?:is|was) the (?:margin|share|measuring error|error|uncertainty)\\b.*',
]
const CHANGE = [
  '^(?:can|may|could|how (?:do|can)|should|must) (?:i|we|somebody|a lead|the lead) (?:change|alter|overrule|override|overturn|reject|ignore|correct|reopen|re-open|redo|lift) (?:the |this |that )?(?:verdict|judgement|it|result|monitor|hold|rework|replace)\\b.*',
  "^what if (?:i|we|the lead) (?:disagree|don't agree|do not agree|think (?:it is|it's|otherwise)|see it otherwise)\\b.*",
]
const WHO = [
  '^who(?: has| have)? (?:measured|read|took|keyed|did|made|taken|recorded|wrote)(?: (?:it|this|that|them|these|the \\w+(?: \\w+)?|all))*$',
  '^(?:which|what) (?:instrument|gauge|micrometer|meter|thermometer)s?(?: (?:was|were|did|has|have|been|they|he|we))* ?(?:used|use|taken|measured with|it measured with|read with)?(?: .*)?$',
  '^(?:was|were|is|are) (?:the |their |his |that )?(?:gauge|instrument|micrometer|meter|thermometer)s? (?:in |out of |still )*(?:calibrat\\w+|date|checked|ok|good|right)\\b.*',
  '^(?:who|did anybody|did somebody|was it) (?:has )?witness(?:ed)?(?: (?:it|this|that|the .*))?$',
  '^with (?:what|which)(?: \\w+)? was it (?:measured|read)\\b.*',
]
const BEFORE = [
  '^what (?:was|were) (?:it|this|that|the \\w+|they)(?: \\w+)? (?:last|before|previously|at the last|in the last|the time before)\\b.*',
  '^how (?:much|far|fast|quick(?:ly)?) (?:has|did|does|is|was) (?:it|this|the \\w+)(?: \\w+)? ?(?:worn|wear|wearing|grown|changed|change|gone|grow)\\b.*',
  '^(?:what is|is there) (?:the |a )?(?:trend|wear rate|rate of wear|history)\\b.*',
  '^(?:has|did) (?:it|the \\w+) (?:got|get|become|grown?|changed?|worn?|wear)(?: .*)?$',
]
const OPEN = [
  '^(?:is|are) (?:there )?(?:anything|any|something|everything|all)(?: \\w+)? (?:still )?(?:open|outstanding|undecided|unfinished|closed|left open|to decide)\\b.*',
  '^(?:were|was|is|are|did) (?:there )?(?:any(?:body|one|thing)? |a )?(?:stops?|corrections?|changes?|voids?|doubts?|notes?|findings?|call(?:ed)? stop|change anything|correct anything|alter anything)\\b.*',
  '^(?:did|has|have) (?:anybody|anyone|somebody|they|he|she) (?:change|correct|alter|void|stop|call|add|changed|corrected)\\w*\\b.*',
  '^what (?:is|are|was|were) (?:still )?(?:open|outstanding|undecided|changed|corrected|void|found)\\b.*',
]
const WRITE = [
  '^what (?:do|must|should|shall|have|has) (?:i|we|the lead|a lead)(?: (?:have to|need to|to))* (?:write|key|put|say|give|type|sign|fill in)\\b.*',
  '^(?:do|must|should) (?:i|we) (?:have to |need to )?(?:write|give|key|sign|say)(?: \\w+)* ?(?:reason|why|something|anything|it)\\b.*',
  '^(?:can|may|could|must|should) (?:i|we|a lead|the lead)(?: also)? (?:decide|do (?:it|this|that)|leave (?:it|this|that)) (?:later|tomorrow|another time|after|open|not now|undecided)\\b.*',
]

const compiled = (all: readonly string[]) => all.map((one) => new RegExp(one, 'i'))
const [WHY_ASKED, CHANGE_ASKED, WHO_ASKED, BEFORE_ASKED, OPEN_ASKED, WRITE_ASKED] = [
  ...[WHY, CHANGE, WHO, BEFORE, OPEN, WRITE].map(compiled),
]

/** Null: no decision is asked here, or the question is none of these. `text`: as `heardAs` gives it. */
export function verdictAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  const prompt = next(defs, state)
  const is = (patterns: readonly RegExp[] | undefined) => patterns?.some((one) => one.test(text)) === true
  if (
    is(OPEN_ASKED) &&
    /\b(?:open|outstanding|undecided|stops?|corrections?|changes?|changed?|corrected?|void|found|findings?)\b/.test(
      text,
    )
  )
    return prompt.kind === 'decide' ||
      prompt.kind === 'findings' ||
      /\bopen|outstanding|undecided\b/.test(text)
      ? [...openLines(defs, state), ...stopLines(state), ALL_OF_IT]
      : null
  if (prompt.kind !== 'decide') return null
  if (is(CHANGE_ASKED))
    return [...changeVerdict(state, prompt.step), ...whyVerdict(defs, state, prompt, false)]
  if (is(WRITE_ASKED)) return WRITTEN
  if (is(WHO_ASKED)) return whoMeasured(defs, state, prompt.step)
  if (is(BEFORE_ASKED)) return beforeLines(defs, state)
  return is(WHY_ASKED)
    ? whyVerdict(
        defs,
        state,
        prompt,
        /\b(?:sure|certain|accurate|exact|reliable|error|uncertainty)\b/.test(text),
      )
    : null
}

/** Of the sums of a bore those that are asked for, and where the rest stands; of any other verdict all of them. */
function whyVerdict(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { readonly step: PlacedStep }>,
  ofError: boolean,
): string[] {
  const all = whyLines(defs, state, prompt)
  const asked = all.filter((line) =>
    (ofError ? /^Measuring error|^Accepted only/ : /% of it used/).test(line.trim()),
  )
  if (asked.length === 0) return all
  return [
    `${verdictAt(state, prompt.step)}, because:`,
    ...asked.map((line) => `  ${line.trim()}`),
    ...(ofError || verdictAt(state, prompt.step) !== 'MONITOR' ? [] : watchedLines(defs).slice(0, MOST)),
    ofError
      ? 'why error shows what it is made of.'
      : 'The one with most of its limit used governs. why shows all the sums.',
  ]
}

const ALL_OF_IT =
  'What was corrected, doubted or void, stopped or left out, with who and when: barover review, on the log of this job.'

function stopLines({ stops }: State): string[] {
  const open = stops.filter(({ releasedBy }) => releasedBy === null).length
  return stops.length === 0
    ? ['No STOP was called on this job.']
    : [`STOP on this job: ${stops.length}, ${open === 0 ? 'none open' : `${open} OPEN`}.`]
}

function changeVerdict(state: State, step: PlacedStep): string[] {
  return [
    `No: ${verdictAt(state, step)} is worked out from the readings, and is what it is. It changes only with them: correct, or instrument.`,
    'Your decision stands beside it, with your reason; the list says which choices are open, and why another is not.',
  ]
}

const WRITTEN = [
  'After the choice: your reason in words, then your initials and PIN.',
  `accept: ${DECISION_SAYS.accept}`,
  `concession: ${DECISION_SAYS.concession}`,
  `hold: ${DECISION_SAYS.hold} leave keeps the job as it stands, with nothing decided.`,
]

function beforeLines(defs: Definitions, state: State): string[] {
  const lines = changeLines(defs, state)
  return lines.length === 0
    ? ['Nothing was read as found or as left, so nothing is told of before.']
    : [...lines, 'Over several jobs, with the hours left by the early end: barover history.']
}

/** By whom and with what each step was read that the verdict rests on; who witnessed the hold points. */
function whoMeasured(defs: Definitions, state: State, decide: PlacedStep): string[] {
  const { scope, step } = asKind(decide, 'decide')
  const judge = stepById(defs, scope + step.about)
  if (judge.step.kind !== 'judge') return []
  const { needed, optional } = judgeReads(judge.step)
  const steps = [...new Set([...needed, ...optional])].flatMap((id) => readStep(defs, scope + id))
  const by = steps.flatMap((placed) => {
    const all = placesOf(placed).flatMap(({ key }) => standing(state, key))
    if (all.length === 0) return []
    const people = [...new Set(all.map((one) => one.by ?? 'nobody known'))]
    const tools = [...new Set(all.map(({ instrument }) => instrument))]
    return [
      {
        tools,
        line: `Sheet ${placed.number}, ${placed.step.title}: keyed by ${list(people)}, with ${list(tools)}`,
      },
    ]
  })
  const tools = [...new Set(by.flatMap((one) => one.tools))]
  return [
    ...by.slice(0, MOST).map(({ line }) => `${line}.`),
    ...(by.length > MOST ? [`and ${by.length - MOST} more sheets.`] : []),
    ...tools.flatMap((id) => {
      const one = instrumentById(defs, id)
      return one === undefined
        ? []
        : [
            `${id}, ${one.title}: calibrated until ${one.calibration.due}, certificate ${one.calibration.certificate}.`,
          ]
    }),
    ...witnessed(defs, state),
  ]
}

/** More would push the question off a small screen. */
const MOST = 3

function readStep(defs: Definitions, id: string) {
  const placed: PlacedStep | undefined = defs.steps.find((one) => one.id === id)
  return placed?.step.kind === 'read' ? [asKind(placed, 'read')] : []
}

function witnessed(defs: Definitions, state: State): string[] {
  return gatesOf(defs).flatMap((gate) =>
    gate.step.evidence.flatMap((one) => {
      const given = one.kind === 'witness' ? gateState(state, gate.id).given[one.id] : undefined
      if (given === undefined) return []
      const at = readStamp(given.at)
      return [
        `Hold point ${gate.number}: witnessed by ${given.shown}${at === null ? '' : ` ${clockOf(at)}`}.`,
      ]
    }),
  )
}
