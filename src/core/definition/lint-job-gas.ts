// Gas that the gates of a job leave untested although the machine record has a limit for it. What counts is gas and place:
// limits for several purposes at one place (opening, sparks) are chosen among, while another gas or another place is
// another danger. A vent is no place where people are: what is read there tells of a purge.

import { isOutside } from '../drawing/kinds.ts'
import { list, quote } from '../lib/wording.ts'
import { warning } from './lint-common.ts'
import { lintWaits } from './lint-gate-waits.ts'
import { type JobFile, type JobFinding, type JobParts, within } from './lint-job-shape.ts'
import type { GasLimit } from './machine.ts'
import type { Procedure, Step } from './procedure.ts'

type Place = Exclude<GasLimit['place'], 'at_the_vent'>

const WHERE: Readonly<Record<Place, string>> = {
  breathing_zone: 'where people breathe',
  in_the_opening: 'in the opening',
}
const PLACES = Object.keys(WHERE) as readonly Place[]
const GAS: Readonly<Record<GasLimit['gas'], string>> = {
  oxygen: 'oxygen',
  flammable: 'flammables',
  flammable_in_inert: 'flammables in inert gas',
  hydrogen_sulfide: 'H2S',
}

interface Walked {
  readonly step: Step
  readonly index: number
  readonly file: JobFile
  /** Not inside a part with a condition: that may be skipped, and its gates with it. */
  readonly isSure: boolean
  /** Limits that a gate tests; none while it names one that is not there, which may have been any. */
  readonly tests: readonly GasLimit[]
}

/** Said of gates that test gas. */
export function lintJobGas(job: JobParts): JobFinding[] {
  const steps = walked(job)
  const gates = steps.filter(({ tests }) => tests.length > 0)
  const once = gates.filter((one, n) => gates.findIndex(({ step }) => step === one.step) === n)
  return [
    ...once.flatMap((gate) => PLACES.flatMap((place) => lintPlace(job, gate, place))),
    ...lintBreathing(job, gates),
    ...lintOpening(job, steps, gates),
    ...once.flatMap((gate) => lintGasWaits(job, gate)),
  ]
}

/** Where a gate tests one gas it tests them all. */
function lintPlace(job: JobParts, gate: Walked, place: Place): JobFinding[] {
  const here = gate.tests.filter((limit) => limit.place === place).map((limit) => limit.gas)
  if (here.length === 0) return []
  const isThere = (gas: GasLimit['gas']) =>
    here.includes(gas) || (gas === 'flammable' && here.includes('flammable_in_inert'))
  const missing = limitsAt(job, place).filter((limit) => !isThere(limit.gas))
  const gases = [...new Set(missing.map((limit) => GAS[limit.gas]))]
  const message = `${quote(gate.step.id)} tests no ${list(gases, 'or')} ${WHERE[place]}, and ${quote(job.machine.machine)} has limits for that.`
  return untested(gate, missing, message)
}

/** Air that is right for arms inside says nothing of the air at the opening, where the face is. */
function lintBreathing(job: JobParts, gates: readonly Walked[]): JobFinding[] {
  const gate = gates.find((one) => isTested(one, 'in_the_opening'))
  if (gate === undefined || gates.some((one) => one.isSure && isTested(one, 'breathing_zone'))) return []
  const message = `${quote(gate.step.id)} tests the air ${WHERE.in_the_opening}, and no gate that always stands tests it ${WHERE.breathing_zone}.`
  return untested(gate, limitsAt(job, 'breathing_zone'), message)
}

/**
 * Whoever measures a diameter has an arm in the bore. Other work is told by its words alone, and a gate before anything is
 * open has no opening to test.
 */
function lintOpening(job: JobParts, steps: readonly Walked[], gates: readonly Walked[]): JobFinding[] {
  const at = steps.findIndex(({ step }) => isInBore(step))
  const before = gates.filter((one) => steps.indexOf(one) < at)
  const read = steps[at]
  if (read === undefined || before.some((one) => one.isSure && isTested(one, 'in_the_opening'))) return []
  const limits = limitsAt(job, 'in_the_opening')
  const bare = before.findLast((one) => !isTested(one, 'in_the_opening'))
  if (bare !== undefined) {
    const message = `${quote(bare.step.id)} tests no gas ${WHERE.in_the_opening}, and ${quote(read.step.id)} behind it measures there.`
    return untested(bare, limits, message)
  }
  const last = before[before.length - 1]
  if (last === undefined) return []
  const message = `${quote(last.step.id)} may be left out with its part, and ${quote(read.step.id)} behind it measures ${WHERE.in_the_opening}.`
  return untested(last, limits, message)
}

function lintGasWaits({ machine }: JobParts, { step, index, file }: Walked): JobFinding[] {
  if (step.kind !== 'gate') return []
  const { life } = machine.site.gas
  return within(
    file,
    lintWaits(step, ['steps', index], (one) => (one.kind === 'gas' ? life : undefined)),
  )
}

function isInBore(step: Step): boolean {
  if (step.kind !== 'read' || step.quantity !== 'length') return false
  return (step.exposes?.length ?? 0) > 0 && !isOutside(step.drawing)
}

function isTested({ tests }: Walked, place: Place): boolean {
  return tests.some((limit) => limit.place === place)
}

/** Those for gas with air around it: a meter for inert gas serves purging. */
function limitsAt(job: JobParts, place: Place): GasLimit[] {
  const { limits } = job.machine.site.gas
  return limits.filter((limit) => limit.place === place && limit.gas !== 'flammable_in_inert')
}

function untested({ file, index }: Walked, limits: readonly GasLimit[], message: string): JobFinding[] {
  if (limits.length === 0) return []
  const hint = `add a gas test against ${list(limits.map((limit) => limit.id))}`
  return within(file, [warning(['steps', index, 'id'], 'untested-limit', message, hint)])
}

/** Parts within parts can multiply; lint-parts.ts refuses such a job. */
const MOST_STEPS = 2000

/** Every step in the order it is walked, parts opened out. A part that stands inside itself is not opened again. */
function walked(job: JobParts): Walked[] {
  const steps: Walked[] = []
  const open = (procedure: Procedure, file: JobFile, inside: readonly string[], isSure: boolean): void => {
    procedure.steps.forEach((step, index) => {
      steps.push({ step, index, file, isSure, tests: testsOf(job, step) })
      if (step.kind !== 'part' || inside.includes(step.use) || steps.length > MOST_STEPS) return
      const part = job.parts.get(step.use)
      if (part === undefined) return
      open(part, { kind: 'part', id: step.use }, [...inside, step.use], isSure && step.when === undefined)
    })
  }
  open(job.procedure, { kind: 'procedure' }, [job.procedure.procedure], true)
  return steps
}

function testsOf(job: JobParts, step: Step): GasLimit[] {
  if (step.kind !== 'gate') return []
  const named = step.evidence.flatMap((one) => (one.kind === 'gas' ? [one.limit] : []))
  const { limits } = job.machine.site.gas
  const isWhole = named.every((id) => limits.some((limit) => limit.id === id))
  return isWhole ? limits.filter((limit) => named.includes(limit.id)) : []
}
