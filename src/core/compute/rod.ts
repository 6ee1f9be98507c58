// The rod as named computations. The functions and their sources are in src/core/rod.

import { ok } from '../lib/result.ts'
import { ROD_DROP_LEAST_PISTON_M, riderWearFromDrop } from '../rod/rod-drop.ts'
import { rodForm } from '../rod/rod-form.ts'
import { UNDERSIZE_RULES, type UndersizeRuleName, undersizeAllowed } from '../rod/rod-rules.ts'
import { rodSag, SAG_MODELS, sagRunoutBeam, sagRunoutTwoHalves } from '../rod/rod-sag.ts'
import {
  expectedVerticalRunout,
  RUNOUT_CONVENTIONS,
  RUNOUT_PER_STROKE,
  type RunoutConvention,
} from '../rod/runout-expected.ts'
import { gridOf, LISTS } from './bore.ts'
import type { Computation } from './computation.ts'
import {
  FALL_BACK,
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

const CH =
  'Compressor Handbook: Principles and Practice (T. Giampaolo, about 2010; author and year from memory)'
const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const STROKE = length('stroke', 'stroke')
const CONVENTION = wordOf(
  'convention',
  'how the dial was set; plus is the rod moving up',
  Object.keys(RUNOUT_CONVENTIONS),
)

const form = offer({
  name: 'rod-form',
  title: 'Roundness, taper and undersize of a rod',
  inputs: [
    length('nominal', 'greatest size of the drawing'),
    length('u', 'measuring error U of a reading'),
    ...LISTS,
  ],
  outputs: [
    length('out_of_round', 'greatest difference of the axes at one station'),
    length('taper', 'greatest difference of any two stations on one axis'),
    length('undersize', 'nominal less the smallest reading'),
    length('smallest', 'smallest reading'),
  ],
  sources: [`${BH}, p. 290 (what is read) and form fig. 6-4 p. 350 (undersize from the greatest size)`],
  validity: 'Readings at 20 C, both axes at every station, two stations or more.',
  work: (given) => {
    const grid = gridOf(given)
    if (!grid.ok) return grid
    const found = rodForm(grid.value, { nominalM: given.si('nominal'), readingU: given.si('u') })
    if (!found.ok) return found
    const { outOfRoundM, taperM, undersizeM, smallest } = found.value
    return ok({
      gives: { out_of_round: outOfRoundM, taper: taperM, undersize: undersizeM, smallest: smallest.valueM },
      trace: [
        step('Out of round', 'greatest difference at one station', inches(outOfRoundM)),
        step('Taper', 'greatest difference on one axis', inches(taperM)),
        step(
          'Undersize',
          'nominal - smallest',
          `${given.show('nominal')} - ${inches(smallest.valueM)} = ${inches(undersizeM)}`,
        ),
      ],
    })
  },
})

const undersize = offer({
  name: 'rod-undersize-allowed',
  title: 'How far under size a rod may be',
  inputs: [
    length('diameter', 'rod diameter'),
    wordOf('rule', 'which published rule', Object.keys(UNDERSIZE_RULES)),
    quantityOf('pressure-gauge', 'psig', 'pressure', 'pressure at the packing; needed by the regrind rules', {
      optional: true,
    }),
  ],
  outputs: [
    length('least', 'lower figure of the book'),
    length('most', 'upper figure of the book'),
    textOf('says', 'for what'),
  ],
  sources: [...new Set(Object.values(UNDERSIZE_RULES).map(({ source }) => source))],
  validity: 'The rules contradict one another; each stands for its own use and pressure.',
  work: (given) => {
    const found = undersizeAllowed({
      diameterM: given.si('diameter'),
      rule: given.word('rule') as UndersizeRuleName,
      pressurePa: given.maybe('pressure'),
    })
    if (!found.ok) return found
    const { leastM, mostM, says, source } = found.value
    return ok({
      gives: { least: leastM, most: mostM, says },
      trace: [
        step(
          'Undersize allowed',
          says,
          `at ${given.show('diameter')}: ${inches(leastM)} to ${inches(mostM)}`,
        ),
      ],
      warnings: [FALL_BACK, `From ${source}.`],
    })
  },
})

const expected = offer({
  name: 'rod-runout-expected',
  title: 'Vertical runout to expect of a rod barred over cold, and the band about it',
  inputs: [
    STROKE,
    length('rod_length', 'from the middle of the piston to the crosshead pin'),
    length('piston_clearance', 'running clearance of the piston on diameter'),
    length('crosshead_clearance', 'running clearance of the crosshead'),
    CONVENTION,
  ],
  outputs: [
    length('expected', 'vertical runout to expect', { signed: true }),
    length('band', 'allowed about it, both ways; sideways about nought'),
  ],
  sources: [
    `${CH}, p. 191 (calculated value, 0.00015 in per in)`,
    `${BH}, p. 243-244 (method and sign)`,
    'geometry',
  ],
  validity:
    'Rigid straight rod, cold, piston and crosshead on the bottom, cylinder in line. Sag is apart: see rod-sag.',
  work: (given) => {
    const convention = given.word('convention') as RunoutConvention
    const found = expectedVerticalRunout({
      strokeM: given.si('stroke'),
      rodLengthM: given.si('rod_length'),
      pistonClearanceM: given.si('piston_clearance'),
      crossheadClearanceM: given.si('crosshead_clearance'),
      convention,
    })
    if (!found.ok) return found
    const bandM = RUNOUT_PER_STROKE * given.si('stroke')
    const sign = RUNOUT_CONVENTIONS[convention] < 0 ? '-' : '+'
    return ok({
      gives: { expected: found.value, band: bandM },
      trace: [
        step(
          'Expected, vertical',
          'sign x stroke / L x (piston - crosshead clearance) / 2',
          `${sign} ${given.show('stroke')} / ${given.show('rod_length')} x (${given.show('piston_clearance')} - ${given.show('crosshead_clearance')}) / 2 = ${inches(found.value)}`,
        ),
        step('Band', '0.00015 x stroke', `0.00015 x ${given.show('stroke')} = ${inches(bandM)}`),
      ],
      warnings: [
        FALL_BACK,
        `Sign: ${convention.replaceAll('-', ' ')}, plus is the rod moving up.`,
        'Sideways the value to expect is nought, with the same band.',
      ],
    })
  },
})

const sag = offer({
  name: 'rod-sag',
  title: 'Sag of a rod under its own weight and the runout it makes',
  inputs: [
    length('rod_length', 'length between the ends that hold it'),
    length('diameter', 'rod diameter'),
    numberOf('density', 'density, kg/m3', { least: 1000, most: 20000 }),
    quantityOf('pressure-difference', 'MPa', 'elasticity', 'elasticity of the metal'),
    STROKE,
    length('touches', 'from the crosshead pin to the indicator, piston at its outer end'),
    CONVENTION,
  ],
  outputs: [
    length('sag', 'sag in the middle'),
    length('two_halves', 'runout near the packing, two straight halves', { signed: true }),
    length('bent_beam', 'runout at the indicator, bent beam', { signed: true }),
  ],
  sources: Object.values(SAG_MODELS),
  validity:
    'Round solid slender rod held at both ends without clamping. Two models that do not agree: name the one you use.',
  work: (given) => {
    const convention = given.word('convention') as RunoutConvention
    const beam = {
      lengthM: given.si('rod_length'),
      diameterM: given.si('diameter'),
      density: given.number('density'),
      elasticityPa: given.si('elasticity'),
    }
    const sagM = rodSag(beam)
    if (!sagM.ok) return sagM
    const strokeM = given.si('stroke')
    const halves = sagRunoutTwoHalves({ strokeM, lengthM: beam.lengthM, sagM: sagM.value, convention })
    if (!halves.ok) return halves
    const bent = sagRunoutBeam({ ...beam, strokeM, touchesAtOuterM: given.si('touches'), convention })
    if (!bent.ok) return bent
    return ok({
      gives: { sag: sagM.value, two_halves: halves.value, bent_beam: bent.value },
      trace: [
        step('Sag in the middle', '5 rho g L4 / (24 E d2)', inches(sagM.value)),
        step(
          'Two straight halves',
          'stroke / (L/2) x sag',
          `${given.show('stroke')} / (${given.show('rod_length')} / 2) x ${inches(sagM.value)} = ${inches(halves.value)}`,
        ),
        step('Bent beam', 'down at the inner place - down at the outer', inches(bent.value)),
      ],
      warnings: ['An estimate: piston and crosshead hold the ends a little, so a real rod sags less.'],
    })
  },
})

const drop = offer({
  name: 'rod-drop-wear',
  title: 'Rider wear from rod drop at a probe',
  inputs: [
    length('drop', 'drop at the probe'),
    length('crosshead_to_probe', 'L1, crosshead pin to probe'),
    length('probe_to_piston', 'L2, probe to the middle of the piston'),
    length('piston', 'piston diameter'),
  ],
  outputs: [length('wear', 'wear of the rider at the bottom')],
  sources: ['an article in a trade magazine, first quarter 2004, stored copy'],
  validity:
    'Straight rod, crosshead not dropped, cold or one temperature. Unreliable on pistons under about 6 in.',
  work: (given) => {
    const found = riderWearFromDrop({
      dropM: given.si('drop'),
      crossheadToProbeM: given.si('crosshead_to_probe'),
      probeToPistonM: given.si('probe_to_piston'),
    })
    if (!found.ok) return found
    const lever =
      (given.si('crosshead_to_probe') + given.si('probe_to_piston')) / given.si('crosshead_to_probe')
    const isSmall = given.si('piston') < ROD_DROP_LEAST_PISTON_M
    return ok({
      gives: { wear: found.value },
      trace: [
        step(
          'Wear',
          'drop x (L1 + L2) / L1',
          `${given.show('drop')} x ${plain(lever)} = ${inches(found.value)}`,
        ),
      ],
      warnings: isSmall ? ['The piston is under about 6 in (150 mm): rod drop is unreliable there.'] : [],
    })
  },
})

export const ROD: readonly Computation[] = [form, undersize, expected, sag, drop]
