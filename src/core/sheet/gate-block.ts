// Hold points on the sheet: a permit with boxes. What was given, what failed, what fell and why.

import { CAUSES } from '../job/close-causes.ts'
import { asKind, type Definitions, gasLimitById, stepById } from '../job/definitions.ts'
import type { Entry } from '../job/entries.ts'
import { gatesBefore } from '../job/gate.ts'
import { keyLabel } from '../job/item-label.ts'
import { lapsesAt } from '../job/lapse.ts'
import { applicability, isComplete } from '../job/next.ts'
import type { State } from '../job/state.ts'
import { clockOf, readStamp } from '../lib/instant.ts'
import { type Block, type Row, row } from './block.ts'
import { boxWarning, oxygenRows } from './little-oxygen.ts'

type GateEntry = Extract<
  Entry,
  {
    type: 'evidence.given' | 'evidence.failed' | 'gate.opened' | 'gate.closed' | 'people.clear' | 'wait.begun'
  }
>

/** `falseKeys`: what stands as shown at the gate in a practice session and is not so. */
export function gateBlock(
  defs: Definitions,
  entry: GateEntry,
  margin: string,
  right: string,
  falseKeys: readonly string[] = [],
): Block {
  const gate = asKind(stepById(defs, entry.step), 'gate')
  const label = 'item' in entry ? keyLabel(defs, gate, entry.item) : ''
  switch (entry.type) {
    case 'evidence.given': {
      const warning = boxWarning(defs, entry)
      const isFalse = falseKeys.includes(entry.item)
      return {
        margin,
        right,
        rows: [
          row(
            `${isFalse ? '[FALSE]' : '[x]'} ${label}  ${entry.shown}${entry.off_by === undefined ? '' : `, off by ${entry.off_by}`}${entry.instrument === undefined ? '' : `  ${entry.instrument}`}${warning}`,
            warning === '' && !isFalse ? undefined : 'caution',
          ),
          ...doubtedRows(entry),
          ...oxygenRows(defs, entry),
        ],
      }
    }
    case 'evidence.failed':
      return {
        margin,
        right,
        rows: [
          row(`[FAILED] ${label}  ${entry.shown}`, 'caution'),
          row(`  ${entry.why}`, 'caution'),
          ...oxygenRows(defs, entry),
        ],
      }
    case 'gate.opened':
      return {
        margin,
        right,
        rows: [
          row(completed(gate.step.title), 'strong'),
          ...(falseKeys.length === 0
            ? []
            : [
                row(
                  `  FALSE in it: ${falseKeys.map((key) => keyLabel(defs, gate, key)).join(', ')}`,
                  'caution',
                ),
              ]),
        ],
      }
    case 'gate.closed':
      return {
        margin,
        right,
        rows: [
          row(closing(entry), 'caution'),
          ...(entry.items.length === 0
            ? []
            : [row(`  void: ${entry.items.map((key) => keyLabel(defs, gate, key)).join(', ')}`)]),
        ],
      }
    case 'wait.begun':
      return { margin, right, rows: [row(`[ ] ${label}, begun  ${entry.shown}`)] }
    case 'people.clear':
      return { margin, right, rows: [row(`Everybody out and clear: ${entry.words}`)] }
  }
}

/** A number that was doubted, and why it was kept. */
function doubtedRows({ was, why }: Extract<GateEntry, { type: 'evidence.given' }>): Row[] {
  if (was !== undefined) return [row(`  ${was} before, not so now: ${why ?? 'no reason keyed'}`, 'caution')]
  return why === undefined ? [] : [row(`  doubted, and kept: ${why}`, 'caution')]
}

/**
 * What it lets people do now and until when, for whoever stands there; read back later it would be of another day. It opens to what the sheets behind it ask and to nothing else, and never calls
 * any of it good: what stands is what was shown.
 */
export function letsIn(defs: Definitions, state: State, id: string, at: string): Row[] {
  const gate = asKind(stepById(defs, id), 'gate')
  const behind = defs.steps.filter((placed) => gatesBefore(defs, placed).includes(gate))
  // Shown anew, it lets people in to what is still to be done, and that is named.
  const open = behind.filter(
    (placed) => !isComplete(state, placed) && applicability(defs, state, placed) !== 'skip',
  )
  const first = open.find(({ number }) => number > gate.number) ?? open[0] ?? behind[0]
  if (first === undefined) return []
  const lapse = lapsesAt(defs, state, gate)
  const offsetMin = readStamp(at)?.offsetMin ?? 0
  const until =
    lapse === null || !Number.isFinite(lapse)
      ? 'Until'
      : `Until ${clockOf({ ms: lapse, offsetMin })}, or until`
  // Two lines and no more: right under them the first drawing is to have its room.
  return [
    row(`  Now: what sheet ${first.number} and those after it ask. Nothing else.`),
    row(`  ${until} anything here changes: then come out.`),
  ]
}

/** A title that already says hold point is not made to say it twice. */
function completed(title: string): string {
  return /^hold point\b/i.test(title) ? `${title}: complete` : `Hold point complete: ${title}`
}

function closing(entry: Extract<GateEntry, { type: 'gate.closed' }>): string {
  const { cause, why } = entry
  if (cause === 'again')
    return why === undefined ? 'Taken back, to be asked again.' : `To be asked again: ${told(why)}`
  // A slip of the pen on paper that lets nobody in yet: crying wolf here is not believed when it is meant.
  if (entry.nobody_in === true)
    return `Taken back, to be asked again; nobody was let in. ${told(why ?? CAUSES[cause])}`
  // A plan is refused before anything hangs, so there is nothing to come out from.
  const first = cause === 'overload' ? 'HOLD. Lift nothing' : 'HOLD. COME OUT AND STAND CLEAR'
  return `${first}: ${told(why ?? CAUSES[cause])}`
}

/** With when it was past its life, where nobody noted it then: right below the call to come out. */
export function lapsedBlock(block: Block, lapsed: string | null): Block {
  const [first, ...rest] = block.rows
  return lapsed === null || first === undefined
    ? block
    : { ...block, rows: [first, row(`  ${lapsed}`, 'caution'), ...rest] }
}

/** What was keyed may end with a stop of its own. */
function told(why: string): string {
  return `${why.trimEnd().replace(/[.]+$/, '')}.`
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
      ? ` (100 %LEL: ${defs.machine.site.gas.lel_basis.lower_limit.text} of ${defs.machine.site.gas.lel_basis.gas})`
      : ''
  return `${range}${basis}, for ${limit.purpose}`
}
