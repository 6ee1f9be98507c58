// What each choice of a lead means. Rework, repair and concession as ISO 9000:2015, 3.12, has them, in our own words; from memory.
import type { FINDING_CHOICES } from '../job/admit-disposition.ts'

export const DECISION_SAYS: Readonly<Record<string, string>> &
  Readonly<Record<(typeof FINDING_CHOICES)[number], string>> = {
  accept:
    'the part goes on as it is. The verdict stays what it is, and the reason says by when it is read again, or none given.',
  rework: 'it is worked on until it conforms, as by honing or lapping, and is measured again.',
  repair: 'it is made fit for use, though not to the drawing, and is measured again.',
  replace: 'another part goes in, and that is measured.',
  concession:
    'it runs on although it does not conform, until an end that is named, on the written authority of somebody entitled to it.',
  hold: 'nothing is decided: the job closes with HOLD, and the part does not go back to work by it.',
}

/** The same in few words, behind the choice itself. */
const DECISION_SHORT: Readonly<Record<string, string>> &
  Readonly<Record<(typeof FINDING_CHOICES)[number], string>> = {
  accept: 'goes on as it is, read again by a day or hours',
  rework: 'worked on until it conforms',
  repair: 'made fit, though not to the drawing',
  replace: 'another part goes in',
  concession: 'runs on though it does not conform, until when',
  hold: 'nothing is decided',
}

/** On a low or narrow screen the choices stand alone: `why` and a question tell what each means. */
export const shortOf =
  (isWide: boolean) =>
  (choice: string): string =>
    isWide ? (DECISION_SHORT[choice] ?? '') : ''
