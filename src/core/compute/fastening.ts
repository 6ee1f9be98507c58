// Fastening as named computations. The functions and their sources are in src/core/fastening.

import { jointShare } from '../fastening/joint-share.ts'
import { tighteningPasses, USUAL_SHARES } from '../fastening/passes.ts'
import { metricStressArea, unifiedStressArea } from '../fastening/stress-area.ts'
import { nutAngle, stretch } from '../fastening/stretch.ts'
import {
  NUT_FACTORS,
  PRELOAD_SCATTER,
  type ScatterName,
  tensionFromTorque,
  torqueForTension,
} from '../fastening/torque.ts'
import { ok } from '../lib/result.ts'
import type { Computation } from './computation.ts'
import { length, numberOf, offer, plain, quantityOf, shown, step, textOf, wordOf } from './mechanical.ts'

const SHIGLEY = 'J. E. Shigley (Budynas & Nisbett), Mechanical Engineering Design, 9th ed.'
const DIAMETER = length('diameter', 'diameter of the thread')
const AREA = (name: string, says: string) => quantityOf('area', 'in2', name, says)
const TENSION = quantityOf('force', 'lbf', 'tension', 'tension')
const E_OF = (name: string, says: string) => quantityOf('pressure-difference', 'MPa', name, says)
const lbf = (si: number) => shown(si, 'force', 'lbf')
const FACTORS = Object.entries(NUT_FACTORS).map(([name, factor]) => `${name.replaceAll('-', ' ')} ${factor}`)

const unified = offer({
  name: 'stress-area-unified',
  title: 'Tensile stress area of an inch thread',
  inputs: [DIAMETER, numberOf('threads', 'threads per inch', { least: 1, most: 80 })],
  outputs: [AREA('area', 'stress area')],
  sources: ['ASME B1.1 (formula read second-hand)', `${SHIGLEY}, table 8-2 p. 413`],
  validity: 'UNC, UNF, UN and 8UN. Not for metric threads: their constant is another.',
  work: (given) => {
    const found = unifiedStressArea({
      diameterM: given.si('diameter'),
      threadsPerInch: given.number('threads'),
    })
    if (!found.ok) return found
    const worked = `pi/4 x (${given.show('diameter')} - 0.9743 / ${given.show('threads')})2 = ${shown(found.value, 'area', 'in2')}`
    return ok({
      gives: { area: found.value },
      trace: [step('Stress area', 'pi/4 (D - 0.9743 / n)2', worked)],
    })
  },
})

const metric = offer({
  name: 'stress-area-metric',
  title: 'Tensile stress area of a metric thread',
  inputs: [
    quantityOf('length', 'mm', 'diameter', 'diameter of the thread'),
    quantityOf('length', 'mm', 'pitch', 'pitch'),
  ],
  outputs: [quantityOf('area', 'mm2', 'area', 'stress area')],
  sources: ['ISO 898-1 (constant from memory)'],
  validity: 'ISO metric threads. Not for inch threads: their constant is another.',
  work: (given) => {
    const found = metricStressArea({ diameterM: given.si('diameter'), pitchM: given.si('pitch') })
    if (!found.ok) return found
    const worked = `pi/4 x (${given.show('diameter')} - 0.9382 x ${given.show('pitch')})2 = ${shown(found.value, 'area', 'mm2')}`
    return ok({ gives: { area: found.value }, trace: [step('Stress area', 'pi/4 (d - 0.9382 P)2', worked)] })
  },
})

const tension = offer({
  name: 'tension-from-torque',
  title: 'Tension that a torque gives, as an interval',
  inputs: [
    quantityOf('torque', 'lbf.ft', 'torque', 'torque'),
    DIAMETER,
    numberOf('k', `nut factor: ${FACTORS.join(', ')}`, { least: 0.05, most: 0.5 }),
    wordOf('method', 'how it is tightened', Object.keys(PRELOAD_SCATTER)),
  ],
  outputs: [
    quantityOf('force', 'lbf', 'tension', 'tension that is meant'),
    quantityOf('force', 'lbf', 'least', 'it may be as little as this'),
    quantityOf('force', 'lbf', 'most', 'or as much as this'),
  ],
  sources: [
    `${SHIGLEY}, table 8-15 p. 439 (K)`,
    ...new Set(Object.values(PRELOAD_SCATTER).map(({ source }) => source)),
  ],
  validity: 'K is an estimate. Two published lists of scatter disagree and are kept apart.',
  work: (given) => {
    const found = tensionFromTorque({
      torqueNm: given.si('torque'),
      diameterM: given.si('diameter'),
      nutFactor: given.number('k'),
      method: given.word('method') as ScatterName,
    })
    if (!found.ok) return found
    const { meantN, leastN, mostN, source } = found.value
    const { part } = PRELOAD_SCATTER[given.word('method') as ScatterName]
    return ok({
      gives: { tension: meantN, least: leastN, most: mostN },
      trace: [
        step(
          'Tension',
          'F = T / (K D)',
          `${given.show('torque')} / (${given.show('k')} x ${given.show('diameter')}) = ${lbf(meantN)}`,
        ),
        step(
          'Scatter',
          'F (1 - s) to F (1 + s)',
          `s = ${plain(part * 100)} %: ${lbf(leastN)} to ${lbf(mostN)}`,
        ),
      ],
      warnings: [`Scatter from ${source}.`],
    })
  },
})

