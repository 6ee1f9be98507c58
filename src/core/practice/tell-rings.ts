// What the hidden machine answers where new rings are fitted: on the piston at the bench, and in the bore.
import { type Gauging, sizeBy, standardBy, warmthOf } from './gauging.ts'
import type { FeedTruth, FitTruth, GapTruth, RingTruth } from './parts.ts'
import { eye, figure, type Teller, type Tellers } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'

const IN = 0.0254
/** A blade that is forced reads wide. Metres; invented for practice. */
const HURRIED_FEELER = [0.0008 * IN, 0.002 * IN] as const
/** Jaws or a base that do not lie flat. Metres; invented for practice. */
const HURRIED_SQUARE = [0.001 * IN, 0.004 * IN] as const
/** The piston not turned right round: the swing is read too small. Metres; invented for practice. */
const HURRIED_DIAL = [-0.0003 * IN, -0.0001 * IN] as const

const ofRings =
  (tell: (rings: RingTruth, station: string) => ReturnType<Teller>): Teller =>
  ({ machine, place }) =>
    machine.parts.rings === null ? null : tell(machine.parts.rings, place?.station.id ?? '')

const ofFit =
  (tell: (fit: FitTruth, station: string) => ReturnType<Teller>): Teller =>
  ({ machine, place }) =>
    machine.parts.fit === null ? null : tell(machine.parts.fit, place?.station.id ?? '')

const GAUGING: Gauging = {
  knockedAfter: 'piston_od',
  sizeAt: ({ parts: { fit } }, { axis }, step) => {
    if (fit === null) return null
    if (step === 'rider_od') return fit.riders?.acrossM ?? null
    return axis?.id === 'vertical' ? fit.verticalM : fit.horizontalM
  },
  partAlpha: ({ defs }) => defs.machine.piston?.expansion?.per_kelvin ?? 0,
}
const size = sizeBy(GAUGING)
const standard = standardBy(GAUGING)

const LIGHT = {
  dark: 'The lamp behind each ring in turn: dark all round, a thread of light at the joint alone.',
  near_joint: 'On one ring light stands a hand wide on both sides of the joint. Elsewhere dark.',
  light: 'On one ring light comes past its face at four places, away from the joint.',
} as const

export const RING_FIT: Tellers = {
  riders: ofFit(({ riders }) =>
    riders === null
      ? eye('Bare iron lands, and no wide grooves between them. No riders lie with the new set.', 'none')
      : eye('Two wide grooves with bands in them, and new bands lie with the set.', 'fitted'),
  ),
  face_swing: ofFit(({ headFaceM, crankFaceM }, station) =>
    figure(station === 'head_face' ? headFaceM : crankFaceM, HURRIED_DIAL, 0),
  ),
  piston_temp_before: warmthOf('boreBefore'),
  mic_temp_before: warmthOf('gaugeBefore'),
  mic_set_before: standard,
  piston_od: size,
  new_set: ofRings(({ material, isRightSet }) => ({
    kind: 'done',
    seen: `Stamped on each ring, read under the lamp: ${material}. Number and width are those of the book. No nick, no twist.`,
    isSo: isRightSet,
  })),
  light: ofRings(({ light }) => eye(LIGHT[light], light)),
  side: ofRings(({ sideLeastM, sideMostM }, station) =>
    figure(station === 'least' ? sideLeastM : sideMostM, HURRIED_FEELER, 0),
  ),
  radial_new: ofRings(({ radialMostM, radialLeastM }, station) =>
    figure(station === 'least' ? radialLeastM : radialMostM, HURRIED_SQUARE, 0),
  ),
  groove_depth: ofRings(({ grooveM }) => figure(grooveM, HURRIED_SQUARE, 0)),
  rider_od: size,
  rider_proud: ofFit(({ riders }) => (riders === null ? null : figure(riders.proudM, HURRIED_FEELER, 0))),
  piston_temp_after: warmthOf('boreAfter'),
  mic_temp_after: warmthOf('gaugeAfter'),
  mic_set_after: standard,
}

const ofGap =
  (tell: (gap: GapTruth, station: string) => ReturnType<Teller>): Teller =>
  ({ machine, place }) =>
    machine.parts.gap === null ? null : tell(machine.parts.gap, place?.station.id ?? '')

const ofFeed =
  (tell: (feed: FeedTruth) => ReturnType<Teller>): Teller =>
  ({ machine }) =>
    machine.parts.feed === null ? null : tell(machine.parts.feed)

const HOLE = {
  clear:
    'The wire goes through and out the other side. Two strokes of the pump, and clean oil runs down the wall.',
  slow: 'The wire goes through with a push. Eleven strokes, then dark oil comes, with bubbles in it.',
  shut: 'The wire stops at a finger’s depth. Twenty strokes, and nothing comes.',
} as const

const VALVE = {
  holds: 'Pumped up and stopped: the sight glass stands, and the open ends stay dry after the first drop.',
  passes: 'Pumped up and stopped: at one line the oil creeps back in the glass, bubble after bubble.',
} as const

const DROPS = {
  right: 'A whole minute at each sight glass: the count is the one in the book, at each of them.',
  short:
    'A whole minute at each sight glass: one gives less than half of what the book has; the others are right.',
  flooded:
    'A whole minute at each sight glass: one gives three times what the book has; the others are right.',
} as const

export const RINGS_IN_BORE: Tellers = {
  opening: holdPoint(),
  // Practice is built for butt and step joints alone (facts-parts.ts).
  joint: () => eye('One piece, its ends cut square or stepped and standing apart by the gap.', 'one_cut'),
  gap_left: ofGap(({ leastM, mostM }, station) =>
    figure(station === 'least' ? leastM : mostM, HURRIED_FEELER, 0),
  ),
  oil_hole: ofFeed(({ hole }) => eye(HOLE[hole], hole)),
  check_valve: ofFeed(({ checkValve }) => eye(VALVE[checkValve], checkValve)),
  lubricator: ofFeed(({ lubricator }) => eye(DROPS[lubricator], lubricator)),
}
