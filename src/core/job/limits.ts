// Which limit counts for each characteristic: the machine's own book first, else the one fall-back set its lead named.
// Never both, never an average; where neither speaks there is no limit, and the judge holds.
import { limitFromRule, type RuleSizes, sizeName } from '../bore/fallback-limits.ts'
import { type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { BookLimit, LimitBook } from '../definition/limit-book.ts'
import type { Machine } from '../definition/machine.ts'
import type { Limit } from '../metrology/limit.ts'
import type { Definitions } from './definitions.ts'

export function limitsFor<C extends CharacteristicId>(
  defs: Definitions,
  wanted: readonly C[],
): Partial<Record<C, Limit>> {
  const limits: Partial<Record<C, Limit>> = {}
  for (const characteristic of wanted) {
    const limit = machineLimit(defs.machine, characteristic) ?? fallbackLimit(defs, characteristic)
    if (limit !== null) limits[characteristic] = limit
  }
  return limits
}

function machineLimit(machine: Machine, characteristic: CharacteristicId): Limit | null {
  const own = machine.limits.filter((l) => l.characteristic === characteristic)
  const [limit] = own
  // Two of the machine's own limits for one thing contradict each other: then there is none, and it is held.
  if (limit === undefined || own.length > 1) return null
  const { kind, bound } = characteristicOf(characteristic)
  const figure = bound === 'at-most' ? limit.at_most : limit.at_least
  const contrary = bound === 'at-most' ? limit.at_least : limit.at_most
  if (figure === undefined || figure.kind !== kind || contrary !== undefined) return null
  return {
    characteristic,
    bound,
    value: figure.si,
    unit: figure.unit,
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

function fallbackLimit(defs: Definitions, characteristic: CharacteristicId): Limit | null {
  const { fallback } = defs.machine
  if (fallback === undefined || defs.machine.limits.some((l) => l.characteristic === characteristic))
    return null
  const book = defs.limitBooks.find((b) => b.limit_book === fallback.book)
  if (book === undefined) return null
  const rows = book.limits.filter(
    (row) => row.characteristic === characteristic && fits(row, defs.machine, book),
  )
  const [row] = rows
  if (row === undefined || rows.length > 1) return null
  const { kind, bound } = characteristicOf(characteristic)
  const about = {
    characteristic,
    bound,
    inclusive: row.inclusive,
    beyond: row.beyond,
    // The share used of a limit from below says nothing of wear: a new fit lies near it on purpose.
    ...(fallback.monitor_from === undefined || bound === 'at-least'
      ? {}
      : { monitorFrom: fallback.monitor_from.si }),
    source: row.source,
    approvedBy: `${row.approved_by}; named by ${fallback.named_by}`,
    since: fallback.since,
    from: 'fallback',
    book: book.title,
    rule: ruleText(row),
  } as const
  if (row.is !== undefined) {
    if (row.ratio !== undefined || row.is.kind !== kind) return null
    return { ...about, value: row.is.si, unit: row.is.unit }
  }
  if (row.ratio === undefined || row.of === undefined || kind !== 'length') return null
  const limit = limitFromRule(
    { ratio: row.ratio, of: row.of, plus: row.plus?.si, atMost: row.at_most?.si, atLeast: row.at_least?.si },
    sizesOf(defs.machine),
    { ...about, unit: defs.machine.shop_units.length },
  )
  return limit.ok ? limit.value : null
}

function sizesOf({ bore, rod, rings }: Machine): RuleSizes {
  return {
    'nominal-bore': bore.nominal.si,
    stroke: bore.stroke.si,
    'rod-diameter': rod?.diameter.si,
    'ring-width': rings?.width.si,
    'new-ring-gap': rings?.new_gap?.si,
  }
}

/** Null when the record does not say enough to tell: then no row that depends on the service applies. */
function serviceOf(machine: Machine, book: LimitBook): 'ordinary' | 'light_or_high' | null {
  const { molar_mass: mass, ring_differential: differential } = machine.service
  const { light_or_high: rule } = book
  if (rule === undefined) return null
  if (mass !== undefined && mass < rule.molar_mass_below) return 'light_or_high'
  if (differential !== undefined && differential.si > rule.ring_differential_above.si) return 'light_or_high'
  return mass === undefined || differential === undefined ? null : 'ordinary'
}

/** A row with a condition that the record does not answer is for another machine, as far as anybody can tell. */
function fits(row: BookLimit, machine: Machine, book: LimitBook): boolean {
  return (
    (row.rings === undefined || row.rings === machine.bore.rings) &&
    (row.ring_material === undefined || row.ring_material === machine.rings?.material) &&
    (row.piston_material === undefined || row.piston_material === machine.piston?.material) &&
    (row.up_to_bore === undefined || machine.bore.nominal.si <= row.up_to_bore.si) &&
    (row.service === undefined || row.service === serviceOf(machine, book))
  )
}

function ruleText(row: BookLimit): string {
  if (row.ratio === undefined || row.of === undefined) return `${row.is?.text ?? 'no figure'} at any size`
  const multiple = row.of === 'new-ring-gap' ? `${row.ratio} times the` : `${row.ratio} per unit of`
  return [
    `${multiple} ${sizeName(row.of)}`,
    ...(row.plus === undefined ? [] : [`plus ${row.plus.text}`]),
    ...(row.at_most === undefined ? [] : [`at most ${row.at_most.text}`]),
    ...(row.at_least === undefined ? [] : [`at least ${row.at_least.text}`]),
  ].join(', ')
}
