// Repeats that must agree closer than anything on the register can tell apart.

import { list, quote } from '../lib/wording.ts'
import type { Instrument } from './instruments.ts'
import { type Finding, type Path, warning } from './lint-common.ts'
import { type JobParts, spansBore } from './lint-job-shape.ts'
import type { Procedure, StepOf } from './procedure.ts'

type Reader = Exclude<Instrument, { kind: 'gas_meter' }>

/** Findings of one read step of `procedure`. One instrument that can tell is enough: the crew may pick it. */
export function lintWithin(job: JobParts, procedure: Procedure, read: StepOf<'read'>, base: Path): Finding[] {
  const seat = procedure.seats.find((one) => one.id === read.with)
  const { within } = read.repeats
  const fitting = job.instruments.instruments.flatMap((one): Reader[] =>
    one.kind !== 'gas_meter' &&
    seat?.kinds.some((kind) => kind === one.kind) === true &&
    spansBore(one, job.machine.bore.nominal.si)
      ? [one]
      : [],
  )
  // Inch and millimetre of one figure differ in the last place of a double.
  const canTell = (one: Reader) => one.resolution.si <= within.si * (1 + 1e-9)
  const [first] = fitting
  if (first === undefined || fitting.some(canTell)) return []
  const finest = fitting.reduce((best, one) => (one.resolution.si < best.resolution.si ? one : best), first)
  const steps = fitting.map((one) => `${one.id} ${one.resolution.text}`)
  const message = `Readings cannot agree within ${quote(within.text)}: no instrument for the seat ${quote(read.with)} shows so small a step.`
  const hint = `allow at least ${finest.resolution.text}; steps in the register: ${list(steps.slice(0, 6))}`
  return [warning([...base, 'repeats', 'within'], 'below-resolution', message, hint)]
}
