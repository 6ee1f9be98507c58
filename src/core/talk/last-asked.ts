// What was read of the place that is asked when the machine was last open: told from the machine record, and never before the first figure of
// today is in, so that no eye is led by it.

import { recorded } from '../job/changes.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import { type Place, placesOf } from '../job/places.ts'
import { type State, standing } from '../job/state.ts'
import { list } from '../lib/wording.ts'
import { changeLines, figure } from './changes.ts'
import { placeName } from './names.ts'

const BEFORE =
  '(?:last time|the last time|the time before|the previous time|last overhaul|(?:at |in |on |from |after |since )?the (?:last|previous|former) (?:overhaul|opening|job|inspection|time|shutdown|visit|one)|last (?:overhaul|opening|job|inspection|shutdown|year)|before(?: this| today| now)?|previously|when (?:it|the machine|this) was last (?:open|opened|measured|read)|back then|in the past|years? ago)'
const IT =
  '(?:it|this|that|they|these|the (?:figure|reading|size|bore|diameter|place|value|number|gap|clearance|runout|rod|wear)(?: here)?|here)'
const LAST = [
  `^(?:and )?(?:what|how (?:much|big|large|wide|worn)) (?:was|were|did|is|has|had|have)(?: (?:been|we|they|i|you|somebody|the))* ?(?:${IT})?(?: (?:be|read|reads|measure|measured|get|got|find|found|show|showed|come|came|come to|have|keyed|taken|left|left at|at|been|here|out at))* ?${BEFORE}(?: .*)?$`,
  `^(?:what|which|is there an?|was there an?|is there any|do (?:i|we) have (?:an?|any)|show me the|tell me the|give me the)(?: (?:is|was|were|are))?(?: the| my| our)?(?: (?:old|previous|last|earlier|former|recorded))+ (?:figure|reading|size|value|number|measurement|one|overhaul(?:'s)? (?:figure|reading|size|value)|record)s?(?: (?:here|of (?:this|it|that)(?: place)?|for (?:this|it|here)|on record|of before|there|known))*$`,
  `^(?:what|how) (?:does|did) (?:${IT}) compare (?:to|with) (?:${BEFORE}|the last(?: .*)?)$`,
  `^(?:is|was|has|did) ${IT} (?:been )?(?:more|less|larger|smaller|bigger|the same|other|different|worse|better|grown|changed|change|grow|read|measured)(?: (?:than|as|as it was|from|since|at|in))*(?: it was)? ${BEFORE}(?: .*)?$`,
  `^last (?:time|overhaul|figure|reading)(?: here)?$`,
]
const WHEN_LAST =
  /^(?:when|how long ago|what (?:date|day|year)|at how many hours)(?: (?:was|is|did|were|has))* (?:it |this |the (?:machine|cylinder|bore|unit) )?(?:the |last |previous |been |it |we )*(?:overhaul(?:ed)?|opened|open|measured|inspected|inspection|opening|bored|apart)(?: (?:last|before|for the last time|previously|here|of (?:this|it)))*$/i
const compiled = LAST.map((one) => new RegExp(one, 'i'))
/** Of a gas, of locks or of the last thing that was keyed it is another question. */
const OTHER =
  /\b(?:gas|oxygen|o2|lel|h2s|air|locks?|test|entry|answer|keyed last|note|word|meter|calibrat\w+)\b/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function lastAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  if (WHEN_LAST.test(text)) return overhaulLines(defs)
  if (OTHER.test(text) || !compiled.some((one) => one.test(text))) return null
  const prompt = next(defs, state)
  if (prompt.kind === 'read') return placeLines(defs, state, prompt.step.id, prompt.place)
  if (prompt.kind === 'doubt') {
    const step = asKind(stepById(defs, prompt.doubt.step), 'read')
    const place = placesOf(step).find(({ key }) => key === prompt.doubt.place)
    return place === undefined ? null : placeLines(defs, state, step.id, place)
  }
  const lines = changeLines(defs, state)
  return lines.length === 0 ? [NONE_READ] : [...lines, MORE]
}

/** As the record writes them; what was renewed then stands with them. */
function overhaulLines({ machine: { overhauls = [] } }: Definitions): string[] {
  return overhauls.length === 0
    ? ['The machine record has no overhaul before this job, so no day of one is known.']
    : [
        'Overhauls of the machine record:',
        ...overhauls
          .slice(-MOST)
          .map(
            ({ day, hours, report, renewed = [] }) =>
              `  ${day}, at ${hours.text}, ${report}${renewed.length === 0 ? '' : `: made new or cut, ${list(renewed)}`}`,
          ),
      ]
}

const NONE_READ =
  'No place is asked here, and nothing was read as found or as left on this job, so nothing is told of before.'
const MORE = 'Over several jobs: barover history, on the folder of jobs.'

function placeLines(defs: Definitions, state: State, id: string, place: Place): string[] {
  const step = asKind(stepById(defs, id), 'read')
  const name = placeName(defs, id, place.key)
  const known = (defs.machine.overhauls ?? []).flatMap((one) => recorded(one, { step, place }))
  if (known.length === 0)
    return [`${name}: none is known. The machine record has no figure of it from an overhaul before.`]
  if (standing(state, place.key).length === 0)
    return [
      `${name}: ${known.length === 1 ? 'one figure' : `${known.length} figures`} of before ${known.length === 1 ? 'is' : 'are'} on record, and told once the first of today is in, so that no eye is led by it.`,
      'Key what the instrument shows; then ask again.',
    ]
  return [
    `${name}, by the machine record:`,
    ...known
      .slice(-MOST)
      .map((one) => `  ${one.on}: left at ${figure(defs, { si: one.si, u: one.u, step, place }, one.si)}`),
    'As it was read then, not brought to 20 degC; the next figure is read afresh, as the instrument shows it.',
    MORE,
  ]
}

/** More would push the question off a small screen. */
const MOST = 3
