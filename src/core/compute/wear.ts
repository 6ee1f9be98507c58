// The computations on wear over several overhauls; here the service hours left to each limit.
import { formatNumber } from '../lib/decimal.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { spreadAt } from '../statistics/line.ts'
import { type WearHistory, wornSide } from '../wear/history.ts'
import { type HoursLeft, hoursToLimits } from '../wear/hours-left.ts'
import type { WearRate } from '../wear/rate.ts'
import type { Computation, Computed, Parameter, TraceStep } from './computation.ts'
import { inches, step } from './measure-repeats.ts'
import { siValue, type Take, taking } from './take.ts'
import {
  HISTORY_IN,
  historyOf,
  RATE_OUT,
  rateOutputs,
  rateTrace,
  rateWarnings,
  WEAR_RATE,
  WEAR_SOURCES,
  WEAR_VALIDITY,
} from './wear-rate.ts'

const MOST_LIMITS = 3

const HOURS_IN: readonly Parameter[] = [
  ...HISTORY_IN,
  {
    name: 'limits',
    says: `the size at each limit, up to ${MOST_LIMITS}`,
    type: { is: 'quantities', kind: 'length', unit: 'in', least: 1 },
  },
  {
    name: 'first_set',
    says: 'whether this is the first set of a new ring material',
    type: { is: 'word', words: ['yes', 'no', 'unknown'] },
  },
]

const hoursLeft: Computation = {
  name: 'hours-left',
  title: 'Service hours left to each limit, as an interval',
  inputs: HOURS_IN,
  outputs: [...RATE_OUT, ...Array.from({ length: MOST_LIMITS }, (_, i) => hoursOut(i + 1)).flat()],
  sources: [
    ...WEAR_SOURCES,
    'First set of a new material: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance (1996), p. 217, and inference',
  ],
  validity: `${WEAR_VALIDITY} Earliest: about 97 in 100 that the limit is not reached before it, if wear goes on in a straight line.`,
  run: taking(HOURS_IN, runHours),
}

function hoursOut(i: number): Parameter[] {
  const type = { is: 'quantity', kind: 'time', unit: 'h' } as const
  return [
    {
      name: `earliest_${i}`,
      says: `limit ${i}: hours after the last reading, the end to plan by`,
      type,
      optional: i > 1,
    },
    { name: `expected_${i}`, says: `limit ${i}: straight on at the rate found`, type, optional: true },
    {
      name: `latest_${i}`,
      says: `limit ${i}: late end; none when wear may never get there`,
      type,
      optional: true,
    },
  ]
}

function runHours(take: Take): Result<Computed> {
  const limits = take.list('limits')
  if (limits.length > MOST_LIMITS)
    return refuse('too-many-limits', `Give up to ${MOST_LIMITS} limits at a time.`)
  const history = historyOf(take)
  if (!history.ok) return history
  const found = hoursToLimits(history.value, limits, take.word('first_set') as 'yes' | 'no' | 'unknown')
  if (!found.ok) return found
  const outputs = rateOutputs(found.value.rate)
  const trace = rateTrace(history.value, found.value.rate)
  const warnings = rateWarnings(found.value.rate)
  for (const [i, left] of found.value.limits.entries()) {
    for (const [name, hours] of Object.entries({
      earliest: left.earliest,
      expected: left.expected,
      latest: left.latest,
    }))
      if (hours !== null) outputs[`${name}_${i + 1}`] = siValue('time', hours * 3600)
    trace.push(hoursStep(i + 1, left, history.value, found.value.rate))
    warnings.push(...hoursWarnings(i + 1, left))
  }
  warnings.push(
    'Earliest is the end to plan by: the limit may be reached from then on. Latest is no promise.',
  )
  return ok({ outputs, trace, warnings })
}

function hoursStep(i: number, left: HoursLeft, history: WearHistory, rate: WearRate): TraceStep {
  const { line, to, band } = rate
  const now = line === null ? wornSide(history, to.value) : line.yMean + line.slope * (to.hours - line.xMean)
  const gap = wornSide(history, left.limit) - now
  const width = line === null || band === null ? to.U : band * spreadAt(line, to.hours)
  const wide = `band now ${inches(width)}; earliest ${hoursText(left.earliest)}, expected ${hoursText(left.expected)}, latest ${hoursText(left.latest)}`
  return step(
    `To limit ${i}, ${inches(left.limit)}`,
    'h = what is left / r; ends where the limit meets the edges of the band',
    `left ${inches(gap)} of wear at ${inches(rate.perHour * 1000)} per 1000 h; ${wide}`,
  )
}

function hoursText(hours: number | null): string {
  return hours === null ? 'none' : `${formatNumber(hours, 0)} h`
}

function hoursWarnings(i: number, { earliest, expected, latest, beyondRecord }: HoursLeft): string[] {
  return [
    ...(latest === 0
      ? [`Limit ${i} is reached.`]
      : earliest === 0
        ? [`Limit ${i} may be reached already.`]
        : []),
    ...(expected !== null && latest === null
      ? [`Limit ${i}: no late end, wear as slow as none is within the interval.`]
      : []),
    ...(beyondRecord
      ? [`Limit ${i} lies further ahead than the record is long: measure again before then.`]
      : []),
  ]
}

export const WEAR: readonly Computation[] = [WEAR_RATE, hoursLeft]
