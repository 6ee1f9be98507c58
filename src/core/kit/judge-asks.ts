// From a judge step to the instruments it rests on and the limits they have to be good enough for. One function for each
// computation: the compiler asks for another.

import type { BoreCharacteristic } from '../bore/bore-judge-input.ts'
import { characteristicText } from '../definition/characteristics.ts'
import { type DiameterGauge, type Instrument, isSetOnStandard } from '../definition/instruments.ts'
import type { JudgeStep } from '../job/bore-facts.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { AnyJudgeStep } from '../job/judge-step.ts'
import { limitsFor } from '../job/limits.ts'
import { assertNever } from '../lib/result.ts'
import { judgeAgainst } from '../metrology/conformity.ts'
import type { Limit } from '../metrology/limit.ts'
import { expandedOfDifference, expandedOfReading } from '../metrology/uncertainty.ts'
import { formatQuantity } from '../units/index.ts'
import { figuresAsks } from './figure-asks.ts'
import { pocketAsks } from './pocket-asks.ts'
import type { SeatUse } from './seat-use.ts'

export interface JudgeAsks {
  readonly uses: readonly SeatUse[]
  /** What the records do not say, each a clause: the verdict is HOLD whatever is read. */
  readonly missing: readonly string[]
}

export function judgeAsks(defs: Definitions, judge: AnyJudgeStep): JudgeAsks {
  const { step } = judge
  switch (step.compute) {
    case 'bore_form':
      return boreFormAsks(defs, { ...judge, step })
    case 'figures':
      return figuresAsks(defs, { ...judge, step })
    case 'pocket_setting':
      return pocketAsks(defs, { ...judge, step })
    default:
      return assertNever(step)
  }
}

function boreFormAsks(defs: Definitions, judge: JudgeStep): JudgeAsks {
  const { against, inputs } = judge.step
  const seat = asKind(stepById(defs, judge.scope + inputs.diameters), 'read').step.with
  const limits = limitsFor(defs, against)
  const uses = against.flatMap((characteristic): SeatUse[] => {
    const limit = limits[characteristic]
    if (limit === undefined) return []
    const asks = `${characteristicText(characteristic)} judged at ${lengthIn(limit.value, limit.unit)}`
    return [{ seat, placed: judge, asks, fault: (one) => boreFault(defs, one, characteristic, limit) }]
  })
  const missing = against
    .filter((characteristic) => limits[characteristic] === undefined)
    .map((characteristic) => `there is no limit for the ${characteristicText(characteristic)}`)
  if (defs.machine.bore.expansion === undefined)
    missing.push('the thermal expansion of the cylinder is not on record')
  return { uses, missing }
}

function boreFault(
  defs: Definitions,
  instrument: Instrument,
  characteristic: BoreCharacteristic,
  limit: Limit,
): string | null {
  // What is no diameter gauge is told by the reading itself.
  if (!isSetOnStandard(instrument)) return null
  if (instrument.expansion === undefined) return 'its thermal expansion is not on record'
  const { nominal } = defs.machine.bore
  const isSize = characteristic === 'largest-diameter'
  const reading = leastError(defs, instrument)
  const accepts = defs.machine.simple_acceptance
  if (reading === null && accepts === undefined) return 'nobody has stated how far off it may be'
  const u = reading === null || isSize ? reading : expandedOfDifference(reading)
  const startsAt = isSize ? nominal.si : 0
  const { acceptAtMost, reasons } = judgeAgainst({
    value: startsAt,
    expandedU: u,
    resolution: instrument.resolution.si,
    limit,
    ...(isSize ? { startsAt } : {}),
    simpleAcceptance: accepts === undefined ? null : { by: accepts.by },
  })
  if (acceptAtMost === null) return `${characteristic} cannot be judged by it: ${reasons.join(', ')}`
  if (acceptAtMost > startsAt) return null
  const error = u === null ? instrument.resolution.text : lengthIn(u, limit.unit)
  return `it may be off by ${error} at best, which leaves nothing to accept of ${characteristic} ${lengthIn(limit.value, limit.unit)}`
}

/**
 * The least U (k = 2) of one diameter by this gauge, metres: at 20 degC, without drift, repeats alike, with the best
 * thermometer in the register. What leaves nothing to accept even then never will. Null when none is stated.
 */
function leastError(defs: Definitions, gauge: DiameterGauge): number | null {
  const { bore } = defs.machine
  const known = defs.instruments.instruments.flatMap((one) =>
    one.kind === 'contact_thermometer' ? [one.uncertainty.expanded.si / one.uncertainty.k] : [],
  )
  const best = known.length === 0 ? 0 : Math.min(...known)
  const expanded = expandedOfReading({
    instrumentU: gauge.uncertainty?.expanded.si,
    instrumentK: gauge.uncertainty?.k,
    lengthM: bore.nominal.si,
    partAlpha: bore.expansion?.per_kelvin ?? 0,
    instrumentAlpha: gauge.expansion?.per_kelvin ?? 0,
    partTempU: best,
    instrumentTempU: best,
    resolutionM: gauge.resolution.si,
    resolutionInsideU: gauge.uncertainty?.includes_resolution ?? false,
  })
  return expanded.ok ? expanded.value : null
}

const DECIMALS: Readonly<Record<string, number>> = { in: 4, mm: 3, ft: 5, m: 6 }

function lengthIn(metres: number, unit: string): string {
  return formatQuantity({ kind: 'length', si: metres }, unit, DECIMALS[unit] ?? 1)
}
