// Pictures of one place on a part, for what has no length to go along: a gap, a groove, a nut, a pocket. Each is drawn once
// in box signs with its marks on a second sheet of the same size: 1 and 2 are the mark of a place, 7 and 8 the rest of the
// instrument there, drawn only while it is there.
export interface SpotArt {
  readonly art: readonly string[]
  readonly marks: readonly string[]
}

function sheet(text: string): string[] {
  return text.replace(/^\n/, '').trimEnd().split('\n')
}

function spot(art: string, marks: string): SpotArt {
  return { art: sheet(art), marks: sheet(marks) }
}

/** Ring pushed square into a bore or a ring gauge, seen from the end. */
const ringGap = spot(
  `
╭────────────────────╮
│ ╭──────┤ ├───────╮ │
│ │  ring, square  │ │
│ ╰────────────────╯ │
╰────────────────────╯`,
  `
.
.         1`,
)

const freeGap = spot(
  `
╭──────┤     ├──────╮
│    loose ring,    │
│ nothing round it  │
╰───────────────────╯`,
  `
.       77177`,
)

/** Across the section of a ring, from the face on the bore to the face on the piston. */
const ringSection = spot(
  `
╶──── outer face ─────╴
  ring
╶──── inner face ─────╴`,
  `
.                  7
.                  1
.                  7`,
)

const ringSide = spot(
  `
─────┐ ┌───────┬─────
 land│ │ ring  │land
     │ └───────┤
     └─────────┘
 groove in the piston`,
  `
.     7
.     1
.     7`,
)

const grooveDepth = spot(
  `

─────┐       ┌─────
 land│       │land
     └───────┘
 groove, no ring in it`,
  `
.  7777777777777
.        7
.        1
.        7`,
)

const riderProud = spot(
  `
════ straight edge ══════
┌─────┐         ┌─────┐
│rider│ ┌─────┐ │rider│
│     │ │ring │ │     │
┴─────┴─┴─────┴─┴─────┴`,
  `
.
.        77177`,
)

/** Piston near one end of its stroke; spot 1 is high, spot 2 low. */
const headClearance = spot(
  `
     ║   ┌──────────┐
head ║   │          │
end  ║   │  piston  ╞═══ CE
     ║   │          │
     ║   └──────────┘`,
  `
.
.     717
.
.     828`,
)

const crankClearance = spot(
  `
   ┌──────────┐   ║
   │          │   ║ crank
HE │  piston  ╞═══╫═ end
   │          │   ║
   └──────────┘   ║`,
  `
.
.              717
.
.              828`,
)

/** Piston lying in its bore, looked at from the side, open end left; spot 1 is the top, spot 2 the foot. */
const pistonClearance = spot(
  `
════════ bore, top ════

HE │   piston     ╞══ CE

═══════ bore, foot ════`,
  `
.
7777177
.
8888288`,
)

const crossheadClearance = spot(
  `
═══════ guide, top ═════

  │ crosshead on shoes │

═══════ guide, foot ════`,
  `
.
.       7771777
.
.       8882888`,
)

/** Rod at its packing, from the side; the dial stands on it. */
const runoutTop = spot(
  `
       ┌─┐    top dial
───────┤ ├────────────────
piston │ │  rod  crosshead
───────┤ ├────────────────
packing└─┘  from the side`,
  `
.          1
.          7`,
)

const runoutSide = spot(
  `
packing┌─┐  from above
───────┤ ├────────────────
piston │ │  rod  crosshead
───────┤ ├────────────────
       └─┘    side dial`,
  `
.
.
.
.          7
.          1`,
)

const nut = spot(
  `
  ┌──────┐
┌─┘      └─┐
│   nut    │
└─┐      ┌─┘
  └──────┘  wrench square on`,
  `
.
.
.          177777777777`,
)

/** From the line on the piston to the line on the nut; they were one at snug. */
const nutAngle = spot(
  `
piston ╷
  ┌────┴─┐
┌─┘      └─╴   nut line
│   nut    │
└─┐      ┌─┘`,
  `
.        77
.          77
.            1`,
)

/** Depth gauge on a face that does not turn with the nut, its rod down to the end of the rod. */
const rodEnd = spot(
  `
                        face
──────┐         ┌──────
piston│nut   nut│piston
      │  ├───┤  │
      │  │rod│  │`,
  `
77777777777777777777777
.          7
.          1`,
)

/** Clearance pocket on the head end: hand-wheel and stem outside, its plug and its opening to the cylinder inside. */
const POCKET = `
  ╥ wheel  ┌────────┐
  ║        │   ┌┐   └─────
──╫────────┤───┤│  opening
  ║  stem  │   └┘   ┌─────
  ╨   face └────────┘ cyl.`

const pocketStem = spot(
  POCKET,
  `
.
77777777771`,
)

const pocketWheel = spot(
  POCKET,
  `
. 7
. 7
. 1
. 7
. 7`,
)

export const SPOT_ART = {
  ring_gap: ringGap,
  free_gap: freeGap,
  ring_section: ringSection,
  ring_side: ringSide,
  groove_depth: grooveDepth,
  rider_proud: riderProud,
  head_clearance: headClearance,
  crank_clearance: crankClearance,
  piston_clearance: pistonClearance,
  crosshead_clearance: crossheadClearance,
  runout_top: runoutTop,
  runout_side: runoutSide,
  nut,
  nut_angle: nutAngle,
  rod_end: rodEnd,
  pocket_stem: pocketStem,
  pocket_wheel: pocketWheel,
} as const satisfies Readonly<Record<string, SpotArt>>
