// What the hidden machine answers at each step of the bore inspection.

import { gasLimitById } from '../job/definitions.ts'
import { diameterAt } from './bore-truth.ts'
import { placeAt } from './facts.ts'
import { type Gauging, sizeBy, standardBy, warmthOf } from './gauging.ts'
import type { AirPlace, BoreTruth, HiddenMachine } from './machine.ts'
import type { Spot, Teller, Truth } from './truth.ts'

const GAUGING: Gauging = {
  knockedAfter: 'bore',
  sizeAt: ({ bore }, { station, axis }) =>
    bore === null || axis === null ? null : diameterAt(bore, placeAt(station, axis)),
  partAlpha: ({ defs }) => defs.machine.bore.expansion?.per_kelvin ?? 0,
}
const size = sizeBy(GAUGING)
const standard = standardBy(GAUGING)

const line = (seen: string, mayType: string | null): Truth => ({ kind: 'line', seen, mayType })
const eye = (seen: string, ...conditions: readonly string[]): Truth => ({ kind: 'eye', seen, conditions })

/** What the eye sees of a bore. */
function ofBore(see: (bore: BoreTruth) => Truth): Teller {
  return ({ machine }) => (machine.bore === null ? null : see(machine.bore))
}

const holdPoint: Teller = (spot) => {
  const { item, machine } = spot
  const evidence = item?.evidence
  if (evidence === undefined || item === null) return null
  if (evidence.kind === 'locks') return lockSeen(machine, item.point)
  if (evidence.kind === 'gas') return gasAt(spot, evidence.limit)
  return evidence.kind === 'words' ? wordsSeen(machine, evidence.id, evidence.words) : null
}

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

function wordsSeen(machine: HiddenMachine, id: string, words: string): Truth | null {
  const good = (seen: string) => line(seen, words)
  const bad = (seen: string) => line(seen, null)
  switch (id) {
    case 'try_start':
      return machine.driver === 'still'
        ? good('Everybody is clear. The start button is pressed, and held: nothing moves, nothing hums.')
        : bad(
            'Everybody is clear. The start button is pressed: the motor hums, and the coupling jerks round.',
          )
    case 'bleeds':
      return bleedsSeen(machine, good, bad)
    case 'block':
      return blockSeen(machine, good, bad)
    case 'bump':
      return machine.meterAnswers
        ? good('Test gas on the meter: each figure climbs to what stands on the bottle, and falls back.')
        : bad('Test gas on the meter, a full minute: the figure for what burns stays at 0.')
    default:
      return null
  }
}

type Say = (seen: string) => Truth

function bleedsSeen({ bleeds }: HiddenMachine, good: Say, bad: Say): Truth {
  const ends = (['head', 'crank'] as const).map((end) => ({ end, is: bleeds[end] }))
  const blows = ends.find(({ is }) => is === 'blows')
  if (blows !== undefined)
    return bad(
      `A hand at each bleed for a minute. At the ${blows.end} end a breath of gas, cold, and it does not die down.`,
    )
  const plugged = ends.find(({ is }) => is === 'plugged')
  if (plugged !== undefined)
    return bad(
      `A hand at each bleed for a minute: nothing at either. A wire goes through the one; at the ${plugged.end} end it stops hard after an inch.`,
    )
  return good('A hand at each bleed for a minute: nothing at either. A wire goes through both.')
}

function blockSeen({ block }: HiddenMachine, good: Say, bad: Say): Truth {
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
  if (limit === undefined || limit.place === 'at_the_vent' || limit.gas === 'flammable_in_inert') return null
  const { oxygen, methane, sulfide } = airAt(spot, limit.place)
  const share = { oxygen, flammable: methane, hydrogen_sulfide: sulfide }[limit.gas]
  return { kind: 'gas', gas: limit.gas, share, oxygen }
}

/** The air at a place by now. Gas that comes back takes the place of the air. */
export function airAt({ machine, sinceGasS }: Spot, place: AirPlace): HiddenMachine['air'][AirPlace] {
  const air = machine.air[place]
  const { returning } = machine
  if (returning === null || sinceGasS === null) return air
  const more = Math.min(0.9, Math.max(0, sinceGasS - returning.afterS) * returning.methanePerS)
  return { ...air, methane: air.methane + more * (1 - air.methane), oxygen: air.oxygen * (1 - more) }
}

const strip = ofBore(({ isStripGone }) =>
  isStripGone
    ? eye(
        'The worn surface runs out to the very edge of the counterbore: nothing past it but the step.',
        'gone',
      )
    : eye(
        'Past the end of ring travel a band as wide as two fingers, with the tool marks still on it.',
        'present',
      ),
)

const surface = ofBore(({ surface: found }) => {
  const seen = {
    scored: 'Two bright lines along the bottom; your nail drops into one of them.',
    ridge: 'At the crank end of ring travel your nail stops at a ledge.',
    cracked: 'From a valve port a dark hair line runs into the bore, and wiping does not take it away.',
  }
  if (found.length === 0)
    return eye(
      'An even sheen all round, fine cross marks in the middle. Your nail slides over all of it.',
      'sound',
    )
  return eye(found.map((one) => seen[one]).join(' '), ...found)
})

const wearSide = ofBore(({ bottomM, topM, sideM }) => {
  if (topM > bottomM && topM > sideM)
    return eye('Bright and polished over your head; the bottom still has its tool marks.', 'top')
  if (sideM > bottomM)
    return eye('Bright and polished on the right, at three o’clock; dull on the left.', 'side')
  return eye('Brightest at the bottom, and fading up both sides.', 'bottom')
})

const jacketSide = ofBore(({ jacket }) => {
  switch (jacket) {
    case 'none':
      return eye('Oiled and clean along the bottom and round both ends. Wiped, it stays dry.', 'none')
    case 'rust':
      return eye('A brown streak from a plug in the wall, dry to the finger.', 'rust')
    case 'damp':
      return eye(
        'Wiped dry. A minute later the rag comes away wet from the same place at the head end.',
        'damp',
      )
    case 'leak':
      return eye('Water stands along the bottom, and a thread of it runs in from the crank end.', 'leak')
  }
})

export const BORE_INSPECTION: Readonly<Record<string, Teller>> = {
  hold_point: holdPoint,
  part_temp_before: warmthOf('boreBefore'),
  gauge_temp_before: warmthOf('gaugeBefore'),
  set_before: standard,
  bore: size,
  strip,
  strip_diameter: size,
  counterbore: size,
  surface,
  wear_side: wearSide,
  jacket_side: jacketSide,
  part_temp_after: warmthOf('boreAfter'),
  gauge_temp_after: warmthOf('gaugeAfter'),
  set_after: standard,
}
