// What the one who goes tells the one who comes, read off the state alone: done and next, what hangs on the machine, what is
// open. It says what was tested and when, and never that it is good.
import { clockOf, readStamp } from '../lib/instant.ts'
import { leftBehind } from './as-left.ts'
import { fileText } from './attachment.ts'
import type { Definitions, PlacedStep } from './definitions.ts'
import { otherLines } from './elsewhere-words.ts'
import { fellWhen } from './fell-with.ts'
import { type GateStep, gateState, gatesOf, type Item, itemByKey } from './gate.ts'
import { itemLabel } from './item-label.ts'
import { lapsesOf } from './lapse.ts'
import { fallenAt, hanging, offLines, onLines, stoodBefore } from './locks-on.ts'
import { applicability, isComplete, next } from './next.ts'
import { fateOf, nonconformances } from './nonconformance.ts'
import { pendingPoint } from './point.ts'
import { takenInLines } from './record-words.ts'
import { openThings, thingText } from './register.ts'
import { labelsOf, seenAt } from './seen.ts'
import { openStop, type State } from './state.ts'
import { isVoidSince } from './voids.ts'

/** Lines of the summary, each to stand for itself on paper. */
export function handOverLines(defs: Definitions, state: State): string[] {
  return [
    `${defs.procedure.title} on ${defs.machine.machine}, job ${state.job}`,
    ...endLines(state),
    people(state),
    ...progress(defs, state),
    // Before what hangs: a note may tell of it.
    ...noteLines(state),
    ...lockAndGateLines(defs, state),
    ...openThings(state).map((thing) => `Placed and not accounted for: ${thingText(thing)}`),
    ...attachedLine(state),
    ...takenInLines(state),
    ...otherLines(state),
    ...stopLines(state),
    ...doubtLines(defs, state),
    ...judgedLines(defs, state),
    ...findingLines(defs, state),
    ...openLines(defs, state),
  ]
}

/** How a job that has ended did, and what fell since; and every instrument found out of calibration on it. */
function endLines({ closed, fellFrom, asLeft, doubted }: State): string[] {
  const left = asLeft === null ? '' : ` as found, ${leftBehind(asLeft)}`
  const end =
    fellFrom === null
      ? `Closed with ${closed}${left}`
      : `Closed with ${fellFrom}${left}, FALLEN TO ${closed} since`
  const out = Object.keys(doubted)
  return [
    ...(closed === null ? [] : [end]),
    ...(out.length === 0 ? [] : [`Out of calibration: ${out.join(', ')}; nothing read with it stands`]),
  ]
}

/** What no lead has decided, and points nobody has signed. */
function openLines(defs: Definitions, state: State): string[] {
  const at = (id: string) => named(defs.steps.find((s) => s.id === id))
  const all = nonconformances(defs, state)
  const undecided = all.filter((nc) => nc.stands && nc.decided === null)
  const fell = all.flatMap((nc) => {
    const fate = fateOf(state, nc)
    return fate === null
      ? []
      : [
          `${nc.name} at ${at(nc.step)}, ${nc.word}: fell ${fellWhen(defs, nc.step, fate.fellWith)}; ${fate.now ?? 'nothing'} since; no decision is due on it`,
        ]
  })
  const points = defs.steps.filter(
    (s) => isComplete(state, s) && applicability(defs, state, s) === 'do' && pendingPoint(state, s) !== null,
  )
  return [
    ...fell,
    ...undecided.map((nc) => `Open: ${nc.name} at ${at(nc.step)}, no disposition`),
    ...points.map((s) => `Open: ${named(s)}, its ${pendingPoint(state, s)?.kind} point is not signed`),
    ...state.deviations.map((d) => `Deviation permitted at ${at(d.step)}: ${d.what}, by ${d.person}`),
  ]
}

/** Whatever was told of on the way; newest first, as that is what is met next. */
export const noteLines = ({ notes }: State): string[] =>
  notes.toReversed().map((one) => `Note of ${notedWhen(one)}: ${one.text}`)

/** `2026-03-14 06:52, RO`. */
export const notedWhen = ({ at, by }: State['notes'][number]): string =>
  `${at.slice(0, 10)} ${at.slice(11, 16)}${by === null ? '' : `, ${by}`}`

/** Counted, as the paper says how many there have to be; each is listed on the sheet. */
function attachedLine({ files }: State): string[] {
  const last = files[files.length - 1]
  return last === undefined ? [] : [`Files attached: ${files.length}, the last ${fileText(last)}`]
}

function people(state: State): string {
  const others = state.people.filter((p) => p !== state.doer)
  const keyboard = state.doer === null ? 'nobody at the keyboard' : `${state.doer} at the keyboard`
  return `On the job: ${[keyboard, ...others].join(', ')}`
}

function progress(defs: Definitions, state: State): string[] {
  const asked = defs.steps.filter((s) => applicability(defs, state, s) !== 'skip')
  const done = asked.filter((s) => isComplete(state, s))
  const fell = asked.filter((s) => !isComplete(state, s) && isVoidSince(state, s)).length
  const prompt = next(defs, state)
  const now = 'step' in prompt ? prompt.step : 'before' in prompt ? prompt.before : null
  const out = defs.steps.length - asked.length
  return [
    `Done: ${done.length} of ${defs.steps.length} sheets${out === 0 ? '' : `, ${out} left out by rule`}${done.length === 0 ? '' : `, last ${named(done[done.length - 1])}`}${fell === 0 ? '' : `; ${fell} more done and void since`}`,
    `Next: ${now === null ? 'no step' : named(now)}`,
  ]
}

