// What the hidden machine answers while a cylinder is opened: pocket, jacket, covers, end clearances as found, and the first look in.
import type { OpenTruth } from './parts.ts'
import { eye, type Teller, type Tellers, type Truth } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'
import { PUT_BACK } from './tell-put-back.ts'

const ofOpened =
  (tell: (opened: OpenTruth) => Truth): Teller =>
  ({ machine }) =>
    machine.parts.opened === null ? null : tell(machine.parts.opened)

const SEAT = {
  head: 'A casting with a stem through its cover sits in the outer head, and its bleed beside it.',
  crank:
    'The outer head is plain. The stem and its bleed come out at the crank end, beside the distance piece.',
  none: 'Both ends are plain covers: no stem, no bleed of its own.',
} as const

const WATER = {
  clear: 'In the jar: green of its treatment, and clear through.',
  bubbles: 'In the jar: clear. But bubbles came with it in strings, and the meter moved at the hose.',
  oil: 'In the jar: a skin of oil on it that breaks into colours.',
} as const

const INSIDE = {
  clean: 'Oil film all along, and the marks of the rings where rings run.',
  pieces: 'Oil film. At the bottom, before the counterbore, a bit of ring as long as a finger nail.',
  black_dust: 'Black dust in the ports and along the bottom, dry, and it comes away on a glove.',
  water: 'Along the bottom a finger of water stands, with oil swimming on it.',
} as const

export const OPEN_CYLINDER: Tellers = {
  pocket_seat: ofOpened(({ pocketEnd }) => eye(SEAT[pocketEnd], pocketEnd)),
  jacket_water: ofOpened(({ water }) => eye(WATER[water], water)),
  drained: holdPoint({
    words: {
      dry: ({ parts }, { good, bad }) =>
        parts.opened?.isDry === true
          ? good(
              'Top vent open, drain open: it dripped, and stopped. The lowest plug is dry behind a tap with the hammer.',
            )
          : bad('It stopped. With the top vent opened it runs again, a thumb thick, and warm.'),
      pocket_silent: ({ parts }, { good, bad }) =>
        parts.opened?.isPocketEmpty === true
          ? good(
              'A rag held out at the bleed of the pocket for a minute: nothing. Its gauge lies on its pin.',
            )
          : bad(
              'A rag held out at the bleed of the pocket: a thin cold breath, and its gauge stands off its pin.',
            ),
    },
    measured: {
      jacket_temp: ({ warmth, parts }) =>
        warmth.boreBefore + 273.15 + (parts.opened?.jacketOverK ?? Number.NaN),
    },
  }),
  slack: ofOpened(({ hisses }) =>
    hisses
      ? {
          kind: 'done',
          seen: 'All nuts slack and on. As the wedge breaks the seal, it hisses all round the joint, and does not stop.',
          isSo: false,
        }
      : {
          kind: 'done',
          seen: 'All nuts slack and on. The seal breaks with a crack; both covers rock, and no sound.',
          isSo: true,
        },
  ),
  opening: holdPoint(),
  head_clearance: PUT_BACK.head_clearance as Teller,
  crank_clearance: PUT_BACK.crank_clearance as Teller,
  runout_vertical: PUT_BACK.runout_vertical as Teller,
  runout_horizontal: PUT_BACK.runout_horizontal as Teller,
  head_ready: holdPoint({
    words: {
      guides: (_machine, { good }) =>
        good(
          'Two long studs in, left and right of the top. Two opposite nuts on, full thread. Nobody below.',
        ),
    },
  }),
  look_in: ofOpened(({ inside }) => eye(INSIDE[inside], inside)),
}
