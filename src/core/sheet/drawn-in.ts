// What of a drawing and its plot goes into the lines that are left on a screen.
import { type Line, layOut, type Row, type SheetStyle } from './block.ts'
import type { PromptView } from './prompt-view.ts'

interface Drawn {
  readonly place: readonly Line[]
  readonly plot: readonly Line[]
}

/**
 * Lines of drawing, plot and the words for the marks that go into `room` lines, and how many rules, up to two, still do.
 * The rules are only for the eye: none is drawn where the drawing or the plot would go without for it.
 */
export function drawnIn(
  room: number,
  view: PromptView,
  style: SheetStyle,
): { readonly rules: number; readonly drawn: readonly Line[] } {
  const key = lines(view.key, style)
  // A drawing that is new is read with its key; without one rather than not at all.
  const isNew = !view.wordsKnown && pick(room - key.length, view, style).place.length > 0
  const free = isNew ? room - key.length : room
  const [tight, airy] = [pick(free, view, style), pick(free - 2, view, style)]
  const isSame = airy.place.length > 0 === tight.place.length > 0 && airy.plot.length === tight.plot.length
  const { place, plot } = isSame ? airy : tight
  const left = free - place.length - plot.length
  const rules = Math.max(0, Math.min(2, left))
  // Last, as they are learned once.
  const words = place.length === 0 ? [] : [...lines(view.legend, style), ...(isNew ? [] : key)]
  const fitting = words.slice(0, Math.max(0, left - rules))
  return { rules, drawn: [...place, ...(isNew ? key : []), ...fitting, ...plot] }
}

/** For a side before the question, where there is no room beside it: the fullest drawing that `room` lines hold, with its key if that has room as well. */
export function drawnAlone(room: number, view: PromptView, style: SheetStyle): readonly Line[] {
  const { place } = pick(room, { ...view, profiles: [] }, style)
  const key = lines(view.key, style)
  return place.length > 0 && place.length + key.length <= room ? [...place, ...key] : place
}

/** For where no whole drawing has room: the fullest strip that `room` lines hold. */
export function stripIn(room: number, { strips }: PromptView, style: SheetStyle): readonly Line[] {
  return lines(strips.find((form) => form.length <= room) ?? [], style)
}

/** The fullest plot that leaves room for a drawing, with the fullest drawing there is room for. */
function pick(room: number, { drawings, profiles }: PromptView, style: SheetStyle): Drawn {
  const [places, plots] = [drawings, profiles].map((forms) => forms.map((form) => lines(form, style)))
  for (const plot of [...(plots ?? []), []]) {
    const place = places?.find((form) => form.length <= room - plot.length)
    if (place !== undefined) return { place, plot }
  }
  return { place: [], plot: [] }
}

function lines(list: readonly Row[], style: SheetStyle): Line[] {
  return list.length === 0 ? [] : layOut({ margin: '', rows: list }, style)
}
