// Everything that was read, by step and place, with every reading there ever was at it.
import { asKind, type Definitions, type PlacedStep } from '../../job/definitions.ts'
import { applicability } from '../../job/next.ts'
import { type Place, placeResult, placesOf, WHY_NOT } from '../../job/places.ts'
import { type Reading, type State, stands } from '../../job/state.ts'
import { besideText } from '../../sheet/by-sign.ts'
import { isFinish, placeFigure, placeName, placeNumber, spreadText } from '../../talk/names.ts'
import type { Report } from '../schema.ts'
import type { Figure } from '../schema-words.ts'
import { asFinish, figureOf, figureRead } from './figure.ts'
import { sketchesOf } from './sketches.ts'

type ReadStep = Parameters<typeof placesOf>[0]
type Told = Report['readings'][number]

/** Steps that read something, were to, or were said not to apply; a step left out by its own rule is told with what was left out. */
export function readStepsOf(defs: Definitions, state: State): Told[] {
  return defs.steps.flatMap((placed): Told[] => {
    if (placed.step.kind !== 'read') return []
    const read = asKind(placed, 'read')
    const places = placesOf(read)
    const isTouched = places.some(
      ({ key }) => (state.readings[key] ?? []).length > 0 || state.notApplicable[key] !== undefined,
    )
    if (!isTouched) return []
    const told = places.map((place) => placeOf(defs, state, read, place))
    return [
      {
        number: String(placed.number),
        step: placed.id,
        title: placed.step.title,
        of: read.step.of,
        stage: read.step.stage ?? null,
        places: told,
        sketches: sketchesOf(defs, read, told),
      },
    ]
  })
}

function placeOf(defs: Definitions, state: State, read: ReadStep, place: Place): Told['places'][number] {
  const result = placeResult(read, place, state)
  const counts = applicability(defs, state, read) === 'do'
  const apart = result.spread !== null && result.readings.length > 1 ? result.spread : null
  return {
    number: placeNumber(defs, read.id, place.key),
    name: placeName(defs, read.id, place.key),
    state: result.state,
    value: counts ? combined(defs, read, place, state) : null,
    spread: apart === null ? null : spreadText(defs, state, place.key, apart),
    why: whyNone(defs, state, read, place),
    readings: (state.readings[place.key] ?? []).map((one) => readingOf(defs, one)),
  }
}

function combined(defs: Definitions, read: ReadStep, place: Place, state: State): Figure | null {
  const result = placeResult(read, place, state)
  const shown = placeFigure(defs, read, result)
  const last = result.readings.at(-1)
  if (shown === null || result.si === null || last === undefined) return null
  const isShop = read.step.quantity === 'length' && !isFinish(defs, last.instrument)
  const unit = isShop ? defs.machine.shop_units.length : last.unit
  const figure = figureOf(read.step.quantity, result.si, unit, shown)
  return isFinish(defs, last.instrument) ? asFinish(figure) : figure
}

function whyNone(defs: Definitions, state: State, read: ReadStep, place: Place): string | null {
  if (applicability(defs, state, read) !== 'do') return 'its step is not to be done any more'
  const result = placeResult(read, place, state)
  if (result.state === 'settled') return null
  const said = state.notApplicable[place.key]
  const why = WHY_NOT[result.state]
  return result.state === 'not-applicable' && said !== undefined ? `${why}: ${said}` : why
}

function readingOf(defs: Definitions, one: Reading): Told['places'][number]['readings'][number] {
  return {
    seq: one.seq,
    at: one.at,
    by: one.by,
    typed: one.typed,
    value: figureRead(defs, one),
    instrument: one.instrument,
    counts: stands(one) ? 'yes' : one.correctedBy !== null ? 'corrected' : 'void',
    kept: one.keptBecause,
    corrects: one.corrects,
    ...(one.paper === undefined ? {} : { paper: besideText(one.paper) }),
  }
}

/** Of what stands where a step is named. */
export function numbered({ number, step }: PlacedStep): string {
  return `${number} ${step.title}`
}
