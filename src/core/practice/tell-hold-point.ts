// What is there at the lines of a hold point: locks, numbers, gas, gauges, waits and slings, and the words that most of them share. Words
// that only one procedure asks come with its own table.
import type { EvidenceOf } from '../definition/evidence.ts'
import { type Definitions, gasLimitById } from '../job/definitions.ts'
import { massUnit } from '../job/evidence-lift.ts'
import { gatesOf, inspectedWords } from '../job/gate.ts'
import { itemLabel } from '../job/item-label.ts'
import { chanceOf } from './chance.ts'
import { boreAir, ventAir } from './inside-air.ts'
import type { AirPlace, HiddenMachine } from './machine.ts'
import type { Spot, Teller, Truth } from './tell.ts'

export const line = (seen: string, mayType: string | null): Truth => ({ kind: 'line', seen, mayType })

/** `good`: the words may be typed. `bad`: nobody goes in. */
export interface Say {
  readonly good: (seen: string) => Truth
  readonly bad: (seen: string) => Truth
}
export type WordsTeller = (machine: HiddenMachine, say: Say) => Truth

/** By id of a line of words. */
export type WordLines = Readonly<Record<string, WordsTeller>>

/** By id of a line that is measured: what a faultless instrument would show, SI. */
export type MeasuredLines = Readonly<Record<string, (machine: HiddenMachine) => number>>

export interface Own {
  readonly words?: WordLines
  readonly measured?: MeasuredLines
  /** Numbers that are not there, by id of the line: what is seen in their place. */
  readonly numbers?: Readonly<Record<string, string>>
  /** What is seen while a wait lasts and when it is over, `sinceS` after it began; null: it has not begun. */
  readonly waits?: Readonly<Record<string, (machine: HiddenMachine, sinceS: number | null) => Waited>>
}

/** `isSo`: what is typed at the end of a wait is so. */
export interface Waited {
  readonly seen: string
  readonly isSo: boolean
}

export function holdPoint(own: Own = {}): Teller {
  return (spot) => {
    const { item, machine } = spot
    if (item === null) return null
    const { evidence } = item
    switch (evidence.kind) {
      case 'locks':
        return lockSeen(machine, item.point)
      case 'numbers': {
        const missing = own.numbers?.[evidence.id]
        return missing === undefined ? numberSeen(spot, evidence) : line(missing, null)
      }
      case 'words': {
        const teller = own.words?.[evidence.id] ?? COMMON_WORDS[evidence.id]
        return (
          teller?.(machine, {
            good: (seen) => line(seen, evidence.words),
            bad: (seen) => line(seen, null),
          }) ?? null
        )
      }
      case 'gas':
        return gasAt(spot, evidence.limit)
      case 'measured': {
        const si = own.measured?.[evidence.id]?.(machine)
        return si === undefined ? null : { kind: 'figure', si, isKnocked: false, hurried: NOT_HURRIED }
      }
      case 'wait':
        return waitSeen(spot, evidence, own)
      case 'lift':
        return liftSeen(spot, evidence)
      case 'witness':
        return null
    }
  }
}

/** At a hold point a hurried figure is no evidence whatever it shows. */
const NOT_HURRIED = [0, 0] as const

function lockSeen(machine: HiddenMachine, point: { id: string; name: string } | null): Truth | null {
  const lock = machine.locks[point?.id ?? '']
  if (lock === undefined || point === null) return null
  const at = `At ${point.name}`
  switch (lock.hangs) {
    case 'shut':
      return line(`${at}: a lock, shut, pulled at and it holds. Its number is ${lock.number}.`, lock.number)
    case 'open':
      return line(`${at}: a lock with the number ${lock.number}. You pull at it, and it comes open.`, null)
    case 'nowhere':
      return line(`${at}: a hasp, a tag, and no lock in it.`, null)
  }
}

const CARRIES: Readonly<Record<EvidenceOf<'numbers'>['of'], readonly [letters: string, seen: string]>> = {
  permit: ['WP-', 'The permit hangs in its case at the machine, for this job and this day. Its number is'],
  personal_lock: ['P-', 'On the lock box, a lock of their own, shut. Its number is'],
  blind: ['B-', 'The tag at the flange, wiped and read. Its number is'],
  tag: ['T-', 'The tag that hangs on it, wiped and read. Its number is'],
  part: ['R-', 'Stamped into the end of it:'],
}

/** One number for one thing, wherever it is asked. */
function numberSeen({ defs, machine, item }: Spot, evidence: EvidenceOf<'numbers'>): Truth | null {
  const name = item?.person ?? evidence.same_as ?? evidence.notes ?? evidence.id
  // Somebody else has to come onto the job first: there is no lock of theirs.
  if (evidence.per === 'person' && (item?.person ?? null) === null) return null
  if (machine.bleeds.between === 'blows' && evidence.id === 'suction_blind')
    return line(
      'No blind in it. At the open bleed between the two blocks gas comes out, and goes on coming.',
      null,
    )
  const [letters, seen] = CARRIES[evidence.of]
  const first = Math.floor(chanceOf(machine.seed, 'numbers', evidence.of).between(110, 880))
  const number = `${letters}${first + namesOf(defs, evidence.of).indexOf(name)}`
  // Of two of a sort it is said at which one somebody stands.
  const at = evidence.of === 'blind' && item !== null ? `At the ${itemLabel(defs, item)}. ` : ''
  return line(`${at}${seen} ${number}.`, number)
}

