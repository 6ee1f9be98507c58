// What hazards and measured things are, by the names that the shipped procedures give them: which hazard is the machine being set
// going, and which parts a figure is of. A test holds every shipped procedure against both; names that a lead gave are told by words.
import type { RenewedPart } from './adopt.ts'

/** What a step sets going that lets a hazard in and exposes people to it: the machine, or something on the way to that. */
export type Going = 'start' | 'on-the-way'

/**
 * Hazards of the shipped procedures that are about the driver or about gas on its way back. `by-title`: the same hazard keeps people
 * out of a machine that stands, and is let in too where locks are only lent to a shop; the step says in its title whether it starts.
 * `null`: letting it in sets nothing going.
 */
const GOING: Readonly<Record<string, Going | 'by-title' | null>> = {
  restart: 'start',
  start: 'by-title',
  gas_let_in: 'on-the-way',
  rotation: null,
  barring: null,
  pressure: null,
  mixture: null,
  line_side: null,
  loading: null,
  warming: null,
}

/** For hazards of other names: what only a start, or gas on its way back to service, lets in. */
const STARTED = /\b(driver|machine|compressor|engine|motor)\b.*\bstart/i
const LET_IN = /\bgas let in\b/i
const TITLED = /\bstart/i

/** `name` as people read the hazard; `title` of the step. */
export function goingOf({ id, name }: { id: string; name: string }, title: string): Going | null {
  const known = Object.hasOwn(GOING, id) ? GOING[id] : undefined
  if (known === 'by-title') return TITLED.test(title) ? 'start' : null
  if (known !== undefined) return known
  if (STARTED.test(name)) return TITLED.test(title) ? 'start' : 'on-the-way'
  return LET_IN.test(name) ? 'on-the-way' : null
}

const BORE = ['bore', 'liner'] as const
const NONE = [] as const

/**
 * Parts whose making new or cutting takes away what a figure is of, by `of` of its read step; of a clearance or gap every part that
 * makes it. None: no part of an overhaul, or nothing that stays with one.
 */
export const PARTS_OF: Readonly<Record<string, readonly RenewedPart[]>> = {
  'bore diameter': BORE,
  'counterbore diameter': BORE,
  counterbore: BORE,
  'strip diameter': BORE,
  'finish of the bore': BORE,
  'ridge at the end of ring travel': BORE,
  'liner outside diameter': ['liner'],
  'seat diameter': NONE,
  'ring end gap': ['rings', ...BORE],
  'free gap of the ring': ['rings'],
  'ring radial thickness': ['rings'],
  'ring side clearance': ['rings', 'piston'],
  'gap over the rings under a straight edge': ['rings', 'piston'],
  'groove depth': ['piston'],
  'rider thickness': ['riders'],
  'diameter over the riders': ['riders', 'piston'],
  'piston diameter': ['piston'],
  'piston running clearance': ['piston', 'riders', ...BORE],
  'piston and rod': ['piston', 'rod'],
  'whole swing of the dial, piston face': ['piston'],
  'end clearance head end': ['piston', 'rod'],
  'end clearance crank end': ['piston', 'rod'],
  'rod diameter, top to bottom': ['rod'],
  'rod diameter, side to side': ['rod'],
  'unworn rod diameter': ['rod'],
  'piston fit of the rod': ['rod'],
  'rod runout up and down': ['rod'],
  'rod runout sideways': ['rod'],
  'whole swing of the dial, shoulder': ['rod'],
  'whole swing of the dial, straightness': ['rod'],
  'whole swing of the dial, threads': ['rod'],
  'rod end below its face, slack': ['rod', 'piston'],
  'rod end below its face, tight': ['rod', 'piston'],
  'piston nut torque': ['rod', 'piston'],
  'snug torque of the piston nut': ['rod', 'piston'],
  'turn of the piston nut from snug': ['rod', 'piston'],
  'crosshead running clearance': NONE,
  'dial back at zero': NONE,
  'pocket setting by the hand-wheel': NONE,
  'pocket setting by the stem': NONE,
  'setting standard': NONE,
  'torque of nuts': NONE,
}

/** For what a lead's own procedure calls otherwise: the first that its words name. */
const BY_WORDS: readonly (readonly [RegExp, readonly RenewedPart[]])[] = [
  [/\b(?:counter)?(?:bore|ridge)\b/i, BORE],
  [/\bliner\b/i, ['liner']],
  [/\brings?\b/i, ['rings']],
  [/\briders?\b/i, ['riders']],
  [/\brod\b/i, ['rod']],
  [/\bpiston\b/i, ['piston']],
]

export function partsOf(of: string): readonly RenewedPart[] {
  const name = of.trim().toLowerCase()
  if (Object.hasOwn(PARTS_OF, name)) return PARTS_OF[name] ?? NONE
  const [, parts = NONE] = BY_WORDS.find(([word]) => word.test(name)) ?? []
  return parts
}

/** Whether a hazard is in the table; for the test that holds the shipped procedures against it. */
export function isGoingKnown(id: string): boolean {
  return Object.hasOwn(GOING, id)
}
