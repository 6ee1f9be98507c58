// What was put down of harm on this job, for whoever is told that something hangs, holds or is shut: words close no hold point and take no
// lock off the record, and are not to be lost beside it.
import { notedWhen } from '../job/hand-over.ts'
import type { State } from '../job/state.ts'
import { tellsOfHarm } from './safety-asked.ts'

/** Newest first: `TOLD OF DANGER, 2026-03-14 06:52, RO: the lock on V-11 is off`. */
export function dangerNotes({ notes }: State): string[] {
  return notes
    .toReversed()
    .filter(({ text }) => tellsOfHarm(text))
    .map((one) => `TOLD OF DANGER, ${notedWhen(one)}: ${one.text}`)
}
