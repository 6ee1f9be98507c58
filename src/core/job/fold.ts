// evolves a job's state by one entry. Total: it holds no rules, refuses nothing and looks at no clock.
// What may be added is decided in admit.ts; the same fold serves the live screen, resuming, show and verify.

import { readStamp } from '../lib/instant.ts'
import { assertNever } from '../lib/result.ts'
import { keyOf } from './elsewhere.ts'
import type { Entry, OpenedBody } from './entries.ts'
import { fellWithOf } from './fell-with.ts'
import { foldGate, strikeAll } from './fold-gate.ts'
import { foldPaper } from './fold-paper.ts'
import { foldReading } from './fold-reading.ts'
import { recordTakenIn } from './fold-record.ts'
import { foldRegister, seenAnew } from './fold-register.ts'
import { foldStop } from './fold-stop.ts'
import { branchLeft, instrumentDoubted, raise, voided, without } from './fold-void.ts'
import { putBack, usedAfter } from './mispick.ts'
import { checkMark } from './paper.ts'
import { foldPractice, practiceOpened } from './practice.ts'
import { allOf } from './seen.ts'
import type { Raised, State } from './state.ts'

export function opening(entry: OpenedBody & { readonly seq: number; readonly at: string }): State {
  return {
    record: entry.record,
    job: entry.job,
    paper:
      entry.paper === true
        ? {
            mark: checkMark(entry.files),
            rows: {},
            unread: {},
            last: null,
            writers: [],
            keyers: [],
            keyedBy: null,
            comparedBy: null,
          }
        : null,
    scripted: entry.answers === 'script',
    practice: practiceOpened(entry.practice),
    seq: entry.seq,
    lastMs: readStamp(entry.at)?.ms ?? 0,
    lastAt: entry.at,
    doer: null,
    people: [],
    everOn: [],
    pinMisses: {},
    machineNamed: false,
    plateAgain: false,
    atDesk: false,
    seats: {},
    picked: [],
    used: [],
    doubted: {},
    done: {},
    doneAt: {},
    findings: {},
    gates: {},
    noted: {},
    readings: {},
    notApplicable: {},
    doubt: null,
    late: null,
    verdicts: {},
    dispositions: {},
    raised: [],
    doneBy: {},
    points: {},
    notices: {},
    deviations: [],
    stops: [],
    elsewhere: {},
    things: [],
    notes: [],
    files: [],
    records: [],
    adopted: null,
    remarks: [],
    cutShort: false,
    left: false,
    closed: null,
    asLeft: null,
    fellFrom: null,
    fellBy: [],
  }
}

export function fold(before: State, entry: Entry): State {
  const after = foldPaper(folded(before, entry), entry)
  if (after.raised === before.raised) return after
  const fell = (one: Raised) => one.voidBy === entry.seq && one.voidWith === null
  const voidWith = fellWithOf(entry)
  return { ...after, raised: after.raised.map((one) => (fell(one) ? { ...one, voidWith } : one)) }
}

