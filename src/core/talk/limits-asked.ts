// What a judgement is held against, one line each limit, with the word that stands beyond it: REWORK or REPLACE is no guess, each limit
// of the record says it of itself.
import { isPocketLimit } from '../cycle/pocket-limits.ts'
import type { CharacteristicId } from '../definition/characteristics.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { judgeStep } from '../job/judge-step.ts'
import { limitsFor } from '../job/limits.ts'
import { current, next, type Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import type { Limit } from '../metrology/limit.ts'
import { limitFigure } from '../papers/limit-passages.ts'
import { governsText, judgedBy } from '../practice/governable.ts'
import { shownUp } from '../units/index.ts'
import { FALLBACK, formatShare } from './answer-asked.ts'
import { bareLength } from './names.ts'
import { restsOn } from './reading-asked.ts'

const BEYOND = '(?:rework|replace|replacing|replacement|reworking)'
const ALL = '(?:limits|bounds|bars)'
const ASKED = [
  `^(?:show |list |tell |give )?(?:me |us )?(?:all )?(?:the |its |their )?${ALL}$`,
  `^(?:what|which|where)(?: are|'s| is)(?: all)?(?: the| its| their)* ${ALL}(?: (?:here|for (?:it|this|the \\w+)|of (?:it|this|the \\w+)|there|it is held against))?$`,
  `^what (?:is|are|will be|does) (?:it|this|they|the \\w+)(?: be)? (?:held|judged|measured) against$`,
  `^(?:is (?:it|this|that) |so |a )?${BEYOND} or (?:is it )?(?:a )?${BEYOND}$`,
  `^(?:which|what)(?: of the| one of the)? limits? (?:asks?(?: for)?|means?|makes?(?: it)?|leads? to|gives?|is|are|says?|calls? for|ends? in)(?: a| an| for)? ${BEYOND}(?: and which .*)?$`,
  `^(?:when|where|from when|from where|at what|past what|above what|beyond what)(?: limit)? (?:is|do|does|must|should|would|will|has)(?: (?:it|i|we|you|they|this|that|the \\w+|be|say|call|key|to|a|an|for))* ${BEYOND}(?: and when .*)?$`,
  `^(?:what|which)(?: \\w+)? (?:makes?|would make|means?|decides|tells?)(?: (?:it|that|this|whether|if|me|us|is|be|the \\w+))* (?:a )?${BEYOND}(?: or (?:a )?${BEYOND})?$`,
  `^(?:how|by what) (?:do|can|should|would|will|could|does)(?: (?:i|we|you|one|it|know|tell|see|decide|choose|say|if|whether|be|is|a|to|between|from))* ${BEYOND}(?: (?:or|and|from) (?:a )?${BEYOND})?$`,
  `^(?:what is|what's|tell me) the difference (?:between|of) ${BEYOND} (?:and|to|from|or) ${BEYOND}$`,
  '^(?:when|from when|from what|from where|where)(?: share)? (?:is|do|does|should|would|will)(?: (?:it|i|we|that|be|say|call|key|to|a))* (?:monitor|watch(?:ed)?)$',
].map((one) => new RegExp(one, 'i'))

type JudgeStep = PlacedStep & { readonly step: Extract<PlacedStep['step'], { kind: 'judge' }> }

/** Null: it is not asked, or nothing ahead or behind is judged by limits. `text`: as `heardAs` gives it. */
export function limitsAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  return ASKED.some((one) => one.test(text)) ? limitLines(defs, state) : null
}

