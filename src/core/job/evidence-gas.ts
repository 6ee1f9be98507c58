// One gas reading against the limit for its place and purpose, and against what the meter can do there.
import type { GasMeter } from '../definition/instruments.ts'
import { BURNS, type GasLimit } from '../definition/machine.ts'
import type { Evidence } from '../definition/procedure.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { parseEntry } from '../units/index.ts'
import { type Definitions, gasLimitById } from './definitions.ts'
import type { Typed } from './entries.ts'

export interface GasJudged {
  readonly shown: string
  readonly reading: Typed
  readonly outcome:
    | { readonly kind: 'passes' }
    /** Outside the limit: the place is not safe. */
    | { readonly kind: 'fails'; readonly why: string }
    /** The method means nothing here: no statement about the place. */
    | { readonly kind: 'not-valid'; readonly why: string }
}

export const GAS_UNITS = {
  oxygen: '%vol',
  flammable: '%LEL',
  flammable_in_inert: '%vol',
  hydrogen_sulfide: 'ppm',
} as const
export const GAS_NAMES = {
  oxygen: 'oxygen',
  flammable: 'flammables',
  flammable_in_inert: 'flammables in inert gas',
  hydrogen_sulfide: 'H2S',
} as const

export function judgeGas(
  defs: Definitions,
  evidence: Extract<Evidence, { kind: 'gas' }>,
  meter: GasMeter,
  oxygenSi: number | null,
  typed: string,
): Result<GasJudged> {
  const read = readGas(defs, evidence, typed)
  if (!read.ok) return read
  const { limit, shown, reading, outside } = read.value
  const invalid = methodFault(defs, limit, meter, oxygenSi)
  if (invalid !== null) return ok({ shown, reading, outcome: { kind: 'not-valid', why: invalid } })
  if (outside !== null) return ok({ shown, reading, outcome: { kind: 'fails', why: outside } })
  return ok({ shown, reading, outcome: { kind: 'passes' } })
}

export interface GasRead {
  readonly limit: GasLimit
  readonly shown: string
  readonly reading: Typed
  /** Why it is out of its limit, whatever it was read with; null where it is inside, which proves nothing without a meter. */
  readonly outside: string | null
}

/** The figure by itself, against its limit. Refuses what is no figure of that gas. */
export function readGas(
  defs: Definitions,
  evidence: Extract<Evidence, { kind: 'gas' }>,
  typed: string,
): Result<GasRead> {
  const limit = gasLimitById(defs, evidence.limit)
  if (limit === undefined)
    return refuse(
      'no-limit',
      `The machine record has no gas limit ${evidence.limit}, so this gate stays shut.`,
    )
  const unit = GAS_UNITS[limit.gas]
  const kind = limit.gas === 'flammable' ? 'lel-fraction' : 'concentration'
  const entry = parseEntry(typed, { kind, unit, what: GAS_NAMES[limit.gas] })
  if (!entry.ok) return bareSign(typed, unit) ?? entry
  const reading = { typed, value: entry.value.value, unit: entry.value.unit, si: entry.value.si }
  const shown = `${reading.value} ${reading.unit}`
  if (limit.gas !== 'flammable' && reading.si > 1)
    return refuse(
      limit.gas,
      `${shown} cannot be: ${GAS_NAMES[limit.gas]} is at most 100 %vol. Nothing was taken, and the hold point stays shut: read the meter again and key it in full.`,
    )
  return ok({ limit, shown, reading, outside: outsideOf(limit, kind, reading.si) })
}

/** A bare % where the box is by volume: it may have been read as another share, so it is keyed anew and nothing is guessed. */
function bareSign(typed: string, unit: string) {
  const figure = /^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(typed)?.[1]
  return figure === undefined || unit !== '%vol'
    ? null
    : refuse('bare-percent', `Key ${figure} without the sign, if that is % by volume: this box takes %vol.`)
}

/** Why a flammables reading of this meter means nothing here, or null. Unknown oxygen is never enough oxygen. */
export function methodFault(
  defs: Definitions,
  limit: GasLimit,
  meter: GasMeter,
  oxygenSi: number | null,
): string | null {
  if (limit.gas === 'flammable_in_inert') {
    return meter.reads_in_inert === undefined
      ? `${meter.id} does not read what burns in gas without air, so its figure here means nothing`
      : null
  }
  if (limit.gas !== 'flammable') return null
  const basis = defs.machine.site.gas.lel_basis
  if (meter.lel_basis.lower_limit.si !== basis.lower_limit.si || meter.lel_basis.gas !== basis.gas) {
    return `${meter.id} reads % LEL of ${meter.lel_basis.gas} at ${meter.lel_basis.lower_limit.text}, and the site limit is on ${basis.gas} at ${basis.lower_limit.text}`
  }
  if (oxygenSi === null) return 'the oxygen at this place is not on record'
  if (!(oxygenSi >= meter.needs_oxygen.at_least.si)) {
    return `${meter.id} needs ${meter.needs_oxygen.at_least.text} of oxygen to see flammables, so its figure here means nothing`
  }
  return null
}

/** Written so that a value that is not a number, or a limit with no bound at all, can never pass. */
function outsideOf(limit: GasLimit, kind: string, si: number): string | null {
  const { at_least: least, at_most: most } = limit
  if ([least, most].some((bound) => bound !== undefined && bound.kind !== kind))
    return `the limit ${limit.id} is not in a unit of its gas`
  if (least === undefined && most === undefined) return `the limit ${limit.id} has no bound`
  if (limit.gas === 'flammable' && !(si < BURNS)) return 'where it burns, whatever the limit says'
  if (least !== undefined && !(si >= least.si)) return `below ${least.text} for ${limit.purpose}`
  if (most !== undefined && !(si <= most.si)) return `above ${most.text} for ${limit.purpose}`
  return Number.isFinite(si) ? null : 'not a number'
}
