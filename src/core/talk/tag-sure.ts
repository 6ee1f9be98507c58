// A tag that is spelled otherwise than on the plate, or is only the beginning of it, and a line that is no tag at all: asked about once, so
// that a slip of the hand or a sentence is not told as the wrong machine. What was keyed stays what was keyed. Any other tag goes on record
// at once, as it may be the wrong machine.
import { isSameTag, tagSigns } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import { questionIn } from './asked.ts'
import { ask, type Heard, input } from './heard.ts'

export interface TagSureAsk {
  readonly kind: 'tag-sure'
  readonly typed: string
  /** spelled: the signs of the plate, written otherwise. part: the beginning of them. words: a sentence, or a single sign. */
  readonly is: 'spelled' | 'part' | 'words'
}

/** A shorter beginning is no part of a tag, but another one or a slip. */
const LEAST_SIGNS = 4

/** Null where the line is taken as it stands: the tag itself, or one that is really another. */
export function sureOfTag({ machine }: Definitions, line: string): Heard | null {
  const typed = line.trim()
  const [signs, own] = [tagSigns(typed), tagSigns(machine.machine)]
  if (isSameTag(typed, machine.machine)) return null
  if (signs === own) return ask({ kind: 'tag-sure', typed, is: 'spelled' })
  if (isWords(typed) || signs.length === 1) return ask({ kind: 'tag-sure', typed, is: 'words' })
  if (signs.length < LEAST_SIGNS || !own.startsWith(signs)) return null
  return ask({ kind: 'tag-sure', typed, is: 'part' })
}

/** Letters and no figure: plates have one. Or what reads like a question, as `is 18 ok` does. */
const isWords = (text: string): boolean =>
  /\p{L}/u.test(text) && (!/\d/.test(text) || questionIn(text) !== null)

/** The tag of the record is named only where all of its signs were keyed: nobody can copy it from here. */
export function tagSureLines({ machine }: Definitions, { typed, is }: TagSureAsk): string[] {
  switch (is) {
    case 'spelled':
      return [
        `${typed} was keyed. Is ${machine.machine} meant, does the plate read that?`,
        '1  yes, that is on the plate',
        '2  no: the plate reads what was keyed',
      ]
    case 'part':
      return [
        `${typed} may be only a part of what stands on the plate. Nothing was taken yet.`,
        '1  there is more on it: key the whole of it',
        '2  that is all that stands there',
      ]
    case 'words':
      return [
        `"${typed}" may be no tag. Nothing was taken yet. Where the plate cannot be read, a lead finds out which machine it is.`,
        '1  it was no tag: key what stands on the plate',
        '2  that is what stands there',
      ]
  }
}

export const TAG_SURE = 'Look at the plate. 1 or 2'

export function hearTagSure(defs: Definitions, question: TagSureAsk, line: string): Heard {
  const { machine } = defs
  const { typed, is } = question
  const choice = line.trim()
  if (choice === '1' && is === 'spelled') return input({ do: 'name-machine', typed, meant: true })
  if (choice === '1') return { talk: { ask: null }, input: null, say: [`${typed} was not taken.`] }
  if (choice === '2') return input({ do: 'name-machine', typed })
  // The whole of it keyed at once is what was wanted.
  if (isSameTag(line, machine.machine)) return input({ do: 'name-machine', typed: choice })
  // After what was no tag one that is another is heard as at the plate: it may be the wrong machine, and is not to be lost.
  if (is === 'words' && !isWords(line) && tagSigns(line).length >= LEAST_SIGNS)
    return sureOfTag(defs, line) ?? input({ do: 'name-machine', typed: choice })
  return ask(question, 'Key 1 or 2: nothing was taken.')
}
