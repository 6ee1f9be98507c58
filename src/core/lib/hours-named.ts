// Running hours as a lead writes them in a reason: `not later than 8000 h`, `in 4 000 running hours`.

const NAMED = /(?<![\d.,])(?:\d{1,3}(?:[ ,.\u00a0]\d{3})+|\d+)\s?(?:h|hrs|hours?|running hours)\b/gi

/** Each figure with its unit as it stands in the words, and the hours it comes to; a dot or a comma before three figures parts thousands. */
export function hoursNamed(words: string): { readonly text: string; readonly hours: number }[] {
  return (words.match(NAMED) ?? []).map((text) => ({ text, hours: Number(text.replace(/\D/g, '')) }))
}

/** Below a hundred it is a time of work or of waiting. Common practice, no source. */
const LEAST = 100

/** The first figure of hours in the words that is long enough for a deadline, as it stands there; null where there is none. */
export function deadlineNamed(words: string): string | null {
  return hoursNamed(words).find(({ hours }) => hours >= LEAST)?.text ?? null
}
