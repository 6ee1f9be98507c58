// From a judge by figures to the instruments it rests on and the limits they have to be good enough for.
import { characteristicOf, characteristicText } from '../definition/characteristics.ts'
import { DIFFERENCE_OF, type Instrument, isSetOnStandard, READS } from '../definition/instruments.ts'
import { at20Of } from '../definition/step-judge.ts'
import { asKind, type Definitions, type PlacedStep } from '../job/definitions.ts'
import { oneReadingU } from '../job/figure-reads.ts'
import type { FiguresJudgeStep } from '../job/figure-step.ts'
import { limitsFor } from '../job/limits.ts'
import { figureReads } from '../job/values.ts'
import { judgeAgainst } from '../metrology/conformity.ts'
import type { Limit } from '../metrology/limit.ts'
import { factsOf } from '../rules/machine-facts.ts'
import { decimalsOf, formatQuantity, fromSi, type QuantityKind, valueIn } from '../units/index.ts'
import type { JudgeAsks } from './judge-asks.ts'
import type { SeatUse } from './seat-use.ts'

export function figuresAsks(defs: Definitions, judge: FiguresJudgeStep): JudgeAsks {
  const { step, figures = [] } = judge
  const limits = limitsFor(
    defs,
    step.figures.map(({ characteristic }) => characteristic),
  )
  const uses: SeatUse[] = []
  const missing: string[] = []
  step.figures.forEach(({ characteristic, is }, n) => {
    const { label, kind } = characteristicOf(characteristic)
    const limit = limits[characteristic]
    if (limit === undefined) {
      missing.push(`there is no limit for the ${characteristicText(characteristic)}`)
      return
    }
    const compiled = figures[n]
    const reads = compiled === undefined ? [] : figureReads(defs, { ...judge, figures: [compiled] })
    for (const placed of defs.steps) {
      if (placed.step.kind !== 'read' || !reads.includes(placed.id)) continue
      const read = asKind(placed, 'read')
      // Only where the figure moves as its readings do: a mean, a multiple or a share of them may move less.
      const viaValue = defs.values.some(
        (value) => value.scope === judge.scope && compiled?.names.includes(value.id) === true,
      )
      const isStraight =
        DIFFERENCE_OF[read.step.quantity] === kind && !viaValue && !/mean\(|[*/]|compute\(/.test(is)
      uses.push({
        seat: read.step.with,
        placed: judge,
        asks: `${label} judged at ${limitText(limit, kind)}`,
        fault: (one) =>
          READS[read.step.quantity].some((k) => k === one.kind)
            ? (unbracketed(judge, placed, one) ?? fault(defs, one, limit, label, isStraight))
            : null,
      })
    }
  })
  for (const own of new Set(at20Of(step).map((at) => at.of)))
    if (defs.machine[own]?.expansion === undefined)
      missing.push(`the thermal expansion of the ${own} is not on record`)
  const facts = factsOf(defs.machine)
  const lacking = figures
    .flatMap(({ names }) => names)
    .filter((name) => name.startsWith('machine.') && !facts.has(name))
  missing.push(...[...new Set(lacking)].map((name) => `${name} is not on record`))
  return { uses, missing }
}

/** Why what an instrument that is set on a standard reads there cannot be judged, or null. */
function unbracketed(
  { scope, step }: FiguresJudgeStep,
  read: PlacedStep,
  instrument: Instrument,
): string | null {
  if (!isSetOnStandard(instrument)) return null
  if (!at20Of(step).some(({ readings }) => readings.some((id) => scope + id === read.id)))
    return 'it is set on a standard, and no set-check brackets what it reads there'
  return instrument.expansion === undefined ? 'its thermal expansion is not on record' : null
}

/** What leaves nothing to accept with one reading as good as it can be never will. */
function fault(
  defs: Definitions,
  one: Instrument,
  limit: Limit,
  label: string,
  isStraight: boolean,
): string | null {
  if (one.kind === 'gas_meter') return null
  const u = oneReadingU(one)
  const accepts = defs.machine.simple_acceptance
  if (u === null && accepts === undefined) return 'nobody has stated how far off it may be'
  if (!isStraight || limit.bound !== 'at-most') return null
  const { acceptAtMost, reasons } = judgeAgainst({
    value: 0,
    expandedU: u,
    resolution: one.resolution.si,
    limit,
    simpleAcceptance: accepts === undefined ? null : { by: accepts.by },
  })
  if (acceptAtMost === null) return `${label} cannot be judged by it: ${reasons.join(', ')}`
  return acceptAtMost > 0
    ? null
    : `it may be off by as much as the limit of ${label}, which leaves nothing to accept`
}

function limitText(limit: Limit, kind: QuantityKind): string {
  const { unit, value } = limit
  const shown = Number(valueIn(fromSi(kind, value), unit).toPrecision(6))
  return formatQuantity({ kind, si: value }, unit, Math.min(5, decimalsOf(shown)))
}
