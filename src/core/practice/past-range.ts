// What a gauge shows of a pressure beyond its range: the end of its scale, and that is no reading.
import type { GasMeter, Instrument } from '../definition/instruments.ts'

/** @param si the pressure that is there, Pa. Half a step of the gauge further is still shown. */
export function isPast(instrument: Exclude<Instrument, GasMeter>, si: number): boolean {
  const { kind, range, resolution } = instrument
  return kind === 'pressure_gauge' && si > range.to.si + resolution.si / 2
}

/** @param text the end of the scale as it is read, with its unit. */
export function pastTold({ id }: Instrument, text: string): string {
  return `${id} stands at the end of its scale, ${text}: over range. What is there is more, and how much it cannot show: another gauge is wanted.`
}
