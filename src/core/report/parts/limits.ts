// Every limit that a standing verdict was held against, with what was judged, where it comes from and on which page.
import { allowedFor, startOf } from '../../bore/bore-characteristics.ts'
import { CHARACTERISTICS } from '../../definition/characteristics.ts'
import type { Definitions, PlacedStep } from '../../job/definitions.ts'
import { type State, standingVerdict } from '../../job/state.ts'
import type { BoreVerdictRecord, FigureVerdictRecord } from '../../job/verdict-record.ts'
import type { Judgement } from '../../metrology/conformity.ts'
import type { Limit } from '../../metrology/limit.ts'
import { figureErrorText, figureLabel, figureText, figureUnit } from '../../talk/figure-sums.ts'
import { type QuantityKind, shareTold } from '../../units/index.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'
import { figureOf, shopError, shopLength } from './figure.ts'
import { cylinderLimits } from './limit-cylinders.ts'
import { loadLimits } from './limit-load.ts'
import { pageIn } from './page-in.ts'

type Told = Report['limits'][number]

interface Held {
  readonly judged: string
  readonly limit: Limit
  readonly value: number | null
  readonly U: number | null
  readonly judgement: Judgement
  readonly governs: boolean
  /** What the share used is counted from, SI, where it is not nothing. */
  readonly startsAt: number | null
  /** With `more` places beyond the usual ones. */
  readonly figure: (si: number, more: number) => Figure
  /** Never made smaller by rounding. */
  readonly error: (si: number) => Figure
}

export function limitsOf(defs: Definitions, state: State): Told[] {
  return defs.steps.flatMap((placed) => {
    const verdict = standingVerdict(state, placed.id)
    if (verdict === null) return []
    const record = verdict.verdict
    return record.compute === 'pocket_setting'
      ? [...loadLimits(defs, placed, record), ...cylinderLimits(defs, placed, record)]
      : heldIn(defs, record).map((one) => told(placed, one))
  })
}

function told({ number }: PlacedStep, { limit, ...one }: Held): Told {
  const { used } = one.judgement
  const more =
    one.value === null
      ? 0
      : shareTold(
          { value: one.value, limit, used, startsAt: one.startsAt },
          (si, places) => one.figure(si, places).shown,
        ).more
  return {
    number: String(number),
    judged: one.judged,
    bound: limit.bound === 'at-most' ? 'at most' : 'at least',
    limit: one.figure(limit.value, more),
    value: one.value === null ? null : one.figure(one.value, more),
    U: one.U === null ? null : one.error(one.U),
    used,
    countedFrom: used === null || one.startsAt === null ? null : one.figure(one.startsAt, more),
    watchedFrom: limit.monitorFrom ?? null,
    word: one.judgement.verdict,
    governs: one.governs,
    from: limit.from,
    book: limit.book,
    source: limit.source,
    page: pageIn(limit.source),
    rule: limit.rule ?? null,
    approvedBy: limit.approvedBy,
    since: limit.since,
  }
}

function heldIn(defs: Definitions, record: BoreVerdictRecord | FigureVerdictRecord): Held[] {
  const governing: readonly string[] = record.result.governs?.characteristics ?? []
  if (record.compute === 'figures')
    return record.inputs.figures.flatMap((figure, n): Held[] => {
      const judgement = record.result.judged[n]?.judgement
      if (judgement === undefined || figure.limit === null) return []
      const kind = kindOf(figure.characteristic)
      const unit = figureUnit(defs, figure)
      return [
        {
          judged: figureLabel(figure.characteristic),
          limit: figure.limit,
          value: figure.value,
          U: figure.expandedU,
          judgement,
          governs: governing.includes(figure.characteristic),
          startsAt: null,
          figure: (si, more) => figureOf(kind, si, unit, figureText(defs, figure, si, more, true)),
          error: (si) => figureOf(kind, si, unit, figureErrorText(defs, figure, si, true)),
        },
      ]
    })
  const { inputs } = record
  return record.result.judged.flatMap((one): Held[] => {
    if (one.limit === null) return []
    const isSize = one.characteristic === 'largest-diameter'
    return [
      {
        judged: figureLabel(one.characteristic),
        limit: one.limit,
        value: one.valueM,
        U: allowedFor(inputs, one),
        judgement: one.judgement,
        governs: governing.includes(one.characteristic),
        // A size at 20 degC is none that was read: one place more, as on the sheet.
        startsAt: startOf(inputs, one.characteristic),
        figure: (si, more) => shopLength(defs, si, (isSize ? 1 : 0) + more),
        error: (si) => shopError(defs, si),
      },
    ]
  })
}

function kindOf(characteristic: string): QuantityKind {
  return Object.hasOwn(CHARACTERISTICS, characteristic)
    ? CHARACTERISTICS[characteristic as keyof typeof CHARACTERISTICS].kind
    : 'length'
}
