// Numbers of locks, papers and devices. A lock, a blind or a tag is one thing and hangs in one place; a permit is paper
// and may cover several.
import type { Evidence, EvidenceOf } from '../definition/evidence.ts'
import { ok, type Result, refuse } from '../lib/result.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import { type AnyAsked, type Asked, failed, given, spaced } from './evidence-asked.ts'
import { firmly } from './fold-gate.ts'
import { evidenceByKey, type GateStep, gateState, type Item, itemByKey, wantsAnother } from './gate.ts'
import { peopleOnJob } from './people-on.ts'
import { reason } from './refusals.ts'
import type { State } from './state.ts'

const NAMES = {
  permit: 'permit',
  blind: 'blind',
  tag: 'tag',
  personal_lock: 'personal lock',
  part: 'part',
} as const

/** L-101 and L101 are one lock. */
const undashed = (number: string) => number.toUpperCase().replaceAll('-', '')

/** The same but for dashes and small letters. */
export const isSpelledAlike = (one: string, other: string) => undashed(one) === undashed(other)

/** Letters, then figures: what most locks and blinds bear. */
const LETTERED = /^([A-Z]*)0*(\d+)$/

/**
 * Whether two numbers may be two spellings of one lock, blind or tag: the letters may be left out, and noughts before the
 * figures. Two sets of letters are two things, L-101 and K-101. In doubt it is the same thing, so that none is in two places.
 */
export function isSameDevice(one: string, other: string): boolean {
  if (isSpelledAlike(one, other)) return true
  const [first, second] = [LETTERED.exec(undashed(one)), LETTERED.exec(undashed(other))]
  if (first === null || second === null || first[2] !== second[2]) return false
  return first[1] === second[1] || first[1] === '' || second[1] === ''
}

const isNumber = (number: string) => /^[A-Z0-9][A-Z0-9-]{0,15}$/.test(number) && /\d/.test(number)

/** What a number keyed with a space in it would be without: shown and never taken, as two numbers may stand there. */
function unspaced(number: string): string {
  const whole = number.replace(/ /g, '-')
  return number.includes(' ') && isNumber(whole) ? `, and no space. If it is one number: ${whole}` : ''
}

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
      `Key the number on the lock at ${asked.item.point?.name ?? 'this point'}: letters, digits and dashes, with at least one digit${unspaced(number)}.`,
    )
  }
  const tagged = tagRefused(asked.defs, number, 'lock')
  if (tagged !== null) return tagged
  const down = downAs(asked, number)
  if (down !== null) {
    return refuse(
      'lock-twice',
      `Lock ${asDown(number, down.shown)} is already down for ${down.at}, and one lock cannot hang in two places. If that was keyed wrong: correct.`,
    )
  }
  return heldAgainst(asked, number, by)
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
    if (isPermit(number)) return heldAgainst(asked, number)
    return refuse(
      'number',
      'Key the number of the permit: letters, digits, dashes, points and slashes, with at least one digit.',
    )
  }
  if (!isNumber(number)) {
    return refuse(
      'number',
      `Key the number on the ${name}${whose(item)}: letters, digits and dashes, with at least one digit${unspaced(number)}.`,
    )
  }
  // A part may be stamped with anything; what hangs at a point or on a person bears a number of its own.
  const tagged = evidence.of === 'part' ? null : tagRefused(asked.defs, number, name)
  if (tagged !== null) return tagged
  const down = downAs(asked, number)
  if (down !== null) {
    return refuse(
      'number-twice',
      `The number ${asDown(number, down.shown)} is already down at this hold point, and one ${name} cannot be in two places.`,
    )
  }
  return heldAgainst(asked, number, by)
}

/**
 * Read off the plate of a point instead of the lock at it, a number proves no lock. The plates of all points count, as the wrong one
 * may have been read. Null: it is none of them.
 */
function tagRefused(defs: Definitions, number: string, thing: string): Result<never> | null {
  const point = defs.machine.site.isolation_points.find(({ name }) =>
    name.split(/[\s,;:()/]+/).some((word) => /\d/.test(word) && isSpelledAlike(word, number)),
  )
  return point === undefined
    ? null
    : refuse(
        'point-tag',
        `${number} is the tag of the point: ${point.name}. The number stands on the ${thing}: key what is read there.`,
      )
}

/**
 * The number as evidence, or on record as another than the one noted earlier. That one is only told afterwards, and it
 * stands; here letters left out do not make it the same, as that would pass a lock for another. Of two numbers nobody here can say which thing is meant, so a lead has to look.
 */
