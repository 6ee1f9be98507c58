// What the hidden machine answers at each step of the sizes of the rod.
import { type Gauging, sizeBy, standardBy, warmthOf } from './gauging.ts'
import type { RodTruth } from './machine.ts'
import type { Teller } from './tell.ts'

const IN = 0.0254
/** The rod not turned right round, or the foot not square: the swing is read too small. Metres; invented for practice. */
const HURRIED_DIAL: readonly [number, number] = [-0.0006 * IN, -0.0002 * IN]

/** The packing runs from here to there, as shares of the rod (the stations of the procedure). */
const RUN = { from: 0.2, to: 0.8 } as const

/** Diameter at 20 degC, metres. `isTop`: on the axis from top to bottom. */
export function rodAt(rod: RodTruth, at: number, isTop: boolean): number {
  if (at < RUN.from || at > RUN.to) return rod.madeM
  const along = (at - RUN.from) / (RUN.to - RUN.from)
  return rod.madeM - rod.evenM - rod.crossheadM * along - (isTop ? rod.ovalM : 0)
}

const GAUGING: Gauging = {
  knockedAfter: 'rod_side',
  sizeAt: ({ rod }, { station, axis }, step) => {
    if (rod === null) return null
    if (step === 'rod_fit') return rod.fitM
    return rodAt(rod, station.at, axis === null ? step === 'rod_top' : axis.id === 'vertical')
  },
  partAlpha: ({ defs }) => defs.machine.rod?.expansion?.per_kelvin ?? 0,
}

/** The whole swing of a dial. */
const swing =
  (of: (rod: RodTruth, station: string) => number): Teller =>
  ({ machine, place }) =>
    machine.rod === null || place === null
      ? null
      : {
          kind: 'figure',
          si: of(machine.rod, place.station.id),
          isKnocked: false,
          hurried: HURRIED_DIAL,
          least: 0,
        }

/** A bow between centres: towards the ends of the run it swings less. Share of the middle; invented for practice. */
const BOW = 0.6

const size = sizeBy(GAUGING)
const standard = standardBy(GAUGING)

export const ROD_SIZES: Readonly<Record<string, Teller>> = {
  rod_temp_before: warmthOf('boreBefore'),
  mic_temp_before: warmthOf('gaugeBefore'),
  mic_set_before: standard,
  rod_top: size,
  rod_side: size,
  rod_unworn: size,
  rod_fit: size,
  rod_straight: swing((rod, station) => rod.bendM * (station === 'middle' ? 1 : BOW)),
  thread_runout: swing((rod, station) =>
    station === 'piston_thread' ? rod.pistonThreadM : rod.crossheadThreadM,
  ),
  shoulder_swing: swing((rod) => rod.shoulderM),
  rod_temp_after: warmthOf('boreAfter'),
  mic_temp_after: warmthOf('gaugeAfter'),
  mic_set_after: standard,
}
