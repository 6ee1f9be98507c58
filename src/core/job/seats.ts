// The instruments that sit in a procedure's seats, by what they measure.
import type { DiameterGauge, GasMeter, Thermometer } from '../definition/instruments.ts'
import { type Definitions, instrumentById } from './definitions.ts'
import type { State } from './state.ts'

export function gasMeterIn(defs: Definitions, state: State, seat: string): GasMeter | null {
  const instrument = instrumentById(defs, state.seats[seat] ?? '')
  return instrument?.kind === 'gas_meter' ? instrument : null
}

export function gaugeById(defs: Definitions, id: string): DiameterGauge | null {
  const instrument = instrumentById(defs, id)
  return instrument?.kind === 'inside_micrometer' || instrument?.kind === 'bore_gauge' ? instrument : null
}

export function thermometerById(defs: Definitions, id: string): Thermometer | null {
  const instrument = instrumentById(defs, id)
  return instrument?.kind === 'contact_thermometer' ? instrument : null
}
