// Piston end clearance as named computations. The functions and their sources are in src/core/end-clearance.

import { endClearanceMove, MOVES_THE_ROD } from '../end-clearance/correction.ts'
import { endClearanceSplit, growth, hotClearances } from '../end-clearance/split.ts'
import { ok } from '../lib/result.ts'
import type { Computation } from './computation.ts'
import {
  FALL_BACK,
  inches,
  length,
  numberOf,
  offer,
  plain,
  quantityOf,
  shown,
  step,
  textOf,
} from './mechanical.ts'

const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const SPLIT_SOURCE = `${BH}, p. 289`
const HEAD = length('head', 'head end clearance, cold')
const CRANK = length('crank', 'crank end clearance, cold')

const split = offer({
  name: 'end-clearance-split',
  title: 'Share of the end clearance between the ends',
  inputs: [length('total', 'whole end clearance, cold')],
  outputs: [length('head', 'head end, two thirds'), length('crank', 'crank end, one third')],
  sources: [SPLIT_SOURCE],
  validity: 'Set cold; the book says approximately.',
  work: (given) => {
    const found = endClearanceSplit(given.si('total'))
    if (!found.ok) return found
    const { headM, crankM } = found.value
    return ok({
      gives: { head: headM, crank: crankM },
      trace: [
        step('Head end', 'total x 2/3', `${given.show('total')} x 2/3 = ${inches(headM)}`),
        step('Crank end', 'total x 1/3', `${given.show('total')} x 1/3 = ${inches(crankM)}`),
      ],
      warnings: [FALL_BACK],
    })
  },
})

const grown = offer({
  name: 'thermal-growth',
  title: 'Growth of a part with temperature',
  inputs: [
    length('length', 'length of the part'),
    numberOf('alpha', 'expansion, millionths per K', { least: 0, most: 60 }),
    quantityOf('temperature-difference', 'delta-degF', 'rise', 'hot less cold', { signed: true }),
  ],
  outputs: [length('growth', 'growth', { signed: true })],
  sources: [`definition of expansion; 6.0e-6 per F (10.8e-6 per K) for iron and steel, ${BH}, p. 228`],
  validity: 'One expansion over the whole rise; to 500 K.',
  work: (given) => {
    const found = growth([
      {
        name: 'part',
        lengthM: given.si('length'),
        alphaPerK: given.number('alpha') * 1e-6,
        riseK: given.si('rise'),
      },
    ])
    if (!found.ok) return found
    const worked = `${given.show('length')} x ${given.show('alpha')}e-6 x ${shown(given.si('rise'), 'temperature-difference', 'delta-degC')} = ${inches(found.value)}`
    return ok({ gives: { growth: found.value }, trace: [step('Growth', 'L alpha dT', worked)] })
  },
})

const hot = offer({
  name: 'end-clearance-hot',
  title: 'End clearances when hot',
  inputs: [
    HEAD,
    CRANK,
    length('rod', 'growth of the rod', { signed: true }),
    length('piston', 'growth of the piston', { signed: true }),
    length('casing_to_head', 'growth of the casing to the head', { signed: true }),
    length('casing_to_crank', 'growth of the casing to the crank end face', { signed: true }),
  ],
  outputs: [
    length('head_hot', 'head end, hot', { signed: true }),
    length('crank_hot', 'crank end, hot', { signed: true }),
  ],
  sources: ['geometry', `heat opens the crank end: ${SPLIT_SOURCE}`],
  validity: 'All growths from one datum. Play in bearings is not counted.',
  work: (given) => {
    const found = hotClearances({
      headColdM: given.si('head'),
      crankColdM: given.si('crank'),
      rodGrowthM: given.si('rod'),
      pistonGrowthM: given.si('piston'),
      casingToHeadM: given.si('casing_to_head'),
      casingToCrankM: given.si('casing_to_crank'),
    })
    if (!found.ok) return found
    const { headM, crankM, strikes } = found.value
    return ok({
      gives: { head_hot: headM, crank_hot: crankM },
      trace: [
        step(
          'Head end',
          'cold - rod - piston + casing',
          `${given.show('head')} - ${given.show('rod')} - ${given.show('piston')} + ${given.show('casing_to_head')} = ${inches(headM)}`,
        ),
        step(
          'Crank end',
          'cold + rod - casing',
          `${given.show('crank')} + ${given.show('rod')} - ${given.show('casing_to_crank')} = ${inches(crankM)}`,
        ),
      ],
      warnings: strikes === null ? [] : [`STOP: hot, the piston would strike at the ${strikes} end.`],
    })
  },
})

