// A tag that is spelled otherwise than on the plate, or is only the beginning of it: asked about once, so that a slip of the hand is not
// told as the wrong machine. What was keyed stays what was keyed. Any other tag goes on record at once, as it may be the wrong machine.
import { isSameTag, tagSigns } from '../job/admit-people.ts'
import type { Definitions } from '../job/definitions.ts'
import { ask, type Heard, input } from './heard.ts'

export interface TagSureAsk {
  readonly kind: 'tag-sure'
  readonly typed: string
  /** The signs are those of the plate, only spelled otherwise; else it is the beginning of them. */
  readonly isWhole: boolean
}

/** A shorter beginning is no part of a tag, but another one or a slip. */
const LEAST_SIGNS = 4

/** Null where the line is taken as it stands: the tag itself, or one that is really another. */
export function sureOfTag({ machine }: Definitions, line: string): Heard | null {
  const typed = line.trim()
  const [signs, own] = [tagSigns(typed), tagSigns(machine.machine)]
  if (isSameTag(typed, machine.machine)) return null
  const isWhole = signs === own
  if (!isWhole && !(signs.length >= LEAST_SIGNS && own.startsWith(signs))) return null
  return ask({ kind: 'tag-sure', typed, isWhole })
}

/** The tag of the record is named only where all of its signs were keyed: nobody can copy it from here. */
export function tagSureLines({ machine }: Definitions, { typed, isWhole }: TagSureAsk): string[] {
  return isWhole
    ? [
        `${typed} was keyed. Is ${machine.machine} meant, does the plate read that?`,
        '1  yes, that is on the plate',
        '2  no: the plate reads what was keyed',
      ]
    : [
        `${typed} may be only a part of what stands on the plate. Nothing was taken yet.`,
        '1  there is more on it: key the whole of it',
        '2  that is all that stands there',
      ]
}

export const TAG_SURE = 'Look at the plate. 1 or 2'

export function hearTagSure(question: TagSureAsk, line: string): Heard {
  const { typed, isWhole } = question
  const choice = line.trim()
  if (choice === '1' && isWhole) return input({ do: 'name-machine', typed, meant: true })
  if (choice === '1') return { talk: { ask: null }, input: null, say: [`${typed} was not taken.`] }
  if (choice === '2') return input({ do: 'name-machine', typed })
  return ask(question, 'Key 1 or 2: nothing was taken.')
}
