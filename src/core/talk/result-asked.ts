// Whether it is good, asked once something was judged: the verdicts and the decisions as they stand, and never more.
import { type Definitions, stepById } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import { nonconformances } from '../job/nonconformance.ts'
import { openStop, type State } from '../job/state.ts'
import { quotedLines } from './answer-asked.ts'
import { deciderText, nonconformanceText } from './names.ts'

const PART =
  '(?:it|this|that|all|everything|we|i|they|the (?:whole (?:thing|job)|bore|liner|rod|piston|cylinder|machine|job|work|inspection|part|rings?|result|outcome|valve)s?)'
const GOOD =
  '(?:good|ok|okay|fine|bad|all right|alright|in order|passed|accepted|through|sound|worn out|rejected)'
const RESULT = [
  `^(?:is|are|was|were) ${PART} (?:(?:all|any|now|really|still|actually|in the end) )*${GOOD}(?: (?:or (?:not|bad|worn|no|isn't it|what)|now|then|in the end|after all|at the end|overall))*$`,
  `^(?:did|does|has|have) ${PART} (?:pass|passed|fail|failed|make it|made it|come out (?:good|ok|all right)|get through|got through)(?: (?:or (?:not|fail|failed)|then|now|in the end|it|the inspection|the test|after all))*$`,
  '^(?:what|how)(?: (?:is|was|did|does))* (?:the |our )?(?:result|outcome|verdict|conclusion|bottom line|end of it|final (?:word|verdict|result)|upshot)s?(?: (?:then|now|in the end|be|come out|say|of (?:it|this|the \\w+)|look))*$',
  `^how did (?:it|${PART}) (?:go|come out|turn out|end|do)(?: (?:then|in the end))*$`,
  '^(?:good|ok|okay|pass|passed|accepted) or (?:not|bad|fail|failed|no|rejected)$',
  `^(?:what|how) (?:does|do|did) (?:it|that|${PART}) (?:look|mean)(?: (?:then|in the end|now|like|overall))*$`,
]
const compiled = RESULT.map((one) => new RegExp(one, 'i'))

/** Null: nothing was judged that stands, or a figure is being read, or it is another question. `text`: as `heardAs` gives it. */
export function resultAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  if (!compiled.some((one) => one.test(text))) return null
  const { kind } = next(defs, state)
  // There it is the figure, or what is shown, that is asked about.
  if (kind === 'read' || kind === 'doubt' || kind === 'evidence' || kind === 'clear') return null
  const judged = defs.steps.flatMap((placed) => {
    const one = state.verdicts[placed.id]
    return one === undefined ? [] : [{ placed, one }]
  })
  if (judged.length === 0 || openStop(state) !== null) return null
  const open = nonconformances(defs, state).filter(({ stands }) => stands)
  const shown = judged.slice(-MOST)
  const lastWord = shown.at(-1)?.one.verdict.result.verdict ?? 'HOLD'
  return [
    ...(judged.length > MOST ? [`The last ${MOST} of ${judged.length} verdicts:`] : []),
    ...shown.map(({ placed: { number, step, id }, one }) => {
      const { verdict } = one.verdict.result
      return `Sheet ${number}, ${step.title}: ${one.void ? `VOID, was ${verdict}` : verdict}${decided(state, defs, id)}.`
    }),
    ...open
      .filter(({ decided: is }) => is === null)
      .map((nc) => `OPEN, no lead has decided: ${nonconformanceText(defs, nc)}.`),
    ...open
      .filter((nc) => stepById(defs, nc.step).step.kind === 'observe')
      .flatMap((nc) =>
        nc.decided === null
          ? []
          : [`${nonconformanceText(defs, nc)}: ${nc.decided.choice}, decided by ${deciderText(nc.decided)}.`],
      ),
    ...(quotedLines(defs, state, `what does ${lastWord} mean`)?.slice(1, 3) ?? []),
    'That is all the record says: no more is good by it, and whether it runs a lead decides, by permit and the maker’s manual.',
  ]
}

/** More would push the question off a small screen. */
const MOST = 3

/** What a lead made of the verdict of that step, where one did. */
function decided(state: State, defs: Definitions, judge: string): string {
  const of = Object.entries(state.dispositions).find(([id, one]) => {
    const placed = defs.steps.find((step) => step.id === id)
    return !one.void && placed?.step.kind === 'decide' && placed.scope + placed.step.about === judge
  })
  return of === undefined
    ? ''
    : `; decided: ${of[1].choice}, by ${of[1].person}: ${of[1].why.replace(/\.$/, '')}`
}
