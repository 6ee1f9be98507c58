// What the hidden machine answers at each step of the bore inspection.
import { diameterAt } from './bore-truth.ts'
import { placeAt } from './facts.ts'
import { type Gauging, sizeBy, standardBy, warmthOf } from './gauging.ts'
import type { BoreTruth } from './machine.ts'
import { eye, type Teller, type Truth } from './tell.ts'
import { holdPoint } from './tell-hold-point.ts'

/** Where the gauge really goes by the marks that are there. Clock positions. */
function markedAxis<A extends { readonly from: number; readonly to: number }>(
  { isTurned }: BoreTruth,
  axis: A,
): A {
  return isTurned ? { ...axis, from: axis.from + 3, to: axis.to + 3 } : axis
}

const GAUGING: Gauging = {
  knockedAfter: 'bore',
  sizeAt: ({ bore }, { station, axis }) =>
    bore === null || axis === null ? null : diameterAt(bore, placeAt(station, markedAxis(bore, axis))),
  partAlpha: ({ defs }) => defs.machine.bore.expansion?.per_kelvin ?? 0,
}
const size = sizeBy(GAUGING)
const standard = standardBy(GAUGING)

/** What the eye sees of a bore. */
function ofBore(see: (bore: BoreTruth) => Truth): Teller {
  return ({ machine }) => (machine.bore === null ? null : see(machine.bore))
}

const strip = ofBore(({ strip: left }) => {
  const gone = 'The worn surface runs out to the very edge of the counterbore: nothing past it but the step.'
  const there = 'a band as wide as two fingers, with the tool marks still on it.'
  switch (left) {
    case 'head end':
      return eye(`Past the head end of ring travel ${there}`, 'present')
    case 'crank end':
      return eye(`${gone} So at the head end. Past the crank end ${there}`, 'crank_end')
    case 'gone':
      return eye(`${gone} So at both ends.`, 'gone')
  }
})

const surface = ofBore(({ surface: found }) => {
  const seen = {
    scored: 'Two bright lines along the bottom; your nail drops into one of them.',
    ridge: 'At the crank end of ring travel your nail stops at a raised edge.',
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
  hold_point: holdPoint(),
  part_temp_before: warmthOf('boreBefore'),
  gauge_temp_before: warmthOf('gaugeBefore'),
  set_before: standard,
  bore: size,
  strip,
  strip_diameter: size,
  strip_diameter_crank: size,
  counterbore: size,
  surface,
  wear_side: wearSide,
  jacket_side: jacketSide,
  part_temp_after: warmthOf('boreAfter'),
  gauge_temp_after: warmthOf('gaugeAfter'),
  set_after: standard,
}
