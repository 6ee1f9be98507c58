// Records for tests, as their owner would write them: the example machine with some of it changed, and a micrometer.
import { machineSchema } from '../../src/core/definition/machine.ts'
import type { Definitions } from '../../src/core/job/definitions.ts'
import { exampleDefs } from './example.ts'
import type { Raw } from './small-job.ts'

/** The example machine, keys at the top replaced by those of `more`; `undefined` leaves one out. */
export function machineWith(more: Raw): Definitions['machine'] {
  const written = JSON.stringify(exampleDefs().machine, (_key, one) =>
    typeof one?.text === 'string' && 'si' in one ? one.text : one,
  )
  return machineSchema.parse(JSON.parse(JSON.stringify({ ...JSON.parse(written), ...more })))
}

/** Steel, 2 to 3 in, U 0.0001 in at k = 2. */
export const MICROMETER: Raw = {
  id: 'M-5',
  kind: 'outside_micrometer',
  title: 'Outside micrometer',
  unit: 'in',
  range: { from: '2 in', to: '3 in' },
  resolution: '0.0001 in',
  uncertainty: { expanded: '0.0001 in', k: 2, includes_resolution: true, source: 'Certificate (invented)' },
  expansion: { per_kelvin: 11.5e-6, source: 'a table' },
  set_check: { standard: 'S-2', size: '2.0000 in', within: '0.0001 in', source: 'Site rule (invented)' },
  calibration: { due: '2027-01-01', certificate: 'C-1 (invented)' },
}