const move = offer({
  name: 'end-clearance-move',
  title: 'How far to move the piston, and how far to turn the rod for it',
  inputs: [
    HEAD,
    CRANK,
    length('pitch', 'pitch of the rod thread'),
    numberOf('flats', 'flats of the nut or rod end', { whole: true, least: 2, most: 12, optional: true }),
    numberOf('crank_share', 'share of the crank end, where the book states one', {
      least: 0,
      most: 1,
      optional: true,
    }),
  ],
  outputs: [
    length('move', 'move, plus towards the head end', { signed: true }),
    quantityOf('angle', 'deg', 'angle', 'turn of the rod'),
    numberOf('flats_turned', 'the same in flats', { optional: true }),
    textOf('screw', 'which way'),
  ],
  sources: [SPLIT_SOURCE, 'geometry', `read both again after any turning: ${BH}, p. 246`],
  validity:
    'Rod screwed into the crosshead. Out sets the piston towards the head end, whatever the hand of the thread.',
  work: (given) => {
    const flats = given.maybe('flats')
    const found = endClearanceMove({
      headM: given.si('head'),
      crankM: given.si('crank'),
      pitchM: given.si('pitch'),
      flats,
      crankShare: given.maybe('crank_share'),
    })
    if (!found.ok) return found
    const { moveM, towards, targetCrankM, turns, angleRad, flats: turned, screw } = found.value
    const inFlats = turned === null ? '' : `, ${plain(turned)} flats`
    return ok({
      gives: { move: moveM, angle: angleRad, flats_turned: turned ?? undefined, screw },
      trace: [
        step('Crank end wanted', 'share of the total', inches(targetCrankM)),
        step(
          'Move',
          'wanted - as read',
          `${inches(targetCrankM)} - ${given.show('crank')} = ${inches(moveM)}, towards the ${towards}`,
        ),
        step(
          'Turn',
          '|move| / pitch',
          `${plain(turns)} turns = ${shown(angleRad, 'angle', 'deg')}${inFlats}, ${screw}`,
        ),
      ],
      warnings: [FALL_BACK, MOVES_THE_ROD],
    })
  },
})

const sum = offer({
  name: 'end-clearance-sum',
  title: 'Sum of the end clearances as left against as found',
  inputs: [
    length('found_head', 'head end as found'),
    length('found_crank', 'crank end as found'),
    length('left_head', 'head end as left'),
    length('left_crank', 'crank end as left'),
    length('u', 'measuring error U of a reading'),
  ],
  outputs: [
    length('difference', 'as left less as found', { signed: true }),
    length('difference_u', 'measuring error U of it'),
  ],
  sources: ['geometry', 'JCGM 100:2008 (GUM) 5.1.2 (error of the difference)'],
  validity:
    'Only where no part that bears on it was changed. Worked out here; judged in a job against a limit.',
  work: (given) => {
    const found = given.si('found_head') + given.si('found_crank')
    const left = given.si('left_head') + given.si('left_crank')
    const differenceM = left - found
    const u = 2 * given.si('u')
    const isOff = Math.abs(differenceM) > u
    const isTenth = Math.abs(differenceM) > found / 10
    return ok({
      gives: { difference: differenceM, difference_u: u },
      trace: [
        step(
          'Difference',
          '(head + crank) left - (head + crank) found',
          `${inches(left)} - ${inches(found)} = ${inches(differenceM)}`,
        ),
        step('Its measuring error', '2 x U of a reading', inches(u)),
      ],
      warnings: [
        ...(isOff
          ? [
              'The sums differ by more than the measuring error: look for something loose, bound or wrongly fitted.',
            ]
          : []),
        ...(isTenth
          ? ['The sums differ by more than a tenth (a call to search: common practice, no source).']
          : []),
      ],
    })
  },
})

export const END_CLEARANCE: readonly Computation[] = [split, grown, hot, move, sum]
