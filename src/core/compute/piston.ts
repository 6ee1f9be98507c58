// The piston as named computations. The functions and their sources are in src/core/piston.

import { ok } from '../lib/result.ts'
import { METAL_DENSITY, type PistonMetal, weightFact } from '../piston/mass-density.ts'
import {
  OVERSIZE_PISTON_COLUMNS,
  OVERSIZE_PISTON_SOURCE,
  type OversizePistonColumn,
  oversizePistonTrigger,
} from '../piston/oversize-piston.ts'
import {
  measuredClearance,
  RUNNING_CLEARANCE_RULES,
  type RunningClearanceRule,
  runningClearance,
} from '../piston/running-clearance.ts'
import { type FactFrom, pistonKind, type Says } from '../piston/solid-or-hollow.ts'
import {
  cavityEnergy,
  ENERGY_MODELS,
  type EnergyModel,
  plugForce,
  TNT_J_PER_G,
} from '../piston/trapped-gas.ts'
import { PISTON_MATERIALS, type PistonMaterial } from '../rings/rider.ts'
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
  wordOf,
} from './mechanical.ts'

const clearanceRule = offer({
  name: 'piston-running-clearance',
  title: 'Clearance a piston asks for in its bore',
  inputs: [
    length('bore', 'bore'),
    wordOf('material', 'material of the piston', PISTON_MATERIALS),
    wordOf('rule', 'which published rule', Object.keys(RUNNING_CLEARANCE_RULES)),
    wordOf('edge', 'row of the table for 5, 8 or 12 in, which stand in two', ['row-below', 'row-above'], {
      optional: true,
    }),
  ],
  outputs: [length('clearance', 'clearance on diameter')],
  sources: Object.values(RUNNING_CLEARANCE_RULES),
  validity:
    'lubricated-no-rider: any bore. rider-or-oil-free: 5 to 16 in, whatever the material; rows share their edges.',
  work: (given) => {
    const edge = given.has('edge') ? (given.word('edge') as 'row-below' | 'row-above') : undefined
    const found = runningClearance({
      boreM: given.si('bore'),
      material: given.word('material') as PistonMaterial,
      rule: given.word('rule') as RunningClearanceRule,
      onEdge: edge,
    })
    if (!found.ok) return found
    const { clearanceM, source } = found.value
    const isRatio = given.word('rule') === 'lubricated-no-rider'
    const worked = isRatio
      ? `${plain(clearanceM / given.si('bore'))} x ${given.show('bore')} = ${inches(clearanceM)}`
      : `at ${given.show('bore')}: ${inches(clearanceM)}`
    return ok({
      gives: { clearance: clearanceM },
      trace: [step('Clearance', isRatio ? 'ratio x bore' : 'row of table 4-3', worked)],
      warnings: [FALL_BACK, `From ${source}.`],
    })
  },
})

const clearance = offer({
  name: 'piston-clearance',
  title: 'Clearance of a piston as measured',
  inputs: [length('bore', 'smallest bore, at 20 C'), length('piston', 'largest piston size, at 20 C')],
  outputs: [length('clearance', 'clearance on diameter')],
  sources: ['definition'],
  validity: 'Both sizes reduced to 20 C.',
  work: (given) => {
    const found = measuredClearance({ smallestBoreM: given.si('bore'), largestPistonM: given.si('piston') })
    if (!found.ok) return found
    const worked = `${given.show('bore')} - ${given.show('piston')} = ${inches(found.value)}`
    return ok({ gives: { clearance: found.value }, trace: [step('Clearance', 'bore - piston', worked)] })
  },
})

const KG_M3_PER_LB_IN3 = 0.45359237 / 0.0254 ** 3

