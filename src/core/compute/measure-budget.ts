// Computations on the measuring error: the budget of one reading, any budget line by line, and the coverage factor.
import { ok, type Result, refuse } from '../lib/result.ts'
import {
  type Budget,
  type Component,
  combineBudget,
  componentOfRepeats,
  type Expanded,
  expandBudget,
  uOfRectangle,
} from '../metrology/budget.ts'
import { COVERAGE_K } from '../metrology/uncertainty.ts'
import { coverageFactor } from '../statistics/student-t.ts'
import { fromSi } from '../units/index.ts'
import type { Computation, Computed, Parameter, TraceStep, Value } from './computation.ts'
import { figured, inUnit, trimmed } from './figures.ts'
import { length, step } from './measure-repeats.ts'
import { n, siValue, type Take, taking } from './take.ts'

const GUM = 'JCGM 100:2008 (GUM)'
const LEVEL: Parameter = {
  name: 'level',
  says: 'share of cases U is to hold; 0.95 when left out',
  type: { is: 'number', least: 0.5, most: 0.999 },
  optional: true,
}
const RESULTS: readonly Parameter[] = [
  length('uc', 'combined standard uncertainty, k = 1'),
  {
    name: 'dof',
    says: 'effective degrees of freedom; none given when as good as endless',
    type: { is: 'number' },
    optional: true,
  },
  { name: 'k', says: 'coverage factor at the level', type: { is: 'number' } },
  length('u', 'expanded uncertainty U at the level'),
  length('u_k2', 'the same at k = 2, whatever the degrees of freedom'),
]
const BUDGET_SOURCES = [
  `${GUM} 5.1.2 equation (10), combining`,
  `${GUM} G.4.1 equation (G.2b), Welch-Satterthwaite, cut down to a whole number`,
]

function um(m: number): string {
  return inUnit(fromSi('length', m), 'um')
}

/** The budget as outputs and arithmetic, whatever its lines are. */
function stated(budget: Budget, expanded: Expanded): Computed {
  const { lines, uc, effectiveDof } = budget
  const endless = effectiveDof === null || !Number.isFinite(effectiveDof)
  const outputs: Record<string, Value> = {
    uc: siValue('length', uc),
    ...(endless ? {} : { dof: n(effectiveDof) }),
    k: n(expanded.k),
    u: siValue('length', expanded.U),
    u_k2: siValue('length', COVERAGE_K * uc),
  }
  const dof = endless ? 'endless' : `${figured(effectiveDof, 4)}, cut to ${expanded.dof}`
  const level = `${trimmed(expanded.level * 100, 4)} in 100`
  const trace: TraceStep[] = [
    ...lines.map((line) =>
      step(line.name, 'standard uncertainty, and its share of the whole', lineWorked(line)),
    ),
    step('Combined', 'uc = sqrt(sum of squares)', `uc = ${um(uc)}`),
    step('Degrees of freedom', 'nu = uc^4 / sum(u^4 / nu of each)', `nu = ${dof}`),
    step(
      `Widened to ${level}`,
      'U = k uc, k from Student t',
      `U = ${figured(expanded.k, 4)} x ${um(uc)} = ${um(expanded.U)}`,
    ),
  ]
  return { outputs, trace, warnings: budgetWarnings(budget, expanded) }
}

function lineWorked({ contribution, share, dof }: Budget['lines'][number]): string {
  const part = share === null ? '' : `, ${figured(share * 100, 3)} in 100 of the variance`
  return `${um(contribution)}${part}${dof === undefined ? '' : `, ${trimmed(dof, 4)} degrees of freedom`}`
}

function budgetWarnings({ lines, uc }: Budget, { k, level }: Expanded): string[] {
  const small = k > COVERAGE_K * 1.05 && level <= 0.9545
  const main = lines.find((line) => (line.share ?? 0) > 0.8)
  return [
    ...(uc === 0 ? ['Every line is zero: an error of nothing is not known of any instrument.'] : []),
    ...(small
      ? [`So few readings call for k = ${figured(k, 3)}: U at k = 2 is too small. Take more repeats.`]
      : []),
    ...(main === undefined || lines.length < 2
      ? []
      : [`${main.name} makes nearly all of it: better that first.`]),
  ]
}

