// The sums behind a verdict by figures: each expression, what went in, how far each reading could have moved it, its limit.
import { CHARACTERISTICS, type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import { stepById } from '../job/definitions.ts'
import type { State } from '../job/state.ts'
import { type FigureVerdictRecord, figureRecord } from '../job/verdict-record.ts'
import type { Figure } from '../metrology/figure-judge.ts'
import {
  formatQuantity,
  fromSi,
  type QuantityKind,
  shareTold,
  shownNumber,
  shownUp,
  unitNamed,
  unitsOf,
  usedText,
  valueIn,
} from '../units/index.ts'
import { placeName, placeNumber } from './names.ts'

export function figureLabel(characteristic: string): string {
  return isKnown(characteristic) ? characteristicOf(characteristic).label : characteristic
}

function isKnown(id: string): id is CharacteristicId {
  return Object.hasOwn(CHARACTERISTICS, id)
}

/** The unit a figure is shown in: lengths in the shop's, others in that of the limit. */
export function figureUnit(defs: Definitions, { characteristic, limit }: Figure): string {
  const kind = kindOf(characteristic)
  if (kind === 'length') return defs.machine.shop_units.length
  return limit?.unit ?? unitsOf(kind)[0]?.symbol ?? ''
}

function kindOf(characteristic: string): QuantityKind {
  return isKnown(characteristic) ? characteristicOf(characteristic).kind : 'length'
}

/** Decimals that show the step the figure was read in, and `more`. */
function decimalsFor(kind: QuantityKind, unit: string, resolution: number | null, more: number): number {
  if (kind === 'length' && unit === 'in') return 4 + more
  if (kind === 'length' && unit === 'mm') return 3 + more
  const step = resolution === null ? 1 : valueIn(fromSi(kind, resolution), unit)
  return Math.max(0, Math.min(6, -Math.floor(Math.log10(step) + 1e-9))) + more
}

/** A value of the figure's kind in its unit. `bare` leaves the unit out. */
export function figureText(defs: Definitions, figure: Figure, si: number, more = 0, bare = false): string {
  const kind = kindOf(figure.characteristic)
  const unit = figureUnit(defs, figure)
  const decimals = decimalsFor(kind, unit, figure.resolution, more)
  return bare
    ? shownNumber(valueIn(fromSi(kind, si), unit), decimals)
    : formatQuantity({ kind, si }, unit, decimals)
}

/** The measuring error of a figure, rounded up. */
export function figureErrorText(defs: Definitions, figure: Figure, si: number, bare = false): string {
  const kind = kindOf(figure.characteristic)
  const unit = figureUnit(defs, figure)
  const text = shownUp(valueIn(fromSi(kind, si), unit), decimalsFor(kind, unit, figure.resolution, 0))
  const symbol = unitNamed(unit)?.symbol ?? unit
  return bare || symbol === '1' ? text : `${text} ${symbol}`
}

/** A figure as the procedure writes it out, or by its name alone: how it is written is for who writes procedures. */
export type FigureTold = 'written' | 'named'

export function figureSums(
  defs: Definitions,
  record: FigureVerdictRecord,
  told: FigureTold = 'written',
): string[] {
  return record.inputs.figures.flatMap((figure) => oneFigure(defs, record, figure, told))
}

function oneFigure(
  defs: Definitions,
  { inputs, result }: FigureVerdictRecord,
  figure: Figure,
  told: FigureTold = 'written',
): string[] {
  const judged = result.judged.find((one) => one.characteristic === figure.characteristic)
  const label = figureLabel(figure.characteristic)
  if (figure.value === null)
    return [
      `${label}: ${figure.is} cannot be worked out: ${[...inputs.holds, ...figure.unknown].join('; ')}.`,
    ]
  const text = (si: number) => figureText(defs, figure, si, 1)
  const { limit, value } = figure
  const used = judged?.judgement.used ?? null
  const share =
    limit === null
      ? null
      : shareTold({ value, limit, used, startsAt: null }, (si, more) =>
          figureText(defs, figure, si, 1 + more),
        )
  const written = told === 'written' ? `${figure.is} = ` : ''
  const lines = [`${label}: ${written}${share?.value ?? text(value)}`]
  for (const part of figure.parts) {
    const moves = part.moves === null ? 'nobody has stated its error' : `moves it by ${text(part.moves)}`
    lines.push(`  ${partName(defs, part.place)}, ${part.instruments.join(', ')}: its U ${moves}.`)
  }
  if (figure.expandedU !== null) lines.push(`  U of the figure ${text(figure.expandedU)} (k = ${inputs.k}).`)
  if (limit === null || share === null) return [...lines, '  No limit is on record for it, so it is HOLD.']
  const rule = limit.rule === undefined ? '' : ` (${limit.rule})`
  lines.push(
    `  ${limit.bound === 'at-most' ? 'at most' : 'at least'} ${share.limit}${rule}${usedText(share, 'of it used')}.`,
  )
  lines.push(`  Source: ${limit.source}. Approved: ${limit.approvedBy}.`)
  if (judged !== undefined)
    lines.push(`  ${judged.judgement.rule}`, ...judged.judgement.reasons.map((r) => `  ${r}`))
  return lines
}

function partName(defs: Definitions, key: string): string {
  const step = key.slice(0, key.indexOf('.'))
  return `${placeNumber(defs, stepById(defs, step).id, key)} ${placeName(defs, step, key)}`
}

/** `why ring end gap`: the sums of one figure of the latest verdict that judged it; null for a word that names none. */
export function whyFigure(defs: Definitions, state: State, word: string): string[] | null {
  const plain = word.replaceAll('-', ' ')
  const records = defs.steps.flatMap((placed) => {
    const stands = state.verdicts[placed.id]
    const record = stands?.void === false ? figureRecord(stands.verdict) : undefined
    return record === undefined ? [] : [record]
  })
  for (const record of records.reverse()) {
    const named = record.inputs.figures.filter(
      ({ characteristic }) =>
        figureLabel(characteristic) === plain || characteristic.replaceAll('-', ' ') === plain,
    )
    if (named.length > 0) return named.flatMap((figure) => oneFigure(defs, record, figure))
  }
  return null
}
