// Numbers of locks, papers and devices. A lock, a blind or a tag is one thing and hangs in one place; a permit is paper
// and may cover several.
import type { Evidence, EvidenceOf } from '../definition/evidence.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Body } from './entries.ts'
import { type AnyAsked, type Asked, failed, given, spaced } from './evidence-asked.ts'
import { evidenceByKey, gateState, wantsAnother } from './gate.ts'
import { peopleOnJob } from './people-on.ts'

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

/**
 * The number, and who took it off where that is asked: initials of somebody on the job behind it. Whose lock it is their own hand
 * takes it off (29 CFR 1910.147(e)(3)); that it was their hand is for whoever witnesses the gate.
 */
function takenOff({ defs, state, evidence, typed }: Asked<'locks'> | Asked<'numbers'>): Result<TakenOff> {
  const whole = spaced(typed)
  if (evidence.taken_off === undefined) return ok({ number: whole, by: {} })
  const [number = '', person = '', ...more] = whole.split(' ')
  const isHere = more.length === 0 && peopleOnJob(state).includes(person)
  if (isHere && defs.crew.crew.some((one) => one.id === person && one.role !== 'trainee'))
    return ok({ number, by: { off_by: person } })
  return refuse(
    'off-by',
    `Key the number and behind it the initials of who took it off, somebody on this job: ${number || 'L-101'} ${state.doer ?? 'RO'}.`,
  )
}

interface TakenOff {
  readonly number: string
  readonly by: { readonly off_by?: string }
}

export function lockGiven(asked: Asked<'locks'>): Result<readonly Body[]> {
  const off = takenOff(asked)
  if (!off.ok) return off
  const { number, by } = off.value
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
  return ok([heldAgainst(asked, number, by)])
}

export function numberGiven(asked: Asked<'numbers'>): Result<readonly Body[]> {
  const { evidence, item } = asked
  const name = NAMES[evidence.of]
  if (wantsAnother(item)) {
    return refuse(
      'alone',
      'Nobody does this alone, and each hangs a lock of their own: whoever works with you comes onto the job first, by the words sign on.',
    )
  }
  const off = takenOff(asked)
  if (!off.ok) return off
  const { number, by } = off.value
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
  return ok([heldAgainst(asked, number, by)])
}

/**
 * The number as evidence, or on record as another than the one noted earlier. That one is only told afterwards, and it
 * stands: of two numbers nobody here can say which thing is meant, so a lead has to look.
 */
function heldAgainst(
  asked: Asked<'locks'> | Asked<'numbers'>,
  number: string,
  by: TakenOff['by'] = {},
): Body {
  const { notes, same_as: sameAs } = asked.evidence
  const under = (name: string) => [name, asked.item.point?.id ?? asked.item.person ?? []].flat().join('.')
  const was = sameAs === undefined ? undefined : asked.state.noted[under(sameAs)]
  if (sameAs !== undefined && was !== undefined && undashed(was.shown) !== undashed(number)) {
    const why = `${was.shown} was noted earlier, so this is another; look again, and if it is, say STOP and call a lead`
    return failed(asked, number, why, { unlike: under(sameAs) })
  }
  return given(asked, number, { ...(notes === undefined ? {} : { notes: under(notes) }), ...by })
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