const torque = offer({
  name: 'torque-for-tension',
  title: 'Torque for a tension',
  inputs: [TENSION, DIAMETER, numberOf('k', `nut factor: ${FACTORS.join(', ')}`, { least: 0.05, most: 0.5 })],
  outputs: [quantityOf('torque', 'lbf.ft', 'torque', 'torque')],
  sources: [`${SHIGLEY}, table 8-15 p. 439 (K), eq. 8-27 (number from memory)`],
  validity: 'K is an estimate: the tension this torque gives is an interval, see tension-from-torque.',
  work: (given) => {
    const found = torqueForTension({
      tensionN: given.si('tension'),
      diameterM: given.si('diameter'),
      nutFactor: given.number('k'),
    })
    if (!found.ok) return found
    const worked = `${given.show('k')} x ${given.show('diameter')} x ${given.show('tension')} = ${shown(found.value, 'torque', 'lbf.ft')}`
    return ok({
      gives: { torque: found.value },
      trace: [step('Torque', 'T = K D F', worked)],
      warnings: ["The machine's own torque comes first; thread and nut face as K was meant, oiled or dry."],
    })
  },
})

const stretched = offer({
  name: 'bolt-stretch',
  title: 'Stretch of a bolt or rod end under tension',
  inputs: [
    TENSION,
    length('length', 'length that stretches'),
    AREA('area', 'section it stretches on'),
    E_OF('elasticity', 'elasticity of the metal'),
  ],
  outputs: [length('stretch', 'stretch'), quantityOf('pressure-difference', 'psi', 'stress', 'stress')],
  sources: [`Hooke's law; ${SHIGLEY}, ch. 8`],
  validity: 'Even section, below the proof stress, which is not checked here.',
  work: (given) => {
    const segment = {
      lengthM: given.si('length'),
      areaM2: given.si('area'),
      elasticityPa: given.si('elasticity'),
    }
    const found = stretch({ tensionN: given.si('tension'), segments: [segment] })
    if (!found.ok) return found
    const { stretchM, stressPa } = found.value
    const worked = `${given.show('tension')} x ${given.show('length')} / (${given.show('elasticity')} x ${given.show('area')}) = ${shown(stretchM, 'length', 'in')}`
    return ok({
      gives: { stretch: stretchM, stress: stressPa },
      trace: [
        step('Stretch', 'F L / (E A)', worked),
        step(
          'Stress',
          'F / A',
          `${given.show('tension')} / ${given.show('area')} = ${shown(stressPa, 'pressure-difference', 'psi')}`,
        ),
      ],
    })
  },
})

const angle = offer({
  name: 'nut-angle',
  title: 'Angle to turn a nut from snug, with the squeeze of the joint',
  inputs: [
    TENSION,
    length('pitch', 'pitch of the thread'),
    length('grip', 'length clamped'),
    AREA('bolt_area', 'section of the bolt'),
    E_OF('bolt_elasticity', 'elasticity of the bolt'),
    AREA('joint_area', 'section of what is clamped'),
    E_OF('joint_elasticity', 'elasticity of what is clamped'),
  ],
  outputs: [
    quantityOf('angle', 'deg', 'angle', 'angle from snug'),
    quantityOf('angle', 'deg', 'bolt_only', 'share of the bolt alone'),
  ],
  sources: [
    'mechanics',
    'angle from a snug torque: H. P. Bloch & J. J. Hoefner, Reciprocating Compressors, Gulf 1996, p. 286',
  ],
  validity: 'From snug: all play out, no tension yet. Even sections over the whole grip.',
  work: (given) => {
    const lengthM = given.si('grip')
    const found = nutAngle({
      tensionN: given.si('tension'),
      pitchM: given.si('pitch'),
      bolt: [{ lengthM, areaM2: given.si('bolt_area'), elasticityPa: given.si('bolt_elasticity') }],
      joint: [{ lengthM, areaM2: given.si('joint_area'), elasticityPa: given.si('joint_elasticity') }],
    })
    if (!found.ok) return found
    const { angleRad, stretchM, squeezeM, boltOnlyRad } = found.value
    const inch = (si: number) => shown(si, 'length', 'in')
    return ok({
      gives: { angle: angleRad, bolt_only: boltOnlyRad },
      trace: [
        step('Stretch of the bolt', 'F L / (E A)', inch(stretchM)),
        step('Squeeze of the joint', 'F L / (E A)', inch(squeezeM)),
        step(
          'Angle',
          '360 deg x (stretch + squeeze) / pitch',
          `360 x (${inch(stretchM)} + ${inch(squeezeM)}) / ${given.show('pitch')} = ${shown(angleRad, 'angle', 'deg')}`,
        ),
      ],
      warnings: ['Where snug begins is the weak point: use the snug torque of the book.'],
    })
  },
})

