// The witness of a hold point as a sheet has it: somebody else than who did the work, of a role that may, with a name beside the initials.
// The live job refuses any other; on paper nobody was there to refuse, so it is told.
import type { EvidenceOf } from '../definition/evidence.ts'
import { list } from '../lib/wording.ts'
import { type Definitions, personById } from './definitions.ts'
import type { GateStep } from './gate.ts'
import type { PaperState, SheetRow } from './paper.ts'
import { copyOf, keyOfCopy } from './paper-rows.ts'

/** Steps whose signature is work; who judges, decides or signs an inspection point does none by that. */
const WORK: readonly string[] = ['tell', 'confirm', 'read', 'observe']

/** Why the line is no witness as the live job asks for one, each a clause. */
export function witnessFaults(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  evidence: EvidenceOf<'witness'>,
  row: SheetRow,
): string[] {
  const { who, text } = row
  if (who === null) return ['no initials']
  const person = personById(defs, who)
  const may = person !== undefined && evidence.roles.some((role) => role === person.role)
  const did = workOf(defs, paper, gate, evidence.id, row)
  return [
    ...(did.length === 0
      ? []
      : [`${who} did the work by this sheet (${list(did)}), and a witness is somebody else`]),
    ...(person === undefined ? [`${who} is nobody of the crew file`] : []),
    ...(person === undefined || may
      ? []
      : [`${who} is a ${person.role}, and it is witnessed by a ${list([...evidence.roles], 'or')}`]),
    ...(text === null ? [`signed with ${who} alone: no name stands there`] : []),
  ]
}

/** Where else those initials stand as work: lines of this hold point up to that copy of its page, and steps. */
function workOf(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  witness: string,
  { who, row }: SheetRow,
): string[] {
  // A lock of their own, by their own hand, is not the work of others that they vouch for.
  const own = Object.values(paper.rows).filter(
    (one) => one.who === who && !keyOfCopy(one.row).endsWith(`.${who}`),
  )
  const lines = own.filter(
    (one) => one.step === gate.id && keyOfCopy(one.row) !== witness && copyOf(one.row) <= copyOf(row),
  )
  const steps = defs.steps.filter(
    ({ id, step }) => WORK.includes(step.kind) && own.some((one) => one.step === id && one.row !== 'point'),
  )
  return [
    ...(lines.length === 0 ? [] : [`${lines.length} of its lines`]),
    ...(steps.length === 0 ? [] : [`step ${list(steps.map(({ number }) => String(number)))}`]),
  ]
}
