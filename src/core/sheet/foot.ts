// The foot of the sheet, in words: which sheet, which machine, who is on, how old what lapses first is and when it does, and how long
// a wait still runs. It never calls a test good.
import type { Definitions } from '../job/definitions.ts'
import { waitEndsMs } from '../job/evidence-wait.ts'
import { evidenceByKey, gateState, gatesOf } from '../job/gate.ts'
import { agedName } from '../job/item-label.ts'
import { type Lapse, lapsesOf } from '../job/lapse.ts'
import { current, next } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import { clockOf, type Instant, minutesBetween } from '../lib/instant.ts'
import { cut, widthOf } from '../lib/text.ts'
import { list } from '../lib/wording.ts'

export interface FootText {
  /** All of it on one line. */
  readonly text: string
  readonly sheet: string
  /** The machine, and who is on the job. */
  readonly names: readonly string[]
  /** What stands on time, and an open STOP. */
  readonly stands: readonly string[]
  /** Something lapses soon: what the screen must warn of. */
  readonly warning: string | null
}

export function foot(defs: Definitions, state: State, now: Instant): FootText {
  // Before the plate was read its tag is nowhere on screen, so that it cannot be copied from here.
  const names = [
    ...(state.machineNamed && !state.plateAgain ? [defs.machine.machine] : []),
    ...(state.people.length > 0 ? [state.people.join(', ')] : []),
  ]
  const time = timeText(defs, state, now)
  const stands = [...(time === null ? [] : [time.text]), ...(openStop(state) === null ? [] : ['STOP open'])]
  const sheet = sheetText(defs, state)
  return {
    text: [sheet, ...names, ...stands].join(GAP),
    sheet,
    names,
    stands,
    warning: time?.warning ?? null,
  }
}

const GAP = '   '

/**
 * The foot within so many columns: what has no room goes as a whole, people first and then the machine. What lapses and an open STOP
 * never go: they have a line of their own before they are cut.
 */
export function footLines({ sheet, names, stands }: FootText, width: number): string[] {
  const fits = (parts: readonly string[]) => widthOf(parts.join(GAP)) <= width
  for (let kept = names.length; kept >= 0; kept--) {
    const parts = [sheet, ...names.slice(0, kept), ...stands]
    if (fits(parts)) return [parts.join(GAP)]
  }
  const beside = [...names.keys()].reverse().find((n) => fits([sheet, ...names.slice(0, n + 1)]))
  const first = [sheet, ...names.slice(0, (beside ?? -1) + 1)].join(GAP)
  return [first, ...(fits(stands) ? [stands.join(GAP)] : stands)].map((line) => cut(line, width))
}

/** The foot where a sheet has no line to spare: only what stands on time and an open STOP; the step has its number in the margin. */
export function footStands({ sheet, stands }: FootText, width: number): string[] {
  return [cut(stands.length > 0 ? stands.join(GAP) : sheet, width)]
}

function sheetText(defs: Definitions, state: State): string {
  const prompt = next(defs, state)
  // Under STOP it tells where the job stands all the same.
  const stopped = openStop(state) === null ? null : (current(defs, state)?.placed ?? null)
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? (prompt.gate ?? null) : stopped
  return placed === null
    ? `Sheet - of ${defs.steps.length}`
    : `Sheet ${placed.number} of ${defs.steps.length}`
}

/** What stands on time in any gate: what lapses first, by name, and a wait that runs. */
function timeText(
  defs: Definitions,
  state: State,
  now: Instant,
): { text: string; warning: string | null } | null {
  const lapse = lapseText(defs, state, now)
  // The foot is one line: while a wait runs it is what people watch, and a lapse that is near has a line of its own.
  const text = waitText(defs, state, now) ?? lapse?.text
  if (text !== undefined) return { text, warning: lapse?.warning ?? null }
  const fell = gatesOf(defs).some((gate) => gateState(state, gate.id).status === 'closed')
  return fell ? { text: 'Hold point fallen', warning: null } : null
}

function lapseText(defs: Definitions, state: State, now: Instant) {
  const lapses = gatesOf(defs).flatMap((gate) => lapsesOf(defs, state, gate))
  const first = Math.min(...lapses.map((lapse) => lapse.atMs))
  const [oldest] = lapses.filter((lapse) => lapse.atMs === first).sort((a, b) => a.givenMs - b.givenMs)
  if (oldest === undefined) return null
  const at = (ms: number) => clockOf({ ms, offsetMin: now.offsetMin })
  // All that goes in the same minute is named: none of it is to come as a surprise.
  const together = lapses.filter((lapse) => at(lapse.atMs) === at(first) && lapse.atMs - first < 60_000)
  const names = [...new Set(together.map(({ evidence }) => agedName(evidence)))]
  const left = first - now.ms
  const soon = left <= defs.machine.site.gas.warn_before.si * 1000
  return {
    text: inFoot(oldest, at(first), now),
    warning: soon && left > 0 ? warningText(names, at(first), left) : null,
  }
}

/** Short, as a name of any length would push the time off the sheet; the warning has the names. */
function inFoot({ evidence, givenMs, atMs }: Lapse, at: string, now: Instant): string {
  if (evidence.kind !== 'gas') return atMs <= now.ms ? `Lapsed ${at}` : `Next lapse ${at}`
  return atMs <= now.ms ? `Gas lapsed ${at}` : `Gas ${minutesBetween(givenMs, now.ms)} min old, lapses ${at}`
}

function warningText(names: readonly string[], at: string, leftMs: number): string {
  const verb = names.length === 1 ? 'lapses' : 'lapse'
  return `${capital(list(names))} ${verb} at ${at}, in ${Math.max(1, minutesBetween(0, leftMs))} min: finish and come out.`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** Ends of the waits that are running. */
function waitEnds(defs: Definitions, state: State): number[] {
  return gatesOf(defs).flatMap((gate) => {
    const { begun, given } = gateState(state, gate.id)
    return Object.entries(begun).flatMap(([key, one]) => {
      const evidence = evidenceByKey(gate, key)
      return given[key] !== undefined || evidence?.kind !== 'wait' ? [] : [waitEndsMs(evidence, one)]
    })
  })
}

function waitText(defs: Definitions, state: State, now: Instant): string | null {
  const ends = waitEnds(defs, state)
  if (ends.length === 0) return null
  const left = Math.max(...ends) - now.ms
  if (!(left > 0)) return 'Wait is over'
  return `Wait: ${minutesUp(left)} min left`
}

/** Whole minutes, rounded up, so that it never says less than is left. */
function minutesUp(ms: number): number {
  return Math.ceil(ms / 60_000)
}

/** The next moment at which the foot or the job changes by time alone, in ms from now; null when nothing runs. */
export function nextChangeMs(defs: Definitions, state: State, now: Instant): number | null {
  const lapses = gatesOf(defs).flatMap((gate) =>
    lapsesOf(defs, state, gate).map((lapse) => lapse.atMs - now.ms),
  )
  const waits = waitEnds(defs, state).map((end) => end - now.ms)
  if (lapses.length === 0 && waits.length === 0) return null
  const warn = defs.machine.site.gas.warn_before.si * 1000
  const moments = [
    60_000 - (now.ms % 60_000),
    ...lapses.map((left) => (left - warn > 0 ? left - warn : left)),
    // In the middle of a wall-clock minute: what is left of a wait changes by its own minutes.
    ...waits.flatMap((left) => (left > 0 && Number.isFinite(left) ? [left % 60_000 || 60_000] : [])),
  ]
  return Math.max(0, Math.min(...moments))
}
