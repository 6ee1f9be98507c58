// The part of the fold that keeps gates: evidence given, struck, gates opened and closed.
import { readStamp } from '../lib/instant.ts'
import type { CloseCause, Entry } from './entries.ts'
import { EMPTY_GATE, type GateState, type Keying, type State, type Struck } from './state.ts'

type GateEntry = Extract<
  Entry,
  {
    type: 'evidence.given' | 'evidence.failed' | 'gate.opened' | 'gate.closed' | 'people.clear' | 'wait.begun'
  }
>

export function foldGate(state: State, entry: GateEntry): State {
  const gate = state.gates[entry.step] ?? EMPTY_GATE
  return {
    ...state,
    gates: { ...state.gates, [entry.step]: changed(gate, entry) },
    noted: notedAfter(state.noted, entry),
  }
}

function notedAfter(noted: State['noted'], entry: GateEntry): State['noted'] {
  if (entry.type === 'evidence.given' && entry.notes !== undefined)
    return { ...noted, [entry.notes]: { shown: entry.shown, step: entry.step, differs: false } }
  if (entry.type !== 'evidence.failed' || entry.unlike === undefined) return noted
  const was = noted[entry.unlike]
  return was === undefined ? noted : { ...noted, [entry.unlike]: { ...was, differs: true } }
}

function changed(gate: GateState, entry: GateEntry): GateState {
  switch (entry.type) {
    case 'evidence.given':
      return {
        ...gate,
        replaced: replacedAfter(gate, entry),
        given: {
          ...gate.given,
          [entry.item]: {
            seq: entry.seq,
            // An unreadable time would count as the oldest there is, and so never as fresh.
            atMs: readStamp(entry.at)?.ms ?? Number.NEGATIVE_INFINITY,
            at: entry.at,
            by: entry.by ?? null,
            shown: entry.shown,
            si: entry.reading?.si ?? null,
            person: entry.person ?? null,
            instrument: entry.instrument ?? null,
            ...(entry.off_by === undefined ? {} : { offBy: entry.off_by }),
          },
        },
      }
    case 'evidence.failed':
      return gate
    case 'wait.begun': {
      // An unreadable time would make a wait that never ends, and so never a short one.
      const atMs = readStamp(entry.at)?.ms ?? Number.POSITIVE_INFINITY
      const begun = { seq: entry.seq, atMs, at: entry.at, by: entry.by ?? null, shown: entry.shown }
      return { ...gate, begun: { ...gate.begun, [entry.item]: begun } }
    }
    case 'gate.opened':
      return { ...gate, status: 'open', cause: null, why: null, struck: [], mustClear: false }
    case 'gate.closed':
      return strike(gate, entry.items, entry.cause, entry.why ?? null, entry.nobody_in === true)
    case 'people.clear':
      return { ...gate, mustClear: false }
  }
}

/** Goes on record beside both numbers where one thing was read twice, and not as it was before: no other hangs there. */
export const KEYED_WRONG = 'the same one, and its number was keyed wrong before'

/** Another number in place of one that stood: a gate that opens forgets what fell, and what was hung may hang all the same. */
function replacedAfter(
  { struck, replaced }: GateState,
  { item, was, why }: Extract<GateEntry, { type: 'evidence.given' }>,
): GateState['replaced'] {
  const isOther = was !== undefined && why !== KEYED_WRONG
  const fell = isOther ? struck.find((one) => one.item === item) : undefined
  const firm = fell === undefined ? undefined : firmly(fell)
  return firm === undefined ? replaced : [...replaced, { item, ...firm }]
}

const AT_THE_PLACE: readonly CloseCause[] = ['failed', 'instrument', 'corrected', 'elsewhere']

function strike(
  gate: GateState,
  items: readonly string[],
  cause: CloseCause,
  why: string | null = null,
  nobodyIn = false,
): GateState {
  const struck = items.flatMap((item) => {
    const was = gate.given[item] ?? gate.begun[item]
    if (was === undefined) return []
    const { seq, at, by, shown } = was
    const earlier = gate.struck.find((one) => one.item === item)
    const before = earlier === undefined || !isTakenBack(cause) ? undefined : firmly(earlier)
    return [{ item, shown, cause, seq, at, by, ...(before === undefined ? {} : { before }) }]
  })
  const given = without(gate.given, (item) => items.includes(item))
  return {
    status: gate.status === 'open' ? 'closed' : gate.status,
    replaced: gate.replaced,
    given,
    // A wait that is running starts again whatever fell: nobody watched it to its end.
    begun: without(gate.begun, (item) => given[item] === undefined),
    struck: [...gate.struck.filter((s) => !items.includes(s.item)), ...struck],
    cause,
    why,
    // Once people were let in they must be called out, also when the evidence fell a second time. And a gas reading that
    // was outside its limit, wrong, or made with a meter that is not to be trusted was taken by somebody who stands there.
    // That nobody is in, as the entry says of a slip, is never believed against either of the first two.
    mustClear: gate.mustClear || gate.status === 'open' || (AT_THE_PLACE.includes(cause) && !nobodyIn),
  }
}

/** Somebody took it back as a slip, and no fall of the hold point did. */
export function isTakenBack(cause: CloseCause): boolean {
  return cause === 'again' || cause === 'corrected'
}

/** What was shown and stood when the hold point fell. */
export function firmly({ cause, seq, at, by, shown, before }: Struck): Keying | undefined {
  return isTakenBack(cause) ? before : { seq, at, by, shown }
}

function without<T>(record: Readonly<Record<string, T>>, test: (key: string) => boolean): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => !test(key)))
}

/** Every gate that has any evidence falls, whole. */
export function strikeAll(state: State, cause: CloseCause): State {
  return strikeWhere(state, cause, (gate, items) => items.length > 0 || gate.status === 'open')
}

/** Every gate falls that was ever complete or has anything shown; one that had fallen before, for this cause now. */
export function strikeWhole(state: State, cause: CloseCause): State {
  return strikeWhere(state, cause, (gate, items) => items.length > 0 || gate.status !== 'never')
}

function strikeWhere(
  state: State,
  cause: CloseCause,
  falls: (gate: GateState, items: readonly string[]) => boolean,
): State {
  const gates = Object.fromEntries(
    Object.entries(state.gates).map(([id, gate]) => {
      const items = Object.keys({ ...gate.given, ...gate.begun })
      return [id, falls(gate, items) ? strike(gate, items, cause) : gate]
    }),
  )
  return { ...state, gates }
}
