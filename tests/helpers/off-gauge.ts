// A bore measured with a gauge that was out on its ring, let go back by concession: the verdict is HOLD on its measuring.
import { AFTER_LINES, BORE_LINES, Walk } from './example.ts'

/** To the check on the ring before the readings. */
export const toCheck = () => new Walk().throughGate().keys('1', '1', '71.2', '70.4', '1')

/** From the strip to the check after, which reads `set`. */
export const afterWith = (set: string) => [...AFTER_LINES.slice(0, -1), set]

/** KH lets it go back on the authority of PB, and the job is closed. */
export const conceded = (walk: Walk) =>
  walk.keys('concession', 'KH', 'good by eye', 'PB', '4000 h', '91000', '')

/** The check before is out and kept with a reason, the check after is out as much. */
export const offGauge = () =>
  conceded(toCheck().keys('9.5006', '3', 'the ring is scratched', ...BORE_LINES, ...afterWith('9.5006')))
