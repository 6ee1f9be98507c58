// The drawing for the place being measured, from the procedure's own stations and axes and the readings so far.
import { drawBorePlace } from '../drawing/bore-place.ts'
import { drawBoreProfile } from '../drawing/bore-profile.ts'
import type { DrawnStation } from '../drawing/types.ts'
import { asKind, type Definitions } from '../job/definitions.ts'
import type { Prompt } from '../job/next.ts'
import { placeResult, placesOf } from '../job/places.ts'
import type { State } from '../job/state.ts'
import { bareLength } from '../talk/names.ts'
import { type Row, type SheetStyle, textWidth } from './block.ts'

/** The marks of a place drawing; a drawing of one line has none. */
export const LEGEND = '# instrument, here   x measured   o to come'

export function placeDrawing(
  defs: Definitions,
  state: State,
  prompt: Extract<Prompt, { kind: 'read' }>,
  style: SheetStyle,
): Row[] {
  const placed = asKind(prompt.step, 'read')
  const { axis } = prompt.place
  const stations = placed.step.stations.map((s): DrawnStation => {
    const first = placesOf(placed).find((p) => p.station.id === s.id && p.axis?.id === axis?.id)
    const si = first === undefined ? null : placeResult(placed, first, state).si
    return {
      id: s.id,
      label: s.short ?? s.label,
      at: s.at,
      ...(si === null ? {} : { value: bareLength(defs, si) }),
      ...(s.in_counterbore === true ? { inCounterbore: true } : {}),
    }
  })
  if (axis === null) return []
  const drawn = drawBorePlace(
    {
      stations,
      here: prompt.place.station.id,
      axis,
      hasCounterbore: defs.machine.bore.counterbore !== undefined,
    },
    { ascii: style.ascii, width: Math.min(66, textWidth(style)) },
  )
  return drawn.lines.map((text) => ({ text, tone: 'plain', keep: true }))
}

/** The wear along the bore, as soon as two stations of a read step have figures. */
export function profileRows(defs: Definitions, state: State, stepId: string, style: SheetStyle): Row[] {
  const step = defs.steps.find((s) => s.id === stepId)
  if (step === undefined || step.step.kind !== 'read' || step.step.axes === undefined) return []
  const placed = asKind(step, 'read')
  const places = placesOf(placed)
  const rows = (placed.step.axes ?? []).map((axis) => ({
    axisLabel: axis.label,
    values: placed.step.stations.map((s) => {
      const place = places.find((p) => p.station.id === s.id && p.axis?.id === axis.id)
      const si = place === undefined ? null : placeResult(placed, place, state).si
      return si === null ? undefined : si / (defs.machine.shop_units.length === 'in' ? 0.0254 : 0.001)
    }),
  }))
  const drawn = drawBoreProfile(
    {
      stations: placed.step.stations.map((s) => ({ id: s.id, label: s.short ?? s.label, at: s.at })),
      rows,
      unit: defs.machine.shop_units.length,
      decimals: defs.machine.shop_units.length === 'in' ? 4 : 3,
    },
    { ascii: style.ascii, width: Math.min(66, textWidth(style)) },
  )
  return drawn.lines.map((text) => ({ text, tone: 'plain', keep: true }))
}
