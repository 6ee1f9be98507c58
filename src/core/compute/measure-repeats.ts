// Computations on readings themselves: repeats, the difference of two, and the size at 20 C.

import { ok, type Result } from '../lib/result.ts'
import { expandedOfTwo } from '../metrology/budget.ts'
import { reduceTo20 } from '../metrology/reduce-to-20.ts'
import { GRUBBS_SOUND_FROM, type GrubbsTest, grubbsTest } from '../statistics/grubbs.ts'
import { summarise } from '../statistics/summary.ts'
import { fromSi, valueIn } from '../units/index.ts'
import type { Computation, Computed, Parameter, TraceStep, Value } from './computation.ts'
import { figured, inUnit } from './figures.ts'
import { n, siValue, type Take, taking, w } from './take.ts'

const GUM = 'JCGM 100:2008 (GUM)'

export function length(name: string, says: string, more: { optional?: true; signed?: true } = {}): Parameter {
  const { optional, signed } = more
  const type = { is: 'quantity', kind: 'length', unit: 'in', ...(signed && { signed }) } as const
  return { name, says, type, ...(optional && { optional }) }
}

/** Metres as inches, for a line of arithmetic. */
export function inches(m: number): string {
  return inUnit(fromSi('length', m), 'in')
}

const REPEATS_IN: readonly Parameter[] = [
  {
    name: 'readings',
    says: 'repeats of one measurement',
    type: { is: 'quantities', kind: 'length', unit: 'in', least: 2 },
  },
  length('resolution', 'step the instrument reads in'),
]

const repeats: Computation = {
  name: 'repeats',
  title: 'Mean and scatter of repeats, and whether one stands out',
  inputs: REPEATS_IN,
  outputs: [
    length('mean', 'mean'),
    length('sd', 'standard deviation of one reading, n - 1'),
    length('sd_of_mean', 'standard uncertainty of the mean'),
    {
      name: 'stands_out',
      says: 'the reading that stands out, by number, or none',
      type: { is: 'word', words: [] },
    },
    {
      name: 'g',
      says: 'its distance from the mean in standard deviations',
      type: { is: 'number' },
      optional: true,
    },
    { name: 'critical', says: 'distance beyond which it stands out', type: { is: 'number' }, optional: true },
  ],
  sources: [
    `${GUM} 4.2.1 to 4.2.3`,
    'NIST/SEMATECH e-Handbook of Statistical Methods 1.3.5.17.1, Grubbs test, two-sided 5 in 100 (from memory)',
  ],
  validity:
    'Repeats of one measurement, same place and instrument. The test wants 7 readings or more; a reading one step of the instrument off never stands out.',
  run: taking(REPEATS_IN, runRepeats),
}

function runRepeats(take: Take): Result<Computed> {
  const values = take.list('readings')
  const summary = summarise(values)
  if (!summary.ok) return summary
  const { mean, sd, sdOfMean } = summary.value
  if (sd === null || sdOfMean === null) throw new Error('two readings or more were declared')
  const test = values.length < 3 ? null : grubbsTest(values, 0.05, take.si('resolution'))
  const found = test?.ok === true ? test.value : null
  const outputs: Record<string, Value> = {
    mean: siValue('length', mean),
    sd: siValue('length', sd),
    sd_of_mean: siValue('length', sdOfMean),
    stands_out: w(found?.standsOut === true ? `reading ${found.at + 1}` : 'none'),
    ...(found !== null && { g: n(found.g), critical: n(found.critical) }),
  }
  const count = values.length
  const trace: TraceStep[] = [
    step('Mean', 'mean = sum / n', `mean of ${count} = ${inches(mean)}`),
    step(
      'Scatter',
      's = sqrt(sum (x - mean)^2 / (n - 1))',
      `s = ${inches(sd)}, ${count - 1} degrees of freedom`,
    ),
    step('Of the mean', 'u = s / sqrt n', `u = ${inches(sd)} / sqrt ${count} = ${inches(sdOfMean)}`),
    ...(found === null ? [] : [grubbsStep(found)]),
  ]
  return ok({ outputs, trace, warnings: repeatWarnings(count, found) })
}

function grubbsStep({ at, value, g, critical }: GrubbsTest): TraceStep {
  const worked = `reading ${at + 1}, ${inches(value)}: G = ${figured(g, 4)}, beyond ${figured(critical, 4)} it stands out`
  return step('Farthest from the mean', 'G = |x - mean| / s', worked)
}

function repeatWarnings(count: number, found: GrubbsTest | null): string[] {
  if (found === null) return ['Two readings cannot tell which of them is off: take a third.']
  const few = `Fewer than ${GRUBBS_SOUND_FROM} readings: whether one stands out is a hint, no more.`
  const out = `Reading ${found.at + 1} (${inches(found.value)}) stands out. It is in the mean: read again and find out why; nothing is left out here.`
  return [...(found.standsOut ? [out] : []), ...(count < GRUBBS_SOUND_FROM ? [few] : [])]
}