/** Everything that carries such a number in the job, in order. */
function namesOf(defs: Definitions, of: EvidenceOf<'numbers'>['of']): readonly string[] {
  const named = gatesOf(defs).flatMap(({ step }) =>
    step.evidence.flatMap((one) =>
      one.kind === 'numbers' && one.of === of ? [one.same_as ?? one.notes ?? one.id] : [],
    ),
  )
  return [...new Set(named), ...defs.crew.crew.map(({ id }) => id)]
}

function waitSeen({ machine, begunS }: Spot, evidence: EvidenceOf<'wait'>, own: Own): Truth | null {
  const waited = own.waits?.[evidence.id]?.(machine, begunS)
  if (waited === undefined) return null
  if (begunS === null) return line(waited.seen, evidence.begin_words)
  return line(waited.seen, waited.isSo ? evidence.words : null)
}

/** A sling that is rated for twice the load; what hangs on it is invented for practice. */
function liftSeen({ defs, machine, item }: Spot, evidence: EvidenceOf<'lift'>): Truth | null {
  const chance = chanceOf(machine.seed, 'lift', evidence.id)
  const unit = massUnit(defs)
  const load = Math.round(chance.between(160, 240) / (unit === 'lb' ? 5 : 10)) * 5
  switch (item?.part) {
    case 'load':
      return line(`On the plate and on the drawing of what is lifted: ${load} ${unit}.`, `${load} ${unit}`)
    case 'rating':
      return line(
        `On the tag of the sling, for the angle it is rigged at: ${load * 2} ${unit}.`,
        `${load * 2} ${unit}`,
      )
    case 'sling': {
      const number = `S-${Math.floor(chance.between(110, 880))}`
      return line(`On the tag of the sling: ${number}.`, number)
    }
    case 'inspected':
      return line(
        'Looked over from eye to eye, hook and latch: no cut, no kink, the tag legible.',
        inspectedWords(evidence),
      )
    default:
      return null
  }
}

const COMMON_WORDS: WordLines = {
  try_start: ({ driver }, { good, bad }) =>
    driver === 'still'
      ? good(
          'The lamp of the panel is lit. Everybody is clear. The start button is pressed, and held: nothing moves, nothing hums.',
        )
      : bad(
          'The lamp of the panel is lit. Everybody is clear. The start button is pressed: the motor hums, and the coupling jerks round.',
        ),
  bleeds: bleedsSeen,
  block: blockSeen,
  bump: ({ meterAnswers }, { good, bad }) =>
    meterAnswers
      ? good('Test gas on the meter: each figure climbs to what stands on the bottle, and falls back.')
      : bad('Test gas on the meter, a full minute: the figure for what burns stays at 0.'),
}

export function bleedsSeen({ bleeds }: HiddenMachine, { good, bad }: Say): Truth {
  const ends = (['head', 'crank'] as const).map((end) => ({ end, is: bleeds[end] }))
  const blows = ends.find(({ is }) => is === 'blows')
  if (blows !== undefined)
    return bad(
      `A rag held out at each bleed for a minute. At the ${blows.end} end a breath of gas, cold, and it does not die down.`,
    )
  const plugged = ends.find(({ is }) => is === 'plugged')
  if (plugged !== undefined)
    return bad(
      `A rag held out at each bleed for a minute: nothing at either. A wire goes through the one; at the ${plugged.end} end it stops hard after an inch.`,
    )
  return good('A rag held out at each bleed for a minute: nothing at either. A wire goes through both.')
}

function blockSeen({ block }: HiddenMachine, { good, bad }: Say): Truth {
  switch (block) {
    case 'both-ways':
      return good('Pushed forwards, pushed backwards, knocked from below: the block is pinned and stays.')
    case 'one-way':
      return bad('Pushed forwards the crank stands. Pushed backwards it comes away from the block.')
    case 'loose':
      return bad('The block lies in the crankcase unpinned. Knocked from below it rolls aside.')
  }
}

function gasAt(spot: Spot, limitId: string): Truth | null {
  const limit = gasLimitById(spot.defs, limitId)
  if (limit === undefined) return null
  // At its first test a place is as it is; what comes back comes after it.
  const { oxygen, methane, sulfide } = airAt(
    spot.answered > 0 ? spot : { ...spot, sinceGasS: null },
    limit.place,
  )
  const share = {
    oxygen,
    flammable: methane,
    flammable_in_inert: methane,
    hydrogen_sulfide: sulfide,
  }[limit.gas]
  return { kind: 'gas', gas: limit.gas, share, oxygen }
}

/** The air at a place by now. Gas that comes back takes the place of the air; what changed once it was tested shows at the next test. */
export function airAt(
  { defs, machine, sinceGasS, answered, inside }: Spot,
  place: AirPlace,
): HiddenMachine['air'][AirPlace] {
  const { returning, later } = machine
  const here = {
    breathing_zone: machine.air.breathing_zone,
    in_the_opening: boreAir(defs, machine, inside),
    at_the_vent: ventAir(defs, machine, inside),
  }[place]
  const air = answered > 0 && later !== null && place === later.place ? later.air : here
  if (returning === null || sinceGasS === null || place === 'at_the_vent') return air
  const more = Math.min(0.9, Math.max(0, sinceGasS - returning.afterS) * returning.methanePerS)
  return { ...air, methane: air.methane + more * (1 - air.methane), oxygen: air.oxygen * (1 - more) }
}
