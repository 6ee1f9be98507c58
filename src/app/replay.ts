// From the entries of a journal to the state they come to: the same fold as the live job.

import { judgeBore } from '../core/bore/bore-judge.ts'
import { judgePocket } from '../core/cycle/pocket-judge.ts'
import { isOneMachine } from '../core/job/admit-record.ts'
import type { Definitions } from '../core/job/definitions.ts'
import { defsAt, type Editions } from '../core/job/editions.ts'
import type { Entry, OpenedBody } from '../core/job/entries.ts'
import { fold, opening } from '../core/job/fold.ts'
import type { State } from '../core/job/state.ts'
import type { VerdictRecord } from '../core/job/verdict-record.ts'
import { assertNever } from '../core/lib/result.ts'
import { judgeFigures } from '../core/metrology/figure-judge.ts'
import { entryBlocks } from '../core/sheet/shown-block.ts'
import type { Shown } from './session.ts'

export type OpenedEntry = OpenedBody & { readonly seq: number; readonly at: string }

export function openedOf(entries: readonly Entry[]): OpenedEntry {
  const first = entries[0]
  if (first === undefined || first.type !== 'job.opened') throw new Error('a job begins with job.opened')
  return first
}

export function replay(entries: readonly Entry[]): {
  readonly state: State
  readonly shown: readonly Shown[]
} {
  const [first, ...rest] = entries
  let state = opening(openedOf(entries))
  const shown: Shown[] = first === undefined ? [] : [{ key: 0, kind: 'entry', entry: first, state }]
  for (const entry of rest) {
    state = fold(state, entry)
    shown.push({ key: shown.length, kind: 'entry', entry, state })
  }
  return { state, shown }
}

/** Verdicts that this version of the program works out differently from their stored inputs. Nothing is replaced. */
export function changedVerdicts(defs: Definitions, entries: readonly Entry[]): string[] {
  return entries.flatMap((entry) => {
    if (entry.type !== 'verdict.given') return []
    const again = workAgain(entry.verdict)
    if (inOneOrder(again) === inOneOrder(entry.verdict.result)) return []
    const title = defs.steps.find((s) => s.id === entry.step)?.step.title ?? entry.step
    return [
      `${title} (entry ${entry.seq}) was worked out by Barover ${entry.verdict.version} as ${entry.verdict.result.verdict}; this version comes to ${again.verdict} or to other figures. The stored verdict stands.`,
    ]
  })
}

function workAgain(record: VerdictRecord) {
  switch (record.compute) {
    case 'bore_form':
      return judgeBore(record.inputs)
    case 'figures':
      return judgeFigures(record.inputs)
    case 'pocket_setting':
      return judgePocket(record.inputs)
    default:
      return assertNever(record)
  }
}

/** JSON with keys in one order: reading an entry back may change theirs, and that is no other verdict. */
function inOneOrder(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )
}

/**
 * Why entries whose hashes are sound still are not this job's: they name steps, places or people that its files do not
 * have. Only a log that was rewritten can do that. Null when all of them can be shown.
 */
export function misfit(editions: Editions, entries: readonly Entry[]): string | null {
  const style = { width: 80, record: 'REAL' as const, ascii: true }
  const [first, ...taken] = editions
  const other = taken.find(({ defs }) => !isOneMachine(first.defs, defs))
  if (other !== undefined) return `entry ${other.from} takes in the record of another machine`
  try {
    for (const one of replay(entries).shown)
      if (one.kind === 'entry') entryBlocks(defsAt(editions, one.entry.seq), one.state, one.entry, style)
    return null
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}
