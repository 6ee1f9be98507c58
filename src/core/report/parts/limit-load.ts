// The limit of the load question: the rating of the driver less the margin of the site, both as the machine record has them.
import type { Definitions, PlacedStep } from '../../job/definitions.ts'
import type { PocketVerdictRecord } from '../../job/verdict-record.ts'
import { powerUnit } from '../../talk/pocket-words.ts'
import { formatNumber, fromSi, shareTold, shownUp, valueIn } from '../../units/index.ts'
import type { Report } from '../schema.ts'
import { figureOf, figureShown } from './figure.ts'

/** Decimals of a load, as on the sheet. */
const PLACES = 1

/**
 * The load as measured against what was worked out as target then, the meter's error beside it. Empty where none was worked out. The
 * word is that of the whole question, which the load as computed and each cylinder speak in too.
 */
export function loadLimits(
  defs: Definitions,
  { number }: PlacedStep,
  { inputs, result }: PocketVerdictRecord,
): Report['limits'] {
  const { targetW, table, present, verdict } = result
  const { driverRatingW: ratingW, margin, measuredLoadW: measuredW } = inputs.record
  if (targetW === null || typeof measuredW !== 'number') return []
  const { machine } = defs
  const unit = powerUnit(defs)
  const used = measuredW / targetW
  const shown = (watts: number, more: number) => figureShown('power', watts, unit, PLACES + more)
  const share = {
    value: measuredW,
    limit: { value: targetW, bound: 'at-most' as const },
    startsAt: null,
    used,
  }
  const { more } = shareTold(share, (watts, places) => shown(watts, places).shown)
  const now = table.find(({ opening }) => opening === present)
  const site = machine.whole_compressor?.site_rules
  const U = inputs.errors.loadW
  return [
    {
      number: String(number),
      judged: 'driver load',
      bound: 'at most',
      limit: shown(targetW, more),
      value: shown(measuredW, more),
      U: U === null ? null : figureOf('power', U, unit, shownUp(valueIn(fromSi('power', U), unit), PLACES)),
      used,
      countedFrom: null,
      watchedFrom: null,
      word: verdict,
      governs: now !== undefined && !(now.loadW <= targetW),
      from: 'machine',
      book: machine.machine,
      source: [machine.driver?.source, site?.source].filter((one) => one !== undefined).join('; margin: '),
      page: null,
      rule:
        typeof ratingW !== 'number' || typeof margin !== 'number'
          ? null
          : `rating ${shown(ratingW, 0).text} less margin ${formatNumber(margin * 100, 1).replace(/\.0$/, '')}\u00a0%`,
      approvedBy: site?.approved_by ?? 'nobody named',
      since: site?.since ?? 'no day named',
    },
  ]
}
