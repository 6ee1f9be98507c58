// The figures of one place of a machine, and how its last job ended, as the tables of a history have them.
import { leftBehind } from '../job/as-left.ts'
import { shownNumber, valueIn } from '../units/index.ts'
import type { MachineHistory } from './history.ts'
import type { Trend } from './trend.ts'

/** Decimals that a size is shown with. */
export const DECIMALS = { in: 4, mm: 3 } as const

/** How many readings, the last, the rate, the limit, the hours left; what cannot be told says so. */
export function figures({ unit }: MachineHistory, trend: Trend): string[] {
  const { readings, limit, rate, left } = trend
  const last = readings.at(-1)
  const decimals = DECIMALS[unit]
  const size = (si: number) => shownNumber(valueIn({ kind: 'length', si }, unit), decimals)
  const per1000 = (metres: number) =>
    shownNumber(valueIn({ kind: 'length', si: metres * 1000 }, unit), decimals + 1)
  return [
    String(readings.length),
    last === undefined ? 'none' : size(last.value),
    rate.ok ? `${per1000(rate.value.perHour)} +- ${per1000(rate.value.U)}` : 'not told',
    limit === null ? 'none' : size(limit.si),
    left?.ok === true ? `${Math.floor(left.value.earliest)}` : 'not told',
  ]
}

/** `REPLACE as found, MONITOR as left`. */
export function endOf({ outcome, asLeft }: MachineHistory['last']): string {
  return asLeft === null ? (outcome ?? '') : `${outcome ?? ''} as found, ${leftBehind(asLeft)}`
}
