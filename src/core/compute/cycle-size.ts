// Displacement, clearance and volumetric efficiency offered by name.

import { clearanceFromParts } from '../cycle/clearance.ts'
import { displacement, pistonAreas, pistonSpeed } from '../cycle/cylinder-ends.ts'
import { VE_FORMS, VE_FORMULA, VE_SOURCE, volumetricEfficiency } from '../cycle/volumetric-efficiency.ts'
import { ok } from '../lib/result.ts'
import { formatBoth, fromSi } from '../units/index.ts'
import type { Computation } from './computation.ts'
import {
  absolutePressures,
  BAROMETER,
  BORE,
  DISCHARGE,
  K,
  ROD,
  SPEED,
  STROKE,
  SUCTION,
  sizeOf,
  TAIL_ROD,
  take,
  takeList,
  takeWord,
  Z_DISCHARGE,
  Z_SUCTION,
} from './cycle-common-inputs.ts'
import { fig, offer, quantityOut } from './cycle-given.ts'

const out = (name: string, says: string, kind: Parameters<typeof take>[2], unit: string) =>
  take(name, says, kind, unit)

export const displacementComputation: Computation = offer(
  {
    name: 'displacement',
    title: 'Piston area and displacement of each end, piston speed',
    inputs: [BORE, ROD, TAIL_ROD, STROKE, SPEED],
    outputs: [
      out('head_area', 'piston area, head end', 'area', 'in2'),
      out('crank_area', 'piston area, crank end', 'area', 'in2'),
      out('head_displacement', 'displacement, head end', 'flow', 'cfm'),
      out('crank_displacement', 'displacement, crank end', 'flow', 'cfm'),
      out('displacement', 'displacement, both ends', 'flow', 'cfm'),
      out('per_turn', 'displacement of both ends in one turn', 'volume', 'in3'),
      out('piston_speed', 'mean piston speed', 'speed', 'ft/min'),
    ],
    sources: [
      'Bloch & Hoefner, Reciprocating Compressors: Operation and Maintenance, Gulf 1996, p. 394 (A-7)',
      'E. W. McAllister (ed.), Pipeline Rules of Thumb Handbook, p. 271-272',
    ],
    validity: 'Any reciprocating cylinder; for a single-acting one use the end that acts.',
  },
  (given) => {
    const size = sizeOf(given)
    const [strokeM, speed] = [given.si('stroke'), given.si('speed')]
    const moved = displacement(size, strokeM, speed)
    if (!moved.ok) return moved
    const areas = pistonAreas(size)
    if (!areas.ok) return areas
    const mean = pistonSpeed(strokeM, speed)
    if (!mean.ok) return mean
    const { headM2, crankM2 } = areas.value
    const { headM3PerS, crankM3PerS, totalM3PerS, perRevM3 } = moved.value
    return ok({
      outputs: {
        head_area: quantityOut('area', headM2),
        crank_area: quantityOut('area', crankM2),
        head_displacement: quantityOut('flow', headM3PerS),
        crank_displacement: quantityOut('flow', crankM3PerS),
        displacement: quantityOut('flow', totalM3PerS),
        per_turn: quantityOut('volume', perRevM3),
        piston_speed: quantityOut('speed', mean.value),
      },
      trace: [
        {
          says: 'Piston areas',
          formula: 'Ahe = pi/4 (D^2 - t^2); Ace = pi/4 (D^2 - d^2)',
          worked: `Ahe = ${fig(headM2)} m2; Ace = ${fig(crankM2)} m2`,
        },
        {
          says: 'Displacement of both ends',
          formula: 'PD = (Ahe + Ace) S N',
          worked:
            `PD = (${fig(headM2)} + ${fig(crankM2)}) x ${fig(strokeM)} x ${fig(speed)} = ${fig(totalM3PerS)} m3/s` +
            ` = ${formatBoth(fromSi('flow', totalM3PerS), 'cfm', 1)}`,
        },
        {
          says: 'Mean piston speed',
          formula: 'v = 2 S N',
          worked: `v = 2 x ${fig(strokeM)} x ${fig(speed)} = ${formatBoth(fromSi('speed', mean.value), 'ft/min', 0)}`,
        },
      ],
      warnings: [],
    })
  },
)

