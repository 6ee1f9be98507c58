// A picture told in words, for people who hear the sheet or cannot be shown a drawing: the same place, the same readings, in the same
// order.
import { axisText, SEEN_FROM } from './clock.ts'
import type { FigureKind } from './figures.ts'
import { hereIn } from './here.ts'
import { type DrawingKind, isSpot } from './kinds.ts'
import type { DrawnPlace } from './place.ts'
import { NO_READING, type ProfileRow, profileCells } from './profile-cells.ts'
import type { DrawnStation } from './types.ts'

/** What the instrument is set to in each picture, as the picture shows it. The compiler asks for the words of a new kind. */
const SET_TO: Readonly<Record<DrawingKind, string>> = {
  bore: 'across the bore',
  bore_wall: 'on the wall of the bore',
  rod: 'on the rod, its piston end to the head end',
  piston: 'on the piston',
  riders: 'on the piston, a rider at each end and the rings between',
  liner: 'on the outside of the liner',
  seat: 'inside the seat of the liner',
  cylinder: 'on the outside of the cylinder',
  gas_way: 'on the way of the gas, from suction through the cylinder to discharge',
  ring_gap: 'between the ends of the ring, which lies square in bore or gauge',
  free_gap: 'between the ends of the loose ring, with nothing round it',
  ring_section: 'across the ring, from the face on the bore to the face on the piston',
  ring_side: 'between the side of the ring and the land, in the groove',
  groove_depth: 'from the two lands down to the bottom of the groove, no ring in it',
  rider_proud: 'from a straight edge over both riders down to the ring between them',
  head_clearance: 'between the head-end face of the piston and the head',
  crank_clearance: 'between the crank-end face of the piston and the crank-end wall',
  piston_clearance: 'between piston and bore, seen from the side',
  crosshead_clearance: 'between the shoe of the crosshead and its guide, seen from the side',
  runout_top: 'dial standing on top of the rod, at the packing',
  runout_side: 'dial against the side of the rod, at the packing',
  nut: 'wrench square on the nut',
  nut_angle: 'from the line on the piston to the line on the nut',
  rod_end: 'depth gauge on a face that does not turn with the nut, down to the end of the rod',
  pocket_stem: 'along the stem of the pocket, from its face to the hand-wheel',
  pocket_wheel: 'on the hand-wheel of the pocket',
}

const FIGURES: Readonly<Record<FigureKind, string>> = {
  piston_plugs:
    'Picture: the piston on the bench, seen from the side; the face with the plugs looks at a wall or a shield, and nobody stands in line with a plug or a vent.',
}

/** The picture of a step where nothing is read. */
export function tellFigure(kind: FigureKind): string {
  return FIGURES[kind]
}

/** Where the instrument is set, which place it is of how many and how it lies; then what is measured and to come beside it. */
export function tellPlace({ kind, stations, here, axis }: DrawnPlace & { readonly here: string }): {
  where: string
  beside: string[]
} {
  const { current } = hereIn(stations, here)
  const order = [...stations].sort((a, b) => a.at - b.at)
  const clock = axis === undefined ? undefined : axisText(axis)
  const lies = clock === undefined ? [] : [`from ${clock}, ${SEEN_FROM}`]
  const along = isSpot(kind) ? '' : ' along it'
  const nth = order.length < 2 ? [] : [`${order.indexOf(current) + 1} of ${order.length}${along}`]
  const others = order.filter((station) => station !== current)
  const measured = others.flatMap((s) => (s.value === undefined ? [] : [`${nameOf(s)} ${s.value}`]))
  const toCome = others.filter((s) => s.value === undefined).map(nameOf)
  return {
    where: `Where: ${[nameOf(current), ...nth, SET_TO[kind], ...lies].join(', ')}.`,
    beside: [
      ...(measured.length === 0 ? [] : [`Measured: ${measured.join('; ')}.`]),
      ...(toCome.length === 0 ? [] : [`To come: ${toCome.join('; ')}.`]),
    ],
  }
}

function nameOf({ words, label }: DrawnStation): string {
  return words ?? label
}

/** Each line of measurement with all its figures from the head end on; nothing until two stations have one. */
export function tellProfile(profile: {
  readonly stations: readonly DrawnStation[]
  readonly rows: readonly ProfileRow[]
  readonly unit: string
  readonly decimals: number
}): string[] {
  const { stations, rows } = profileCells(profile)
  const measured = stations.filter((_, i) => rows.some((row) => row.steps[i] !== undefined))
  if (measured.length < 2) return []
  return [
    `Along the bore, in ${profile.unit === 'in' ? 'inches' : profile.unit}:`,
    ...rows.map(({ label, figures }) => {
      const told = stations.map((name, i) => `${name} ${figures[i] === NO_READING ? 'to come' : figures[i]}`)
      return `${label}: ${told.join(', ')}.`
    }),
  ]
}
