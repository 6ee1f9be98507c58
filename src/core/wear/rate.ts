// How fast a part wears, and how well that is known. Two overhauls show a rate but no scatter; three begin to.
import { ok, type Result, refuse } from '../lib/result.ts'
import { expandedOfTwo } from '../metrology/budget.ts'
import { fitLine, type Line } from '../statistics/line.ts'
import { coverageFactor } from '../statistics/student-t.ts'
import { soundHistory, type WearHistory, type WearReading, wornSide } from './history.ts'

/** What the interval of a rate accounts for. */
export type Basis =
  | 'measuring error only'
  | 'scatter about the line'
  | 'measuring error, wider than the scatter'

export interface WearRate {
  /** Metres per service hour, wear counted positive whichever way the reading goes. */
  readonly perHour: number
  /** Half the interval about it, metres per hour: k = 2, or 95 in 100 by t. */
  readonly U: number
  readonly basis: Basis
  readonly from: WearReading
  readonly to: WearReading
  /** From three readings on; on the worn side. */
  readonly line: Line | null
  /** Half width of the band for one further reading is this times the spread at that place; metres. Null for two. */
  readonly band: number | null
  readonly t: number | null
}

const LEVEL = 0.95

/**
 * Wear rate from two overhauls, with measuring error only: U = sqrt(U1^2 + U2^2) / hours between (JCGM 100:2008 5.1.2;
 * hours taken as exact). From three on by least squares, with the wider of two intervals: t x scatter about the line,
 * or the measuring error, so that points which happen to line up do not promise more than the instrument can.
 *
 * Refuses what `soundHistory` refuses, and `contradiction`: a rate below zero by more than its interval (HOLD).
 */
export function wearRate(history: WearHistory): Result<WearRate> {
  const sound = soundHistory(history)
  if (!sound.ok) return sound
  const { readings } = history
  const [from, to] = [readings[0], readings[readings.length - 1]]
  if (from === undefined || to === undefined) throw new Error('a sound history has two ends')
  const rate = readings.length === 2 ? ok(ofTwo(history, from, to)) : ofMany(history, from, to)
  if (!rate.ok) return rate
  if (rate.value.perHour < -rate.value.U)
    return refuse(
      'contradiction',
      'HOLD: the wear goes back over these overhauls by more than its error; read again, or find what was renewed.',
    )
  return rate
}

function ofTwo(history: WearHistory, from: WearReading, to: WearReading): WearRate {
  const hours = to.hours - from.hours
  const perHour = (wornSide(history, to.value) - wornSide(history, from.value)) / hours
  const U = expandedOfTwo(from.U, to.U) / hours
  return { perHour, U, basis: 'measuring error only', from, to, line: null, band: null, t: null }
}

function ofMany(history: WearHistory, from: WearReading, to: WearReading): Result<WearRate> {
  const points = history.readings.map((r) => ({ x: r.hours, y: wornSide(history, r.value) }))
  const fitted = fitLine(points)
  if (!fitted.ok) return fitted
  const line = fitted.value
  const t = coverageFactor(LEVEL, line.df)
  const scatter = t * (line.residualSd ?? 0)
  const measuring = Math.max(...history.readings.map((r) => r.U))
  const band = Math.max(scatter, measuring)
  const basis = scatter >= measuring ? 'scatter about the line' : 'measuring error, wider than the scatter'
  return ok({ perHour: line.slope, U: band / Math.sqrt(line.sxx), basis, from, to, line, band, t })
}
