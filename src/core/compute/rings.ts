// Rings and riders as named computations. The functions and their sources are in src/core/rings.

import { ok } from '../lib/result.ts'
import {
  END_GAP_RULES,
  type EndGapRuleName,
  JOINT_FACTOR,
  MEANINGS_OF_T,
  type MeaningOfT,
  newEndGap,
  RING_MATERIALS,
  type RingJoint,
  type RingMaterial,
  thermalEndGap,
} from '../rings/end-gap.ts'
import { GAP_LIMIT_RULES, type GapLimitRuleName, gapGrowth, gapLimit, radialWear } from '../rings/gap-wear.ts'
import {
  OVERSIZE_RING_RULES,
  type OversizeRingRuleName,
  oversizeRingTrigger,
} from '../rings/oversize-ring.ts'
import {
  PISTON_MATERIALS,
  type PistonMaterial,
  RIDER_GROOVE_SOURCE,
  RIDER_MATERIALS,
  RIDER_RULES,
  type RiderMaterial,
  type RiderRuleName,
  riderClearance,
  riderGroove,
} from '../rings/rider.ts'
import { SIDE_CLEARANCE_RULES, type SideRuleName, sideClearance } from '../rings/side-clearance.ts'
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

const BH = 'H. P. Bloch & J. J. Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996'
const TH = 'The Tribology Handbook (M. J. Neale, 2nd ed. 1995; editor and edition from memory)'
const MATERIAL = wordOf('material', 'material of the ring', RING_MATERIALS)
const BORE = length('bore', 'bore')
const PISTON = wordOf('piston', 'material of the piston', PISTON_MATERIALS)

const endGap = offer({
  name: 'ring-end-gap',
  title: 'End gap of a new ring by material, joint and bore',
  inputs: [
    BORE,
    MATERIAL,
    wordOf(
      'joint',
      'joint of the ring; 0.71 and 0.87 are the factors printed for two angle cuts',
      Object.keys(JOINT_FACTOR),
    ),
    wordOf('rule', 'which published rule', Object.keys(END_GAP_RULES)),
  ],
  outputs: [length('gap', 'end gap'), textOf('meaning', 'whether the book calls it a minimum')],
  sources: Object.values(END_GAP_RULES).map(({ source }) => source),
  validity:
    'Read in the smallest, unworn part of the bore. The two rules contradict each other and are kept apart.',
  work: (given) => {
    const joint = given.word('joint') as RingJoint
    const gap = newEndGap({
      boreM: given.si('bore'),
      material: given.word('material') as RingMaterial,
      joint,
      rule: given.word('rule') as EndGapRuleName,
    })
    if (!gap.ok) return gap
    const { gapM, isMinimum, source } = gap.value
    const ratio = gapM / given.si('bore') / JOINT_FACTOR[joint]
    const worked = `${plain(ratio)} x ${given.show('bore')} x ${JOINT_FACTOR[joint]} = ${inches(gapM)}`
    return ok({
      gives: { gap: gapM, meaning: isMinimum ? 'a minimum' : 'as the book states it' },
      trace: [step('End gap', 'ratio x bore x joint factor', worked)],
      warnings: [FALL_BACK, `From ${source}; the other rule gives another gap.`],
    })
  },
})

const thermalGap = offer({
  name: 'ring-thermal-gap',
  title: 'End gap of a non-metallic ring from its expansion',
  inputs: [
    BORE,
    numberOf('alpha', 'expansion of the ring, millionths per K', { least: 0, most: 300 }),
    quantityOf('temperature', 'degC', 'operating', 'operating temperature'),
    quantityOf('temperature', 'degC', 'fitted', 'temperature at fitting; needed for a rise', {
      optional: true,
    }),
    wordOf('meaning', 'what T stands for: the book does not say', MEANINGS_OF_T),
  ],
  outputs: [length('gap', 'end gap'), numberOf('t', 'T as it was taken')],
  sources: [`${TH}, table 17.9 p. B17.7 (formula), table 17.5 (expansion of materials)`],
  validity:
    "Non-metallic rings. The growth of the bore is not counted. Expansion of PTFE is not even: use the ring maker's.",
  work: (given) => {
    const meaning = given.word('meaning') as MeaningOfT
    const fitted = given.maybe('fitted')
    const gap = thermalEndGap({
      boreM: given.si('bore'),
      alphaPerK: given.number('alpha') * 1e-6,
      operatingC: given.si('operating') - 273.15,
      fittedC: fitted === undefined ? undefined : fitted - 273.15,
      meaning,
    })
    if (!gap.ok) return gap
    const { gapM, T } = gap.value
    return ok({
      gives: { gap: gapM, t: T },
      trace: [
        step(
          'End gap',
          'S = pi D alpha T',
          `S = pi x ${given.show('bore')} x ${given.show('alpha')}e-6 x ${plain(T)} = ${inches(gapM)}`,
        ),
      ],
      warnings: [
        FALL_BACK,
        `The book does not say what T is; here ${meaning.replaceAll('-', ' ').replace('t is', 'T is')}.`,
      ],
    })
  },
})

