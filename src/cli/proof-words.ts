// What is said while the hold points of a REAL job are proved: minutes may go by, and nothing may look hung.
import type { Engine } from '../core/job/admit.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { gatesOf } from '../core/job/gate.ts'

/** Between two lines at least: a long proof is a dozen lines, not hundreds. */
const EVERY_MS = 4000

/**
 * An engine for the search that says, as each piece of the job is begun, which it is. `nowMs` is any clock that runs on;
 * `write` takes whole lines.
 */
export function toldProof(
  defs: Definitions,
  write: (line: string) => void,
  nowMs: () => number,
): (small: Definitions) => Engine {
  const gates = gatesOf(defs)
  // Without the machine's tag, which is to be read off the plate.
  write(
    `Proving the ${gates.length} hold points of this job, ${defs.procedure.title}: every state of it is searched for a way past`,
  )
  write('one. Seconds; minutes for a whole piston pull.')
  let last = nowMs()
  return (small) => {
    if (nowMs() - last >= EVERY_MS) {
      last = nowMs()
      const [gate, ...more] = gatesOf(small)
      const at = gates.findIndex(({ id }) => id === gate?.id)
      write(
        gate === undefined || more.length > 0 || at < 0
          ? '  hold points done; now the work between them'
          : `  hold point ${at + 1} of ${gates.length}: ${gate.step.title}`,
      )
    }
    return { defs: small, version: 'proof' }
  }
}
