// What did not conform: every verdict but ACCEPT and every finding that its procedure marks as one, numbered in the order
// of entry. A number is never given twice, also when what it stands for has become void.
import type { Definitions } from './definitions.ts'
import type { FellWith } from './fell-with.ts'
import type { DispositionState, State } from './state.ts'

export interface Nonconformance {
  /** `NC-1`. */
  readonly name: string
  readonly seq: number
  readonly step: string
  /** The verdict, or the id of the condition found. */
  readonly word: string
  readonly stands: boolean
  /** The disposition about it that stands, or null: it is open. */
  readonly decided: DispositionState | null
}

export function nonconformances(defs: Definitions, state: State): Nonconformance[] {
  return state.raised
    .filter(({ step, word }) => conformsNot(defs, step, word))
    .map(({ seq, step, word, voidBy }, i) => ({
      name: `NC-${i + 1}`,
      seq,
      step,
      word,
      stands: voidBy === null,
      decided: voidBy === null ? decidedAbout(state, step, seq) : null,
    }))
}

/** What became of one that no longer stands: what it rests on fell, and what its step came to since. Null: it stands. */
export function fateOf(
  state: State,
  nc: Nonconformance,
): { readonly fellWith: FellWith; readonly now: string | null } | null {
  const fellWith = state.raised.find(({ seq }) => seq === nc.seq)?.voidWith ?? null
  if (fellWith === null) return null
  const since = state.raised.find((r) => r.step === nc.step && r.seq > nc.seq && r.voidBy === null)
  return { fellWith, now: since?.word ?? null }
}

function conformsNot(defs: Definitions, id: string, word: string): boolean {
  const step = defs.steps.find((s) => s.id === id)?.step
  if (step?.kind === 'judge') return word !== 'ACCEPT'
  return step?.kind === 'observe' && step.conditions.some((c) => c.id === word && c.finding === true)
}

/** Findings that stand and that no lead has decided on: the job does not end before. */
export function openFindings(defs: Definitions, state: State): Nonconformance[] {
  return nonconformances(defs, state).filter(
    ({ step, stands, decided }) =>
      stands && decided === null && defs.steps.find(({ id }) => id === step)?.step.kind === 'observe',
  )
}

/**
 * What keeps a gate shut that wants every finding decided: whatever stands and no lead has decided on, has put on hold, or has
 * only spoken of by radio, as no word by radio opens a gate.
 */
export function undecided(defs: Definitions, state: State): Nonconformance[] {
  const isDecided = (d: DispositionState) => d.choice !== 'hold' && (d.radio === null || d.countersigned)
  return nonconformances(defs, state).filter(
    ({ stands, decided }) => stands && (decided === null || !isDecided(decided)),
  )
}

/** The last disposition that stands about what the step came to; one given before that entry was about something else. */
export function decidedAbout(state: State, step: string, since = -1): DispositionState | null {
  const all = Object.values(state.dispositions).filter((d) => d.about === step && !d.void && d.seq > since)
  return all.reduce<DispositionState | null>((last, d) => (d.seq > (last?.seq ?? since) ? d : last), null)
}
