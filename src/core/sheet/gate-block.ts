// Hold points on the sheet: a permit with boxes. What was given, what failed, what fell and why.

import { asKind, type Definitions, gasLimitById, stepById } from '../job/definitions.ts'
import type { CloseCause, Entry } from '../job/entries.ts'
import { GAS_NAMES } from '../job/gas.ts'
import { type Item, itemsOf } from '../job/gate.ts'
import { type Block, row } from './block.ts'

type GateEntry = Extract<
  Entry,
  { type: 'evidence.given' | 'evidence.failed' | 'gate.opened' | 'gate.closed' | 'people.clear' }
>

export const CAUSES: Readonly<Record<CloseCause, string>> = {
  lapsed: 'the gas test is past its life',
  failed: 'a gas reading is outside its limit',
  again: 'what was keyed is taken back',
  stop: 'STOP was called',
  left: 'the job was left',
  interrupted: 'the program was interrupted',
  clock: 'the clock moved',
}

export function gateBlock(defs: Definitions, entry: GateEntry, margin: string, right: string): Block {
  const gate = asKind(stepById(defs, entry.step), 'gate')
  const item = 'item' in entry ? itemsOf(defs, gate).find((i) => i.key === entry.item) : undefined
  switch (entry.type) {
    case 'evidence.given':
      return {
        margin,
        right,
        rows: [
          row(
            `[x] ${item === undefined ? entry.item : itemLabel(defs, item)}  ${entry.shown}${entry.instrument === undefined ? '' : `  ${entry.instrument}`}`,
          ),
        ],
      }
    case 'evidence.failed':
      return {
        margin,
        right,
        rows: [
          row(
            `[FAILED] ${item === undefined ? entry.item : itemLabel(defs, item)}  ${entry.shown}`,
            'caution',
          ),
          row(`  ${entry.why}`, 'caution'),
        ],
      }
    case 'gate.opened':
      return { margin, right, rows: [row(`Hold point complete: ${gate.step.title}`, 'strong')] }
    case 'gate.closed':
      return {
        margin,
        right,
        rows: [
          entry.cause === 'again'
            ? row('Taken back, to be asked again.', 'caution')
            : row(`HOLD. COME OUT AND STAND CLEAR: ${CAUSES[entry.cause]}.`, 'caution'),
          row(`  void: ${entry.items.map((key) => keyLabel(defs, gate.id, key)).join(', ')}`),
        ],
      }
    case 'people.clear':
      return { margin, right, rows: [row(`Everybody out and clear: ${entry.words}`)] }
  }
}

function keyLabel(defs: Definitions, gateId: string, key: string): string {
  const item = itemsOf(defs, asKind(stepById(defs, gateId), 'gate')).find((i) => i.key === key)
  return item === undefined ? key : itemLabel(defs, item)
}

/** `oxygen where people stand`, `lock at main driver breaker, E-1`. */
export function itemLabel(defs: Definitions, item: Item): string {
  const { evidence } = item
  switch (evidence.kind) {
    case 'locks':
      return `lock at ${item.point?.name ?? ''}`
    case 'words':
      return evidence.id.replaceAll('_', ' ')
    case 'witness':
      return 'witness'
    case 'gas': {
      const limit = gasLimitById(defs, evidence.limit)
      if (limit === undefined) return evidence.id.replaceAll('_', ' ')
      return `${GAS_NAMES[limit.gas]} ${limit.place === 'breathing_zone' ? 'where people breathe' : 'inside the bore'}`
    }
  }
}

/** `19.5 to 23.5 %vol for people breathing at the opening`. */
export function gasLimitText(defs: Definitions, limitId: string): string {
  const limit = gasLimitById(defs, limitId)
  if (limit === undefined) return 'no limit on record'
  const { at_least: least, at_most: most } = limit
  const range =
    least !== undefined && most !== undefined
      ? `${least.text} to ${most.text}`
      : most !== undefined
        ? `at most ${most.text}`
        : `at least ${least?.text ?? '?'}`
  const basis =
    limit.gas === 'flammable'
      ? ` (of ${defs.machine.site.gas.lel_basis.gas}, ${defs.machine.site.gas.lel_basis.lower_limit.text})`
      : ''
  return `${range}${basis}, for ${limit.purpose}`
}
