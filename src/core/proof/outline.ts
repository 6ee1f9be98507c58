// The outline of a state in normal form: a line of text with all that can make a difference to which prompt comes next and
// which gates stand. Two states with one outline are taken for one. Left out are times of day, sizes of readings beyond
// the place they settle, and who of several people with one role it is. That nothing of this matters is tested by walking
// at random and finding every outline, and every step between two of them, in what was searched.
import type { Instrument } from '../definition/instruments.ts'
import type { Definitions } from '../job/definitions.ts'
import { asKind } from '../job/definitions.ts'
import { type GateStep, gatesOf, type Item, itemsOf } from '../job/gate.ts'
import { lapsesOf } from '../job/lapse.ts'
import { type Current, current, next } from '../job/next.ts'
import { openPlace, placeResult } from '../job/places.ts'
import { EMPTY_GATE, type State, type StopState } from '../job/state.ts'
import { isReleasable, openStops } from '../job/stop-causes.ts'
import { assertNever } from '../lib/result.ts'
import type { Watch } from './account.ts'
import { isCounted } from './normal.ts'
import { rulesOf, wordClasses, wordedSteps } from './words.ts'

export function outlineOf(defs: Definitions, state: State, watch: Watch): string {
  if (state.closed !== null) return 'closed'
  const who = labels(state.doer)
  return [
    state.left ? 'left' : '',
    openStops(state)
      .map((stop) => stopOutline(defs, stop))
      .join('&'),
    who(state.doer),
    state.machineNamed ? '' : 'unnamed',
    state.plateAgain ? 'plate' : '',
    next(defs, state).kind === 'pick' ? 'pick' : '',
    state.cutShort ? 'cut' : '',
    // What waits belongs to the current step.
    state.doubt === null ? '' : 'doubt',
    state.late === null ? '' : 'late',
    positionOf(state, current(defs, state)),
    isCounted(defs) ? `${state.people.length}` : '',
    ...gatesOf(defs).map((gate) => gateOutline(defs, state, gate, who)),
    lapseOrder(defs, state),
    wordsOutline(defs, state),
    watchOutline(defs, state, watch),
  ].join('|')
}

/** The outline of a state that nothing was forgotten of: all its answers besides. */
export function outlineInFull(defs: Definitions, state: State, watch: Watch): string {
  const readings = Object.entries(state.readings).map(([place, list]) => {
    const standing = list.filter((r) => r.correctedBy === null)
    return `${place}${standing.length}${new Set(standing.map((r) => r.si)).size}`
  })
  const verdicts = Object.entries(state.verdicts).map(
    ([id, v]) => `${id}${v.void ? '-' : v.verdict.result.verdict}`,
  )
  const decided = Object.entries(state.dispositions).map(([id, d]) => `${id}${d.void ? '-' : d.choice}`)
  const all = [state.done, state.seats, Object.keys(state.notApplicable), readings, verdicts, decided]
  return `${outlineOf(defs, state, watch)}|${JSON.stringify(all)}`
}

/** Who it is in relation to whoever is at the keys: no rule of a gate looks at the role of the doer, or of who gave what. */
function labels(doer: string | null): (id: string | null) => string {
  const known = new Map<string | null, string>([
    [null, '-'],
    [doer, doer === null ? '-' : 'd'],
  ])
  return (id) => {
    const label = known.get(id) ?? `p${known.size}`
    known.set(id, label)
    return label
  }
}

function roleOf(defs: Definitions, id: string | null): string {
  return id === null ? '-' : (defs.crew.crew.find((p) => p.id === id)?.role ?? '?')
}

/** What of a STOP says who may release it. */
function stopOutline(defs: Definitions, stop: StopState): string {
  const cause = stop.cause === null ? 'raised' : isReleasable(stop.cause) ? 'may be released' : 'lasts'
  const callers = [...stop.calledBy.map((id) => roleOf(defs, id)), ...(stop.callerUnknown ? ['?'] : [])]
  return `stop ${roleOf(defs, stop.by)} ${cause} ${callers.join('+')}`
}

