// How the figures of the load question are written: in the units of the machine record, for the sheet and for the sums.
import type { CylinderAt, PocketRow } from '../cycle/pocket-judge-input.ts'
import type { Definitions } from '../job/definitions.ts'
import type { PocketVerdictRecord } from '../job/verdict-record.ts'
import {
  differenceUnit,
  formatQuantity,
  fromSi,
  type QuantityKind,
  shownNumber,
  valueIn,
} from '../units/index.ts'

/** A bare figure of `kind` in `unit`. */
export function figureIn(kind: QuantityKind, si: number, unit: string, decimals: number): string {
  return shownNumber(valueIn(fromSi(kind, si), unit), decimals)
}

export function powerUnit(defs: Definitions): string {
  return defs.machine.driver?.rating.unit ?? 'kW'
}

export function powerText(defs: Definitions, watts: number): string {
  return formatQuantity({ kind: 'power', si: watts }, powerUnit(defs), 1)
}

export function temperatureUnit(defs: Definitions): string {
  return defs.machine.shop_units.temperature
}

/** The unit in which the record writes the limits of rod load, and how many decimals tell them. */
export function forceUnit(defs: Definitions): { readonly unit: string; readonly decimals: number } {
  const throws = defs.machine.whole_compressor?.stages.flatMap(({ cylinders = [] }) => cylinders) ?? []
  const unit = throws.flatMap((one) => one.compression_limit?.unit ?? [])[0] ?? 'kN'
  return { unit, decimals: unit === 'kN' ? 1 : 0 }
}

/** No decimal more than a reading of it would have. */
export function percent(share: number, decimals: number): string {
  return `${shownNumber(share * 100, decimals)} %`
}

/** Down to a whole degree: an arc is never shown as more than it is. */
export function degrees(radians: number): string {
  return `${Math.floor((radians * 180) / Math.PI + 1e-9)} deg`
}

/** `8.50 turns from shut, 35.4 % open`; shut and open in words. */
export function settingText({ opening, turns }: Pick<PocketRow, 'opening' | 'turns'>): string {
  if (opening === 0) return 'shut'
  if (turns === null) return opening === 1 ? 'open' : percent(opening, 1)
  return `${shownNumber(turns, 2)} turns from shut, ${percent(opening, 1)} open`
}

export function rowAtOpening({ result }: PocketVerdictRecord, opening: number | null): PocketRow | undefined {
  return result.table.find((row) => row.opening === opening)
}

/** What the setting that is recommended costs and gives, in one sentence; null where none is. */
export function recommendation(defs: Definitions, record: PocketVerdictRecord): string | null {
  const row = rowAtOpening(record, record.result.recommended)
  if (row === undefined) return null
  return `Set the pocket to ${settingText(row)}: capacity ${percent(row.capacityShare, 1)} of now, driver ${powerText(defs, row.loadW)}.`
}

/** Load against target, in one sentence; null where nothing was worked out. */
export function loadAgainstTarget(defs: Definitions, record: PocketVerdictRecord): string | null {
  const { measuredLoadW: measured } = record.inputs.record
  const { computedW, targetW } = record.result
  if (computedW === null || typeof measured !== 'number') return null
  const target = targetW === null ? '' : `; target ${powerText(defs, targetW)}, rating less margin`
  return `Driver ${powerText(defs, measured)} measured, ${powerText(defs, computedW)} computed${target}.`
}

/** One cylinder at a setting, each figure with its limit; two sentences. */
export function cylinderLines(defs: Definitions, one: CylinderAt): readonly [string, string] {
  const { unit, decimals } = forceUnit(defs)
  const force = (newtons: number) => figureIn('force', newtons, unit, decimals)
  const degree = temperatureUnit(defs)
  const hot = (kelvin: number) => figureIn('temperature', kelvin, degree, 0)
  const pin =
    one.pinLimitN === null
      ? `${force(one.pinN)} ${unit}, no limit`
      : `${force(one.pinN)} of ${force(one.pinLimitN)} ${unit}`
  return [
    `Stage ${one.stage}, ${one.cylinder}: rod pushed ${force(one.compressionN)} of ${force(one.compressionLimitN)}, pulled ${force(one.tensionN)} of ${force(one.tensionLimitN)} ${unit}.`,
    `At the pin ${pin}; reversed over ${degrees(one.reversalAngle)}, ${percent(one.reversalShare, 0)}. Discharge ${hot(one.dischargeK)} of ${hot(one.dischargeLimitK)} ${degree}.`,
  ]
}

/** Which measuring errors went in, and what none of the figures follows. */
export function allowances(defs: Definitions, { inputs }: PocketVerdictRecord): readonly [string, string] {
  const { errors, k } = inputs
  const gauge = defs.machine.shop_units.length === 'in' ? 'psi' : 'bar'
  const degree = differenceUnit(temperatureUnit(defs), 'temperature-difference')
  const power = errors.loadW === null ? 'not stated' : powerText(defs, errors.loadW)
  const pressure = (pa: number | null) =>
    pa === null ? 'not stated' : formatQuantity({ kind: 'pressure-difference', si: pa }, gauge, 2)
  const hottest = errors.suctionK.includes(null)
    ? 'not stated'
    : formatQuantity(
        { kind: 'temperature-difference', si: Math.max(0, ...errors.suctionK.map(Number)) },
        degree,
        1,
      )
  return [
    `Allowed for, U (k = ${k}): driver load ${power}, suction ${pressure(errors.suctionPa)}, discharge ${pressure(errors.dischargePa)}, gas ${hottest}. Every opening is worked out as read and with the readings off both ways, and the greatest load counts.`,
    'Not allowed for: errors of k, Z, efficiencies, valve losses, clearances and of the setting as read. Not in it: pulsation, valve dynamics, leakage, coolers that change with the flow.',
  ]
}
