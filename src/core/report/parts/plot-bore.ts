// What the plot of a bore is drawn from: the sizes that were judged, and the limits of size they were held against.
import { asBoreJudge } from '../../job/bore-facts.ts'
import { asKind, type Definitions, type PlacedStep, stepById } from '../../job/definitions.ts'
import { type State, standingVerdict } from '../../job/state.ts'
import { type BoreVerdictRecord, boreRecord } from '../../job/verdict-record.ts'
import { limitSource } from '../../sheet/limit-source.ts'
import { LIMIT_OF_SPREAD } from '../plot/bore.ts'
import type { PlotOf } from '../schema-plots.ts'
import { shopLength } from './figure.ts'

export function borePlots(defs: Definitions, state: State): PlotOf<'bore-profile'>[] {
  return defs.steps.flatMap((placed) => {
    const record = boreRecord(standingVerdict(state, placed.id)?.verdict)
    return record === undefined || record.inputs.readings.length < 2 ? [] : [plotOf(defs, placed, record)]
  })
}

function plotOf(
  defs: Definitions,
  placed: PlacedStep,
  { inputs, result }: BoreVerdictRecord,
): PlotOf<'bore-profile'> {
  const { from, to } = defs.machine.bore.ring_travel
  const length = (si: number) => shopLength(defs, si, 1)
  const least = Math.min(...inputs.readings.map(({ valueM }) => valueM))
  const limit = (id: string) =>
    result.judged.find(({ characteristic }) => characteristic === id)?.limit ?? null
  const largest = limit('largest-diameter')
  const spread = limit('spread')
  const names = namesOf(defs, placed)
  return {
    kind: 'bore-profile',
    title: `${placed.number} ${placed.step.title}: the bore along ring travel`,
    unit: defs.machine.shop_units.length,
    notes: [
      `Diameters at 20 degC. ${result.verdict}.`,
      ...(largest === null ? [] : [`Limit of the largest size: ${limitSource(largest)}.`]),
      ...(spread === null
        ? []
        : [`Limit of the spread, drawn above the least size: ${limitSource(spread)}.`]),
    ],
    travel: shopLength(defs, Math.abs(to.si - from.si)),
    points: inputs.readings.map((one) => ({
      number: String(placed.number),
      station: names.station(one.station),
      at: one.at,
      axis: names.axis(one.axis),
      value: length(one.valueM),
    })),
    lines: [
      ...(inputs.nominalM === null || inputs.nominalM === undefined
        ? []
        : [{ label: 'nominal', value: length(inputs.nominalM) }]),
      ...(spread === null ? [] : [{ label: LIMIT_OF_SPREAD, value: length(least + spread.value) }]),
      ...(largest === null ? [] : [{ label: 'limit of the largest', value: length(largest.value) }]),
    ],
  }
}

/** Stations and axes by the names that the drawing of the step has for them. */
function namesOf(defs: Definitions, placed: PlacedStep) {
  const judge = asBoreJudge(placed)
  const step =
    judge === null ? null : asKind(stepById(defs, judge.scope + judge.step.inputs.diameters), 'read').step
  const plain = (id: string) => id.replaceAll('_', ' ')
  return {
    station: (id: string) => {
      const found = step?.stations.find((one) => one.id === id)
      return found?.short ?? found?.label ?? plain(id)
    },
    axis: (id: string) => step?.axes?.find((one) => one.id === id)?.label ?? plain(id),
  }
}
