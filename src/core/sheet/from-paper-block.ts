// What stands on a paper sheet, as entries of the job it is keyed into.
import type { Definitions } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { NOT_ENFORCED_BY, type OnSheet, UNREAD_TEXT } from '../job/paper.ts'
import { placeName, placeNumber } from '../talk/names.ts'
import { boxName } from '../talk/sheet-names.ts'
import { type Block, type Row, row } from './block.ts'
import { bySign } from './by-sign.ts'

type OfPaper = Extract<Entry, { type: 'paper.row' | 'paper.unread' | 'paper.signed' }>

export const FROM_PAPER_ROW: Row = row(`From paper: ${NOT_ENFORCED_BY}.`, 'caution')

export function paperBlock(defs: Definitions, entry: OfPaper, margin: string, right: string): Block {
  switch (entry.type) {
    case 'paper.row': {
      const { says, of, why } = entry
      return {
        margin,
        right,
        rows: [
          row(`${boxName(defs, entry)}: ${saysText(entry)}`, says === null ? 'caution' : 'plain'),
          ...backRows(entry.paper),
          ...putRight(of, why),
        ],
      }
    }
    case 'paper.unread': {
      const { step, place, is, says, why, of } = entry
      const what = says === undefined ? '' : `, it says ${says}`
      const because = is === 'instrument' && why !== undefined ? ` (${why})` : ''
      return {
        margin: placeNumber(defs, step, place),
        right,
        rows: [
          row(`${placeName(defs, step, place)}: no value, ${UNREAD_TEXT[is]}${because}${what}`, 'caution'),
          ...(is === 'instrument' ? [] : putRight(of, why)),
        ],
      }
    }
    case 'paper.signed':
      return {
        margin,
        right,
        rows: [
          entry.as === 'keyed'
            ? row(
                `Keyed as it stands on the sheet, signed by ${entry.person}${bySign(entry.signed)}`,
                'strong',
              )
            : row(
                `Compared with the sheet, signed by ${entry.person}, lead${bySign(entry.signed)}`,
                'strong',
              ),
          row(`  From paper: ${NOT_ENFORCED_BY}.`),
        ],
      }
  }
}

/** Initials with nothing beside them are no blank box. */
function saysText({ says, paper }: Extract<OfPaper, { type: 'paper.row' }>): string {
  if (says !== null) return says === '' ? 'signed' : says
  if (paper.who !== null) return `signed by ${paper.who}, and nothing else stands there`
  return paper.time === null ? 'BLANK on the sheet' : 'a time, and nothing else stands there'
}

function putRight(of: number | undefined, why: string | undefined): Row[] {
  if (of === undefined) return []
  return [row(`  puts entry ${of} right because ${why ?? 'it was keyed wrong'}; that one stays in the log`)]
}

/** Beside what was answered: words on the sheet, and a time that goes back. */
export function backRows(paper: OnSheet | undefined): Row[] {
  if (paper === undefined) return []
  return [
    ...(paper.says === undefined ? [] : [row(`  on the sheet: ${paper.says}`)]),
    ...(paper.back === true
      ? [row('  its time is before the line above it: it is what the sheet says', 'caution')]
      : []),
  ]
}
