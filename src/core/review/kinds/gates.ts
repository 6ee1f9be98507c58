// Hold points that failed, grew stale or fell otherwise than by the procedure's own next step: one exception for each, parted by
// what the record can tell of people behind it. A step that lets a hazard in makes a hold point fall because it is meant to:
// that is counted, and no exception.

import { CAUSES } from '../../job/close-causes.ts'
import type { CloseCause } from '../../job/entries.ts'
import { type GateStep, gateState, gatesOf } from '../../job/gate.ts'
import { keyLabel } from '../../job/item-label.ts'
import { type Fall, type FallClass, fallOf, isFall } from '../behind.ts'
import type { Found, Kind } from '../exception.ts'
import {
  byWhom,
  clause,
  type Look,
  type Move,
  named,
  namedById,
  sentence,
  times,
  when,
  whenFell,
} from '../look.ts'

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
  readonly fell: readonly Fall[]
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
    fell: rest.filter((move) => isFall(gate, move)).map((move) => fallOf(look, gate, move)),
    struck: rest.filter((move) => !isFall(gate, move)),
    planned,
  }
}

/** Worst first. */
const CLASSES: readonly FallClass[] = ['worked', 'not-clear', 'proved', 'after']

/** What became of so many falls, each a clause behind their number. */
const BECAME: Readonly<Record<FallClass, string>> = {
  worked: 'WORK WENT ON behind it',
  'not-clear': 'NOBODY KEYED CLEAR',
  proved: 'keyed clear and proved again',
  after: 'after the last work behind it',
}

const ALARMS: readonly FallClass[] = ['worked', 'not-clear']

function one(look: Look, gate: GateStep): Found[] {
  const { failed, fell, struck, planned } = eventsOf(look, gate)
  if (failed.length + fell.length + struck.length === 0) return []
  const told = [
    ...(failed.length === 0 ? [] : [`FAILED ${times(failed.length)}`]),
    ...(fell.length === 0 ? [] : [`fell ${times(fell.length)}${becameOf(fell)}`]),
    ...(struck.length === 0 ? [] : [`evidence void ${times(struck.length)} before it was complete`]),
  ]
  const entries = [
    ...[...failed, ...struck].map(({ entry }) => entry.seq),
    ...fell.flatMap(({ move, clear, again, worked }) => [
      move.entry.seq,
      ...[clear, again, ...worked].flatMap((entry) => entry?.seq ?? []),
    ]),
  ]
  const worst = Math.min(...fell.map((fall) => CLASSES.indexOf(fall.is)))
  return [
    {
      kind: kindOf(failed.length > 0, fell),
      what: `${alarmOf(fell)}${named(gate)}: ${told.join(', ')}`,
      sentences: [
        ...failed.flatMap(({ entry }) =>
          entry.type === 'evidence.failed' ? [failure(look, gate, entry)] : [],
        ),
        ...fallTexts(look, gate, fell),
        ...struck.map((move) =>
          sentence(`Void ${whenFell(look, move)}, before it was complete: ${causeText(gate, move)}`),
        ),
        ...(planned.length === 0
          ? []
          : [`Besides, it fell ${times(planned.length)} by a step that is meant to let something in.`]),
      ],
      entries,
      // People may be in there now: it is open until somebody keys that they are out.
      open: look.state.closed === null && gateState(look.state, gate.id).mustClear,
      grave: (Number.isFinite(worst) ? worst : CLASSES.length) + (failed.length > 0 ? 1 : 2),
    },
  ]
}

/** A kind says of all that stands in it what is so of each: one fall that nobody keyed clear of parts it from those seen to. */
function kindOf(hasFailed: boolean, fell: readonly Fall[]): Kind {
  const has = (is: FallClass) => fell.some((fall) => fall.is === is)
  if (hasFailed || has('worked') || has('not-clear')) return 'gate'
  if (has('after')) return 'gate-after'
  return fell.length === 0 ? 'gate-void' : 'gate-proved'
}

/** `; 4 keyed clear and proved again; 1 after the last work behind it`; one sort alone needs no number. */
/** What nobody may miss stands in front, where a line that is too long is not cut. */
function alarmOf(fell: readonly Fall[]): string {
  const worst = CLASSES.find((is) => fell.some((fall) => fall.is === is))
  return worst !== undefined && ALARMS.includes(worst) ? `${BECAME[worst]}: ` : ''
}

function becameOf(fell: readonly Fall[]): string {
  const sorts = CLASSES.flatMap((is) => {
    const many = fell.filter((fall) => fall.is === is)
    const notAgain = is === 'proved' && many.some(({ again }) => again === null)
    const says = notAgain ? 'keyed clear, not proved since' : BECAME[is]
    return many.length === 0 ? [] : [{ n: many.length, says }]
  })
  const [only] = sorts
  if (only !== undefined && sorts.length === 1) return alarmOf(fell) === '' ? `, ${only.says}` : ''
  return `: ${sorts.map(({ n, says }) => `${n} ${says}`).join('; ')}`
}

/** Falls alike are told in one sentence from this many on; one that is not alike stands in front of them. */
const ALIKE = 3

function fallTexts(look: Look, gate: GateStep, fell: readonly Fall[]): string[] {
  const alike = new Map<string, Fall[]>()
  for (const fall of fell.filter(isQuiet)) {
    const why = causeText(gate, fall.move)
    alike.set(why, [...(alike.get(why) ?? []), fall])
  }
  const many = [...alike].filter(([, falls]) => falls.length >= ALIKE)
  const grouped = new Set(many.flatMap(([, falls]) => falls))
  return [
    ...fell.filter((fall) => !grouped.has(fall)).map((fall) => fallText(look, gate, fall)),
    ...many.map(([why, falls]) => {
      const each = falls.map(
        ({ move, clear, again }) =>
          `${whenFell(look, move)}, ${[clear, again].map((one) => (one === null ? '?' : when(look, one))).join(', ')}`,
      )
      return `Fell ${times(falls.length)} alike: ${why}; the work at hand was not behind it; keyed clear and proved again each time. Fell, clear, proved: ${each.join('; ')}.`
    }),
  ]
}

/** Nobody was behind it by the record, everybody was keyed clear, and it was proved again. */
function isQuiet({ is, atHand, worked, clear, again }: Fall): boolean {
  return is === 'proved' && atHand === null && worked.length === 0 && clear !== null && again !== null
}

function fallText(
  look: Look,
  gate: GateStep,
  { move, is, atHand, worked, clear, again, last }: Fall,
): string {
  const at = whenFell(look, move)
  const fell = `Fell${at.startsWith('lapsed') ? ',' : ''} ${at}: ${causeText(gate, move)}`
  const people =
    atHand === null ? 'the work at hand was not behind it' : `people may have been in, at ${named(atHand)}`
  const [first] = worked
  const went =
    first === undefined || !('step' in first) || first.step === null
      ? []
      : [`WORK WENT ON behind it at ${when(look, first)}, ${namedById(look, first.step)}`]
  const lastWork =
    is !== 'after'
      ? []
      : [
          last === null || !('step' in last) || last.step === null
            ? 'nothing was ever done behind it'
            : `nothing was done behind it any more since ${when(look, last)}, ${namedById(look, last.step)}`,
        ]
  const out =
    clear !== null
      ? `clear ${when(look, clear)}`
      : again === null
        ? 'people were called out and nobody keyed clear'
        : 'nobody had to be called out'
  const proved = again === null ? 'not proved again' : `proved again ${when(look, again)}`
  return `${[fell, ...went, people, ...lastWork, `${out}, ${proved}`].join('; ')}.`
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
