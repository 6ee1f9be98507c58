// One place on a part in a single line, for a screen that has no room for its picture: between what the instrument is held. In box
// signs; the instrument is `#` as everywhere.
import type { SpotKind } from './spot-place.ts'

/** Each at most 28 columns: a sheet of 40 has 29. */
export const SPOT_LINES: Readonly<Record<SpotKind, string>> = {
  ring_gap: 'bore │ ring ──┤#├── ring │',
  free_gap: 'loose ring ──┤###├── ring',
  ring_section: 'outer face │###│ inner face',
  ring_side: 'land │#│ ring │ land',
  groove_depth: 'lands ┤####├ groove bottom',
  rider_proud: 'edge over riders ═#─ ring',
  head_clearance: 'head ║##│ piston ╞══ CE',
  crank_clearance: 'HE │ piston │##║ crank end',
  piston_clearance: 'bore ══#── piston',
  crosshead_clearance: 'guide ══#── crosshead',
  runout_top: 'packing ┤├─#── rod, on top',
  runout_side: 'packing ┤├─#── rod, its side',
  nut: 'nut ┤├####### wrench',
  nut_angle: 'piston line ╷##╷ nut line',
  rod_end: 'face ┤###├ end of the rod',
  pocket_stem: 'wheel ╥######│ face, pocket',
  pocket_wheel: 'wheel #──────│ face, pocket',
}
