// What the hidden machine answers at the bench of a piston that may be hollow.

import { formatNumber, fromSi, valueIn } from '../units/index.ts'
import { handledAs, weightSays } from './cavity.ts'
import type { CavityTruth } from './parts.ts'
import { eye, type Teller, type Tellers, type Truth } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'

const ofCavity =
  (tell: (cavity: CavityTruth) => Truth): Teller =>
  ({ machine }) =>
    machine.parts.cavity === null ? null : tell(machine.parts.cavity)

const lb = (kg: number) => formatNumber(valueIn(fromSi('mass', kg), 'lb'), 0)

/** What would hurt somebody if it were said instead of what is so. */
const unless = (truth: Truth, ...unsafe: readonly string[]): Truth =>
  truth.kind === 'eye' ? { ...truth, unsafe: unsafe.filter((one) => !truth.conditions.includes(one)) } : truth

const WRITTEN = {
  hollow: 'On the tag of this piston, by its number: HOLLOW, 1 cavity, 2 plugs, 2 vents.',
  solid: 'Machine record, tag and drawing of this piston, by its number: solid, all three.',
  silent: 'The drawing says solid. The tag is a bare number, and the record is of another piston.',
} as const

const written = ofCavity((cavity) => eye(WRITTEN[cavity.written], cavity.written))

const plugs = ofCavity((cavity) =>
  cavity.plugs === 'found'
    ? eye(
        'Wiped, each face has a round plug with a square in it, filed flush. In two groove bottoms sits a hole like a pin head.',
        'found',
      )
    : eye('Both faces and all groove bottoms wiped: bare metal, not a seam in it.', 'none'),
)

const mass = ofCavity((cavity) => {
  const seen = `On the hook, less rod, nut and rings: ${lb(cavity.weighedKg)} lb. The same piston in solid metal: ${lb(cavity.solidKg)} lb. Scale, sizes and metal together may be off by ${formatNumber(cavity.ratioU * 100, 0)} %.`
  return eye(seen, weightSays(cavity))
})

const knock = ofCavity((cavity) =>
  cavity.knock === 'rings'
    ? eye('Over the bridges it is dull. Between them it rings, and hums on for a moment.', 'rings')
    : eye('Dull, and the same wherever the hammer falls.', 'dull'),
)

/** It follows from the four facts: nothing more is shown. */
const handled = ofCavity((cavity) =>
  unless(eye('Nothing new is to be seen: the four facts lie before you.', handledAs(cavity)), 'solid'),
)

const VENTS = {
  silent:
    'From the side, a wire into each hole: right through into the cavity, each of them, and nothing came.',
  hissed:
    'At one hole a hiss, for twenty seconds, then quiet by itself. After that the wire goes right through both.',
  blocked:
    'At one hole the wire goes right through. At the other it stops hard at the depth of a finger nail; nothing comes.',
  none: 'The bottom of every groove probed and wiped: bare metal, and no hole at all.',
} as const

const vents = ofCavity(({ vents: found }) =>
  unless(
    eye(VENTS[found], found === 'none' ? 'blocked' : found),
    ...(isShut(found) ? ['silent', 'hissed'] : []),
  ),
)

const isShut = (found: CavityTruth['vents']) => found === 'blocked' || found === 'none'

const way = ofCavity(({ vents: found, isOpened }) => {
  if (isShut(found))
    return unless(
      eye('Nothing new is to be seen. No plan for drilling is here, and no number of one.', 'quarantine'),
      'turn',
      'drill',
      'nothing',
    )
  return isOpened
    ? unless(eye('The book wants a plug off: the cavity is to be looked at from inside.', 'turn'), 'drill')
    : unless(eye('The book wants nothing turned on it.', 'nothing'), 'drill')
})

