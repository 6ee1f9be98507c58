// Gas limits of the machine record that a gate leaves untested. What counts is gas and place: limits for several purposes
// at one place (opening, sparks) are chosen among, while another gas or another place is another danger.

import { list, quote } from '../lib/wording.ts'
import { type Finding, warning } from './lint-common.ts'
import { type JobFile, type JobFinding, type JobParts, within } from './lint-job-shape.ts'
import type { GasLimit } from './machine.ts'
import type { Procedure, StepOf } from './procedure.ts'

type Place = GasLimit['place']

interface Gate {
  readonly gate: StepOf<'gate'>
  readonly index: number
  readonly file: JobFile
  /** A part with a condition may be skipped, and its gates with it. */
  readonly isSure: boolean
  /** Limits of the machine record that it tests; none while it names one that is not there, which may have been any. */
  readonly tests: readonly GasLimit[]
}

const PLACES: readonly Place[] = ['breathing_zone', 'in_the_opening']

/** Said of each gate that tests any gas. */
export function lintJobGas(job: JobParts): JobFinding[] {
  const gates = walked(job)
  const seen = new Set<StepOf<'gate'>>()
  return gates.flatMap((one, n) => {
    if (one.tests.length === 0 || seen.has(one.gate)) return []
    seen.add(one.gate)
    return within(
      one.file,
      PLACES.flatMap((place) => lintPlace(job, one, gates.slice(n + 1), place)),
    )
  })
}

/**
 * Where a gate tests one gas it tests them all. A place it leaves out altogether may be left to a gate further on, which
 * stands where that place first comes open (two gates: before slacking, and at each new opening).
 */
function lintPlace(job: JobParts, one: Gate, later: readonly Gate[], place: Place): Finding[] {
  const here = one.tests.filter((limit) => limit.place === place).map((limit) => limit.gas)
  const isLeft = later.some(({ isSure, tests }) => isSure && tests.some((limit) => limit.place === place))
  if (here.length === 0 && isLeft) return []
  const missing = job.machine.site.gas.limits.filter(
    (limit) => limit.place === place && !here.includes(limit.gas),
  )
  if (missing.length === 0) return []
  const gases = [...new Set(missing.map((limit) => GAS[limit.gas]))]
  const message = `${quote(one.gate.id)} tests no ${list(gases, 'or')} ${WHERE[place]}, and ${quote(job.machine.machine)} has limits for that.`
  const hint = `add a gas test against ${list(missing.map((limit) => limit.id))}`
  return [warning(['steps', one.index, 'id'], 'untested-limit', message, hint)]
}

const WHERE: Readonly<Record<Place, string>> = {
  breathing_zone: 'where people breathe',
  in_the_opening: 'in the opening',
}
const GAS: Readonly<Record<GasLimit['gas'], string>> = {
  oxygen: 'oxygen',
  flammable: 'flammables',
  hydrogen_sulfide: 'H2S',
}

/** Every gate in the order it is walked, parts opened out. A part that stands inside itself is not opened again. */
function walked(job: JobParts): Gate[] {
  const gates: Gate[] = []
  const open = (procedure: Procedure, file: JobFile, inside: readonly string[], isSure: boolean): void => {
    procedure.steps.forEach((step, index) => {
      if (step.kind === 'gate') gates.push({ gate: step, index, file, isSure, tests: testsOf(job, step) })
      if (step.kind !== 'part' || inside.includes(step.use) || gates.length > MOST_GATES) return
      const part = job.parts.get(step.use)
      if (part === undefined) return
      open(part, { kind: 'part', id: step.use }, [...inside, step.use], isSure && step.when === undefined)
    })
  }
  open(job.procedure, { kind: 'procedure' }, [job.procedure.procedure], true)
  return gates
}

/** Parts within parts can multiply; lint-parts.ts refuses such a job. */
const MOST_GATES = 2000

function testsOf(job: JobParts, gate: StepOf<'gate'>): GasLimit[] {
  const named = gate.evidence.flatMap((one) => (one.kind === 'gas' ? [one.limit] : []))
  const { limits } = job.machine.site.gas
  const isWhole = named.every((id) => limits.some((limit) => limit.id === id))
  return isWhole ? limits.filter((limit) => named.includes(limit.id)) : []
}
