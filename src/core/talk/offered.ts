// A choice picked by its number or by its word, in full or as far as that tells it from the others. The number of a word is the same
// whatever is open, and one that is not open says why, so that a number keyed from habit never means another thing.
import { type Offer, offersFor } from '../job/admit-disposition.ts'
import { asKind, type PlacedStep } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { list } from '../lib/wording.ts'

/** Fewer letters are more likely a slip than the beginning of a word. */
const LEAST_LETTERS = 2

/** What a lead may decide at the step, and what not and why. */
export function offersAt(state: State, placed: PlacedStep): Offer[] {
  return offersFor(verdictAt(state, placed), asKind(placed, 'decide').step.choices)
}

/** The verdict that the step decides about; HOLD where there is none. */
export function verdictAt(state: State, placed: PlacedStep): string {
  const { step, scope } = asKind(placed, 'decide')
  return state.verdicts[scope + step.about]?.verdict.result.verdict ?? 'HOLD'
}

/** `1  accept`, `1  accept: NOT OPEN, it could not be judged`; `says` is told behind what is open. */
export function offerLines<C extends string>(
  offers: readonly Offer<C>[],
  says: (choice: C) => string = () => '',
): string[] {
  return offers.map(({ choice, barred }, i) =>
    barred === null
      ? `${i + 1}  ${says(choice) === '' ? choice : `${choice.padEnd(11)}${says(choice)}`}`
      : `${i + 1}  ${choice}: NOT OPEN, ${barred}`,
  )
}

/** The choices that the line names: by its number one, by letters all that begin with them. */
function named<C extends string>(offers: readonly Offer<C>[], line: string): Offer<C>[] {
  const text = line.trim().toLowerCase()
  if (/^\d{1,2}$/.test(text)) return offers.slice(Number(text) - 1, Number(text))
  if (text.length < LEAST_LETTERS || !/^[a-z]+$/.test(text)) return []
  const whole = offers.filter(({ choice }) => choice === text)
  return whole.length > 0 ? whole : offers.filter(({ choice }) => choice.startsWith(text))
}

/** Whether the line names one choice, open or not. */
export function namesOffer(offers: readonly Offer[], line: string): boolean {
  return named(offers, line).length === 1
}

/** The choice, or in a sentence why the line is none. */
export function pickedOffer<C extends string>(
  offers: readonly Offer<C>[],
  line: string,
): { readonly choice: C } | { readonly no: string } {
  const found = named(offers, line)
  const [one] = found
  if (one === undefined) {
    const open = offers.flatMap(({ barred }, i) => (barred === null ? [String(i + 1)] : []))
    return { no: `Key ${list(open, 'or')}, or one of the words behind them.` }
  }
  if (found.length > 1)
    return {
      no: `Is it ${list(
        found.map(({ choice }) => choice),
        'or',
      )}? Key the number or more of the word.`,
    }
  return one.barred === null
    ? { choice: one.choice }
    : { no: `${one.choice} is not open here: ${one.barred}. Its number stays its own; key another.` }
}
