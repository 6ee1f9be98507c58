// What is missing or unsound in a machine's record, named by stage and cylinder. One gap anywhere and nothing is
// worked out: a balance through all stages hangs on every one of them.
import { ok, type Refusal, type Result } from '../lib/result.ts'
import { fullPocketVolume, GREATEST_CLEARANCE, type Pocket, pocketVolume } from './clearance.ts'
import { type MaybeNumber, within } from './guard.ts'
import {
  type CylinderRecord,
  type EndRecord,
  FRICTION_WORDS,
  type MachineModel,
  type MachineRecord,
  type StageRecord,
} from './machine-model.ts'
import { lossFault, VE_FORMS } from './volumetric-efficiency.ts'

/** Smallest clearance of an acting end: at less the balance has no foot, and no cylinder has less. (j) */
const LEAST_CLEARANCE = 0.005

type Field = readonly [words: string, value: MaybeNumber, least: number, most: number]

/** The record as a model, or one sentence for each gap. Only a record without a gap becomes a model. */
export function completeMachine(record: MachineRecord): Result<MachineModel, readonly string[]> {
  const plain = withoutNulls(record) as MachineRecord
  const holds = machineHolds(plain)
  return holds.length === 0 ? ok(plain as MachineModel) : { ok: false, error: holds }
}

/** A field left null in a file is a field left out. A null in a list stays: it holds a place. */
function withoutNulls(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutNulls)
  if (typeof value !== 'object' || value === null) return value
  const kept = Object.entries(value).filter(([, field]) => field !== null && field !== undefined)
  return Object.fromEntries(kept.map(([key, field]) => [key, withoutNulls(field)]))
}

/** One sentence for each gap, in the order of the record; empty when complete and sound. */
export function machineHolds(record: MachineRecord): readonly string[] {
  const stages = record.stages ?? []
  if (stages.length === 0) return ['No stage of the machine is on record: HOLD.']
  if (stages.length > 8) return ['More than 8 stages are on record: HOLD until the record is put right.']
  return [
    ...fieldHolds('Machine', machineFields(record)),
    ...wordHolds(record),
    ...betweenHolds(record, stages.length),
    ...stages.flatMap((stage, i) => stageHolds(record, stage ?? {}, `Stage ${i + 1}`)),
  ]
}

function fieldHolds(where: string, fields: readonly Field[]): string[] {
  return fields.flatMap(([words, value, least, most]) => said(where, within(words, value, least, most)))
}

function said(where: string, fault: Refusal | null): string[] {
  return fault === null ? [] : [`${where}: ${fault.say.charAt(0).toLowerCase()}${fault.say.slice(1)}`]
}

function machineFields(record: MachineRecord): Field[] {
  const suction = record.suctionPa ?? Number.NaN
  return [
    ['stroke in metres', record.strokeM, 1e-3, 5],
    ['connecting rod in metres', record.conRodM, (record.strokeM ?? 0) / 2 + 1e-6, 20],
    ['speed in turns a second', record.speedPerS, 0.1, 100],
    ['first suction pressure in Pa', record.suctionPa, 1e3, 1e9],
    ['last discharge pressure in Pa', record.dischargePa, Number.isFinite(suction) ? suction : 1e3, 1e9],
    ['barometer in Pa', record.barometerPa, 3e4, 1.2e5],
    ['mechanical efficiency', record.mechanicalEfficiency, 0.3, 1],
    ['driver rating in watts', record.driverRatingW, 1, 1e9],
    ['margin under the rating', record.margin, 0, 0.9],
    ['measured driver load in watts', record.measuredLoadW, 1, 1e9],
    ['site figure for agreement of loads', record.agreement, 0, 0.5],
    ['least reversal angle in radians', record.reversal?.leastAngle, 0, Math.PI],
    ['least reversal share', record.reversal?.leastShare, 0, 1],
    ['least volumetric efficiency', record.leastVe, 0, 1],
  ]
}

function wordHolds(record: MachineRecord): string[] {
  const holds: string[] = []
  if (!VE_FORMS.some((form) => form === record.veForm))
    holds.push('Machine: the form of volumetric efficiency is not named.')
  if (!FRICTION_WORDS.some((word) => word === record.friction))
    holds.push('Machine: how friction follows the load is not said.')
  return holds
}

