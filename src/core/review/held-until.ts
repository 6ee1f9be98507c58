// Until when a hold point that was complete held: by what was shown there, and when it fell, whether or not anybody noted it then.
import { CAUSES } from '../job/close-causes.ts'
import { asKind, stepById } from '../job/definitions.ts'
import { gateState } from '../job/gate.ts'
import { lapsesAt } from '../job/lapse.ts'
import { readStamp, stamp } from '../lib/instant.ts'
import { type Block, row } from '../sheet/block.ts'
import { isFall } from './behind.ts'
import { closeOf, type Look, type Move, movesOf, sentence, when, whenFell } from './look.ts'

/** Nothing for any entry but that of a hold point that is complete. */
export function heldUntil(entries: Look['entries'], defsAt: Look['defsAt'], { entry, after }: Move): Block[] {
  if (entry.type !== 'gate.opened') return []
  const defs = defsAt(entry)
  const gate = asKind(stepById(defs, entry.step), 'gate')
  const ends = lapsesAt(defs, after, gate)
  const offsetMin = readStamp(entry.at)?.offsetMin ?? 0
  const until =
    ends === null || !Number.isFinite(ends)
      ? 'Nothing that was shown here runs out by a time of its own.'
      : `By the life of what was shown it held until ${when({ entries }, { at: stamp({ ms: ends, offsetMin }) })}, and no longer.`
  const moves = movesOf(entries)
  const fall = moves.find((one) => one.entry.seq > entry.seq && isFall(gate, one))
  if (fall === undefined) {
    const close = closeOf({ moves })
    const end = close === null ? 'this log ends' : `the job was closed, ${when({ entries }, close)}`
    return [{ margin: '', rows: [row(until), row(`It had not fallen when ${end}.`)] }]
  }
  const { cause, why } = gateState(fall.after, gate.id)
  const reason = why ?? (cause === null ? 'the cause is not told' : CAUSES[cause])
  const fell = `It fell, ${whenFell({ entries, defsAt }, fall)} (entry ${fall.entry.seq}): ${reason}`
  return [{ margin: '', rows: [row(until), row(sentence(fell))] }]
}