const TEMP_DIFF = { is: 'quantity', kind: 'temperature-difference', unit: 'delta-degF' } as const
const MILLIONTHS = { is: 'number', least: 0, most: 40 } as const
const READING_IN: readonly Parameter[] = [
  length('instrument_u', 'U from the certificate of the instrument'),
  { name: 'instrument_k', says: 'the k that U is stated with', type: { is: 'number', least: 1, most: 4 } },
  length('size', 'size measured'),
  { name: 'part_alpha', says: 'expansion of the part, millionths per K', type: MILLIONTHS },
  { name: 'instrument_alpha', says: 'expansion of the instrument, millionths per K', type: MILLIONTHS },
  { name: 'part_temp_u', says: 'standard uncertainty of the temperature of the part', type: TEMP_DIFF },
  { name: 'instrument_temp_u', says: 'the same of the instrument', type: TEMP_DIFF },
  length('resolution', 'step the instrument reads in'),
  {
    name: 'resolution_in_u',
    says: 'whether U has the resolution in it already',
    type: { is: 'word', words: ['yes', 'no'] },
  },
  {
    name: 'readings',
    says: 'repeats, whose mean is the result',
    type: { is: 'quantities', kind: 'length', unit: 'in', least: 2 },
    optional: true,
  },
  length('repeats_u', 'what pooled repeats add, k = 1, in place of the repeats themselves', {
    optional: true,
  }),
  {
    name: 'repeats_dof',
    says: 'degrees of freedom of that; wants repeats_u',
    type: { is: 'number', least: 1 },
    optional: true,
  },
  {
    name: 'part_alpha_u',
    says: 'standard uncertainty of part_alpha, millionths per K; wants part_from_20',
    type: MILLIONTHS,
    optional: true,
  },
  {
    name: 'part_from_20',
    says: 'how far the part was from 20 C',
    type: TEMP_DIFF,
    optional: true,
  },
  {
    name: 'instrument_alpha_u',
    says: 'the same of instrument_alpha; wants instrument_from_20',
    type: MILLIONTHS,
    optional: true,
  },
  {
    name: 'instrument_from_20',
    says: 'how far the instrument was from 20 C',
    type: TEMP_DIFF,
    optional: true,
  },
  LEVEL,
]

const reading: Computation = {
  name: 'reading-error',
  title: 'Measuring error of a size: instrument, temperature, resolution, repeats',
  inputs: READING_IN,
  outputs: RESULTS,
  sources: [...BUDGET_SOURCES, `${GUM} 4.2.3 repeats, 4.3.7 resolution, H.1 temperature`],
  validity:
    'A size near 20 C or brought to it. Repeats count as s / sqrt n with n - 1 degrees of freedom; pooled over places (pooled-repeats) with those of the pool, as in a job. Without repeats their scatter is not in U.',
  run: taking(READING_IN, runReading),
}