const weight = offer({
  name: 'piston-weight',
  title: 'What the weight of a piston says: towards solid or hollow',
  inputs: [
    quantityOf('mass', 'lb', 'weighed', 'weight as read'),
    quantityOf('mass', 'lb', 'rod', 'rod, nut and rings weighed with it; zero for a bare piston'),
    length('diameter', 'piston diameter'),
    length('length', 'piston length'),
    length('rod_hole', 'hole for the rod; zero for none'),
    quantityOf('volume', 'in3', 'grooves', 'volume of grooves and recesses'),
    wordOf('metal', 'metal of the piston', Object.keys(METAL_DENSITY)),
    quantityOf('ratio', '%', 'ratio_u', 'uncertainty of the density ratio: scale, sizes and metal together'),
  ],
  outputs: [
    numberOf('density', 'mean density, lb/in3'),
    quantityOf('ratio', '%', 'ratio', 'mean density over that of solid metal'),
    textOf('says', 'which way this one fact points'),
    quantityOf('mass', 'lb', 'solid_weight', 'weight if solid'),
    quantityOf('volume', 'in3', 'hidden', 'largest cavity that could still be there'),
  ],
  sources: [
    'definition of density',
    'Elements of Metric Gear Technology, table 18-10 (densities)',
    'pistons to about 7 in mostly solid, larger mostly hollow: common practice, no source; a guide and never proof',
  ],
  validity: 'One fact among others: a piston is handled as hollow until two independent facts say solid.',
  work: (given) => {
    const fact = weightFact({
      weighedKg: given.si('weighed'),
      rodKg: given.si('rod'),
      diameterM: given.si('diameter'),
      lengthM: given.si('length'),
      rodHoleM: given.si('rod_hole'),
      groovesM3: given.si('grooves'),
      metal: given.word('metal') as PistonMetal,
      ratioU: given.si('ratio_u'),
    })
    if (!fact.ok) return fact
    const { meanDensity, ratio, says, solidKg, hiddenCavityM3 } = fact.value
    const density = meanDensity / KG_M3_PER_LB_IN3
    const netKg = given.si('weighed') - given.si('rod')
    const volume = shown(netKg / meanDensity, 'volume', 'in3')
    return ok({
      gives: { density, ratio, says, solid_weight: solidKg, hidden: hiddenCavityM3 },
      trace: [
        step('Volume', 'pi/4 (D2 - d2) L - grooves', volume),
        step(
          'Mean density',
          '(weighed - rod) / volume',
          `${shown(netKg, 'mass', 'lb')} / ${volume} = ${plain(density)} lb/in3`,
        ),
        step(
          'Against solid metal',
          'mean / solid',
          `${plain(ratio * 100)} % with an uncertainty of ${given.show('ratio_u')}`,
        ),
      ],
      warnings: ['One fact only. Handle the piston as hollow until two independent facts say solid.'],
    })
  },
})

const FACTS: readonly FactFrom[] = [
  'record',
  'tag',
  'drawing',
  'weight',
  'sounding',
  'ultrasonic',
  'radiograph',
  'plugs-or-vents',
]
const asKey = (from: FactFrom) => from.replaceAll('-', '_')

const kind = offer({
  name: 'piston-kind',
  title: 'Whether a piston is handled as solid or hollow',
  inputs: FACTS.map((from) =>
    wordOf(asKey(from), `what ${from.replaceAll('-', ' ')} says`, ['solid', 'hollow', 'unknown'], {
      optional: true,
    }),
  ),
  outputs: [
    textOf('handle_as', 'solid or hollow'),
    textOf('open', 'contradictions, and what could not be told'),
  ],
  sources: [
    'two independent facts before solid: judgement of the trade, no source',
    'hollow pistons may hold pressure: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors, Gulf 1996, p. 276 and 372',
  ],
  validity:
    'Record, tag and drawing count as one fact. Any fact towards hollow settles it. Bore size is no fact.',
  work: (given) => {
    const facts = FACTS.filter((from) => given.has(asKey(from))).map((from) => ({
      from,
      says: given.word(asKey(from)) as Says,
    }))
    const { handleAs, towardsSolid, towardsHollow, open } = pistonKind(facts)
    return ok({
      gives: { handle_as: handleAs, open: open.length === 0 ? 'nothing open' : open.join(' ') },
      trace: [
        step('Towards solid', 'independent facts', towardsSolid.join('; ') || 'none'),
        step('Towards hollow', 'independent facts', towardsHollow.join('; ') || 'none'),
        step('Handled as', 'solid only with two towards solid and none towards hollow', handleAs),
      ],
      warnings: [...open, ...(handleAs === 'hollow' ? ['Handle it as a vessel under pressure.'] : [])],
    })
  },
})

