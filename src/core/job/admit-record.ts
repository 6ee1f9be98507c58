// A changed machine record for a job that is under way: another bore, another piston, a fault in the record. It is checked as if
// the job were opened with it, and nothing that rested on the old one stands: not by halves, and not by what seems to hang on
// the fields that differ.
import type { Person } from '../definition/crew.ts'
import { ok, type Refusal, type Result, refuse } from '../lib/result.ts'
import { quote } from '../lib/wording.ts'
import type { Definitions } from './definitions.ts'
import type { Body } from './entries.ts'
import type { TakeIn } from './entries-by-lead.ts'
import { gateState, gatesOf } from './gate.ts'
import type { Input } from './input.ts'
import { itemLabel } from './item-label.ts'
import { hanging } from './locks-on.ts'
import { barsOpening } from './open-job.ts'
import { testsBegun } from './over-time.ts'
import { recordChanges } from './record-changes.ts'
import { reason } from './refusals.ts'
import { signer } from './signature.ts'
import { type State, standingVerdict, stands } from './state.ts'

/** What the record would change and make void, or why it cannot be taken in: told before anybody is asked to sign. */
export function takeInOf(
  defs: Definitions,
  state: State,
  to: Definitions,
  unproved: string | null,
): Result<TakeIn> {
  if (state.practice !== null)
    return refuse(
      'practice',
      'A hidden machine is made of the record it began with: begin another session instead.',
    )
  const barred = otherThing(defs, to)
  if (barred !== null) return { ok: false, error: barred }
  const changed = recordChanges(defs.machine, to.machine)
  if (changed.length === 0)
    return refuse(
      'unchanged',
      'Nothing that a job reads differs from the record it has: nothing was taken in.',
    )
  const answers = state.scripted ? 'script' : 'person'
  const hung = hungAtLostPoint(defs, state, to)
  if (hung !== null) return { ok: false, error: hung }
  // What its clock is was settled when the job was opened, and no entry changes that.
  const shut = barsOpening(to, { record: state.record, clock: 'system', answers }, () => unproved)
  if (shut !== null) return { ok: false, error: shut }
  return ok({ changed, ...voidsOf(defs, state) })
}

/** Records of one cylinder of one compressor, both invented or neither. */
export function isOneMachine(one: Definitions, two: Definitions): boolean {
  const [a, b] = [one.machine, two.machine]
  const isOneKind = (a.invented === true) === (b.invented === true)
  return a.machine === b.machine && a.compressor === b.compressor && isOneKind
}

/** Why this is not a changed record of this very machine, or null. */
function otherThing({ machine: was }: Definitions, { machine: now }: Definitions): Refusal | null {
  if (now.machine !== was.machine)
    return {
      code: 'other-machine',
      say: `This is the record of ${quote(now.machine)}, and the job is on ${quote(was.machine)}: another machine takes a job of its own.`,
    }
  if (now.compressor !== was.compressor)
    return {
      code: 'other-machine',
      say: `This record says the cylinder is part of ${compressor(now.compressor)}, and the job was opened on ${compressor(was.compressor)}: jobs beside it could no longer tell that they are on one machine.`,
    }
  if ((now.invented === true) !== (was.invented === true))
    return {
      code: 'other-kind',
      say: `A record that is ${now.invented === true ? '' : 'not '}marked invented does not take the place of one that is${now.invented === true ? ' not' : ''}.`,
    }
  const [uses] = recordChanges(was, now).filter(({ field }) => field.startsWith('uses, '))
  if (uses === undefined) return null
  return {
    code: 'other-files',
    say: `This record names other files (${uses.field}), and only the record itself is taken in: name them as before, the job keeps its own.`,
  }
}

/** A lock is asked off at its point: where the record loses that, nobody is asked, and the machine starts with people locked in. */
function hungAtLostPoint(defs: Definitions, state: State, to: Definitions): Refusal | null {
  const kept = new Set(to.machine.site.isolation_points.map(({ id }) => id))
  for (const { item, shown } of hanging(defs, state).on) {
    if (item.point === null || kept.has(item.point.id)) continue
    const what = `${itemLabel(defs, item)} (${shown})`
    return {
      code: 'lock-on',
      say: `By this job's log ${what} is still on, and this record has no isolation point ${quote(item.point.id)}: keep the point until it is off.`,
    }
  }
  return null
}

function compressor(tag: string | undefined): string {
  return tag === undefined ? 'no compressor by tag' : quote(tag)
}

function voidsOf(defs: Definitions, state: State): Omit<TakeIn, 'changed'> {
  const decided = (id: string) => state.dispositions[id]?.void === false
  const signedFor = (id: string) => state.points[id]?.void === false || state.notices[id] !== undefined
  const isJudgement = ({ step }: Definitions['steps'][number]) =>
    step.kind === 'judge' || step.kind === 'decide'
  const ids = (which: (placed: Definitions['steps'][number]) => boolean) =>
    defs.steps.filter(which).map(({ id }) => id)
  return {
    gates: gatesOf(defs).flatMap(({ id }) => {
      const { status, given, begun } = gateState(state, id)
      return status === 'never' && Object.keys({ ...given, ...begun }).length === 0 ? [] : [id]
    }),
    voids: ids(
      (placed) =>
        isJudgement(placed) &&
        (standingVerdict(state, placed.id) !== null || decided(placed.id) || signedFor(placed.id)),
    ),
    undecided: ids((placed) => !isJudgement(placed) && decided(placed.id)),
    anew: ids(
      ({ id, step }) =>
        'by_record' in step &&
        step.by_record === true &&
        (step.point === undefined ? state.done[id] !== undefined : state.points[id]?.void === false),
    ),
    tests: testsBegun(defs, state),
    dropped: [state.doubt, state.late].flatMap((one) => (one === null ? [] : [one.seq])),
  }
}

export function admitTakeIn(
  defs: Definitions,
  state: State,
  input: Extract<Input, { do: 'take-in' }>,
): Result<readonly Body[]> {
  const taken = takeInOf(defs, state, input.to, input.unproved)
  if (!taken.ok) return taken
  const who = signer(defs, state, input)
  if (!who.ok) return who
  const { person, signed } = who.value
  const barred = barsTakingIn(state, person)
  if (barred !== null) return { ok: false, error: barred }
  const why = reason(input.why, 'Why the record was changed')
  if (!why.ok) return why
  // A job that was cut off was not left: people go off it by an entry of its own, as the next one to be on it finds none.
  const left: readonly Body[] = state.left ? [] : [{ type: 'job.left' }]
  return ok([
    ...left,
    {
      type: 'record.taken-in',
      file: input.file,
      why: why.value,
      ...taken.value,
      person: person.id,
      signed,
    },
  ])
}

/**
 * Why this person may not take a record in, or null. It decides anew what every reading of the job comes to, so whoever took one
 * that still stands does not decide that; to have been at the keyboard, or to have decided before, bars nobody.
 */
export function barsTakingIn(state: State, person: Person): Refusal | null {
  if (person.role !== 'lead')
    return {
      code: 'not-lead',
      say: `${person.id} is a ${person.role}, and a changed record is taken in by a lead.`,
    }
  const readings = Object.values(state.readings).flat()
  if (!readings.some((one) => stands(one) && one.by === person.id)) return null
  return {
    code: 'own-work',
    say: `${person.id} took readings on this job, so another lead takes the record in.`,
  }
}
