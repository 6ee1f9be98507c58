// What the plot of ring gaps and the like is drawn from: each size that a figure was taken from, beside its limits.
import type { Definitions, PlacedStep } from '../../job/definitions.ts'
import { type State, standingVerdict } from '../../job/state.ts'
import { figureRecord } from '../../job/verdict-record.ts'
import type { Figure } from '../../metrology/figure-judge.ts'
import { limitSource } from '../../sheet/limit-source.ts'
import { figureLabel } from '../../talk/figure-sums.ts'
import { placeNumber, placeShort } from '../../talk/names.ts'
import type { PlotOf } from '../schema-plots.ts'
import { shopLength } from './figure.ts'

/** Of rings and riders, and only where what was read is itself the size that was judged. */
const DRAWN = /^(?:ring|rider)-/
const ITSELF = /^\s*(?:(?:max|min)\(\s*\w+\s*\)|\w+)\s*$/

export function gapPlots(defs: Definitions, state: State): PlotOf<'gaps'>[] {
  return defs.steps.flatMap((placed) => {
    const record = figureRecord(standingVerdict(state, placed.id)?.verdict)
    const drawn = (record?.inputs.figures ?? []).filter(
      ({ characteristic, is, parts }) => DRAWN.test(characteristic) && ITSELF.test(is) && parts.length > 0,
    )
    const names = [...new Set(drawn.map(({ characteristic }) => figureLabel(characteristic)))]
    return names.map((name) =>
      plotOf(
        defs,
        placed,
        name,
        drawn.filter(({ characteristic }) => figureLabel(characteristic) === name),
      ),
    )
  })
}

function plotOf(
  defs: Definitions,
  { number, step }: PlacedStep,
  name: string,
  figures: readonly Figure[],
): PlotOf<'gaps'> {
  const parts = new Map(figures.flatMap((one) => one.parts).map((part) => [part.place, part.si]))
  const limits = figures.flatMap(({ limit }) => (limit === null ? [] : [limit]))
  return {
    kind: 'gaps',
    title: `${number} ${step.title}: ${name}`,
    unit: defs.machine.shop_units.length,
    notes: limits.map(
      (limit) => `${limit.bound === 'at-most' ? 'At most' : 'At least'}: ${limitSource(limit)}.`,
    ),
    bars: [...parts].map(([key, si]) => ({ label: partLabel(defs, key), value: shopLength(defs, si) })),
    lines: limits.map((limit) => ({
      label: limit.bound === 'at-most' ? 'at most' : 'at least',
      value: shopLength(defs, limit.value),
    })),
  }
}

function partLabel(defs: Definitions, key: string): string {
  const step = key.slice(0, key.indexOf('.'))
  return `${placeNumber(defs, step, key)} ${placeShort(defs, step, key)}`
}
