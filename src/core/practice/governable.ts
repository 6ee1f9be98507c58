// The limits a trainee chooses from when they say which one governs a verdict, and how each is called.
import { isPocketLimit, POCKET_LIMITS, pocketLimitText } from '../cycle/pocket-limits.ts'
import { type CharacteristicId, characteristicText } from '../definition/characteristics.ts'
import { asKind, type Definitions, stepById } from '../job/definitions.ts'
import type { VerdictRecord } from '../job/verdict-record.ts'
import { pocketGoverns } from './pocket-governs.ts'

/** What a judge step holds against limits; empty where it judges otherwise than by them. */
export function judgedBy(defs: Definitions, id: string): readonly string[] {
  const { step } = asKind(stepById(defs, id), 'judge')
  switch (step.compute) {
    case 'bore_form':
      return step.against
    case 'figures':
      return step.figures.map(({ characteristic }) => characteristic)
    case 'pocket_setting':
      return POCKET_LIMITS
  }
}

/** A load that is on HOLD may be so by a limit or by none, and which of them is a question of its own. */
export function isHoldAsked(defs: Definitions, id: string): boolean {
  return asKind(stepById(defs, id), 'judge').step.compute === 'pocket_setting'
}

export function governsText(id: string): string {
  return isPocketLimit(id) ? pocketLimitText(id) : characteristicText(id as CharacteristicId)
}

/** What governs a verdict; empty: no limit does. */
export function governing(record: VerdictRecord): readonly string[] {
  return record.compute === 'pocket_setting'
    ? pocketGoverns(record)
    : (record.result.governs?.characteristics ?? [])
}
