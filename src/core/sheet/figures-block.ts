// A verdict by figures on the sheet: each figure beside its limit and source, what governed, the stamp.
import type { Definitions } from '../job/definitions.ts'
import type { FigureVerdictRecord } from '../job/verdict-record.ts'
import type { Figure, FigureJudgement } from '../metrology/figure-judge.ts'
import { figureErrorText, figureLabel, figureText, figureUnit } from '../talk/figure-sums.ts'
import { shareTold, usedText } from '../units/index.ts'
import { type Block, type Row, row } from './block.ts'
import { WHY_OFFERED } from './entry-words.ts'
import { holdsInFew } from './holds-in-few.ts'
import { limitSource } from './limit-source.ts'

/** Columns that the name of a figure gets. */
const NAME = 22

export function figuresBlock(
  defs: Definitions,
  title: string,
  record: FigureVerdictRecord,
  margin: string,
  right: string,
): Block {
  const { inputs, result } = record
  const rows: Row[] = [row(`${title}, ${countText(inputs.figures.length)}`, 'strong')]
  inputs.figures.forEach((figure, n) => {
    const judged = result.judged[n]
    if (judged !== undefined)
      rows.push(
        ...figureRows(
          defs,
          figure,
          judged,
          result.governs?.characteristics.includes(figure.characteristic) ?? false,
        ),
      )
  })
  rows.push(row(`( ${result.verdict} )`, 'stamp'))
  for (const hold of result.holds) rows.push(row(`  HOLD: ${worded(hold)}`, 'caution'))
  if (inputs.figures.some((figure) => figure.limit?.from === 'fallback'))
    rows.push(row('Fall-back limits were used: the maker’s manual comes first.', 'caution'))
  rows.push(row(WHY_OFFERED, 'faint'))
  return { margin, right, rows }
}

function countText(figures: number): string {
  return figures === 1 ? 'one figure' : `${figures} figures`
}

/** A hold names its figure by id; the sheet by its name. */
function worded(hold: string): string {
  const [id, ...rest] = hold.split(': ')
  return rest.length === 0 || id === undefined ? hold : [figureLabel(id), ...rest].join(': ')
}

function figureRows(
  defs: Definitions,
  figure: Figure,
  { judgement }: FigureJudgement,
  governs: boolean,
): Row[] {
  const name = figureLabel(figure.characteristic).padEnd(NAME)
  const bare = (si: number, more = 0) => figureText(defs, figure, si, more, true)
  const { limit } = figure
  const share =
    figure.value === null || limit === null
      ? null
      : shareTold({ value: figure.value, limit, used: judgement.used, startsAt: null }, bare)
  const value = share?.value ?? (figure.value === null ? '-' : bare(figure.value))
  if (limit === null) return [row(`${name}${value.padStart(7)}   no limit on record   HOLD`, 'caution')]
  const bound = limit.bound === 'at-most' ? 'at most' : 'at least'
  const most = share?.limit ?? bare(limit.value)
  const percent = share?.percent ?? null
  const used = percent === null ? '' : `  ${percent}`
  const word = judgement.verdict === 'ACCEPT' ? '' : `${judgement.verdict}; `
  const tone = judgement.verdict === 'ACCEPT' || judgement.verdict === 'MONITOR' ? 'plain' : 'caution'
  const u = figure.expandedU === null ? '' : `, U ${figureErrorText(defs, figure, figure.expandedU, true)}`
  return [
    row(`${name}${value.padStart(7)}  ${bound} ${most} ${figureUnit(defs, figure)}${used}`, tone),
    // Before its source, so that no width parts it from there.
    row(`  ${word}${governs ? 'governs; ' : ''}${limitSource(limit)}${u}`, word === '' ? 'faint' : tone),
  ]
}

/** What holds the verdict up, or what governs with its limit and source, in few lines. */
export function figuresBecause(defs: Definitions, record: FigureVerdictRecord): Row[] {
  const { holds } = record.result
  return holds.length > 0 ? holdsInFew(holds.map(worded)) : figuresGovern(defs, record)
}

export function figuresGovern(defs: Definitions, { inputs, result }: FigureVerdictRecord): Row[] {
  const governing = result.governs?.characteristics ?? []
  return inputs.figures.flatMap((figure) => {
    if (!governing.includes(figure.characteristic) || figure.value === null || figure.limit === null)
      return []
    const { limit, value } = figure
    const used = result.governs?.used ?? null
    const share = shareTold({ value, limit, used, startsAt: null }, (si, more) =>
      figureText(defs, figure, si, more),
    )
    return [
      row(
        `  ${figureLabel(figure.characteristic)} governs: ${share.value}${limit.bound === 'at-least' ? ', at least' : ' of'} ${share.limit}${usedText(share)}; ${limitSource(limit)}`,
      ),
    ]
  })
}
