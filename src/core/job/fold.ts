// evolves a job's state by one entry. Total: it holds no rules, refuses nothing and looks at no clock.
// What may be added is decided in admit.ts; the same fold serves the live screen, resuming, show and verify.
import { readStamp } from '../lib/instant.ts'
import { assertNever } from '../lib/result.ts'
import type { Entry, OpenedBody } from './entries.ts'
import { foldGate, strikeAll } from './fold-gate.ts'
import { foldReading } from './fold-reading.ts'
import type { State } from './state.ts'

export function opening(entry: OpenedBody & { readonly seq: number; readonly at: string }): State {
  return {
    record: entry.record,
    job: entry.job,
    seq: entry.seq,
    lastMs: readStamp(entry.at)?.ms ?? 0,
    lastAt: entry.at,
    doer: null,
    people: [],
    everOn: [],
    pinMisses: {},
    machineNamed: false,
    seats: {},
    done: {},
    findings: {},
    gates: {},
    readings: {},
    notApplicable: {},
    doubt: null,
    late: null,
    verdicts: {},
    dispositions: {},
    stops: [],
    cutShort: false,
    left: false,
    closed: null,
  }
}

export function fold(before: State, entry: Entry): State {
  const state: State = {
    ...before,
    seq: entry.seq,
    lastMs: Math.max(before.lastMs, readStamp(entry.at)?.ms ?? before.lastMs),
    lastAt: entry.at,
    cutShort: isCutShort(before, entry),
    pinMisses: withoutFitted(before, entry),
  }
  switch (entry.type) {
    case 'job.opened':
    case 'machine.mismatched':
    case 'step.objected':
    case 'note.written':
      return state
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
      return { ...state, machineNamed: true }
    case 'instrument.picked':
      return { ...state, seats: { ...state.seats, [entry.seat]: entry.instrument } }
    case 'instrument.put-back':
      return { ...state, seats: without(state.seats, [entry.seat]) }
    case 'step.done':
      return { ...state, done: { ...state.done, [entry.step]: 'done' } }
    case 'step.confirmed':
      return { ...state, done: { ...state.done, [entry.step]: 'seen' } }
    case 'finding.observed':
      return {
        ...state,
        done: { ...state.done, [entry.step]: entry.condition },
        findings: entry.note === undefined ? state.findings : { ...state.findings, [entry.step]: entry.note },
      }
    case 'step.reopened':
      return voided({ ...state, done: without(state.done, [entry.step, ...entry.voids]) }, entry.voids)
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
    case 'reading.not-applicable':
      return foldReading(state, entry)
    case 'reading.corrected':
      return voided(foldReading(state, entry), entry.voids)
    case 'verdict.given':
      return {
        ...state,
        verdicts: {
          ...state.verdicts,
          [entry.step]: { seq: entry.seq, verdict: entry.verdict, void: false },
        },
      }
    case 'disposition.set':
      return {
        ...state,
        dispositions: {
          ...state.dispositions,
          [entry.step]: {
            choice: entry.choice,
            why: entry.why,
            person: entry.person,
            void: false,
            radio: entry.radio?.by ?? null,
            countersigned: false,
          },
        },
      }
    case 'disposition.countersigned':
      return voided(countersigned(state, entry.step, entry.agrees), entry.voids)
    case 'stop.raised':
      return {
        ...strikeAll(state, 'stop'),
        stops: [...state.stops, { seq: entry.seq, by: entry.by ?? null, why: null, releasedBy: null }],
      }
    case 'stop.explained':
      return { ...state, stops: lastStop(state, (s) => ({ ...s, why: entry.why })) }
    case 'stop.released':
      return { ...state, stops: lastStop(state, (s) => ({ ...s, releasedBy: entry.person })) }
    case 'job.left':
      return { ...strikeAll(state, 'left'), left: true, people: [] }
    case 'job.taken-up':
      // Nobody watched while the program was away: whatever was proved before must be proved again.
      return { ...strikeAll(state, state.left ? 'left' : 'interrupted'), left: false, doer: null, people: [] }
    case 'clock.moved':
      // Nothing stands that rests on the old time, so time counts from here: else it would be set back at every line.
      return { ...strikeAll(state, 'clock'), lastMs: readStamp(entry.at)?.ms ?? state.lastMs }
    case 'job.closed':
      return { ...state, closed: entry.outcome }
    default:
      return assertNever(entry)
  }
}

/** Only when the gate was open until now: what is asked behind one that fell earlier was never being done. */
function isCutShort(before: State, entry: Entry): boolean {
  if (entry.type === 'note.written') return before.cutShort
  const byTime = entry.type === 'clock.moved' || (entry.type === 'gate.closed' && entry.cause === 'lapsed')
  return byTime && (before.cutShort || !Object.values(before.gates).some((g) => g.status === 'closed'))
}

function voided(state: State, voids: readonly string[]): State {
  const verdicts = { ...state.verdicts }
  const dispositions = { ...state.dispositions }
  for (const id of voids) {
    const verdict = verdicts[id]
    if (verdict !== undefined) verdicts[id] = { ...verdict, void: true }
    const disposition = dispositions[id]
    if (disposition !== undefined) dispositions[id] = { ...disposition, void: true }
  }
  return { ...state, verdicts, dispositions, done: without(state.done, voids) }
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

function without<T>(record: Readonly<Record<string, T>>, keys: readonly string[]): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)))
}

function lastStop(
  state: State,
  change: (s: State['stops'][number]) => State['stops'][number],
): State['stops'] {
  return state.stops.map((s, i) => (i === state.stops.length - 1 ? change(s) : s))
}
