// What others on the machine did since the last look, and what falls here for it. Which job, which entry and which hash go
// on record with it, so that the log tells by itself why a hold point fell.
import type { Definitions } from './definitions.ts'
import {
  counts,
  type Doing,
  hazardNames,
  type JobSeen,
  jobName,
  keyOf,
  type NamedHazard,
  type OtherJob,
  type Others,
  ourHazards,
} from './elsewhere.ts'
import type { Body } from './entries.ts'
import { isSameDevice, isSpelledAlike } from './evidence-numbers.ts'
import { evidenceByKey, type GateStep, gateState, gatesOf, hangs, provesAt, provingAny } from './gate.ts'
import { fallsWith } from './lapse.ts'
import type { State } from './state.ts'

/** What falls at a gate, by key, and why; null: this does not touch the gate. */
interface Fall {
  readonly why: string
  readonly keys: (state: State, gate: GateStep) => readonly string[] | null
}

/** Everything that a look brings, one other job after the other; the state of each step is the one before it. */
export function newsFrom(
  defs: Definitions,
  state: State,
  others: Others,
  add: (bodies: readonly Body[]) => State,
): void {
  let now = state
  for (const other of others) now = add(newsOf(defs, now, other))
  const found = new Set(others.map(keyOf))
  for (const [key, known] of Object.entries(now.elsewhere))
    if (known.closed === null && !found.has(key)) now = add(gone(defs, now, known))
}

function newsOf(defs: Definitions, state: State, other: OtherJob): readonly Body[] {
  const { doings, ...seen } = other
  const known = state.elsewhere[keyOf(other)]
  if (known === undefined && seen.closed !== null && seen.unread === null && !hasAnything(state)) return []
  const since =
    known === undefined ? (hasAnything(state) ? doings : []) : doings.filter((d) => d.seq > known.upTo)
  if (known !== undefined && since.length === 0 && alike(known, seen)) return []
  const falls = counts(state, other) ? fallsFor(defs, state, known ?? null, seen, since) : []
  return [
    { type: 'elsewhere.seen', ...seen, ...(since.length === 0 ? {} : { since }) },
    ...gatesOf(defs).flatMap((gate) => closing(defs, state, gate, falls)),
  ]
}

/** Its log is not there any more, or is of another machine, and it had not ended: nobody knows what it did since. */
function gone(defs: Definitions, state: State, known: JobSeen): readonly Body[] {
  const why = `${jobName(known)} had not ended and is not among the jobs of this machine any more, so nobody knows what it took off`
  const falls = counts(state, known) ? [whole(why)] : []
  return [
    { type: 'elsewhere.gone', job: known.job, record: known.record },
    ...gatesOf(defs).flatMap((gate) => closing(defs, state, gate, falls)),
  ]
}

/** Nothing here rests on anything yet, so nothing can fall. */
function hasAnything(state: State): boolean {
  return Object.values(state.gates).some(
    (gate) => gate.status === 'open' || Object.keys({ ...gate.given, ...gate.begun }).length > 0,
  )
}

/** Entries that change none of this need not go on our record. */
function alike(known: JobSeen, seen: JobSeen): boolean {
  return standing(known) === standing(seen)
}

/** In one order, as reading an entry back may change that of its keys. */
function standing(one: JobSeen): string {
  const { procedure, tag, told, people, left, stop, inside, letting, closed, unread, placed } = one
  const ids = (hazards: readonly NamedHazard[]) => hazards.map((h) => [h.id, h.name])
  const step = letting === null ? null : [letting.step, ids(letting.hazards)]
  return JSON.stringify([
    procedure,
    tag,
    told,
    people,
    left,
    stop,
    ids(inside),
    step,
    closed,
    unread,
    placed ?? [],
  ])
}

