// What stands on a paper sheet, as entries of the job it is keyed into.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { itemByKey } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { NOT_ENFORCED_BY, type OnSheet, UNREAD_TEXT } from '../job/paper.ts'
import { ENDS, FRONT, frontBoxes, keyOfCopy, SIGNED_BY } from '../job/paper-rows.ts'
import { placeName, placeNumber } from '../talk/names.ts'
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
          row(
            `${rowName(defs, entry)}: ${says === null ? 'BLANK on the sheet' : says === '' ? 'signed' : says}`,
            says === null ? 'caution' : 'plain',
          ),
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

/** The name of a box as the sheet has it. */
export function rowName(defs: Definitions, { step, row: id }: { step: string | null; row: string }): string {
  if (step === null) {
    const plain = id.replace(/\.\d+$/, '')
    const known = [...frontBoxes(defs), ...ENDS, ...SIGNED_BY].find(
      (one) => one.row === id || one.row === plain,
    )
    return known?.label.replace(/: one line of it$/, '') ?? FRONT.order
  }
  const placed = stepById(defs, step)
  if (placed.step.kind === 'gate') {
    const item = itemByKey(defs, asKind(placed, 'gate'), keyOfCopy(id))
    const copy = /#(\d+)$/.exec(id)?.[1]
    if (keyOfCopy(id) === 'copy') return 'Another copy of this page'
    return `${item === null ? id : itemLabel(defs, item)}${copy === undefined ? '' : `, copy ${copy}`}`
  }
  if (placed.step.kind === 'read' && id.startsWith(`${step}.`)) return placeName(defs, step, id)
  const names: Readonly<Record<string, string>> = {
    done: placed.step.title,
    instrument: `${placed.step.title}, instrument number`,
    verdict: `${placed.step.title}, worked out by hand`,
    decision: `${placed.step.title}, decided on the sheet`,
    point: `${placed.step.title}, inspection point`,
  }
  return names[id] ?? id
}
