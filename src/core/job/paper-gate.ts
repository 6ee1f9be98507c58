// What a hold point on paper shows: which of its lines are blank or wrong as written, and whether it would have held people back at the
// steps behind it, by the times on the sheet. It never comes to open or complete: nobody was held back by it.
import { list } from '../lib/wording.ts'
import { asKind, type Definitions, type PlacedStep } from './definitions.ts'
import { lettingHazards } from './elsewhere.ts'
import { type GateStep, gatesBefore, gatesOf, type Item, itemsFor, provesAt } from './gate.ts'
import { itemLabel } from './item-label.ts'
import { lifeMs } from './lapse.ts'
import { applicability } from './next.ts'
import { type PaperState, rowOf, type SheetRow } from './paper.ts'
import { deviceFault, twiceOnSheet } from './paper-devices.ts'
import { liftFaults, measuredFaults } from './paper-figures.ts'
import { gasFaults } from './paper-gas.ts'
import { minutesOnSheet } from './paper-line.ts'
import { pageFaults } from './paper-page.ts'
import { copiesOf, copyKey, peopleOnSheet } from './paper-rows.ts'
import { waitFault } from './paper-wait.ts'
import { witnessFaults } from './paper-witness.ts'
import { placesOf } from './places.ts'
import { type State, standing } from './state.ts'

export interface PaperGate {
  readonly gate: GateStep
  /** Why it would have held, each a clause; empty where no gap can be told, which proves nothing. */
  readonly why: readonly string[]
  /** Entries behind it. */
  readonly seqs: readonly number[]
}

/** Hold points that the job calls for. */
export function paperGates(defs: Definitions, state: State, paper: PaperState): PaperGate[] {
  return gatesOf(defs)
    .filter((gate) => applicability(defs, state, gate) !== 'skip')
    .map((gate) => {
      const items = itemsFor(defs, gate, peopleOnSheet(defs, paper))
      const behind = defs.steps.filter((placed) => gatesBefore(defs, placed).includes(gate))
      const why = items.flatMap((item) => {
        const rows = rowsOf(paper, gate, item)
        return [
          ...faultsOf(defs, paper, gate, items, item, rows),
          ...agesOf(defs, state, paper, gate, item, rows, behind),
        ]
      })
      const done = behind
        .filter((placed) => applicability(defs, state, placed) !== 'skip')
        .map((placed) => ({ placed, times: timesOf(state, paper, placed) }))
      why.push(...pageFaults(defs, paper, gate, items, done))
      const seqs = items.flatMap((item) => rowsOf(paper, gate, item).map(({ seq }) => seq))
      return { gate, why: [...new Set(why)], seqs }
    })
}

/** The line of each copy of the page, as far as it is keyed. */
function rowsOf(paper: PaperState, gate: GateStep, { key }: Item): SheetRow[] {
  return copiesOf(paper, gate.id).flatMap((n) => rowOf(paper, gate.id, copyKey(key, n)) ?? [])
}

/** What each line says by itself. */
function faultsOf(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  items: readonly Item[],
  item: Item,
  rows: readonly SheetRow[],
): string[] {
  const name = itemLabel(defs, item)
  if (rows.every(isEmpty)) return [`${name}: blank`]
  return rows.flatMap((row) => {
    if (isEmpty(row)) return []
    const at = row.time === null ? '' : ` at ${row.time.slice(-5)}`
    const all = [
      ...faultOf(defs, paper, gate, item, row),
      ...twiceOnSheet(defs, paper, gate, items, item, row),
    ]
    return all.map((why) => `${name}${at}: ${why}`)
  })
}

/** Initials alone are not nothing. */
function isEmpty({ text, who }: SheetRow): boolean {
  return text === null && who === null
}

/** What is not known to be as it has to be is a fault. */
function faultOf(
  defs: Definitions,
  paper: PaperState,
  gate: GateStep,
  item: Item,
  row: SheetRow,
): readonly string[] {
  const { evidence } = item
  const { text } = row
  const only = (why: string | null) => (why === null ? [] : [why])
  if (evidence.kind === 'witness') return witnessFaults(defs, paper, gate, evidence, row)
  if (text === null) return ['signed, and nothing stands there']
  switch (evidence.kind) {
    case 'words':
      return only(
        plain(text) === plain(evidence.words) ? null : `it says ${text}, and asked is ${evidence.words}`,
      )
    case 'gas':
      return gasFaults(defs, paper, gate, evidence, row, text)
    case 'locks':
    case 'numbers':
      return only(deviceFault(defs, paper, item, text))
    case 'wait':
      return only(waitFault(paper, gate.id, evidence, row))
    case 'measured':
      return measuredFaults(defs, paper, evidence, text)
    case 'lift':
      return liftFaults(defs, paper, gate, item, evidence, row, text)
  }
}

