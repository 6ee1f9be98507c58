// What the plots of a load question are drawn from: driver load against the opening of the pocket, and the ideal cycle of its
// cylinder with the pocket where it stands.
import { displacement } from '../../cycle/cylinder-ends.ts'
import { completeMachine } from '../../cycle/machine-holds.ts'
import { operate } from '../../cycle/operate.ts'
import { pvPoints } from '../../cycle/pv-cycle.ts'
import type { Definitions, PlacedStep } from '../../job/definitions.ts'
import { type State, standingVerdict } from '../../job/state.ts'
import type { PocketVerdictRecord } from '../../job/verdict-record.ts'
import { powerUnit } from '../../talk/pocket-words.ts'
import type { PlotOf } from '../schema-plots.ts'
import type { Figure } from '../schema-words.ts'
import { figureShown } from './figure.ts'
import { rounded } from './plot-wear.ts'

/** Points on each of the two curves of a cycle. */
const CURVE = 24

export function pocketPlots(defs: Definitions, state: State): (PlotOf<'pocket'> | PlotOf<'pv'>)[] {
  return defs.steps.flatMap((placed) => {
    const record = standingVerdict(state, placed.id)?.verdict
    if (record?.compute !== 'pocket_setting') return []
    return [...curveOf(defs, placed, record), ...cardOf(defs, placed, record)]
  })
}

function curveOf(
  defs: Definitions,
  { number, step }: PlacedStep,
  { inputs, result }: PocketVerdictRecord,
): PlotOf<'pocket'>[] {
  if (result.table.length < 2) return []
  const load = (watts: number): Figure => figureShown('power', watts, powerUnit(defs), 1)
  const { measuredLoadW } = inputs.record
  return [
    {
      kind: 'pocket',
      title: `${number} ${step.title}: driver load and gas against the pocket`,
      unit: powerUnit(defs),
      notes: [
        'Worked out from the readings, the whole machine balanced anew at each opening.',
        'Loads have the error of the meter on top, so that they never flatter.',
        ...(result.recommended === null ? [] : ['SET is the smallest opening that holds the target.']),
      ],
      rows: result.table.map(({ opening, loadW, capacityShare, faults }) => ({
        opening,
        load: load(loadW),
        capacity: rounded(capacityShare),
        isOut: faults.some(({ grade }) => grade === 'hold'),
      })),
      target: result.targetW === null ? null : load(result.targetW),
      measured: typeof measuredLoadW === 'number' ? load(measuredLoadW) : null,
      present: result.present,
      setting: result.recommended,
    },
  ]
}

/** Nothing where the record is not complete, or the machine finds no balance as it stands: then there is no cycle to draw. */
function cardOf(
  defs: Definitions,
  { number, step }: PlacedStep,
  { inputs }: PocketVerdictRecord,
): PlotOf<'pv'>[] {
  const complete = completeMachine(inputs.record)
  if (!complete.ok) return []
  const point = operate(complete.value)
  if (!point.ok) return []
  const stage = point.value.stages[inputs.choice.stage - 1]
  const cylinder = stage?.cylinders[inputs.choice.cylinder - 1]
  if (stage === undefined || cylinder === undefined) return []
  const swept = displacement(cylinder.cylinder, complete.value.strokeM, complete.value.speedPerS)
  if (!swept.ok) return []
  const { suctionPa, dischargePa, stage: model } = stage
  const ends = [
    { label: 'head end', end: cylinder.head, sweptM3: swept.value.headM3 },
    { label: 'crank end', end: cylinder.crank, sweptM3: swept.value.crankM3 },
  ].flatMap(({ label, end, sweptM3 }) => {
    if (!end.acts) return []
    const { clearance } = end
    const cycle = { sweptM3, clearance, suctionPa, dischargePa, compressionN: model.k, expansionN: model.k }
    const points = pvPoints(cycle, CURVE)
    if (!points.ok) return []
    return [
      {
        label,
        points: points.value.map(({ volumeM3, pressurePa }) => ({
          volume: rounded(volumeM3),
          pressure: rounded(pressurePa),
        })),
      },
    ]
  })
  if (ends.length === 0) return []
  return [
    {
      kind: 'pv',
      title: `${number} ${step.title}: ideal cycle of ${cylinder.cylinder.name}, pocket as it stands`,
      unit: defs.machine.shop_units.length === 'in' ? 'psia' : 'bara',
      notes: [
        'Worked out, not measured: the ideal cycle at the pressures read or balanced, without valve losses or pulsation. It is no card of an indicator.',
      ],
      ends,
    },
  ]
}
