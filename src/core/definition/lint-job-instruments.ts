// Cross-checks of seats against the register: somebody must own an instrument that fits, spans the bore and speaks the
// same LEL as the machine record.

import { list, quote } from '../lib/wording.ts'
import { finding, warning } from './lint-common.ts'
import { type JobFinding, type JobParts, spansBore, usedProcedures, within } from './lint-job-shape.ts'
import type { Seat } from './procedure.ts'

/** Findings about instruments, each in the file where it would be put right. */
export function lintJobInstruments(job: JobParts): JobFinding[] {
  const seats = usedProcedures(job).flatMap(({ procedure, file }) =>
    procedure.seats.flatMap((seat, n) => within(file, lintSeat(job, seat, n))),
  )
  return [...seats, ...within({ kind: 'instruments' }, lintMeters(job))]
}

function lintSeat(job: JobParts, seat: Seat, n: number) {
  const path = ['seats', n, 'kinds']
  const fitting = job.instruments.instruments.filter((one) => seat.kinds.includes(one.kind))
  if (fitting.length === 0) {
    const message = `The register has no ${list(seat.kinds, 'or')} for the seat ${quote(seat.id)}.`
    return [finding(path, 'no-instrument', message)]
  }
  if (fitting.some((one) => spansBore(one, job.machine.bore.nominal.si))) return []
  const message = `No instrument for the seat ${quote(seat.id)} spans the bore of ${quote(job.machine.machine)}, ${job.machine.bore.nominal.text}.`
  return [finding(path, 'no-instrument', message, `in the register: ${list(fitting.map((one) => one.id))}`)]
}

/** 10 % of one gas's LEL is not 10 % of another's: a reading on another basis says nothing about the limit. */
function lintMeters(job: JobParts) {
  const basis = job.machine.site.gas.lel_basis
  const meters = job.instruments.instruments.flatMap((one, n) =>
    one.kind === 'gas_meter' ? [{ one, n }] : [],
  )
  const others = meters.filter(({ one }) => {
    const sameGas = one.lel_basis.gas.trim().toLowerCase() === basis.gas.trim().toLowerCase()
    return !sameGas || Math.abs(one.lel_basis.lower_limit.si / basis.lower_limit.si - 1) > 1e-9
  })
  const say = others.length === meters.length ? finding : warning
  return others.map(({ one, n }) => {
    const own = `${one.lel_basis.gas}, ${one.lel_basis.lower_limit.text}`
    const message = `The LEL of ${quote(one.id)} is that of ${own}, and ${quote(job.machine.machine)} states ${basis.gas}, ${basis.lower_limit.text}.`
    return say(
      ['instruments', n, 'lel_basis', 'gas'],
      'other-lel',
      message,
      'a reading on another basis cannot be used',
    )
  })
}
