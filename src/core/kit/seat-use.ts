// What each seat of a job is used for, and why an instrument cannot do it. One use is one reading, one line of gate
// evidence or one limit of a verdict; the same rules that refuse a reading in the job are asked here, before it.
import { type Instrument, READS } from '../definition/instruments.ts'
import type { EvidenceOf, StepOf } from '../definition/procedure.ts'
import type { Definitions, PlacedStep } from '../job/definitions.ts'
import { judgeGas } from '../job/evidence-gas.ts'
import { itemLabel } from '../job/item-label.ts'
import { judgeMeasured, type Measuring } from '../job/measured-limit.ts'
import { writtenFact } from '../rules/machine-facts.ts'
import { KIND_NAME } from '../units/index.ts'

export interface SeatUse {
  /** Id of the seat. */
  readonly seat: string
  readonly placed: PlacedStep
  /** What it is asked to tell there, in a few words. */
  readonly asks: string
  /** Why this instrument cannot do it, as a clause about it, or null. */
  readonly fault: (instrument: Instrument) => string | null
  /** Whether its scale takes in all that may be read there; left out: nothing says how far that goes. */
  readonly covers?: (instrument: Instrument) => boolean
}

/** Inch and millimetre of one figure differ in the last place of a double. */
const NOISE = 1e-9
/** Share of oxygen in air; any meter that needs oxygen has enough of it there. */
const AIR = 0.209

/** Uses by read steps and by evidence of gates, in order. What verdicts ask for is in judge-asks.ts. */
export function readingUses(defs: Definitions): SeatUse[] {
  return defs.steps.flatMap((placed): SeatUse[] => {
    const { step } = placed
    if (step.kind === 'read') return [readUse(defs, placed, step)]
    if (step.kind !== 'gate') return []
    return step.evidence.flatMap((one): SeatUse[] => {
      if (one.kind === 'gas') return [gasUse(defs, placed, one)]
      return one.kind === 'measured' ? [measuredUse(placed, one)] : []
    })
  })
}

function readUse(defs: Definitions, placed: PlacedStep, read: StepOf<'read'>): SeatUse {
  const { within } = read.repeats
  return {
    seat: read.with,
    placed,
    asks: `${read.of}, alike within ${within.text}`,
    fault: (instrument) => {
      const reader = readerOf(instrument, read.quantity)
      if (typeof reader === 'string') return reader
      if (!(reader.resolution.si <= within.si * (1 + NOISE)))
        return `it shows steps of ${reader.resolution.text}, too coarse to agree within ${within.text}`
      return spanFault(defs, read, reader)
    },
    covers: (instrument) => {
      const { plausible } = read
      if (plausible.from !== 'range' || instrument.kind === 'gas_meter') return true
      return plausible.least.si >= instrument.range.from.si && plausible.most.si <= instrument.range.to.si
    },
  }
}

/** The instrument as one that reads this, or why it is none. */
function readerOf(instrument: Instrument, quantity: keyof typeof READS): Measuring | string {
  const none = `it does not read ${KIND_NAME[quantity]}`
  return instrument.kind === 'gas_meter' || !READS[quantity].includes(instrument.kind) ? none : instrument
}

/** Whether what is expected lies on its scale. That it spans the bore is asked whenever one is picked. */
function spanFault(defs: Definitions, { plausible }: StepOf<'read'>, reader: Measuring): string | null {
  const { from, to } = reader.range
  const span = `it reads ${from.text} to ${to.text}`
  const takesIn = (si: number) => si >= from.si && si <= to.si
  switch (plausible.from) {
    case 'counterbore': {
      const { counterbore } = defs.machine.bore
      if (counterbore === undefined || takesIn(counterbore.si)) return null
      return `${span}, and the counterbore is ${counterbore.text}`
    }
    case 'record': {
      const fact = writtenFact(defs.machine, plausible.of)
      if (fact === undefined || takesIn(fact.si)) return null
      return `${span}, and the ${plausible.of.replaceAll('_', ' ')} is ${fact.text}`
    }
    case 'standard': {
      const size = 'set_check' in reader ? reader.set_check.size : null
      if (size === null) return 'it has no setting standard on record'
      return takesIn(size.si) ? null : `${span}, and its setting standard is ${size.text}`
    }
    case 'range': {
      const { least, most } = plausible
      if (least.si <= to.si && most.si >= from.si) return null
      return `${span}, and ${least.text} to ${most.text} is expected`
    }
    default:
      return null
  }
}

function gasUse(defs: Definitions, placed: PlacedStep, evidence: EvidenceOf<'gas'>): SeatUse {
  return {
    seat: evidence.with,
    placed,
    asks: itemLabel(defs, { key: evidence.id, evidence, point: null, person: null, part: null }),
    fault: (instrument) => {
      if (instrument.kind !== 'gas_meter') return 'it is no gas meter'
      // Without air it is asked of the seat as a whole, as it is when one is picked.
      if (isInert(defs, evidence)) return null
      const judged = judgeGas(defs, evidence, instrument, AIR, '0')
      if (!judged.ok) return judged.error.say.replace(/\.$/, '')
      return judged.value.outcome.kind === 'not-valid' ? judged.value.outcome.why : null
    },
  }
}

function isInert(defs: Definitions, { limit }: EvidenceOf<'gas'>): boolean {
  return defs.machine.site.gas.limits.some((one) => one.id === limit && one.gas === 'flammable_in_inert')
}

function measuredUse(placed: PlacedStep, evidence: EvidenceOf<'measured'>): SeatUse {
  return {
    seat: evidence.with,
    placed,
    asks: `${evidence.place}, ${boundsText(evidence)}`,
    fault: (instrument) => {
      const reader = readerOf(instrument, evidence.quantity)
      if (typeof reader === 'string') return reader
      const outcome = judgeMeasured(evidence, reader, bestReading(evidence, reader))
      return outcome.kind === 'passes' ? null : outcome.why
    },
  }
}

/** The reading furthest inside the limit that the instrument can show, SI: if that does not pass, none does. */
function bestReading({ quantity, at_least, at_most }: EvidenceOf<'measured'>, reader: Measuring): number {
  const { from, to } = reader.range
  // A space that was vented stands at no less than the air outside.
  const lowest = quantity === 'pressure-gauge' ? Math.max(from.si, 0) : from.si
  if (at_least === undefined) return lowest
  if (at_most === undefined) return to.si
  return Math.min(to.si, Math.max(from.si, (at_least.si + at_most.si) / 2))
}

/** `-0.5 psig to 0.5 psig`, `at most 0.5 psig`. */
function boundsText({ at_least: least, at_most: most }: EvidenceOf<'measured'>): string {
  if (least !== undefined && most !== undefined) return `${least.text} to ${most.text}`
  return most === undefined ? `at least ${least?.text ?? '?'}` : `at most ${most.text}`
}