/** The step that the job stands at, and how far it has come there. */
function positionOf(state: State, now: Current): string {
  // In brackets, as no id of a step can be: a step may be called end.
  if (now === null) return state.things.length === 0 ? '(end)' : '(end, things)'
  const at = now.placed
  if (now.state === 'point' || now.state === 'review') return `${at.id} ${now.state}`
  if (at.step.kind !== 'read') return at.id
  const read = asKind(at, 'read')
  const place = openPlace(read, state)
  return place === null ? at.id : `${place.key}+${placeResult(read, place, state).readings.length}`
}

function gateOutline(
  defs: Definitions,
  state: State,
  gate: GateStep,
  who: (id: string | null) => string,
): string {
  const g = state.gates[gate.id] ?? EMPTY_GATE
  const given = itemsOf(defs, state, gate).map((item) => {
    const e = g.given[item.key]
    const begun = g.begun[item.key]
    return e === undefined
      ? `.${begun === undefined ? '' : who(begun.by)}`
      : `${who(e.by)}${detail(defs, gate, item, e)}${e.person === null ? '' : who(e.person)}`
  })
  return `${g.status}${g.mustClear ? '!' : ''} ${given.join(' ')}`
}

/** What of the evidence itself other evidence hangs on. */
function detail(
  defs: Definitions,
  gate: GateStep,
  { evidence }: Item,
  e: { readonly si: number | null },
): string {
  switch (evidence.kind) {
    case 'gas':
      if (!gate.step.evidence.some((o) => o.kind === 'gas' && o.oxygen === evidence.id)) return ''
      return defs.instruments.instruments.some((i) => isBlind(i, e.si)) ? 'b' : ''
    // A load is held against its rating, and the other way about: what is asked second is tried on either side of it.
    case 'lift':
    case 'locks':
    case 'numbers':
    case 'words':
    case 'measured':
    case 'wait':
    case 'witness':
      return ''
    default:
      return assertNever(evidence)
  }
}

function isBlind(instrument: Instrument, oxygen: number | null): boolean {
  return instrument.kind === 'gas_meter' && !((oxygen ?? Number.NaN) >= instrument.needs_oxygen.at_least.si)
}

/** In which order what was given will lapse: gas by the first of it, as it falls whole, everything else each by itself. */
function lapseOrder(defs: Definitions, state: State): string {
  const first = new Map<string, number>()
  for (const gate of gatesOf(defs)) {
    for (const { key, evidence, atMs } of lapsesOf(defs, state, gate)) {
      const name = evidence.kind === 'gas' ? 'gas' : evidence.kind === 'lift' ? 'lift' : key
      first.set(name, Math.min(atMs, first.get(name) ?? Number.POSITIVE_INFINITY))
    }
  }
  const lapses = [...first].sort(([a, at], [b, bt]) => at - bt || (a < b ? -1 : 1))
  return lapses.map(([name, at], i) => `${i > 0 && lapses[i - 1]?.[1] === at ? '=' : '<'}${name}`).join('')
}

/** Words of steps behind that a rule can still tell apart, and what rules over figures are taken to come to. */
function wordsOutline(defs: Definitions, state: State): string {
  const words = wordedSteps(defs).flatMap((placed) => {
    const word =
      state.verdicts[placed.id]?.verdict.result.verdict ??
      state.dispositions[placed.id]?.choice ??
      state.done[placed.id]
    const kind = word === undefined ? null : wordClasses(defs, placed).classOf(word)
    return kind === null ? [] : [`${placed.id}=${kind}`]
  })
  const ruled = rulesOf(defs).flatMap((p) => {
    const outcome = defs.ruled?.(state, p)
    return outcome === undefined ? [] : [`${p.id}?${outcome}`]
  })
  return [...words, ...ruled].join(' ')
}

/** The account of the invariants, as far as it differs from what the engine has: nothing, where the engine is right. */
function watchOutline(defs: Definitions, state: State, watch: Watch): string {
  const gates = gatesOf(defs).map((gate) => {
    const account = watch.gates.get(gate.id)
    const g = state.gates[gate.id] ?? EMPTY_GATE
    const keys = itemsOf(defs, state, gate).map((item) => item.key)
    const own = keys.filter((key) => account?.given.has(key) === true).join()
    const theirs = keys.filter((key) => g.given[key] !== undefined).join()
    return `${account?.opened === true ? 'o' : ''}${account?.letIn === true ? 'i' : ''}${own === theirs ? '' : own}`
  })
  return `${gates.join(',')}${watch.stop === null ? '' : 's'}`
}
