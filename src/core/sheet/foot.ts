// The foot of the sheet, in words: which sheet, which machine, who is on, how old the gas test is and when it lapses.
// It never calls a test good.
import type { Definitions } from '../job/definitions.ts'
import { gateState, gatesOf, lapsesAt, oldestGasMs } from '../job/gate.ts'
import { next } from '../job/next.ts'
import { openStop, type State } from '../job/state.ts'
import { clockOf, type Instant, minutesBetween } from '../lib/instant.ts'

export interface FootText {
  readonly text: string
  /** A gas test lapses soon: what the screen must warn of. */
  readonly warning: string | null
}

export function foot(defs: Definitions, state: State, now: Instant): FootText {
  // Before the plate was read its tag is nowhere on screen, so that it cannot be copied from here.
  const parts = [sheetText(defs, state), ...(state.machineNamed ? [defs.machine.machine] : [])]
  if (state.people.length > 0) parts.push(state.people.join(', '))
  const gas = gasText(defs, state, now)
  if (gas !== null) parts.push(gas.text)
  if (openStop(state) !== null) parts.push('STOP open')
  return { text: parts.join('   '), warning: gas?.warning ?? null }
}

function sheetText(defs: Definitions, state: State): string {
  const prompt = next(defs, state)
  const placed = 'step' in prompt ? prompt.step : 'gate' in prompt ? prompt.gate : null
  return placed === null
    ? `Sheet - of ${defs.steps.length}`
    : `Sheet ${placed.number} of ${defs.steps.length}`
}

function gasText(
  defs: Definitions,
  state: State,
  now: Instant,
): { text: string; warning: string | null } | null {
  for (const gate of gatesOf(defs)) {
    const lapse = lapsesAt(defs, state, gate)
    const oldest = oldestGasMs(defs, state, gate)
    if (lapse === null || oldest === null) {
      if (gateState(state, gate.id).status === 'closed') return { text: 'Hold point fallen', warning: null }
      continue
    }
    const at = clockOf({ ms: lapse, offsetMin: now.offsetMin })
    const left = lapse - now.ms
    const soon = left <= defs.machine.site.gas.warn_before.si * 1000
    return {
      text: left <= 0 ? `Gas lapsed ${at}` : `Gas ${minutesBetween(oldest, now.ms)} min old, lapses ${at}`,
      warning:
        soon && left > 0
          ? `Gas test lapses at ${at}, in ${Math.max(1, minutesBetween(now.ms, lapse))} min: finish and come out.`
          : null,
    }
  }
  return null
}

/** The next moment at which the foot or the job changes by time alone, in ms from now; null when nothing runs. */
export function nextChangeMs(defs: Definitions, state: State, now: Instant): number | null {
  const lapses = gatesOf(defs).flatMap((gate) => lapsesAt(defs, state, gate) ?? [])
  if (lapses.length === 0) return null
  const untilLapse = Math.min(...lapses) - now.ms
  const untilWarning = untilLapse - defs.machine.site.gas.warn_before.si * 1000
  const next = untilWarning > 0 ? untilWarning : untilLapse
  return Math.max(0, Math.min(next, 60_000 - (now.ms % 60_000)))
}