function runReading(take: Take): Result<Computed> {
  const size = take.si('size')
  if (size === 0 || take.si('resolution') === 0)
    return refuse('size-zero', 'Size and resolution must be above zero.')
  const temp = (who: string) => size * take.number(`${who}_alpha`) * 1e-6 * take.si(`${who}_temp_u`)
  const lines: Component[] = [
    { name: 'Instrument', u: take.si('instrument_u') / take.number('instrument_k') },
    { name: 'Temperature of the part', u: temp('part') },
    { name: 'Temperature of the instrument', u: temp('instrument') },
  ]
  if (take.word('resolution_in_u') === 'no')
    lines.push({ name: 'Resolution', u: uOfRectangle(take.si('resolution') / 2) })
  for (const who of ['part', 'instrument'] as const) {
    const [alphaU, apart] = [`${who}_alpha_u`, `${who}_from_20`]
    if (take.has(alphaU) !== take.has(apart))
      return refuse('expansion-half', `${alphaU} and ${apart} go together: give both or neither.`)
    if (take.has(alphaU))
      lines.push({ name: `Expansion of the ${who}`, u: size * take.number(alphaU) * 1e-6 * take.si(apart) })
  }
  if (take.has('readings') && take.has('repeats_u'))
    return refuse('repeats-twice', 'Give the repeats or what they come to, not both.')
  if (take.has('repeats_u') !== take.has('repeats_dof'))
    return refuse('repeats-half', 'repeats_u and repeats_dof go together: give both or neither.')
  if (take.has('repeats_u'))
    lines.push({ name: 'Repeats', u: take.si('repeats_u'), dof: take.number('repeats_dof') })
  if (take.has('readings')) {
    const scatter = componentOfRepeats('Repeats', take.list('readings'))
    if (!scatter.ok) return scatter
    lines.push(scatter.value)
  }
  return widened(lines, take)
}

function widened(lines: readonly Component[], take: Take): Result<Computed> {
  const budget = combineBudget(lines)
  if (!budget.ok) return budget
  const expanded = expandBudget(budget.value, take.has('level') ? take.number('level') : 0.95)
  return expanded.ok ? ok(stated(budget.value, expanded.value)) : expanded
}

const BUDGET_IN: readonly Parameter[] = [
  {
    name: 'components',
    says: 'standard uncertainties (k = 1), each as it acts on the result',
    type: { is: 'quantities', kind: 'length', unit: 'um', least: 1 },
  },
  {
    name: 'dof',
    says: 'degrees of freedom of each, in the same order; left out: all as good as endless',
    type: { is: 'quantities', kind: 'ratio', unit: '1', least: 1 },
    optional: true,
  },
  LEVEL,
]

const budget: Computation = {
  name: 'error-budget',
  title: 'Uncertainty budget from its lines',
  inputs: BUDGET_IN,
  outputs: RESULTS,
  sources: BUDGET_SOURCES,
  validity: 'Errors with nothing in common. For a line as good as certain give 100000 degrees of freedom.',
  run: taking(BUDGET_IN, (take) => {
    const dofs = take.has('dof') ? take.list('dof') : undefined
    const us = take.list('components')
    if (dofs !== undefined && dofs.length !== us.length)
      return refuse('dof-count', `dof needs one figure for each of the ${us.length} components.`)
    return widened(
      us.map((u, i) => ({ name: `Component ${i + 1}`, u, dof: dofs?.[i] })),
      take,
    )
  }),
}

const FACTOR_IN: readonly Parameter[] = [
  { name: 'dof', says: 'degrees of freedom', type: { is: 'number', least: 1 } },
  { ...LEVEL, optional: false, says: 'share of cases to hold, for example 0.95' },
]

const factor: Computation = {
  name: 'coverage-factor',
  title: 'Coverage factor of Student t for a number of degrees of freedom',
  inputs: FACTOR_IN,
  outputs: [{ name: 'k', says: 'coverage factor, two-sided', type: { is: 'number' } }],
  sources: [
    `${GUM} G.3 and Table G.2`,
    'M. Abramowitz & I. Stegun, Handbook of Mathematical Functions, 26.7',
  ],
  validity: 'Normal error; one degree of freedom or more, broken numbers allowed.',
  run: taking(FACTOR_IN, (take) => {
    const k = coverageFactor(take.number('level'), take.number('dof'))
    const worked = `k = t(${figured((1 + take.number('level')) / 2, 5)}, ${figured(take.number('dof'), 4)}) = ${figured(k, 5)}`
    return ok({
      outputs: { k: n(k) },
      trace: [step('Factor', 'k = t((1 + level) / 2, nu)', worked)],
      warnings: [],
    })
  }),
}

export const MEASURE_BUDGET: readonly Computation[] = [reading, budget, factor]
