// What the hidden machine answers while a piston goes back in, and each time its crank is barred over.
import type { SetTruth } from './parts.ts'
import { eye, figure, type Spot, type Teller, type Tellers, type Truth } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'

const IN = 0.0254
const FT_LB = 1.355818
/** A pack that is pushed, not drawn. Metres; invented for practice. */
const HURRIED_FEELER = [0.001 * IN, 0.004 * IN] as const
/** The needle read across. Metres; invented for practice. */
const HURRIED_DIAL = [0.0002 * IN, 0.0006 * IN] as const
/** A pull that jerks. N m; invented for practice. */
const HURRIED_PULL = [20 * FT_LB, 50 * FT_LB] as const

const ofSet =
  (tell: (set: SetTruth, spot: Spot) => Truth | null): Teller =>
  (spot) =>
    spot.machine.parts.set === null ? null : tell(spot.machine.parts.set, spot)

const RINGS = {
  right:
    'Each ring rolls free under a finger, its mark to the pressure side, the gaps a third of a turn apart.',
  tight: 'Two rings roll free. The third binds at one place and stands a hair above its land there.',
  marked: 'All roll free. On one ring the mark looks away from the pressure side.',
} as const

const TURNED = {
  by_hand: 'On the call, by the bar, slow and even all the way. No lock came off.',
  tight:
    'On the call, by the bar. A hand before the end it goes stiff, twice at the same place, with a knock.',
} as const

export const BAR_OVER: Tellers = {
  ready: holdPoint({
    words: {
      counted: ({ parts }, { good, bad }) =>
        parts.set?.isCounted === false
          ? bad(
              'Five names on the board. Four answers; from the guide of the other throw a lamp still shines.',
            )
          : good(
              'Five names on the board, five answers, each from where the caller sees them. No tool at any throw.',
            ),
      ends_open: ({ parts }, { good, bad }) =>
        parts.set?.areEndsOpen === false
          ? bad('A valve is out of the head end. At the crank end every cover is on and its vent is shut.')
          : good('A valve is out of each end, and the vent of the other throw stands open.'),
      caller: (_machine, { good }) => good('One calls, and says so. Each repeats the name.'),
    },
  }),
  turned: ofSet(({ turned }) => eye(TURNED[turned], turned)),
}

const words =
  (seen: string) =>
  (_machine: unknown, { good }: { readonly good: (seen: string) => Truth }): Truth =>
    good(seen)

export const PUT_BACK: Tellers = {
  opening: holdPoint(),
  fitting: holdPoint({
    words: {
      shields: words('Shields down, gloves on, everybody to the side, two studs lie ready for the cups.'),
    },
  }),
  rings_set: ofSet(({ rings }) => eye(RINGS[rings], rings)),
  lift_plan: holdPoint({
    words: {
      supported: words('A sleeve over the thread, a tag line at the other end, and one who signals.'),
      protected: words('Thread and edge of the bore covered, the way clear, tape up, nobody under it.'),
    },
  }),
  piston_running: ofSet(({ pistonM }) => figure(pistonM, HURRIED_FEELER, 0)),
  runs_on: ofSet((_set, { defs }) =>
    defs.machine.rings?.rider_thickness === undefined
      ? eye('The blades lay on bare iron.', 'metal')
      : eye('The blades lay on a band.', 'riders'),
  ),
  crosshead_running: ofSet(({ crossheadM }) => figure(crossheadM, HURRIED_FEELER, 0)),
  tensioner: holdPoint({
    words: {
      hoses: words('Hoses and couplings bear the rating of the pump, no blister, nobody in line.'),
      pump_zero: words(
        'The release valve is open and stays open. The gauge lies on its pin, the handle drops free.',
      ),
    },
  }),
  head_clearance: ofSet(({ headM }) => figure(headM, HURRIED_FEELER, 0)),
  crank_clearance: ofSet(({ crankM }) => figure(crankM, HURRIED_FEELER, 0)),
  runout_vertical: ofSet(({ upM }) => figure(upM, HURRIED_DIAL)),
  runout_horizontal: ofSet(({ asideM }) => figure(asideM, HURRIED_DIAL)),
  dial_return: ofSet(({ returnM }) => figure(returnM, HURRIED_DIAL)),
  torques: ofSet(({ nutsNm }, { placed, place }) => {
    const { step } = placed
    const at = step.kind === 'read' ? step.stations.findIndex(({ id }) => id === place?.station.id) : -1
    const torque = nutsNm[at]
    return torque === undefined ? null : figure(torque, HURRIED_PULL, 0)
  }),
}
