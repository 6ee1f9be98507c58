// What a load was worth in truth, for a trainee who decided on it: what the meter showed, what is so, and with the errors of both which
// figure the verdict judged. Shares are of that one, so that none stands beside a load that it is not the share of.
import type { Definitions } from '../job/definitions.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { formatNumber, fromSi, percentText, valueIn } from '../units/index.ts'
import { governsText } from './governable.ts'
import { usedAt } from './pocket-governs.ts'

type PocketRecord = Extract<VerdictRecord, { compute: 'pocket_setting' }>

/** @param truth on readings without any error. `given`: the verdict of the sheet, on those that were keyed. */
export function pocketTold({ machine }: Definitions, truth: PocketRecord, given: VerdictRecord): string[] {
  const { inputs, result } = truth
  const now = result.table.find(({ opening }) => opening === result.present)
  const { targetW, computedW, recommended } = result
  const unit = machine.driver?.rating.unit ?? 'kW'
  const told = (watts: number | null | undefined) =>
    typeof watts === 'number' && Number.isFinite(watts)
      ? `${formatNumber(valueIn(fromSi('power', watts), unit), 1)} ${unit}`
      : 'no figure'
  const keyed = given.compute === 'pocket_setting' ? given.inputs.record.measuredLoadW : null
  const load = inputs.record.measuredLoadW
  return [
    'In truth:',
    `  driver load ${told(load)} without any error of measuring; you keyed ${told(keyed)} by the meter; worked out ${told(computedW)}`,
    ...(now === undefined || targetW === null ? [] : judgedTold(truth, now, told, load)),
    ...(recommended === null
      ? []
      : [`  smallest opening that is enough: ${formatNumber(recommended * 100, 1)} % of its travel`]),
    ...result.holds.map((hold) => `  ${hold}`),
  ]
}

function judgedTold(
  truth: PocketRecord,
  now: PocketRecord['result']['table'][number],
  told: (watts: number | null | undefined) => string,
  load: number | null | undefined,
): string[] {
  const { targetW } = truth.result
  const used = usedAt(truth, now)
  const own =
    typeof load === 'number' && targetW !== null && targetW > 0
      ? `; without the errors it is ${percentText(load / targetW)}`
      : ''
  const share = used.find(({ limit }) => limit === 'driver-power')?.share
  const others = used.filter(({ limit }) => limit !== 'driver-power')
  return [
    `  judged is what the driver load may be with the errors of meter and sums, ${told(now.loadW)}${share === undefined ? '' : `: ${percentText(share)} of the target ${told(targetW)}`}${own}`,
    ...(others.length === 0
      ? []
      : [
          `  used of the other limits, with the errors too: ${others.map(({ limit, share: part }) => `${governsText(limit)} ${percentText(part)}`).join(', ')}`,
        ]),
    ...(others.some(({ limit }) => limit === 'reversal')
      ? ['  reversal: what is wanted of it at least, as a share of what is there']
      : []),
  ]
}