const share = offer({
  name: 'joint-load-share',
  title: 'Share of an outside load that a tightened bolt feels',
  inputs: [
    quantityOf('force', 'lbf', 'preload', 'tension when tightened'),
    quantityOf('force', 'lbf', 'load', 'load from outside on one bolt'),
    numberOf('bolt_stiffness', 'stiffness of the bolt, any unit', { least: 0 }),
    numberOf('joint_stiffness', 'stiffness of the joint, the same unit', { least: 0 }),
    AREA('area', 'stress area'),
  ],
  outputs: [
    numberOf('c', 'share C of the bolt'),
    quantityOf('force', 'lbf', 'bolt', 'load on the bolt'),
    quantityOf('force', 'lbf', 'clamp', 'what still clamps'),
    quantityOf('pressure-difference', 'psi', 'stress', 'stress in the bolt'),
    quantityOf('force', 'lbf', 'opens_at', 'outside load that opens the joint'),
  ],
  sources: [`${SHIGLEY}, example 8-3 p. 439`],
  validity: 'A joint that is pulled apart, in line with the bolt. Once open the bolt takes all.',
  work: (given) => {
    const found = jointShare({
      preloadN: given.si('preload'),
      loadN: given.si('load'),
      boltStiffness: given.number('bolt_stiffness'),
      jointStiffness: given.number('joint_stiffness'),
      stressAreaM2: given.si('area'),
    })
    if (!found.ok) return found
    const { share: c, boltN, clampN, boltStressPa, opensAtN, isOpen } = found.value
    return ok({
      gives: { c, bolt: boltN, clamp: clampN, stress: boltStressPa, opens_at: opensAtN },
      trace: [
        step(
          'Share',
          'C = kb / (kb + km)',
          `${given.show('bolt_stiffness')} / (${given.show('bolt_stiffness')} + ${given.show('joint_stiffness')}) = ${plain(c)}`,
        ),
        step('On the bolt', isOpen ? 'open: the whole load' : 'Fi + C P', lbf(boltN)),
        step('Clamping', isOpen ? 'open: nothing' : 'Fi - (1 - C) P', lbf(clampN)),
        step('Stress', 'F / At', shown(boltStressPa, 'pressure-difference', 'psi')),
      ],
      warnings: isOpen ? ['The joint opens under this load.'] : [],
    })
  },
})

const passes = offer({
  name: 'tightening-passes',
  title: 'Order and torque of the passes for the nuts of a cover',
  inputs: [
    numberOf('nuts', 'count of nuts', { whole: true, least: 3, most: 200 }),
    quantityOf('torque', 'lbf.ft', 'torque', 'full torque'),
  ],
  outputs: [
    {
      name: 'torques',
      says: 'torque of each cross pass',
      type: { is: 'quantities', kind: 'torque', unit: 'lbf.ft', least: 1 },
    },
    textOf('order', 'order of the nuts, counted round from 1'),
  ],
  sources: ['common practice, no source'],
  validity:
    "Cross passes of 30, 60 and 100 %, then once round at full torque until no nut turns. The machine's book comes first.",
  work: (given) => {
    const found = tighteningPasses({ nuts: given.number('nuts'), torqueNm: given.si('torque') })
    if (!found.ok) return found
    const cross = found.value.slice(0, USUAL_SHARES.length)
    const order = cross[0]?.order.join(' ') ?? ''
    return ok({
      gives: { torques: cross.map(({ torqueNm }) => torqueNm), order },
      trace: found.value.map((pass, i) =>
        step(
          `Pass ${i + 1}`,
          `${plain(pass.share * 100)} %, ${pass.pattern}`,
          `${shown(pass.torqueNm, 'torque', 'lbf.ft')}: ${pass.order.join(' ')}`,
        ),
      ),
    })
  },
})

export const FASTENING: readonly Computation[] = [
  unified,
  metric,
  tension,
  torque,
  stretched,
  angle,
  share,
  passes,
]
