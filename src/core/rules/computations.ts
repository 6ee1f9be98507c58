// The computations that procedures can call by name. The one place where they are put in.
import type { Computation } from '../compute/computation.ts'

export const COMPUTATIONS: ReadonlyMap<string, Computation> = new Map()