const side = offer({
  name: 'ring-side-clearance',
  title: 'Side clearance of a ring in its groove',
  inputs: [
    length('width', 'axial width of the ring'),
    MATERIAL,
    wordOf('rule', 'which published rule', Object.keys(SIDE_CLEARANCE_RULES)),
  ],
  outputs: [
    length('least', 'least clearance'),
    length('most', 'greatest clearance'),
    textOf('kind', 'what the figure is'),
  ],
  sources: Object.values(SIDE_CLEARANCE_RULES).map(({ source }) => source),
  validity: 'The rules contradict one another by up to 2.5 times and are kept apart.',
  work: (given) => {
    const clearance = sideClearance({
      widthM: given.si('width'),
      material: given.word('material') as RingMaterial,
      rule: given.word('rule') as SideRuleName,
    })
    if (!clearance.ok) return clearance
    const { leastM, mostM, kind, isFloor, source } = clearance.value
    const worked = isFloor
      ? `below the floor, so ${inches(leastM)}`
      : `${plain(leastM / given.si('width'))} to ${plain(mostM / given.si('width'))} x ${given.show('width')} = ${inches(leastM)} to ${inches(mostM)}`
    return ok({
      gives: { least: leastM, most: mostM, kind },
      trace: [step('Side clearance', 'ratio x width, not below the floor of the book', worked)],
      warnings: [FALL_BACK, `From ${source}.`],
    })
  },
})

const radial = offer({
  name: 'ring-radial-wear',
  title: 'Radial wear of a ring',
  inputs: [
    length('new', 'thickness when new'),
    length('now', 'thickness now, at the thinnest'),
    length('u', 'measuring error U of the difference'),
  ],
  outputs: [length('wear', 'radial wear'), numberOf('share', 'wear over the thickness when new')],
  sources: ['definition'],
  validity: "No published limit was found: the limit is the machine's own.",
  work: (given) => {
    const wear = radialWear({ newM: given.si('new'), nowM: given.si('now'), differenceU: given.si('u') })
    if (!wear.ok) return wear
    const { wearM, share } = wear.value
    const worked = `${given.show('new')} - ${given.show('now')} = ${inches(wearM)}`
    return ok({
      gives: { wear: wearM, share },
      trace: [step('Radial wear', 'new - now', worked)],
      warnings: wearM <= given.si('u') ? ['The wear is not told apart from the measuring error.'] : [],
    })
  },
})

const growth = offer({
  name: 'ring-gap-growth',
  title: 'Growth of an end gap from wear of bore and ring',
  inputs: [
    length('bore_growth', 'growth of the bore on diameter'),
    length('radial_wear', 'radial wear of the ring; zero for an unworn ring'),
  ],
  outputs: [length('growth', 'growth of the gap')],
  sources: [`${BH}, p. 261 and 281 (pi times the bore)`, 'geometry (2 pi times the radial wear)'],
  validity: 'A ring in one piece that lies on the wall all round.',
  work: (given) => {
    const grown = gapGrowth({ boreGrowthM: given.si('bore_growth'), radialWearM: given.si('radial_wear') })
    if (!grown.ok) return grown
    const { fromBoreM, fromRingM, growthM } = grown.value
    return ok({
      gives: { growth: growthM },
      trace: [
        step(
          'From the bore',
          'pi x growth of the bore',
          `pi x ${given.show('bore_growth')} = ${inches(fromBoreM)}`,
        ),
        step(
          'From the ring',
          '2 pi x radial wear',
          `2 pi x ${given.show('radial_wear')} = ${inches(fromRingM)}`,
        ),
        step('Together', 'sum', `${inches(fromBoreM)} + ${inches(fromRingM)} = ${inches(growthM)}`),
      ],
    })
  },
})