export const clearanceComputation: Computation = offer(
  {
    name: 'clearance',
    title: 'Clearance of one end from its parts',
    inputs: [
      takeList('parts', 'volumes left at dead centre: end space, ports, valves, pocket', 'volume', 'in3', 1),
      take('swept', 'swept volume of this end', 'volume', 'in3'),
    ],
    outputs: [
      out('volume', 'clearance volume', 'volume', 'in3'),
      out('clearance', 'clearance over swept volume of this end', 'ratio', '%'),
    ],
    sources: ['GPSA Engineering Data Book, section 13, nomenclature (clearance as a share of displacement)'],
    validity: 'One end; clearance to 5 times the swept volume.',
  },
  (given) => {
    const parts = given.list('parts')
    const swept = given.si('swept')
    const found = clearanceFromParts(
      parts.map((volumeM3, i) => ({ name: `part ${i + 1}`, volumeM3 })),
      swept,
    )
    if (!found.ok) return found
    const { volumeM3, ratio } = found.value
    const cm3 = (m3: number) => fig(m3 * 1e6)
    return ok({
      outputs: { volume: quantityOut('volume', volumeM3), clearance: quantityOut('ratio', ratio) },
      trace: [
        {
          says: 'Clearance of this end',
          formula: 'C = sum of volumes / swept volume',
          worked: `C = (${parts.map(cm3).join(' + ')}) / ${cm3(swept)} cm3 = ${fig(ratio)}`,
        },
      ],
      warnings: [],
    })
  },
)

export const volumetricEfficiencyComputation: Computation = offer(
  {
    name: 'volumetric-efficiency',
    title: 'Volumetric efficiency of one end on suction conditions, by a named form',
    inputs: [
      takeWord('form', 'which published form; never mix them', VE_FORMS),
      take('clearance', 'clearance over swept volume of this end, with any pocket', 'ratio', '%'),
      SUCTION,
      DISCHARGE,
      BAROMETER,
      K,
      Z_SUCTION,
      Z_DISCHARGE,
      take('loss', 'loss L; only for the two forms that have one', 'ratio', '%', { optional: true }),
    ],
    outputs: [
      out('efficiency', 'volumetric efficiency, suction basis', 'ratio', '%'),
      out('ratio', 'pressure ratio', 'ratio', '1'),
    ],
    sources: VE_FORMS.map((form) => `${form}: ${VE_SOURCE[form]}`),
    validity: 'One end, one stage, ratio 1 to 50; clearance to 5 times the swept volume.',
  },
  (given) => {
    const pressures = absolutePressures(given)
    if (!pressures.ok) return pressures
    const form = given.word('form', VE_FORMS)
    const { ratio } = pressures.value
    const [clearance, k] = [given.si('clearance'), given.si('k')]
    const [zSuction, zDischarge, loss] = [given.si('z_suction'), given.si('z_discharge'), given.maybe('loss')]
    const found = volumetricEfficiency({ form, clearance, ratio, k, zSuction, zDischarge, loss })
    if (!found.ok) return found
    const figures = `C = ${fig(clearance)}, r = ${fig(ratio)}, k = ${fig(k)}, Zs/Zd = ${fig(zSuction / zDischarge)}`
    const withLoss = loss === undefined ? '' : `, L = ${fig(loss)}`
    return ok({
      outputs: { efficiency: quantityOut('ratio', found.value), ratio: quantityOut('ratio', ratio) },
      trace: [
        ...pressures.value.trace,
        {
          says: `Volumetric efficiency, form ${form}, suction basis`,
          formula: VE_FORMULA[form],
          worked: `${figures}${withLoss}: VE = ${fig(found.value)}`,
        },
      ],
      warnings: [
        `Form ${form}: other published forms give other figures; the basis is suction, not free air.`,
        ...(form === 'ideal' ? ['Ideal: valve loss, leakage and heating are not in it.'] : []),
      ],
    })
  },
)
