// The ideal PV cycle of one end: its corners, its work in closed form and by adding up the curve, points for a plot,
// and the pressure at any place of the piston.
import { ok, type Result, refuse } from '../lib/result.ts'
import { GREATEST_CLEARANCE } from './clearance.ts'
import { aboveZero, exponentFault, firstFault, GREATEST_RATIO, sound, within } from './guard.ts'
import { workFactor } from './power.ts'

export interface CycleInputs {
  readonly sweptM3: number
  /** Clearance over swept volume of this end. */
  readonly clearance: number
  /** Absolute, in the cylinder. */
  readonly suctionPa: number
  readonly dischargePa: number
  readonly compressionN: number
  /** Exponent of re-expansion; with the same for both, clearance drops out of the work per gas drawn in. */
  readonly expansionN: number
}

export interface PvPoint {
  readonly volumeM3: number
  readonly pressurePa: number
}

export interface PvCorners {
  /** Discharge valve shuts: clearance volume. */
  readonly dischargeEnd: PvPoint
  /** Suction valve opens: clearance gas has come down to suction pressure. */
  readonly suctionStart: PvPoint
  /** Suction valve shuts: swept volume and clearance. */
  readonly suctionEnd: PvPoint
  /** Discharge valve opens. */
  readonly dischargeStart: PvPoint
}

function cycleFault(cycle: CycleInputs) {
  const { suctionPa, dischargePa } = cycle
  return firstFault(
    aboveZero('swept volume', cycle.sweptM3),
    within('swept volume in cubic metres', cycle.sweptM3, 0, 100),
    within('clearance over swept volume', cycle.clearance, 0, GREATEST_CLEARANCE),
    aboveZero('suction pressure', suctionPa),
    within('discharge pressure in Pa', dischargePa, suctionPa, 1e9),
    within('pressure ratio', dischargePa / suctionPa, 1, GREATEST_RATIO),
    exponentFault(cycle.compressionN),
    exponentFault(cycle.expansionN),
  )
}

/**
 * V1 = C Vs at Pd; V2 = V1 r^(1/n_e) at Ps; V3 = Vs (1 + C) at Ps; V4 = V3 / r^(1/n_c) at Pd. Cubic metres, Pa
 * absolute.
 * Source: P. K. Nag, Engineering Thermodynamics, ch. 18 (cycle with clearance); Bloch & Hoefner 1996, p. 19.
 * Refuses: an input missing or out of range; `no-flow` where the re-expansion fills the stroke.
 *
 * @example swept 1 L, C 10 %, 1 to 3 bar, n 1.3: suction opens at 0.2328 L, discharge at 0.4725 L
 */
export function pvCorners(cycle: CycleInputs): Result<PvCorners> {
  const fault = cycleFault(cycle)
  if (fault !== null) return fault
  const { sweptM3, clearance, suctionPa, dischargePa } = cycle
  const ratio = dischargePa / suctionPa
  const least = clearance * sweptM3
  const most = least + sweptM3
  const opens = least * ratio ** (1 / cycle.expansionN)
  if (opens >= most)
    return refuse(
      'no-flow',
      'The gas left in the clearance fills the whole stroke: the suction valve never opens.',
    )
  return ok({
    dischargeEnd: { volumeM3: least, pressurePa: dischargePa },
    suctionStart: { volumeM3: opens, pressurePa: suctionPa },
    suctionEnd: { volumeM3: most, pressurePa: suctionPa },
    dischargeStart: { volumeM3: most / ratio ** (1 / cycle.compressionN), pressurePa: dischargePa },
  })
}

/**
 * Work put into the gas each cycle, joules: Ps V3 f(r, n_c) - Ps V2 f(r, n_e), f = n/(n-1)(r^((n-1)/n) - 1). With one
 * exponent, Ps (V3 - V2) f. Source and refusals: pvCorners.
 *
 * @example swept 3.976 L (150 x 225 mm), C 5 %, 1 to 6.5 bar, n 1.3: 781 J
 */
export function cycleWork(cycle: CycleInputs): Result<number> {
  const corners = pvCorners(cycle)
  if (!corners.ok) return corners
  const ratio = cycle.dischargePa / cycle.suctionPa
  const { suctionStart, suctionEnd } = corners.value
  const put = suctionEnd.volumeM3 * workFactor(ratio, cycle.compressionN)
  const back = suctionStart.volumeM3 * workFactor(ratio, cycle.expansionN)
  return sound('work', cycle.suctionPa * (put - back))
}

/**
 * Points once round the cycle from the end of discharge, `perCurve` steps on each of the two curves; the level lines
 * need only their ends. The first point is repeated last, so that the loop closes.
 * Refuses: as pvCorners; `perCurve` not a whole number from 2 to 5000.
 */
export function pvPoints(cycle: CycleInputs, perCurve: number): Result<readonly PvPoint[]> {
  if (!Number.isInteger(perCurve) || perCurve < 2 || perCurve > 5000)
    return refuse('steps', 'The steps on each curve are not a whole number from 2 to 5000.')
  const corners = pvCorners(cycle)
  if (!corners.ok) return corners
  const { dischargeEnd, suctionStart, suctionEnd, dischargeStart } = corners.value
  const expansion = curve(dischargeEnd, suctionStart, cycle.expansionN, perCurve)
  const compression = curve(suctionEnd, dischargeStart, cycle.compressionN, perCurve)
  return ok([...expansion, ...compression, dischargeEnd])
}

/** Both ends exact; between them P V^n is constant, in equal steps of volume. */
function curve(from: PvPoint, to: PvPoint, n: number, steps: number): PvPoint[] {
  const inner = Array.from({ length: steps - 1 }, (_, i) => {
    const volumeM3 = from.volumeM3 + ((to.volumeM3 - from.volumeM3) * (i + 1)) / steps
    // With no clearance the curve is a straight drop at volume 0.
    const pressurePa = from.volumeM3 === 0 ? to.pressurePa : from.pressurePa * (from.volumeM3 / volumeM3) ** n
    return { volumeM3, pressurePa }
  })
  return [from, ...inner, to]
}

/**
 * Second method for cycleWork: the area inside the points by the trapezium rule, joules. It knows nothing of the
 * closed form. Source: definition of indicated work, the area of the diagram.
 */
export function enclosedWork(points: readonly PvPoint[]): number {
  return points.slice(1).reduce((sum, point, i) => {
    const before = points[i] as PvPoint
    return sum - ((point.pressurePa + before.pressurePa) / 2) * (point.volumeM3 - before.volumeM3)
  }, 0)
}

export interface EndPressure {
  readonly clearance: number
  readonly suctionPa: number
  readonly dischargePa: number
  readonly n: number
  /** False: the end is open to suction all the way round. */
  readonly acts: boolean
}

/**
 * Pressure in an end with the piston at `travel` (0 at this end's dead centre, 1 at the other), going away or coming
 * back, Pa absolute. Ideal valves. Where the clearance is so large that suction never opens, the gas rides one curve
 * up and down. Inputs are not looked at.
 */
export function pressureAt(end: EndPressure, travel: number, goingAway: boolean): number {
  const { clearance: c, suctionPa, dischargePa, n } = end
  if (!end.acts) return suctionPa
  const expanding = c === 0 && travel === 0 ? dischargePa : dischargePa * (c / (travel + c)) ** n
  const neverOpens = dischargePa * (c / (1 + c)) ** n >= suctionPa
  if (goingAway || neverOpens) return Math.max(suctionPa, expanding)
  if (travel + c === 0) return dischargePa
  return Math.min(dischargePa, suctionPa * ((1 + c) / (travel + c)) ** n)
}
