// What was measured, drawn as on the screen with the figures of its places: one sketch for each line across it.
import { drawPlace } from '../../drawing/place.ts'
import type { DrawnStation } from '../../drawing/types.ts'
import type { Definitions } from '../../job/definitions.ts'
import { type Place, placesOf } from '../../job/places.ts'
import type { Report } from '../schema.ts'

type ReadStep = Parameters<typeof placesOf>[0]
type Told = Report['readings'][number]
type ToldPlace = Told['places'][number]

/** Columns that the widest picture takes with the view from the head end beside it. */
const COLUMNS = 66

/** `told`: its places, in the order of `placesOf`. */
export function sketchesOf(
  { machine }: Definitions,
  read: ReadStep,
  told: readonly ToldPlace[],
): Told['sketches'] {
  const { drawing: kind, axes, title, number } = { ...read.step, number: read.number }
  if (kind === 'none') return []
  const places = placesOf(read).map((place, i) => ({ place, told: told[i] }))
  return (axes ?? [null]).flatMap((axis): Told['sketches'] => {
    const on = places.filter(({ place }) => place.axis?.id === axis?.id)
    const stations = on.map(({ place, told: one }) => stationOf(place, one))
    const { lines } = drawPlace(
      {
        kind,
        stations,
        here: null,
        across: axis !== null,
        ...(axis === null ? {} : { axis, axes: axes ?? [] }),
        hasCounterbore: machine.bore.counterbore !== undefined,
      },
      { ascii: false, width: COLUMNS },
    )
    // One line is no picture.
    if (lines.length < 2) return []
    const units = [...new Set(on.flatMap(({ told: one }) => one?.value?.unit ?? []))]
    const unit = units.length === 0 ? '' : ` [${units.join(', ')}]`
    return [
      {
        title: `${number} ${title}${axis === null ? '' : `, ${axis.label}`}${unit}`,
        told: `${stations.map(({ words, value }) => `${words} ${value ?? 'not measured'}`).join('; ')}.`,
        lines: [...lines],
      },
    ]
  })
}

function stationOf({ station }: Place, told: ToldPlace | undefined): DrawnStation & { words: string } {
  const value = figureOf(told)
  return {
    id: station.id,
    label: station.short ?? station.label,
    words: station.label,
    at: station.at,
    ...(value === undefined ? {} : { value }),
    ...(station.in_counterbore === true ? { inCounterbore: true } : {}),
  }
}

/** The figure that counts; what stands there where a place is done with and has none. */
function figureOf(told: ToldPlace | undefined): string | undefined {
  if (told === undefined || told.value !== null) return told?.value?.shown
  if (told.state === 'not-applicable') return 'n/a'
  return told.state === 'unsettled' ? 'no figure' : undefined
}
