// The computation on repeats of several places together: how far one instrument's readings of one place lie apart.
import { ok, type Result, refuse } from '../lib/result.ts'
import {
  BEYOND_CHANCE,
  type PlaceReadings,
  type Repeatability,
  repeatability,
  STANDS_OUT,
} from '../metrology/repeatability.ts'
import type { Computation, Computed, Parameter, Value } from './computation.ts'
import { inches, length, step } from './measure-repeats.ts'
import { n, siValue, type Take, taking, w } from './take.ts'

const POOL_IN: readonly Parameter[] = [
  {
    name: 'readings',
    says: 'all repeats, place after place',
    type: { is: 'quantities', kind: 'length', unit: 'in', least: 2 },
  },
  {
    name: 'counts',
    says: 'how many of them belong to each place, in the same order',
    type: { is: 'quantities', kind: 'ratio', unit: '1', least: 1 },
  },
  length('resolution', 'step the instrument reads in'),
]

const pooled: Computation = {
  name: 'pooled-repeats',
  title: 'Scatter of repeats, pooled over places, and which place stands out',
  inputs: POOL_IN,
  outputs: [
    length('s', 'scatter of one reading, pooled'),
    { name: 'dof', says: 'its degrees of freedom', type: { is: 'number' } },
    length('u', 'what the repeats add to a combined reading, k = 1, where the place does not stand out'),
    {
      name: 'stands_out',
      says: 'the places that carry their own, by number, or none',
      type: { is: 'word', words: [] },
    },
  ],
  sources: [
    'JCGM 100:2008 (GUM) 4.2.4 and H.5.2, pooled variance',
    'ISO 5725-2:1994 7.3.3, Cochran, at 5 and 1 in 100 (clause from memory)',
    "R. U. E. 't Lam, Analytica Chimica Acta 659 (2010) 68-84, the same for places read unlike often (from memory)",
  ],
  validity:
    'One instrument, one quantity, the same hands. The median of a place counts, with the error of a mean of two. A place no further apart than one step never stands out; one that chance would have in 1 of 100 counts in the pool as far as that and no further.',
  run: taking(POOL_IN, runPool),
}

function runPool(take: Take): Result<Computed> {
  const [values, counts] = [take.list('readings'), take.list('counts')]
  const isWhole = counts.every((count) => Number.isInteger(count) && count >= 1)
  if (!isWhole || counts.reduce((sum, count) => sum + count, 0) !== values.length)
    return refuse('counts-unlike', `counts must be whole numbers that come to ${values.length} together.`)
  let from = 0
  const places = counts.map((count, i): PlaceReadings => {
    from += count
    return { place: String(i + 1), values: values.slice(from - count, from) }
  })
  const found = repeatability(places, take.si('resolution'))
  const { s, dof, error } = found
  if (s === null || error === null)
    return refuse('too-few-readings', 'Scatter shows only where a place is read twice or more.')
  const out = found.places.filter(({ standsOut }) => standsOut)
  const outputs: Record<string, Value> = {
    s: siValue('length', s),
    dof: n(dof),
    u: siValue('length', error.u),
    stands_out: w(out.length === 0 ? 'none' : out.map(({ place }) => place).join(', ')),
  }
  return ok({ outputs, trace: poolTrace(found, s), warnings: out.map(warned) })
}

function poolTrace({ places, dof }: Repeatability, s: number) {
  const own = places.flatMap((one) =>
    one.ownS === null ? [] : [`${one.place}: ${inches(one.ownS)} (${one.n} readings)`],
  )
  const held = places.filter(({ isHeld }) => isHeld).map(({ place }) => place)
  const as = held.length === 0 ? '' : `; place ${held.join(', ')} with no more than chance allows`
  return [
    step('Scatter at each place', 's = sqrt(sum (x - mean)^2 / (n - 1))', own.join('; ')),
    step('Pooled', 's^2 = sum((n - 1) s^2) / sum(n - 1)', `s = ${inches(s)}, ${dof} degrees of freedom${as}`),
    step(
      'On a combined reading',
      'u = s / sqrt 2',
      `u = ${inches(s)} / sqrt 2 = ${inches(s / Math.SQRT2)}; a single reading has s`,
    ),
  ]
}

function warned({ place, spread }: Repeatability['places'][number]): string {
  return `Place ${place} stands out (Cochran, ${STANDS_OUT * 100} in 100): its readings lie ${inches(spread)} apart. It carries its own, and counts in the pool as far as ${BEYOND_CHANCE * 100} in 100.`
}

export const MEASURE_POOL: readonly Computation[] = [pooled]