function folded(before: State, entry: Entry): State {
  const state: State = {
    ...before,
    seq: entry.seq,
    lastMs: Math.max(before.lastMs, readStamp(entry.at)?.ms ?? before.lastMs),
    lastAt: entry.at,
    practice: foldPractice(before, entry),
    cutShort: isCutShort(before, entry),
    pinMisses: withoutFitted(before, entry),
    used: usedAfter(before, entry),
  }
  switch (entry.type) {
    case 'job.opened':
    case 'machine.mismatched':
    case 'step.objected':
    case 'pin.fitted':
    case 'paper.row':
    case 'paper.signed':
    case 'practice.asked':
    case 'practice.called':
    case 'practice.named':
    case 'practice.hinted':
    case 'readings.questioned':
      return state
    case 'note.written': {
      const { seq, at, by = null, text } = entry
      return { ...state, notes: [...state.notes, { seq, at, by, text }] }
    }
    case 'paper.unread':
      return voided({ ...state, doubt: null }, entry.voids)
    case 'person.signed-on':
      return { ...withPerson(state, entry.person), doer: entry.person }
    case 'person.came-on':
      return withPerson(state, entry.person)
    case 'person.signed-off':
      return { ...state, people: state.people.filter((p) => p !== entry.person) }
    case 'job.handed-over': {
      const on = withPerson(strikeAll(state, 'handed-over'), entry.to)
      return { ...on, doer: entry.to, people: on.people.filter((p) => p !== entry.from) }
    }
    case 'pin.missed':
      return {
        ...state,
        pinMisses: {
          ...state.pinMisses,
          [entry.person]: { count: (state.pinMisses[entry.person]?.count ?? 0) + 1, lastMs: state.lastMs },
        },
      }
    case 'machine.named':
      return { ...state, machineNamed: true, plateAgain: false }
    case 'instrument.picked':
      return {
        ...state,
        seats: { ...state.seats, [entry.seat]: entry.instrument },
        picked: [...new Set([...state.picked, entry.instrument])],
      }
    case 'instrument.put-back':
      return putBack(state, entry)
    case 'instrument.doubted':
      return instrumentDoubted(state, entry)
    case 'step.done':
      return answered(state, entry, 'done')
    case 'step.confirmed':
      return answered(state, entry, 'seen')
    case 'finding.observed':
      return found(state, entry)
    case 'finding.corrected':
      return found(voided(state, entry.voids), entry)
    case 'branch.left':
      return branchLeft(state, entry)
    case 'step.reopened':
      return voided(state, [entry.step, ...entry.voids])
    case 'evidence.given':
    case 'evidence.failed':
    case 'gate.opened':
    case 'gate.closed':
    case 'people.clear':
    case 'wait.begun':
      return foldGate(state, entry)
    case 'reading.taken':
    case 'reading.doubted':
    case 'reading.late':
    case 'doubt.settled':
    case 'late.settled':
    case 'reading.dropped':
    case 'reading.not-applicable':
      return foldReading(state, entry)
    case 'not-applicable.taken-back':
    case 'reading.corrected':
      return voided(foldReading(state, entry), entry.voids)
    case 'verdict.given':
      return {
        ...raise(state, entry.step, entry.verdict.result.verdict),
        verdicts: {
          ...state.verdicts,
          [entry.step]: { seq: entry.seq, verdict: entry.verdict, on: state.people, void: false },
        },
      }
    case 'point.signed':
    case 'point.notice-given':
    case 'point.not-attended':
      return foldPoint(state, entry)
    case 'deviation.permitted': {
      const { type: _type, at: _at, by: _by, signed: _signed, ...permit } = entry
      return { ...state, deviations: [...state.deviations, permit] }
    }
    case 'disposition.set':
      return {
        ...state,
        dispositions: {
          ...state.dispositions,
          [entry.step]: {
            seq: entry.seq,
            about: entry.about,
            choice: entry.choice,
            why: entry.why,
            person: entry.person,
            void: false,
            radio: entry.radio?.by ?? null,
            countersigned: false,
            authority: entry.authority ?? null,
            valid: entry.valid ?? null,
          },
        },
      }
    case 'disposition.countersigned':
      return voided(countersigned(state, entry.step, entry.agrees), entry.voids)
    case 'stop.raised':
    case 'stop.explained':
    case 'stop.released':
    case 'stop.stands':
      return foldStop(state, entry)
    case 'thing.placed':
    case 'thing.seen':
    case 'thing.accounted':
    case 'things.handed-on':
      return foldRegister(state, entry)
    case 'file.attached': {
      const { type: _type, by = null, ...file } = entry
      return { ...state, files: [...state.files, { ...file, by }] }
    }
    case 'elsewhere.seen': {
      const { type: _type, seq: _seq, at: _at, by: _by, since: _since, ...seen } = entry
      return { ...state, elsewhere: { ...state.elsewhere, [keyOf(seen)]: seen } }
    }
    case 'elsewhere.gone':
      return { ...state, elsewhere: without(state.elsewhere, [keyOf(entry)]) }
    case 'job.left':
      return { ...strikeAll(state, 'left'), left: true, people: [] }
    case 'job.taken-up':
      // Nobody watched while the program was away: whatever was proved before must be proved again.
      return {
        ...strikeAll(state, state.left ? 'left' : 'interrupted'),
        left: false,
        doer: null,
        people: [],
        plateAgain: state.machineNamed,
        atDesk: entry.desk === true,
      }
    case 'record.taken-in':
      return recordTakenIn(state, entry)
    case 'left.adopted': {
      const { seq, at, person } = entry
      return { ...state, adopted: { seq, at, person, void: false } }
    }
    case 'remark.made': {
      const { seq, at, person, text } = entry
      return { ...state, remarks: [...state.remarks, { seq, at, person, text }] }
    }
    case 'clock.moved': {
      // Nothing stands that rests on the old time, so time counts from here: else it would be set back at every line.
      const lastMs = readStamp(entry.at)?.ms ?? state.lastMs
      const doneAt = Object.entries(state.doneAt).map(([id, { seq }]) => [id, { seq, atMs: lastMs }])
      return {
        ...strikeAll(state, 'clock'),
        notices: {},
        points: withoutWaited(state.points),
        lastMs,
        doneAt: Object.fromEntries(doneAt),
      }
    }
    case 'job.closed':
      return { ...state, closed: entry.outcome, asLeft: entry.as_left ?? null }
    default:
      return assertNever(entry)
  }
}

