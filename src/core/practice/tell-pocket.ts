// What the hidden machine answers on load, and where its pocket is set.
import { formatNumber, fromSi, valueIn } from '../units/index.ts'
import type { PocketTruth } from './parts.ts'
import { eye, figure, type Spot, type Teller, type Tellers, type Truth } from './tell.ts'

const ofPocket =
  (tell: (pocket: PocketTruth, spot: Spot) => Truth | null): Teller =>
  (spot) =>
    spot.machine.parts.pocket === null ? null : tell(spot.machine.parts.pocket, spot)

/** A gauge that was not tapped. Pa; invented for practice. */
const HURRIED_GAUGE = [-12_000, -4000] as const
/** A thermometer that does not stand still yet. K; invented for practice. */
const HURRIED_WARMTH = [-8, -3] as const
/** One swing of the needle for the mean of it. W; invented for practice. */
const HURRIED_POWER = [4000, 9000] as const
/** A turn lost in counting. Rad; invented for practice. */
const HURRIED_WHEEL = [-2 * Math.PI, -1.5 * Math.PI] as const
/** The base not flat. Metres; invented for practice. */
const HURRIED_STEM = [0.001, 0.003] as const

const FITTED = {
  hand_wheel: 'A hand-wheel on a stem, a scale beside it, and a face to measure the stem from.',
  two_position: 'No wheel: a small cylinder with a gas line, and an arrow between two marks.',
} as const

const byWheel = ofPocket(({ wheel }, { defs }) =>
  figure(wheel * (defs.machine.pocket?.turns ?? Number.NaN) * 2 * Math.PI, HURRIED_WHEEL, 0),
)

const byStem = ofPocket(({ stem }, { defs }) => {
  const scale = defs.machine.whole_compressor?.pocket?.stem
  return scale === undefined ? null : figure(stemAt(scale, stem), HURRIED_STEM)
})

interface Scale {
  readonly shut: { readonly si: number }
  readonly open: { readonly si: number }
}

const stemAt = ({ shut, open }: Scale, share: number) => shut.si + (open.si - shut.si) * share

const gasAt = (stage: number): Teller =>
  ofPocket(({ suctionK }) => {
    const kelvin = suctionK[stage]
    return kelvin === undefined ? null : figure(kelvin, HURRIED_WARMTH)
  })

const ordered = (text: string, condition: string): Teller => ofPocket(() => eye(text, condition))

/** Steps at which something is decided by what stands on the sheet: nothing is to be looked at. */
export const DECIDED: readonly string[] = ['order', 'order_without']

export const POCKET_LOAD: Tellers = {
  fitted: ofPocket(({ fitted }) => eye(FITTED[fitted], fitted)),
  told_by: ofPocket((_pocket, { defs }) =>
    defs.machine.whole_compressor?.pocket?.stem === undefined
      ? eye('A scale at the wheel that counts its turns. No face is named for the stem.', 'wheel')
      : eye(
          'A scale at the wheel that counts its turns, and the face that the book names for the stem.',
          'both',
        ),
  ),
  wheel: byWheel,
  stem: byStem,
  // Only a pocket that is not the one on record comes here.
  position: ofPocket(() => eye('The arrow stands at SHUT, and the gas on the actuator says so too.', 'shut')),
  first_suction: ofPocket(({ suctionPa }) => figure(suctionPa, HURRIED_GAUGE)),
  last_discharge: ofPocket(({ dischargePa }) => figure(dischargePa, HURRIED_GAUGE)),
  gas_1: gasAt(0),
  gas_2: gasAt(1),
  gas_3: gasAt(2),
  gas_4: gasAt(3),
  load: ofPocket(({ loadW }) => figure(loadW, HURRIED_POWER)),
  order: ordered('The lead has read the table and says: set it as the table has it.', 'recommended'),
  order_without: ordered('The lead has read what stands there and says: leave it as it is.', 'left'),
}

/** The order on paper, beside what was read. */
const asOrdered = ofPocket(({ ordered: share, wheel, stem }, { defs }) => {
  const { pocket, whole_compressor: whole } = defs.machine
  const turns = formatNumber(share * (pocket?.turns ?? Number.NaN), 2)
  const scale = whole?.pocket?.stem
  const length = defs.machine.shop_units.length
  const byScale =
    scale === undefined
      ? ''
      : `, stem ${formatNumber(valueIn(fromSi('length', stemAt(scale, share)), length), length === 'in' ? 3 : 1)} ${length}`
  const isSame = Math.abs(wheel - share) < NEAR && Math.abs(stem - share) < NEAR
  return eye(
    `The order on the board: ${turns} turns from shut${byScale}. What you read of wheel and stem stands on this sheet.`,
    isSame ? 'same' : 'another',
  )
})

/** Nearer than any step of a hand-wheel, as a share of its travel. */
const NEAR = 1e-3

export const SET_POCKET: Tellers = {
  stem_left: byStem,
  turns_left: byWheel,
  as_ordered: asOrdered,
}
