// What an entry of a job from paper may be, and of any other. The one wall between the two: what is written on a sheet opens nothing,
// and nothing that was proved at a machine stands in a job from paper.
import type { Body } from './entries.ts'
import type { Input } from './input.ts'

/** Entries that carry what stands beside them on the sheet. */
const CARRIES: readonly Body['type'][] = [
  ...(['step.done', 'step.confirmed', 'finding.observed'] as const),
  ...(['reading.taken', 'reading.doubted', 'reading.corrected'] as const),
]

/** Of a job from paper, beside those: keying, deciding and reading back. No evidence, no gate, no point, nothing live. */
const ALLOWED: readonly Body['type'][] = [
  ...(['job.opened', 'job.left', 'job.taken-up', 'job.closed', 'clock.moved'] as const),
  ...(['person.signed-on', 'pin.missed', 'pin.fitted', 'note.written', 'file.attached'] as const),
  ...(['paper.row', 'paper.unread', 'paper.signed'] as const),
  ...(['doubt.settled', 'step.reopened', 'branch.left', 'not-applicable.taken-back'] as const),
  ...(['instrument.doubted', 'readings.questioned', 'verdict.given', 'disposition.set'] as const),
  ...(['stop.raised', 'stop.explained', 'stop.released', 'stop.stands'] as const),
  ...(['left.adopted', 'remark.made'] as const),
]

/** Why the entry has no place in a job of its kind, a clause; null where it has. */
export function strays(isPaper: boolean, body: Body): string | null {
  const carries = 'paper' in body && body.paper !== undefined && body.type !== 'job.opened'
  if (!isPaper)
    return carries || body.type.startsWith('paper.') ? 'what came from paper is in no live job' : null
  if (CARRIES.includes(body.type))
    return carries ? null : 'in a job from paper it says what stands beside it on the sheet'
  return ALLOWED.includes(body.type) ? null : 'nothing live is in a job from paper'
}

const INPUTS: readonly Input['do'][] = [
  ...(['sign-on', 'pin-missed', 'pin-fitted', 'leave', 'take-up', 'tick', 'clock-moved'] as const),
  ...(['note', 'attach', 'stop', 'explain-stop', 'release-stop', 'close-stopped'] as const),
  ...(['doubt-instrument', 'dispose', 'adopt', 'remark'] as const),
  ...(['sheet-row', 'sheet-doubt', 'sheet-correct', 'sheet-sign'] as const),
]

/** Whether the input may come to a job of this kind at all. */
export function mayCome(isPaper: boolean, input: Input): boolean {
  return isPaper ? INPUTS.includes(input.do) : !input.do.startsWith('sheet-')
}
