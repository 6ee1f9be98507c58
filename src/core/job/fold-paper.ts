// The part of the fold that keeps what stands on a sheet. It has no rules.
import type { Entry } from './entries.ts'
import { type OnSheet, rowKey, type SheetRow, UNREAD_TEXT } from './paper.ts'
import { thingsAfter } from './paper-register.ts'
import type { State } from './state.ts'

/** After any of these the sheet is another than the one that was signed for. */
const CHANGES: readonly Entry['type'][] = [
  ...(['paper.row', 'paper.unread', 'reading.taken', 'reading.doubted', 'reading.corrected'] as const),
  ...(['step.done', 'step.confirmed', 'finding.observed', 'step.reopened', 'doubt.settled'] as const),
  ...(['not-applicable.taken-back', 'branch.left', 'instrument.doubted', 'disposition.set'] as const),
]

/** All of those but a decision, which a lead signs without keying anything from the sheet. */
function keys(entry: Entry): boolean {
  return CHANGES.includes(entry.type) && entry.type !== 'disposition.set'
}

/** `state` is what the entry came to in all else. A job that is not from paper stays as it is. */
export function foldPaper(state: State, entry: Entry): State {
  const { paper } = state
  if (paper === null) return state
  if (entry.type === 'paper.signed') {
    const signed = entry.as === 'keyed' ? { keyedBy: entry.person } : { comparedBy: entry.person }
    return { ...state, paper: { ...paper, ...signed } }
  }
  const on: OnSheet | null = 'paper' in entry && typeof entry.paper === 'object' ? entry.paper : null
  const rows = rowsAfter(paper.rows, entry)
  const by = keys(entry) ? (entry.by ?? null) : null
  const after = {
    ...paper,
    rows,
    last: on?.time ?? paper.last,
    writers:
      on?.who === null || on?.who === undefined ? paper.writers : [...new Set([...paper.writers, on.who])],
    keyers: by === null ? paper.keyers : [...new Set([...paper.keyers, by])],
    ...(CHANGES.includes(entry.type) ? { keyedBy: null, comparedBy: null } : {}),
  }
  if (entry.type !== 'paper.unread')
    return { ...state, doneBy: writtenBy(state, entry), things: thingsAfter(state, entry), paper: after }
  const { place, is, why } = entry
  const text = is === 'instrument' && why !== undefined ? `${UNREAD_TEXT[is]}: ${why}` : UNREAD_TEXT[is]
  return {
    ...state,
    notApplicable: { ...state.notApplicable, [place]: text },
    paper: { ...after, unread: { ...paper.unread, [place]: { seq: entry.seq, is } } },
  }
}

/** Whoever signed a step on the sheet did it, beside whoever keyed it. */
function writtenBy({ doneBy }: State, entry: Entry): State['doneBy'] {
  const isDone =
    entry.type === 'step.done' || entry.type === 'step.confirmed' || entry.type === 'finding.observed'
  const who = isDone ? (entry.paper?.who ?? null) : null
  return !isDone || who === null ? doneBy : { ...doneBy, [entry.step]: [...(doneBy[entry.step] ?? []), who] }
}

function rowsAfter(
  rows: Readonly<Record<string, SheetRow>>,
  entry: Entry,
): Readonly<Record<string, SheetRow>> {
  const set = (step: string | null, row: string, text: string | null, on: OnSheet) => ({
    ...rows,
    [rowKey(step, row)]: { ...on, seq: entry.seq, step, row, text },
  })
  switch (entry.type) {
    case 'paper.row':
      return set(entry.step, entry.row, entry.says, entry.paper)
    case 'step.done':
    case 'step.confirmed':
    case 'finding.observed':
      return entry.paper === undefined
        ? rows
        : set(entry.step, 'done', entry.type === 'finding.observed' ? entry.condition : 'done', entry.paper)
    case 'step.reopened':
      return Object.fromEntries(Object.entries(rows).filter(([key]) => key !== rowKey(entry.step, 'done')))
    default:
      return rows
  }
}