const limit = offer({
  name: 'ring-gap-limit',
  title: 'Greatest end gap, and the bore growth that brings it',
  inputs: [
    length('new_gap', 'end gap when new'),
    wordOf('rule', 'which rule', Object.keys(GAP_LIMIT_RULES)),
    numberOf('factor', "greatest over new, for stated-factor: the machine's own book", {
      least: 0,
      most: 20,
      optional: true,
    }),
  ],
  outputs: [
    length('greatest', 'greatest gap'),
    length('bore_growth', 'bore growth that brings it, ring unworn'),
  ],
  sources: Object.values(GAP_LIMIT_RULES).map(({ source }) => source),
  validity: 'For a worn ring as for a worn bore. Three times new is not universal.',
  work: (given) => {
    const found = gapLimit({
      newGapM: given.si('new_gap'),
      rule: given.word('rule') as GapLimitRuleName,
      statedFactor: given.maybe('factor'),
    })
    if (!found.ok) return found
    const { greatestM, growthM, boreGrowthM, factor } = found.value
    return ok({
      gives: { greatest: greatestM, bore_growth: boreGrowthM },
      trace: [
        step(
          'Greatest gap',
          'factor x new gap',
          `${plain(factor)} x ${given.show('new_gap')} = ${inches(greatestM)}`,
        ),
        step('Bore growth', '(greatest - new) / pi', `${inches(growthM)} / pi = ${inches(boreGrowthM)}`),
      ],
      warnings: [FALL_BACK],
    })
  },
})

const oversize = offer({
  name: 'oversize-ring-trigger',
  title: 'Bore growth that asks for oversize rings',
  inputs: [
    length('nominal', 'nominal bore'),
    wordOf('rule', 'which published rule', Object.keys(OVERSIZE_RING_RULES)),
    length('new_gap', 'end gap when new; needed for gap-tripled', { optional: true }),
  ],
  outputs: [length('growth', 'bore growth on diameter')],
  sources: Object.values(OVERSIZE_RING_RULES),
  validity:
    'Table: to 3.99 in and 4 to 42 in, by row; a bore between two rows is refused. The rules differ threefold.',
  work: (given) => {
    const rule = given.word('rule') as OversizeRingRuleName
    const found = oversizeRingTrigger({
      nominalM: given.si('nominal'),
      rule,
      newGapM: given.maybe('new_gap'),
    })
    if (!found.ok) return found
    const { growthM, source } = found.value
    const formula = {
      'handbook-table-4-2': 'row of the table',
      'gap-tripled': '2 x new gap / pi',
      'navy-0.003-per-in': '0.003 x nominal bore',
    }[rule]
    return ok({
      gives: { growth: growthM },
      trace: [step('Bore growth', formula, `at ${given.show('nominal')}: ${inches(growthM)}`)],
      warnings: [FALL_BACK, `From ${source}. The published rules differ threefold.`],
    })
  },
})

const rider = offer({
  name: 'rider-clearance',
  title: 'Clearance of a rider band in the bore',
  inputs: [BORE, PISTON, wordOf('rule', 'which published rule', Object.keys(RIDER_RULES))],
  outputs: [length('least', 'least clearance on diameter'), length('most', 'greatest clearance on diameter')],
  sources: Object.values(RIDER_RULES).map(({ source }) => source),
  validity:
    'By the material of the piston, whose growth the band follows. The two rules differ and are kept apart.',
  work: (given) => {
    const found = riderClearance({
      boreM: given.si('bore'),
      pistonMaterial: given.word('piston') as PistonMaterial,
      rule: given.word('rule') as RiderRuleName,
    })
    if (!found.ok) return found
    const { leastM, mostM, source } = found.value
    return ok({
      gives: { least: leastM, most: mostM },
      trace: [
        step(
          'Clearance',
          'k x bore + constant',
          `at ${given.show('bore')}: ${inches(leastM)} to ${inches(mostM)}`,
        ),
      ],
      warnings: [FALL_BACK, `From ${source}.`],
    })
  },
})

const groove = offer({
  name: 'rider-groove',
  title: 'Least side and end clearance of a rider band in its groove',
  inputs: [
    BORE,
    length('width', 'width of the band'),
    wordOf('material', 'material of the band', RIDER_MATERIALS),
  ],
  outputs: [length('side', 'least side clearance'), length('end', 'least end clearance')],
  sources: [RIDER_GROOVE_SOURCE],
  validity: 'Least values.',
  work: (given) => {
    const found = riderGroove({
      boreM: given.si('bore'),
      widthM: given.si('width'),
      material: given.word('material') as RiderMaterial,
    })
    if (!found.ok) return found
    const { sideM, endM } = found.value
    return ok({
      gives: { side: sideM, end: endM },
      trace: [
        step('Side', 'ratio x width, not below the floor', `at ${given.show('width')}: ${inches(sideM)}`),
        step('End', 'ratio x bore', `at ${given.show('bore')}: ${inches(endM)}`),
      ],
      warnings: [FALL_BACK],
    })
  },
})

export const RINGS: readonly Computation[] = [
  endGap,
  thermalGap,
  side,
  radial,
  growth,
  limit,
  oversize,
  rider,
  groove,
]
