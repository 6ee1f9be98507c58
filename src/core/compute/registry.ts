// Every computation by its name, in the groups it is listed in. Procedures, the command line and `why` all ask here.

import { ok, type Result, refuse } from '../lib/result.ts'
import { nearest } from '../lib/wording.ts'
import { BORE } from './bore.ts'
import type { Computation, Computed } from './computation.ts'
import { CYCLE_COMPUTATIONS } from './cycle.ts'
import { END_CLEARANCE } from './end-clearance.ts'
import { FASTENING } from './fastening.ts'
import { MEASURE } from './measure.ts'
import { PISTON } from './piston.ts'
import { RINGS } from './rings.ts'
import { ROD } from './rod.ts'
import { checkInputs, type Inputs } from './take.ts'
import { WEAR } from './wear.ts'

export interface Group {
  readonly title: string
  readonly computations: readonly Computation[]
}

export const GROUPS: readonly Group[] = [
  { title: 'Bore and liner', computations: BORE },
  { title: 'Rings and riders', computations: RINGS },
  { title: 'Piston', computations: PISTON },
  { title: 'Rod', computations: ROD },
  { title: 'Fastening', computations: FASTENING },
  { title: 'End clearance', computations: END_CLEARANCE },
  { title: 'Cylinder as a compressor', computations: CYCLE_COMPUTATIONS },
  { title: 'Measuring', computations: MEASURE },
  { title: 'Wear over time', computations: WEAR },
]

export const COMPUTATIONS: ReadonlyMap<string, Computation> = byName(GROUPS)

/** By name. Throws when two have one name, or one has two inputs of one name: a bug. */
export function byName(groups: readonly Group[]): ReadonlyMap<string, Computation> {
  const known = new Map<string, Computation>()
  for (const computation of groups.flatMap((group) => group.computations)) {
    const { name, inputs } = computation
    if (known.has(name)) throw new Error(`two computations are named "${name}"`)
    if (new Set(inputs.map((input) => input.name)).size !== inputs.length)
      throw new Error(`"${name}" has two inputs of one name`)
    known.set(name, computation)
  }
  return known
}

/** The computation of this name. Refuses (`unknown-computation`) with the nearest name there is. */
export function findComputation(name: string): Result<Computation> {
  const found = COMPUTATIONS.get(name.trim().toLowerCase().replace(/_/g, '-'))
  if (found !== undefined) return ok(found)
  const near = nearest(name, [...COMPUTATIONS.keys()])
  const hint = near === undefined ? 'barover compute lists them' : `did you mean ${near}?`
  return refuse(
    'unknown-computation',
    `There is no computation of that name; ${hint.replace(/[^?]$/, '$&.')}`,
  )
}

/**
 * Checks the inputs against what is declared, works it out, and checks what came of it: an output that is not finite
 * is a bug and throws, so that no caller is ever handed one.
 */
export function compute(computation: Computation, inputs: Inputs): Result<Computed> {
  const checked = checkInputs(computation.inputs, inputs)
  if (!checked.ok) return checked
  const computed = computation.run(inputs)
  if (computed.ok && !isSound(computed.value))
    throw new Error(`"${computation.name}" gave a figure that is not finite`)
  return computed
}

function isSound({ outputs }: Computed): boolean {
  return Object.values(outputs).every((value) => {
    if (value.is === 'number') return Number.isFinite(value.number)
    if (value.is === 'quantity') return Number.isFinite(value.quantity.si)
    return value.is === 'word' || value.quantities.every((q) => Number.isFinite(q.si))
  })
}
