// Hold points that failed, grew stale or fell otherwise than by the procedure's own next step: one exception for each. A step
// that lets a hazard in makes a hold point fall because it is meant to: that is counted, and no exception.
import type { CloseCause } from '../../job/entries.ts'
import { type GateStep, gateState, gatesOf } from '../../job/gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import { CAUSES } from '../../sheet/gate-block.ts'
import type { Found } from '../exception.ts'
import { byWhom, clause, type Look, type Move, named, sentence, times, when } from '../look.ts'

/** What the crew meant to do: less grave than what came by itself. */
const MEANT: readonly (CloseCause | null)[] = ['people', 'left', 'handed-over', 'again']

export function gates(look: Look): Found[] {
  return gatesOf(look.defs).flatMap((gate) => one(look, gate))
}

/** How often hold points fell because the procedure's own step let a hazard in. */
export function plannedFalls(look: Look): number {
  return gatesOf(look.defs).flatMap((gate) => eventsOf(look, gate).planned).length
}

interface Events {
  readonly failed: readonly Move[]
  /** While it was complete, so that people may have been behind it. */
  readonly fell: readonly Move[]
  /** Evidence that was void before all of it was in. */
  readonly struck: readonly Move[]
  readonly planned: readonly Move[]
}

function eventsOf(look: Look, gate: GateStep): Events {
  const failed = look.moves.filter(({ entry }) => entry.type === 'evidence.failed' && entry.step === gate.id)
  const voids = look.moves.filter(
    (move) => isFall(gate, move) || (move.entry.type === 'gate.closed' && move.entry.step === gate.id),
  )
  const planned = voids.filter((move) => causeOf(gate, move) === 'opening')
  const rest = voids.filter((move) => !planned.includes(move))
  return {
    failed,
    fell: rest.filter((move) => isFall(gate, move)),
    struck: rest.filter((move) => !isFall(gate, move)),
    planned,
  }
}

function one(look: Look, gate: GateStep): Found[] {
  const { failed, fell, struck, planned } = eventsOf(look, gate)
  const all = [...failed, ...fell, ...struck]
  if (all.length === 0) return []
  const causes = [...fell, ...struck].map((move) => causeOf(gate, move))
  const answers = fell.flatMap(({ entry }) => [
    after(look, gate, entry.seq, 'people.clear'),
    after(look, gate, entry.seq, 'gate.opened'),
  ])
  const isOpen = gateState(look.state, gate.id).status === 'open'
  const told = [
    ...(failed.length === 0 ? [] : [`FAILED ${times(failed.length)}`]),
    ...(fell.length === 0 ? [] : [`fell ${times(fell.length)}`]),
    ...(struck.length === 0 ? [] : [`evidence void ${times(struck.length)}`]),
    isOpen ? 'proved again' : 'not proved since',
  ]
  return [
    {
      kind: 'gate',
      what: `${named(gate)}: ${told.join(', ')}`,
      sentences: [
        ...failed.flatMap(({ entry }) =>
          entry.type === 'evidence.failed' ? [failure(look, gate, entry)] : [],
        ),
        ...fell.map((move) => fall(look, gate, move)),
        ...struck.map((move) =>
          sentence(`Void ${when(look, move.entry)}, before it was complete: ${causeText(gate, move)}`),
        ),
        ...(planned.length === 0
          ? []
          : [`Besides, it fell ${times(planned.length)} by a step that is meant to let something in.`]),
      ],
      entries: [
        ...all.map(({ entry }) => entry.seq),
        ...answers.flatMap((e) => (e === undefined ? [] : [e.seq])),
      ],
      open: false,
      grave: failed.length > 0 ? 0 : causes.every((cause) => MEANT.includes(cause)) ? 2 : 1,
    },
  ]
}

function fall(look: Look, gate: GateStep, move: Move): string {
  const clear = after(look, gate, move.entry.seq, 'people.clear')
  const again = after(look, gate, move.entry.seq, 'gate.opened')
  const out = clear === undefined ? 'nobody keyed clear' : `clear ${when(look, clear)}`
  const proved = again === undefined ? 'not proved again' : `proved again ${when(look, again)}`
  return `Fell ${when(look, move.entry)}: ${causeText(gate, move)}; ${out}, ${proved}.`
}

/** What came of it, up to the next time the hold point fell. */
function after(
  look: Look,
  gate: GateStep,
  seq: number,
  type: 'people.clear' | 'gate.opened',
): Move['entry'] | undefined {
  const later = look.moves.filter(({ entry }) => entry.seq > seq)
  const next = later.find((move) => isFall(gate, move))?.entry.seq ?? Number.POSITIVE_INFINITY
  return later.find(({ entry }) => entry.type === type && entry.step === gate.id && entry.seq < next)?.entry
}

function isFall(gate: GateStep, { before, after: then }: Move): boolean {
  return gateState(before, gate.id).status === 'open' && gateState(then, gate.id).status !== 'open'
}

function causeOf(gate: GateStep, { entry, after: then }: Move): CloseCause | null {
  return entry.type === 'gate.closed' ? entry.cause : gateState(then, gate.id).cause
}

function causeText(gate: GateStep, move: Move): string {
  const cause = causeOf(gate, move)
  const why = move.entry.type === 'gate.closed' ? move.entry.why : gateState(move.after, gate.id).why
  return clause(why ?? (cause === null ? 'the cause is not told' : CAUSES[cause]))
}

function failure(
  look: Look,
  gate: GateStep,
  entry: Extract<Move['entry'], { type: 'evidence.failed' }>,
): string {
  const { item, shown, why } = entry
  return sentence(
    `FAILED ${byWhom(look, entry)}: ${keyLabel(look.defsAt(entry), gate, item)} ${shown}, ${why}`,
  )
}