const named = (placed: PlacedStep | undefined) =>
  placed === undefined ? '' : `${placed.number} ${placed.step.title}`

/** No hold point of a job that has ended is asked again; what may still hang is all that is left of them. */
function lockAndGateLines(defs: Definitions, state: State): string[] {
  const found = hanging(defs, state)
  const off = offLines(defs, found)
  if (state.closed === null) {
    const gone = new Set(found.off.map(({ what }) => what.shown))
    return [...gatesOf(defs).flatMap((gate) => gateLines(defs, state, gate, gone)), ...off]
  }
  if (gatesOf(defs).length === 0) return []
  const on = onLines(defs, found)
  return [
    'This job has ended: no hold point of it is asked again.',
    ...(on.length === 0 ? ['Still on by the record: no lock, blind or tag'] : on),
    ...off,
  ]
}

/** What hangs on the machine is told also where its evidence has fallen: a lock does not come off by that. */
function gateLines(defs: Definitions, state: State, gate: GateStep, gone: ReadonlySet<string>): string[] {
  const { status, given } = gateState(state, gate.id)
  const all = [
    ...Object.entries(given).map(([key, g]) => ({ key, shown: g.shown, isVoid: false })),
    // One that another was keyed in place of may hang beside it.
    ...[...fallenAt(state, gate), ...stoodBefore(state, gate)].map((s) => ({
      key: s.item,
      shown: s.shown,
      isVoid: true,
    })),
  ].flatMap((one) => {
    const item = itemByKey(defs, gate, one.key)
    return item === null ? [] : [{ ...one, item }]
  })
  const hangs = ({ evidence }: Item) => evidence.kind === 'locks' || evidence.kind === 'numbers'
  const devices = all
    .filter(({ item, shown }) => hangs(item) && !gone.has(shown))
    .map(({ item, shown, isVoid }) => `${itemLabel(defs, item)}: ${shown}${isVoid ? ', evidence void' : ''}`)
  const besides = all
    .filter(({ item, isVoid }) => !isVoid && !hangs(item) && item.evidence.kind !== 'gas')
    .map(({ item, shown }) => (item.evidence.kind === 'words' ? shown : `${itemLabel(defs, item)} ${shown}`))
  const word = status === 'open' ? 'complete' : status === 'closed' ? 'FALLEN' : 'not complete'
  return [
    `Hold point ${named(gate)}: ${word}; all of it is asked again after this`,
    ...devices,
    ...(besides.length === 0 ? [] : [`Shown besides: ${besides.join(', ')}`]),
    ...gasLines(defs, state, gate),
  ]
}

function gasLines(defs: Definitions, state: State, gate: GateStep): string[] {
  if (!gate.step.evidence.some((evidence) => evidence.kind === 'gas')) return []
  const [first, ...more] = lapsesOf(defs, state, gate).filter(({ evidence }) => evidence.kind === 'gas')
  if (first === undefined) return ['Gas test: none stands']
  const oldest = more.reduce((a, b) => (b.givenMs < a.givenMs ? b : a), first)
  const offsetMin = readStamp(state.lastAt)?.offsetMin ?? 0
  const at = (ms: number) => clockOf({ ms, offsetMin })
  return [
    `Gas test: oldest reading taken ${at(oldest.givenMs)}, would lapse ${at(oldest.atMs)}; it ends with this hand-over`,
  ]
}

function stopLines(state: State): string[] {
  const open = openStop(state)
  return open === null ? ['STOP: none open'] : [`STOP OPEN: ${open.why ?? 'its cause is not told yet'}`]
}

function doubtLines(defs: Definitions, state: State): string[] {
  const at = (step: string) => named(defs.steps.find((s) => s.id === step))
  const { doubt, late } = state
  return [
    ...(doubt === null ? [] : [`Doubted and open: ${doubt.typed.trim()} at ${at(doubt.step)}, ${doubt.why}`]),
    ...(late === null
      ? []
      : [`Keyed after the hold point fell, open: ${late.typed.trim()} at ${at(late.step)}`]),
  ]
}

function judgedLines(defs: Definitions, state: State): string[] {
  return defs.steps.flatMap((placed): string[] => {
    const verdict = state.verdicts[placed.id]
    if (verdict !== undefined)
      return [`${named(placed)}: ${verdict.void ? 'VOID' : verdict.verdict.result.verdict}`]
    const disposition = state.dispositions[placed.id]
    if (disposition === undefined) return []
    const { choice, person, why, radio, countersigned } = disposition
    const how =
      radio === null ? '' : ` by radio, keyed by ${radio}${countersigned ? '' : ', NOT COUNTERSIGNED'}`
    return [`${named(placed)}: ${disposition.void ? 'VOID' : `${choice} by ${person}${how}, ${why}`}`]
  })
}

function findingLines(defs: Definitions, state: State): string[] {
  return defs.steps.flatMap((placed): string[] => {
    if (placed.step.kind !== 'observe') return []
    const seen = state.done[placed.id]
    const condition = placed.step.conditions.find((c) => c.id === seen)
    const note = state.findings[placed.id]
    if (condition === undefined || (condition.finding !== true && note === undefined)) return []
    return [
      `Found at ${named(placed)}: ${labelsOf(defs, placed.id, seenAt(state, placed.id))}${note === undefined ? '' : `, ${note}`}`,
    ]
  })
}
