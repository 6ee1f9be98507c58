// What was as it should be, counted, so that a short list of exceptions is not taken for a short job.
import { gatesOf } from '../job/gate.ts'
import { applicability, isComplete } from '../job/next.ts'
import { stands } from '../job/state.ts'
import { isLeftOut } from '../talk/left-out.ts'
import { plannedFalls } from './kinds/gates.ts'
import { count, entriesOf, type Look } from './look.ts'

export function usual(look: Look): string[] {
  const { defs, state, entries, beside } = look
  const asked = defs.steps.filter((s) => applicability(defs, state, s) !== 'skip')
  const out = defs.steps.filter((s) => isLeftOut(defs, state, s)).length
  const done = asked.filter((s) => isComplete(state, s)).length
  const readings = Object.values(state.readings).flat().filter(stands)
  const instruments = new Set(readings.map((r) => r.instrument)).size
  const accepted = Object.values(state.verdicts).filter(
    (v) => !v.void && v.verdict.result.verdict === 'ACCEPT',
  )
  const wanted = gatesOf(defs).filter((gate) => asked.includes(gate))
  const opened = new Set(entriesOf(look, 'gate.opened').map((e) => e.step)).size
  const kept = beside.files.filter((file) => file.isAsAttached).length
  const planned = plannedFalls(look)
  const n = (of: number, words: string) => (of === 0 ? [] : [words])
  return [
    `${count(entries.length, 'entry', 'entries')}`,
    `${done} of ${count(asked.length, 'step')} done`,
    ...n(out, `${out} left out by their own condition`),
    ...n(readings.length, `${count(readings.length, 'reading')} with ${count(instruments, 'instrument')}`),
    ...n(
      state.paper === null ? wanted.length : 0,
      `hold points complete at some time: ${opened} of ${wanted.length}`,
    ),
    ...n(planned, `hold points fell ${count(planned, 'time')} by a step that is meant to let something in`),
    ...n(accepted.length, `${count(accepted.length, 'verdict')} ACCEPT`),
    ...n(kept, `${count(kept, 'file')} as attached`),
    ...n(
      entriesOf(look, 'job.handed-over').length,
      `handed over ${count(entriesOf(look, 'job.handed-over').length, 'time')}`,
    ),
    ...n(
      entriesOf(look, 'job.taken-up').length,
      `taken up ${count(entriesOf(look, 'job.taken-up').length, 'time')}`,
    ),
  ]
}