const DIFFERENCE_IN: readonly Parameter[] = [
  length('a', 'first reading'),
  length('b', 'second reading, taken from the first'),
  length('a_u', 'measuring error U of the first, k = 2'),
  length('b_u', 'measuring error U of the second, k = 2'),
]

const difference: Computation = {
  name: 'difference',
  title: 'Difference of two readings, with its measuring error',
  inputs: DIFFERENCE_IN,
  outputs: [
    length('difference', 'a - b', { signed: true }),
    length('u', 'U of the difference, k = 2'),
    { name: 'clear', says: 'whether it is clear of zero', type: { is: 'word', words: ['yes', 'no'] } },
  ],
  sources: [`${GUM} 5.1.2`],
  validity: 'Nothing taken as common to both errors: on the safe side for two readings of one session.',
  run: taking(DIFFERENCE_IN, runDifference),
}

function runDifference(take: Take): Result<Computed> {
  const [a, b] = [take.si('a'), take.si('b')]
  const u = expandedOfTwo(take.si('a_u'), take.si('b_u'))
  const isClear = Math.abs(a - b) > u * (1 + 1e-9) + 1e-12
  const unknown = u === 0 ? ['A measuring error of zero is not known of any instrument: give U.'] : []
  return ok({
    outputs: {
      difference: siValue('length', a - b),
      u: siValue('length', u),
      clear: w(isClear ? 'yes' : 'no'),
    },
    trace: [
      step('Difference', 'd = a - b', `d = ${inches(a)} - ${inches(b)} = ${inches(a - b)}`),
      step(
        'Its measuring error',
        'U = sqrt(Ua^2 + Ub^2)',
        `U = sqrt(${inches(take.si('a_u'))}^2 + ${inches(take.si('b_u'))}^2) = ${inches(u)}`,
      ),
    ],
    warnings: isClear
      ? unknown
      : [...unknown, 'The difference is within its measuring error: it may be none at all.'],
  })
}

const MILLIONTHS = { is: 'number', least: 0, most: 40 } as const
const REDUCE_IN: readonly Parameter[] = [
  length('reading', 'what the instrument showed'),
  {
    name: 'part_temp',
    says: 'temperature of the part',
    type: { is: 'quantity', kind: 'temperature', unit: 'degF' },
  },
  {
    name: 'instrument_temp',
    says: 'temperature of the instrument',
    type: { is: 'quantity', kind: 'temperature', unit: 'degF' },
  },
  { name: 'part_alpha', says: 'expansion of the part, millionths per K', type: MILLIONTHS },
  { name: 'instrument_alpha', says: 'expansion of the instrument, millionths per K', type: MILLIONTHS },
]

const reduce: Computation = {
  name: 'size-at-20c',
  title: 'Size at 20 C (68 F) of a part measured warm or cold',
  inputs: REDUCE_IN,
  outputs: [length('size', 'size at 20 C'), length('change', 'size less reading', { signed: true })],
  sources: [
    `${GUM} H.1.1, equation (H.1), solved for the length at 20 C`,
    'ISO 1:2022, reference temperature',
  ],
  validity:
    'One temperature through the part and one through the instrument, -40 to 120 C; expansion up to 40e-6 per K.',
  run: taking(REDUCE_IN, runReduce),
}

function runReduce(take: Take): Result<Computed> {
  const [partC, instrumentC] = ['part_temp', 'instrument_temp'].map((t) => valueIn(take.quantity(t), 'degC'))
  const [ap, ai] = [take.number('part_alpha'), take.number('instrument_alpha')]
  const readingM = take.si('reading')
  const warm = { readingM, partC, instrumentC, partAlpha: ap * 1e-6, instrumentAlpha: ai * 1e-6 }
  const reduced = reduceTo20(warm)
  if (!reduced.ok) return reduced
  const size = reduced.value
  const [tp, ti] = [figured((partC ?? 0) - 20, 4), figured((instrumentC ?? 0) - 20, 4)]
  const worked = `D20 = ${figured(readingM / 0.0254, 7)} x (1 + ${ai}e-6 x ${ti}) / (1 + ${ap}e-6 x ${tp}) = ${figured(size / 0.0254, 7)}`
  const apart = Math.abs((partC ?? 0) - (instrumentC ?? 0))
  return ok({
    outputs: { size: siValue('length', size), change: siValue('length', size - readingM) },
    trace: [step('Size at 20 C', 'D20 = R (1 + ai (Ti - 20)) / (1 + ap (Tp - 20)), degrees C', worked)],
    warnings:
      apart > 5
        ? ['Part and instrument are over 5 K apart: let them come to one temperature and read again.']
        : [],
  })
}

export function step(says: string, formula: string, worked: string): TraceStep {
  return { says, formula, worked }
}

export const MEASURE_REPEATS: readonly Computation[] = [repeats, difference, reduce]
