// Which limit governs a machine on load: the one that its verdict turns on, or where it turns on none the one that is used most. The sheet
// tells each figure; a trainee is asked to say which of them it comes down to.
import type { CylinderAt, PocketRow } from '../cycle/pocket-judge-input.ts'
import type { PocketLimit } from '../cycle/pocket-limits.ts'
import type { SettingFault } from '../cycle/setting-checks.ts'
import type { PocketVerdictRecord } from '../job/verdict-record.ts'

const ABOUT: Readonly<Record<SettingFault['about'], PocketLimit>> = {
  'rod-load': 'rod-load',
  'pin-load': 'pin-load',
  reversal: 'reversal',
  'discharge-temperature': 'discharge-temperature',
  'volumetric-efficiency': 'capacity',
}

export interface Used {
  readonly limit: PocketLimit
  /** Share of the limit that is used, the worst of all cylinders; 1 is at it. */
  readonly share: number
}

/** Nearer to each other than readings tell: 2 %, invented for practice. */
const AS_NEAR = 0.02

/** Empty: nothing was worked out, so no limit governs. */
export function pocketGoverns(record: PocketVerdictRecord): readonly PocketLimit[] {
  const { targetW, present, at, verdict, table } = record.result
  const now = table.find(({ opening }) => opening === present)
  const spoken = table.find(({ opening }) => opening === at)
  if (targetW === null || now === undefined || spoken === undefined) return []
  const out = [
    ...new Set(spoken.faults.flatMap(({ grade, about }) => (grade === 'hold' ? ABOUT[about] : []))),
  ]
  // Over the target with an opening that is enough for it, what is out there is what stands in the way.
  const isEnough = spoken.loadW <= targetW
  if (verdict === 'HOLD' && isEnough && out.length > 0) return out
  if (!(now.loadW <= targetW)) return ['driver-power']
  const used = usedAt(record, now)
  const most = Math.max(...used.map(({ share }) => share))
  return used.filter(({ share }) => share >= most - AS_NEAR).map(({ limit }) => limit)
}

/**
 * Shares at one opening. Driver: load over target. Rod and pin: load over limit. Reversal: least wanted over what is there, arc or share.
 * Temperature: rise over suction against the rise that the limit allows. A limit that is not on record has none.
 */
export function usedAt(record: PocketVerdictRecord, row: PocketRow): readonly Used[] {
  const { reversal, stages } = record.inputs.record
  const target = record.result.targetW ?? Number.NaN
  const worst = (of: (one: CylinderAt) => number) => Math.max(...row.cylinders.map(of))
  const arc = reversal?.leastAngle ?? Number.NaN
  const least = reversal?.leastShare ?? Number.NaN
  const shares: readonly Used[] = [
    { limit: 'driver-power', share: row.loadW / target },
    { limit: 'rod-load', share: worst(({ share }) => share) },
    {
      limit: 'pin-load',
      share: worst(({ pinN, pinLimitN }) => (pinLimitN === null ? 0 : pinN / pinLimitN)),
    },
    {
      limit: 'reversal',
      share: worst(({ reversalAngle, reversalShare }) =>
        Math.max(arc / reversalAngle, least / reversalShare),
      ),
    },
    {
      limit: 'discharge-temperature',
      share: worst(({ stage, dischargeK, dischargeLimitK }) => {
        const suctionK = stages?.[stage - 1]?.suctionK ?? Number.NaN
        return (dischargeK - suctionK) / (dischargeLimitK - suctionK)
      }),
    },
  ]
  return shares.filter(({ share }) => Number.isFinite(share) && share > 0)
}
