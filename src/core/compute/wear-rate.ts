// The computation of a wear rate from several overhauls, and what the hours left share with it.
import { ok, type Result, refuse } from '../lib/result.ts'
import { type Renewal, type WearHistory, wornSide } from '../wear/history.ts'
import { type WearRate, wearRate } from '../wear/rate.ts'
import type { Computation, Parameter, TraceStep, Value } from './computation.ts'
import { figured } from './figures.ts'
import { inches, length, step } from './measure-repeats.ts'
import { siValue, type Take, taking, w } from './take.ts'

const RENEWALS: readonly Renewal[] = ['nothing', 'reline', 'rebore', 'material', 'unknown']

export const HISTORY_IN: readonly Parameter[] = [
  {
    name: 'readings',
    says: 'the reading at each overhaul, oldest first',
    type: { is: 'quantities', kind: 'length', unit: 'in', least: 1 },
  },
  {
    name: 'hours',
    says: 'service hours (run, not calendar) at each reading',
    type: { is: 'quantities', kind: 'time', unit: 'h', least: 1 },
  },
  length('u', 'measuring error U of one reading, k = 2'),
  {
    name: 'wears',
    says: 'which way wear takes the reading',
    type: { is: 'word', words: ['larger', 'smaller'] },
  },
  {
    name: 'renewed',
    says: 'what was done to the part between the first and last reading',
    type: { is: 'word', words: RENEWALS },
  },
]
export const RATE_OUT: readonly Parameter[] = [
  length('per_1000h', 'wear in 1000 service hours', { signed: true }),
  length('per_1000h_low', 'low end of its interval', { signed: true }),
  length('per_1000h_high', 'high end of its interval', { signed: true }),
  { name: 'basis', says: 'what the interval accounts for', type: { is: 'word', words: [] } },
]
export const WEAR_SOURCES = [
  'JCGM 100:2008 (GUM) 5.1.2, error of a difference',
  'D. C. Montgomery & G. C. Runger, Applied Statistics and Probability for Engineers, ch. 11, line and prediction interval',
  'Straight-line wear: common practice, no source',
]
export const WEAR_VALIDITY =
  'One part, one material, like service throughout; never across a reline, rebore or change of material. Service hours, not calendar time.'

export function historyOf(take: Take): Result<WearHistory> {
  const [values, seconds] = [take.list('readings'), take.list('hours')]
  if (values.length !== seconds.length)
    return refuse(
      'counts-differ',
      `${values.length} readings and ${seconds.length} hours: one of each for every overhaul.`,
    )
  const since = take.word('renewed') as Renewal
  // Where it was done within the record is not asked: a rate over the whole of it is refused either way.
  const readings = values.map((value, i) => ({
    value,
    hours: (seconds[i] ?? 0) / 3600,
    U: take.si('u'),
    since,
  }))
  return ok({ readings, wears: take.word('wears') === 'larger' ? 'larger' : 'smaller' })
}

export function rateOutputs({ perHour, U, basis }: WearRate): Record<string, Value> {
  return {
    per_1000h: siValue('length', perHour * 1000),
    per_1000h_low: siValue('length', (perHour - U) * 1000),
    per_1000h_high: siValue('length', (perHour + U) * 1000),
    basis: w(basis),
  }
}

export function rateTrace(history: WearHistory, rate: WearRate): TraceStep[] {
  const { from, to, line, t, band } = rate
  const per1000 = `${inches(rate.perHour * 1000)} per 1000 h`
  const half = inches(rate.U * 1000)
  if (line === null || t === null || band === null) {
    const worn = wornSide(history, to.value) - wornSide(history, from.value)
    const hours = figured(to.hours - from.hours)
    const errors = `sqrt(${inches(from.U)}^2 + ${inches(to.U)}^2)`
    return [
      step('Rate', 'r = wear between / hours between', `r = ${inches(worn)} / ${hours} h = ${per1000}`),
      step(
        'Measuring error only',
        'U = sqrt(U1^2 + U2^2) / hours',
        `U = ${errors} / ${hours} h = ${half} per 1000 h`,
      ),
    ]
  }
  const scatter = line.residualSd ?? 0
  const width = `band = max(${figured(t, 4)} x ${inches(scatter)}, ${inches(Math.max(...history.readings.map((x) => x.U)))}) = ${inches(band)}`
  return [
    step(
      'Line through the readings',
      'r = sum (h - hm)(x - xm) / Shh',
      `r over ${line.n} readings = ${per1000}`,
    ),
    step(
      'Scatter about it',
      's = sqrt(SSE / (n - 2))',
      `s = ${inches(scatter)}, ${line.df} degrees of freedom`,
    ),
    step('Wider of scatter and measuring error', 'band = max(t s, U)', width),
    step('Interval of the rate', 'U = band / sqrt Shh', `U = ${half} per 1000 h`),
  ]
}

export function rateWarnings({ perHour, U, line, basis }: WearRate): string[] {
  return [
    ...(line === null
      ? ['Two overhauls show a rate but no scatter: the interval is measuring error only.']
      : []),
    ...(line !== null && line.n < 5
      ? [`Only ${line.n} overhauls: the interval is wide because so few say little.`]
      : []),
    ...(basis.startsWith('measuring error, wider')
      ? ['The readings lie closer to a line than the instrument can tell.']
      : []),
    ...(perHour - U <= 0 ? ['No wear at all is within the interval.'] : []),
  ]
}

export const WEAR_RATE: Computation = {
  name: 'wear-rate',
  title: 'Wear per 1000 service hours from two or more overhauls',
  inputs: HISTORY_IN,
  outputs: RATE_OUT,
  sources: WEAR_SOURCES,
  validity: WEAR_VALIDITY,
  run: taking(HISTORY_IN, (take) => {
    const history = historyOf(take)
    if (!history.ok) return history
    const found = wearRate(history.value)
    if (!found.ok) return found
    const { value } = found
    return ok({
      outputs: rateOutputs(value),
      trace: rateTrace(history.value, value),
      warnings: rateWarnings(value),
    })
  }),
}
