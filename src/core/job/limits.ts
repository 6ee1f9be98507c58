// Which limit counts for each characteristic: the machine's own book first, else the one fall-back set its lead named.
// Never both, never an average; where neither speaks there is no limit, and the judge holds.
import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import { limitFromRule } from '../bore/fallback-limits.ts'
import type { BookLimit, LimitBook } from '../definition/limit-book.ts'
import type { Machine } from '../definition/machine.ts'
import type { Limit } from '../metrology/limit.ts'
import type { Definitions } from './definitions.ts'

export function limitsFor(
  defs: Definitions,
  wanted: readonly BoreCharacteristic[],
): Partial<Record<BoreCharacteristic, Limit>> {
  const limits: Partial<Record<BoreCharacteristic, Limit>> = {}
  for (const characteristic of wanted) {
    const limit = machineLimit(defs.machine, characteristic) ?? fallbackLimit(defs, characteristic)
    if (limit !== null) limits[characteristic] = limit
  }
  return limits
}

function machineLimit(machine: Machine, characteristic: BoreCharacteristic): Limit | null {
  const own = machine.limits.filter((l) => l.characteristic === characteristic)
  const [limit] = own
  // Two of the machine's own limits for one thing contradict each other: then there is none, and it is held.
  if (limit === undefined || own.length > 1) return null
  return {
    characteristic,
    bound: 'at-most',
    value: limit.at_most.si,
    unit: limit.at_most.unit,
    inclusive: limit.inclusive,
    beyond: limit.beyond,
    ...(limit.monitor_from === undefined ? {} : { monitorFrom: limit.monitor_from.si }),
    source: limit.source,
    approvedBy: limit.approved_by,
    since: limit.since,
    from: 'machine',
    book: machine.machine,
  }
}

function fallbackLimit(defs: Definitions, characteristic: BoreCharacteristic): Limit | null {
  const { fallback, bore } = defs.machine
  if (fallback === undefined || defs.machine.limits.some((l) => l.characteristic === characteristic))
    return null
  const book = defs.limitBooks.find((b) => b.limit_book === fallback.book)
  if (book === undefined) return null
  const service = serviceOf(defs.machine, book)
  const rows = book.limits.filter(
    (row) => row.characteristic === characteristic && fits(row, bore.rings, service),
  )
  const [row] = rows
  if (row === undefined || rows.length > 1) return null
  const unit = defs.machine.shop_units.length
  const limit = limitFromRule(
    { ratio: row.ratio, of: row.of, ...(row.at_most === undefined ? {} : { atMost: row.at_most.si }) },
    { nominalBoreM: bore.nominal.si, strokeM: bore.stroke.si },
    {
      characteristic,
      bound: 'at-most',
      unit,
      inclusive: row.inclusive,
      beyond: row.beyond,
      ...(fallback.monitor_from === undefined ? {} : { monitorFrom: fallback.monitor_from.si }),
      source: row.source,
      approvedBy: `${row.approved_by}; named by ${fallback.named_by}`,
      since: fallback.since,
      from: 'fallback',
      book: book.title,
      rule: ruleText(row),
    },
  )
  return limit.ok ? limit.value : null
}

/** Null when the record does not say enough to tell: then no row that depends on the service applies. */
function serviceOf(machine: Machine, book: LimitBook): 'ordinary' | 'light_or_high' | null {
  const { molar_mass: mass, ring_differential: differential } = machine.service
  if (mass !== undefined && mass < book.light_or_high.molar_mass_below) return 'light_or_high'
  if (differential !== undefined && differential.si > book.light_or_high.ring_differential_above.si)
    return 'light_or_high'
  return mass === undefined || differential === undefined ? null : 'ordinary'
}

function fits(row: BookLimit, rings: string, service: string | null): boolean {
  return (
    (row.rings === undefined || row.rings === rings) && (row.service === undefined || row.service === service)
  )
}

function ruleText(row: BookLimit): string {
  const of = row.of === 'nominal-bore' ? 'nominal bore' : 'stroke'
  return `${row.ratio} per unit of ${of}${row.at_most === undefined ? '' : `, at most ${row.at_most.text}`}`
}
