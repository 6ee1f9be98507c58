// A numbered choice before any job is open, drawn or in plain lines: what is chosen from, and what a line keyed there means.
import { isMakeSafe, isStop } from './words.ts'

export interface Choice {
  readonly title: string
  readonly lines: readonly string[]
  readonly options: readonly string[]
  /** What 0 does: end the program, or go back to the choice before. */
  readonly zero: 'Leave' | 'Back'
  /** Why it is asked again, read before it wherever there is little room. @default nothing */
  readonly said?: readonly string[]
  /** Said on the word help. */
  readonly help: readonly string[]
}

export type ChoiceHeard =
  /** `which`: its place, from 0. */
  | { readonly is: 'chosen'; readonly which: number }
  | { readonly is: 'left' }
  | { readonly is: 'safe' }
  | { readonly is: 'said'; readonly lines: readonly string[] }

export function hearChoice(choice: Choice, line: string): ChoiceHeard {
  const text = line.trim().toLowerCase()
  // No job is open that a STOP could block; whoever keys it wants what is behind it.
  if (isMakeSafe(text) || isStop(text)) return { is: 'safe' }
  if (/^(?:help|\?+)$/.test(text)) return { is: 'said', lines: choice.help }
  if (text === '0' || text === 'leave' || (text === 'back' && choice.zero === 'Back')) return { is: 'left' }
  const named = namedIn(choice, text)
  if (named !== null) return { is: 'said', lines: [named] }
  if (ABOUT_ALL.test(text)) return { is: 'said', lines: choice.help }
  const which = /^\d{1,2}$/.test(text) ? Number(text) - 1 : -1
  if (which >= 0 && which < choice.options.length) return { is: 'chosen', which }
  return { is: 'said', lines: [wanted(choice)] }
}

/** A line in words is answered by the option that speaks of the same: its number does it, and the words do nothing. */
function namedIn({ options }: Choice, text: string): string | null {
  const words = text.split(/[^a-z]+/).filter((word) => word.length > 3)
  const stems = words.map((word) => word.slice(0, 6))
  const at = options.findIndex((option) =>
    stems.some((stem) => ABOUT.test(stem) && option.toLowerCase().includes(stem)),
  )
  return at < 0 ? null : `Key ${at + 1}: ${options[at]}`
}

/** Asked of the choice itself: what is this, which one is for me. */
const ABOUT_ALL =
  /^(?:what(?:'s| is) (?:this|that|it|barover)|what (?:do|can|should) i (?:do|key|choose)|what now|which (?:one|of (?:them|these))|where (?:do|should) i (?:start|begin))\b/

/** Words that tell one option from the others. */
const ABOUT = /^(?:practi|traine|exampl|finish|resume|left$)/

/** `Key a number, 1 to 4, or 0 to leave.` */
export function wanted({ options, zero }: Choice): string {
  const out = zero === 'Back' ? '0 to go back' : '0 to leave'
  if (options.length === 0) return `Key ${out}.`
  return options.length === 1 ? `Key 1, or ${out}.` : `Key a number, 1 to ${options.length}, or ${out}.`
}
