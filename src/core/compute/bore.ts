// The bore as named computations. The functions and their sources are in src/core/bore.

import { boreForm } from '../bore/bore-form.ts'
import type { BoreReading } from '../bore/bore-readings.ts'
import {
  BORE_RULES,
  type BoreRuleName,
  RIDGE_RULES,
  type RidgeRuleName,
  ridgeLimit,
  spreadRuleFor,
} from '../bore/bore-rules.ts'
import { resolveRule } from '../bore/fallback-limits.ts'
import { oversizeAvailable } from '../bore/oversize.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import { expandedOfCentreAgainstEnds, expandedOfDifference } from '../metrology/uncertainty.ts'
import type { Computation, Parameter } from './computation.ts'
import {
  FALL_BACK,
  type Given,
  inches,
  length,
  numberOf,
  offer,
  plain,
  quantityOf,
  step,
  textOf,
  wordOf,
} from './mechanical.ts'

const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const sizes = (name: string, says: string): Parameter => ({
  name,
  says,
  type: { is: 'quantities', kind: 'length', unit: 'in', least: 2 },
})

/** Readings on two axes and where along the part they were taken, in one order. */
export const LISTS: readonly Parameter[] = [
  sizes('vertical', 'vertical readings, station by station'),
  sizes('horizontal', 'horizontal readings, in the same order'),
  { ...sizes('at', 'distance of each station from one end; left out: evenly spaced'), optional: true },
]

/** The readings of LISTS station by station. Refuses lists of unlike length. */
export function gridOf(given: Given): Result<BoreReading[]> {
  const [vertical, horizontal] = [given.list('vertical'), given.list('horizontal')]
  const at = given.has('at') ? given.list('at') : vertical.map((_, i) => i)
  if (horizontal.length !== vertical.length || at.length !== vertical.length)
    return refuse(
      'lists-unlike',
      'The lists of readings and of stations are not of one length: complete them.',
    )
  const onAxis = (axis: string, list: readonly number[]) =>
    list.map((valueM, i) => ({ station: `station ${i + 1}`, axis, at: at[i] ?? Number.NaN, valueM }))
  return ok([...onAxis('vertical', vertical), ...onAxis('horizontal', horizontal)])
}

const form = offer({
  name: 'bore-form',
  title: 'Out-of-round, taper, spread and form of a bore',
  inputs: [...LISTS, length('u', 'measuring error U of a reading')],
  outputs: [
    length('out_of_round', 'greatest difference of the axes at one station'),
    length('taper', 'greatest difference of any two stations on one axis'),
    length('spread', 'greatest less least of all readings'),
    length('largest', 'largest reading'),
    textOf('form', 'form, where the measuring error lets one be told'),
  ],
  sources: [`${BH}, p. 256-259`],
  validity: 'Two stations or more, both axes at every one. A hone corrects neither taper nor out-of-round.',
  work: (given) => {
    const grid = gridOf(given)
    if (!grid.ok) return grid
    const u = given.si('u')
    const found = boreForm(grid.value, {
      differenceU: expandedOfDifference(u),
      centreU: expandedOfCentreAgainstEnds(u),
    })
    if (!found.ok) return found
    const { worstRound, worstTaper, spreadM, largest, smallest } = found.value
    return ok({
      gives: {
        out_of_round: worstRound.outOfRoundM,
        taper: worstTaper.taperM,
        spread: spreadM,
        largest: largest.valueM,
        form: found.value.form,
      },
      trace: [
        step(
          'Out of round',
          'greatest difference at one station',
          `${worstRound.station}: ${inches(worstRound.outOfRoundM)}`,
        ),
        step(
          'Taper',
          'greatest difference on one axis',
          `${worstTaper.axis}, ${worstTaper.widestAt} against ${worstTaper.narrowestAt}: ${inches(worstTaper.taperM)}`,
        ),
        step(
          'Spread',
          'greatest - least',
          `${inches(largest.valueM)} - ${inches(smallest.valueM)} = ${inches(spreadM)}`,
        ),
      ],
    })
  },
})

const limit = offer({
  name: 'bore-limit',
  title: 'Published limit of a bore for spread, out-of-round or taper',
  inputs: [
    wordOf('rule', 'which published rule', Object.keys(BORE_RULES)),
    length('nominal', 'nominal bore'),
    length('stroke', 'stroke; needed for taper', { optional: true }),
  ],
  outputs: [length('limit', 'greatest value'), textOf('characteristic', 'what it bounds')],
  sources: [`${BH}, p. 259`],
  validity: 'The out-of-round rules have a ceiling: 0.015 in with metal rings, 0.018 in with PTFE rings.',
  work: (given) => {
    const rule = BORE_RULES[given.word('rule') as BoreRuleName]
    const found = resolveRule(rule, { 'nominal-bore': given.si('nominal'), stroke: given.maybe('stroke') })
    if (!found.ok) return found
    const { valueM, capped } = found.value
    const of = rule.of === 'stroke' ? given.show('stroke') : given.show('nominal')
    const worked = `${plain(rule.ratio)} x ${of}${capped ? ', over the ceiling, so' : ' ='} ${inches(valueM)}`
    return ok({
      gives: { limit: valueM, characteristic: rule.characteristic },
      trace: [step(rule.says, `ratio x ${rule.of.replace('-', ' ')}`, worked)],
      warnings: [FALL_BACK],
    })
  },
})