function fallsFor(
  defs: Definitions,
  state: State,
  known: JobSeen | null,
  seen: JobSeen,
  since: readonly Doing[],
): readonly Fall[] {
  const name = jobName(seen)
  const falls = since.map((doing) => fallFor(defs, state, name, doing))
  if (seen.unread !== null && seen.unread !== known?.unread)
    falls.push(whole(`the log of ${name} cannot be read: ${seen.unread}`))
  // What is so now counts even if no entry of its log told of its beginning.
  if (seen.stop !== null && known?.stop == null && !since.some((d) => d.what === 'stop'))
    falls.push(whole(`STOP is open in ${name}`))
  const { letting } = seen
  const told = since.some((d) => d.what === 'let-in' && d.step === letting?.step)
  if (letting !== null && known?.letting?.step !== letting.step && !told)
    falls.push(letIn(defs, name, letting))
  return falls
}

function fallFor(defs: Definitions, state: State, name: string, doing: Doing): Fall {
  switch (doing.what) {
    case 'stop':
      return whole(`STOP was called in ${name}`)
    case 'let-in':
      return letIn(defs, name, doing)
    case 'removed': {
      const why = `${doing.clause}, in ${name}`
      const off = doing.numbers
      const isKnown = gatesOf(defs).some((gate) => numbered(state, gate, off, isSpelledAlike).length > 0)
      // What cannot be told by a number may have held anything.
      return isKnown || doing.told ? { why, keys: (at, gate) => restingOn(at, gate, off) } : whole(why)
    }
  }
}

function whole(why: string): Fall {
  return { why, keys: (state, gate) => everything(state, gate) }
}

function letIn(
  defs: Definitions,
  name: string,
  { step, hazards }: { readonly step: string; readonly hazards: readonly NamedHazard[] },
): Fall {
  const ours = ourHazards(defs, hazards)
  const what = `${step} in ${name} can let in ${hazardNames(hazards)}`
  if (ours === null) return whole(`${what}, and this procedure does not name all of that`)
  return {
    why: what,
    keys: (state, gate) => (gate.step.holds.some((h) => ours.has(h)) ? provingAny(state, gate, ours) : null),
  }
}

function everything(state: State, gate: GateStep): string[] {
  const { given, begun } = gateState(state, gate.id)
  return Object.keys({ ...given, ...begun })
}

/** Items whose number came off, and with them all that proves what they held. */
function restingOn(state: State, gate: GateStep, off: readonly string[]): string[] | null {
  const keys = numbered(state, gate, off, isSameDevice)
  if (keys.length === 0) return null
  const hazards = keys.flatMap((key) => {
    const evidence = evidenceByKey(gate, key)
    return evidence === null ? [] : provesAt(gate, evidence)
  })
  return provingAny(state, gate, new Set(hazards))
}

/** Known by its number is what is written so; what falls is also what may be the same, written otherwise. */
function numbered(
  state: State,
  gate: GateStep,
  off: readonly string[],
  isSame: (one: string, other: string) => boolean,
): string[] {
  return Object.entries(gateState(state, gate.id).given).flatMap(([key, { shown }]) => {
    const evidence = evidenceByKey(gate, key)
    const hasNumber = hangs(evidence) || (evidence?.kind === 'lift' && key.endsWith('.sling'))
    return hasNumber && off.some((number) => isSame(number, shown)) ? [key] : []
  })
}

function closing(defs: Definitions, state: State, gate: GateStep, falls: readonly Fall[]): Body[] {
  const touching = falls.flatMap(({ why, keys }) => {
    const found = keys(state, gate)
    return found === null ? [] : [{ why, found }]
  })
  if (touching.length === 0) return []
  const items = fallsWith(
    defs,
    state,
    gate,
    touching.flatMap(({ found }) => found),
  )
  if (gateState(state, gate.id).status !== 'open' && items.length === 0) return []
  const why = [...new Set(touching.map((t) => t.why))].join('; ')
  return [{ type: 'gate.closed', step: gate.id, cause: 'elsewhere', items, why }]
}
