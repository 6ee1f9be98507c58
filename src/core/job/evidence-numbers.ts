// Numbers of locks, papers and devices. A lock, a blind or a tag is one thing and hangs in one place; a permit is paper
// and may cover several.
import type { Evidence, EvidenceOf } from '../definition/evidence.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Body } from './entries.ts'
import { type AnyAsked, type Asked, failed, given, spaced } from './evidence-asked.ts'
import { evidenceByKey, gateState, wantsAnother } from './gate.ts'

const NAMES = {
  permit: 'permit',
  blind: 'blind',
  tag: 'tag',
  personal_lock: 'personal lock',
  part: 'part',
} as const

/** L-101 and L101 are one lock. */
export const undashed = (number: string) => number.toUpperCase().replaceAll('-', '')

const isNumber = (number: string) => /^[A-Z0-9][A-Z0-9-]{0,15}$/.test(number) && /\d/.test(number)

/** Numbers of permits come with the years and slashes of an office. */
const isPermit = (number: string) => /^[A-Z0-9][A-Z0-9./-]{0,23}$/.test(number) && /\d/.test(number)

export function lockGiven(asked: Asked<'locks'>): Result<readonly Body[]> {
  const number = spaced(asked.typed)
  if (!isNumber(number)) {
    return refuse(
      'lock-number',
      `Key the number on the lock at ${asked.item.point?.name ?? 'this point'}: letters, digits and dashes, with at least one digit.`,
    )
  }
  if (isDown(asked, number)) {
    return refuse(
      'lock-twice',
      `Lock ${number} is already down for another point, and one lock cannot hang in two places.`,
    )
  }
  return ok([heldAgainst(asked, number)])
}

export function numberGiven(asked: Asked<'numbers'>): Result<readonly Body[]> {
  const { evidence, item, typed } = asked
  const number = spaced(typed)
  const name = NAMES[evidence.of]
  if (wantsAnother(item)) {
    return refuse(
      'alone',
      'Nobody does this alone, and each hangs a lock of their own: whoever works with you comes onto the job first, by the words sign on.',
    )
  }
  if (evidence.of === 'permit') {
    if (isPermit(number)) return ok([heldAgainst(asked, number)])
    return refuse(
      'number',
      'Key the number of the permit: letters, digits, dashes, points and slashes, with at least one digit.',
    )
  }
  if (!isNumber(number)) {
    return refuse(
      'number',
      `Key the number on the ${name}${whose(item)}: letters, digits and dashes, with at least one digit.`,
    )
  }
  if (isDown(asked, number)) {
    return refuse(
      'number-twice',
      `The number ${number} is already down at this hold point, and one ${name} cannot be in two places.`,
    )
  }
  return ok([heldAgainst(asked, number)])
}

/**
 * The number as evidence, or on record as another than the one noted earlier. That one is only told afterwards, and it
 * stands: of two numbers nobody here can say which thing is meant, so a lead has to look.
 */
function heldAgainst(asked: Asked<'locks'> | Asked<'numbers'>, number: string): Body {
  const { notes, same_as: sameAs } = asked.evidence
  const under = (name: string) => [name, asked.item.point?.id ?? asked.item.person ?? []].flat().join('.')
  const was = sameAs === undefined ? undefined : asked.state.noted[under(sameAs)]
  if (sameAs !== undefined && was !== undefined && undashed(was.shown) !== undashed(number)) {
    const why = `${was.shown} was noted earlier, so this is another; look again, and if it is, say STOP and call a lead`
    return failed(asked, number, why, { unlike: under(sameAs) })
  }
  return given(asked, number, notes === undefined ? {} : { notes: under(notes) })
}

function whose({ point, person }: AnyAsked['item']): string {
  if (point !== null) return ` at ${point.name}`
  return person === null ? '' : ` of ${person}`
}

/** Things of one sort share their numbers: a person's lock and the lock at a point are both locks. */
function sortOf(evidence: Evidence): EvidenceOf<'numbers'>['of'] | null {
  if (evidence.kind === 'locks') return 'personal_lock'
  return evidence.kind === 'numbers' ? evidence.of : null
}

/** Whether the number stands in this gate already, for another thing of the same sort. */
function isDown({ state, gate, item, evidence }: Asked<'locks'> | Asked<'numbers'>, number: string): boolean {
  return Object.entries(gateState(state, gate.id).given).some(([key, other]) => {
    const its = evidenceByKey(gate, key)
    return (
      key !== item.key &&
      its !== null &&
      sortOf(its) === sortOf(evidence) &&
      undashed(other.shown) === undashed(number)
    )
  })
}

/** Number of a sling or its tag. */
export function slingGiven(asked: AnyAsked): Result<readonly Body[]> {
  const number = spaced(asked.typed)
  if (isNumber(number)) return ok([given(asked, number)])
  return refuse(
    'number',
    'Key the number on the sling or its tag: letters, digits and dashes, with at least one digit.',
  )
}
