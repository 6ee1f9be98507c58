// Pictures without an instrument, for steps where nothing is read: where people stand, and what points where.
import { drawing } from './canvas.ts'
import { inSigns } from './twin.ts'
import type { Drawing, DrawOptions } from './types.ts'

export const FIGURE_KINDS = ['piston_plugs'] as const
export type FigureKind = (typeof FIGURE_KINDS)[number]

/** A hollow piston on the bench from the side: its plugs at a wall or a shield, whichever face they are in. */
const PISTON_PLUGS = `
║     ┌──╥───╥──┐     ║
║     │ cavity  │     ║
║<────╡ plug    ╞────>║
║     │         │     ║
wall  └──╨───╨──┘  shield
nobody in line: plug, vent`

const PISTON_PLUGS_LOW = 'wall ║<─╡ plugs ╞─>║ shield'

const FIGURES: Readonly<Record<FigureKind, readonly string[]>> = {
  piston_plugs: PISTON_PLUGS.slice(1).split('\n'),
}

const LOW: Readonly<Record<FigureKind, readonly string[]>> = {
  piston_plugs: [PISTON_PLUGS_LOW],
}

/** The picture in the room given; no lines where it does not fit, as its words stand in the step as well. */
export function drawFigure(kind: FigureKind, options: DrawOptions): Drawing {
  return fitting(FIGURES[kind], options)
}

/** The same in one line, for a screen without room for more. */
export function drawFigureLow(kind: FigureKind, options: DrawOptions): Drawing {
  return fitting(LOW[kind], options)
}

function fitting(lines: readonly string[], { ascii, width, height }: DrawOptions): Drawing {
  const figure = drawing(inSigns(lines, ascii))
  const fits = figure.width <= width && figure.lines.length <= (height ?? Number.POSITIVE_INFINITY)
  return fits ? figure : drawing([])
}
