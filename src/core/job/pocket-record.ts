// The machine record as the pocket solver takes it: SI, stage by stage in order, what is missing left missing. Readings come in
// beside it.
import type { CylinderRecord, EndRecord, MachineRecord, StageRecord } from '../cycle/machine-model.ts'
import type { PocketChoice } from '../cycle/pocket-choice.ts'
import type { Machine } from '../definition/machine.ts'
import type { WholeCompressor } from '../definition/whole-compressor.ts'

/** Readings in SI, pressures absolute; null where there is none. */
export interface PocketReadings {
  readonly suctionPa: number | null
  readonly dischargePa: number | null
  /** Stage by stage. */
  readonly suctionK: readonly (number | null)[]
  readonly loadW: number | null
  /** Present setting, 0 shut to 1 full open. */
  readonly opening: number | null
}

type Throw = NonNullable<WholeCompressor['stages'][number]['cylinders']>[number]

/** Everything the solver asks of the record of a machine; what is missing is null, for it to name. */
export function pocketRecord(machine: Machine, whole: WholeCompressor, read: PocketReadings): MachineRecord {
  return withNulls(gathered(machine, whole, read)) as MachineRecord
}

/** A journal holds null where a value is missing, and the same has to be judged now and at every replay. */
function withNulls(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withNulls)
  if (typeof value !== 'object' || value === null) return value ?? null
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withNulls(inner)]))
}

function gathered(machine: Machine, whole: WholeCompressor, read: PocketReadings): MachineRecord {
  const { running, site_rules: rules } = whole
  const inAll = whole.stages_in_all
  return {
    strokeM: machine.bore.stroke.si,
    conRodM: running?.connecting_rod?.si,
    speedPerS: running?.speed?.si,
    suctionPa: read.suctionPa,
    dischargePa: read.dischargePa,
    barometerPa: machine.site.barometer.si,
    veForm: running?.volumetric_efficiency,
    mechanicalEfficiency: running?.mechanical_efficiency?.si,
    friction: running?.friction,
    driverRatingW: machine.driver?.rating.si,
    margin: rules?.margin?.si,
    measuredLoadW: read.loadW,
    agreement: rules?.loads_agree_within?.si,
    reversal: { leastAngle: rules?.reversal_arc?.si, leastShare: rules?.reversal_share?.si },
    leastVe: rules?.volumetric_efficiency_least?.si,
    stages: upTo(inAll).map((n) => stageRecord(machine, whole, n, read)),
    between: upTo(inAll - 1).map((after) => {
      const gap = whole.between?.find((one) => one.after === after)
      return { drop: gap?.drop?.si, passedOn: gap?.passed_on?.si }
    }),
  }
}

function upTo(count: number): number[] {
  return Array.from({ length: count }, (_, i) => i + 1)
}

function stageRecord(
  machine: Machine,
  whole: WholeCompressor,
  number: number,
  read: PocketReadings,
): StageRecord {
  const stage = whole.stages.find((one) => one.stage === number)
  return {
    name: `stage ${number}`,
    suctionK: read.suctionK[number - 1] ?? null,
    k: stage?.k,
    zSuction: stage?.z_suction,
    zDischarge: stage?.z_discharge,
    loss: stage?.loss?.si,
    compressionEfficiency: stage?.compression_efficiency?.si,
    suctionDrop: stage?.suction_valve_drop?.si,
    dischargeRise: stage?.discharge_valve_rise?.si,
    temperatureLimitK: stage?.hottest_discharge?.si,
    cylinders: (stage?.cylinders ?? []).map((one) => throwRecord(machine, whole, one, read)),
  }
}

/** What the solver calls the cylinder of a throw. */
export const throwName = (number: number) => `throw ${number}`

function throwRecord(
  machine: Machine,
  whole: WholeCompressor,
  one: Throw,
  { opening }: PocketReadings,
): CylinderRecord {
  const pocket = one.throw === machine.cylinder.throw ? pocketOf(machine, whole) : null
  const end = (which: 'head' | 'crank'): EndRecord => ({
    acts: one[which]?.acts,
    clearance: one[which]?.clearance?.si,
    ...(pocket !== null && whole.pocket?.end === which ? { pocket, opening } : {}),
  })
  return {
    name: throwName(one.throw),
    boreM: one.bore?.si,
    rodM: one.rod?.si,
    tailRodM: one.tail_rod?.si,
    head: end('head'),
    crank: end('crank'),
    reciprocatingKg: one.reciprocating_mass?.si,
    compressionLimitN: one.compression_limit?.si,
    tensionLimitN: one.tension_limit?.si,
    pinLimitN: one.pin_limit?.si,
  }
}

/** The pocket of this record, figures that it lacks as null. */
function pocketOf({ pocket }: Machine, whole: WholeCompressor): EndRecord['pocket'] {
  const volumeM3 = pocket?.volume?.si ?? null
  if (pocket === undefined || pocket.kind === 'none') return null
  if (pocket.kind === 'open') return { is: 'fixed', volumeM3 }
  if (pocket.kind === 'two_position') return { is: 'open-or-shut', volumeM3 }
  const { turns = null } = pocket
  const step = whole.pocket?.least_step
  return {
    is: 'variable',
    volumePerTurnM3: volumeM3 === null || turns === null ? null : volumeM3 / turns,
    turns,
    turnStep: step === undefined ? null : step.si / (2 * Math.PI),
  }
}

/** Which stage, cylinder and end the pocket of this record is on; a cylinder that is not listed is number 0, which none is. */
export function pocketChoice({ cylinder }: Machine, whole: WholeCompressor): PocketChoice {
  const stage = whole.stages.find((one) => one.stage === cylinder.stage)
  const at = (stage?.cylinders ?? []).findIndex((one) => one.throw === cylinder.throw)
  return { stage: cylinder.stage, cylinder: at + 1, ends: whole.pocket?.end ?? 'head' }
}

/** What the record itself does not say, whatever is read; each a sentence. */
export function recordHolds({ pocket, cylinder, driver }: Machine, whole: WholeCompressor): string[] {
  const holds: string[] = []
  const listed = whole.stages.flatMap(({ cylinders = [] }) => cylinders)
  if (listed.length < whole.cylinders_in_all)
    holds.push(
      `Machine: ${whole.cylinders_in_all - listed.length} of its ${whole.cylinders_in_all} cylinders are not on record.`,
    )
  if (!listed.some((one) => one.throw === cylinder.throw))
    holds.push(`Stage ${cylinder.stage}: throw ${cylinder.throw}, which this record is of, is not listed.`)
  if (driver === undefined) holds.push('Machine: its driver is not on record.')
  if (pocket === undefined || pocket.kind === 'none')
    return [...holds, 'No clearance pocket is on record here.']
  if (pocket.kind === 'open')
    return [...holds, 'The pocket on record is always open: it has no setting to find.']
  if (whole.pocket?.end === undefined) holds.push('The end that the pocket is on is not on record.')
  if (pocket.volume === undefined) holds.push('The volume of the pocket is not on record.')
  if (pocket.kind !== 'hand_wheel') return holds
  if (pocket.turns === undefined) holds.push('The turns of the hand-wheel are not on record.')
  if (whole.pocket?.least_step === undefined)
    holds.push('The least step that the hand-wheel is set to is not on record.')
  return holds
}
