// The computations on measuring, in the order they are listed.
import type { Computation } from './computation.ts'
import { MEASURE_BUDGET } from './measure-budget.ts'
import { MEASURE_CONFORMANCE } from './measure-conformance.ts'
import { MEASURE_POOL } from './measure-pool.ts'
import { MEASURE_REPEATS } from './measure-repeats.ts'

export const MEASURE: readonly Computation[] = [
  ...MEASURE_REPEATS,
  ...MEASURE_POOL,
  ...MEASURE_BUDGET,
  ...MEASURE_CONFORMANCE,
]