const force = offer({
  name: 'plug-force',
  title: 'Force of trapped gas on a plug',
  inputs: [
    quantityOf('pressure-difference', 'psi', 'pressure', 'pressure inside over outside'),
    length('diameter', 'diameter the gas acts on; the thread if not known'),
  ],
  outputs: [quantityOf('force', 'lbf', 'force', 'force on the plug')],
  sources: ['definition of pressure'],
  validity: 'A round plug. Friction and thread hold against it until they do not.',
  work: (given) => {
    const found = plugForce({ pressureDifferencePa: given.si('pressure'), diameterM: given.si('diameter') })
    if (!found.ok) return found
    const worked = `${given.show('pressure')} x pi/4 x (${given.show('diameter')})2 = ${shown(found.value, 'force', 'lbf')}`
    return ok({
      gives: { force: found.value },
      trace: [step('Force', 'p x pi/4 x d2', worked)],
      warnings: ['Nobody in line with a plug, whatever the figure.'],
    })
  },
})

const energy = offer({
  name: 'cavity-energy',
  title: 'Energy of gas shut in a cavity',
  inputs: [
    quantityOf('volume', 'L', 'volume', 'volume of the cavity'),
    quantityOf('pressure-absolute', 'bara', 'inside', 'pressure in the cavity, absolute'),
    quantityOf('pressure-absolute', 'bara', 'ambient', 'pressure of the air, absolute'),
    numberOf('k', 'cp/cv of the gas; needed by two of the models', { least: 1, most: 1.67, optional: true }),
    wordOf('model', 'which model', Object.keys(ENERGY_MODELS)),
  ],
  outputs: [numberOf('energy', 'energy, kJ'), numberOf('tnt', 'the same in grams of TNT')],
  sources: [
    ...new Set(Object.values(ENERGY_MODELS).map(({ source }) => source)),
    'ASME PCC-2, art. 501, app. 501-II, eq. II-3 (TNT; read second-hand)',
  ],
  validity:
    'Ideal gas, no liquid. The models answer different questions and differ by half or more: the model is always said.',
  work: (given) => {
    const model = given.word('model') as EnergyModel
    const found = cavityEnergy({
      volumeM3: given.si('volume'),
      insidePa: given.si('inside'),
      ambientPa: given.si('ambient'),
      k: given.maybe('k'),
      model,
    })
    if (!found.ok) return found
    const kJ = found.value / 1000
    const grams = found.value / TNT_J_PER_G
    const withK = ENERGY_MODELS[model].needsK ? `, k ${plain(given.number('k'))}` : ''
    return ok({
      gives: { energy: kJ, tnt: grams },
      trace: [
        step(
          `Model: ${model.replaceAll('-', ' ')}`,
          ENERGY_MODELS[model].formula,
          `p1 ${given.show('inside')}, p0 ${given.show('ambient')}, V ${given.show('volume')}${withK}: ${plain(kJ)} kJ`,
        ),
        step('As TNT', 'E / 4267 J per g', `${plain(grams)} g`),
      ],
      warnings: [
        'The pressure in a shut cavity is not known until it is let out: reckon with the highest it can be.',
      ],
    })
  },
})

const oversize = offer({
  name: 'oversize-piston-trigger',
  title: 'Bore growth that asks for an oversize piston',
  inputs: [
    length('nominal', 'nominal bore'),
    wordOf('column', 'what runs on the bore', OVERSIZE_PISTON_COLUMNS),
  ],
  outputs: [length('growth', 'bore growth on diameter')],
  sources: [OVERSIZE_PISTON_SOURCE],
  validity: 'To 3.99 in and 4 to 42 in, by row; non-metallic rings and riders to 29.999 in only.',
  work: (given) => {
    const found = oversizePistonTrigger({
      nominalM: given.si('nominal'),
      column: given.word('column') as OversizePistonColumn,
    })
    if (!found.ok) return found
    return ok({
      gives: { growth: found.value },
      trace: [step('Bore growth', 'row of table 4-6', `at ${given.show('nominal')}: ${inches(found.value)}`)],
      warnings: [FALL_BACK],
    })
  },
})

export const PISTON: readonly Computation[] = [
  clearanceRule,
  clearance,
  weight,
  kind,
  force,
  energy,
  oversize,
]
