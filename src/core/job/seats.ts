// The instruments that sit in a procedure's seats, by what they measure.
import {
  type DiameterGauge,
  type GasMeter,
  type Instrument,
  isSetOnStandard,
  type Thermometer,
} from '../definition/instruments.ts'
import { type Definitions, gasLimitById, instrumentById } from './definitions.ts'
import type { State } from './state.ts'

/** Why an instrument cannot do what its seat is for, or null: a purge is ended only with a meter that needs no air. */
export function unsuited(defs: Definitions, seat: string, instrument: Instrument): string | null {
  if (instrument.kind !== 'gas_meter' || instrument.reads_in_inert !== undefined) return null
  const inert = defs.steps.some(
    ({ step }) =>
      step.kind === 'gate' &&
      step.evidence.some(
        (e) =>
          e.kind === 'gas' && e.with === seat && gasLimitById(defs, e.limit)?.gas === 'flammable_in_inert',
      ),
  )
  return inert ? 'it does not read in gas without air' : null
}

export function gasMeterIn(defs: Definitions, state: State, seat: string): GasMeter | null {
  const instrument = instrumentById(defs, state.seats[seat] ?? '')
  return instrument?.kind === 'gas_meter' ? instrument : null
}

export function gaugeById(defs: Definitions, id: string): DiameterGauge | null {
  const instrument = instrumentById(defs, id)
  return instrument !== undefined && isSetOnStandard(instrument) ? instrument : null
}

export function thermometerById(defs: Definitions, id: string): Thermometer | null {
  const instrument = instrumentById(defs, id)
  return instrument?.kind === 'contact_thermometer' ? instrument : null
}