/** The limits of the judgement at hand: of the one that is asked now, of what is read now, of the next one, of the last. */
export function limitLines(defs: Definitions, state: State): string[] | null {
  // The limit of that very line comes first.
  if (isGas(next(defs, state))) return null
  const judge = judgeAtHand(defs, state)
  if (judge === null) return null
  const names = judgedBy(defs, judge.id).filter((one): one is CharacteristicId => !isPocketLimit(one))
  if (names.length === 0) return null
  const limits = limitsFor(defs, names)
  const known = names.flatMap((id) => limits[id] ?? [])
  const none = names.filter((id) => limits[id] === undefined)
  const shares = new Set(known.map(({ monitorFrom }) => monitorFrom))
  const [share] = shares
  return [
    `Sheet ${judge.number}, ${judge.step.title}, is held against:`,
    ...names.flatMap((id) => {
      const limit = limits[id]
      return limit === undefined ? [] : [`  ${rowText(defs, id, limit, shares.size > 1)}`]
    }),
    ...(none.length === 0 ? [] : [`  ${list(none.map(governsText))}: NO LIMIT on record, so HOLD.`]),
    ...(known.length === 0
      ? []
      : [
          ...(shares.size === 1 && share !== undefined
            ? [`MONITOR from ${formatShare(share)} of a limit on${sizeShare(defs, names)}.`]
            : []),
          'Beyond: outside by more than the measuring error. Outside or inside by less: HOLD. The worst word of all is the verdict.',
          ...errorLines(defs, state, judge),
          ...(defs.machine.simple_acceptance === undefined
            ? []
            : [
                'Where no measuring error is known it is compared without one, as the record allows: never better than MONITOR.',
              ]),
          `Source: ${sourcesOf(known)}.`,
          ...(known.some(({ from }) => from !== 'machine') ? [FALLBACK] : []),
        ]),
  ]
}

/** How much the readings that are in are in doubt by: once they are all in, before the verdict stands. */
function errorLines(defs: Definitions, state: State, judge: JudgeStep): string[] {
  const prompt = next(defs, state)
  if (prompt.kind !== 'judge' || prompt.step.id !== judge.id) return []
  const record = judgeStep(defs, state, judge, '')
  if (record.compute !== 'bore_form') return []
  const { differenceU, readingU } = record.inputs
  const unit = defs.machine.shop_units.length
  // A digit more than a size has: a figure that is near its limit hangs on it.
  const error = (metres: number) => shownUp(metres / (unit === 'in' ? 0.0254 : 0.001), unit === 'in' ? 5 : 4)
  const largest = record.result.form?.largest.valueM
  return [
    typeof differenceU === 'number' && typeof readingU === 'number'
      ? `Measuring error here: ${error(differenceU)} of a difference, ${error(readingU)} of a size, ${unit}.`
      : 'Measuring error here: not known, as the sheet will say.',
    ...(largest === undefined
      ? []
      : [
          `Judged at 20 degC: the largest is ${bareLength(defs, largest, 5)} ${unit} there. readings shows sizes as they were read.`,
        ]),
  ]
}

const isGas = (prompt: Prompt) => prompt.kind === 'evidence' && prompt.item.evidence.kind === 'gas'

/** A size is worn from what it was made to, and not from nothing. */
const sizeShare = ({ machine: { bore } }: Definitions, names: readonly CharacteristicId[]): string =>
  names.includes('largest-diameter') ? `; of largest, of the way from ${bore.nominal.text} to it` : ''

/** The share of which it is MONITOR is said once where all have the same. */
function rowText(defs: Definitions, id: CharacteristicId, limit: Limit, withShare: boolean): string {
  const way = limit.bound === 'at-most' ? 'at most' : 'at least'
  const watch =
    limit.monitorFrom === undefined || !withShare
      ? ''
      : `, MONITOR from ${formatShare(limit.monitorFrom)} of it`
  return `${governsText(id)}: ${way} ${limitFigure(defs, id, limit)}${watch}, beyond it ${limit.beyond}`
}

/** Once where all have the same; else each, in the order of the limits. */
function sourcesOf(limits: readonly Limit[]): string {
  return [
    ...new Set(limits.map(({ source, from }) => `${source}${from === 'machine' ? '' : ', fall-back'}`)),
  ].join('; ')
}

function judgeAtHand(defs: Definitions, state: State): JudgeStep | null {
  const prompt = next(defs, state)
  const judges = defs.steps.flatMap((one) => (one.step.kind === 'judge' ? [asKind(one, 'judge')] : []))
  if (prompt.kind === 'judge') return judges.find(({ id }) => id === prompt.step.id) ?? null
  if (prompt.kind === 'decide') {
    const { scope, step } = asKind(prompt.step, 'decide')
    return judges.find(({ id }) => id === scope + step.about) ?? null
  }
  const here = current(defs, state)?.placed ?? null
  const at = here?.number ?? 0
  const resting = here === null ? undefined : judges.find((one) => restsOn(defs, one, here.id))
  return resting ?? judges.find(({ number }) => number >= at) ?? judges.at(-1) ?? null
}
