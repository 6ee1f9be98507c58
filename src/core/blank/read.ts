// A read step on paper: where, how, what is believed, and a box for each repeat at each place.

import type { Definitions } from '../job/definitions.ts'
import { type Place, placesOf } from '../job/places.ts'
import { writtenFact } from '../rules/machine-facts.ts'
import { readRows } from '../sheet/briefing-step.ts'
import { nth } from '../talk/names.ts'
import { type BlankPiece, box, boxes, INITIALS, TIME, together, words } from './blank.ts'
import { placeDrawings } from './drawings.ts'

type ReadStep = Parameters<typeof placesOf>[0]

/** Where a place takes more repeats than these, the rest go under remarks: the boxes would be too narrow to write in. */
const MOST_BOXES = 5

export function readPieces(defs: Definitions, placed: ReadStep): BlankPiece[] {
  const { step } = placed
  const { at_most: most, within } = step.repeats
  const seat = defs.seats.find(({ id }) => id === step.with)
  const kinds: readonly string[] = seat?.kinds ?? []
  const how = Object.entries(step.how).filter(([kind]) => kinds.includes(kind))
  const unit = unitOf(defs, kinds)
  const repeats = Math.min(most, MOST_BOXES)
  const count = Array.from({ length: repeats }, (_, i) =>
    box(`${nth(i + 1)}${unit === null ? '' : `, ${unit}`}`, 2),
  )
  const [measured] = readRows(defs, step)
  return [
    words(measured?.text ?? '', 'strong'),
    ...how.map(([kind, says]) =>
      words(`${how.length === 1 ? '' : `With ${kind.replaceAll('_', ' ')}: `}${says}`),
    ),
    words(`${doubted(defs, step)} Then it is measured again, and if it stays, kept with why.`),
    ...(most > step.repeats.at_least
      ? [
          words(
            `Further apart than ${within.text}: once more, up to ${most} in all. If they then do not agree the place is HOLD.`,
          ),
        ]
      : []),
    words(NOT_APPLICABLE[step.not_applicable ?? 'reason']),
    together(
      ...placeDrawings(defs, placed),
      boxes(
        [box('where', 4.2), ...count, ...(unit === null ? [box('unit', 1)] : []), TIME, INITIALS],
        placesOf(placed).map((place) => [placeText(placed, place)]),
      ),
      boxes([box('instrument number', 2), box('remarks; n/a and why', 6)], [[]]),
    ),
  ]
}

const NOT_APPLICABLE = {
  never: 'No place here may be left out.',
  reason: 'A place that cannot be read: n/a, and why.',
  lead: 'A place that cannot be read: n/a, why, and the signature of a lead who does not do the work.',
} as const

function placeText({ number, step }: ReadStep, place: Place): string {
  const isAlone = step.stations.length === 1 && place.axis === null
  const axis = place.axis === null ? '' : `, ${place.axis.label}`
  return `${isAlone ? number : `${number}.${place.number}`}  ${place.station.label}${axis}`
}

/** Null where what may be read with shows it in several. */
function unitOf({ instruments }: Definitions, kinds: readonly string[]): string | null {
  const units = instruments.instruments.flatMap((one) =>
    kinds.includes(one.kind) && 'unit' in one ? [one.unit] : [],
  )
  const [unit] = units
  return unit !== undefined && units.every((one) => one === unit) ? unit : null
}

function doubted({ machine }: Definitions, { plausible }: ReadStep['step']): string {
  if (plausible.from === 'range')
    return `To be doubted outside ${plausible.least.text} to ${plausible.most.text}.`
  const off = `To be doubted more than ${plausible.below.text} under or ${plausible.above.text} over`
  switch (plausible.from) {
    case 'nominal':
      return `${off} nominal ${machine.bore.nominal.text}.`
    case 'counterbore':
      return machine.bore.counterbore === undefined
        ? 'To be doubted: no counterbore is on record to compare it with.'
        : `${off} the counterbore on record, ${machine.bore.counterbore.text}.`
    case 'standard':
      return `${off} the size on the standard of the instrument.`
    case 'record': {
      const name = plausible.of.replaceAll('_', ' ')
      const written = writtenFact(machine, plausible.of)
      return written === undefined
        ? `To be doubted: no ${name} is on record to compare it with.`
        : `${off} the ${name} on record, ${written.text}.`
    }
  }
}
