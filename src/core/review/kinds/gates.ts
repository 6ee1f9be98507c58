// Hold points that fell, whose evidence failed or grew stale, and that were asked again: one exception for each.
import type { CloseCause } from '../../job/entries.ts'
import { type GateStep, gateState, gatesOf } from '../../job/gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import { CAUSES } from '../../sheet/gate-block.ts'
import type { Found } from '../exception.ts'
import { byWhom, type Look, type Move, named, times, when } from '../look.ts'

/** Fallen by what the procedure or the crew means to do: less grave than what came by itself. */
const MEANT: readonly CloseCause[] = ['opening', 'people', 'left', 'handed-over', 'again']

export function gates(look: Look): Found[] {
  return gatesOf(look.defs).flatMap((gate) => one(look, gate))
}

function one(look: Look, gate: GateStep): Found[] {
  const falls = look.moves.filter((move) => fell(gate, move))
  const failed = look.moves.filter(({ entry }) => entry.type === 'evidence.failed' && entry.step === gate.id)
  const struck = look.moves.filter(
    (move) => move.entry.type === 'gate.closed' && move.entry.step === gate.id && !falls.includes(move),
  )
  if (falls.length + failed.length + struck.length === 0) return []
  const after = (seq: number, type: 'people.clear' | 'gate.opened') =>
    look.moves.find(({ entry }) => entry.type === type && entry.step === gate.id && entry.seq > seq)?.entry
  const begins = [...falls, ...struck, ...failed].map(({ entry }) => entry.seq)
  const answered = look.moves.flatMap(({ entry }) =>
    (entry.type === 'people.clear' || entry.type === 'gate.opened') &&
    entry.step === gate.id &&
    entry.seq > Math.min(...begins)
      ? [entry.seq]
      : [],
  )
  const causes = [...falls, ...struck].map((move) => causeOf(gate, move))
  return [
    {
      kind: 'gate',
      what: [
        `${named(gate)}:`,
        [
          ...(failed.length === 0 ? [] : [`FAILED ${times(failed.length)}`]),
          ...(falls.length === 0 ? [] : [`fell ${times(falls.length)}`]),
          ...(struck.length === 0 ? [] : [`evidence void ${times(struck.length)}`]),
          gateState(look.state, gate.id).status === 'open' ? 'proved again' : 'not proved since',
        ].join(', '),
      ].join(' '),
      sentences: [
        ...failed.map(({ entry }) => (entry.type === 'evidence.failed' ? failure(look, gate, entry) : '')),
        ...falls.map((move) => {
          const { seq } = move.entry
          const clear = after(seq, 'people.clear')
          const again = after(seq, 'gate.opened')
          return `Fell ${when(look, move.entry)}: ${causeText(gate, move)}; ${clear === undefined ? 'nobody keyed clear' : `clear ${when(look, clear)}`}, ${again === undefined ? 'not proved again' : `proved again ${when(look, again)}`}.`
        }),
        ...struck.map(
          (move) => `Void ${when(look, move.entry)}, before it was complete: ${causeText(gate, move)}.`,
        ),
      ],
      entries: [...begins, ...answered],
      open: false,
      grave: failed.length > 0 ? 0 : causes.every((cause) => cause !== null && MEANT.includes(cause)) ? 2 : 1,
    },
  ]
}

function fell(gate: GateStep, { before, after }: Move): boolean {
  return gateState(before, gate.id).status === 'open' && gateState(after, gate.id).status !== 'open'
}

function causeOf(gate: GateStep, { entry, after }: Move): CloseCause | null {
  return entry.type === 'gate.closed' ? entry.cause : gateState(after, gate.id).cause
}

function causeText(gate: GateStep, move: Move): string {
  const cause = causeOf(gate, move)
  const why = move.entry.type === 'gate.closed' ? move.entry.why : gateState(move.after, gate.id).why
  return why ?? (cause === null ? 'the cause is not told' : CAUSES[cause])
}

function failure(
  look: Look,
  gate: GateStep,
  entry: Extract<Move['entry'], { type: 'evidence.failed' }>,
): string {
  const { item, shown, why } = entry
  return `FAILED ${byWhom(look, entry)}: ${keyLabel(look.defs, gate, item)} ${shown}, ${why}.`
}