function heldAgainst(
  asked: Asked<'locks'> | Asked<'numbers'>,
  number: string,
  by: TakenOff['by'] = {},
): Result<readonly Body[]> {
  const { notes, same_as: sameAs } = asked.evidence
  const under = (name: string) => [name, asked.item.point?.id ?? asked.item.person ?? []].flat().join('.')
  const was = sameAs === undefined ? undefined : asked.state.noted[under(sameAs)]
  if (was?.takenBack === true) {
    const at = asked.defs.steps.find(({ id }) => id === was.step)
    const where = at === undefined ? 'where it was noted' : `at hold point ${at.number}, ${at.step.title}`
    return refuse(
      'taken-back',
      `${was.shown} was taken back ${where}: no number passes here before it is noted there anew. If that is not asked again, say STOP and call a lead.`,
    )
  }
  if (sameAs !== undefined && was !== undefined && !isSpelledAlike(was.shown, number)) {
    const why = `${was.shown} was noted earlier, so this is another; look again, and if it is, say STOP and call a lead`
    return ok([failed(asked, number, why, { unlike: under(sameAs) })])
  }
  const changed = changedFrom(asked, number)
  if (!changed.ok) return changed
  const more = { ...(notes === undefined ? {} : { notes: under(notes) }), ...by, ...changed.value }
  return ok([given(asked, number, more)])
}

/** What was keyed for the item when its hold point fell last, and was no slip that somebody took back; null where nothing was. */
export function keyedBefore(state: State, gate: string, item: string): string | null {
  const was = gateState(state, gate).struck.find((one) => one.item === item)
  return was === undefined ? null : (firmly(was)?.shown ?? null)
}

/**
 * Another number than before the hold point fell is a slip, or something else hangs there now: it counts with a reason beside it, and
 * both numbers go on record. A permit is paper, and a new one comes with a new day. Refuses `other-number`.
 */
function changedFrom(
  { state, gate, item, evidence, why }: Asked<'locks'> | Asked<'numbers'>,
  number: string,
): Result<{ readonly was?: string; readonly why?: string }> {
  const was = keyedBefore(state, gate.id, item.key)
  const isPaper = evidence.kind === 'numbers' && evidence.of === 'permit'
  if (was === null || isPaper || isSpelledAlike(was, number)) return odd(why)
  const said = why === undefined ? null : reason(why, 'Another number than before')
  if (said === null)
    return refuse('other-number', `${was} was keyed here before, and ${number} is another: look again.`)
  return said.ok ? ok({ was, why: said.value }) : said
}

/** A number that was doubted for its looks, and kept: the reason goes on record beside it. */
function odd(why: string | undefined): Result<{ readonly why?: string }> {
  if (why === undefined) return ok({})
  const said = reason(why, 'A number unlike the others')
  return said.ok ? ok({ why: said.value }) : said
}

/** `9`, `A9`: letters and figures of a number in their order, without how many or dashes. */
const formOf = (number: string) =>
  undashed(number)
    .replace(/[A-Z]+/g, 'A')
    .replace(/\d+/g, '9')

/**
 * What is odd about the number of a lock, or null: one digit alone is more likely the key of a choice, and locks of one hold point
 * are mostly of one set. Common practice, no source; so it is asked, and refuses nothing.
 */
export function oddNumber(state: State, gate: GateStep, item: Item, typed: string): string | null {
  const { evidence } = item
  const isLock = evidence.kind === 'locks' || (evidence.kind === 'numbers' && evidence.of === 'personal_lock')
  const number = spaced(typed).split(' ')[0] ?? ''
  const was = keyedBefore(state, gate.id, item.key)
  if (!isLock || !isNumber(number) || (was !== null && isSpelledAlike(was, number))) return null
  if (/^\d$/.test(number)) return 'one digit alone is seldom the number of a lock'
  const others = Object.entries(gateState(state, gate.id).given).flatMap(([key, { shown }]) =>
    evidenceByKey(gate, key)?.id === evidence.id ? [shown] : [],
  )
  return others.length === 0 || others.some((other) => formOf(other) === formOf(number))
    ? null
    : `the others here are like ${others[0]}`
}

function whose({ point, person }: AnyAsked['item']): string {
  if (point !== null) return ` at ${point.name}`
  return person === null ? '' : ` of ${person}`
}

/** Things of one sort share their numbers: a person's lock and the lock at a point are both locks. */
export function sortOf(evidence: Evidence): EvidenceOf<'numbers'>['of'] | null {
  if (evidence.kind === 'locks') return 'personal_lock'
  return evidence.kind === 'numbers' ? evidence.of : null
}

/** As it stands in this gate already, for another thing of the same sort; null where it does not. */
function downAs(
  { defs, state, gate, item, evidence }: Asked<'locks'> | Asked<'numbers'>,
  number: string,
): { readonly shown: string; readonly at: string } | null {
  // Parts are stamped by their maker, and letters are all that tells some of them apart.
  const isSame = sortOf(evidence) === 'part' ? isSpelledAlike : isSameDevice
  const found = Object.entries(gateState(state, gate.id).given).find(([key, other]) => {
    const its = evidenceByKey(gate, key)
    return key !== item.key && its !== null && sortOf(its) === sortOf(evidence) && isSame(other.shown, number)
  })
  if (found === undefined) return null
  const [key, { shown }] = found
  return { shown, at: itemByKey(defs, gate, key)?.point?.name ?? 'another point' }
}

/** `101, which is L-101,`: the other spelling is told where it is another. */
function asDown(number: string, down: string): string {
  return number === down ? number : `${number}, which may be ${down},`
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
