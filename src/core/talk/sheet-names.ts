// What the boxes of a paper sheet are called in a sentence.
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import { itemByKey } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { registerBoxAt } from '../job/paper-register.ts'
import { ENDS, frontBoxes, isBeginRow, keyOfCopy, PAGE, SIGNED_BY } from '../job/paper-rows.ts'
import { placeName } from './names.ts'

const FEET: Readonly<Record<string, string>> = {
  [PAGE.complete]: 'Complete, stale from',
  [PAGE.clear]: 'All out and clear',
}

/** The name of a box as the sheet has it. */
export function boxName(
  defs: Definitions,
  { step, row: id }: { readonly step: string | null; readonly row: string },
): string {
  if (step === null) {
    const plain = id.replace(/\.\d+$/, '')
    const boxes = [...frontBoxes(defs), ...ENDS, ...SIGNED_BY]
    const line = registerBoxAt(defs, id)
    if (line !== null) return line.label
    return boxes.find(({ row }) => row === id || row === plain)?.label ?? id
  }
  const placed = stepById(defs, step)
  if (placed.step.kind === 'gate') {
    if (keyOfCopy(id) === 'copy') return 'Another copy of this page'
    const copyOfPage = /#(\d+)$/.exec(id)?.[1]
    const foot = FEET[keyOfCopy(id)]
    if (foot !== undefined) return `${foot}${copyOfPage === undefined ? '' : `, copy ${copyOfPage}`}`
    const begun = isBeginRow(id) ? ', begun' : ''
    const key = keyOfCopy(id)
    const item = itemByKey(
      defs,
      asKind(placed, 'gate'),
      begun === '' ? key : key.slice(0, key.lastIndexOf('.')),
    )
    return `${item === null ? id : itemLabel(defs, item)}${begun}${copyOfPage === undefined ? '' : `, copy ${copyOfPage}`}`
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
