// Words held against each other in whatever form: `drop` and `slip` are in `dropped` and `slipped`.
import { stem, wordsOf } from '../papers/ask-words.ts'

/** A word of two parts is in it whole too: `hand-wheel` is asked for as `handwheel`. */
export const formsIn = (text: string): ReadonlySet<string> =>
  new Set(
    [...wordsOf(text.toLowerCase()), ...wordsOf(joined(text.toLowerCase()))].map((word) =>
      formOf(stem(word)),
    ),
  )

const joined = (text: string) => (text.match(/\p{L}+(?:-\p{L}+)+/gu) ?? []).join(' ').replaceAll('-', '')

/** A letter that was doubled before an ending is one again. */
export const formOf = (stemmed: string): string =>
  stemmed.length > 3 ? stemmed.replace(/([bdgmnprt])\1$/, '$1') : stemmed
