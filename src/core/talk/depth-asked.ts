// How far in the place at hand lies, in figures: the ends of ring travel by the machine record, and the station between them.
import { asKind, type Definitions } from '../job/definitions.ts'
import { next } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { bareLength } from './names.ts'

const ASKED =
  /^(?:how (?:far|deep)(?: in| into (?:it|the bore))?|(?:at )?(?:what|which) (?:depth|distance)|where exactly)(?: in)?\b(?!.*\b(?:am i|are we|off|apart|out|over|under|worn|score|groove|pit|mark)\b)/i

/** Null where it is not asked, or no place along a bore is being read. */
export function depthLines(defs: Definitions, state: State, question: string): string[] | null {
  if (!ASKED.test(question)) return null
  const prompt = next(defs, state)
  if (prompt.kind !== 'read') return null
  const { step } = asKind(prompt.step, 'read')
  const station = namedIn(step.stations, question) ?? prompt.place.station
  if (step.drawing !== 'bore' || station.in_counterbore === true) return null
  const { from, to } = defs.machine.bore.ring_travel
  const at = from.si + station.at * (to.si - from.si)
  return [
    `${station.label}: about ${bareLength(defs, at, 2)} ${defs.machine.shop_units.length} from the head-end face of the cylinder.`,
    `Ring travel there is ${from.text} to ${to.text}, by the machine record; the drawing marks the place.`,
    station.at >= 0 && station.at <= 1
      ? 'Within ring travel, clear of the ridge at its end and of any port.'
      : 'Past ring travel, on the strip, clear of the edge the rings left and of the counterbore.',
  ]
}

/** The one station that the question names, by a word of its label that no other has; undefined: none, or several. */
function namedIn<S extends { readonly label: string }>(
  stations: readonly S[],
  question: string,
): S | undefined {
  const asked: readonly string[] = question.toLowerCase().match(/\p{L}+/gu) ?? []
  const wordsOf = ({ label }: S): readonly string[] => label.toLowerCase().match(/\p{L}{3,}/gu) ?? []
  const named = stations.filter((one) =>
    wordsOf(one).some(
      (word) =>
        asked.includes(word) && stations.every((other) => other === one || !wordsOf(other).includes(word)),
    ),
  )
  return named.length === 1 ? named[0] : undefined
}
