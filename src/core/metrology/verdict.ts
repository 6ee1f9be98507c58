// The six words a judgement can end in, and which of several words stands for the whole.

export type VerdictWord = 'ACCEPT' | 'MONITOR' | 'REWORK' | 'REPLACE' | 'HOLD' | 'STOP'

/** From least to most severe. HOLD outranks REPLACE: what could not be judged is not settled by what could. */
export const VERDICT_WORDS: readonly VerdictWord[] = [
  'ACCEPT',
  'MONITOR',
  'REWORK',
  'REPLACE',
  'HOLD',
  'STOP',
]

/** The most severe of the words. Nothing judged is HOLD, never ACCEPT. */
export function worst(words: readonly VerdictWord[]): VerdictWord {
  let most = -1
  for (const word of words) {
    const rank = VERDICT_WORDS.indexOf(word)
    if (rank < 0) throw new Error(`not a verdict word: ${String(word)}`)
    most = Math.max(most, rank)
  }
  return VERDICT_WORDS[most] ?? 'HOLD'
}
