// People of the crew as a lead names them in a question.
import { stem } from '../papers/ask-words.ts'
import type { OnRecord } from './asked-entries.ts'
import { onSheets } from './on-sheet.ts'

/**
 * People by their initials, as the log has them: `K. Haas` is KH. A surname that is a word of the log too is one only behind an initial or with
 * its capital.
 */
export function withInitials(record: OnRecord, keyed: string): string {
  return record.defs.crew.crew.reduce((text, { id, name }) => {
    const [first = '', ...more] = name.split(/[\s.]+/).filter((part) => part !== '')
    const last = more.at(-1)
    if (last === undefined || last.length < 3) return text
    const [one, surname] = [escaped(first), escaped(last)]
    const whole = new RegExp(`\\b(?:${one}|${escaped(first.slice(0, 1))})\\.? ?${surname}\\b`, 'gi')
    if (!new RegExp(`\\b${surname}\\b`, 'i').test(text)) return text
    const isWord = onSheets(record, [stem(last.toLowerCase())]).missing.length === 0
    return text.replace(whole, id).replace(new RegExp(`\\b${surname}\\b`, isWord ? 'g' : 'gi'), id)
  }, keyed)
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
