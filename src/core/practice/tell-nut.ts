// What the hidden machine answers where a piston goes on its rod.
import type { NutTruth } from './parts.ts'
import { eye, figure, type Teller, type Tellers, type Truth } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'

const FT_LB = 1.355818
const IN = 0.0254
const DEGREE = Math.PI / 180
/** A pull that jerks reads high. N m; invented for practice. */
const HURRIED_PULL = [25 * FT_LB, 60 * FT_LB] as const
/** The scribed line read from the side. Rad; invented for practice. */
const HURRIED_ANGLE = [2 * DEGREE, 5 * DEGREE] as const
/** The base on another place. Metres; invented for practice. */
const HURRIED_DEPTH = [0.0008 * IN, 0.002 * IN] as const

const ofNut =
  (tell: (nut: NutTruth) => Truth): Teller =>
  ({ machine }) =>
    machine.parts.nut === null ? null : tell(machine.parts.nut)

const done = (isSo: boolean, so: string, notSo: string): Truth => ({
  kind: 'done',
  seen: isSo ? so : notSo,
  isSo,
})

const contact = ofNut(({ contact: found }) =>
  found === 'enough'
    ? eye('Blue on four fifths of the shoulder and on all of the nut face, all round.', 'enough')
    : eye(
        'The nut face took blue all round. The shoulder took it on one half only; the other is bare.',
        'less',
      ),
)

const PAGE = {
  torque: 'The page of the piston nut, revision 4: by torque.',
  angle: 'The page of the piston nut, revision 4: snug, then by angle.',
  stretch: 'The page of the piston nut, revision 4: by stretch of the rod end.',
} as const

export const PISTON_ON_ROD: Tellers = {
  ready: holdPoint({
    words: {
      proved: ({ parts }, { good, bad }) =>
        parts.nut?.isProved === true
          ? good('The tag says SOLID, with two signatures and a day.')
          : bad('The tag says VENTED, for one cavity of two, and bears one signature.'),
      holes: ({ parts }, { good, bad }) =>
        parts.nut?.isVentShut === true
          ? bad('Through one vent hole the lamp shines. In the other sits a plug of compound.')
          : good('No vent hole on the drawing, and none to be seen.'),
      blocks: ({ parts }, { good, bad }) =>
        parts.nut?.isOnRun === true
          ? bad(
              'The blocks are firm, and the rod lies in them on its packing run, where the packing will seal.',
            )
          : good('The blocks are firm, and take the rod behind its packing run. Clamp with copper jaws on.'),
      swing: (_machine, { good }) =>
        good(
          'The wrench sits full on its flats, the reaction arm on the block, and its whole swing is empty.',
        ),
      hoses: (_machine, { good }) =>
        good('Hoses and couplings bear the rating of the pump, no blister, nobody in line.'),
      pump_zero: (_machine, { good }) =>
        good('The release valve is open and stays open. The gauge lies on its pin, the handle drops free.'),
    },
  }),
  contact,
  contact_right: ofNut(({ isRightCompound }) =>
    done(
      isRightCompound,
      'On the tin: thread compound, nickel, no copper. Thin oil on the nut face. Nut on by hand to its seat.',
      'On the tin, under the thumb: anti-seize, COPPER. Thin oil on the nut face. Nut on by hand to its seat.',
    ),
  ),
  end_before: ofNut(({ endBeforeM }) => figure(endBeforeM, HURRIED_DEPTH, 0)),
  method: ofNut(({ method }) => eye(PAGE[method], method)),
  nut_torque: ofNut(({ torqueNm }) => figure(torqueNm, HURRIED_PULL, 0)),
  snug: ofNut(({ snugNm }) => figure(snugNm, HURRIED_PULL, 0)),
  nut_angle: ofNut(({ angleRad }) => figure(angleRad, HURRIED_ANGLE, 0)),
  end_after: ofNut(({ endBeforeM, stretchM }) => figure(endBeforeM - stretchM, HURRIED_DEPTH, 0)),
  bedded: holdPoint({
    waits: {
      left_alone: (_machine, sinceS) => ({
        seen:
          sinceS === null
            ? 'Wrench off and laid by. Everybody two steps back.'
            : 'Nobody has gone near it. The wrench lies where it was laid.',
        isSo: true,
      }),
    },
  }),
  proof: ofNut(({ isBedded }) =>
    done(
      isBedded,
      'The other hand pulls to the last figure: nothing moves. The scribed lines stand in one.',
      'The other hand pulls to the last figure: the nut creeps on, and its line has left the other by a hair.',
    ),
  ),
  recess: ofNut(({ recess }) =>
    recess === 'below'
      ? eye(
          'The straight edge lies on the face right across. Under it a blade of 0.040 in goes over nut and rod end.',
          'below',
        )
      : eye('The straight edge rocks on the rod end: it stands above the face.', 'proud'),
  ),
}
