// What may have come off the machine with an entry of a job, for the other jobs on it. It is told by the numbers that are on
// record; where none is, whatever rests on anything may be void.
import type { Definitions } from './definitions.ts'
import type { Doing } from './elsewhere.ts'
import type { Entry } from './entries.ts'
import { isTakenBack } from './fold-gate.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf, hangs } from './gate.ts'
import { stoodBefore } from './locks-on.ts'
import { hungOnSheet } from './paper-watch.ts'
import { peopleOnJob } from './people-on.ts'
import { thingText } from './register.ts'
import type { State } from './state.ts'
import { tellsOff } from './tells-off.ts'

type Of<T extends Entry['type']> = Extract<Entry, { type: T }>

export function removals(defs: Definitions, before: State, entry: Entry, after: State): Doing[] {
  switch (entry.type) {
    case 'thing.seen':
    case 'thing.accounted':
      return takenOut(before, entry)
    case 'evidence.given':
      return keyed(defs, before, entry)
    case 'evidence.failed':
      return unlike(before, entry)
    case 'gate.closed':
      return takenBack(defs, before, entry)
    case 'job.closed': {
      const numbers = gatesOf(defs).flatMap((gate) => [...hungAt(before, gate), ...hungOnSheet(before, gate)])
      return told(entry, 'that job has ended, and its locks may come off', numbers)
    }
    default:
      return gone(defs, before, entry, after)
  }
}

/** Known by these numbers, and all there is to it; nothing where there are none. */
function told({ seq }: Entry, clause: string, numbers: readonly string[]): Doing[] {
  const each = [...new Set(numbers)]
  return each.length === 0 ? [] : [{ what: 'removed', seq, clause, numbers: each, told: true }]
}

/** Whoever signs first says that it is out already; the second only says so again. */
function takenOut(before: State, { of, seq }: Of<'thing.seen'> | Of<'thing.accounted'>): Doing[] {
  const thing = before.things.find((t) => t.seq === of)
  if (thing === undefined) return []
  const numbers = thing.number === null ? [] : [thing.number]
  return [{ what: 'removed', seq, clause: `${thingText(thing)} was taken off`, numbers, told: false }]
}

/** A lock that is told as off, and one that hangs where another hung before. */
function keyed(defs: Definitions, before: State, entry: Of<'evidence.given'>): Doing[] {
  const { item, shown, was } = entry
  const gate = gatesOf(defs).find(({ id }) => id === entry.step)
  const evidence = gate === undefined ? null : evidenceByKey(gate, item)
  if (evidence === null) return []
  if (!tellsOff(evidence)) {
    const isOther = hangs(evidence) && was !== undefined
    return isOther ? told(entry, `${shown} hangs where ${was} was`, [was]) : []
  }
  if (evidence.kind !== 'words')
    return told(entry, `${shown} was taken off`, [shown, ...(was === undefined ? [] : [was])])
  // Words tell of no number, so it may have been any of them.
  const numbers = gatesOf(defs).flatMap((one) => hungAt(before, one))
  const clause = `"${shown}" was keyed of locks or blinds`
  return [{ what: 'removed', seq: entry.seq, clause, numbers, told: numbers.length > 0 }]
}

/** Another number is where this one was noted, so this one may be anywhere. */
function unlike(before: State, entry: Of<'evidence.failed'>): Doing[] {
  const noted = entry.unlike === undefined ? undefined : before.noted[entry.unlike]
  return noted === undefined
    ? []
    : told(entry, `${entry.shown} was found where ${noted.shown} was`, [noted.shown])
}

/** Whatever hangs by the record does not, or is not known to: it was found wrong, or taken back as a slip. */
function takenBack(defs: Definitions, before: State, entry: Of<'gate.closed'>): Doing[] {
  const gate = gatesOf(defs).find((g) => g.id === entry.step)
  if (gate === undefined || !isTakenBack(entry.cause)) return []
  const numbers = numbersAt(before, gate, (key) => entry.items.includes(key))
  const how = entry.cause === 'corrected' ? 'found wrong' : 'taken back'
  return told(entry, `${numbers.join(', ')} was ${how}`, numbers)
}

/** Whoever goes takes along the locks they hung, also where the hold point fell before they went. */
function gone(defs: Definitions, before: State, entry: Entry, after: State): Doing[] {
  const on = peopleOnJob(after)
  const went =
    entry.type === 'job.left' ? peopleOnJob(before) : peopleOnJob(before).filter((p) => !on.includes(p))
  if (went.length === 0) return []
  const isOwn = (key: string) => went.some((person) => key.endsWith(`.${person}`))
  const own = gatesOf(defs).flatMap((gate) => hungAt(before, gate, isOwn))
  return told(entry, `${went.join(', ')} went, and may have taken own locks off`, own)
}

/** Numbers of what hangs, of these items of the gate. Paper and slings hang nowhere. */
function numbersAt(state: State, gate: GateStep, which: (key: string) => boolean): string[] {
  return Object.entries(gateState(state, gate.id).given).flatMap(([key, given]) =>
    hangs(evidenceByKey(gate, key)) && which(key) ? [given.shown] : [],
  )
}

/** Everything that hung for the gate by its last keying, also where the evidence has fallen since. */
function hungAt(state: State, gate: GateStep, which: (key: string) => boolean = () => true): string[] {
  const fallen = gateState(state, gate.id).struck.filter(({ item }) => hangs(evidenceByKey(gate, item)))
  const gone = [...fallen, ...stoodBefore(state, gate)].filter(({ item }) => which(item))
  return [...new Set([...numbersAt(state, gate, which), ...gone.map(({ shown }) => shown)])]
}