const WORDS = {
  aimed:
    'Chocked in its blocks, shield up, both plug faces at the wall, the floor in front of them taped off.',
  no_sparks: 'No cable, lamp or heater within the tape, the extinguisher by the one who watches.',
  shields: 'Face shields down, gloves on, everybody beside it and nobody over a groove.',
} as const

const good: (text: string) => (machine: unknown, say: { readonly good: (seen: string) => Truth }) => Truth =
  (text) =>
  (_machine, { good: say }) =>
    say(text)

export const BENCH_READY: Tellers = {
  bench: holdPoint({
    words: {
      aimed: ({ parts }, say) =>
        parts.cavity?.isAimed === true
          ? say.good(WORDS.aimed)
          : say.bad('Chocked in its blocks, and one plug face looks down the aisle to the door.'),
      no_sparks: good(WORDS.no_sparks),
    },
    measured: {
      cool: ({ warmth, parts }) => warmth.boreBefore + 273.15 + (parts.cavity?.overShopK ?? Number.NaN),
    },
  }),
}

export const HOLLOW_PISTON: Tellers = {
  record_says: written,
  plugs_seen: plugs,
  mass_says: mass,
  knock,
  handled,
  rings_ready: holdPoint({ words: { shields: good(WORDS.shields) } }),
  vents,
  way,
}

const probed = (
  cavity: CavityTruth | null,
  say: { good: (s: string) => Truth; bad: (s: string) => Truth },
): Truth =>
  cavity === null || isShut(cavity.vents)
    ? say.bad('At one vent the wire stops hard at the depth of a finger nail.')
    : say.good('A wire in each vent of each cavity: right through, each of them.')

/** What hisses late: a cavity that fills again from its neighbour. */
const quiet = (cavity: CavityTruth | null, sinceS: number | null) => {
  if (sinceS === null) return { seen: 'Nothing is heard at vents or plugs. The wait can begin.', isSo: true }
  return cavity === null || cavity.hissesLate
    ? { seen: 'Ten minutes in, a hiss at a plug, thin, and it does not stop.', isSo: false }
    : { seen: 'All the time, and at its end: not a sound.', isSo: true }
}

const SLACKED = {
  one_turn:
    'One turn, with the long bar, from the side: silent, and far more than half of its threads still in.',
  hissed:
    'Half a turn, and it hissed for nine seconds, then went quiet by itself. Most of its threads are in.',
  seized: 'The bar bends and the plug does not move.',
  spins: 'It turns under two fingers and comes out by itself: something pushes.',
} as const

export const TURN_PLUG: Tellers = {
  waited: holdPoint({
    words: { probed: ({ parts }, say) => probed(parts.cavity, say) },
    waits: { quiet: ({ parts }, sinceS) => quiet(parts.cavity, sinceS) },
  }),
  slacked: ofCavity(({ plug }) => unless(eye(SLACKED[plug], plug), 'one_turn', 'hissed')),
}

/** Nobody drills in practice: no plan for it is here, so its first line is never given. */
export const DRILL_PLUG: Tellers = {
  drill_ready: holdPoint({
    numbers: { drill_plan: 'No plan for drilling hangs here, and nobody knows the number of one.' },
    words: {
      air_drill: good('An air drill, its hose tagged, a bit no thicker than a pencil lead, held in a guide.'),
      flooded: good('Coolant runs over the place, earth clamps on piston and drill.'),
      out_of_line: good('Barrier up, nobody in line, the one who watches upwind with the extinguisher.'),
    },
  }),
  drilled: ofCavity(({ pressurePa }) =>
    pressurePa > 0
      ? eye('At the last breath of the feed it hisses. Bit out, air off, everybody back.', 'hissed')
      : eye('Through, and nothing came.', 'silent'),
  ),
  hole_tested: holdPoint({
    words: { hole_probed: good('A soft wire goes through the hole and into the cavity, a hand deep.') },
    waits: { gone_quiet: ({ parts }, sinceS) => quiet(parts.cavity, sinceS) },
  }),
}
