// Figures that are named in words, held against what was keyed as a reading.
import type { Entry, ReadingAt } from '../job/entries.ts'

/** Whole numbers are of anything. */
const FIGURE = /(?<![\w.])\d+\.\d+(?![\w.]*\d)/g

/** Each once, as it is written: `9.5021` of `9.5021 until I tapped it, then 9.5027`. */
export const figuresIn = (text: string): string[] => [...new Set(text.match(FIGURE) ?? [])]

type Read = Extract<
  Entry,
  { type: 'reading.taken' | 'reading.doubted' | 'reading.late' | 'reading.corrected' }
>

/** Whether it is a reading, doubted and late ones too, that was keyed as this figure, however many noughts behind it. */
export const isReadAs = (entry: Entry, figure: string): entry is Read & ReadingAt =>
  (entry.type === 'reading.taken' ||
    entry.type === 'reading.doubted' ||
    entry.type === 'reading.late' ||
    entry.type === 'reading.corrected') &&
  Number(entry.typed) === Number(figure)
