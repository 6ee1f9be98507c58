// What measuring error is, how large it is here, and what a share of a limit is a share of: terms by which a verdict is read.
import type { Definitions } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { limitLines } from './limits-asked.ts'
import { termLines } from './terms.ts'

const ERROR =
  /^(?:what is|what's|how (?:big|large|great|much|high|good|exact|accurate) is|explain|tell me) (?:the |a |an |my |our |its )?(?:measur(?:ing|ement) )?(?:error|uncertainty|accuracy)(?: (?:here|now|of (?:it|this|that)))?$|^(?:the )?measur(?:ing|ement) error$/i
const SHARE =
  /^(?:-?\d+(?:[.,]\d+)? ?(?:%|per ?cent) of (?:what|which(?: \w+)?)|what (?:does|is|do|are) (?:the |that |this |a )*(?:-?\d+(?:[.,]\d+)? ?)?(?:%|per ?cent|share)(?: of (?:it|the limit|a limit))?(?: used)?(?: mean)?|(?:used|share) of what|what is used|(?:a |the )?share of (?:a|the) limit)$/i

/** Null: the question is none of these. `text`: as `heardAs` gives it. */
export function errorAskedLines(defs: Definitions, state: State, text: string): string[] | null {
  if (SHARE.test(text)) return termLines('share of a limit')
  if (!ERROR.test(text)) return null
  const here = (limitLines(defs, state) ?? []).filter((line) => line.startsWith('Measuring error here'))
  const verdict = Object.values(state.verdicts).some((one) => !one.void)
  return [
    ...here,
    ...termLines('measuring error'),
    ...(verdict ? ['why error shows what that of the verdict is made of.'] : []),
  ]
}