const spread = offer({
  name: 'bore-spread-rule',
  title: 'Which spread rule the gas and the differential ask for',
  inputs: [
    numberOf('molar_mass', 'molar mass of the gas, g/mol', { least: 1, most: 300 }),
    quantityOf('pressure-difference', 'psi', 'differential', 'pressure difference across the rings'),
    length('nominal', 'nominal bore'),
  ],
  outputs: [textOf('rule', 'the rule'), length('limit', 'greatest spread')],
  sources: [`${BH}, p. 259`],
  validity: 'The tighter rule where the gas is lighter than 17 g/mol or the rings hold more than 700 psi.',
  work: (given) => {
    const chosen = spreadRuleFor({
      molarMass: given.number('molar_mass'),
      differentialPa: given.si('differential'),
    })
    if (!chosen.ok) return chosen
    const rule = BORE_RULES[chosen.value.rule]
    const found = resolveRule(rule, { 'nominal-bore': given.si('nominal') })
    if (!found.ok) return found
    const worked = `${plain(rule.ratio)} x ${given.show('nominal')} = ${inches(found.value.valueM)}`
    return ok({
      gives: { rule: chosen.value.rule, limit: found.value.valueM },
      trace: [
        step('Rule', chosen.value.because, chosen.value.rule),
        step('Greatest spread', 'ratio x nominal bore', worked),
      ],
      warnings: [FALL_BACK],
    })
  },
})

const ridge = offer({
  name: 'bore-ridge',
  title: 'Limit of the ridge at the end of ring travel',
  inputs: [wordOf('rule', 'which reading of the book', Object.keys(RIDGE_RULES))],
  outputs: [
    length('limit', 'a ridge of this or more is bored out'),
    length('watch', 'watched from here', { optional: true }),
  ],
  sources: [`${BH}, p. 259 (0.007 to 0.010 in, all sizes)`],
  validity: 'All sizes. The book gives a band and not a figure: both readings of it are offered.',
  work: (given) => {
    const found = ridgeLimit(given.word('rule') as RidgeRuleName, { approvedBy: '', since: '', book: '' })
    if (!found.ok) return found
    const { value, monitorFrom } = found.value
    return ok({
      gives: { limit: value, watch: monitorFrom === undefined ? undefined : value * monitorFrom },
      trace: [step('Ridge', 'as the book gives it', inches(value))],
      warnings: [FALL_BACK],
    })
  },
})

const oversize = offer({
  name: 'bore-oversize',
  title: 'Oversize that a worn bore can be cut to',
  inputs: [
    length('nominal', 'nominal bore'),
    length('largest', 'largest reading'),
    length('clean_up', 'least cut on diameter beyond the largest reading'),
    {
      name: 'oversizes',
      says: 'sizes over nominal that can be had',
      type: { is: 'quantities', kind: 'length', unit: 'in', least: 1 },
    },
    length('counterbore', 'counterbore'),
    length('max_bore', 'greatest bore of the book', { optional: true }),
  ],
  outputs: [
    length('oversize', 'smallest that fits'),
    length('finish', 'finished bore'),
    length('left', 'left to the bound'),
    textOf('bound_by', 'what bounds it'),
  ],
  sources: [`${BH}, p. 258-260`, 'that the smallest is taken: common practice, no source'],
  validity:
    'Solid cylinder, or a liner with a greatest bore in its book. Bore first, hone last: a hone corrects no form.',
  work: (given) => {
    const found = oversizeAvailable({
      nominalM: given.si('nominal'),
      largestM: given.si('largest'),
      cleanUpM: given.si('clean_up'),
      oversizesM: given.list('oversizes'),
      counterboreM: given.si('counterbore'),
      maxBoreM: given.maybe('max_bore'),
    })
    if (!found.ok) return found
    const { oversizeM, finishM, leftM, boundBy } = found.value
    return ok({
      gives: { oversize: oversizeM, finish: finishM, left: leftM, bound_by: boundBy },
      trace: [
        step(
          'Must reach',
          'largest + clean-up',
          `${given.show('largest')} + ${given.show('clean_up')} = ${inches(given.si('largest') + given.si('clean_up'))}`,
        ),
        step(
          'Finished bore',
          'nominal + oversize',
          `${given.show('nominal')} + ${inches(oversizeM)} = ${inches(finishM)}`,
        ),
        step(`Left to the ${boundBy}`, 'bound - finished bore', inches(leftM)),
      ],
      warnings: ['A proposal for the lead, never an order.'],
    })
  },
})

export const BORE: readonly Computation[] = [form, limit, spread, ridge, oversize]
