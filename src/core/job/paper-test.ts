// A test over time as it stands on a sheet: start, stand and end in that order, the stand as long as it is asked, by the times written.
// What they do not tell holds: the figures of such a test say nothing of the part.
import type { EvidenceOf } from '../definition/evidence.ts'
import { asKind, type Definitions, type PlacedStep, type PlacedTest, stepById } from './definitions.ts'
import type { Body } from './entries.ts'
import { gatesOf } from './gate.ts'
import { applicability } from './next.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { minutesOnSheet } from './paper-line.ts'
import { beginRow, copiesOf, copyKey } from './paper-rows.ts'
import { surelyLasted, waitFault } from './paper-wait.ts'
import { placesOf } from './places.ts'
import { type State, standingVerdict } from './state.ts'
import { figureReads } from './values.ts'
import { wouldVoid } from './voids.ts'

/** Why each test that the figures of this judge rest on does not hold, a sentence; nothing of a live job. */
export function testHolds(defs: Definitions, state: State, judge: PlacedStep): string[] {
  const { paper } = state
  if (paper === null || defs.overTime.length === 0) return []
  const reads = new Set(figureReads(defs, judge))
  return defs.overTime
    .filter(({ start, end }) => [...start, ...end].some((id) => reads.has(id)))
    .flatMap((test) => testFaults(defs, state, paper, test))
}

/** Why a test does not hold by the sheet; empty where no gap can be told, or where it is not asked for. */
export function testFaults(defs: Definitions, state: State, paper: PaperState, test: PlacedTest): string[] {
  const asked = (ids: readonly string[]) =>
    ids.map((id) => stepById(defs, id)).filter((placed) => applicability(defs, state, placed) !== 'skip')
  const starts = asked(test.start)
  if (starts.length === 0) return []
  const says = (why: string) => [`${test.title}, on paper: ${why}.`]
  const begins = starts.flatMap((placed) => timesAt(paper, placed))
  const ends = asked(test.end).flatMap((placed) => timesAt(paper, placed))
  const settled = settles(defs, paper, test, begins)
  if (settled !== null) return says(settled)
  const gate = gatesOf(defs).find(({ id }) => id === test.stand)
  const waits = gate?.step.evidence.flatMap((one) => (one.kind === 'wait' ? [one] : [])) ?? []
  if (gate === undefined || waits.length === 0) return says('no stand is asked for')
  for (const wait of waits) {
    const lines = copiesOf(paper, gate.id).flatMap((n) => {
      const end = rowOf(paper, gate.id, copyKey(wait.id, n))
      return end === undefined || isEmpty(end) ? [] : [end]
    })
    if (lines.length === 0) return says(`the stand of ${wait.lasts.text} is blank`)
    // Another test may stand at the same hold point, on another copy of its page: one of them has to be that of this test.
    const faults = lines.map((line) => standFault(paper, gate.id, wait, line, begins, ends))
    const [fault] = faults.includes(null) ? [null] : faults
    if (fault !== null && fault !== undefined) return says(fault)
  }
  return over(paper, test, ends) ? [] : says('its end is not told to be read before it was let off')
}

/** Why this is no stand between these times, a clause; null where no gap can be told. */
function standFault(
  paper: PaperState,
  gate: string,
  wait: EvidenceOf<'wait'>,
  line: SheetRow,
  begins: readonly (string | null)[],
  ends: readonly (string | null)[],
): string | null {
  const fault = waitFault(paper, gate, wait, line)
  if (fault !== null) return `the stand: ${fault}`
  if (begins.length === 0 || ends.length === 0) return 'it has no start or no end'
  const begun = rowOf(paper, gate, beginRow(line.row))?.time ?? null
  const isBehind = (from: string | null, to: string | null) => (minutesOnSheet(from, to) ?? -1) >= 0
  if (!begins.every((from) => isBehind(from, begun)))
    return 'its start is not told to be written before the stand began'
  return ends.every((to) => isBehind(line.time, to))
    ? null
    : 'its end is not told to be written after the stand'
}

/** What was put on has to stand so long before the start is read; null where it did. */
function settles(
  defs: Definitions,
  paper: PaperState,
  test: PlacedTest,
  begins: readonly (string | null)[],
): string | null {
  if (test.settlesMs === null) return null
  const { settlesMs } = test
  const [from = null] = timesAt(paper, stepById(defs, test.from))
  return begins.every((to) => surelyLasted(minutesOnSheet(from, to), settlesMs / 1000))
    ? null
    : 'its times do not tell that it had settled before its start'
}

/** Whether each figure of the end was read before it was let off, as far as that box is keyed. */
function over(paper: PaperState, { until }: PlacedTest, ends: readonly (string | null)[]): boolean {
  const off = until === null ? undefined : rowOf(paper, until, 'done')
  return off === undefined || ends.every((to) => (minutesOnSheet(to, off.time) ?? -1) >= 0)
}

/** Times that stand at the step: of each line of figures, or of its signature. Null: that one is blank. */
function timesAt(paper: PaperState, placed: PlacedStep): (string | null)[] {
  if (placed.step.kind !== 'read') return [rowOf(paper, placed.id, 'done')?.time ?? null]
  return placesOf(asKind(placed, 'read')).map(({ key }) => rowOf(paper, placed.id, key)?.time ?? null)
}

function isEmpty({ text, who }: SheetRow): boolean {
  return text === null && who === null
}

/** Verdicts that say of a test what the sheet does not say any more, since a line of it was put right: they are given anew. */
export function testChanged(defs: Definitions, state: State): Extract<Body, { type: 'branch.left' }> | null {
  const titles = defs.overTime.map(({ title }) => `${title}, on paper: `)
  for (const placed of defs.steps) {
    if (placed.step.kind !== 'judge' || placed.step.compute !== 'figures') continue
    const held = standingVerdict(state, placed.id)?.verdict.result.holds
    if (held === undefined) continue
    const was = held.filter((why) => titles.some((title) => why.startsWith(title)))
    const now = testHolds(defs, state, placed)
    if (was.length === now.length && now.every((why) => was.includes(why))) continue
    return { type: 'branch.left', voids: [placed.id, ...wouldVoid(defs, state, placed.id)] }
  }
  return null
}
