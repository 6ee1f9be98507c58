// A judge step on paper: which limits it is held against, with book and source. No verdict is made on paper.
import { type CharacteristicId, characteristicOf } from '../definition/characteristics.ts'
import type { StepOf } from '../definition/procedure.ts'
import type { Definitions } from '../job/definitions.ts'
import { limitsFor } from '../job/limits.ts'
import type { Limit } from '../metrology/limit.ts'
import { judged } from '../sheet/briefing-step.ts'
import { formatNumber, unitNamed, valueIn } from '../units/index.ts'
import { type BlankPiece, box, boxes, words } from './blank.ts'

export function judgePieces(defs: Definitions, step: StepOf<'judge'>): BlankPiece[] {
  const none = words(
    'No verdict stands on paper: it takes the measuring error, 20 degC and the record of before. Beyond a limit, or near one: HOLD, until it is worked out.',
    'caution',
  )
  if (step.compute === 'pocket_setting')
    return [
      words(`To be judged: ${judged(step)} by the margins of the machine record.`),
      none,
      boxes([box('worked out: how, by whom, when; what it came to', 1)], [[]]),
    ]
  const wanted: readonly CharacteristicId[] =
    step.compute === 'bore_form' ? step.against : step.figures.map(({ characteristic }) => characteristic)
  const limits: Partial<Record<CharacteristicId, Limit>> = limitsFor(defs, [...new Set(wanted)])
  return [
    words('Held against these limits', 'strong'),
    boxes(
      [box('what', 2.6), box('limit', 2.2), box('book, source, approval', 5), box('worked out, by hand', 2)],
      [...new Set(wanted)].map((id) => limitRow(id, limits[id])),
    ),
    none,
  ]
}

function limitRow(id: CharacteristicId, limit: Limit | undefined): string[] {
  const { label, bound } = characteristicOf(id)
  if (limit === undefined)
    return [label, 'NONE: HOLD', 'No limit on record: neither the machine record nor a named book has one.']
  const { from, book, source, rule, approvedBy, since } = limit
  const whose =
    from === 'machine' ? 'Machine record' : /^fall-?back\b/i.test(book) ? book : `Fall-back set, ${book}`
  return [
    label,
    `${bound === 'at-most' ? 'at most' : 'at least'} ${limitText(limit, characteristicOf(id).kind)}${limit.inclusive ? '' : ', not on it'}`,
    `${whose}: ${source}${rule === undefined ? '' : ` (${rule})`}. Approved: ${approvedBy}, since ${since}.`,
  ]
}

/** Decimals that are shown at most where a limit worked out by a rule has no end. */
const MOST_DECIMALS = 5

/** With as many decimals as it has, so that nothing is rounded to the wrong side of it. */
function limitText({ value, unit }: Limit, kind: ReturnType<typeof characteristicOf>['kind']): string {
  const shown = valueIn({ kind, si: value }, unit)
  const isWhole = (decimals: number) =>
    Math.abs(Number(formatNumber(shown, decimals)) - shown) <= Math.abs(shown) * 1e-9
  const decimals = [0, 1, 2, 3, 4].find(isWhole) ?? MOST_DECIMALS
  const symbol = unitNamed(unit)?.symbol ?? unit
  return `${formatNumber(shown, decimals)}${symbol === '1' ? '' : ` ${symbol}`}`
}
