// What rings, piston, oil feed and cavities of a hidden machine are made around: the figures of the record and the limits that the
// job judges them by. Only facts, no chance.
import type { Definitions } from '../job/definitions.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { valuesOf, type Window, windowOf } from './facts-limits.ts'
import { type PocketFacts, pocketFacts } from './facts-pocket.ts'
import { type SetFacts, setFacts } from './facts-set.ts'
import { GAPS, HOLLOW, LOAD, NUT, OPEN, PURGE, PUT, RINGS, SET } from './fault.ts'
import type { OpenTruth } from './parts.ts'
import { procedureOf } from './procedure-of.ts'

export interface RingFacts {
  readonly material: string
  readonly radialM: number
  readonly radialLeastM: number
  readonly side: Window
  /** How far a ring has to lie below its land at least. */
  readonly belowM: number
  readonly nominalM: number
  /** Of the piston in the bore as drawn, where it has no riders. */
  readonly clearance: Window
  readonly faceM: number
  readonly riders: { readonly clearance: Window; readonly proudM: number } | null
}

export interface GapFacts {
  readonly window: Window
  readonly newGapM: number
}

export interface CavityFacts {
  readonly isHollow: boolean
  /** Mass of the piston by the record, kg. */
  readonly massKg: number
  readonly tag: string
}

/** Torque in N m, angle in rad, stretch in metres. */
export interface NutFacts {
  readonly torque: Window
  readonly angle: Window
  readonly stretch: Window
}

export interface PartFacts {
  readonly rings: RingFacts | null
  readonly gap: GapFacts | null
  readonly hasFeed: boolean
  readonly cavity: CavityFacts | null
  readonly isClosed: boolean
  readonly pocket: PocketFacts | null
  readonly nut: NutFacts | null
  readonly set: SetFacts | null
  /** Where the record has the pocket of a cylinder that is opened. */
  readonly opened: OpenTruth['pocketEnd'] | null
}

export function partFactsOf(defs: Definitions): Result<PartFacts> {
  const made = new Set(defs.steps.map((placed) => procedureOf(defs, placed)))
  const only = <T>(procedure: string, of: (defs: Definitions) => Result<T>): Result<T | null> =>
    made.has(procedure) ? of(defs) : ok(null)
  const rings = only(RINGS, ringFacts)
  if (!rings.ok) return rings
  const gap = only(GAPS, gapFacts)
  if (!gap.ok) return gap
  const cavity = only(HOLLOW, cavityFacts)
  if (!cavity.ok) return cavity
  const pocket = made.has(LOAD) || made.has(SET) ? pocketFacts(defs.machine) : ok(null)
  if (!pocket.ok) return pocket
  const set = made.has(PUT) || made.has(OPEN) ? setFacts(defs) : ok(null)
  if (!set.ok) return set
  const nut = only(NUT, nutFacts)
  if (!nut.ok) return nut
  return ok({
    rings: rings.value,
    gap: gap.value,
    hasFeed: made.has(GAPS),
    cavity: cavity.value,
    isClosed: made.has(PURGE),
    pocket: pocket.value,
    nut: nut.value,
    set: set.value,
    opened: made.has(OPEN) ? pocketEnd(defs) : null,
  })
}

function ringFacts(defs: Definitions): Result<RingFacts> {
  const { rings, bore } = defs.machine
  if (rings?.radial === undefined)
    return refuse('no-rings', 'Practice needs the rings and their radial thickness in the machine record.')
  if (defs.machine.piston?.expansion === undefined)
    return refuse('no-expansion', 'Practice needs the thermal expansion of the piston in the machine record.')
  const side = windowOf(defs, 'ring-side-clearance-least', 'ring-side-clearance')
  if (!side.ok) return side
  const clearance = windowOf(defs, 'piston-clearance-least', 'piston-clearance')
  if (!clearance.ok) return clearance
  const others = valuesOf(defs, [
    'ring-radial-thickness-least',
    'ring-groove-depth-least',
    'piston-face-squareness',
  ])
  if (!others.ok) return others
  const [radialLeastM = Number.NaN, belowM = Number.NaN, faceM = Number.NaN] = others.value
  const riders = rings.rider_thickness === undefined ? ok(null) : riderFacts(defs)
  if (!riders.ok) return riders
  return ok({
    material: rings.material,
    radialM: rings.radial.si,
    radialLeastM,
    side: side.value,
    belowM,
    nominalM: bore.nominal.si,
    clearance: clearance.value,
    faceM,
    riders: riders.value,
  })
}

function riderFacts(defs: Definitions): Result<RingFacts['riders']> {
  const clearance = windowOf(defs, 'rider-clearance-least', 'rider-clearance')
  if (!clearance.ok) return clearance
  const proud = valuesOf(defs, ['rider-stands-proud-least'])
  if (!proud.ok) return proud
  return ok({ clearance: clearance.value, proudM: proud.value[0] ?? Number.NaN })
}

function gapFacts(defs: Definitions): Result<GapFacts> {
  const { rings } = defs.machine
  if (rings?.new_gap === undefined)
    return refuse('no-rings', 'Practice needs the rings and the end gap of a new one in the machine record.')
  if (rings.joint !== 'butt' && rings.joint !== 'step')
    return refuse(
      'no-joint',
      'Practice of ring gaps needs rings with a butt or a step joint: the limits at hand say nothing of another.',
    )
  const window = windowOf(defs, 'ring-end-gap-least', 'ring-end-gap')
  return window.ok ? ok({ window: window.value, newGapM: rings.new_gap.si }) : window
}

function cavityFacts({ machine }: Definitions): Result<CavityFacts> {
  const { piston } = machine
  if (piston?.mass === undefined || piston.construction === undefined)
    return refuse('no-piston', 'Practice needs construction and mass of the piston in the machine record.')
  return ok({ isHollow: piston.construction === 'hollow', massKg: piston.mass.si, tag: machine.machine })
}

function nutFacts(defs: Definitions): Result<NutFacts> {
  const torque = windowOf(defs, 'nut-torque-least', 'nut-torque')
  if (!torque.ok) return torque
  const angle = windowOf(defs, 'nut-angle-least', 'nut-angle')
  if (!angle.ok) return angle
  const stretch = windowOf(defs, 'nut-stretch-least', 'nut-stretch')
  return stretch.ok ? ok({ torque: torque.value, angle: angle.value, stretch: stretch.value }) : stretch
}

function pocketEnd({ machine }: Definitions): OpenTruth['pocketEnd'] {
  const { pocket, whole_compressor: whole } = machine
  if (pocket === undefined || pocket.kind === 'none') return 'none'
  return whole?.pocket?.end === 'crank' ? 'crank' : 'head'
}
