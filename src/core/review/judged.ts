// One shape for the figures of a verdict, however it was worked out: value, limit, measuring error and step of the gauge.

import { allowedFor, startOf } from '../bore/bore-characteristics.ts'
import type { Definitions } from '../job/definitions.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import type { Limit } from '../metrology/limit.ts'
import type { VerdictWord } from '../metrology/verdict.ts'
import { figureErrorText, figureLabel, figureText } from '../talk/figure-sums.ts'
import { bareError, lengthText } from '../talk/names.ts'
import { percentText, shareTold, usedText } from '../units/index.ts'

export interface Judged {
  readonly name: string
  /** SI; null where it could not be worked out. */
  readonly value: number | null
  readonly limit: Limit | null
  /** Expanded uncertainty at the k of the verdict, SI; null where none is stated. */
  readonly expandedU: number | null
  /** Step of the coarsest gauge behind it, SI; null where it is not known. */
  readonly resolution: number | null
  readonly verdict: VerdictWord
  /** Share of the limit used, 1 on it; null where it cannot be said. */
  readonly used: number | null
  /** What that share is counted from, SI, where it is not nothing. */
  readonly startsAt: number | null
  /** A figure of this kind as the sheet shows it; `more` decimals. */
  readonly text: (defs: Definitions, si: number, more?: number) => string
  /** Its measuring error, rounded up. */
  readonly error: (defs: Definitions, si: number) => string
}

/** Nothing of a pocket setting: its cycles are judged by margins of their own. */
export function judgedIn(record: VerdictRecord): Judged[] {
  if (record.compute === 'figures')
    return record.inputs.figures.flatMap((figure, n): Judged[] => {
      const judgement = record.result.judged[n]?.judgement
      if (judgement === undefined) return []
      return [
        {
          name: figureLabel(figure.characteristic),
          value: figure.value,
          limit: figure.limit,
          expandedU: figure.expandedU,
          resolution: figure.resolution,
          verdict: judgement.verdict,
          used: judgement.used,
          startsAt: null,
          text: (defs, si, more = 0) => figureText(defs, figure, si, more),
          error: (defs, si) => figureErrorText(defs, figure, si),
        },
      ]
    })
  if (record.compute === 'pocket_setting') return []
  const { inputs } = record
  return record.result.judged.map((c) => {
    return {
      name: c.characteristic.replaceAll('-', ' '),
      value: c.valueM,
      limit: c.limit,
      expandedU: allowedFor(inputs, c),
      resolution: inputs.resolutionM ?? null,
      verdict: c.judgement.verdict,
      used: c.judgement.used,
      startsAt: startOf(inputs, c.characteristic),
      text: (defs, si, more = 0) =>
        lengthText(defs, si, (defs.machine.shop_units.length === 'in' ? 4 : 3) + more),
      error: (defs, si) => `${bareError(defs, si)} ${defs.machine.shop_units.length}`,
    }
  })
}

/** `0.0041 in of at most 0.0055 in, 75 % used; watched from 70 %`; a figure that could not be worked out, or without a limit, is null. */
export function shareText(defs: Definitions, { value, limit, used, startsAt, text }: Judged): string | null {
  if (value === null || limit === null) return null
  const bound = limit.bound === 'at-least' ? 'at least' : 'at most'
  const told = shareTold({ value, limit, used, startsAt }, (si, more) => text(defs, si, more))
  const share = used === null ? ', share used not told' : usedText(told)
  const from = limit.monitorFrom
  const watch = from === undefined ? 'no share to watch from on record' : `watched from ${percentText(from)}`
  return `${told.value} of ${bound} ${told.limit}${share}; ${watch}`
}

/** Inside its limit, and at or over the share of it that the owner wants watched. */
export function isWatched({ verdict, limit, used }: Judged): boolean {
  return verdict === 'MONITOR' && limit?.monitorFrom !== undefined && used !== null
}