function betweenHolds(record: MachineRecord, stages: number): string[] {
  const between = record.between ?? []
  if (between.length > stages - 1)
    return ['Machine: there are more coolers on record than gaps between stages.']
  return Array.from({ length: stages - 1 }, (_, i) => i).flatMap((i) =>
    fieldHolds(`Between stage ${i + 1} and ${i + 2}`, [
      ['pressure drop as a fraction', between[i]?.drop, 0, 0.5],
      ['gas passed on as a fraction', between[i]?.passedOn, 0.1, 3],
    ]),
  )
}

function stageHolds(record: MachineRecord, stage: StageRecord, where: string): string[] {
  const form = VE_FORMS.find((one) => one === record.veForm)
  const fields = fieldHolds(where, [
    ['suction temperature in K', stage.suctionK, 150, 500],
    ['exponent k', stage.k, 1.01, 2],
    ['compressibility at suction', stage.zSuction, 0.1, 3],
    ['compressibility at discharge', stage.zDischarge, 0.1, 3],
    ['compression efficiency', stage.compressionEfficiency, 0.3, 1],
    ['suction valve drop', stage.suctionDrop, 0, 0.3],
    ['discharge valve rise', stage.dischargeRise, 0, 0.3],
    ['discharge temperature limit in K', stage.temperatureLimitK, 273, 600],
  ])
  const loss = form === undefined ? [] : said(where, lossFault(form, stage.loss))
  const cylinders = stage.cylinders ?? []
  const none = cylinders.length === 0 ? [`${where}: no cylinder is on record.`] : []
  const each = cylinders.flatMap((one, i) =>
    cylinderHolds(one ?? {}, `${where}, cylinder ${one?.name ?? i + 1}`),
  )
  return [...fields, ...loss, ...none, ...each]
}

function cylinderHolds(cylinder: CylinderRecord, where: string): string[] {
  const bore = cylinder.boreM ?? Number.NaN
  const below = Number.isFinite(bore) ? bore * 0.95 : 5
  const optional: Field[] = [
    ...(cylinder.tailRodM == null
      ? []
      : [['tail rod in metres', cylinder.tailRodM, 0, below] satisfies Field]),
    ...(cylinder.pinLimitN == null
      ? []
      : [['pin load limit in N', cylinder.pinLimitN, 1, 1e8] satisfies Field]),
  ]
  const named =
    typeof cylinder.name === 'string' && cylinder.name !== '' ? [] : [`${where}: the cylinder has no name.`]
  return [
    ...named,
    ...fieldHolds(where, [
      ['bore in metres', cylinder.boreM, 1e-3, 5],
      ['rod in metres', cylinder.rodM, 1e-4, below],
      ['reciprocating mass in kg (a gas-only figure is a screen)', cylinder.reciprocatingKg, 1e-3, 1e5],
      ['rod load limit in compression, N', cylinder.compressionLimitN, 1, 1e8],
      ['rod load limit in tension, N', cylinder.tensionLimitN, 1, 1e8],
      ...optional,
    ]),
    ...endHolds(cylinder.head ?? {}, `${where}, head end`),
    ...endHolds(cylinder.crank ?? {}, `${where}, crank end`),
    ...(cylinder.head?.acts === false && cylinder.crank?.acts === false
      ? [`${where}: neither end acts.`]
      : []),
  ]
}

function endHolds(end: EndRecord, where: string): string[] {
  const acts = typeof end.acts === 'boolean' ? [] : [`${where}: whether the end acts is not on record.`]
  const clearance = fieldHolds(where, [['clearance', end.clearance, LEAST_CLEARANCE, GREATEST_CLEARANCE]])
  return [...acts, ...clearance, ...pocketHolds(end, where)]
}

function pocketHolds(end: EndRecord, where: string): string[] {
  if (end.pocket === null || end.pocket === undefined) return []
  const kinds: readonly unknown[] = ['fixed', 'open-or-shut', 'variable']
  if (!kinds.includes(end.pocket.is)) return [`${where}: the kind of pocket is not on record.`]
  const pocket = end.pocket as Pocket
  const full = fullPocketVolume(pocket)
  if (!full.ok) return said(where, full.error)
  const set = pocketVolume(pocket, end.opening ?? Number.NaN)
  return set.ok ? [] : [`${where}: the present setting of the pocket is not on record, or cannot be.`]
}