/** How old each line was at the steps behind: the first step that it would have held. */
function agesOf(
  defs: Definitions,
  state: State,
  paper: PaperState,
  gate: GateStep,
  item: Item,
  rows: readonly SheetRow[],
  behind: readonly PlacedStep[],
): string[] {
  const lines = rows.filter((row) => !isEmpty(row))
  if (lines.length === 0) return []
  const name = itemLabel(defs, item)
  const life = lifeMs(defs, item.evidence)
  for (const placed of behind) {
    if (applicability(defs, state, placed) === 'skip') continue
    const lets = lettingBefore(defs, state, gate, item, placed)
    for (const time of timesOf(state, paper, placed)) {
      const why =
        heldAt(name, lines, life === null ? null : life / 60_000, time, placed) ??
        letInSince(state, paper, name, lines, lets, time, placed)
      if (why !== null) return [why]
    }
  }
  return []
}

/** Steps before this one that let in what the line proves: whatever was written before them proves nothing behind them. */
function lettingBefore(
  defs: Definitions,
  state: State,
  gate: GateStep,
  { evidence }: Item,
  placed: PlacedStep,
): readonly PlacedStep[] {
  const proves = provesAt(gate, evidence)
  return defs.steps
    .slice(0, defs.steps.indexOf(placed))
    .filter((one) => applicability(defs, state, one) !== 'skip')
    .filter((one) => lettingHazards(defs, one).some(({ id }) => proves.includes(id)))
}

/** What is written in one minute with the step that let it in is not told to be behind it. */
function letInSince(
  state: State,
  paper: PaperState,
  name: string,
  lines: readonly SheetRow[],
  lets: readonly PlacedStep[],
  time: string | null,
  { step, number }: PlacedStep,
): string | null {
  const at = `${number} ${step.title}`
  const before = lines.filter((line) => (minutesOnSheet(line.time, time) ?? -1) >= 0)
  for (const one of lets) {
    const what = `${one.number} ${one.step.title}`
    const times = timesOf(state, paper, one)
    if (times.length === 0)
      return `whether ${what} let anything in before ${at} does not stand there: ${name}`
    for (const letting of times)
      if (!before.some((line) => (minutesOnSheet(letting, line.time) ?? 0) > 0))
        return `${name} is not written anew between ${what}, which lets in what it proves, and ${at}`
  }
  return null
}

function heldAt(
  name: string,
  lines: readonly SheetRow[],
  life: number | null,
  time: string | null,
  { step, number }: PlacedStep,
): string | null {
  const at = `${number} ${step.title}`
  // Once for the whole page: it is the step that does not tell, and not one of its lines.
  if (time === null) return `${at} has no time: whether this page stood then cannot be told`
  const ages = lines.flatMap((line) => {
    const age = minutesOnSheet(line.time, time)
    return age === null ? [] : [{ age, line }]
  })
  if (ages.length === 0) return `${name} has no time: whether it stood at ${at} cannot be told`
  const before = ages.filter(({ age }) => age >= 0)
  const youngest = before.reduce<(typeof before)[number] | null>(
    (least, one) => (least === null || one.age < least.age ? one : least),
    null,
  )
  const clock = (text: string | null) => text?.slice(-5) ?? 'no time'
  if (youngest === null)
    return `${name} ${list(ages.map(({ line }) => clock(line.time)))}, ${at} ${clock(time)}: written after it`
  return life !== null && !(youngest.age < life)
    ? `${name} ${clock(youngest.line.time)}, ${at} ${clock(time)}: older than ${Math.round(life)} min`
    : null
}

/** Times that stand at a step: of its signature, or of each line of figures. A step without any is in nobody's time. */
function timesOf(state: State, paper: PaperState, placed: PlacedStep): (string | null)[] {
  if (placed.step.kind !== 'read') {
    const row = rowOf(paper, placed.id, 'done')
    return row === undefined || (row.text === null && row.time === null && row.who === null) ? [] : [row.time]
  }
  return placesOf(asKind(placed, 'read')).flatMap(({ key }) => {
    const row = rowOf(paper, placed.id, key)
    // A place with no line and no figure was read by nobody, as far as the sheet tells; one with a figure was, at no time it tells.
    const isBlank = row === undefined || (row.time === null && row.who === null)
    const isRead = standing(state, key).length > 0 || (paper.unread[key]?.is ?? 'blank') !== 'blank'
    return isBlank && !isRead ? [] : [row?.time ?? null]
  })
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ')
