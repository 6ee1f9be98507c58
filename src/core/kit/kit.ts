// The kit of a job: all that has to be there before it begins, gathered from its steps and records.
import { asKind, type Definitions } from '../job/definitions.ts'
import {
  lifts,
  type Numbered,
  neededThings,
  numberedThings,
  placedThings,
  type Thing,
  weightsOnRecord,
} from './bring.ts'
import { judgeAsks } from './judge-asks.ts'
import { kitRoles, type Role } from './people.ts'
import { readingUses } from './seat-use.ts'
import { type KitSeat, kitSeats } from './seats.ts'

export interface Kit {
  readonly procedure: string
  readonly title: string
  readonly machine: string
  readonly machineTitle: string
  /** YYYY-MM-DD: the day that calibrations were looked at for. */
  readonly day: string
  /** What the job is not to be started without, each a clause with why. */
  readonly holds: readonly string[]
  /** What makes a verdict HOLD whatever is read; each a sentence. */
  readonly verdictHolds: readonly string[]
  readonly seats: readonly KitSeat[]
  readonly numbered: readonly Numbered[]
  readonly permits: readonly Thing[]
  readonly lifting: readonly Thing[]
  readonly tools: readonly Thing[]
  readonly parts: readonly Thing[]
  readonly consumables: readonly Thing[]
  /** Temporary things that the steps put in. */
  readonly placed: readonly Thing[]
  readonly roles: readonly Role[]
  /** People beyond the crew. */
  readonly persons: readonly Thing[]
  readonly crew: readonly { readonly id: string; readonly name: string; readonly role: string }[]
}

/** `day`: YYYY-MM-DD. A day that cannot be read finds no calibration standing. */
export function kitOf(defs: Definitions, day: string): Kit {
  const judges = defs.steps
    .filter(({ step }) => step.kind === 'judge')
    .map((placed) => {
      const judge = asKind(placed, 'judge')
      return { judge, asks: judgeAsks(defs, judge) }
    })
  const uses = [...readingUses(defs), ...judges.flatMap(({ asks }) => asks.uses)]
  const seats = kitSeats(defs, uses, `${day}T12:00`)
  const roles = kitRoles(defs)
  return {
    procedure: defs.procedure.procedure,
    title: defs.procedure.title,
    machine: defs.machine.machine,
    machineTitle: defs.machine.title,
    day,
    holds: [...seats, ...roles].flatMap(({ held }) => held ?? []),
    verdictHolds: judges.flatMap(({ judge, asks }) =>
      asks.missing.map((why) => `Step ${judge.number} comes to HOLD whatever is read: ${why}.`),
    ),
    seats,
    numbered: numberedThings(defs),
    permits: neededThings(defs, 'permit'),
    lifting: [...weightsOnRecord(defs), ...lifts(defs), ...neededThings(defs, 'lifting')],
    tools: neededThings(defs, 'tool'),
    parts: neededThings(defs, 'part'),
    consumables: neededThings(defs, 'consumable'),
    placed: placedThings(defs),
    roles,
    persons: neededThings(defs, 'person'),
    crew: defs.crew.crew.map(({ id, name, role }) => ({ id, name, role })),
  }
}
