// The drawing for the place being measured, from the procedure's own stations and axes and the readings so far.
import { drawBoreProfile } from '../drawing/bore-profile.ts'
import { drawFigure, drawFigureLow, type FigureKind } from '../drawing/figures.ts'
import { drawPlace } from '../drawing/place.ts'
import { drawStrip } from '../drawing/strip.ts'
import { tellFigure, tellPlace, tellProfile } from '../drawing/told.ts'
import type { Drawing, DrawnStation } from '../drawing/types.ts'
import { asKind, type Definitions, instrumentById } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { placeResult, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { bareLength, placeFigure } from '../talk/names.ts'
import { type Row, row, type SheetStyle, textWidth } from './block.ts'

/** The marks of a place drawing; a drawing of one line has none. */
export const LEGEND = '# instrument, here   x measured   o to come'

/** What the letters of a drawing and its round view stand for: whoever is new to it reads neither from a picture. */
const ENDS = 'HE head end, CE crank end'
const CLOCK = 'clock face: twelve on top'

/** The key to the letters that are in a drawing; none where it has none. */
export function keyRows(drawn: readonly Row[], hasAxis: boolean): Row[] {
  const isIn = (word: RegExp) => drawn.some(({ text }) => word.test(text))
  const key = [
    ...(isIn(/\bHE\b/) && isIn(/\bCE\b/) ? [ENDS] : []),
    ...(hasAxis && isIn(/\b12\b/) ? [CLOCK] : []),
  ]
  return key.length === 0 ? [] : [row(key.join('; '), 'faint')]
}

/** What was measured at this very station in the other directions, a line each: `TOP TO BOTTOM here: 9.5034 in`. */
export function acrossHere(defs: Definitions, state: State, { step, place }: ReadPrompt): string[] {
  const placed = asKind(step, 'read')
  return placesOf(placed)
    .filter(({ station, key }) => station.id === place.station.id && key !== place.key)
    .flatMap((other) => {
      const result = placeResult(placed, other, state)
      const unit = result.readings.at(-1)?.unit
      const figure = figureOf(defs, placed, result)
      const isLength = placed.step.quantity === 'length'
      const named = isLength ? defs.machine.shop_units.length : unit
      return figure === undefined || other.axis === null
        ? []
        : [`${other.axis.label} here: ${figure}${result.si === null ? '' : ` ${named ?? ''}`}`]
    })
}

/** Instruments that are set from one side of a part to the other. All else touches it in one place. */
const ACROSS: readonly string[] = ['inside_micrometer', 'bore_gauge', 'outside_micrometer']
/** Lines to draw in, from all that are wanted to the lowest picture there is. */
const HEIGHTS = [undefined, 13, 12, 11, 10, 9, 8, 7, 6, 5] as const
/** Lines of a profile: whole, as a table, as words. */
const PROFILE_HEIGHTS = [8, 7, 6, 5, 4, 3, 2] as const

type Placed = Parameters<typeof placesOf>[0]
type ReadPrompt = Extract<Prompt, { kind: 'read' }>

/** Heights of the lowest picture, drawn only where no other has room. */
const STRIP_HEIGHTS = [3, 2, 1] as const

export interface Pictures {
  /** The fullest form first. */
  readonly drawings: Row[][]
  /** In three lines and fewer, for where none of the others has room. */
  readonly strips: Row[][]
}

const NONE: Pictures = { drawings: [], strips: [] }

/** Every form of the drawing; none where the step asks for none. */
export function placeDrawings(
  defs: Definitions,
  state: State,
  prompt: ReadPrompt,
  style: SheetStyle,
): Pictures {
  const { step } = asKind(prompt.step, 'read')
  const { drawing } = step
  if (drawing === 'none') return NONE
  const { axis } = prompt.place
  const place = {
    kind: drawing,
    stations: stationsOf(defs, state, prompt),
    here: prompt.place.station.id,
    across: ACROSS.includes(instrumentById(defs, prompt.instrument)?.kind ?? ''),
    ...(axis === null ? {} : { axis, axes: step.axes ?? [] }),
    hasCounterbore: defs.machine.bore.counterbore !== undefined,
  }
  if (style.linear === true) {
    const { where, beside } = tellPlace(place)
    const measured = acrossHere(defs, state, prompt).map((text) => `Measured, ${text}.`)
    return { drawings: toldRows([where, ...measured, ...beside]), strips: [] }
  }
  const width = Math.min(66, textWidth(style))
  const drawn = HEIGHTS.map((height) =>
    drawPlace(place, { ascii: style.ascii, width, ...(height === undefined ? {} : { height }) }),
  )
  const strips = STRIP_HEIGHTS.map((height) => drawStrip(place, { ascii: style.ascii, width, height }))
  // Fewer are words alone, and the title says the place as well as they do.
  return { drawings: formsOf(drawn, 3), strips: formsOf(strips, 1) }
}

/** The picture of a step where nothing is read, in its one form and its low one. */
export function figureForms(kind: FigureKind | undefined, style: SheetStyle): Pictures {
  if (kind === undefined) return NONE
  if (style.linear === true) return { drawings: toldRows([tellFigure(kind)]), strips: [] }
  const options = { ascii: style.ascii, width: textWidth(style) }
  return {
    drawings: formsOf([drawFigure(kind, options)], 1),
    strips: formsOf([drawFigureLow(kind, options)], 1),
  }
}

function toldRows(lines: readonly string[]): Row[][] {
  return lines.length === 0 ? [] : [lines.map((text) => row(text))]
}

/** Each lower form once; one of fewer than `least` lines only where there is no other. */
function formsOf(drawn: readonly Drawing[], least: number): Row[][] {
  const forms: Row[][] = []
  for (const { lines } of drawn) {
    const last = forms.at(-1)
    if (lines.length > 0 && (last === undefined || (lines.length < last.length && lines.length >= least)))
      forms.push(lines.map((text) => ({ text, tone: 'plain', keep: true })))
  }
  return forms
}

function stationsOf(defs: Definitions, state: State, prompt: ReadPrompt): DrawnStation[] {
  const placed = asKind(prompt.step, 'read')
  const places = placesOf(placed)
  return placed.step.stations.map((s) => {
    const place = places.find((p) => p.station.id === s.id && p.axis?.id === prompt.place.axis?.id)
    const result = place === undefined ? null : placeResult(placed, place, state)
    const value = figureOf(defs, placed, result)
    return {
      id: s.id,
      label: s.short ?? s.label,
      words: s.label,
      at: s.at,
      ...(value === undefined ? {} : { value }),
      ...(s.in_counterbore === true ? { inCounterbore: true } : {}),
    }
  })
}

function figureOf(
  defs: Definitions,
  placed: Placed,
  result: ReturnType<typeof placeResult> | null,
): string | undefined {
  const none = result === null ? undefined : noFigureOf(result)
  if (none !== undefined) return none
  return result === null ? undefined : (placeFigure(defs, placed, result) ?? undefined)
}

/** What stands where a place is done with and has no figure; undefined where it has one, or is still to come. */
function noFigureOf({ state }: ReturnType<typeof placeResult>): string | undefined {
  if (state === 'not-applicable') return 'n/a'
  return state === 'unsettled' ? 'no figure' : undefined
}

/** The wear along the bore, as soon as two stations of a read step have figures. */
export function profileRows(defs: Definitions, state: State, stepId: string, style: SheetStyle): Row[] {
  return profileForms(defs, state, stepId, style)[0] ?? []
}

/** The same in every form there is, the fullest first; none for what is not drawn as a bore. */
export function profileForms(defs: Definitions, state: State, stepId: string, style: SheetStyle): Row[][] {
  const step = defs.steps.find((s) => s.id === stepId)
  if (step?.step.kind !== 'read' || step.step.drawing !== 'bore') return []
  const placed = asKind(step, 'read')
  const places = placesOf(placed)
  const rows = (placed.step.axes ?? []).map((axis) => {
    const results = placed.step.stations.map((s) => {
      const place = places.find((p) => p.station.id === s.id && p.axis?.id === axis.id)
      return place === undefined ? null : placeResult(placed, place, state)
    })
    return {
      axisLabel: axis.label,
      // As it is written beside the drawing: one place never shows two figures.
      values: results.map((one) => {
        const si = one?.si ?? null
        return si === null ? undefined : Number(bareLength(defs, si))
      }),
      instead: results.map((one) => (one === null ? undefined : noFigureOf(one))),
    }
  })
  const profile = {
    stations: placed.step.stations.map((s) => ({
      id: s.id,
      label: s.short ?? s.label,
      at: s.at,
      ...(s.in_counterbore === true ? { inCounterbore: true } : {}),
    })),
    rows,
    unit: defs.machine.shop_units.length,
    decimals: defs.machine.shop_units.length === 'in' ? 4 : 3,
  }
  if (style.linear === true) return toldRows(tellProfile(profile))
  const width = Math.min(66, textWidth(style))
  const drawn = PROFILE_HEIGHTS.map((height) =>
    drawBoreProfile(profile, { ascii: style.ascii, width, height }),
  )
  return formsOf(drawn, 2)
}
