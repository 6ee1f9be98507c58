// Which pocket is being turned, and the machine with it at another setting.
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Pocket } from './clearance.ts'
import type { CylinderModel, EndModel, MachineModel } from './machine-model.ts'

export const POCKET_ENDS = ['head', 'crank', 'both'] as const
export type PocketEnds = (typeof POCKET_ENDS)[number]

export interface PocketChoice {
  /** 1 for the first stage. */
  readonly stage: number
  /** 1 for the first cylinder of the stage. */
  readonly cylinder: number
  /** Both: the two ends are set to the same share of their travel. */
  readonly ends: PocketEnds
}

export type PocketTravel =
  | { readonly is: 'open-or-shut' }
  /** `step` is the smallest share of the travel the wheel is set to; null for any. */
  | { readonly is: 'variable'; readonly step: number | null }

function chosenCylinder(machine: MachineModel, choice: PocketChoice): CylinderModel | undefined {
  return machine.stages[choice.stage - 1]?.cylinders[choice.cylinder - 1]
}

function chosenEnds(choice: PocketChoice): readonly ('head' | 'crank')[] {
  return choice.ends === 'both' ? ['head', 'crank'] : [choice.ends]
}

/** Refuses a choice that is not on the machine, has no pocket, cannot be moved, or mixes kinds at the two ends. */
export function pocketTravel(machine: MachineModel, choice: PocketChoice): Result<PocketTravel> {
  const cylinder = chosenCylinder(machine, choice)
  if (cylinder === undefined)
    return refuse('no-cylinder', 'There is no such stage and cylinder on this machine.')
  const ends = chosenEnds(choice)
  const pockets = ends.map((end) => cylinder[end].pocket)
  if (!ends.every((end) => cylinder[end].acts))
    return refuse('end-idle', 'An end that does not act gains nothing from its pocket: choose another.')
  const [first, second] = pockets
  if (first === undefined || (ends.length === 2 && second === undefined))
    return refuse('no-pocket', `There is no pocket on record at the ${choice.ends} end of this cylinder.`)
  if (pockets.some((pocket) => pocket?.is === 'fixed'))
    return refuse('fixed', 'This pocket is fixed: it has no setting to find.')
  if (second !== undefined && second.is !== first.is)
    return refuse('mixed', 'The two ends have pockets of different kinds: choose one end.')
  if (first.is === 'open-or-shut') return ok({ is: 'open-or-shut' })
  return stepOf(pockets)
}

function stepOf(pockets: readonly (Pocket | undefined)[]): Result<PocketTravel> {
  const steps = pockets.map((pocket) =>
    pocket?.is === 'variable' && pocket.turnStep !== undefined ? pocket.turnStep / pocket.turns : null,
  )
  const [first = null, second = first] = steps
  if (first !== second) return refuse('mixed', 'The two ends are set in different steps: choose one end.')
  if (first !== null && (first > 1 || first < 1e-3))
    return refuse(
      'step',
      'The least part of a turn is more than the whole travel, or under a thousandth of it.',
    )
  return ok({ is: 'variable', step: first })
}

/** Where the chosen pocket stands, 0 shut to 1 full open; where the machine record has been looked at there is one. */
export function openingNow(machine: MachineModel, choice: PocketChoice): number {
  const cylinder = chosenCylinder(machine, choice)
  const end = choice.ends === 'crank' ? cylinder?.crank : cylinder?.head
  return end?.opening ?? Number.NaN
}

/** The same machine with the chosen pocket at `opening`, 0 shut to 1 full open. */
export function withOpening(machine: MachineModel, choice: PocketChoice, opening: number): MachineModel {
  const ends = chosenEnds(choice)
  const set = (end: EndModel): EndModel => ({ ...end, opening })
  const stages = machine.stages.map((stage, s) => {
    if (s !== choice.stage - 1) return stage
    const cylinders = stage.cylinders.map((one, c) => {
      if (c !== choice.cylinder - 1) return one
      const head = ends.includes('head') ? set(one.head) : one.head
      const crank = ends.includes('crank') ? set(one.crank) : one.crank
      return { ...one, head, crank }
    })
    return { ...stage, cylinders }
  })
  return { ...machine, stages }
}
