// Tellers that every procedure with a gauge has: a size at the warmth of part and gauge, the standard beside it, and how warm both are.
import type { DiameterGauge } from '../definition/instruments.ts'
import { isSetOnStandard } from '../definition/instruments.ts'
import type { Place } from '../job/places.ts'
import type { HiddenMachine, Warmth } from './machine.ts'
import { shownWarm } from './sample.ts'
import type { Spot, Teller } from './tell.ts'

const IN = 0.0254
/** A gauge taken as it lies: not swung to the most, or not tilted to the least. Metres; invented for practice. */
const HURRIED_SIZE: readonly [number, number] = [-0.0015 * IN, 0.0006 * IN]
/** A thermometer read before it stands still, still as cool as the hand that brought it. K; invented for practice. */
const HURRIED_WARMTH: readonly [number, number] = [-2.5, -1]

export interface Gauging {
  /** The step after which a gauge that was knocked shows it. */
  readonly knockedAfter: string
  /** Size at 20 degC, metres; null where there is none. */
  readonly sizeAt: (machine: HiddenMachine, place: Place, step: string) => number | null
  /** Of the part, per K. */
  readonly partAlpha: (spot: Spot) => number
}

export function sizeBy({ knockedAfter, sizeAt, partAlpha }: Gauging): Teller {
  return (spot) => {
    const { machine, placed, place, instrument } = spot
    if (place === null || !isGauge(instrument)) return null
    const sizeM = sizeAt(machine, place, placed.step.id)
    if (sizeM === null) return null
    const isAfter = isAfterStep(spot, knockedAfter)
    const { warmth } = machine
    const si = shownWarm({
      sizeM,
      partAlpha: partAlpha(spot),
      partC: isAfter ? warmth.boreAfter : warmth.boreBefore,
      instrumentAlpha: instrument.expansion?.per_kelvin ?? 0,
      instrumentC: isAfter ? warmth.gaugeAfter : warmth.gaugeBefore,
    })
    return { kind: 'figure', si, isKnocked: isAfter, hurried: HURRIED_SIZE }
  }
}

/** The standard lies beside the gauge and is as warm as it. */
export function standardBy({ knockedAfter }: Pick<Gauging, 'knockedAfter'>): Teller {
  return (spot) => {
    const { machine, instrument } = spot
    if (!isGauge(instrument)) return null
    const isAfter = isAfterStep(spot, knockedAfter)
    const warm = isAfter ? machine.warmth.gaugeAfter : machine.warmth.gaugeBefore
    const own = instrument.expansion?.per_kelvin ?? 0
    const si = shownWarm({
      sizeM: instrument.set_check.size.si,
      partAlpha: instrument.set_check.expansion?.per_kelvin ?? own,
      partC: warm,
      instrumentAlpha: own,
      instrumentC: warm,
    })
    return { kind: 'figure', si, isKnocked: isAfter, hurried: HURRIED_SIZE }
  }
}

export function warmthOf(of: keyof Warmth): Teller {
  return ({ machine }) => ({
    kind: 'figure',
    si: machine.warmth[of] + 273.15,
    isKnocked: false,
    hurried: HURRIED_WARMTH,
  })
}

function isGauge(instrument: Spot['instrument']): instrument is DiameterGauge {
  return instrument !== null && isSetOnStandard(instrument)
}

function isAfterStep({ defs, placed }: Spot, step: string): boolean {
  const last = defs.steps.find((one) => one.scope === placed.scope && one.step.id === step)
  return last !== undefined && placed.number > last.number
}
