// What an instrument shows of what is beyond its range, by its kind: the end of its scale, a part that it does not go over, or no figure at
// all; and that is no reading. The range is the one that the register states. Of a gas meter it states none: that of %LEL is told in ask.ts.
import { type Reader, reachOf } from '../definition/instruments.ts'

export type Past = 'over' | 'under'

/** @param si what is there, as a faultless instrument would show it. Half a step of the instrument further is still shown. Null: it can be shown. */
export function pastRange(instrument: Reader, si: number): Past | null {
  const half = instrument.resolution.si / 2
  const { from, to } = reachOf(instrument)
  if (!(si <= to + half)) return 'over'
  return si >= from - half ? null : 'under'
}

type Told = Readonly<Record<Past, (id: string, end: string) => string>>

const scaleEnd: Told = {
  over: (id, end) => `${id} stands at the end of its scale, ${end}: over range. What is there is more,`,
  under: (id, end) => `${id} stands at the foot of its scale, ${end}: under range. What is there is less,`,
}

const TOLD: Readonly<Partial<Record<Reader['kind'], Told>>> = {
  outside_micrometer: {
    over: (id, end) => `${id} is open to its last mark, ${end}, and does not go over the part. It is more,`,
    under: (id, end) =>
      `${id} is closed to its last mark, ${end}, and the part lies loose in it. It is less,`,
  },
  inside_micrometer: {
    over: (id, end) =>
      `${id} is drawn out to its last mark, ${end}, and falls short of the wall. It is more,`,
    under: (id, end) => `${id} is drawn in to its last mark, ${end}, and does not go in. It is less,`,
  },
  bore_gauge: {
    over: (id, end) => `${id} with its longest rod, ${end}, falls short of the wall. It is more,`,
    under: (id, end) => `${id} with its shortest rod, ${end}, does not go in. It is less,`,
  },
  contact_thermometer: {
    over: (id, end) => `${id} shows no figure, only a mark that it is over its range, ${end}. It is hotter,`,
    under: (id, end) =>
      `${id} shows no figure, only a mark that it is under its range, ${end}. It is colder,`,
  },
  feeler_gauge: {
    over: (id, end) => `The thickest pack of ${id}, ${end}, goes in loose. It is wider,`,
    under: (id, end) => `The thinnest leaf of ${id}, ${end}, does not go in. It is narrower,`,
  },
  dial_indicator: {
    over: (id, end) =>
      `The pointer of ${id} has run to the end of its travel, ${end}, and stands. It is more,`,
    under: (id, end) =>
      `The pointer of ${id} has run to the other end of its travel, ${end}, and stands. It is further,`,
  },
}

/** @param end the end of the range as it is read, with its unit. */
export function pastTold({ id, kind }: Reader, past: Past, end: string): string {
  return `${(TOLD[kind] ?? scaleEnd)[past](id, end)} and how much it cannot show: another instrument is wanted.`
}
