// Words held against each other in whatever form: `drop` and `slip` are in `dropped` and `slipped`.
import { stem, wordsOf } from '../papers/ask-words.ts'

export const formsIn = (text: string): ReadonlySet<string> =>
  new Set(wordsOf(text.toLowerCase()).map((word) => formOf(stem(word))))

/** A letter that was doubled before an ending is one again. */
export const formOf = (stemmed: string): string =>
  stemmed.length > 3 ? stemmed.replace(/([bdgmnprt])\1$/, '$1') : stemmed
