// The characters of an entry: which ones cannot be read at all, which look-alikes are turned into plain ones knowingly,
// and how the person's own word is repeated back in a sentence.
import { type Refusal, refuse } from '../lib/result.ts'

export type Refused = { readonly ok: false; readonly error: Refusal }

/** Longest entry in characters; the longest honest reading with its unit is well under it. */
const MAX_CHARACTERS = 24
const SHOWN = 20

const UNSEEN = /[\p{C}\p{Zl}\p{Zp}]/u
const UNSEEN_ALL = /[\p{C}\p{Zl}\p{Zp}]/gu

/** At most `length` characters of what was typed, on one line, with anything that cannot be seen shown as `?`. */
export function shown(text: string, length: number = SHOWN): string {
  const plain = (cut: string) => cut.replace(/\p{Zs}/gu, ' ').replace(UNSEEN_ALL, '?')
  const characters = [...text.slice(0, 4 * length)]
  if (characters.length <= length) return plain(text).trim()
  return plain(`${characters.slice(0, length - 3).join('')}...`).trim()
}

/** The person's word in quotes. */
export function quoted(text: string): string {
  return `'${shown(text)}'`
}

/**
 * Full-width ASCII and the Unicode minus become plain ASCII, and every kind of space a plain one; outer spaces go.
 * Nothing else is changed: a general Unicode folding would turn one-half or a superscript into other figures.
 */
export function plainText(text: string): string {
  return text
    .replace(/[\uff01-\uff5e]/g, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
    .replace(/\u2212/g, '-')
    .replace(/\p{Zs}/gu, ' ')
    .trim()
}

/** Refuses text whose characters rule it out before any figure is looked at. */
export function refuseCharacters(typed: string): Refused | undefined {
  if (/^[\s\p{Z}]*$/u.test(typed)) {
    return refuse('empty', 'Nothing was keyed; key the figures you read.')
  }
  const word = quoted(typed)
  if (typed.length > 2 * MAX_CHARACTERS || [...typed].length > MAX_CHARACTERS) {
    return refuse(
      'too-long',
      `${word} is over ${MAX_CHARACTERS} characters; key one number and its unit only.`,
    )
  }
  if (UNSEEN.test(typed)) {
    return refuse(
      'character',
      `${word} holds a character that cannot be seen; key it again with plain figures.`,
    )
  }
  const plain = plainText(typed)
  if (/[^\P{Nd}0-9]/u.test(plain)) {
    return refuse('digits', `${word} holds figures of another script; key it with the figures 0 to 9.`)
  }
  if (/[\u00bc-\u00be\u2150-\u215f\u2189\u2044]|\d ?\/ ?\d/.test(plain)) {
    return refuse('fraction', `${word} is a fraction; key it as a decimal.`)
  }
  return undefined
}
