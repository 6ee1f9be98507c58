// Computations on deciding: the chance of being inside the limits, and the guard band that bounds the chance of error.
import { ok, type Result, refuse } from '../lib/result.ts'
import { conformance, guardBandRisk } from '../metrology/conformance.ts'
import { inHundred } from '../metrology/conformity.ts'
import type { Computation, Computed, Parameter } from './computation.ts'
import { figured } from './figures.ts'
import { inches, length, step } from './measure-repeats.ts'
import { n, siValue, type Take, taking } from './take.ts'

const K: Parameter = {
  name: 'k',
  says: 'the k that U is stated with',
  type: { is: 'number', least: 1, most: 4 },
}

const CHANCE_IN: readonly Parameter[] = [
  length('value', 'measured value'),
  length('u', 'its measuring error U'),
  K,
  length('lower', 'lower limit', { optional: true }),
  length('upper', 'upper limit', { optional: true }),
]

const chance: Computation = {
  name: 'conformance',
  title: 'Chance that a measured size is inside its limits in truth',
  inputs: CHANCE_IN,
  outputs: ['inside', 'below', 'above'].map((name) => ({
    name,
    says: name === 'inside' ? 'chance of being inside' : `chance of being ${name}`,
    type: { is: 'number', least: 0, most: 1 } as const,
    ...(name !== 'inside' && { optional: true }),
  })),
  sources: ['JCGM 106:2012 7.3 (one limit), 7.4 (two limits)'],
  validity: 'Normal error, nothing else known of the part; one limit or both.',
  run: taking(CHANCE_IN, runChance),
}

function runChance(take: Take): Result<Computed> {
  const [value, k] = [take.si('value'), take.number('k')]
  const u = take.si('u') / k
  const [lower, upper] = ['lower', 'upper'].map((name) => (take.has(name) ? take.si(name) : undefined))
  const found = conformance(value, u, { lower, upper })
  if (!found.ok) return found
  const { inside, below, above } = found.value
  const side = (name: string, sign: string, limit: number | undefined, part: number, z: number) =>
    limit === undefined
      ? []
      : [step(`Beyond the ${name} limit`, `Phi(${sign} / u)`, `Phi(${figured(z, 4)}) = ${figured(part, 4)}`)]
  const trace = [
    step('Standard uncertainty', 'u = U / k', `u = ${inches(take.si('u'))} / ${k} = ${inches(u)}`),
    ...side('lower', '(TL - y)', lower, below, ((lower ?? 0) - value) / u),
    ...side('upper', '(y - TU)', upper, above, (value - (upper ?? 0)) / u),
    step('Inside', 'pc = 1 - beyond', `pc = ${figured(inside, 4)}`),
  ]
  const doubt = `The chance of being wrong to call it inside is ${inHundred(1 - inside)} in 100.`
  return ok({
    outputs: {
      inside: n(inside),
      ...(lower !== undefined && { below: n(below) }),
      ...(upper !== undefined && { above: n(above) }),
    },
    trace,
    warnings: inside < 0.977 ? [doubt] : [],
  })
}

const GUARD_IN: readonly Parameter[] = [
  length('limit', 'the limit'),
  { name: 'bound', says: 'which way it bounds', type: { is: 'word', words: ['at-most', 'at-least'] } },
  length('u', 'measuring error U of the value to be judged'),
  K,
  {
    name: 'share',
    says: 'guard band as a share of U; 1 when left out',
    type: { is: 'number', least: 0, most: 5 },
    optional: true,
  },
]

const guard: Computation = {
  name: 'guard-band',
  title: 'How far inside a limit a size must read to be accepted, and the chance left of being wrong',
  inputs: GUARD_IN,
  outputs: [
    length('accept', 'accepted up to here (at-least: from here)'),
    length('reject', 'beyond for sure past here'),
    {
      name: 'risk',
      says: 'greatest chance that an accepted size is beyond the limit',
      type: { is: 'number', least: 0, most: 1 },
    },
  ],
  sources: [
    'JCGM 106:2012 8.3 (guarded acceptance and rejection; clause from memory)',
    'ILAC-G8:09/2019 4.2.3 (guard band equal to U)',
  ],
  validity: 'One limit, normal error. Between accept and reject it is too close to call.',
  run: taking(GUARD_IN, runGuard),
}

function runGuard(take: Take): Result<Computed> {
  const [limit, U, k] = [take.si('limit'), take.si('u'), take.number('k')]
  const r = take.has('share') ? take.number('share') : 1
  const side = take.word('bound') === 'at-most' ? 1 : -1
  const [accept, reject] = [limit - side * r * U, limit + side * r * U]
  if (limit === 0 || U === 0) return refuse('size-zero', 'Limit and measuring error must be above zero.')
  if (accept <= 0 || reject <= 0)
    return refuse(
      'nothing-accepted',
      'The measuring error is as large as the limit: nothing measured so can be accepted.',
    )
  const risk = guardBandRisk(r, k)
  const [minus, plus] = side === 1 ? ['-', '+'] : ['+', '-']
  const band = `${inches(limit)} SIGN ${figured(r, 3)} x ${inches(U)}`
  return ok({
    outputs: { accept: siValue('length', accept), reject: siValue('length', reject), risk: n(risk) },
    trace: [
      step('Accepted', `A = T ${minus} r U`, `A = ${band.replace('SIGN', minus ?? '')} = ${inches(accept)}`),
      step('Beyond', `R = T ${plus} r U`, `R = ${band.replace('SIGN', plus ?? '')} = ${inches(reject)}`),
      step('Chance left', 'Phi(-r k)', `Phi(-${figured(r * k, 3)}) = ${inHundred(risk)} in 100 at most`),
    ],
    warnings:
      risk > 0.05
        ? [
            'More than 5 chances in 100 of being wrong: ISO 14253-1 asks for less unless agreed (from memory).',
          ]
        : [],
  })
}

export const MEASURE_CONFORMANCE: readonly Computation[] = [chance, guard]
