// What the load question of a clearance pocket is judged from, and what comes out: plain values in SI that a journal can
// hold and read back. Types only.
import type { VerdictWord } from '../metrology/verdict.ts'
import type { MachineRecord } from './machine-model.ts'
import type { PocketChoice } from './pocket-choice.ts'
import type { SettingFault } from './setting-checks.ts'

/** Expanded measuring errors at k = 2; null where nobody has stated any. */
export interface PocketErrors {
  readonly suctionPa: number | null
  readonly dischargePa: number | null
  /** Stage by stage, in order. */
  readonly suctionK: readonly (number | null)[]
  readonly loadW: number | null
  /** Of the present setting, in shares of its travel; nought where it is told by an indicator. */
  readonly opening: number | null
}

export interface PocketJudgeInput {
  /** Record and readings together, the pocket at its present setting. Anything in it may be missing. */
  readonly record: MachineRecord
  readonly choice: PocketChoice
  /** Turns of the hand-wheel from shut to full open; null for a pocket that is open or shut. */
  readonly turns: number | null
  /** Reasons that the readings or the record cannot be judged, each in one sentence. */
  readonly holds: readonly string[]
  readonly errors: PocketErrors
  readonly k: 2
  readonly simpleAcceptance: { readonly by: string } | null
}

export interface CylinderAt {
  readonly stage: number
  readonly cylinder: string
  readonly compressionN: number
  /** Size of the pull; below zero: the gas never pulls. */
  readonly tensionN: number
  readonly compressionLimitN: number
  readonly tensionLimitN: number
  /** Greater of the two gas rod loads as a share of its limit. */
  readonly share: number
  /** Greatest load of gas plus inertia at the pin, newtons, and its limit where one is on record. */
  readonly pinN: number
  readonly pinLimitN: number | null
  /** Radians of the turn, and share of the greater peak; 0 without reversal. */
  readonly reversalAngle: number
  readonly reversalShare: number
  readonly dischargeK: number
  readonly dischargeLimitK: number
}

/** The machine with the pocket at one opening. */
export interface PocketRow {
  /** 0 shut to 1 full open. */
  readonly opening: number
  readonly turns: number | null
  /** Flow over that at the present setting. */
  readonly capacityShare: number
  /** Driver load, raised so that it never flatters: see pocket-cases.ts. */
  readonly loadW: number
  readonly cylinders: readonly CylinderAt[]
  /** With the readings as keyed first, then what is out only if the readings are off by their errors. */
  readonly faults: readonly SettingFault[]
}

export interface PocketVerdict {
  readonly verdict: VerdictWord
  readonly holds: readonly string[]
  /** What does not hold the verdict and has to be said beside it. */
  readonly cautions: readonly string[]
  /** Rating less margin; null when nothing was worked out. */
  readonly targetW: number | null
  /** Computed at the present setting, as it came out. */
  readonly computedW: number | null
  /** The smallest opening that holds the target; only where the verdict is REWORK. */
  readonly recommended: number | null
  readonly present: number | null
  /** From shut to full open; the present setting and the recommended one among them. */
  readonly table: readonly PocketRow[]
  /** The opening that the verdict speaks of; one of the table. */
  readonly at: number | null
  /** Cylinders there. */
  readonly judged: readonly CylinderAt[]
}
