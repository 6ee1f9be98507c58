// Verdicts that stand, what was seen, what did not conform, and what a lead decided.
import { coursesOf } from '../../job/as-left.ts'
import { authorityText } from '../../job/authority.ts'
import { type Definitions, stepById } from '../../job/definitions.ts'
import type { Entry } from '../../job/entries.ts'
import { applicability } from '../../job/next.ts'
import { nonconformances } from '../../job/nonconformance.ts'
import type { DispositionState, State } from '../../job/state.ts'
import { validityText } from '../../job/validity.ts'
import { besidesRows } from '../../sheet/besides-rows.ts'
import { doneText } from '../../sheet/closing-rows.ts'
import { becauseRows } from '../../sheet/verdict-block.ts'
import type { Report } from '../schema.ts'
import { numbered } from './readings.ts'

export function verdictsOf(defs: Definitions, state: State, entries: readonly Entry[]): Report['verdicts'] {
  return coursesOf(defs, state).flatMap(({ judge, found, decided, isAgain, again, left, readAgain }) => {
    const verdict = state.verdicts[judge.id]
    if (verdict === undefined) return []
    return [
      {
        number: String(judge.number),
        step: judge.id,
        title: judge.step.title,
        word: found,
        isAgain,
        because: [...becauseRows(defs, verdict.verdict), ...besidesRows(defs, state, judge.id)].map(
          ({ text }) => text.trim(),
        ),
        decided: decided === null ? null : doneText(decided, again !== null || readAgain.length > 0),
        left,
        readAgain: readAgain.length > 0,
        seq: verdict.seq,
        at: entries[verdict.seq]?.at ?? '',
      },
    ]
  })
}

/** Verdicts that fell with what they rest on and were not given anew: none of them is as if it had never been. */
export function fallenOf(defs: Definitions, state: State, entries: readonly Entry[]): Report['fallen'] {
  return defs.steps.flatMap((placed) => {
    const verdict = state.verdicts[placed.id]
    if (verdict?.void !== true || applicability(defs, state, placed) === 'skip') return []
    const by = state.raised.find(({ step, seq }) => step === placed.id && seq === verdict.seq)?.voidBy ?? null
    const cause = entries[by ?? -1]
    return [
      {
        number: String(placed.number),
        step: placed.id,
        title: placed.step.title,
        was: verdict.verdict.result.verdict,
        by: cause?.type === 'instrument.doubted' ? cause.instrument : `entry ${by ?? 'not known'}`,
        seq: verdict.seq,
        at: entries[verdict.seq]?.at ?? '',
      },
    ]
  })
}

/** What was seen at each step that has a list, as it stands. */
export function findingsOf(defs: Definitions, state: State, entries: readonly Entry[]): Report['findings'] {
  return defs.steps.flatMap((placed) => {
    const { step, id } = placed
    if (step.kind !== 'observe') return []
    const found = step.conditions.find((one) => one.id === state.done[id])
    const entry = entries.findLast(
      (one) => (one.type === 'finding.observed' || one.type === 'finding.corrected') && one.step === id,
    )
    if (found === undefined || entry === undefined) return []
    return [
      {
        number: String(placed.number),
        title: step.title,
        found: found.label,
        note: 'note' in entry && entry.note !== undefined ? entry.note : null,
        isFinding: found.finding === true,
        at: entry.at,
        by: entry.by ?? null,
      },
    ]
  })
}

/** What did not conform and still stands, with the decision about it; then decisions about a verdict of ACCEPT. */
export function decisionsOf(defs: Definitions, state: State): Report['decisions'] {
  const raised = nonconformances(defs, state).filter(({ stands }) => stands)
  const told = raised.map(({ name, step, word, decided }) => decision(defs, { name, step, word, decided }))
  const known = new Set(raised.map(({ decided }) => decided?.seq))
  const others = Object.values(state.dispositions)
    .filter((one) => !one.void && !known.has(one.seq))
    .sort((a, b) => a.seq - b.seq)
    .map((decided) => {
      const word = state.verdicts[decided.about]?.verdict.result.verdict ?? state.done[decided.about] ?? ''
      return decision(defs, { name: null, step: decided.about, word, decided })
    })
  return [...told, ...others]
}

function decision(
  defs: Definitions,
  {
    name,
    step: id,
    word,
    decided,
  }: {
    readonly name: string | null
    readonly step: string
    readonly word: string
    readonly decided: DispositionState | null
  },
): Report['decisions'][number] {
  const placed = stepById(defs, id)
  const { step } = placed
  const said = step.kind === 'observe' ? (step.conditions.find((c) => c.id === word)?.label ?? word) : word
  const terms =
    decided === null || decided.authority === null || decided.valid === null
      ? null
      : `on the authority of ${authorityText(defs, decided.authority)}, ${validityText(decided.valid)}`
  return {
    name,
    about: numbered(placed),
    word: said,
    choice: decided?.choice ?? null,
    why: decided?.why ?? null,
    person: decided?.person ?? null,
    terms,
    radio: decided?.radio ?? null,
    countersigned: decided !== null && decided.radio !== null && decided.countersigned,
    open: decided === null || decided.choice === 'hold' || (decided.radio !== null && !decided.countersigned),
    seq: decided?.seq ?? null,
  }
}

export function permitsOf(defs: Definitions, state: State): string[] {
  return state.deviations.map(
    ({ step, what, why, authority, valid, person }, i) =>
      `DP-${i + 1} for ${numbered(stepById(defs, step))}, by ${person}: ${what}; because ${why}; on the authority of ${authorityText(defs, authority)}, ${validityText(valid)}. It changes no limit, no verdict and no hold point.`,
  )
}
