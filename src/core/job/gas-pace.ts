// Gas figures of two places keyed sooner one after the other than a meter can have settled at the second: a question for whoever
// witnesses and for the lead. It holds nothing back: whoever waits for a program at an opening learns to key later what was read sooner.
import { type Definitions, gasLimitById } from './definitions.ts'
import { type GateStep, gateState, itemByKey } from './gate.ts'
import type { State } from './state.ts'

/** A minute for each place: hose, pump and cell have to come to what is there. Common practice, no source. */
export const SETTLES_S = 60

export interface GasPace {
  /** From the first figure of one place to the first of the next, in whole seconds; the shortest of them. */
  readonly seconds: number
  /** Entries of those two figures. */
  readonly seqs: readonly [number, number]
}

/**
 * Of what stands shown for a hold point; null where each place had its minute. Only the first figure of a place counts, as one meter
 * shows several gases at once. Never of answers out of a file, from paper, or of a practice machine, which answers at once.
 */
export function gasPace(defs: Definitions, state: State, gate: GateStep): GasPace | null {
  if (state.scripted || state.paper !== null || state.practice !== null) return null
  const firsts = new Map<string, { seq: number; atMs: number }>()
  const given = Object.entries(gateState(state, gate.id).given).sort(([, a], [, b]) => a.seq - b.seq)
  for (const [key, { seq, atMs }] of given) {
    const evidence = itemByKey(defs, gate, key)?.evidence
    const place = evidence?.kind === 'gas' ? gasLimitById(defs, evidence.limit)?.place : undefined
    if (place !== undefined && !firsts.has(place)) firsts.set(place, { seq, atMs })
  }
  const inOrder = [...firsts.values()]
  const paces = inOrder.flatMap((now, n): GasPace[] => {
    const last = inOrder[n - 1]
    if (last === undefined) return []
    // A clock that was set back tells nothing.
    const seconds = Math.floor((now.atMs - last.atMs) / 1000)
    return seconds >= 0 && seconds < SETTLES_S ? [{ seconds, seqs: [last.seq, now.seq] }] : []
  })
  return paces.sort((a, b) => a.seconds - b.seconds)[0] ?? null
}
