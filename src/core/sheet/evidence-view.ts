// A hold point being filled in: what is shown so far as boxes, and the one thing asked for now.
import type { Definitions } from '../job/definitions.ts'
import { gasLimitById } from '../job/definitions.ts'
import { GAS_UNITS } from '../job/gas.ts'
import { type GateStep, gateState, type Item, itemsOf } from '../job/gate.ts'
import type { Prompt } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { instrumentName } from '../talk/names.ts'
import { type Row, row } from './block.ts'
import { CAUSES, gasLimitText, itemLabel } from './gate-block.ts'
import type { PromptView } from './prompt-view.ts'

export function evidenceView(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'clear' | 'evidence' }>,
): Partial<PromptView> {
  const { gate } = prompt
  const { cause } = gateState(state, gate.id)
  const base = { margin: String(gate.number), title: gate.step.title, titleMayShorten: true }
  const why = cause === null ? [] : [row(`Asked again: ${CAUSES[cause]}.`, 'caution')]
  if (prompt.kind === 'clear') {
    return {
      ...base,
      ask: [
        row('COME OUT AND STAND CLEAR.', 'caution'),
        ...why,
        row(`When everybody is out and clear, type ${gate.step.clear_words}`, 'strong'),
      ],
    }
  }
  return {
    ...base,
    rows: [...why, ...boxes(defs, state, gate, prompt.item)],
    ask: askRows(defs, state, prompt.item),
    unit: unitOf(defs, prompt.item),
  }
}

/** Locks and the rest of the list in as few lines as will say it: done, asked now, and how many are still open. */
function boxes(defs: Definitions, state: State, gate: GateStep, now: Item): Row[] {
  const { given, struck } = gateState(state, gate.id)
  const items = itemsOf(defs, gate)
  const done = items.filter((i) => given[i.key] !== undefined)
  const open = items.filter((i) => given[i.key] === undefined && i.key !== now.key)
  // What was just taken back is the line being asked; the same line twice would only be read twice.
  const fallen = struck.filter(
    (s) => given[s.item] === undefined && !(s.item === now.key && s.cause === 'again'),
  )
  const rows: Row[] = []
  if (done.length > 0) rows.push(row(`[x] ${done.length} of ${items.length} shown, as above`))
  if (fallen.length > 0) {
    const names = fallen.map((s) => items.find((i) => i.key === s.item)).filter((i) => i !== undefined)
    rows.push(
      row(
        `[void] ${names
          .slice(0, 3)
          .map((i) => itemLabel(defs, i))
          .join(', ')}${names.length > 3 ? ` and ${names.length - 3} more` : ''}`,
        'caution',
      ),
    )
  }
  rows.push(row(`[ ] ${itemLabel(defs, now)}`, 'strong'))
  if (open.length > 0) rows.push(row(`[ ] then ${open.length} more`, 'faint'))
  return rows
}

function askRows(defs: Definitions, state: State, item: Item): Row[] {
  const { evidence } = item
  const ask = row(evidence.ask, 'strong')
  switch (evidence.kind) {
    case 'locks':
      return [ask, row(`Lock number at ${item.point?.name ?? ''}`)]
    case 'words':
      return [ask, row(`Words: ${evidence.words}`)]
    case 'witness':
      return [ask]
    case 'gas':
      return [
        ask,
        row(`Must be ${gasLimitText(defs, evidence.limit)}`),
        row(`With ${instrumentName(defs, state.seats[evidence.with] ?? '')}`, 'faint'),
      ]
  }
}

function unitOf(defs: Definitions, item: Item): string {
  if (item.evidence.kind !== 'gas') return ''
  const limit = gasLimitById(defs, item.evidence.limit)
  return limit === undefined ? '' : GAS_UNITS[limit.gas]
}