/** Only when the gate was open until now: what is asked behind one that fell earlier was never being done. */
function isCutShort(before: State, entry: Entry): boolean {
  // Nobody did anything at the machine by these.
  if (['note.written', 'file.attached', 'elsewhere.seen', 'elsewhere.gone'].includes(entry.type))
    return before.cutShort
  // The figure of a practice machine is on record before somebody calls it out.
  if (entry.type.startsWith('practice.')) return before.cutShort
  const byTime = entry.type === 'clock.moved' || (entry.type === 'gate.closed' && entry.cause === 'lapsed')
  return byTime && (before.cutShort || !Object.values(before.gates).some((g) => g.status === 'closed'))
}

function answered(before: State, entry: Entry & { readonly step: string }, word: string): State {
  const state = seenAnew(before, [entry.step])
  const by = new Set([...(state.doneBy[entry.step] ?? []), entry.by ?? null])
  return {
    ...state,
    done: { ...state.done, [entry.step]: word },
    doneAt: { ...state.doneAt, [entry.step]: { seq: entry.seq, atMs: state.lastMs } },
    doneBy: { ...state.doneBy, [entry.step]: [...by] },
  }
}

function foldPoint(
  state: State,
  entry: Extract<Entry, { type: 'point.signed' | 'point.notice-given' | 'point.not-attended' }>,
): State {
  const { seq, step } = entry
  if (entry.type === 'point.notice-given')
    return { ...state, notices: { ...state.notices, [step]: { seq, at: entry.at, whom: entry.whom } } }
  const given =
    entry.type === 'point.signed'
      ? { seq, how: 'signed' as const, person: entry.person, void: false }
      : { seq, how: 'not-attended' as const, person: null, void: false }
  return { ...state, points: { ...state.points, [step]: given } }
}

/** That a notice had run out was told by the clock before it moved, so nobody knows whether it had. */
function withoutWaited(points: State['points']): State['points'] {
  return Object.fromEntries(
    Object.entries(points).map(([id, one]) => [id, one.how === 'signed' ? one : { ...one, void: true }]),
  )
}

function found(
  state: State,
  entry: Extract<Entry, { type: 'finding.observed' | 'finding.corrected' }>,
): State {
  const rest = without(state.findings, [entry.step])
  return {
    ...raise(answered(state, entry, entry.condition), entry.step, ...allOf(entry)),
    findings: entry.note === undefined ? rest : { ...rest, [entry.step]: entry.note },
  }
}

/** A PIN that fitted wipes out the misses before it. */
function withoutFitted(before: State, entry: Entry): State['pinMisses'] {
  const fitted = fittedIn(entry)
  return fitted.length === 0 ? before.pinMisses : without(before.pinMisses, fitted)
}

function fittedIn(entry: Entry): string[] {
  if (entry.type === 'job.handed-over') {
    return [
      ...(entry.signedFrom === 'pin' ? [entry.from] : []),
      ...(entry.signedTo === 'pin' ? [entry.to] : []),
    ]
  }
  if (entry.type === 'disposition.set' && entry.radio !== undefined)
    return entry.signed === 'pin' ? [entry.radio.by] : []
  if (!('signed' in entry) || entry.signed !== 'pin' || !('person' in entry)) return []
  return entry.person === undefined ? [] : [entry.person]
}

function countersigned(state: State, step: string, agrees: boolean): State {
  const old = state.dispositions[step]
  if (old === undefined) return state
  const now = agrees ? { ...old, countersigned: true } : { ...old, void: true }
  return { ...state, dispositions: { ...state.dispositions, [step]: now } }
}

function withPerson(state: State, person: string): State {
  const adding = (list: readonly string[]) => [...new Set([...list, person])]
  return { ...state, people: adding(state.people), everOn: adding(state.everOn) }
}
