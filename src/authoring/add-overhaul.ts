// A machine record with one overhaul more, comments and order kept.
import { isNode, isSeq, parseDocument, stringify } from 'yaml'
import type { LeftFigure, RenewedPart } from '../core/job/adopt.ts'

export interface NewOverhaul {
  /** YYYY-MM-DD. */
  readonly day: string
  /** Running hours, h. */
  readonly hours: number
  readonly report: string
  readonly renewed: readonly RenewedPart[]
  readonly figures: readonly LeftFigure[]
}

/** Columns that a line of the record may take before it is broken. */
const WIDTH = 120

/**
 * Put in as text, so that nothing else of the record is written another way; a list in brackets is written anew, as there is no line
 * to put it behind. Whoever calls reads the result again: it has to differ by the overhaul and by nothing else.
 * @throws where the text is no YAML document: it is read and checked before.
 */
export function withOverhaul(record: string, added: NewOverhaul): string {
  const doc = parseDocument(record, { version: '1.2' })
  if (doc.errors.length > 0) throw new Error(doc.errors[0]?.message)
  const known = doc.get('overhauls')
  if (known === undefined) return `${record.replace(/\n*$/, '\n')}overhauls:\n${itemText(added, '  ')}`
  const last = isSeq(known) && known.flow !== true ? known.items.at(-1) : undefined
  if (isNode(last) && last.range && isSeq(known) && known.range) {
    const dash = record.lastIndexOf('\n', known.range[0]) + 1
    const indent = ' '.repeat(known.range[0] - dash)
    const end = last.range[1]
    const at = record[end - 1] === '\n' ? end : record.indexOf('\n', end) + 1
    const before = at === 0 ? `${record}\n` : record.slice(0, at)
    return `${before}${itemText(added, indent)}${at === 0 ? '' : record.slice(at)}`
  }
  doc.set('overhauls', doc.createNode([...(isSeq(known) ? known.items : []), plain(added)]))
  return doc.toString({ lineWidth: WIDTH })
}

function plain({ day, hours, report, renewed, figures }: NewOverhaul) {
  return {
    day,
    hours: `${hours} h`,
    report,
    ...(renewed.length === 0 ? {} : { renewed }),
    left: figures.map(({ from: _from, ...figure }) => figure),
  }
}

/** One item of a list, with its dash at the indent. */
function itemText(added: NewOverhaul, indent: string): string {
  return stringify([plain(added)], { lineWidth: WIDTH })
    .split('\n')
    .map((line) => (line === '' ? '' : `${indent}${line}`))
    .join('\n')
}
